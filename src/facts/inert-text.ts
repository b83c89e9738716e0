/**
 * Texts in a CSV file that no spreadsheet runs as a formula, and the same texts again when the file is read.
 *
 * A spreadsheet runs a cell that begins with one of these signs, also the wide ones; an apostrophe before it makes it
 * text. Where semicolons or tabs part the cells, as in half of Europe, `x;=1+1` is two cells and the second one runs, and a
 * program that knows no quoting takes a line break for a new row: behind those the sign gets an apostrophe as well. A text
 * that has apostrophes of its own before such a sign gets one more, so that exactly one is taken off again.
 */

const SIGNS = '=+\\-@\\uFF1D\\uFF0B\\uFF0D\\uFF20';
/** Blanks, quotation marks and signs of no width before it: some programs take them away. */
const BEFORE = '[\\s"\\u200b-\\u200f\\u2060\\ufeff]*';
const BEGINS = new RegExp(`^'*${BEFORE}[${SIGNS}\\t\\r]`);
/** What parts cells or rows. */
const PARTS = /[;\t\r\n\v\f\u2028\u2029]/;
/** A whole run of what may stand before a sign; taken in one go, so that a cell of blanks takes no longer than its length. */
const RUN = new RegExp(`([;\\s"\\u200b-\\u200f\\u2060\\ufeff]+)('*)([${SIGNS}]?)`, 'g');

/** A text as it is written into a cell. Amounts begin with a hyphen as well, and are never asked. */
export function asInert(text: string): string {
  const within = behindParts(text, (marks) => `'${marks}`);
  return BEGINS.test(within) ? `'${within}` : within;
}

/** The text as it was before `asInert`. */
export function asItWas(text: string): string {
  const within = text.startsWith("'") && BEGINS.test(text.slice(1)) ? text.slice(1) : text;
  return behindParts(within, (marks) => marks.slice(1));
}

/** The apostrophes changed that stand between what parts cells and a sign. */
const behindParts = (text: string, change: (marks: string) => string): string =>
  text.replace(RUN, (found, before: string, marks: string, sign: string) =>
    sign !== '' && PARTS.test(before) ? before + change(marks) + sign : found,
  );
