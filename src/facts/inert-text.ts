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
const WITHIN = new RegExp(`([;\\t\\r\\n\\v\\f\\u2028\\u2029]${BEFORE})('*)(?=[${SIGNS}])`, 'g');

/** A text as it is written into a cell. Amounts begin with a hyphen as well, and are never asked. */
export function asInert(text: string): string {
  const within = text.replace(WITHIN, "$1'$2");
  return BEGINS.test(within) ? `'${within}` : within;
}

/** The text as it was before `asInert`. */
export function asItWas(text: string): string {
  const within = text.startsWith("'") && BEGINS.test(text.slice(1)) ? text.slice(1) : text;
  return within.replace(WITHIN, (_found, before: string, marks: string) => before + marks.slice(1));
}
