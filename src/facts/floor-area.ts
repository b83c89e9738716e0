/**
 * Areas, as big integers of (0.1 µm)²: the exact products of the lengths in length.ts. Rounding to whole square
 * feet happens once, when a finished sum is printed.
 */
import { FOOT, INCH, METRE } from './length.js';
import { bad, good, type Read } from './read.js';
import { exactMultiple, groupThousands, LONGEST_TEXT, readWrittenNumber } from './written-number.js';

/** One square inch in (0.1 µm)². */
export const SQUARE_INCH: bigint = BigInt(INCH) ** 2n;
/** One square foot (of the international foot) in (0.1 µm)². */
export const SQUARE_FOOT: bigint = BigInt(FOOT) ** 2n;
/** One square metre in (0.1 µm)². */
export const SQUARE_METRE: bigint = BigInt(METRE) ** 2n;
/**
 * One acre of 43,560 square feet of the international foot. The acre of the older survey foot is larger by four
 * parts in a million, which no lot's written area can show.
 */
export const ACRE: bigint = 43_560n * SQUARE_FOOT;

/** An area that someone wrote down, as against one worked out from lengths. */
export interface FloorArea {
  /** In (0.1 µm)²; over 0. */
  readonly area: bigint;
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
}

const EXAMPLE = 'write the area with its unit, for example 1,410 sq ft, 0.21 acre or 131 m²';
const LARGEST = 100_000n ** 2n * SQUARE_FOOT;

const UNITS: readonly (readonly [RegExp, bigint])[] = [
  [/^(?:sq\.?\s*(?:ft|feet|foot)\.?|square\s+(?:feet|foot)|ft\.?\s*[2²]|ft\^2|sf)$/, SQUARE_FOOT],
  [/^(?:acres?|ac\.?)$/, ACRE],
  [/^(?:m[2²]|m\^2|sq\.?\s*(?:m|met(?:er|re)s?)\.?|square\s+met(?:er|re)s?|sqm)$/, SQUARE_METRE],
  [/^(?:sq\.?\s*in\.?|square\s+inch(?:es)?|in\.?\s*[2²]|in\^2)$/, SQUARE_INCH],
];

/**
 * Reads an area: `1,410 sq ft`, `1,410.5 ft²`, `0.21 acre`, `1/4 acre`, `131 m2`, `131 sq m`.
 *
 * Refuses a number without a unit, zero, a sign, and more than 100,000 ft by 100,000 ft.
 */
export function readFloorArea(text: string): Read<FloorArea> {
  const written = text.trim();
  if (written === '') return bad('there is no area', EXAMPLE);
  if (written.length > LONGEST_TEXT) return bad('this is too long for an area', EXAMPLE);
  if (/^[-−–+]/.test(written)) return bad('an area has no sign and is never negative', EXAMPLE);
  const [, before = '', after = ''] = /^([^a-z]*)(.*)$/is.exec(written) ?? [];
  const number = readWrittenNumber(before);
  if (!number.ok) {
    return after.trim() === '' ? bad(`“${written}” is no area`, EXAMPLE) : bad(number.problem, EXAMPLE);
  }
  const unitText = after.trim().toLowerCase();
  if (unitText === '') return bad('an area needs its unit', EXAMPLE);
  const unit = UNITS.find(([pattern]) => pattern.test(unitText))?.[1];
  if (unit === undefined) return bad(`“${after.trim()}” is no unit of area`, EXAMPLE);
  const area = exactMultiple(number.value, unit);
  if (area === undefined) {
    return bad(`${before.trim()} has more decimals than can be kept exactly`, 'write at most six decimals');
  }
  if (area === 0n) return bad('an area of zero is no area', `${EXAMPLE}, or leave it out`);
  if (area > LARGEST)
    return bad('an area of more than 100,000 ft by 100,000 ft belongs to no house', EXAMPLE);
  return good({ area, written });
}

/**
 * The whole square feet of a finished sum, halves rounded up (ANSI Z765 names no rule for halves; this is ours).
 *
 * @throws RangeError if `area` is negative: a sum that went below zero is a mistake in the program.
 */
export function wholeSquareFeet(area: bigint): number {
  if (area < 0n) throw new RangeError(`an area is never negative: ${area}`);
  return Number((2n * area + SQUARE_FOOT) / (2n * SQUARE_FOOT));
}

/** Whole square feet with commas and without a unit: "1,436". Throws as {@link wholeSquareFeet} does. */
export function printSquareFeet(area: bigint): string {
  return groupThousands(wholeSquareFeet(area));
}
