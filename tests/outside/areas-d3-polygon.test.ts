/** Our areas, centres and inside tests against the d3-polygon package, which works in floating point. */
import { polygonArea, polygonCentroid, polygonContains } from 'd3-polygon';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/tally/corners.js';
import { firstCrossing } from '../../src/tally/crossing.js';
import { labelSpot } from '../../src/tally/label-spot.js';
import { areaOf, centroidOf, containsPoint, twiceArea } from '../../src/tally/measuring.js';
import { seeded, squareOutline, starOutline } from './seeded-outlines.js';

const next = seeded(20_260_401);
// Up to 0.1 m across, so that the package's products stay below 2^53 and its areas are exact too.
const small = 1_000_000;
const outlines = Array.from({ length: 500 }, (_, i) =>
  (i % 2 === 0 ? starOutline : squareOutline)(next, small),
);
const plain = (corners: Point[]) => corners.map(([x, y]): [number, number] => [x, y]);

describe('500 made outlines against d3-polygon', () => {
  test('none of them crosses itself', () => {
    expect(outlines).toHaveLength(500);
    for (const corners of outlines) expect(firstCrossing(corners), JSON.stringify(corners)).toBeUndefined();
  });

  test('areas are the same to the last unit', () => {
    for (const corners of outlines) {
      // The package counts y downward, so that its sign is the other way round.
      expect(Number(twiceArea(corners)), JSON.stringify(corners)).toBe(-2 * polygonArea(plain(corners)));
      expect(areaOf(corners)).toBe(BigInt(Math.floor(Math.abs(polygonArea(plain(corners))))));
    }
  });

  test('centres of gravity are the same to the nearest unit', () => {
    for (const corners of outlines) {
      const [x, y] = polygonCentroid(plain(corners));
      const ours = centroidOf(corners);
      expect(Math.abs(ours[0] - x), JSON.stringify(corners)).toBeLessThan(0.501);
      expect(Math.abs(ours[1] - y), JSON.stringify(corners)).toBeLessThan(0.501);
    }
  });

  test('the same points are inside', () => {
    let inside = 0;
    let outside = 0;
    for (const corners of outlines) {
      for (let k = 0; k < 20; k++) {
        // Half a unit off the grid, doubled on our side, so that no point lies on an edge's end.
        const p: Point = [
          2 * Math.round((next() - 0.3) * small) + 1,
          2 * Math.round((next() - 0.5) * small) + 1,
        ];
        const doubled = corners.map(([x, y]): Point => [2 * x, 2 * y]);
        const ours = containsPoint(doubled, p);
        expect(ours, JSON.stringify({ corners: doubled, p })).toBe(
          polygonContains(plain(doubled), [p[0], p[1]]),
        );
        if (ours) inside++;
        else outside++;
      }
    }
    // Both answers were put to the test.
    expect(inside).toBeGreaterThan(1000);
    expect(outside).toBeGreaterThan(1000);
  });

  test('every label spot is inside', () => {
    for (const corners of outlines) {
      const spot = labelSpot(corners);
      expect(polygonContains(plain(corners), [spot[0], spot[1]]), JSON.stringify(corners)).toBe(true);
    }
  });

  test('at the size of a house, areas agree to twelve digits', () => {
    for (let i = 0; i < 50; i++) {
      const corners = starOutline(next, 120_000_000);
      const theirs = Math.abs(polygonArea(plain(corners)));
      expect(Math.abs(Number(areaOf(corners)) - theirs)).toBeLessThan(theirs * 1e-12);
    }
  });
});
