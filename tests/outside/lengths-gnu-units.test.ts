/**
 * Lengths and areas against GNU Units (the `units` program), an independent converter with its own table of feet,
 * inches, metres and acres. The texts given to each side are made from the same numbers, not from each other.
 */
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFloorArea, SQUARE_FOOT, wholeSquareFeet } from '../../src/facts/floor-area.js';
import { readLength } from '../../src/facts/length.js';
import type { Read } from '../../src/facts/read.js';

const version = spawnSync('units', ['--version'], { encoding: 'utf8' });
const hasUnits = version.error === undefined && version.stdout.startsWith('GNU Units');
const SKIPPED = hasUnits ? '' : ' (skipped: needs GNU units, which is not installed here)';

/** Converts each expression with one run of the program, to about fifteen digits. */
function convert(expressions: readonly string[], into: string): number[] {
  const asked = expressions.map((expression) => `${expression}\n${into}\n`).join('');
  const run = spawnSync('units', ['--quiet', '--terse', '--output-format', '%.17g'], {
    encoding: 'utf8',
    input: asked,
    env: { ...process.env, LC_ALL: 'C' },
  });
  if (run.status !== 0) throw new Error(`units ended with ${run.status}: ${run.stderr}`);
  const answers = run.stdout.trim().split('\n').map(Number);
  if (answers.length !== expressions.length) throw new Error(`units gave ${answers.length} answers`);
  return answers;
}

/** What is read here, and the same thing as an expression for GNU Units. */
interface Pair {
  readonly ours: string;
  readonly theirs: string;
}

/** A pair on which the two do not agree, for the report of a failing test. */
interface Difference extends Pair {
  readonly read: Read<unknown>;
  readonly expected: number;
}

const whole = (max: number) => fc.integer({ min: 1, max });

const lengths: fc.Arbitrary<Pair> = fc.oneof(
  fc
    .tuple(whole(120), fc.integer({ min: 0, max: 11 }), fc.integer({ min: 1, max: 15 }))
    .map(([feet, inches, sixteenths]) => ({
      ours: `${feet}' ${inches} ${sixteenths}/16"`,
      theirs: `${feet} ft + ${inches} in + (${sixteenths}|16) in`,
    })),
  fc
    .tuple(whole(120), fc.integer({ min: 0, max: 11 }))
    .map(([feet, inches]) => ({ ours: `${feet} ft ${inches} in`, theirs: `${feet} ft + ${inches} in` })),
  whole(2000).map((inches) => ({ ours: `${inches}"`, theirs: `${inches} inch` })),
  fc.tuple(whole(120), fc.integer({ min: 0, max: 9 })).map(([feet, tenths]) => ({
    ours: `${feet}.${tenths}'`,
    theirs: `${feet}.${tenths} ft`,
  })),
  fc.tuple(whole(40), fc.integer({ min: 10, max: 99 })).map(([metres, hundredths]) => ({
    ours: `${metres}.${hundredths} m`,
    theirs: `${metres}.${hundredths} m`,
  })),
  whole(4000).map((cm) => ({ ours: `${cm} cm`, theirs: `${cm} cm` })),
  whole(40_000).map((mm) => ({ ours: `${mm} mm`, theirs: `${mm} mm` })),
);

const areas: fc.Arbitrary<Pair> = fc.oneof(
  fc.tuple(whole(9999), fc.integer({ min: 0, max: 99 })).map(([feet, rest]) => {
    const text = `${feet}.${String(rest).padStart(2, '0')}`;
    return { ours: `${text} sq ft`, theirs: `${text} ft^2` };
  }),
  whole(999).map((hundredths) => ({
    ours: `${hundredths / 100} acre`,
    theirs: `${hundredths}|100 * 43560 ft^2`,
  })),
  fc.tuple(whole(900), fc.integer({ min: 0, max: 9 })).map(([metres, tenths]) => ({
    ours: `${metres}.${tenths} m2`,
    theirs: `${metres}.${tenths} m^2`,
  })),
);

describe(`against GNU units${SKIPPED}`, () => {
  it.skipIf(!hasUnits)('needs GNU units: 200 lengths are the same whole number of 0.1 µm', () => {
    const pairs = fc.sample(lengths, { seed: 1959, numRuns: 200 });
    const theirs = convert(
      pairs.map((pair) => pair.theirs),
      '1e-7 m',
    );
    const different = pairs.flatMap((pair, index): Difference[] => {
      const read = readLength(pair.ours);
      // Its doubles hold about fifteen digits, so a whole number comes out within a thousandth of itself.
      const expected = Math.round(theirs[index] ?? Number.NaN);
      return read.ok && read.value.units === expected && Math.abs((theirs[index] ?? 0) - expected) < 1e-3
        ? []
        : [{ ...pair, read, expected }];
    });
    expect(different).toEqual([]);
    expect(new Set(pairs.map((pair) => pair.ours)).size).toBeGreaterThan(190);
  });

  it.skipIf(!hasUnits)('needs GNU units: 200 areas are the same square feet, also when rounded', () => {
    const pairs = fc.sample(areas, { seed: 43_560, numRuns: 200 });
    const theirs = convert(
      pairs.map((pair) => pair.theirs),
      'ft^2',
    );
    const different = pairs.flatMap((pair, index): Difference[] => {
      const read = readFloorArea(pair.ours);
      const expected = theirs[index] ?? Number.NaN;
      if (!read.ok) return [{ ...pair, read, expected }];
      const squareFeet = Number(read.value.area) / Number(SQUARE_FOOT);
      const near = Math.abs(squareFeet - expected) <= 1e-12 * expected;
      const rounded = wholeSquareFeet(read.value.area) === Math.round(expected);
      return near && rounded ? [] : [{ ...pair, read, expected }];
    });
    expect(different).toEqual([]);
  });

  it.skipIf(!hasUnits)(
    'needs GNU units: the acre is the international one, within four millionths of either',
    () => {
      // Which foot its acre is built on depends on its table's edition (from memory); both are near enough.
      const [theirs = Number.NaN] = convert(['acre'], 'm^2');
      const acre = readFloorArea('1 acre');
      const ours = acre.ok ? Number(acre.value.area) / 1e14 : Number.NaN;
      expect(Math.abs(ours / theirs - 1)).toBeLessThan(4.1e-6);
      expect(ours).toBe(4046.8564224);
    },
  );
});
