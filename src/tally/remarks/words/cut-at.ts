/** A text cut at its signs: what is said of a thing goes as far as its clause or its sentence. */

/** What stands before the first sign; all of it where there is none. */
export const untilFirst = (text: string, sign: RegExp): string => text.split(sign, 1).join('');

/** What stands behind the last sign; all of it where there is none. */
export const sinceLast = (text: string, sign: RegExp): string => text.split(sign).slice(-1).join('');
