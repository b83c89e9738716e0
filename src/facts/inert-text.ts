/**
 * Texts in a CSV file that no spreadsheet runs as a formula, and the same texts again when the file is read.
 *
 * A spreadsheet runs a cell that begins with one of these signs, also the wide ones; an apostrophe before it makes it
 * text. A text that has apostrophes of its own before such a sign gets one more, so that exactly one is taken off again.
 */
const RUNS = /^'*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;

/** A text as it is written into a cell. Amounts begin with a hyphen as well, and are never asked. */
export const asInert = (text: string): string => (RUNS.test(text) ? `'${text}` : text);

/** The text as it was before `asInert`. */
export const asItWas = (text: string): string =>
  text.startsWith("'") && RUNS.test(text.slice(1)) ? text.slice(1) : text;
