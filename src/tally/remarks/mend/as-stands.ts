/** Words written as those are that they stand in place of: capitals, and "a" or "an" before them. */
import type { Stretch } from './stretch.js';

/** Undefined where they don't go into the sentence, or are much longer than what they replace. */
export function asStands(
  { from, to, says, ahead, behind }: Stretch,
  words: string,
  most: number,
): { readonly from: number; readonly to: number; readonly put: string } | undefined {
  const plain = withoutEcho(words.replace(/\s+/g, ' ').trim(), ahead, behind);
  if (/(?:^| )[-–]|\b(?:and|or|with|of|that)$/i.test(plain) || /^(?:and|or|of)\b/i.test(plain))
    return undefined;
  // "three-|quarters of an acre", "baths? A: Two full"
  if (/[\p{L}\d-]$/u.test(ahead) || (says.includes('?') && !plain.includes('?'))) return undefined;
  if (plain === '' || plain.length > says.length + most) return undefined;
  const put = cased(says, plain);
  const article = /\b(an?)\s+$/i.exec(ahead);
  if (article === null) return { from, to, put };
  const said = article[0].trimEnd();
  if (/^(?:some|one|two|three|four|no|\d{1,2})(?![\w/.-])/i.test(put)) return undefined;
  const right = startsWithVowel(put) ? 'an' : 'a';
  if (right === said.toLowerCase()) return { from, to, put };
  return {
    from: from - article[0].length,
    to,
    put: `${cased(said, right)}${article[0].slice(said.length)}${put}`,
  };
}

/** By sound, as far as letters tell. */
const startsWithVowel = (words: string): boolean =>
  /^(?:[aeio]|un(?!i)|up|8|11\b|18\b)/i.test(words) && !/^(?:eu|one\b|once\b)/i.test(words);

function cased(says: string, words: string): string {
  const letters = says.replace(/[^\p{L}]/gu, '');
  if (letters.length > 2 && letters === letters.toUpperCase()) return words.toUpperCase();
  const first = /\p{L}/u.exec(says)?.[0] ?? '';
  const isCapital = first !== '' && first === first.toUpperCase() && /^\P{N}*\p{L}/u.test(says);
  if (isCapital && !/^\p{N}/u.test(words)) return words.charAt(0).toUpperCase() + words.slice(1);
  return words;
}

/** "slate tile | tile": what the words beside it say already. */
function withoutEcho(words: string, ahead: string, behind: string): string {
  const once = words.replace(/\b([\p{L}]{3,}) \1\b/giu, '$1');
  const next = /^\s+([\p{L}]+)/u.exec(behind)?.[1]?.toLowerCase();
  const before = /([\p{L}]+)\s+$/u.exec(ahead)?.[1]?.toLowerCase();
  const all = once.split(' ');
  if (
    next !== undefined &&
    all.length > 1 &&
    all.at(-1)?.toLowerCase().replace(/s$/, '') === next.replace(/s$/, '')
  )
    all.pop();
  if (before !== undefined && all.length > 1 && before.length > 3 && all[0]?.toLowerCase() === before)
    all.shift();
  return all.join(' ');
}
