/** Notices whose words a law fixes: printed word for word, with where and how closely they were read. */
import type { Duty } from '../../tally/duties/duty.js';
import type { Context } from '../context.js';
import { readingSentences } from '../how-read.js';
import type { Block, Rich } from '../packet.js';
import { inWords, lowerFirst, rich, verbatim } from '../rich.js';
import { dueWords } from './conveys-and-dues.js';
import { citation } from './notices-citation.js';

/** One for each rule that surely reaches this sale and fixes words. */
export function fixedNotices(context: Context): Block[] {
  return context.tally.duties.duties.flatMap((duty): Block[] => {
    const { rule, result } = duty;
    if (rule.notice === undefined || result !== 'applies') return [];
    return [
      {
        kind: 'notice',
        id: `notice-${rule.id}`,
        title: rule.notice.title,
        paragraphs: [
          ...rule.notice.text.map((text) => rich(rule.notice?.['word-for-word'] ? verbatim(text) : text)),
          rich(about(context, duty)),
        ],
        source: sourceOf(duty),
      },
    ];
  });
}

function about(context: Context, { rule }: Duty): string {
  return [
    `A notice that ${context.tally.duties.pack ?? 'the law'} asks for, ${rule.due?.words ?? 'at a sale'}: no test result, no statement about this house and no legal advice.`,
    rule.notice?.lacks,
    rule.prints === 'dues' ? duesWords(context) : undefined,
    rule.form === undefined
      ? 'Printing it here does not take the place of the contract’s own papers.'
      : 'The form itself comes from the state or the agent.',
  ]
    .filter((one) => one !== undefined)
    .join(' ');
}

/** What the record has for the blanks of an association’s summary. */
function duesWords({ house }: Context): string | undefined {
  if (house.dues.length === 0) return undefined;
  return `Dues on record: ${inWords(house.dues.map((due) => `${dueWords(due)} to ${due.to}`))}.`;
}

function sourceOf({ rule }: Duty): Rich {
  const { source, notice, on } = rule;
  const { read, how } = notice ?? rule;
  return rich(`${citation(source)}. Wording: ${lowerFirst(readingSentences({ read, how, on }))}`);
}
