/** Years, months, seasons and spans of time. */
import { isSize } from './number-sizes.js';
import { norm, plainValue } from './number-words.js';
import type { NumberHit } from './numbers.js';
import type { Token } from './token.js';

export const MONTHS =
  'january february march april may june july august september october november december'.split(' ');

export const SEASONS: Readonly<Record<string, number>> = {
  spring: 4,
  summer: 7,
  fall: 10,
  autumn: 10,
  winter: 1,
};

/** "a year old", "a decade ago". */
function aYear(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const unit = norm(tokens, index + 1, end);
  if (norm(tokens, index, end) !== 'a' || !/^(year|yr|decade)$/.test(unit)) return undefined;
  const years = unit === 'decade' ? 10 : 1;
  const at = norm(tokens, index + 2, end) === '-' ? index + 3 : index + 2;
  const word = norm(tokens, at, end);
  if (word === 'old' || word === 'young') return { length: at + 1 - index, sense: { kind: 'age', years } };
  return word === 'ago' || word === 'back'
    ? { length: at + 1 - index, sense: { kind: 'ago', months: years * 12 } }
    : undefined;
}

/** "within the last two years", "last year", "this spring", "two years ago". */
export function relative(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const aYearOld = aYear(tokens, index, end);
  if (aYearOld !== undefined) return aYearOld;
  let at = index;
  if (/^(within|in|over|during)$/.test(norm(tokens, at, end))) at++;
  if (norm(tokens, at, end) === 'the') at++;
  const which = norm(tokens, at, end);
  if (!/^(last|past|this)$/.test(which)) return undefined;
  const count = plainValue(tokens, at + 1, end);
  const unitAt = at + 1 + (count?.length ?? 0);
  const unit = norm(tokens, unitAt, end);
  const length = unitAt + 1 - index;
  if (which !== 'this' && /^(year|yr|yrs|month|mo|mos)$/.test(unit)) {
    const value = count?.value ?? 1;
    // "last year" is the calendar's, up to two years back; "the last year" the twelve months behind.
    const months = /^mo/.test(unit) ? value : value * 12 + (count === undefined && at === index ? 12 : 0);
    return { length, sense: { kind: 'within', months } };
  }
  if (count === undefined && (unit === 'year' || unit in SEASONS))
    return { length, sense: { kind: 'within', months: which === 'this' ? 12 : 18 } };
  return undefined;
}

/** "April 2026", "Apr. 11, 2026", "spring of 2026", "4/2026", "'19", "1950s", "2019". */
export function named(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const first = norm(tokens, index, end);
  const month =
    first.length < 3
      ? -1
      : MONTHS.findIndex(
          (name) =>
            name === first ||
            (name.slice(0, 3) === first && first !== 'may') ||
            (first === 'sept' && name === 'september'),
        );
  if (month >= 0 || first in SEASONS) {
    let at = index + 1;
    if (norm(tokens, at, end) === '.') at++;
    if (norm(tokens, at, end) === 'of') at++;
    if ((tokens[at]?.value ?? 99) <= 31 && norm(tokens, at + 1, end) === ',') at += 2;
    const year = yearAt(tokens, at, end);
    if (year === undefined) return undefined;
    const named = month >= 0 ? month + 1 : undefined;
    return {
      length: at + year.length - index,
      sense: {
        kind: 'year',
        first: year.year,
        last: year.year,
        bare: false,
        ...(named === undefined ? {} : { month: named }),
      },
    };
  }
  const value = tokens[index]?.value;
  if (value !== undefined && value >= 1 && value <= 12 && norm(tokens, index + 1, end) === '/') {
    const year = fullYearAt(tokens, index + 2, end);
    if (year !== undefined)
      return { length: 3, sense: { kind: 'year', first: year, last: year, month: value, bare: false } };
  }
  const year = yearAt(tokens, index, end);
  if (year === undefined) return undefined;
  const after = index + year.length;
  // "1950s", "1950's"
  const s = norm(tokens, after, end) === "'" ? after + 1 : after;
  if (tokens[after]?.glued === true && norm(tokens, s, end) === 's')
    return {
      length: s + 1 - index,
      sense: { kind: 'year', first: year.year, last: year.year + 9, bare: true },
    };
  // "2019/20", "2019-2020": either year.
  const sign = norm(tokens, after, end);
  if (
    (sign === '-' || sign === '/' || sign === '—') &&
    tokens[after]?.glued === true &&
    tokens[after + 1]?.glued === true
  ) {
    const until = tokens[after + 1]?.value;
    if (until !== undefined && until < 100 && year.year % 100 < until)
      return {
        length: year.length + 2,
        sense: { kind: 'year', first: year.year, last: year.year - (year.year % 100) + until, bare: true },
      };
    if (until !== undefined && until > year.year && until < year.year + 30)
      return { length: year.length + 2, sense: { kind: 'year', first: year.year, last: until, bare: true } };
  }
  return { length: year.length, sense: { kind: 'year', first: year.year, last: year.year, bare: true } };
}

function yearAt(
  tokens: readonly Token[],
  index: number,
  end: number,
): { year: number; length: number } | undefined {
  const two = tokens[index + 1];
  const isShort = norm(tokens, index, end) === "'" && index + 1 < end;
  if (isShort && two?.kind === 'number' && two.glued && /^\d\d$/.test(two.raw))
    return { year: two.value + (two.value <= 40 ? 2000 : 1900), length: 2 };
  const year = fullYearAt(tokens, index, end);
  return year === undefined ? undefined : { year, length: 1 };
}

/** "2019", and no "2019 sq ft". */
function fullYearAt(tokens: readonly Token[], index: number, end: number): number | undefined {
  const token = tokens[index];
  if (token?.kind !== 'number' || index >= end || !/^(1[789]|20)\d\d$/.test(token.raw)) return undefined;
  return isSize(tokens, index + 1, end) === undefined && !/^(btu|\/|sf)$/.test(norm(tokens, index + 1, end))
    ? token.value
    : undefined;
}
