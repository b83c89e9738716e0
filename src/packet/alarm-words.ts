import { printDate } from '../facts/date.js';
import type { Alarm } from '../facts/house.js';
import type { AlarmEnd } from '../tally/alarms.js';
import { canShow } from '../tally/shown-by.js';
import type { Context } from './context.js';
import { isoDate } from './date-words.js';

/** "smoke", "carbon monoxide", "smoke and carbon monoxide": what an alarm warns of. */
export const alarmWords = ({ is }: Pick<Alarm, 'is'>): string =>
  is === 'both' ? 'smoke and carbon monoxide' : is.replaceAll('-', ' ');

/** Papers and photos that can show that an alarm is there, and when it was made. */
export const alarmEvidence = (context: Context, alarm: Alarm): string[] =>
  canShow(context.whole, [...alarm.evidence, ...(alarm.made?.evidence ?? [])]);

/** When an alarm is to be replaced: a date printed on it as it was read, never a day made out of a month. */
export function replaceByWords({ alarm, replaceBy, basis, due }: AlarmEnd): string {
  const printed = alarm['replace-by'];
  if (replaceBy === undefined) return 'no date read';
  const date = basis === 'printed on it' && printed !== undefined ? printDate(printed) : isoDate(replaceBy);
  return `${date}${due === true ? ', due' : ''}`;
}
