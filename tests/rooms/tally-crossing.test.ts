import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FOOT } from '../../src/facts/length.js';
import type { Point } from '../../src/tally/corners.js';
import { firstCrossing } from '../../src/tally/crossing.js';

/** Corners in whole feet. */
const feet = (...corners: [number, number][]): Point[] => corners.map(([x, y]) => [x * FOOT, y * FOOT]);

const elbow = feet([0, 0], [34, 0], [34, 26], [22, 26], [22, 30], [0, 30]);

describe('firstCrossing', () => {
  test('finds none in a plain outline, straight corners included', () => {
    expect(firstCrossing(elbow)).toBeUndefined();
    expect(firstCrossing(feet([0, 0], [2, 0], [4, 0], [4, 3]))).toBeUndefined();
  });

  // Corners and places in feet.
  test.each<[string, string, [number, number], string]>([
    ['a bow tie', '0,0 4,4 4,0 0,4', [0, 2], '2,2'],
    ['a wall through another', '0,0 6,0 6,2 3,2 3,-1 0,-1', [0, 3], '3,0'],
    ['a corner that touches an edge', '0,0 6,0 6,4 3,0 0,4', [0, 2], '3,0'],
    ['a corner visited twice', '0,0 2,0 2,2 4,2 4,4 2,2 0,2', [1, 4], '2,2'],
    ['a stretch walked twice', '0,0 6,0 6,4 4,4 4,0 2,0 2,4 0,4', [0, 3], '4,0'],
    ['a spike', '0,0 4,0 7,0 5,0 5,3 0,3', [1, 2], '5,0'],
    ['a spike back past its start', '0,0 4,0 5,0 2,0 2,3', [0, 2], '2,0'],
    ['a spike longer than the edge before it', '0,0 4,0 -3,0 -3,3', [0, 1], '0,0'],
    ['an edge over the end of another', '0,0 3,0 3,4 4,4 4,1 2,-1 0,-1', [0, 4], '3,0'],
    ['a spike at the first corner', '0,0 4,0 4,3 -2,3 -2,0 2,0', [0, 4], '0,0'],
    ['a corner written twice running', '0,0 4,0 4,0 4,3', [1, 1], '4,0'],
    ['the last corner repeating the first', '0,0 4,0 4,3 0,0', [3, 3], '0,0'],
    ['all corners in one line', '0,0 4,0 9,0', [0, 2], '0,0'],
    ['two corners', '0,0 4,0', [0, 1], '0,0'],
    ['one corner', '1,2', [0, 0], '1,2'],
  ])('finds %s', (_, corners, edges, at) => {
    const read = (text: string) =>
      feet(...text.split(' ').map((c) => c.split(',').map(Number) as [number, number]));
    expect(firstCrossing(read(corners))).toEqual({ edges, at: read(at)[0] });
  });

  test('sees a miss and a touch of one unit apart', () => {
    const notch = (gap: number) => [
      ...feet([0, 0], [6, 0], [6, 4]),
      [3 * FOOT, gap] as Point,
      ...feet([0, 4]),
    ];
    expect(firstCrossing(notch(1))).toBeUndefined();
    expect(firstCrossing(notch(0))?.at).toEqual([3 * FOOT, 0]);
    expect(firstCrossing(notch(-1))?.edges).toEqual([0, 2]);
  });

  test('a crossing of slanted edges is placed to the nearest unit', () => {
    const corners: Point[] = [
      [0, 0],
      [10, 3],
      [10, 0],
      [0, 2],
    ];
    // 3x/10 = 2 − 2x/10 at x = 4, y = 1.2.
    expect(firstCrossing(corners)).toEqual({ edges: [0, 2], at: [4, 1] });
  });

  test('no corners at all meet nothing', () => {
    expect(firstCrossing([])).toBeUndefined();
  });

  test('moving and turning by 90° keep whether and where an outline crosses itself', () => {
    const near = fc.integer({ min: -4, max: 4 });
    const tangled = fc.array(fc.tuple(near, near) as fc.Arbitrary<Point>, { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(tangled, near, near, (outline, dx, dy) => {
        const found = firstCrossing(outline);
        expect(firstCrossing(outline.map(([x, y]) => [x + dx, y + dy]))?.edges).toEqual(found?.edges);
        expect(firstCrossing(outline.map(([x, y]) => [-y, x]))?.edges).toEqual(found?.edges);
        expect(firstCrossing(outline.toReversed()) === undefined).toBe(found === undefined);
      }),
      { seed: 2, numRuns: 500 },
    );
  });
});
