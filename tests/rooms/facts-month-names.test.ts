import { describe, expect, it } from 'vitest';
import { MONTHS, monthOfName, SHORT_MONTHS } from '../../src/facts/month-names.js';

describe('a month by its name', () => {
  it('is found by the whole of it and by a beginning of three letters or more', () => {
    for (const [at, name] of MONTHS.entries())
      for (let length = 3; length <= name.length; length += 1)
        expect(monthOfName(name.slice(0, length).toUpperCase())).toBe(at + 1);
  });

  it.each(['', 'Ma', 'mayor', 'Sebtember', '3', 'January 4'])('%j is none', (word) => {
    expect(monthOfName(word)).toBeUndefined();
  });

  it('has twelve short names that differ', () => {
    expect(new Set(SHORT_MONTHS).size).toBe(12);
    expect(SHORT_MONTHS.at(8)).toBe('Sep');
  });
});
