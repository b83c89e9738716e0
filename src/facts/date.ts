/**
 * Dates as someone knows them: a day, a month, a season, a year, a decade, "about", "before", or a span.
 *
 * The forms are those of EDTF (ISO 8601-2:2019, the Library of Congress's Extended Date/Time Format), with three
 * readings settled for houses: `2019~` is that year give or take one (a month: give or take one), `?` says the
 * writer is not certain and widens nothing, and a span `2015/2019` means *some day between*, not "all through".
 * Seasons are northern: spring is March to May, and the winter of a year begins in its December.
 */
import { compareText } from './compare-text.js';
import { DATE_FORMS, dayWords, type Moment, readMoment } from './date-moment.js';
import { suggestSpelling } from './date-spelling.js';
import { bad, good, type Read } from './read.js';
import { LONGEST_TEXT } from './written-number.js';

/** A date with its uncertainty kept. */
export interface HouseDate {
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
  /** The first day it can be, YYYY-MM-DD; undefined when it is open towards the past. */
  readonly earliest: string | undefined;
  /** The last day it can be, YYYY-MM-DD; undefined when it is open towards the future. */
  readonly latest: string | undefined;
  /** How finely it was written; everything with a slash is a span. */
  readonly precision: 'day' | 'month' | 'season' | 'year' | 'decade' | 'span';
  /** Written with `~` or `%`, at either end of a span: the bounds are already widened. */
  readonly about: boolean;
  /** Written with `?` or `%`: the writer is not certain of it. */
  readonly uncertain: boolean;
}

/** A moment at each end that is given; the same one at both ends when there is no slash. */
interface Parsed {
  readonly from: Moment | undefined;
  readonly to: Moment | undefined;
  readonly slash: boolean;
}

/**
 * Reads a date: `2026-04-11`, `2026-04`, `2026`, `199X`, seasons `2026-21` (spring) to `2026-24` (winter),
 * `2019~` (about), `2019?` (not certain), `2019%` (both), `../2010`, `2015/..`, `2015/2019`, `2015-06/2016-02`.
 *
 * Refuses days that do not exist, years outside 1600 to 2200, `~` on what has no agreed width (a day, a season, a
 * decade), spans whose ends overlap or are the wrong way round, and the other ways people write dates; for those
 * the hint gives the spelling to use.
 */
export function readDate(text: string): Read<HouseDate> {
  const written = text.trim();
  const parsed = parseDate(written);
  if (!parsed.ok) return parsed;
  const { from, to, slash } = parsed.value;
  return good({
    written,
    earliest: from?.earliest,
    latest: to?.latest,
    precision: slash || !from ? 'span' : from.precision,
    about: Boolean(from?.about || to?.about),
    uncertain: isUncertain(parsed.value),
  });
}

function parseDate(written: string): Read<Parsed> {
  if (written === '') return bad('there is no date', DATE_FORMS);
  if (written.length > LONGEST_TEXT) return bad('this is too long for a date', DATE_FORMS);
  const parsed = parseStrictly(written);
  return parsed.ok ? parsed : (otherHabit(written) ?? parsed);
}

/** The refusal of a text in another habit, with the spellings it may stand for in the hint. */
function otherHabit(written: string): Read<never> | undefined {
  const spelt = suggestSpelling(written).map((spelling) => ({ spelling, parsed: parseStrictly(spelling) }));
  const usable = spelt.flatMap(({ spelling, parsed }) =>
    parsed.ok
      ? [`${spelling} for “${momentWords(parsed.value)}${isUncertain(parsed.value) ? ' (not certain)' : ''}”`]
      : [],
  );
  if (usable.length > 0)
    return bad(`“${written}” is not how a date is written here`, `write ${usable.join(', or ')}`);
  // In 4/31/2026 the day is what is wrong, whatever the habit.
  const first = spelt[0]?.parsed;
  return first && !first.ok ? first : undefined;
}

