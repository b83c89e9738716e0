/** The day of a row, in the ways people and spreadsheets write one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSheetDate } from '../../src/facts/sheet-date.js';

const day = (text: string): string => {
  const read = readSheetDate(text);
  return read.ok ? `${read.value.day} ${read.value.order}` : `${read.problem} — ${read.hint}`;
};

describe('the day of a row', () => {
  it.each([
    ['2026-02-17', '2026-02-17 plain'],
    [' 2024-02-29 ', '2024-02-29 plain'],
    ['2/17/2026', '2026-02-17 month-first'],
    ['02/17/26', '2026-02-17 month-first'],
    ['2/3/2026', '2026-02-03 either'],
    ['5/5/2026', '2026-05-05 plain'],
    ['17/2/2026', '2026-02-17 day-first'],
    ['Feb 17, 2026', '2026-02-17 plain'],
    ['February 17 2026', '2026-02-17 plain'],
    ['Sept. 3rd, 2026', '2026-09-03 plain'],
    ['17 Feb 2026', '2026-02-17 plain'],
    ['17-Feb-26', '2026-02-17 plain'],
    ['1 may 2026', '2026-05-01 plain'],
  ])('%s', (text, expected) => {
    expect(day(text)).toBe(expected);
  });

  it.each([
    ['', 'this row has no date'],
    ['2026-02-30', 'February has no day 30'],
    ['2026-13-01', 'there is no month 13'],
    ['2/30/2026', 'February has no day 30'],
    ['4/31/2026', 'April has no day 31'],
    ['13/13/2026', 'there is no month 13'],
    ['Feb 29, 2025', '2025 is no leap year'],
    ['2026-02', 'needs the day'],
    ['2026', 'needs the day'],
    ['2026~', 'needs the day'],
    ['2026-02-17?', 'needs the day'],
    ['2026-02-01/2026-02-17', 'needs the day'],
    ['17.02.2026', 'write 2026-02-17'],
    ['2-3-2026', 'write 2026-02-03'],
    ['46070', 'count of days'],
    ['yesterday', 'is no date'],
    ['Foo 17, 2026', 'is no date'],
    ['9'.repeat(300), 'too long'],
  ])('refuses %s', (text, expected) => {
    expect(readSheetDate(text).ok).toBe(false);
    expect(day(text)).toContain(expected);
  });

  it('never guesses a month for the missing day, whatever it refuses', () => {
    for (const text of ['2026-02-30', '2/30/2026', 'Feb 30, 2026'])
      expect(day(text)).toContain('write year-month-day');
  });

  it('reads every day of a year alike in every way of writing it', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }),
        (date) => {
          const iso = date.toISOString().slice(0, 10);
          const [year = '', month = '', dayOfMonth = ''] = iso.split('-');
          const word = date.toLocaleString('en-US', { month: 'short', timeZone: 'UTC' });
          for (const text of [
            iso,
            `${word} ${Number(dayOfMonth)}, ${year}`,
            `${dayOfMonth} ${word} ${year.slice(2)}`,
          ])
            expect(day(text)).toBe(`${iso} plain`);
          expect(day(`${Number(month)}/${Number(dayOfMonth)}/${year}`)).toContain(iso);
        },
      ),
      { seed: 2_609 },
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const read = readSheetDate(text);
        expect(read.ok || read.hint.length > 0).toBe(true);
      }),
      { seed: 2_609 },
    );
  });
});
