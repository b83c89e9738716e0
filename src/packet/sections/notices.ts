import { leadAsbestosRules } from '../../tally/tables/lead-asbestos.js';
import type { Context } from '../context.js';
import type { Block, Section } from '../packet.js';
import { rich } from '../rich.js';

/** What this paper is and is not, and the words that a law fixes. */
export function notices(context: Context): Section {
  return {
    id: 'notices',
    title: 'Notices',
    blocks: [standing(), ...leadWarning(context), ...asbestos(context), ...pool(context), state(context)],
  };
}

export const STANDING =
  'This paper says what its owner saw, did and kept papers for. It is no inspection, no appraisal, and no legal or tax advice. A licensed inspection and local codes govern.';

const standing = (): Block => ({
  kind: 'notice',
  id: 'notice-standing',
  title: 'What this paper is',
  paragraphs: [
    rich(
      'This packet says what its owner saw, did and kept papers for. It is no inspection, no appraisal and no legal or tax advice, and it takes the place of no form that a state or an agent asks for.',
    ),
    rich(
      'A licensed inspection and local codes govern. Buyers should measure, test and look for themselves, and have licensed people look at gas, electricity, structure, lead and asbestos.',
    ),
  ],
});

function leadWarning(context: Context): Block[] {
  const { lead } = context.tally;
  if (lead.target === 'no') return [];
  const rules = leadAsbestosRules();
  const { leadWarning: warning, leadPamphlet: pamphlet, leadTestPeriod: period } = rules;
  return [
    {
      kind: 'notice',
      id: 'notice-lead',
      title: 'Lead Warning Statement',
      paragraphs: [
        rich(warning.figures.statement),
        rich(
          `${lead.because} `,
          `The statement above is the federal wording for sales. It belongs in an attachment to the contract, with the signatures of seller, agent and buyer; printing it here does not take its place. The federal pamphlet is “${pamphlet.figures.title}”, and a buyer has ${period.figures.days} days to have the house tested for lead unless both sides agree in writing on another period.`,
        ),
      ],
      source: rich(`${warning.source.title}, ${warning.source.section}; ${warning.source.publisher}.`),
    },
  ];
}

function asbestos(context: Context): Block[] {
  const { asbestos: cautions } = context.tally.lead;
  if (cautions.length === 0) return [];
  const rule = leadAsbestosRules().asbestosPlaces;
  return [
    {
      kind: 'notice',
      id: 'notice-asbestos',
      title: 'Materials that may hold asbestos',
      paragraphs: [...cautions.map((caution) => rich(caution.words)), rich(rule.caution)],
      source: rich(`${rule.source.title}, ${rule.source.section}; ${rule.source.publisher}.`),
    },
  ];
}

function pool(context: Context): Block[] {
  if (context.house.pool === undefined) return [];
  return [
    {
      kind: 'notice',
      id: 'notice-pool',
      title: 'The pool',
      paragraphs: [
        rich(
          'Water can drown a child in minutes. No fence takes the place of an adult who watches. Which barrier and alarm is asked for is set by the state and the town.',
        ),
      ],
    },
  ];
}

const state = (context: Context): Block => ({
  kind: 'paragraph',
  id: 'notice-state',
  size: 'small',
  text: rich(
    `State and local disclosure forms (${context.house.house.address.state}) are not part of this packet; they come from the state or the agent.`,
  ),
});
