/**
 * One moment of a date: a day, month, season, year or decade, with its marks. A date is one of these, or a span
 * between two of them (date.ts). Pure calendar arithmetic in the Gregorian calendar.
 */
import { MONTHS } from './month-names.js';
import { bad, good, type Read } from './read.js';

const FIRST_YEAR = 1600;
const LAST_YEAR = 2200;

/** What to write, for any date that could not be read. */
export const DATE_FORMS =
  'write year-month-day, for example 2019-03-01; a month 2019-03, a year 2019, about a year 2019~, a span 2015/2019';

const SEASONS = ['spring', 'summer', 'autumn', 'winter'] as const;

/** One side of a slash, or the whole date when there is none. */
export interface Moment {
  /** How finely it was written. */
  readonly precision: 'day' | 'month' | 'season' | 'year' | 'decade';
  /** First and last day before any widening. */
  readonly first: string;
  readonly last: string;
  /** First and last day, widened where the writer says "about". */
  readonly earliest: string;
  readonly latest: string;
  readonly about: boolean;
  readonly uncertain: boolean;
  /** In words, without "not certain": "about April 2019". */
  readonly words: string;
}

/**
 * Reads one moment, such as `2026-04-11`, `2026-04~`, `2026-21`, `2019?` or `199X`.
 *
 * Refuses what no calendar has, years outside 1600 to 2200, and `~` on what has no agreed width.
 */
export function readMoment(text: string): Read<Moment> {
  const match = /^(\d{3}[\dX])(?:-(\d{2})(?:-(\d{2}))?)?([~?%]?)$/.exec(text);
  if (!match) return bad(`“${text}” is no date in a known form`, DATE_FORMS);
  const [, yearText = '', monthText, dayText, mark = ''] = match;
  const marks = { about: mark === '~' || mark === '%', uncertain: mark === '?' || mark === '%' };
  const year = Number(yearText.replace('X', '0'));
  if (year < FIRST_YEAR || year > LAST_YEAR || (yearText.endsWith('X') && year === LAST_YEAR)) {
    return bad(`the year ${yearText} is outside ${FIRST_YEAR} to ${LAST_YEAR}`, DATE_FORMS);
  }
  if (yearText.endsWith('X'))
    return monthText ? bad('a decade has no month', DATE_FORMS) : decade(yearText, year, marks);
  if (monthText === undefined) return good(yearMoment(year, marks));
  return monthText >= '21' && monthText <= '24' && dayText === undefined
    ? season(year, Number(monthText), marks)
    : monthOrDay(year, monthText, dayText, marks);
}

type Marks = Pick<Moment, 'about' | 'uncertain'>;

function yearMoment(year: number, marks: Marks): Moment {
  const reach = marks.about ? 1 : 0;
  return {
    ...marks,
    precision: 'year',
    first: iso(year, 1, 1),
    last: iso(year, 12, 31),
    earliest: iso(year - reach, 1, 1),
    latest: iso(year + reach, 12, 31),
    words: `${marks.about ? 'about ' : ''}${year}`,
  };
}

function decade(written: string, year: number, marks: Marks): Read<Moment> {
  if (marks.about) {
    return bad(
      '“about” has no agreed width for a decade',
      `write ${written}, or a span such as ${year - 2}/${year + 11}`,
    );
  }
  const days = { first: iso(year, 1, 1), last: iso(year + 9, 12, 31) };
  return good({ ...marks, precision: 'decade', ...plain(days), words: `the ${year}s` });
}

function season(year: number, number: number, marks: Marks): Read<Moment> {
  if (marks.about) {
    return bad('“about” has no agreed width for a season', `write the year, ${year}~, or a span of months`);
  }
  const begins = (number - 20) * 3; // spring, 21, begins in March
  const ends = begins + 2 > 12 ? { year: year + 1, month: 2 } : { year, month: begins + 2 };
  const days = {
    first: iso(year, begins, 1),
    last: iso(ends.year, ends.month, daysIn(ends.year, ends.month)),
  };
  const years = ends.year === year ? String(year) : `${year}–${printLaterYear(year, ends.year)}`;
  return good({ ...marks, precision: 'season', ...plain(days), words: `${SEASONS[number - 21]} ${years}` });
}

/** The second year of a winter: its last two digits, but all four across a century. */
function printLaterYear(year: number, later: number): string {
  return later % 100 < year % 100 ? String(later) : String(later).slice(2);
}

function monthOrDay(
  year: number,
  monthText: string,
  dayText: string | undefined,
  marks: Marks,
): Read<Moment> {
  const month = Number(monthText);
  const name = MONTHS[month - 1];
  if (!name) return bad(`there is no month ${monthText}`, DATE_FORMS);
  if (dayText === undefined) return good(monthMoment(year, month, marks));
  const day = Number(dayText);
  if (day === 0)
    return bad(
      `there is no day ${dayText}`,
      `write the month alone, ${year}-${monthText}, if the day is not known`,
    );
  if (day > daysIn(year, month)) {
    const problem = month === 2 && day === 29 ? `${year} is no leap year: February` : name;
    return bad(`${problem} has no day ${day}`, `write ${year}-${monthText} if the day is not known`);
  }
  if (marks.about) {
    return bad(
      '“about” has no agreed width for a day',
      `write the month, ${year}-${monthText}, or a span of days`,
    );
  }
  const only = iso(year, month, day);
  return good({ ...marks, precision: 'day', ...plain({ first: only, last: only }), words: dayWords(only) });
}

function monthMoment(year: number, month: number, marks: Marks): Moment {
  const reach = marks.about ? 1 : 0;
  const before = monthOf(year * 12 + month - 1 - reach);
  const after = monthOf(year * 12 + month - 1 + reach);
  return {
    ...marks,
    precision: 'month',
    first: iso(year, month, 1),
    last: iso(year, month, daysIn(year, month)),
    earliest: iso(before.year, before.month, 1),
    latest: iso(after.year, after.month, daysIn(after.year, after.month)),
    words: `${marks.about ? 'about ' : ''}${MONTHS[month - 1]} ${year}`,
  };
}

/** Bounds that nothing widens. */
const plain = (days: { first: string; last: string }) => ({
  ...days,
  earliest: days.first,
  latest: days.last,
});

const monthOf = (count: number) => ({ year: Math.floor(count / 12), month: (count % 12) + 1 });

const two = (number: number): string => String(number).padStart(2, '0');

const iso = (year: number, month: number, day: number): string => `${year}-${two(month)}-${two(day)}`;

/** Days in a month of the Gregorian calendar. */
function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** A day YYYY-MM-DD in words: "11 April 2026". */
export function dayWords(day: string): string {
  const [year = '', month = '', date = ''] = day.split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1]} ${year}`;
}
