import { describe, expect, it } from 'vitest';
import { columnWidths } from '../../src/print/column-widths.js';
import { breakGreedily } from '../../src/print/lines.js';

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
});
