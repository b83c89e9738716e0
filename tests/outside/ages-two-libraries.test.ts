/**
 * Completed months, years and days against luxon and date-fns, on 2,000 pairs of days with a fixed seed.
 *
 * The three agree wherever the day of the month is reached or not in the ordinary way. They differ, by one month
 * at most, at one kind of end: the first day's number does not exist in the last month, and that month's last day
 * is the as-of day (31 January to 28 February).
 * - Temporal, and so this project: the month is not complete until the day after.
 * - luxon: adding a month to 31 January is held at 28 February, so the month is complete.
 * - date-fns: the same in some months and not in others. It also treats 28 February as the month's end in a leap
 *   year, where it is not.
 * The tests compare exactly outside that kind of end, and inside it state what each library answers.
 */
import { differenceInMonths, addDays as theirAddDays, addYears as theirAddYears } from 'date-fns';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { addDays, addYears, ageSpan } from '../../src/facts/age.js';

const DAY_MS = 86_400_000;
const FIRST = Date.UTC(1900, 0, 1);
const LAST = Date.UTC(2099, 11, 31);

const iso = (time: number): string => new Date(time).toISOString().slice(0, 10);
const numbers = (day: string): [number, number, number] =>
  day.split('-').map(Number) as [number, number, number];

const anyDay = fc.integer({ min: 0, max: (LAST - FIRST) / DAY_MS }).map((days) => iso(FIRST + days * DAY_MS));
/** One of the last four days of some month: where calendars quarrel. */
const monthEnd = fc
  .tuple(
    fc.integer({ min: 1900, max: 2099 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 0, max: 3 }),
  )
  .map(([year, month, back]) => iso(Date.UTC(year, month, -back)));
const someDay = fc.oneof(anyDay, monthEnd);
const pairs = fc
  .sample(fc.tuple(someDay, someDay), { seed: 20_260_620, numRuns: 2000 })
  .map(([a, b]) => (a < b ? ([a, b] as const) : ([b, a] as const)));

const daysInMonthOf = (day: string): number => {
  const [year, month] = numbers(day);
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
};

/** The kind of end at which the libraries differ. */
function heldAtMonthEnd(from: string, to: string): boolean {
  return numbers(from)[2] > daysInMonthOf(to) && numbers(to)[2] === daysInMonthOf(to);
}

/** date-fns also takes 28 February for a month's end in a leap year. */
function on28thOfLeapFebruary(from: string, to: string): boolean {
  return to.endsWith('-02-28') && daysInMonthOf(to) === 29 && numbers(from)[2] > 28;
}

function ourMonths(from: string, to: string): number {
  const date = {
    written: from,
    earliest: from,
    latest: from,
    precision: 'day',
    about: false,
    uncertain: false,
  } as const;
  const { youngest, oldest } = ageSpan(date, to);
  if (!youngest || !oldest) throw new Error(`no age from ${from} to ${to}`);
  expect(youngest).toEqual(oldest);
  expect(oldest.months).toBeLessThan(12);
  return oldest.years * 12 + oldest.months;
}

function luxonMonths(from: string, to: string): number {
  const zone = { zone: 'utc' };
  const { years = 0, months = 0 } = DateTime.fromISO(to, zone)
    .diff(DateTime.fromISO(from, zone), ['years', 'months'])
    .toObject();
  return years * 12 + Math.floor(months);
}

/** Noon, local time: date-fns works on local days, and no clock change happens at noon. */
function localNoon(day: string): Date {
  const [year, month, date] = numbers(day);
  return new Date(year, month - 1, date, 12);
}
const localIso = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');

const dateFnsMonths = (from: string, to: string): number =>
  differenceInMonths(localNoon(to), localNoon(from));

describe('completed ages on 2,000 pairs of days', () => {
  it('are luxon’s, except where a month is held at its end: there luxon says one month more', () => {
    const held = pairs.filter(([from, to]) => heldAtMonthEnd(from, to));
    for (const [from, to] of pairs) {
      const more = heldAtMonthEnd(from, to) ? 1 : 0;
      expect([from, to, luxonMonths(from, to)]).toEqual([from, to, ourMonths(from, to) + more]);
    }
    expect(held.length).toBeGreaterThan(5);
    expect(held.length).toBeLessThan(60);
  });

  it('are those of date-fns, except at such ends: there date-fns says the same or one month more', () => {
    const apart = pairs.filter(([from, to]) => heldAtMonthEnd(from, to) || on28thOfLeapFebruary(from, to));
    for (const [from, to] of pairs) {
      const difference = dateFnsMonths(from, to) - ourMonths(from, to);
      const allowed = apart.some((one) => one[0] === from && one[1] === to) ? [0, 1] : [0];
      expect([from, to, allowed.includes(difference)]).toEqual([from, to, true]);
    }
    expect(apart.length).toBeGreaterThan(5);
    expect(apart.length).toBeLessThan(60);
  });

  it('differ at a held end as described', () => {
    const answers = (from: string, to: string) => [
      ourMonths(from, to),
      luxonMonths(from, to),
      dateFnsMonths(from, to),
    ];
    expect(answers('2019-01-31', '2019-02-28')).toEqual([0, 1, 1]);
    expect(answers('2016-01-31', '2016-09-30')).toEqual([7, 8, 7]);
    expect(answers('2020-02-29', '2021-02-28')).toEqual([11, 12, 12]);
    expect(answers('2019-12-29', '2020-02-28')).toEqual([1, 1, 2]);
    // One day on, all three agree again.
    expect(answers('2019-01-31', '2019-03-01')).toEqual([1, 1, 1]);
    expect(answers('2020-02-29', '2021-03-01')).toEqual([12, 12, 12]);
  });
});

describe('days and years added', () => {
  it('are those of luxon and date-fns; both libraries hold 29 February at the 28th, our “earlier”', () => {
    for (const [from, to] of pairs) {
      const years = (numbers(to)[0] - numbers(from)[0]) % 45;
      const luxon = DateTime.fromISO(from, { zone: 'utc' }).plus({ years }).toISODate();
      const dateFns = localIso(theirAddYears(localNoon(from), years));
      expect([luxon, dateFns]).toEqual([addYears(from, years, 'earlier'), addYears(from, years, 'earlier')]);
      const held = luxon?.slice(5) !== from.slice(5);
      expect([from, years, addYears(from, years, 'later')]).toEqual([
        from,
        years,
        held ? `${luxon?.slice(0, 4)}-03-01` : luxon,
      ]);
    }
    expect(pairs.some(([from]) => from.endsWith('-02-29'))).toBe(true);
  });

  it('reach the other day of every pair', () => {
    for (const [from, to] of pairs) {
      const days = (Date.parse(to) - Date.parse(from)) / DAY_MS;
      expect(addDays(from, days)).toBe(to);
      expect(addDays(to, -days)).toBe(from);
      expect(localIso(theirAddDays(localNoon(from), days))).toBe(to);
      expect(DateTime.fromISO(from, { zone: 'utc' }).plus({ days }).toISODate()).toBe(to);
    }
  });
});
