import { describe, expect, it } from 'vitest';
import {
  ACRE,
  printSquareFeet,
  readFloorArea,
  SQUARE_FOOT,
  SQUARE_INCH,
  SQUARE_METRE,
  wholeSquareFeet,
} from '../../src/facts/floor-area.js';
import { readSize } from '../../src/facts/size.js';

/** The exact area of a rectangle. */
const areaOf = (text: string): bigint => {
  const size = readSize(text);
  if (!size.ok) throw new Error(size.problem);
  return BigInt(size.value.width.units) * BigInt(size.value.depth.units);
};

describe('the units of area', () => {
  it('fit each other', () => {
    expect(SQUARE_FOOT).toBe(144n * SQUARE_INCH);
    expect(ACRE).toBe(43_560n * SQUARE_FOOT);
    expect(SQUARE_METRE).toBe(10n ** 14n);
  });
});

describe('readFloorArea', () => {
  it.each([
    ['1,410 sq ft', 1410n * SQUARE_FOOT],
    ['1410 sqft', 1410n * SQUARE_FOOT],
    ['1410 sq. ft.', 1410n * SQUARE_FOOT],
    ['1410 square feet', 1410n * SQUARE_FOOT],
    ['1410 ft²', 1410n * SQUARE_FOOT],
    ['1410 ft2', 1410n * SQUARE_FOOT],
    ['1410 SF', 1410n * SQUARE_FOOT],
    ['1,410.5 sq ft', 1410n * SQUARE_FOOT + SQUARE_FOOT / 2n],
    ['0.21 acre', (21n * ACRE) / 100n],
    ['1/4 acre', ACRE / 4n],
    ['1 ½ acres', (3n * ACRE) / 2n],
    ['131 m2', 131n * SQUARE_METRE],
    ['131 m²', 131n * SQUARE_METRE],
    ['131 sq m', 131n * SQUARE_METRE],
    ['131.25 square metres', 131n * SQUARE_METRE + SQUARE_METRE / 4n],
    ['144 sq in', SQUARE_FOOT],
  ])('reads %s', (text, area) => {
    expect(readFloorArea(text)).toEqual({ ok: true, value: { area, written: text } });
  });

  it.each([
    ['1,410', 'an area needs its unit'],
    ['1410 ft', '“ft” is no unit of area'],
    ['14,10 sq ft', 'the comma in 14,10 stands in no thousands place'],
    ['0 sq ft', 'an area of zero is no area'],
    ['-3 sq ft', 'an area has no sign and is never negative'],
    ['0.1234567 sq ft', '0.1234567 has more decimals than can be kept exactly'],
    ['sq ft', 'there is no number'],
    ['1,000,000 acres', 'an area of more than 100,000 ft by 100,000 ft belongs to no house'],
    ['...', '“...” is no area'],
    ['', 'there is no area'],
  ])('refuses %s', (text, problem) => {
    expect(readFloorArea(text)).toMatchObject({ ok: false, problem });
  });
});

describe('whole square feet', () => {
  // ANSI Z765: 33 ft 5 in × 27 ft 5 in is 916.17 sq ft in inches and 915.16 when read in tenths of a foot.
  it.each([
    [`33'5" x 27'5"`, 916],
    ['33.4 ft x 27.4 ft', 915],
    // The product is 1501.65; in binary floating point it is 1501.6499999999999.
    ['35.5 ft x 42.3 ft', 1502],
    // 0.5 ft × 1 ft: half a square foot, rounded up.
    [`6" x 1'`, 1],
    [`6" x 11"`, 0],
  ])('of %s are %s', (size, feet) => {
    expect(wholeSquareFeet(areaOf(size))).toBe(feet);
  });

  it('come from one rounding of the sum, not from rounded parts', () => {
    // ANSI Z765, rounding of the finished total; the rounded parts would make 1040 + 262 + 90 = 1392.
    const parts = ['1040.4 sq ft', '262.4 sq ft', '90.4 sq ft'].map(readFloorArea);
    const sum = parts.reduce((total, part) => total + (part.ok ? part.value.area : 0n), 0n);
    expect(wholeSquareFeet(sum)).toBe(1393);
  });

  it('are printed with commas', () => {
    expect(printSquareFeet(1436n * SQUARE_FOOT)).toBe('1,436');
    expect(printSquareFeet((21n * ACRE) / 100n)).toBe('9,148');
    expect(printSquareFeet(0n)).toBe('0');
  });

  it('throw on a sum below zero', () => {
    expect(() => wholeSquareFeet(-1n)).toThrow(RangeError);
  });
});
