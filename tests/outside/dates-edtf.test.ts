/**
 * Date bounds against the `edtf` package, an independent reader of EDTF (ISO 8601-2).
 *
 * Where this project reads a date otherwise on purpose, the difference is stated and tested too:
 * - `~` (and the about half of `%`): the package marks the date and leaves its bounds; here a year or month is
 *   widened by one to either side.
 * - Seasons: ISO 8601-2 gives their numbers, not their months. The package takes the quarters of the calendar
 *   year; here spring is March to May, and a winter begins in December of its year.
 * - 29 February of a common year: the package takes it for 1 March; here it is refused.
 * - Spans whose ends overlap, decades at the end of a span, `~` on a day, an unknown (empty) end, unspecified
 *   months and days, and years outside 1600 to 2200 are read by the package and refused here, with another
 *   spelling in the hint.
 * - `199X?` and `2026-21?` are read here; the package has no mark on a decade, nor (at its usual level) on a season.
 */
// @ts-expect-error The package comes without types.
import edtf from 'edtf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDate } from '../../src/facts/date.js';

interface Bounds {
  readonly earliest: string | undefined;
  readonly latest: string | undefined;
}

const day = (time: number): string | undefined =>
  Number.isFinite(time) ? new Date(time).toISOString().slice(0, 10) : undefined;

function theirs(text: string): Bounds | undefined {
  try {
    const { min, max } = edtf(text) as { min: number; max: number };
    return { earliest: day(min), latest: day(max) };
  } catch {
    return undefined;
  }
}

function ours(text: string): Bounds | undefined {
  const read = readDate(text);
  return read.ok ? { earliest: read.value.earliest, latest: read.value.latest } : undefined;
}

const two = (number: number): string => String(number).padStart(2, '0');
const year = fc.integer({ min: 1600, max: 2199 });
const month = fc.tuple(year, fc.integer({ min: 1, max: 12 })).map(([y, m]) => `${y}-${two(m)}`);
// Day 28 at most three times out of four, else the ends of months, which only some months have.
const dayOf = fc
  .tuple(
    month,
    fc.oneof({ weight: 3, arbitrary: fc.integer({ min: 1, max: 28 }) }, fc.integer({ min: 29, max: 31 })),
  )
  .map(([ym, d]) => `${ym}-${two(d)}`);
const moment = fc.oneof(year.map(String), month, dayOf);
const mark = fc.constantFrom('', '', '?');
const marked = fc.tuple(moment, mark).map(([text, sign]) => text + sign);
const forms = fc.oneof(
  marked,
  fc.integer({ min: 160, max: 219 }).map((decade) => `${decade}X`),
  marked.map((end) => `../${end}`),
  marked.map((end) => `${end}/..`),
  fc.tuple(marked, marked).map(([from, to]) => `${from}/${to}`),
);

describe('against the edtf package', () => {
  it('has the same bounds, and refuses the same impossible days, on 2,000 dates without “about”', () => {
    const texts = fc.sample(forms, { seed: 8601, numRuns: 2000 });
    const compared = texts.filter((text) => ours(text) !== undefined);
    for (const text of compared) expect([text, ours(text)]).toEqual([text, theirs(text)]);

    // What is refused here is refused there, but for the two differences stated at the top.
    const refused = texts.filter((text) => ours(text) === undefined);
    const onlyHere = refused.filter((text) => theirs(text) !== undefined);
    for (const text of onlyHere) {
      const read = readDate(text);
      const problem = read.ok ? '' : read.problem;
      const known = text.includes('-02-29') ? /is no leap year/ : /^the two ends of the span overlap$/;
      expect([text, problem]).toEqual([text, expect.stringMatching(known)]);
    }
    expect(compared.length).toBeGreaterThan(1200);
    expect(refused.length - onlyHere.length).toBeGreaterThan(50);
  });

  it.each([
    '2019-02-30',
    '2015/2015',
    '2019/2015',
    '199X~',
    '2019-06-31',
    '2019-13',
    '2019-00',
    '2019-01-32',
    '2019-1-1',
    '2019-01-00',
  ])('refuses %s, as the package does', (text) => {
    expect([ours(text), theirs(text)]).toEqual([undefined, undefined]);
  });

  it('on purpose widens “about” by one year or month, where the package does not', () => {
    const about = fc.tuple(fc.oneof(year.map(String), month), fc.constantFrom('~', '%'));
    for (const [text, sign] of fc.sample(about, { seed: 8602, numRuns: 300 })) {
      const bare = theirs(text);
      expect(theirs(text + sign)).toEqual(bare);
      const [y = 0, m] = text.split('-').map(Number);
      const before = m === undefined ? String(y - 1) : neighbour(y, m - 1);
      const after = m === undefined ? String(y + 1) : neighbour(y, m + 1);
      const widened = { earliest: theirs(before)?.earliest, latest: theirs(after)?.latest };
      expect([text + sign, ours(text + sign)]).toEqual([text + sign, widened]);
    }
  });

  it('on purpose takes the seasons of the weather, where the package takes quarters of the year', () => {
    expect(theirs('2026-21')).toEqual({ earliest: '2026-01-01', latest: '2026-03-31' });
    for (const season of [21, 22, 23, 24]) {
      const begins = 3 * (season - 20);
      expect(ours(`2026-${season}`)).toEqual({
        earliest: theirs(neighbour(2026, begins))?.earliest,
        latest: theirs(neighbour(2026, begins + 2))?.latest,
      });
    }
  });

  it.each([
    '2025-02-29',
    '1900-02-29',
    '2015/2015-06',
    '199X/2005',
    '2019-04-11~',
    '/2010',
    '2019-XX',
    '1492',
    '2019-04-XX',
  ])('on purpose refuses %s, which the package reads', (text) => {
    expect(theirs(text)).toBeDefined();
    expect(ours(text)).toBeUndefined();
  });
});

it.each(['199X?', '2026-21?'])('on purpose reads %s, which the package does not', (text) => {
  expect(theirs(text)).toBeUndefined();
  expect(ours(text)).toEqual(ours(text.slice(0, -1)));
});

/** A month as text, where month 0 or 13 is in the next year. */
function neighbour(y: number, m: number): string {
  if (m < 1) return `${y - 1}-12`;
  return m > 12 ? `${y + 1}-${two(m - 12)}` : `${y}-${two(m)}`;
}
