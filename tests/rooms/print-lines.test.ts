import { describe, expect, it } from 'vitest';
import { columnWidths } from '../../src/print/column-widths.js';
import { breakEvenly, breakGreedily } from '../../src/print/lines.js';

const chunk = (widthPt: number, gapPt = 1): { widthPt: number; gapPt: number } => ({ widthPt, gapPt });

describe('greedy lines', () => {
  it('fill as far as they go; the blank at a line end takes no room', () => {
    // 4 + 1 + 5 is exactly ten.
    expect(breakGreedily([chunk(4), chunk(5), chunk(3), chunk(7)], 10)).toEqual([
      { from: 0, to: 2 },
      { from: 2, to: 3 },
      { from: 3, to: 4 },
    ]);
  });

  it('put parts of one word side by side without a blank', () => {
    expect(breakGreedily([chunk(5, 0), chunk(5)], 10)).toEqual([{ from: 0, to: 2 }]);
  });

  it('give a chunk that is too wide a line of its own', () => {
    expect(breakGreedily([chunk(2), chunk(30), chunk(2)], 10)).toEqual([
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 2, to: 3 },
    ]);
  });

  it('are none for no text', () => {
    expect(breakGreedily([], 10)).toEqual([]);
  });
});

describe('even lines', () => {
  const slackOf = (
    lines: readonly { from: number; to: number }[],
    widths: readonly number[],
    measure: number,
  ): number =>
    lines.slice(0, -1).reduce((sum, line) => {
      const words = widths.slice(line.from, line.to);
      const width = words.reduce((total, word) => total + word, 0) + words.length - 1;
      return sum + (measure - width) ** 2;
    }, 0);

  it('are as many as greedy ones, hold every chunk in order, and are never less even', () => {
    let better = 0;
    for (let seed = 1; seed < 200; seed++) {
      // Widths from a linear congruence, so that the test is the same every time.
      let state = seed;
      const widths = Array.from({ length: 5 + (seed % 40) }, () => {
        state = (state * 1103515245 + 12345) % 2147483648;
        return 1 + (state % 9);
      });
      const chunks = widths.map((width) => chunk(width));
      const [even, greedy] = [breakEvenly(chunks, 24), breakGreedily(chunks, 24)];
      expect(even.length).toBe(greedy.length);
      expect(even.flatMap((line) => widths.slice(line.from, line.to))).toEqual(widths);
      for (const line of even) {
        const words = widths.slice(line.from, line.to);
        expect(words.reduce((total, word) => total + word, words.length - 1)).toBeLessThanOrEqual(24);
      }
      const [a, b] = [slackOf(even, widths, 24), slackOf(greedy, widths, 24)];
      if (a < b) better++;
    }
    expect(better).toBeGreaterThan(50);
  });

  it('leave no little word alone where another may join it without a line more', () => {
    // Greedy: 7 6 6 | 1. Even: 7 6 | 6 1.
    expect(breakEvenly([chunk(7), chunk(6), chunk(6), chunk(1)], 21)).toEqual([
      { from: 0, to: 2 },
      { from: 2, to: 4 },
    ]);
  });
});

describe('column widths', () => {
  const total = (widths: readonly number[]): number => widths.reduce((sum, width) => sum + width, 0);

  it('fill the measure', () => {
    const columns = [
      { naturalPt: 300, narrowestPt: 40, weight: 3, stretches: true },
      { naturalPt: 30, narrowestPt: 30, weight: 1, stretches: true },
      { naturalPt: 80, narrowestPt: 50, weight: 1, stretches: true },
    ];
    for (const measure of [120, 200, 316.8, 460.8]) {
      expect(total(columnWidths(columns, measure))).toBeCloseTo(measure, 6);
    }
  });

  it('give each column its widest word, and what it needs before another gets more than it needs', () => {
    const widths = columnWidths(
      [
        { naturalPt: 400, narrowestPt: 40, weight: 1, stretches: true },
        { naturalPt: 60, narrowestPt: 30, weight: 1, stretches: true },
      ],
      200,
    );
    expect(widths[1]).toBeCloseTo(60, 6);
    expect(widths[0]).toBeCloseTo(140, 6);
  });

  it('leave numbers beside what they belong to: spare air goes to words', () => {
    const widths = columnWidths(
      [
        { naturalPt: 20, narrowestPt: 20, weight: 1, stretches: false },
        { naturalPt: 50, narrowestPt: 30, weight: 1, stretches: true },
      ],
      200,
    );
    expect(widths).toEqual([20, 180]);
  });

  it('do not let one endless word starve the others', () => {
    const widths = columnWidths(
      [
        { naturalPt: 900, narrowestPt: 900, weight: 1, stretches: true },
        { naturalPt: 60, narrowestPt: 60, weight: 1, stretches: true },
      ],
      200,
    );
    expect(widths[1]).toBeGreaterThanOrEqual(60 - 1e-6);
  });

  it('go where they make the table lower', () => {
    const columns = [
      { naturalPt: 90, narrowestPt: 30, weight: 1, stretches: true, cellsPt: [90, 30, 30] },
      { naturalPt: 600, narrowestPt: 40, weight: 1, stretches: true, cellsPt: [80, 600, 600] },
    ];
    const plain = columnWidths(
      columns.map(({ cellsPt: _, ...column }) => column),
      200,
    );
    const widths = columnWidths(columns, 200);
    expect(total(widths)).toBeCloseTo(200, 6);
    expect(widths[1]).toBeGreaterThan((plain[1] ?? 0) + 20);
    expect(widths[0]).toBeGreaterThanOrEqual(30);
  });
});
