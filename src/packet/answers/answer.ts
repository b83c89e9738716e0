/** An answer to one of the questions that buyers ask, put together from facts. */
import type { Context } from '../context.js';
import { type Known, markOf, markOfSeveral } from '../marks.js';
import type { EvidenceMark, Rich, Run } from '../packet.js';
import { link, rich, say } from '../rich.js';

/** Words and how they are known. A mark of the standing `not-known` tells what little is known of why. */
export interface Answer {
  readonly text: Rich;
  readonly mark: EvidenceMark;
  /** On paper, where it would repeat a table of the same paper: how much there is, and where. */
  readonly short?: Rich;
}

/** Undefined: the record says nothing of it, which is never the same as no. */
export type AnswerOf = (context: Context) => Answer | undefined | typeof DOES_NOT_ARISE;

/** A pool's age where no pool is recorded, say: neither asked nor answered. */
export const DOES_NOT_ARISE = 'does not arise';

/** One thing of several that an answer names: its words, and what they rest on. */
export interface Named {
  readonly words: Rich;
  readonly known: Known;
  /** False: it is named, and nothing of it is known. */
  readonly isKnown?: boolean;
}

/** "A. B. C." with one mark for all; undefined if there is nothing to name. */
export function answerOf(
  context: Context,
  named: readonly Named[],
  around: { readonly before?: string; readonly between?: string; readonly after?: string } = {},
): Answer | undefined {
  if (named.length === 0) return undefined;
  const { before, between = '; ', after } = around;
  const runs = named.flatMap(({ words }, index): Rich => (index === 0 ? words : [say(between), ...words]));
  return {
    text: rich(
      before === undefined ? undefined : `${before} `,
      ...runs,
      '.',
      after === undefined || after === '' ? undefined : ` ${after}`,
    ),
    mark: markOfNamed(context, named),
  };
}

/** The same answer, told on paper by how much there is and where it stands: "9, under Left as found." */
export const inShort = (
  answer: Answer | undefined,
  count: string,
  where: string,
  to: string,
): Answer | undefined =>
  answer === undefined ? undefined : { ...answer, short: rich(`${count}, under `, link(where, to), '.') };

/** One thing has its own papers beside it; of several they are counted. */
export function markOfNamed(context: Context, named: readonly Named[]): EvidenceMark {
  const [only, second] = named;
  if (only !== undefined && second === undefined) return markOf(context, only.known, only.isKnown ?? true);
  return markOfSeveral(
    context,
    named.map(({ known, isKnown = true }) => ({ ...known, known: isKnown })),
  );
}

/** "Furnace" leading to where the fact stands, and what is said of it. */
export const about = (name: string, to: string, words: string): Run[] => [
  link(name, to),
  ...(words === '' ? [] : [say(`: ${words}`)]),
];

/** The first few, and how many there are besides. */
export function fewOf<T>(
  list: readonly T[],
  most: number,
): { readonly few: readonly T[]; readonly more: string } {
  const left = list.length - most;
  // One more is as short as the words for it.
  if (left <= 1) return { few: list, more: '' };
  return { few: list.slice(0, most), more: `And ${left} more.` };
}
