import { leadAsbestosRules } from '../../tally/tables/lead-asbestos.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import { HOW_READ } from '../how-read.js';
import type { Block, Section } from '../packet.js';
import { inWords, rich } from '../rich.js';
import { fixedNotices } from './notices-fixed.js';
import { workSincePurchase } from './notices-work-since.js';

/** What this paper is and is not, and the words that a law fixes. */
export function notices(context: Context): Section {
  return {
    id: 'notices',
    title: 'Notices',
    blocks: [
      standing(),
      ...leadWarning(context),
      ...fixedNotices(context),
      ...workSincePurchase(context),
      ...asbestos(context),
      ...pool(context),
      ...state(context),
    ],
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
  const { lead, duties } = context.tally;
  const attachment = duties.duties.find(({ rule }) => rule.id === 'us-lead-attachment');
  if (attachment === undefined || attachment.result === 'does not apply') return [];
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
          `The statement above is the federal wording for sales. It belongs in an attachment to the contract, with the signatures of seller, agent and buyer; printing it here does not take its place. The federal pamphlet is “${pamphlet.figures.title}”, and a buyer has ${period.figures.days} days to have the house tested for lead unless both sides agree in writing on another period. This is a notice, no test result and no legal advice; the form comes from the agent.`,
        ),
      ],
      source: rich(
        `${warning.source.title}, ${warning.source.section}; ${warning.source.publisher}. Wording: ${HOW_READ[warning.read]}. The duty was last read ${isoDate(attachment.rule.on)}.`,
      ),
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
          'Water can drown a child in minutes. No fence takes the place of an adult who watches. Which barrier and alarm is asked for is set by the state and the town. These are this packet’s own words and no state’s notice.',
        ),
      ],
    },
  ];
}

/** What is printed of whom; a state of which nothing is printed has forms of its own, and where they come from is said. */
function printedWords(context: Context, pack: string): string {
  const { duties, state: letters } = context.tally.duties;
  const lead = leadWarning(context).length > 0 ? ['the Lead Warning Statement'] : [];
  const of = (prefix: string): string[] =>
    duties.flatMap(({ rule, result }) =>
      rule.id.startsWith(prefix) && rule.notice !== undefined && result === 'applies'
        ? [`“${rule.notice.title}”`]
        : [],
    );
  const federal = [...lead, ...of('us-')];
  const ownPrefix = `${letters.toLowerCase()}-`;
  const own = of(ownPrefix);
  const from = [
    ...new Set(
      duties.flatMap(({ rule, result }) =>
        rule.id.startsWith(ownPrefix) && result !== 'does not apply' ? (rule.form?.from ?? []) : [],
      ),
    ),
  ];
  const withAgent = from.some((words) => words.includes('agent')) ? from : [...from, 'the agent'];
  return [
    federal.length === 0
      ? 'No federal notice is printed here.'
      : `Of the federal rules, ${inWords(federal)} ${federal.length === 1 ? 'is' : 'are'} printed above.`,
    own.length === 0
      ? `No notice of ${pack} is printed here; its forms come from ${from.length === 0 ? 'the state or the agent' : inWords(withAgent)}.`
      : `Of ${pack}, ${inWords(own)} ${own.length === 1 ? 'is' : 'are'} printed above.`,
  ].join(' ');
}

/** Whose rules were looked at, and what they leave open. Never what a seller has or hasn’t done. */
function state(context: Context): Block[] {
  const { duties } = context.tally;
  const open = duties.duties.filter(
    ({ rule, result }) => rule.notice !== undefined && result === 'not known',
  );
  const whose =
    duties.pack === undefined
      ? `This program knows the federal rules and has none for ${duties.state}. Ask the agent or the state’s real estate commission which notices and forms a sale there takes.`
      : `This program knows federal rules and rules of ${duties.pack}, last read ${isoDate(duties.lastRead)}; a state, a county or a town may ask for more. ${printedWords(context, duties.pack)}`;
  const words = [
    `${whose} Disclosure forms are not part of this packet: they come from the state or the agent. Nothing here is legal advice.`,
    ...(open.length === 0
      ? []
      : [
          `Not printed, since the record doesn’t say whether it is asked for: ${inWords(open.map(({ rule }) => rule.notice?.title.toLowerCase() ?? ''))}.`,
        ]),
  ];
  return words.map((text, index) => ({
    kind: 'paragraph',
    id: index === 0 ? 'notice-state' : 'notice-open',
    size: 'small',
    text: rich(text),
  }));
}
