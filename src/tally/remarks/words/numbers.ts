/** Numbers in listing text: years, ages, sizes, ratings and counts, in figures and in words. */
import { MONTHS, named, relative, SEASONS } from './number-dates.js';
import { dimensionsAt, fractionOfAcre, isSize } from './number-sizes.js';
import { norm, ONES, ORDINALS, plainValue, TENS, UNITS } from './number-words.js';
import type { Token } from './token.js';

export type NumberSense =
  /** A year, or the years of a decade. `month` where one is named. */
  | {
      readonly kind: 'year';
      readonly first: number;
      readonly last: number;
      readonly month?: number;
      readonly bare: boolean;
    }
  | { readonly kind: 'age'; readonly years: number }
  /** At most so many months ago. */
  | { readonly kind: 'within'; readonly months: number }
  | { readonly kind: 'ago'; readonly months: number }
  /** `least`: with a plus behind it. */
  | { readonly kind: 'square-feet'; readonly value: number; readonly least?: boolean }
  | { readonly kind: 'acres'; readonly value: number; readonly decimals: number | undefined }
  | { readonly kind: 'dimensions'; readonly feet: readonly [number, number] }
  | { readonly kind: 'rating'; readonly value: number; readonly unit: string }
  | { readonly kind: 'cars'; readonly value: number }
  /** A height or a depth: "9-foot ceilings", "240 ft deep". */
  | { readonly kind: 'feet'; readonly value: number }
  | { readonly kind: 'money'; readonly value: number }
  | { readonly kind: 'ordinal'; readonly value: number }
  | { readonly kind: 'percent'; readonly value: number }
  | { readonly kind: 'count'; readonly value: number };

export interface NumberHit {
  readonly length: number;
  readonly sense: NumberSense;
}

/** All that a number can begin with, besides figures: most words are passed by at one look. */
const OPENS_NUMBER = new Set([
  ...[
    ...ONES,
    ...TENS,
    ...ORDINALS,
    ...MONTHS,
    ...MONTHS.map((name) => name.slice(0, 3)),
    'sept',
    ...Object.keys(SEASONS),
  ],
  ..."' $ - + the within in over during last past this half quarter third fifth eighth tenth three a an full".split(
    ' ',
  ),
  ...'pair couple single double dual twin triple quad finished heated living usable total gross measured taped'.split(
    ' ',
  ),
  ...'sqft sf sqf sqfeet s square sq'.split(' '),
]);

/** The number that begins at `index`, with the unit behind it. */
export function numberAt(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const token = tokens[index];
  if (token === undefined || (token.kind !== 'number' && !OPENS_NUMBER.has(token.norm))) return undefined;
  return (
    relative(tokens, index, end) ??
    named(tokens, index, end) ??
    fractionOfAcre(tokens, index, end) ??
    plain(token, tokens, index, end)
  );
}

/** "How old is the roof? Seven years", "Roof age: 7 yrs". */
function isAgeAsked(tokens: readonly Token[], index: number): boolean {
  for (let at = index - 1; at >= Math.max(0, index - 14); at--) {
    const word = tokens[at]?.norm;
    if (word === '.' || word === ';' || word === 'warranty') return false;
    if (word === 'age' || (word === 'old' && tokens[at - 1]?.norm === 'how')) return true;
  }
  return false;
}

