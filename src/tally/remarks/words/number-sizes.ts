import { norm, ONES } from './number-words.js';
import type { NumberHit } from './numbers.js';
import type { Token } from './token.js';

/** "half an acre", "quarter-acre", "1/4 acre", "third of an acre". */
export function fractionOfAcre(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const word = norm(tokens, index, end);
  const named: Readonly<Record<string, number>> = {
    half: 0.5,
    quarter: 0.25,
    third: 1 / 3,
    fifth: 0.2,
    eighth: 0.125,
    tenth: 0.1,
  };
  let value = named[word];
  let at = index + 1;
  const numerator = tokens[index]?.value;
  const denominator = tokens[index + 2]?.value;
  if (value === undefined && numerator !== undefined && norm(tokens, index + 1, end) === '/' && denominator) {
    value = numerator / denominator;
    at = index + 3;
  }
  // "two-tenths of an acre"
  const several = ONES.indexOf(word);
  const parts = named[norm(tokens, norm(tokens, at, end) === '-' ? at + 1 : at, end)];
  if (value === undefined && several > 0 && parts !== undefined) {
    value = several * parts;
    at = norm(tokens, at, end) === '-' ? at + 2 : at + 1;
  }
  // "nearly an acre"
  if (/^(an?|full)$/.test(word) && /^(acre)$/.test(norm(tokens, index + 1, end)))
    return { length: 2, sense: { kind: 'acres', value: 1, decimals: undefined } };
  if (value === undefined) return undefined;
  if (norm(tokens, at, end) === '-') at++;
  if (norm(tokens, at, end) === 'of') at++;
  if (/^an?$/.test(norm(tokens, at, end))) at++;
  return /^(acre|ac)$/.test(norm(tokens, at, end))
    ? { length: at + 1 - index, sense: { kind: 'acres', value, decimals: undefined } }
    : undefined;
}

/** Tokens of "sq ft", "sq. ft.", "square feet", "SF", "sqft". */
export function isSize(tokens: readonly Token[], index: number, end: number): number | undefined {
  const at = (offset: number): string => norm(tokens, index + offset, end);
  const skip =
    at(0) === '-' ||
    at(0) === '+' ||
    /^(finished|heated|living|usable|total|gross|measured|taped)$/.test(at(0))
      ? 1
      : 0;
  const one = at(skip);
  // "1,920 finished feet"
  if (skip === 1 && /^(finished|heated|living|measured)$/.test(at(0)) && /^(foot|feet)$/.test(one)) return 2;
  if (/^(sqft|sf|sqf|sqfeet)$/.test(one)) return skip + 1;
  if (one === 's' && at(skip + 1) === '.' && at(skip + 2) === 'f')
    return skip + (at(skip + 3) === '.' ? 4 : 3);
  const feet = at(skip + 1) === '-' ? skip + 2 : skip + 1;
  if (one === 'square' && /^(foot|feet|ft)$/.test(at(feet))) return feet + 1;
  if (one === 'sq') {
    let next = skip + 1;
    if (at(next) === '.') next++;
    if (at(next) === '-') next++;
    if (!/^(ft|foot|feet)$/.test(at(next))) return undefined;
    return at(next + 1) === '.' && index + next + 2 < end ? next + 2 : next + 1;
  }
  return undefined;
}

/** "20 x 11", "12' x 22'", "13.5 by 10 ft". */
export function dimensionsAt(tokens: readonly Token[], index: number, end: number): NumberHit | undefined {
  const feet = (at: number): { value: number; next: number } | undefined => {
    const value = tokens[at]?.value;
    if (value === undefined || at >= end) return undefined;
    let next = at + 1;
    if (norm(tokens, next, end) === '-' && /^(x|by|foot|feet|ft)$/.test(norm(tokens, next + 1, end))) next++;
    if (/^(')$/.test(norm(tokens, next, end)) || /^(ft|feet|foot)$/.test(norm(tokens, next, end))) next++;
    const inches = tokens[next]?.value;
    if (inches !== undefined && inches < 12 && /^"$/.test(norm(tokens, next + 1, end)))
      return { value: value + inches / 12, next: next + 2 };
    return { value, next };
  };
  const one = feet(index);
  if (one === undefined || !/^(x|×|by)$/.test(norm(tokens, one.next, end))) return undefined;
  const two = feet(norm(tokens, one.next + 1, end) === '-' ? one.next + 2 : one.next + 1);
  return two === undefined
    ? undefined
    : { length: two.next - index, sense: { kind: 'dimensions', feet: [one.value, two.value] } };
}
