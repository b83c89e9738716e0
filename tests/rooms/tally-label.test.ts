import { addWeeks, format, getISOWeeksInYear, startOfISOWeek } from 'date-fns';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { printDate } from '../../src/facts/date.js';
import { readLabel } from '../../src/tally/label.js';

const AS_OF = '2026-06-20';
/** The bounds a label gives, or its problem. */
function bounds(serial: string, pattern: string, asOf = AS_OF): [string?, string?] | string {
  const read = readLabel(serial, pattern, asOf);
  return read.ok ? [read.value.earliest, read.value.latest] : read.problem;
}

describe('a label read by its writer’s pattern', () => {
  test('counts characters from 1, letters included', () => {
    expect(bounds('X26020417', 'YY at 2')).toEqual(['2026-01-01', '2026-12-31']);
    expect(bounds('AB2019 07', 'YYYY at 3, MM at 8')).toEqual(['2019-07-01', '2019-07-31']);
    expect(bounds('0719-XX', 'MMYY at 1')).toEqual(['2019-07-01', '2019-07-31']);
    expect(bounds('071900', 'MM at 1, YY at 3')).toEqual(['2019-07-01', '2019-07-31']);
  });

  test('a year of two digits is the latest one that isn’t after the year of the packet', () => {
    expect(bounds('26', 'YY at 1')).toEqual(['2026-01-01', '2026-12-31']);
    expect(bounds('47', 'YY at 1')).toEqual(['1947-01-01', '1947-12-31']);
    expect(bounds('99', 'YY at 1')).toEqual(['1999-01-01', '1999-12-31']);
    expect(bounds('00', 'YY at 1')).toEqual(['2000-01-01', '2000-12-31']);
    expect(bounds('27', 'YY at 1', '2027-01-01')).toEqual(['2027-01-01', '2027-12-31']);
  });

  test('a year of two digits that may be one of the next twenty is refused', () => {
    expect(bounds('X2799', 'YY at 2')).toBe(
      '“27” in “X2799” could be 1927, or 2027, which lies after the day of the packet',
    );
    expect(bounds('46', 'YY at 1')).toMatch(/1946, or 2046/);
    expect(bounds('05', 'YY at 1', '2095-06-20')).toMatch(/2005, or 2105/);
    const refused = readLabel('X2799', 'YY at 2', AS_OF);
    expect(refused.ok ? '' : refused.hint).toMatch(/write YYYY .* made: 1927 /);
    expect(bounds('1927', 'YYYY at 1')).toEqual(['1927-01-01', '1927-12-31']);
  });

  test('says what it can’t read, and never guesses', () => {
    expect(bounds('X26', 'YY at 1')).toMatch(/YY at 1 of “X26” is “X2”/);
    expect(bounds('2', 'YY at 1')).toMatch(/“2”, and that is no number/);
    expect(bounds('26', 'YY at 0')).toMatch(/no number/);
    expect(bounds('26', 'YY at 9')).toMatch(/“”/);
    expect(bounds('2613', 'YYMM at 1')).toBe('there is no month 13');
    expect(bounds('2654', 'YYWW at 1')).toBe('2026 has no week 54');
    expect(bounds('2600', 'YYWW at 1')).toBe('2026 has no week 0');
    expect(bounds('04', 'WW at 1')).toMatch(/no year in it/);
    for (const pattern of ['', 'year first', 'YY', 'YY at', 'yy at 1', 'YYYYY at 1', 'YY at 1;WW at 3'])
      expect(bounds('2604', pattern), pattern).toMatch(/does not say how to read/);
  });

  test('a week is printed as the days it can be', () => {
    const read = readLabel('2614', 'YYWW at 1', AS_OF);
    expect(read.ok && read.value.written).toBe('week 14 of 2026');
    expect(read.ok && printDate(read.value)).toBe('between 30 March 2026 and 5 April 2026');
  });
});

describe('ISO 8601 weeks', () => {
  const years = Array.from({ length: 121 }, (_, i) => 1930 + i);

  test('are those of luxon, year by year', () => {
    for (const year of years) {
      const weeks = DateTime.fromObject({ year, month: 7, day: 1 }).weeksInWeekYear;
      for (const week of [1, 2, 26, weeks]) {
        const monday = DateTime.fromObject({ weekYear: year, weekNumber: week, weekday: 1 });
        const serial = `${year}${String(week).padStart(2, '0')}`;
        expect(bounds(serial, 'YYYYWW at 1', '2060-01-01')).toEqual([
          monday.toISODate(),
          monday.plus({ days: 6 }).toISODate(),
        ]);
      }
      expect(bounds(`${year}${weeks + 1}`, 'YYYYWW at 1')).toBe(`${year} has no week ${weeks + 1}`);
    }
  });

  test('are those of date-fns, year by year', () => {
    let long = 0;
    for (const year of years) {
      const fourth = new Date(year, 0, 4, 12);
      const last = getISOWeeksInYear(fourth);
      long += last === 53 ? 1 : 0;
      const monday = format(addWeeks(startOfISOWeek(fourth), last - 1), 'yyyy-MM-dd');
      expect(bounds(`${year}${last}`, 'YYYYWW at 1')[0]).toBe(monday);
    }
    // 71 of 400 years have 53 weeks; 1930 to 2050 have 21 or 22 of them.
    expect(long).toBeGreaterThanOrEqual(21);
    expect(long).toBeLessThanOrEqual(22);
  });
});
