import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FOOT,
  INCH,
  type Length,
  METRE,
  printFeetInches,
  printLength,
  readLength,
} from '../../src/facts/length.js';
import type { Read } from '../../src/facts/read.js';

const value = <T>(read: Read<T>): T => {
  if (!read.ok) throw new Error(`${read.problem}; ${read.hint}`);
  return read.value;
};
const refusal = (text: string): string => {
  const read = readLength(text);
  return read.ok ? `read as ${read.value.units}` : `${read.problem} / ${read.hint}`;
};

describe('the units', () => {
  it('hold the smallest marks of each tape as whole numbers', () => {
    // The international foot is 0.3048 m and the inch 25.4 mm, exactly (from memory: the 1959 agreement).
    expect([INCH / 16, FOOT / 10, METRE / 100]).toEqual([15_875, 304_800, 100_000]);
    expect(FOOT).toBe(12 * INCH);
  });
});

describe('readLength', () => {
  it.each([
    [`11'6"`, 11 * FOOT + 6 * INCH, 'inches'],
    [`11' 6"`, 11 * FOOT + 6 * INCH, 'inches'],
    ['11′ 6″', 11 * FOOT + 6 * INCH, 'inches'],
    ['11’ 6”', 11 * FOOT + 6 * INCH, 'inches'],
    [`11' 6''`, 11 * FOOT + 6 * INCH, 'inches'],
    [`11'-6"`, 11 * FOOT + 6 * INCH, 'inches'],
    [`11'-6 1/2"`, 11 * FOOT + 6.5 * INCH, 'inches'],
    [`11' 6-1/2"`, 11 * FOOT + 6.5 * INCH, 'inches'],
    ['11 ft 6 1/2 in', 11 * FOOT + 6.5 * INCH, 'inches'],
    ['11 ft. 6 in.', 11 * FOOT + 6 * INCH, 'inches'],
    ['11 Feet 6 Inches', 11 * FOOT + 6 * INCH, 'inches'],
    ['11′\u00a06½″', 11 * FOOT + 6.5 * INCH, 'inches'],
    [`12'`, 12 * FOOT, 'inches'],
    ['12 ft', 12 * FOOT, 'inches'],
    ['11 1/2 ft', 11.5 * FOOT, 'inches'],
    ['138 in', 138 * INCH, 'inches'],
    ['138"', 138 * INCH, 'inches'],
    ['7 3/4"', 7.75 * INCH, 'inches'],
    ['½"', INCH / 2, 'inches'],
    ['1/16"', INCH / 16, 'inches'],
    ['.5"', INCH / 2, 'inches'],
    ['11.5 ft', 11.5 * FOOT, 'tenths'],
    [`11.5'`, 11.5 * FOOT, 'tenths'],
    [`12.0'`, 12 * FOOT, 'tenths'],
    ['42.3 ft', 42 * FOOT + 3 * (FOOT / 10), 'tenths'],
    ['1,234.5 ft', 1234.5 * FOOT, 'tenths'],
    ['3.5 m', 35_000_000, 'metric'],
    ['350 cm', 35_000_000, 'metric'],
    ['3500 mm', 35_000_000, 'metric'],
    ['3.5 metres', 35_000_000, 'metric'],
    ['  11.5 ft  ', 11.5 * FOOT, 'tenths'],
  ] as const)('reads %s', (text, units, reading) => {
    expect(readLength(text)).toEqual({ ok: true, value: { units, reading, written: text.trim() } });
  });

  it.each([
    ['11.5', `a length needs its unit / write feet and inches, for example 11'6"`],
    ['½', `a length needs its unit / write feet and inches, for example 11'6"`],
    [`11'6`, `the 6 has no unit / for inches write 11'6"`],
    [`11' 14"`, '14 inches are a foot or more / write 12′ 2″'],
    [`11'12"`, '12 inches are a foot or more / write 12′ 0″'],
    [
      `11.5'6"`,
      `the feet in front of inches are not a whole number / write feet and inches, for example 11'6", or decimal feet alone, 11.5 ft`,
    ],
    ['7 1/32"', '7 1/32 cannot be kept exactly / write the inches to a sixteenth, for example 7 3/16"'],
    [
      '0.3333 ft',
      '0.3333 has more decimals than a tape can tell / write at most three decimals of a foot or inch, or seven of a metre',
    ],
    [
      '13/4"',
      'the fraction 13/4 is not between 0 and 1 / write whole number and fraction apart, for example 6 1/2',
    ],
    [
      '3,5 m',
      'the comma in 3,5 stands in no thousands place / write a decimal with a point, for example 3.5',
    ],
    [
      '0,125 m',
      'the comma in 0,125 stands in no thousands place / write a decimal with a point, for example 0.125',
    ],
    ['-3 ft', `a length has no sign and is never negative / write feet and inches, for example 11'6"`],
    ['−3 ft', `a length has no sign and is never negative / write feet and inches, for example 11'6"`],
    ['0 ft', `a length of zero is no length / write feet and inches, for example 11'6", or leave it out`],
    [
      '4 yards',
      `“yards” is no unit of length / write feet and inches (11'6"), decimal feet (11.5 ft) or metres (3.5 m)`,
    ],
    ['', `there is no length / write feet and inches, for example 11'6"`],
    [`'6"`, `there is no number / write feet and inches, for example 11'6"`],
    [
      '3 m 20 cm',
      `only feet and inches go together, feet first / write feet and inches (11'6"), decimal feet (11.5 ft) or metres (3.5 m)`,
    ],
    [
      '6" 11\'',
      `only feet and inches go together, feet first / write feet and inches (11'6"), decimal feet (11.5 ft) or metres (3.5 m)`,
    ],
  ])('refuses %s', (text, said) => {
    expect(refusal(text)).toBe(said);
  });

  it('reads 100,000 ft and refuses anything over it', () => {
    expect(value(readLength('100,000 ft')).units).toBe(100_000 * FOOT);
    expect(refusal('100,000 ft 1/16 in')).toMatch(/^a length over 100,000 ft/);
    expect(refusal(`${'9'.repeat(150)} ft`)).toMatch(/^a length over 100,000 ft/);
    expect(refusal('9'.repeat(5000))).toMatch(/^this is too long/);
  });

  it('keeps readings in inches and in tenths apart, though they look alike', () => {
    // ANSI Z765, measuring precision: 33 ft 5 in is read as 33.4 ft on a tape in tenths.
    expect(value(readLength(`33'5"`)).units - value(readLength('33.4 ft')).units).toBe(FOOT / 60);
  });
});

