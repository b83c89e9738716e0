/** Whether a number counts a thing, and of which kind. */
import type { Attribute, Phrase } from './phrase.js';

export const isCounting = (phrase: Phrase, one: Attribute, text: string): boolean =>
  !one.shared &&
  (one.before || !/^\s*(\/|full|half|\+)/.test(text.slice(one.to, one.to + 8))) &&
  !/\bthan (?:an?|the|most|any|other)\s+$/i.test(text.slice(Math.max(0, one.from - 12), one.from)) &&
  !/\bplus\s+$/.test(text.slice(Math.max(0, one.from - 6), one.from)) &&
  ((one.before && one.to <= phrase.from) ||
    (!one.before &&
      (/^\s*[:=?]\s*$/.test(text.slice(phrase.to, one.from)) ||
        (COUNT_OF.test(text.slice(phrase.to, one.from)) && ENDS.test(text.slice(one.to, one.to + 4))))));

/** "Bedrooms – 4", "Bath count: 2", "Baths total 2". */
const COUNT_OF = /^(?:s)?\s*(?:[–—-]|(?:count|total|number|no\.)\s*[:=–—-]?)\s*$/i;
const ENDS = /^\s*(?:[,.;|\n/•)]|$)/;

export function bathKind(phrase: Phrase, text: string): 'any' | 'full' | 'half' | 'three-quarter' {
  const before = text.slice(Math.max(0, phrase.from - 16), phrase.to).toLowerCase();
  // "2F/1H"
  if (/\b\d\s?h\s*\S*$/.test(before)) return 'half';
  if (/(?<!and[\s-](a|one)[\s-])\bhalf[\s-]+\S*$/.test(before)) return 'half';
  if (/(three[\s-]quarter|3\/4|¾)[\s-]+\S*$/.test(before)) return 'three-quarter';
  return /\bfull(?![\s-]*siz)[\s-]+(?:\S+\s+)?\S*$/.test(before) ? 'full' : 'any';
}

/** "three bedrooms" counts; "bedroom 2" names. */
/** "/mo", "a quarter", "annually". */
export function periodBehind(words: string): string | undefined {
  const behind = words.toLowerCase();
  if (/^\W*(a |per |each )?(mo\b|month)/.test(behind)) return 'month';
  if (/^\W*(a |per |each )?(qtr|quarter)/.test(behind)) return 'quarter';
  return /^\W*(a |per |each )?(yr|year|annual|annum)/.test(behind) ? 'year' : undefined;
}
