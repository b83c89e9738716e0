import { type AskedQuestion, questionGroups } from '../../tally/tables/questions.js';
import { type AnsweredQuestion, answersOf, whomToAsk } from '../answers/answered.js';
import { OPEN_QUESTIONS, REFUSED_QUESTIONS } from '../answers/search-entries.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import type { Block, Section } from '../packet.js';
import { plainText, rich } from '../rich.js';
import { conveys, dues } from './conveys-and-dues.js';

/** Questions buyers ask: the owner's own answers, those from the facts, what is not known; what stays, and what is owed. */
export function questions(context: Context): Section {
  const { answered, open, refused } = answersOf(context);
  const own = answered.filter(({ by }) => by === 'owner');
  const derived = answered.filter(({ by }) => by === 'facts');
  return {
    id: 'questions',
    title: 'Questions',
    blocks: [
      introduction(context, own.length, derived.length),
      ...group('answers-own', 'Answered by the owner', own),
      ...onPaper(derived),
      ...Object.entries(questionGroups()).flatMap(([id, title]) =>
        group(
          `answers-${id}`,
          title,
          derived.filter((one) => one.group === id),
          { only: 'web' },
        ),
      ),
      ...notKnown(open),
      ...notSaid(refused),
      ...conveys(context),
      ...dues(context),
    ],
  };
}

function introduction(context: Context, own: number, derived: number): Block {
  const counted = `ages are counted to ${isoDate(context.tally.asOf)}`;
  const words =
    own > 0 && derived > 0
      ? `The owner’s own answers come first. The others are put together from the facts of this packet; ${counted}.`
      : derived > 0
        ? `No question has been answered in the owner’s own words yet. These answers are put together from the facts of this packet; ${counted}.`
        : own > 0
          ? 'These are the owner’s own answers.'
          : 'No question has been answered in writing yet.';
  return { kind: 'paragraph', id: 'answers-note', size: 'small', text: rich(words) };
}

function group(
  id: string,
  title: string,
  list: readonly AnsweredQuestion[],
  where: Pick<Block, 'only'> = {},
): Block[] {
  if (list.length === 0) return [];
  return [
    { kind: 'heading', id, level: 3, text: title, ...where },
    ...list.map(
      ({ id: anchor, ask, answer, mark }): Block => ({
        kind: 'question',
        id: anchor,
        ask,
        answer,
        mark,
        ...where,
      }),
    ),
  ];
}

/** On paper the answers from facts are a table for each heading: the facts themselves stand in the same paper. */
const onPaper = (derived: readonly AnsweredQuestion[]): Block[] =>
  Object.entries(questionGroups()).flatMap(([id, title]): Block[] => {
    const list = derived.filter((one) => one.group === id);
    if (list.length === 0) return [];
    return [
      {
        kind: 'table',
        id: `answers-${id}-on-paper`,
        only: 'print',
        caption: title,
        columns: columns(['Question', 30], ['Answer', 70]),
        rows: list.map((one) => ({
          id: `${one.id}-on-paper`,
          cells: [rich(one.ask), one.onPaper],
          mark: one.mark,
        })),
      },
    ];
  });

/** In one table, so that the pages don't fill with what nobody knows. */
function notKnown(open: readonly AnsweredQuestion[]): Block[] {
  if (open.length === 0) return [];
  return [
    {
      kind: 'table',
      id: OPEN_QUESTIONS,
      caption: 'Not known, and whom to ask',
      columns: columns(['Question', 40], ['Whom to ask', 60]),
      rows: open.map((one) => ({ id: one.id, cells: [rich(one.ask), rich(whyNot(one), whomToAsk(one))] })),
      note: rich('Not known is never the same as no.'),
    },
  ];
}

/** Questions of safety, rules, price and neighbours are for others: said once, for those who search the pages. */
function notSaid(refused: readonly AskedQuestion[]): Block[] {
  if (refused.length === 0) return [];
  return [
    {
      kind: 'table',
      id: REFUSED_QUESTIONS,
      only: 'web',
      caption: 'What a packet like this does not say, and whom to ask',
      columns: columns(['Question', 40], ['Whom to ask', 60]),
      rows: refused.map(({ id, ask, refused: why = '', whom }) => ({
        id: `question-${id}`,
        cells: [rich(ask), rich(`${why} ${whom}`)],
      })),
    },
  ];
}

/** What was noted of why, without the words that head the table. */
function whyNot({ answer }: AnsweredQuestion): string {
  const why = plainText(answer).replace(/^Not known[.:]\s*/, '');
  return why === '' ? '' : `${why.charAt(0).toUpperCase()}${why.slice(1)} `;
}
