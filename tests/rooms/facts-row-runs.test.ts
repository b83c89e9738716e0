import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowsInWords, runsOf } from '../../src/facts/row-runs.js';

describe('runsOf', () => {
  it('gathers rows that follow each other, and loses none', () => {
    expect(runsOf([])).toEqual([]);
    expect(runsOf([4, 7, 8, 9])).toEqual([
      [4, 4],
      [7, 9],
    ]);
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 2, max: 60 })), (numbers) => {
        const rows = numbers.toSorted((a, b) => a - b);
        const runs = runsOf(rows);
        expect(
          runs.flatMap(([first, last]) => Array.from({ length: last - first + 1 }, (_, at) => first + at)),
        ).toEqual(rows);
        for (const [at, [first]] of runs.entries())
          expect(first).toBeGreaterThan((runs[at - 1]?.[1] ?? 0) + 1);
      }),
      { seed: 2005, numRuns: 200 },
    );
  });
});

describe('rowsInWords', () => {
  it.each([
    [[4], 'row 4'],
    [[4, 5], 'rows 4 and 5'],
    [[4, 6], 'rows 4 and 6'],
    [[4, 5, 6], 'rows 4 to 6'],
    [[4, 7, 8, 9, 12], 'rows 4, 7 to 9 and 12'],
    [[2, 4, 6, 8, 10, 12, 14, 16, 18], 'rows 2, 4, 6, 8, 10, 12, 14, 16 … (9 rows)'],
  ])('%j', (rows, words) => {
    expect(rowsInWords(rows)).toBe(words);
  });
});