describe('printLength', () => {
  it.each([
    [`11' 6 1/2"`, '11′ 6½″'],
    [`12'`, '12′ 0″'],
    ['138"', '11′ 6″'],
    ['7 3/4"', '7¾″'],
    ['3/16"', '3/16″'],
    [`11' 3/16"`, '11′ 3/16″'],
    [`11' 6 3/16"`, '11′ 6 3/16″'],
    [`11' 7/8"`, '11′ ⅞″'],
    ['6.37"', '6.37″'],
    ['11.5 ft', '11.5 ft'],
    [`12.0'`, '12.0 ft'],
    ['11.25 ft', '11.25 ft'],
    ['350 cm', '3.50 m'],
    ['3.5 m', '3.50 m'],
    ['2134 mm', '2.134 m'],
  ])('prints %s as %s', (text, printed) => {
    expect(printLength(value(readLength(text)))).toBe(printed);
  });

  it('is read again as the same length, for every length that can be read', () => {
    const inches = fc
      .integer({ min: 1, max: 100_000 * 192 })
      .map((sixteenths): Length => ({ units: sixteenths * 15_875, reading: 'inches', written: '' }));
    const thousandthsOfInch = fc
      .integer({ min: 1, max: 1_000_000 })
      .map((thousandths): Length => ({ units: thousandths * 254, reading: 'inches', written: '' }));
    const tenths = fc
      .integer({ min: 1, max: 100_000_000 })
      .map((thousandths): Length => ({ units: thousandths * 3048, reading: 'tenths', written: '' }));
    const metric = fc
      .integer({ min: 1, max: 100_000 * FOOT })
      .map((units): Length => ({ units, reading: 'metric', written: '' }));
    fc.assert(
      fc.property(fc.oneof(inches, thousandthsOfInch, tenths, metric), (length) => {
        const printed = printLength(length);
        expect(readLength(printed)).toEqual({ ok: true, value: { ...length, written: printed } });
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe('printFeetInches', () => {
  it('rounds what lies between sixteenths, and carries into inches and feet', () => {
    // 2.13 m is 83.86 in, which is the nearest to 83 7/8 (reference example for ANSI Z765 ceiling heights).
    expect(printFeetInches(21_300_000)).toBe('6′ 11⅞″');
    expect(printFeetInches(FOOT - 1)).toBe('1′ 0″');
    expect(printFeetInches(-(FOOT + INCH))).toBe('−1′ 1″');
    expect(printFeetInches(0)).toBe('0″');
    expect(printFeetInches(-1)).toBe('0″');
  });
});
