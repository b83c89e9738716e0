/** By when a thing is due: the words of the rule, and a day where a date of the sale fixes one. */
import { addDays } from '../../facts/age.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { dayWords } from '../../facts/date-moment.js';
import type { House } from '../../facts/house.js';
import type { DutyRule } from '../tables/duties.js';
import { closingOf } from './contract-day.js';
import type { DutyDue } from './duty.js';

/** Without a day of their own before the closing. */
const CLOSING_ENDS: readonly string[] = ['before-closing', 'once-offered', 'once-contracted'];

export function dueOf({ due }: DutyRule, house: House): DutyDue | undefined {
  if (due === undefined) return undefined;
  const contract = house.duties?.contract;
  const closing = closingOf(house);
  if (due.by === 'while-working') return { words: due.words, day: undefined };
  if (CLOSING_ENDS.includes(due.by)) return against(due.words, 'closing', closing);
  if (due.by === 'days-before-closing') return daysBefore(due.words, due.days, closing);
  // The day of an offer isn’t written anywhere; it is no later than the contract, and the contract no later than the closing.
  return contract === undefined
    ? against(due.words, 'closing', closing)
    : against(due.words, 'contract', contract);
}

const against = (words: string, what: string, date: HouseDate | undefined): DutyDue =>
  date === undefined
    ? { words, day: undefined }
    : { words: `${words} (${what} ${printDate(date)})`, day: date.latest };

/** Of a closing that is known as a month, its first day is the one to go by, and its last the one to be late after. */
function daysBefore(words: string, days: number, closing: HouseDate | undefined): DutyDue {
  if (closing === undefined) return { words, day: undefined };
  const [first, last] = [closing.earliest, closing.latest].map((day) => day && addDays(day, -days));
  if (first === undefined) return { words: `${words} (closing ${printDate(closing)})`, day: last };
  const known = first === last ? '' : ` to be sure, as the closing is known as ${printDate(closing)}`;
  return { words: `${words}: ${dayWords(first)}${known}`, day: last };
}
