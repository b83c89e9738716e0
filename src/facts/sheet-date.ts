/**
 * The day in a cell of a sheet: `2026-02-17`, and as spreadsheets and people in the United States write it,
 * `2/17/2026`, `02/17/26`, `Feb 17, 2026`, `17 Feb 2026`.
 *
 * A row of a sheet has one whole day: a month, a year or "about" is refused. Whether 3/4/2026 is March or April
 * can't be told from the cell alone; the answer says so, and the sheet as a whole decides.
 */
import { readDate } from './date.js';
import { readMoment } from './date-moment.js';
import { monthOfName } from './month-names.js';
import { bad, good, type Read } from './read.js';
import { LONGEST_TEXT } from './written-number.js';

export interface SheetDay {
  /** YYYY-MM-DD, a real day. Of a date with slashes that fits both ways: month first. */
  readonly day: string;
  /**
   * plain: no doubt. Of a date with slashes, month-first or day-first: it fits in no other way; either: both fit,
   * and they differ.
   */
  readonly order: 'plain' | 'month-first' | 'day-first' | 'either';
  /** The other reading of `either`. */
  readonly other: string | undefined;
}

const DAY_FORM = 'write year-month-day, for example 2026-03-14';
const ISO = /^\d{4}-\d{2}-\d{2}$/;
const STROKES = /^(\d{1,2})\/(\d{1,2})\/(\d{4}|\d{2})$/;
const MONTH_DAY = /^([a-z]{3,9})\.?[\s-]+(\d{1,2})(?:st|nd|rd|th)?(?:,\s*|\s+|-)(\d{4}|\d{2})$/i;
const DAY_MONTH = /^(\d{1,2})(?:st|nd|rd|th)?[\s-]+([a-z]{3,9})\.?(?:,\s*|\s+|-)(\d{4}|\d{2})$/i;

/** Reads the day of a row. A year of two digits is of this century. */
export function readSheetDate(text: string): Read<SheetDay> {
  const written = text.trim();
  if (written === '') return bad('this row has no date', DAY_FORM);
  if (written.length > LONGEST_TEXT) return bad('this is too long for a date', DAY_FORM);
  if (ISO.test(written)) return plain(written);
  const strokes = STROKES.exec(written);
  if (strokes) return readStrokes(strokes[1] ?? '', strokes[2] ?? '', yearOf(strokes[3] ?? ''));
  const monthDay = MONTH_DAY.exec(written);
  if (monthDay) return withMonth(written, monthDay[1] ?? '', monthDay[2] ?? '', monthDay[3] ?? '');
  const dayMonth = DAY_MONTH.exec(written);
  if (dayMonth) return withMonth(written, dayMonth[2] ?? '', dayMonth[1] ?? '', dayMonth[3] ?? '');
  return refuse(written);
}

const two = (digits: string): string => digits.padStart(2, '0');
const yearOf = (digits: string): string => (digits.length === 2 ? `20${digits}` : digits);

function plain(iso: string): Read<SheetDay> {
  const day = readDay(iso);
  return day.ok ? good({ day: day.value, order: 'plain', other: undefined }) : day;
}

/** A real day, or what is wrong with it; the way out is the paper, since a row can't go without its day. */
function readDay(iso: string): Read<string> {
  const moment = readMoment(iso);
  return moment.ok ? good(iso) : bad(moment.problem, `look at the paper again and ${DAY_FORM}`);
}

function readStrokes(first: string, second: string, year: string): Read<SheetDay> {
  const monthFirst = readDay(`${year}-${two(first)}-${two(second)}`);
  const dayFirst = readDay(`${year}-${two(second)}-${two(first)}`);
  if (monthFirst.ok && dayFirst.ok && monthFirst.value !== dayFirst.value)
    return good({ day: monthFirst.value, order: 'either', other: dayFirst.value });
  // 5/5/2026 is one day whichever way it is read, and proves nothing.
  if (monthFirst.ok)
    return good({ day: monthFirst.value, order: dayFirst.ok ? 'plain' : 'month-first', other: undefined });
  // 4/31/2026 is a slip of the hand, not a habit: only a first number that is no month tells of one.
  if (dayFirst.ok && Number(first) > 12)
    return good({ day: dayFirst.value, order: 'day-first', other: undefined });
  return monthFirst;
}

function withMonth(written: string, word: string, day: string, year: string): Read<SheetDay> {
  const month = monthOfName(word);
  return month === undefined ? refuse(written) : plain(`${yearOf(year)}-${two(String(month))}-${two(day)}`);
}

function refuse(written: string): Read<never> {
  if (/^\d{5}(\.\d+)?$/.test(written))
    return bad(
      `${written} is a spreadsheet’s count of days, not a date`,
      'give the column a date format in the spreadsheet and save it again',
    );
  const date = readDate(written);
  if (date.ok) return bad(`“${written}” is not one day, and a row of a sheet needs the day`, DAY_FORM);
  return /write \d{4}-\d{2}-\d{2}/.test(date.hint) ? date : bad(`“${written}” is no date`, DAY_FORM);
}
