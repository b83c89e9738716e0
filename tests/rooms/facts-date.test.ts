import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareDates, type HouseDate, printDate, readDate } from '../../src/facts/date.js';
import { suggestSpelling } from '../../src/facts/date-spelling.js';

const date = (text: string): HouseDate => {
  const read = readDate(text);
  if (!read.ok) throw new Error(`${text}: ${read.problem}`);
  return read.value;
};

describe('readDate', () => {
  it.each([
    ['2026-04-11', '2026-04-11', '2026-04-11', 'day'],
    ['2024-02-29', '2024-02-29', '2024-02-29', 'day'],
    ['2000-02-29', '2000-02-29', '2000-02-29', 'day'],
    ['2026-04', '2026-04-01', '2026-04-30', 'month'],
    ['2024-02', '2024-02-01', '2024-02-29', 'month'],
    ['2026', '2026-01-01', '2026-12-31', 'year'],
    ['199X', '1990-01-01', '1999-12-31', 'decade'],
    ['2026-21', '2026-03-01', '2026-05-31', 'season'],
    ['2026-22', '2026-06-01', '2026-08-31', 'season'],
    ['2026-23', '2026-09-01', '2026-11-30', 'season'],
    ['2026-24', '2026-12-01', '2027-02-28', 'season'],
    ['2023-24', '2023-12-01', '2024-02-29', 'season'],
    ['../2010', undefined, '2010-12-31', 'span'],
    ['2015/..', '2015-01-01', undefined, 'span'],
    ['2015/2019', '2015-01-01', '2019-12-31', 'span'],
    ['2015-06/2016-02', '2015-06-01', '2016-02-29', 'span'],
    ['2015-06-03/2016', '2015-06-03', '2016-12-31', 'span'],
  ])('reads %s', (text, earliest, latest, precision) => {
    expect(readDate(text)).toEqual({
      ok: true,
      value: { written: text, earliest, latest, precision, about: false, uncertain: false },
    });
  });

  // The width of ~ is this project's choice (a year or a month to either side); EDTF gives none.
  it.each([
    ['2019~', '2018-01-01', '2020-12-31', true, false],
    ['2019?', '2019-01-01', '2019-12-31', false, true],
    ['2019%', '2018-01-01', '2020-12-31', true, true],
    ['2019-04~', '2019-03-01', '2019-05-31', true, false],
    ['2020-01~', '2019-12-01', '2020-02-29', true, false],
    ['2019-12%', '2019-11-01', '2020-01-31', true, true],
    ['2019-04-11?', '2019-04-11', '2019-04-11', false, true],
    ['2015~/2019', '2014-01-01', '2019-12-31', true, false],
    ['2015/2019~', '2015-01-01', '2020-12-31', true, false],
    ['../2010~', undefined, '2011-12-31', true, false],
    ['2015?/..', '2015-01-01', undefined, false, true],
    ['199X?', '1990-01-01', '1999-12-31', false, true],
    ['2026-22?', '2026-06-01', '2026-08-31', false, true],
  ])('widens %s only where it says about', (text, earliest, latest, about, uncertain) => {
    expect(date(text)).toMatchObject({ earliest, latest, about, uncertain });
  });

  it.each([
    ['2019-13-01', 'there is no month 13'],
    ['2019-00', 'there is no month 00'],
    ['2026-25', 'there is no month 25'],
    ['2026-06-31', 'June has no day 31'],
    ['2026-02-30', 'February has no day 30'],
    ['2025-02-29', '2025 is no leap year: February has no day 29'],
    ['1900-02-29', '1900 is no leap year: February has no day 29'],
    ['2026-04-00', 'there is no day 00'],
    ['1492', 'the year 1492 is outside 1600 to 2200'],
    ['2201-01-01', 'the year 2201 is outside 1600 to 2200'],
    ['220X', 'the year 220X is outside 1600 to 2200'],
    ['2019/2015', 'the span ends before it begins'],
    ['2015/2015-06', 'the two ends of the span overlap'],
    ['2015/2015', 'the two ends of the span overlap'],
    ['../..', 'a span that is open at both ends says nothing'],
    ['/2010', 'one end of the span is empty'],
    ['2015/2017/2019', 'a span has two ends'],
    ['199X/2005', 'a span does not begin or end with a decade'],
    ['2019-04-11~', '“about” has no agreed width for a day'],
    ['2026-21~', '“about” has no agreed width for a season'],
    ['199X~', '“about” has no agreed width for a decade'],
    ['199X-04', 'a decade has no month'],
    ['19XX', '“19XX” is no date in a known form'],
    ['2019-04-11~?', '“2019-04-11~?” is no date in a known form'],
    ['last spring', '“last spring” is no date in a known form'],
    ['4/31/2026', 'April has no day 31'],
    ['2025-2-29', '2025 is no leap year: February has no day 29'],
    ['', 'there is no date'],
  ])('refuses %s: %s', (text, problem) => {
    expect(readDate(text)).toMatchObject({ ok: false, problem });
  });

  it.each([
    ['4/11/2026', 'write 2026-04-11 for “11 April 2026”, or 2026-11-04 for “4 November 2026”'],
    ['4/4/2026', 'write 2026-04-04 for “4 April 2026”'],
    ['4/23/2026', 'write 2026-04-23 for “23 April 2026”'],
    ['11.4.2026', 'write 2026-11-04 for “4 November 2026”, or 2026-04-11 for “11 April 2026”'],
    ['April 2026', 'write 2026-04 for “April 2026”'],
    ['Sept. 2026', 'write 2026-09 for “September 2026”'],
    ['April 11, 2026', 'write 2026-04-11 for “11 April 2026”'],
    ['11th April 2026', 'write 2026-04-11 for “11 April 2026”'],
    ['2026/04', 'write 2026-04 for “April 2026”'],
    ['2026/04/11', 'write 2026-04-11 for “11 April 2026”'],
    ['2026-4', 'write 2026-04 for “April 2026”'],
    ['04/2026', 'write 2026-04 for “April 2026”'],
    ['20260411', 'write 2026-04-11 for “11 April 2026”'],
    ['2026-04-11T10:00', 'write 2026-04-11 for “11 April 2026”'],
    ['about 2019', 'write 2019~ for “about 2019”'],
    ['c. 2019', 'write 2019~ for “about 2019”'],
    ['2019 or so', 'write 2019~ for “about 2019”'],
    ['2019 (?)', 'write 2019? for “2019 (not certain)”'],
    ['before 2010', 'write ../2010 for “2010 or before”, or ../2009 for “2009 or before”'],
    ['since 2015', 'write 2015/.. for “2015 or after”'],
    ['after 2015', 'write 2015/.. for “2015 or after”, or 2016/.. for “2016 or after”'],
    ['2015-2019', 'write 2015/2019 for “between 2015 and 2019”'],
    ['2008 or 2009', 'write 2008/2009 for “2008 or 2009”'],
    ['1990s', 'write 199X for “the 1990s”'],
    ['the 1990’s', 'write 199X for “the 1990s”'],
    ['199x', 'write 199X for “the 1990s”'],
    ['spring 2026', 'write 2026-21 for “spring 2026”'],
    ['Fall of 2026', 'write 2026-23 for “autumn 2026”'],
    ['winter 2026', 'write 2026-24 for “winter 2026–27”, or 2025-24 for “winter 2025–26”'],
  ])('refuses %s and gives the spelling', (text, hint) => {
    expect(readDate(text)).toEqual({
      ok: false,
      problem: `“${text}” is not how a date is written here`,
      hint,
    });
  });

  it('never suggests another spelling for a text that it reads', () => {
    for (const text of ['2026-04-11', '2026-04', '2026-24', '2019~', '../2010', '2015/2019', '199X']) {
      expect(readDate(text).ok).toBe(true);
      expect(suggestSpelling(text)).toEqual([]);
    }
  });
});

