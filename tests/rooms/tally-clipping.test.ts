import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SQUARE_FOOT, SQUARE_INCH } from '../../src/facts/floor-area.js';
import { FOOT, INCH } from '../../src/facts/length.js';
import { overlapOf, partOutside } from '../../src/tally/clipping.js';
import type { Point } from '../../src/tally/corners.js';
import { areaOf, boundsOf, rectangle, twiceArea } from '../../src/tally/measuring.js';

/** Corners in whole feet. */
const feet = (...corners: [number, number][]): Point[] => corners.map(([x, y]) => [x * FOOT, y * FOOT]);

const origin: Point = [0, 0];

describe('laying outlines over one another', () => {
  const room = rectangle(origin, 10 * FOOT, 10 * FOOT);

  test('rooms that share a wall have nothing in common', () => {
    expect(overlapOf(room, rectangle([10 * FOOT, 0], 5 * FOOT, 10 * FOOT))).toEqual({
      area: 0n,
      polygons: [],
    });
  });

  test('an overlap is exact along the axes', () => {
    const shifted = rectangle([9 * FOOT + 11 * INCH, 2 * FOOT], 5 * FOOT, 10 * FOOT);
    const common = overlapOf(room, shifted);
    expect(common.area).toBe(8n * 12n * SQUARE_INCH);
    expect(common.polygons).toHaveLength(1);
    expect(boundsOf(common.polygons[0]?.outer ?? [])).toEqual({
      west: 9 * FOOT + 11 * INCH,
      south: 2 * FOOT,
      east: 10 * FOOT,
      north: 10 * FOOT,
    });
    expect(partOutside(shifted, room).area).toBe(areaOf(shifted) - common.area);
  });

  test('a piece of one square inch counts, a smaller one doesn’t', () => {
    const inchApart = (size: number) => rectangle([10 * FOOT - size, 10 * FOOT - INCH], FOOT, FOOT);
    expect(overlapOf(room, inchApart(INCH)).area).toBe(SQUARE_INCH);
    expect(overlapOf(room, inchApart(INCH - 1))).toEqual({ area: 0n, polygons: [] });
    expect(partOutside(rectangle([0, 0], 10 * FOOT + INCH - 1, INCH), room).area).toBe(0n);
  });

  test('a part outside may come in pieces, the southernmost first', () => {
    const cross = partOutside(rectangle([2 * FOOT, -FOOT], 3 * FOOT, 12 * FOOT), room);
    expect(cross.area).toBe(6n * SQUARE_FOOT);
    expect(cross.polygons.map(({ outer }) => boundsOf(outer).south)).toEqual([-FOOT, 10 * FOOT]);
    const arms = feet([0, 0], [9, 0], [9, 8], [6, 8], [6, 2], [3, 2], [3, 8], [0, 8]);
    const cut = partOutside(arms, feet([0, 0], [9, 0], [9, 3], [5, 3], [5, 5], [0, 5]));
    expect(cut.polygons.map(({ outer }) => boundsOf(outer).south)).toEqual([3 * FOOT, 5 * FOOT]);
  });

  test('a room inside another leaves a hole', () => {
    const ring = partOutside(room, rectangle([2 * FOOT, 2 * FOOT], 3 * FOOT, 3 * FOOT));
    expect(ring.area).toBe(91n * SQUARE_FOOT);
    expect(ring.polygons[0]?.holes).toHaveLength(1);
    expect(twiceArea(ring.polygons[0]?.holes[0] ?? [])).toBe(-18n * SQUARE_FOOT);
  });

  test('slanted walls meet at the nearest unit', () => {
    const bay = feet([0, 0], [10, 0], [7, 3], [3, 3]);
    const other = feet([5, -1], [9, 4], [1, 4]);
    const common = overlapOf(bay, other);
    expect(common.area + partOutside(bay, other).area).toBeGreaterThan(areaOf(bay) - 1_000_000_000n);
    expect(common.area + partOutside(bay, other).area).toBeLessThan(areaOf(bay) + 1_000_000_000n);
    for (const [x, y] of common.polygons[0]?.outer ?? [])
      expect([x, y].every((n) => Number.isInteger(n))).toBe(true);
  });

  test('two rectangles: overlap and rest are what intervals say', () => {
    const place = fc.integer({ min: -200, max: 200 }).map((n) => n * INCH);
    const size = fc.integer({ min: 1, max: 300 }).map((n) => n * INCH);
    const box = fc.tuple(place, place, size, size);
    const shared = (a: number, la: number, b: number, lb: number) =>
      BigInt(Math.max(0, Math.min(a + la, b + lb) - Math.max(a, b)));
    fc.assert(
      fc.property(box, box, ([ax, ay, aw, ad], [bx, by, bw, bd]) => {
        const [a, b] = [rectangle([ax, ay], aw, ad), rectangle([bx, by], bw, bd)];
        const common = shared(ax, aw, bx, bw) * shared(ay, ad, by, bd);
        expect(overlapOf(a, b).area).toBe(common);
        expect(partOutside(a, b).area).toBe(areaOf(a) - common);
      }),
      { seed: 5 },
    );
  });
});
