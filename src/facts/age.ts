/**
 * Ages as spans: from the youngest that a date allows to the oldest, counted to a day that is handed in.
 *
 * Calendar arithmetic is Temporal's (TC39). A month is complete when the same day of the month is reached; where
 * that day does not exist it is complete on the next first: from 31 January one month is complete on 1 March,
 * and what was born on 29 February is a year old on 1 March 2021, not on 28 February.
 */
import { Temporal } from 'temporal-polyfill';
import type { HouseDate } from './date.js';

/** A completed age. */
export interface Age {
  /** Completed years. */
  readonly years: number;
  /** Completed months beyond the years, 0 to 11. */
  readonly months: number;
}

/** Completed months in all. */
export const inMonths = ({ years, months }: Age): number => years * 12 + months;

/** How old something is, as far as its date tells. */
export interface AgeSpan {
  /** The age if it dates from the last possible day; undefined when the date has no last day. */
  readonly youngest: Age | undefined;
  /** The age if it dates from the first possible day; undefined when the date has no first day. */
  readonly oldest: Age | undefined;
  /** The whole date lies after the as-of day: there is no age yet, and both ends are undefined. */
  readonly future: boolean;
}

/**
 * The age at `asOf` (YYYY-MM-DD) of something that dates from `date`.
 *
 * A last possible day after `asOf` counts as `asOf`, since what exists cannot be from the future.
 *
 * @throws RangeError if `asOf` is no day; it comes from the program, not from a house's writer.
 */
export function ageSpan(date: HouseDate, asOf: string): AgeSpan {
  const end = Temporal.PlainDate.from(asOf);
  const earliest = date.earliest === undefined ? undefined : Temporal.PlainDate.from(date.earliest);
  const latest = date.latest === undefined ? undefined : Temporal.PlainDate.from(date.latest);
  if (earliest && Temporal.PlainDate.compare(earliest, end) > 0) {
    return { youngest: undefined, oldest: undefined, future: true };
  }
  return {
    youngest: latest && completedAge(latest, end),
    oldest: earliest && completedAge(earliest, end),
    future: false,
  };
}

/** Completed months from one day to another, both YYYY-MM-DD; none where the second comes first. */
export const monthsBetween = (from: string, to: string): number =>
  inMonths(completedAge(Temporal.PlainDate.from(from), Temporal.PlainDate.from(to)));

function completedAge(from: Temporal.PlainDate, to: Temporal.PlainDate): Age {
  if (Temporal.PlainDate.compare(from, to) >= 0) return { years: 0, months: 0 };
  const { years, months } = from.until(to, { largestUnit: 'years' });
  return { years, months };
}

/**
 * Prints an age: "7 years 5 months" (exact and under ten years), "7 years", "17 to 18 years", "4 months",
 * "3 to 4 months", "under 1 month", "at least 16 years", "under 12 years", "not yet", "not known".
 *
 * Ages count completed years and months, so an end that is only an upper bound is printed as the next whole one:
 * something that is at most 11 years and some months old is "under 12 years".
 */
export function printAge(span: AgeSpan): string {
  const { youngest, oldest } = span;
  if (span.future) return 'not yet';
  if (!youngest) return oldest ? underNext(oldest) : 'not known';
  if (!oldest) return isNew(youngest) ? 'not known' : `at least ${roughly(youngest)}`;
  if (youngest.years === oldest.years && youngest.months === oldest.months) return exactly(youngest);
  if (isNew(youngest)) return underNext(oldest);
  if (oldest.years === 0) return `${youngest.months} to ${count(oldest.months, 'month')}`;
  if (youngest.years === 0)
    return `${roughly(youngest)} to ${oldest.years < 10 ? exactly(oldest) : roughly(oldest)}`;
  if (youngest.years === oldest.years) return withinAYear(youngest, oldest);
  return `${youngest.years} to ${count(oldest.years, 'year')}`;
}

const count = (number: number, unit: string): string => `${number} ${unit}${number === 1 ? '' : 's'}`;

/** "1 year 7 to 8 months"; from ten years on the months say nothing. */
function withinAYear(youngest: Age, oldest: Age): string {
  if (youngest.years >= 10) return roughly(youngest);
  if (youngest.months === 0) return `${roughly(youngest)} to ${exactly(oldest)}`;
  return `${count(youngest.years, 'year')} ${youngest.months} to ${count(oldest.months, 'month')}`;
}

const isNew = (age: Age): boolean => age.years === 0 && age.months === 0;

/** Whole years, or whole months in the first year. */
const roughly = (age: Age): string =>
  age.years === 0 ? count(age.months, 'month') : count(age.years, 'year');

function exactly(age: Age): string {
  if (isNew(age)) return 'under 1 month';
  if (age.years === 0 || age.years >= 10 || age.months === 0) return roughly(age);
  return `${count(age.years, 'year')} ${count(age.months, 'month')}`;
}

const underNext = (age: Age): string =>
  `under ${age.years === 0 ? count(age.months + 1, 'month') : count(age.years + 1, 'year')}`;

/**
 * The same day `years` later (or earlier, if negative), YYYY-MM-DD.
 *
 * From 29 February to a year that has none, `leapDay` decides: `earlier` gives 28 February, `later` 1 March. The
 * caller takes the side that is safe for its rule: an alarm's end of life earlier, a record's keeping time later.
 *
 * @throws RangeError if `iso` is no day or `years` no whole number.
 */
export function addYears(iso: string, years: number, leapDay: 'earlier' | 'later' = 'earlier'): string {
  const from = Temporal.PlainDate.from(iso);
  const to = from.add({ years });
  return (leapDay === 'later' && to.day < from.day ? to.add({ days: 1 }) : to).toString();
}

/**
 * The day `days` later (or earlier, if negative), YYYY-MM-DD.
 *
 * @throws RangeError if `iso` is no day or `days` no whole number.
 */
export function addDays(iso: string, days: number): string {
  return Temporal.PlainDate.from(iso).add({ days }).toString();
}
