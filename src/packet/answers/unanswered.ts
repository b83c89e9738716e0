/** The owner's list: questions that the record can't answer yet, most asked first, each with what to type. */
import { whatToType } from '../../tally/tables/questions.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import type { Block } from '../packet.js';
import { rich, verbatim } from '../rich.js';
import { answersOf, whomToAsk } from './answered.js';

export interface Unanswered {
  readonly id: string;
  readonly ask: string;
  /** Where, two blanks, and the line to type. */
  readonly type: string;
  readonly whom: string;
}

export const unansweredOf = (context: Context): Unanswered[] =>
  answersOf(context).open.map((one) => ({
    id: one.id,
    ask: one.ask,
    type:
      one.by === 'owner' || one.question === undefined
        ? 'under answers, at this question:  answer: "…"'
        : whatToType(one.question),
    whom: whomToAsk(one),
  }));

/** How many questions the table has, for "16 of 71". */
export const questionCount = (context: Context): number => {
  const { answered, open } = answersOf(context);
  return answered.length + open.length;
};

/** A table for the house file; nothing where everything is answered. */
export function unansweredForOwner(context: Context): Block[] {
  const list = unansweredOf(context);
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'owner-unanswered',
      caption: 'Questions that buyers ask and this record can’t answer yet, most asked first',
      columns: columns(['Question', 34], ['What to type', 66]),
      rows: list.map(({ id, ask, type }) => ({
        id: `owner-unanswered-${id}`,
        cells: [rich(ask), rich(verbatim(type))],
      })),
      note: rich('An answer may also be: not known, with a note of why.'),
    },
  ];
}
