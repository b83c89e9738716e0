/**
 * Independent check: ical.js 2 (MPL-2.0) reads the care calendar and works out the dates; the form of the lines is
 * that of RFC 5545, 3.1 (CRLF, at most 75 octets).
 */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from '../rooms/house-from.js';

const AS_OF = '2026-06-30';

const WILD = 'wipe; then, rinse\\dry: “BEGIN:VEVENT” – Zahnbürste, 水道, '.repeat(4).trim();

const SPEC: PartialSpec = {
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: `20' x 20'` }],
  rooms: [{ id: 'hall', level: 'main', use: 'hall' }],
  alarms: [{ is: 'both', where: 'hall', made: '2026-01', 'replace-by': '2036-01' }],
  care: [
    { what: 'look into the gutters', every: '6 months', next: '2026-10' },
    { what: 'change the filter', every: '2 weeks', next: '2026-07-05', how: '16 x 25 x 1 in, arrow inwards' },
    { what: 'sweep the chimney', every: 'year', next: '2027-09-01' },
    { what: 'seal the grout', every: '3 years', next: '2028-05-09' },
    { what: 'run the pump', every: '10 days', next: '2026-12-27' },
    { what: WILD, every: 'month', next: '2026-12-01', how: 'one line\ntwo lines' },
    { what: 'not dated, and so not in it', every: 'month' },
  ],
};

function calendarOf(spec: PartialSpec): string {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, AS_OF);
  const packet = composePacket({ folder: 'test-house', house, tally, edition: 'care', photos: new Map() });
  const file = packet.exports.find((one) => one.file === 'care.ics');
  if (file === undefined || !('text' in file)) throw new Error('no calendar was made');
  expect(file.mediaType).toBe('text/calendar');
  return file.text;
}

const eventsOf = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
};

/** The first days on which an event happens. */
function daysOf(event: InstanceType<typeof ICAL.Event>, count: number): string[] {
  const days: string[] = [];
  const all = event.iterator();
  for (let day = all.next(); day && days.length < count; day = all.next()) days.push(day.toString());
  return days;
}

const text = calendarOf(SPEC);

describe('the care calendar', () => {
  it('ends every line with CRLF, and folds at 75 octets without cutting a letter', () => {
    expect(text.endsWith('END:VCALENDAR\r\n') || text.endsWith('END:VCALENDAR')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    const lines = text.split('\r\n');
    expect(lines.filter((line) => Buffer.byteLength(line) > 75)).toEqual([]);
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
    expect(text).not.toContain('\uFFFD');
  });

  it('is a calendar of whole days, each event with its own name and the as-of date as its stamp', () => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(String(calendar.getFirstPropertyValue('prodid'))).toContain('sillplate');
    const events = eventsOf(text);
    expect(events).toHaveLength(7);
    expect(new Set(events.map((event) => event.uid)).size).toBe(7);
    for (const event of events) {
      expect(event.startDate.isDate).toBe(true);
      expect(String(event.component.getFirstPropertyValue('dtstamp'))).toMatch(/^2026-06-30T00:00:00/u);
    }
  });

  it('says what was written, whatever it looks like', () => {
    const summaries = eventsOf(text).map((event) => event.summary);
    expect(summaries).toContain(WILD.replace(/^w/u, 'W'));
    expect(summaries).toContain('Look into the gutters');
    expect(summaries.some((summary) => /smoke and carbon monoxide/iu.test(summary))).toBe(true);
    expect(eventsOf(text).map((event) => event.description)).toContain('one line\ntwo lines');
    expect(text).not.toContain('not dated');
  });

  // Worked out by hand.
  it.each([
    ['Look into the gutters', ['2026-10-01', '2027-04-01', '2027-10-01', '2028-04-01']],
    ['Change the filter', ['2026-07-05', '2026-07-19', '2026-08-02', '2026-08-16']],
    ['Sweep the chimney', ['2027-09-01', '2028-09-01', '2029-09-01', '2030-09-01']],
    ['Seal the grout', ['2028-05-09', '2031-05-09', '2034-05-09', '2037-05-09']],
    ['Run the pump', ['2026-12-27', '2027-01-06', '2027-01-16', '2027-01-26']],
  ])('repeats: %s', (summary, days) => {
    const event = eventsOf(text).find((one) => one.summary === summary);
    if (event === undefined) throw new Error(`no event ${summary}`);
    expect(daysOf(event, 4)).toEqual(days);
  });

  it('has an alarm’s last day once', () => {
    const event = eventsOf(text).find((one) => one.summary.startsWith('Replace the'));
    expect(event === undefined ? [] : daysOf(event, 3)).toEqual([event?.startDate.toString()]);
    expect(event?.startDate.toString()).toMatch(/^203[56]-/u);
  });
});
