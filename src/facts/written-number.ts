/**
 * The number in front of a unit, read exactly: `11`, `1,410`, `11.5`, `.5`, `6 1/2`, `6-1/2`, `3/4`, `6½`.
 *
 * The answer is a fraction of two big integers, so that no reader that multiplies it by its unit has to trust
 * a binary fraction (35.5 × 42.3 is 1501.6499999999999 there).
 */
import { bad, good, type Read } from './read.js';

/** A number as written, kept exact. Never negative. */
export interface WrittenNumber {
  /** Numerator. */
  readonly top: bigint;
  /** Denominator, at least 1. */
  readonly bottom: bigint;
  /** How it was written: a decimal point, a fraction bar (or a glyph such as ½), or neither. */
  readonly form: 'whole' | 'decimal' | 'fraction';
}

/** No measurement is longer than this; it keeps a pasted paragraph out of the big-integer arithmetic. */
export const LONGEST_TEXT = 200;

const DIGITS = String.raw`(?:\d+|[1-9]\d{0,2}(?:,\d{3})+)`;
const DECIMAL = new RegExp(String.raw`^(${DIGITS})?(?:\.(\d+))?$`);
const FRACTION = new RegExp(String.raw`^(?:(${DIGITS})(?:\s+|\s*-\s*))?(\d+)\s*[/⁄]\s*(\d+)$`);
const FRACTION_GLYPHS = /[¼-¾⅐-⅞]/g;

const whole = (digits: string): bigint => BigInt(digits.replaceAll(',', ''));

/**
 * Reads a number without its unit and without a sign.
 *
 * Refuses: anything else than the forms above, a decimal comma, a fraction that is not between 0 and 1.
 */
export function readWrittenNumber(text: string): Read<WrittenNumber> {
  const tidy = text
    .replace(FRACTION_GLYPHS, (glyph) => ` ${glyph.normalize('NFKD').replace('⁄', '/')}`)
    .trim();
  if (tidy === '') return bad('there is no number', 'write the number in digits, then its unit');
  if (tidy.length > LONGEST_TEXT)
    return bad('this is too long for a number', 'write the number and its unit only');

  const fraction = FRACTION.exec(tidy);
  if (fraction) return fractionOf(fraction[1], fraction[2] ?? '', fraction[3] ?? '');

  const decimal = DECIMAL.exec(tidy);
  if (decimal) {
    const places = decimal[2] ?? '';
    const top = whole((decimal[1] ?? '0') + places);
    return good({ top, bottom: 10n ** BigInt(places.length), form: places === '' ? 'whole' : 'decimal' });
  }
  if (/^\d+,\d+$/.test(tidy)) {
    return bad(
      `the comma in ${tidy} stands in no thousands place`,
      `write a decimal with a point, for example ${tidy.replace(',', '.')}`,
    );
  }
  return bad(`“${tidy}” is not a number`, 'write digits, for example 11, 11.5 or 6 1/2');
}

function fractionOf(before: string | undefined, over: string, under: string): Read<WrittenNumber> {
  const top = BigInt(over);
  const bottom = BigInt(under);
  if (top === 0n || top >= bottom) {
    return bad(
      `the fraction ${over}/${under} is not between 0 and 1`,
      'write whole number and fraction apart, for example 6 1/2',
    );
  }
  return good({ top: whole(before ?? '0') * bottom + top, bottom, form: 'fraction' });
}

/** `number` × `unit` when that is a whole number of the smallest units; otherwise undefined. */
export function exactMultiple(number: WrittenNumber, unit: bigint): bigint | undefined {
  const product = number.top * unit;
  return product % number.bottom === 0n ? product / number.bottom : undefined;
}

/** A whole number with a comma at every thousand: 1436 → "1,436". */
export function groupThousands(whole: bigint | number): string {
  return String(whole).replace(/\B(?=(\d{3})+$)/g, ',');
}
