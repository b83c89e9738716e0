import type { Alarm } from '../facts/house.js';
import { canShow } from '../tally/shown-by.js';
import type { Context } from './context.js';

/** "smoke", "carbon monoxide", "smoke and carbon monoxide": what an alarm warns of. */
export const alarmWords = ({ is }: Pick<Alarm, 'is'>): string =>
  is === 'both' ? 'smoke and carbon monoxide' : is.replaceAll('-', ' ');

/** Papers and photos that can show that an alarm is there, and when it was made. */
export const alarmEvidence = (context: Context, alarm: Alarm): string[] =>
  canShow(context.whole, [...alarm.evidence, ...(alarm.made?.evidence ?? [])]);
