import { sinceLast, untilFirst } from '../words/cut-at.js';

/** Words near a permit by which a text says that it is not closed, or that there is none. */
const OPEN =
  /draws? a blank|turned up|\bnobody\b|no one\b|never (been )?(signed|finaled|finalled|closed|permitted)|unpermitted|\b(still |is |are |remains? )?(open|pending|expired|unclosed|outstanding|unresolved)\b|not (yet )?(been )?(closed|final|finaled|signed)|no final|found no|none found|no permit|without (a )?permit|to be (closed|scheduled|inspected)|awaiting (final|inspection)|could not (find|locate)|no record of/i;

/** Whether the clause around [from, to) of the text says so. */
export function saysOpen(text: string, from: number, to: number): boolean {
  const before = sinceLast(text.slice(Math.max(0, from - 60), from), /[.;!?\n,—]/);
  const behind = untilFirst(text.slice(to, to + 60), /[.;!?\n]/);
  return OPEN.test(`${before}${text.slice(from, to)}${behind}`);
}

/** "Permit issued 3/2024" says that there was one, and not that it was closed. */
export const saysIssued = (text: string, to: number): boolean => ISSUED.test(text.slice(to, to + 18));

const ISSUED = /^s?\s*(was |were |is |been )?(issued|applied|requested|granted)\b/i;