function parseStrictly(written: string): Read<Parsed> {
  const ends = written.split('/');
  if (ends.length > 2) return bad('a span has two ends', 'write first/last, for example 2015/2019');
  const [left = '', right] = ends;
  if (right !== undefined) return parseSpan(left, right);
  const moment = readMoment(left);
  return moment.ok ? good({ from: moment.value, to: moment.value, slash: false }) : moment;
}

function parseSpan(left: string, right: string): Read<Parsed> {
  if (left === '' || right === '') {
    return bad(
      'one end of the span is empty',
      'write two dots for an open end, for example ../2010 or 2015/..',
    );
  }
  if (left === '..' && right === '..') {
    return bad(
      'a span that is open at both ends says nothing',
      'write "not known", or one end, for example ../2010',
    );
  }
  const from = left === '..' ? undefined : readMoment(left);
  if (from && !from.ok) return from;
  const to = right === '..' ? undefined : readMoment(right);
  if (to && !to.ok) return to;
  for (const end of [from, to]) {
    if (end && (end.value.precision === 'season' || end.value.precision === 'decade')) {
      return bad(
        `a span does not begin or end with a ${end.value.precision}`,
        'write its ends as years or months',
      );
    }
  }
  if (from && to && to.value.first <= from.value.last) return overlapping(from.value, to.value);
  return good({ from: from?.value, to: to?.value, slash: true });
}

function overlapping(from: Moment, to: Moment): Read<never> {
  if (to.last < from.first)
    return bad('the span ends before it begins', 'write the earlier end first, for example 2015/2019');
  return bad(
    'the two ends of the span overlap',
    'write both ends to the same precision, for example 2015-01/2015-06',
  );
}

/**
 * Prints a date in words: "11 April 2026", "about 2019", "2010 or before", "between 2015 and 2019",
 * "2008 or 2009", "the 1990s", "spring 2026", "winter 2026–27"; an uncertain one ends in "(not certain)".
 *
 * A date whose `written` is not one of this module's forms (one worked out from a serial number, say) is printed
 * from its bounds.
 */
export function printDate(date: HouseDate): string {
  const parsed = parseDate(date.written);
  const words = parsed.ok ? momentWords(parsed.value) : boundWords(date);
  return date.uncertain ? `${words} (not certain)` : words;
}

/** Whether some day can be that of both. ISO days sort as text; an open end reaches everything. */
export const mayBeOneDay = (
  one: Pick<HouseDate, 'earliest' | 'latest'>,
  other: Pick<HouseDate, 'earliest' | 'latest'>,
): boolean =>
  (one.earliest ?? '') <= (other.latest ?? '9999') && (other.earliest ?? '') <= (one.latest ?? '9999');

const isUncertain = ({ from, to }: Parsed): boolean => Boolean(from?.uncertain || to?.uncertain);

function momentWords({ from, to, slash }: Parsed): string {
  if (!slash && from) return from.words;
  if (!from || !to) return openWords(from?.words, to?.words);
  const years = [from, to].every((end) => end.precision === 'year' && !end.about);
  if (years && Number(to.words) - Number(from.words) === 1) return `${from.words} or ${to.words}`;
  return `between ${from.words} and ${to.words}`;
}

function boundWords({ earliest, latest }: HouseDate): string {
  const from = earliest && dayWords(earliest);
  const to = latest && dayWords(latest);
  if (!from || !to) return openWords(from, to);
  return from === to ? from : `between ${from} and ${to}`;
}

function openWords(from: string | undefined, to: string | undefined): string {
  if (from) return `${from} or after`;
  return to ? `${to} or before` : 'not known';
}

/**
 * Orders dates by their last possible day, then by their first, then by how they are written.
 *
 * An end that is open towards the future sorts after every day, one that is open towards the past before every
 * day; the answer is 0 only for dates that are written alike and have the same bounds.
 */
export function compareDates(a: HouseDate, b: HouseDate): number {
  return (
    compareText(a.latest ?? '9999', b.latest ?? '9999') ||
    compareText(a.earliest ?? '0000', b.earliest ?? '0000') ||
    compareText(a.written, b.written)
  );
}
