/** "pnl", "flr", "elect.": words that agents shorten, read as the words that they mean. */
import { remarkWords } from '../../tables/remarks.js';

let byShort: ReadonlyMap<string, string> | undefined;

/** The word that is meant; undefined where nothing is shortened. */
export function wordMeant(short: string): string | undefined {
  byShort ??= new Map(
    Object.entries(remarkWords().abbreviations).flatMap(([word, shorts]) =>
      shorts.map((one) => [one, word] as const),
    ),
  );
  return byShort.get(short) ?? (short.endsWith('s') ? byShort.get(short.slice(0, -1)) : undefined);
}

/** Behind a full stop: the sentence goes on. */
const GOES_ON = /^(\s?[a-z\d&/(]|\s?['’]\d|,|;|\/|\s?[–—-])/;
const CAPITALS = /^\s?[A-Z]{2,}/;

/** Whether a full stop behind a shortened word belongs to the word: "elect. service", "PNL. NEW". */
export const isStopOfShort = (short: string, behind: string): boolean =>
  GOES_ON.test(behind) || (short === short.toUpperCase() && CAPITALS.test(behind));
