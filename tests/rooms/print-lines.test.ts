import { describe, expect, it } from 'vitest';
import { columnWidths } from '../../src/print/column-widths.js';
import type { Chunk, LineRange } from '../../src/print/lines.js';
import { breakWholeParagraph } from '../../src/print/lines.js';
import { leastMs } from '../tools/least-ms.js';

const chunk = (widthPt: number, gapPt = 1): Chunk => ({ widthPt, gapPt });

/** Widths from a linear congruence, so that the test is the same every time. */
function madeChunks(seed: number, count: number): Chunk[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return chunk(1 + (state % 9), state % 7 === 0 ? 0 : 1);
  });
}

const widthOf = (chunks: readonly Chunk[]): number =>
  chunks.reduce((sum, one, i) => sum + one.widthPt + (i < chunks.length - 1 ? one.gapPt : 0), 0);

/** Demerits of one line by Knuth and Plass (1981), section "Desirability": (1 + 100 r³)², here with ragged ends. */
function demerits(line: readonly Chunk[], measure: number, last: boolean): number {
  const slack = measure - widthOf(line);
  if (slack < -0.001) return Number.POSITIVE_INFINITY;
  const before = line.slice(0, -1).reduce((sum, one) => sum + one.widthPt + one.gapPt, 0);
  const stretch = 0.5 * (last ? before : before + (line.at(-1)?.widthPt ?? 0)) + (last ? 0.8 * measure : 0);
  return (1 + 100 * (Math.max(0, slack) / stretch) ** 3) ** 2;
}

function demeritsOfAll(chunks: readonly Chunk[], lines: readonly LineRange[], measure: number): number {
  return lines.reduce(
    (sum, { from, to }) => sum + demerits(chunks.slice(from, to), measure, to === chunks.length),
    0,
  );
}

/** All ways to break, tried one by one. */
function everyWay(count: number): LineRange[][] {
  return Array.from({ length: 2 ** (count - 1) }, (_, bits) => {
    const ends = [...Array(count - 1).keys()].filter((i) => ((bits >> i) & 1) === 1).map((i) => i + 1);
    return [...ends, count].map((to, i) => ({ from: ends[i - 1] ?? 0, to }));
  });
}

describe('lines of a paragraph', () => {
  it('are one where all fits; the blank at its end takes no room', () => {
    // 4 + 1 + 5 is exactly ten.
    expect(breakWholeParagraph([chunk(4), chunk(5)], 10)).toEqual([{ from: 0, to: 2 }]);
    expect(breakWholeParagraph([chunk(5, 0), chunk(5)], 10)).toEqual([{ from: 0, to: 2 }]);
  });

  it('give a chunk that is too wide a line of its own', () => {
    expect(breakWholeParagraph([chunk(2), chunk(30), chunk(2)], 10)).toEqual([
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 2, to: 3 },
    ]);
  });

  it('are none for no text', () => {
    expect(breakWholeParagraph([], 10)).toEqual([]);
  });

  it('leave no little word alone where another may join it', () => {
    // Line by line it would be 7 6 6 | 1.
    expect(breakWholeParagraph([chunk(7), chunk(6), chunk(6), chunk(1)], 21)).toEqual([
      { from: 0, to: 2 },
      { from: 2, to: 4 },
    ]);
  });

  it('have the least demerits of all ways to break the paragraph', () => {
    let broken = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const chunks = madeChunks(seed, 4 + (seed % 8));
      const least = Math.min(...everyWay(chunks.length).map((lines) => demeritsOfAll(chunks, lines, 20)));
      const lines = breakWholeParagraph(chunks, 20);
      if (lines.length > 1) broken++;
      expect(demeritsOfAll(chunks, lines, 20), `seed ${seed}`).toBeLessThanOrEqual(least * 1.0001);
    }
    expect(broken).toBeGreaterThan(100);
  });

  it('hold every chunk in order and no more than the measure', () => {
    for (let seed = 1; seed < 200; seed++) {
      const chunks = madeChunks(seed, 5 + (seed % 40));
      const lines = breakWholeParagraph(chunks, 24);
      expect(lines.flatMap(({ from, to }) => chunks.slice(from, to))).toEqual(chunks);
      for (const { from, to } of lines) expect(widthOf(chunks.slice(from, to))).toBeLessThanOrEqual(24.001);
    }
  });

  it('of a text of many pages are found at once', async () => {
    const chunks = madeChunks(3, 3000);
    expect(breakWholeParagraph(chunks, 100).length).toBeGreaterThan(100);
    // Seconds with a breaker that never drops a full line, and minutes for three times the text.
    expect(await leastMs(() => breakWholeParagraph(chunks, 100), 3000)).toBeLessThan(3000);
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
