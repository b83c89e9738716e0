/** The months' names, January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** As many letters of each as tell it apart: "Jan" to "Dec". */
export const SHORT_MONTHS: readonly string[] = MONTHS.map((name) => name.slice(0, 3));

/**
 * The month, 1 to 12, of its name in full or cut short anywhere behind the third letter, in capitals or not: "april",
 * "Apr", "Sept". Undefined: it is none.
 */
export function monthOfName(word: string): number | undefined {
  const lower = word.toLowerCase();
  if (lower.length < 3) return undefined;
  const at = MONTHS.findIndex((name) => name.toLowerCase().startsWith(lower));
  return at < 0 ? undefined : at + 1;
}