describe('printDate', () => {
  it.each([
    ['2026-04-11', '11 April 2026'],
    ['2026-04-01?', '1 April 2026 (not certain)'],
    ['2026-04', 'April 2026'],
    ['2019-04~', 'about April 2019'],
    ['2026', '2026'],
    ['2019~', 'about 2019'],
    ['2019?', '2019 (not certain)'],
    ['2019%', 'about 2019 (not certain)'],
    ['../2010', '2010 or before'],
    ['../2010~', 'about 2010 or before'],
    ['2015/..', '2015 or after'],
    ['2015/2019', 'between 2015 and 2019'],
    ['2015~/2019?', 'between about 2015 and 2019 (not certain)'],
    ['2015-06/2016-02', 'between June 2015 and February 2016'],
    ['2008/2009', '2008 or 2009'],
    ['2008~/2009', 'between about 2008 and 2009'],
    ['199X', 'the 1990s'],
    ['2026-21', 'spring 2026'],
    ['2026-24', 'winter 2026–27'],
    ['1999-24', 'winter 1999–2000'],
  ])('prints %s as %s', (text, words) => {
    expect(printDate(date(text))).toBe(words);
  });

  it('prints a date that was worked out elsewhere from its bounds', () => {
    const label = { written: 'week 12 of 2019', precision: 'span', about: false, uncertain: false } as const;
    expect(printDate({ ...label, earliest: '2019-03-18', latest: '2019-03-24' })).toBe(
      'between 18 March 2019 and 24 March 2019',
    );
    expect(printDate({ ...label, earliest: '2019-03-18', latest: '2019-03-18' })).toBe('18 March 2019');
    expect(printDate({ ...label, earliest: '2019-03-18', latest: undefined })).toBe('18 March 2019 or after');
    expect(printDate({ ...label, earliest: undefined, latest: undefined })).toBe('not known');
  });
});

describe('compareDates', () => {
  it('sorts by the last possible day, then the first, open ends outermost', () => {
    const sorted = ['2015/..', '2019', '../2010', '2010', '2019-06-01', '2015/2019', '2010-12-31', '2012/..'];
    expect(
      sorted
        .map(date)
        .sort(compareDates)
        .map((one) => one.written),
    ).toEqual(['../2010', '2010', '2010-12-31', '2019-06-01', '2015/2019', '2019', '2012/..', '2015/..']);
  });

  it('is a total order: 0 only for dates written alike', () => {
    const texts = ['2019', '2019?', '2019~', '2018/2020', '../2019', '2019/..', '2019-12-31', '2019-24'];
    const some = fc.constantFrom(...texts).map(date);
    fc.assert(
      fc.property(some, some, some, (a, b, c) => {
        expect(Math.sign(compareDates(a, b))).toBe(0 - Math.sign(compareDates(b, a)));
        expect(compareDates(a, b) === 0).toBe(a.written === b.written);
        if (compareDates(a, b) <= 0 && compareDates(b, c) <= 0)
          expect(compareDates(a, c)).toBeLessThanOrEqual(0);
      }),
      { seed: 12, numRuns: 600 },
    );
  });
});
