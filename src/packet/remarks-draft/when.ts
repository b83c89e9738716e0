/** Dates of a draft: years, as listing texts have them, and whether something may still be called new. */
import { ageSpan, inMonths } from '../../facts/age.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { newWordRule } from '../../tally/advertising.js';
import type { Deed } from '../../tally/improvements.js';
import type { Context } from '../context.js';

/** "2019", "about 2005", "between 2003 and 2005": the year, as far as the date tells it. Undefined: it tells none. */
export function yearWords(date: HouseDate | undefined): string | undefined {
  if (date === undefined || date.uncertain) return undefined;
  const [first, last] = [date.earliest?.slice(0, 4), date.latest?.slice(0, 4)];
  if (first !== undefined && first === last && !date.about) return first;
  // A month of one year needs no more than the year; anything else is printed as it was written.
  return printDate(date);
}

/** "from 2009", "from about 1991", "from 2013 or 2014", "from between 2003 and 2005": behind a thing. */
export const fromYear = (year: string): string => `from ${year}`;

/** "in 2026", "in 2013 or 2014", "about 2004": behind a verb. */
export function inYear(date: HouseDate | undefined): string | undefined {
  const words = yearWords(date);
  return words === undefined ? undefined : /^\d{4}/u.test(words) ? `in ${words}` : words;
}

/** Whether a thing put in at that date was new at the listing, by the rule on the word; the whole date has to be. */
function mayBeNew({ house, tally }: Context, date: HouseDate): boolean {
  const day = house.house.listed?.latest ?? tally.asOf;
  const age = ageSpan(date, day);
  if (age.future) return true;
  return age.oldest !== undefined && inMonths(age.oldest) < newWordRule().months;
}

/** "new in 2026", "installed in 2025", "refinished in 2026": what was done, and when. Undefined: no date is known. */
export function deedWords(context: Context, did: Deed, date: HouseDate | undefined): string | undefined {
  const when = inYear(date);
  if (when === undefined || date === undefined) return undefined;
  if (did !== 'new') return `${did} ${when}`;
  return mayBeNew(context, date) && when.startsWith('in ') ? `new ${when}` : `installed ${when}`;
}
