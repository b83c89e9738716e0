/** Plain values: figures, number words, halves and fractions. */
import type { Token } from './token.js';

export const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );

export const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

export const ORDINALS = 'zeroth first second third fourth fifth sixth seventh eighth'.split(' ');

export const UNITS: Readonly<Record<string, string>> = {
  amp: 'amp',
  ampere: 'amp',
  a: 'amp',
  gal: 'gallon',
  gallon: 'gallon',
  ton: 'ton',
  btu: 'btu',
  cfm: 'cfm',
  kw: 'kw',
  seer: 'seer',
  gpf: 'gpf',
  burner: 'burner',
  volt: 'volt',
};

export const norm = (tokens: readonly Token[], index: number, end: number): string =>
  index < end ? (tokens[index]?.norm ?? '') : '';

/** "three-quarter bath" is a kind of bath, and no three. */
const isThreeQuarter = (tokens: readonly Token[], index: number, end: number): boolean =>
  norm(tokens, index, end) === 'three' &&
  norm(tokens, norm(tokens, index + 1, end) === '-' ? index + 2 : index + 1, end) === 'quarter';

/** A figure or a number word, with "and a half" and fractions behind it. */
export function plainValue(
  tokens: readonly Token[],
  index: number,
  end: number,
): { value: number; length: number } | undefined {
  const token = tokens[index];
  if (token === undefined || index >= end) return undefined;
  let value: number | undefined;
  let length = 1;
  if (token.kind === 'number') value = token.value;
  else if (isThreeQuarter(tokens, index, end)) return undefined;
  else if (ONES.includes(token.norm)) value = ONES.indexOf(token.norm);
  else if (token.norm !== '' && TENS.includes(token.norm)) {
    value = TENS.indexOf(token.norm) * 10;
    const at = norm(tokens, index + 1, end) === '-' ? index + 2 : index + 1;
    const ones = ONES.indexOf(norm(tokens, at, end));
    if (ones > 0 && ones < 10) {
      value += ones;
      length = at + 1 - index;
    }
  } else if (/^(pair|couple)$/.test(token.norm)) {
    value = 2;
    if (norm(tokens, index + 1, end) === 'of') length = 2;
  } else if (token.norm === 'single') value = 1;
  else if (/^(double|dual|twin)$/.test(token.norm)) value = 2;
  else if (token.norm === 'triple') value = 3;
  else if (token.norm === 'quad') value = 4;
  if (value === undefined) return undefined;
  // "fifteen hundred square feet", "two hundred amps"
  const scale = HUNDREDS[norm(tokens, index + length, end)];
  if (scale !== undefined && value >= 1 && value < 100) {
    value *= scale;
    length++;
  }
  const then = (offset: number): string => norm(tokens, index + length + offset, end);
  const half = halfBehind(tokens, index + length, end);
  if (half !== undefined) return { value: value + 0.5, length: length + half };
  const [part, over] = [tokens[index + length + 1]?.value, tokens[index + length + 3]?.value];
  const isFraction = then(0) === 'and' && then(2) === '/' && index + length + 3 < end;
  if (isFraction && part !== undefined && over !== undefined && over > 1)
    return { value: value + part / over, length: length + 4 };
  const sign = tokens[index + length];
  if (sign?.kind === 'number' && FRACTION_SIGN.test(sign.raw) && index + length < end)
    return { value: value + sign.value, length: length + 1 };
  const hyphen = then(0) === '-' ? 1 : 0;
  if (then(hyphen) === '1' && then(hyphen + 1) === '/' && then(hyphen + 2) === '2')
    return { value: value + 0.5, length: length + hyphen + 3 };
  if (value === 1 && then(0) === '/' && then(1) === '2') return { value: 0.5, length: length + 2 };
  return { value, length };
}

const HUNDREDS: Readonly<Record<string, number>> = { hundred: 100, thousand: 1000 };

/** Tokens of "and a half", "-and-one-half", "and half a". */
function halfBehind(tokens: readonly Token[], from: number, end: number): number | undefined {
  let at = from;
  const past = (word: RegExp): boolean => {
    if (norm(tokens, at, end) === '-') at++;
    if (!word.test(norm(tokens, at, end))) return false;
    at++;
    return true;
  };
  if (!past(/^and$/)) return undefined;
  return past(/^(a|one)$/) && past(/^half$/) ? at - from : undefined;
}

const FRACTION_SIGN = /^[¼½¾⅓⅔⅛]$/;
