import { createHash } from 'node:crypto';
import ical, { ICalCalendarMethod, ICalEventRepeatingFreq } from 'ical-generator';
import type { CareTask } from '../facts/house.js';
import type { Context } from './context.js';
import type { PacketExport } from './packet.js';
import { upperFirst } from './rich.js';

/**
 * The care tasks with a date, as an iCalendar file (RFC 5545) of all-day events. Stamps are the as-of date, so
 * that the same facts give the same bytes. Undefined if no task is dated.
 */
export function careCalendar(context: Context): PacketExport | undefined {
  const dated = context.house.care.flatMap((task) =>
    task.next?.earliest === undefined ? [] : [{ task, day: task.next.earliest }],
  );
  const alarms = context.tally.alarms.ends.flatMap((end, index) =>
    end.replaceBy === undefined ? [] : [{ end, index, day: end.replaceBy }],
  );
  if (dated.length + alarms.length === 0) return undefined;
  const calendar = ical({
    name: calendarText(`${context.house.house.name}: care`),
    prodId: { company: 'sillplate', product: 'care book', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  const add = (
    id: string,
    day: string,
    summary: string,
    description: string | undefined,
    task: CareTask | undefined,
  ): void => {
    const event = calendar.createEvent({
      id: `${id}@sillplate.invalid`,
      start: utcDay(day),
      allDay: true,
      stamp: utcDay(context.tally.asOf),
      summary,
      ...(description === undefined ? {} : { description }),
    });
    const repeat = task === undefined ? undefined : repeating(task.every);
    if (repeat !== undefined) event.repeating(repeat);
  };
  for (const { task, day } of dated)
    add(uidOf(context, task.what, task.for), day, upperFirst(task.what), task.how, task);
  for (const { end, index, day } of alarms)
    add(
      uidOf(context, 'replace alarm', `${end.alarm.is} ${end.alarm.where} ${index}`),
      day,
      `Replace the ${end.alarm.is === 'both' ? 'smoke and carbon monoxide' : end.alarm.is.replace('-', ' ')} alarm`,
      `By its date: ${end.basis}.`,
      undefined,
    );
  return {
    file: 'care.ics',
    title: 'Care calendar (iCalendar)',
    mediaType: 'text/calendar',
    text: calendar.toString().replace(/\r?\n/g, '\r\n'),
  };
}

/** RFC 5545, 3.3.11. The library writes the calendar's own name as it is, and a line break in it would be a line of the file. */
const calendarText = (text: string): string => text.replace(/\s+/gu, ' ').replace(/[\\;,]/gu, '\\$&');

const utcDay = (iso: string): Date => new Date(`${iso}T00:00:00Z`);

function repeating(every: string): { freq: ICalEventRepeatingFreq; interval: number } | undefined {
  const match = /^(?:(\d+) )?(day|week|month|year)s?$/.exec(every);
  if (match === null) return undefined;
  const freq = {
    day: ICalEventRepeatingFreq.DAILY,
    week: ICalEventRepeatingFreq.WEEKLY,
    month: ICalEventRepeatingFreq.MONTHLY,
    year: ICalEventRepeatingFreq.YEARLY,
  }[match[2] as 'day'];
  return { freq, interval: Number(match[1] ?? 1) };
}

/** The same task keeps its UID wherever it stands in the list, and the UID tells nothing about the house. */
function uidOf(context: Context, what: string, of: string | undefined): string {
  return createHash('sha256')
    .update(JSON.stringify([context.folder, what, of ?? '']))
    .digest('hex')
    .slice(0, 24);
}