function plain(token: Token, tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  // "Sq ft: 2,450"
  const headed = isSize(tokens, index, end);
  if (headed !== undefined && norm(tokens, index, end) !== '-') {
    const at = index + headed + (norm(tokens, index + headed, end) === ':' ? 1 : 0);
    const value = tokens[at]?.value;
    if (value !== undefined && value > 300 && at < end && isSize(tokens, at + 1, end) === undefined)
      return { length: at + 1 - index, sense: { kind: 'square-feet', value } };
  }
  const money = norm(tokens, index, end) === '$';
  const read = plainValue(tokens, money ? index + 1 : index, end);
  const ordinal = ORDINALS.indexOf(norm(tokens, index, end));
  if (read === undefined)
    return ordinal > 0 ? { length: 1, sense: { kind: 'ordinal', value: ordinal } } : undefined;
  const { value } = read;
  if (money) return { length: read.length + 1, sense: { kind: 'money', value } };
  let at = index + read.length;
  if (/^(st|nd|rd|th)$/.test(tokens[at]?.raw ?? '') && tokens[at]?.glued === true)
    return { length: at + 1 - index, sense: { kind: 'ordinal', value } };
  const dimensions = dimensionsAt(tokens, index, end);
  if (dimensions !== undefined) return dimensions;
  // "1.6k sq ft"
  const thousands =
    tokens[at]?.raw === 'k' && tokens[at]?.glued === true && isSize(tokens, at + 1, end) !== undefined;
  if (thousands) at++;
  const least = norm(tokens, at, end) === '+';
  if (least) at++;
  if (norm(tokens, at, end) === '-') at++;
  const size = isSize(tokens, at, end);
  if (size !== undefined)
    return {
      length: at + size - index,
      sense: { kind: 'square-feet', value: thousands ? value * 1000 : value, ...(least ? { least } : {}) },
    };
  if (
    norm(tokens, at, end) === 'of' &&
    /^an?$/.test(norm(tokens, at + 1, end)) &&
    norm(tokens, at + 2, end) === 'acre'
  )
    at += 2;
  const unit = norm(tokens, at, end);
  if (unit === 'acre' || unit === 'ac') {
    const decimals = token.raw.includes('.')
      ? token.raw.split('.')[1]?.length
      : token.kind === 'number' && read.length === 1
        ? 0
        : undefined;
    const dot = norm(tokens, at + 1, end) === '.' && unit === 'ac' && index + 2 < end && at + 2 < end ? 1 : 0;
    return { length: at + 1 + dot - index, sense: { kind: 'acres', value, decimals } };
  }
  if (/^(year|yr|yrs|y)$/.test(unit)) {
    let next = at + 1;
    if (norm(tokens, next, end) === '.') next++;
    if (norm(tokens, next, end) === '-') next++;
    if (/^(old|young|o|on)$/.test(norm(tokens, next, end)))
      return { length: next + 1 - index, sense: { kind: 'age', years: value } };
    // "Roof (2 yrs)"
    const bracketed = norm(tokens, index - 1, end) === '(' && norm(tokens, next, end) === ')';
    if (
      bracketed ||
      isAgeAsked(tokens, index) ||
      /^of (age|service|life)$/.test(`${norm(tokens, next, end)} ${norm(tokens, next + 1, end)}`)
    )
      return { length: next - index, sense: { kind: 'age', years: value } };
    if (/^(ago|back)$/.test(norm(tokens, next, end)))
      return { length: next + 1 - index, sense: { kind: 'ago', months: value * 12 } };
  }
  if (/^(winter|summer|season)$/.test(unit) && norm(tokens, at + 1, end) === 'old')
    return { length: at + 2 - index, sense: { kind: 'age', years: value } };
  if (
    /^(month|mo|mos)$/.test(unit) &&
    norm(tokens, at + 1, end) === '.' &&
    norm(tokens, at + 2, end) === 'old'
  )
    return { length: at + 3 - index, sense: { kind: 'ago', months: value } };
  const word = norm(tokens, at + 1, end) === '-' ? at + 2 : at + 1;
  if (/^(month|mo|mos)$/.test(unit) && /^(ago|old)$/.test(norm(tokens, word, end)))
    return { length: word + 1 - index, sense: { kind: 'ago', months: value } };
  const marked = tokens[at]?.norm === "'" && tokens[at]?.glued === true;
  if (marked || (/^(foot|feet|ft)$/.test(unit) && value < 1000)) {
    const next =
      norm(tokens, at + 1, end) === '.' && unit === 'ft' && tokens[at + 2] !== undefined && at + 2 < end
        ? at + 2
        : at + 1;
    return { length: next - index, sense: { kind: 'feet', value } };
  }
  // "48-inch vanity", "a 24" range"
  const inch = /^(inch|in)$/.test(unit) && (unit === 'inch' || tokens[at - 1]?.norm === '-');
  if (
    value < 200 &&
    norm(tokens, index - 1, end) !== '/' &&
    (inch || (/^["”]$/.test(unit) && tokens[at]?.glued === true && isSizeBefore(tokens, at + 1, end)))
  )
    return { length: at + 1 - index, sense: { kind: 'feet', value: value / 12 } };
  // "6,600-foot lot"
  if (/^(foot|feet)$/.test(unit) && value >= 1000)
    return { length: at + 1 - index, sense: { kind: 'square-feet', value } };
  if (/^(car|stall|bay|vehicle|auto|automobile)$/.test(unit))
    return { length: at + 1 - index, sense: { kind: 'cars', value } };
  if (unit === '%') return { length: at + 1 - index, sense: { kind: 'percent', value } };
  const rating = UNITS[unit];
  if (
    rating !== undefined &&
    (unit !== 'a' ||
      (tokens[at]?.glued === true && tokens[at]?.raw === 'a' && norm(tokens, at + 1, end) !== '/'))
  )
    return {
      length: at + 1 + stopBehind(tokens, at + 1, end) - index,
      sense: { kind: 'rating', value, unit: rating },
    };
  return { length: read.length, sense: { kind: 'count', value } };
}

/** The full stop of "50 gal." where the sentence goes on. */
const stopBehind = (tokens: readonly Token[], at: number, end: number): number =>
  tokens[at]?.norm === '.' && tokens[at]?.glued === true && at + 1 < end ? 1 : 0;

/** A closing quotation mark is no inch: behind an inch a word goes on. */
const isSizeBefore = (tokens: readonly Token[], at: number, end: number): boolean =>
  at < end && tokens[at]?.kind === 'word';
