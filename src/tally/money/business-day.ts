/**
 * Days on which returns are due: a Saturday, a Sunday or a holiday moves them to the next business day.
 *
 * The one holiday that can meet the two days used here is the District of Columbia's of April 16, which is kept on
 * the Friday before if it falls on a Saturday and on the Monday after if on a Sunday. Source: `return-due` in
 * tables/payees.yaml and `return-due-in-april` in tables/retention.yaml.
 */
import { dayNumber, dayOfNumber, weekday } from '../../facts/day-number.js';

const SATURDAY = 5;
const SUNDAY = 6;

/** Information returns on what was paid in `year` are due on this day, YYYY-MM-DD. */
export const informationReturnDue = (year: number): string => nextBusinessDay(`${year + 1}-01-31`);

/** A person's income tax return for `year` is due on this day, YYYY-MM-DD; years that were put off are not known here. */
export const incomeReturnDue = (year: number): string => nextBusinessDay(`${year + 1}-04-15`);

/** `day` itself if it is a business day as far as this file knows holidays, else the next one. */
function nextBusinessDay(day: string): string {
  let number = dayNumber(day);
  while (weekday(number) >= SATURDAY || isAprilHoliday(number)) number += 1;
  return dayOfNumber(number);
}

function isAprilHoliday(number: number): boolean {
  const own = dayNumber(`${dayOfNumber(number).slice(0, 4)}-04-16`);
  const kept = { [SATURDAY]: own - 1, [SUNDAY]: own + 1 }[weekday(own)] ?? own;
  return number === kept;
}
