import { describe, expect, it } from 'vitest';
import { addDays, addYears, ageSpan, printAge } from '../../src/facts/age.js';
import { readDate } from '../../src/facts/date.js';

const span = (text: string, asOf: string) => {
  const read = readDate(text);
  if (!read.ok) throw new Error(`${text}: ${read.problem}`);
  return ageSpan(read.value, asOf);
};

describe('ageSpan', () => {
  it('counts completed years and months from both ends', () => {
    expect(span('2019', '2026-06-20')).toEqual({
      youngest: { years: 6, months: 5 },
      oldest: { years: 7, months: 5 },
      future: false,
    });
  });

  it('completes a year on the day itself, not the day before', () => {
    expect(span('2019-06-20', '2026-06-20').oldest).toEqual({ years: 7, months: 0 });
    expect(span('2019-06-21', '2026-06-20').oldest).toEqual({ years: 6, months: 11 });
  });

  it('completes a month on the next first where its day does not exist', () => {
    expect(span('2026-01-31', '2026-02-28').oldest).toEqual({ years: 0, months: 0 });
    expect(span('2026-01-31', '2026-03-01').oldest).toEqual({ years: 0, months: 1 });
    expect(span('2020-02-29', '2021-02-28').oldest).toEqual({ years: 0, months: 11 });
    expect(span('2020-02-29', '2021-03-01').oldest).toEqual({ years: 1, months: 0 });
  });

  it('has no end where the date has none, and no age before it begins', () => {
    expect(span('../2010', '2026-12-31')).toEqual({
      youngest: { years: 16, months: 0 },
      oldest: undefined,
      future: false,
    });
    expect(span('2015/..', '2026-06-20')).toEqual({
      youngest: undefined,
      oldest: { years: 11, months: 5 },
      future: false,
    });
    expect(span('2027', '2026-06-20')).toEqual({ youngest: undefined, oldest: undefined, future: true });
    expect(span('2026-06-21', '2026-06-20').future).toBe(true);
    expect(span('2026-06-20', '2026-06-20').future).toBe(false);
  });

  it('takes a last possible day after the as-of day for the as-of day', () => {
    expect(span('2026', '2026-06-20')).toEqual({
      youngest: { years: 0, months: 0 },
      oldest: { years: 0, months: 5 },
      future: false,
    });
  });

  it('throws on an as-of day that is none', () => {
    expect(() => span('2019', '2026-02-30')).toThrow(RangeError);
  });
});

describe('printAge', () => {
  it.each([
    ['2026-02-11', '2026-06-20', '4 months'],
    ['2026-05-11', '2026-06-20', '1 month'],
    ['2026-06-20', '2026-06-20', 'under 1 month'],
    ['2026-02', '2026-06-20', '3 to 4 months'],
    ['2026-06', '2026-06-20', 'under 1 month'],
    ['2026', '2026-06-20', 'under 6 months'],
    ['2025~', '2026-06-20', 'under 3 years'],
    ['2025', '2026-06-20', '5 months to 1 year 5 months'],
    ['2014/2025', '2026-06-20', '5 months to 12 years'],
    ['2019-06-20', '2026-06-20', '7 years'],
    ['2019-01-15', '2026-06-20', '7 years 5 months'],
    ['2019-01', '2026-06-20', '7 years 4 to 5 months'],
    ['2025-05-20', '2026-06-20', '1 year 1 month'],
    ['2014-01-15', '2026-06-20', '12 years'],
    ['2008/2009', '2026-12-31', '17 to 18 years'],
    ['2019~', '2026-06-20', '5 to 8 years'],
    ['../2010', '2026-12-31', 'at least 16 years'],
    ['../2025', '2026-06-20', 'at least 5 months'],
    ['../2026', '2026-06-20', 'not known'],
    ['2015/..', '2026-06-20', 'under 12 years'],
    ['2026-01/..', '2026-06-20', 'under 6 months'],
    ['2027', '2026-06-20', 'not yet'],
  ])('%s as of %s: %s', (text, asOf, words) => {
    expect(printAge(span(text, asOf))).toBe(words);
  });
});

describe('addYears and addDays', () => {
  it('keeps the day', () => {
    // A smoke alarm made 2015-06-15 is due ten years on (NFPA 72, household smoke alarm replacement).
    expect(addYears('2015-06-15', 10)).toBe('2025-06-15');
    expect(addYears('2020-02-29', 4, 'later')).toBe('2024-02-29');
    expect(addYears('2026-01-31', -1)).toBe('2025-01-31');
  });

  it('takes 29 February to the side its caller asks for', () => {
    expect(addYears('2024-02-29', 10)).toBe('2034-02-28');
    expect(addYears('2024-02-29', 10, 'earlier')).toBe('2034-02-28');
    // 40 CFR 745.86: three years of records; rolling forward is the safe side, and this project's choice.
    expect(addYears('2024-02-29', 3, 'later')).toBe('2027-03-01');
  });

  it('crosses months and leap days', () => {
    // 40 CFR 745.86: thirty days to hand over the record.
    expect(addDays('2024-02-29', 30)).toBe('2024-03-30');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2024-03-01', -1)).toBe('2024-02-29');
  });

  it('throws on what is no day or no whole number', () => {
    expect(() => addYears('2025-02-29', 1)).toThrow(RangeError);
    expect(() => addDays('2025-02-28', 0.5)).toThrow(RangeError);
  });
});
