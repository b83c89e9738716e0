import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import { FOOT, INCH } from '../../src/facts/length.js';
import type { Point } from '../../src/tally/corners.js';
import { firstCrossing } from '../../src/tally/crossing.js';
import { labelSpot } from '../../src/tally/label-spot.js';
import {
  areaOf,
  boundsOf,
  centroidOf,
  containsPoint,
  growOutward,
  printGap,
  rectangle,
  sidesOf,
  twiceArea,
  walk,
} from '../../src/tally/measuring.js';

/** Corners in whole feet. */
const feet = (...corners: [number, number][]): Point[] => corners.map(([x, y]) => [x * FOOT, y * FOOT]);
const inInches = (length: number) => `${length / INCH} in`;
const origin: Point = [0, 0];

const elbow = feet([0, 0], [34, 0], [34, 26], [22, 26], [22, 30], [0, 30]);

describe('walk', () => {
  const outline = [
    { east: 34 * FOOT, north: 0 },
    { east: 0, north: 26 * FOOT + 6 * INCH },
    { east: -12 * FOOT, north: 0 },
    { east: 0, north: 4 * FOOT },
    { east: -22 * FOOT, north: 0 },
    { east: 0, north: -(30 * FOOT + 6 * INCH) },
  ];

  test('a walk that comes back has one corner a step and no gap', () => {
    const { corners, gap } = walk(origin, outline);
    expect(corners).toHaveLength(6);
    expect(corners[0]).toEqual([0, 0]);
    expect(corners.at(-1)).toEqual([0, 30 * FOOT + 6 * INCH]);
    expect(gap).toEqual({ east: 0, north: 0 });
    // By hand: 34 × 26.5 + 22 × 4 = 989.
    expect(areaOf(corners)).toBe(989n * SQUARE_FOOT);
  });

  test('a walk that doesn’t come back keeps its end and says what is missing', () => {
    const { corners, gap } = walk(origin, [...outline.slice(0, 5), { east: 0, north: -30 * FOOT }]);
    expect(corners).toHaveLength(7);
    expect(corners.at(-1)).toEqual([0, 6 * INCH]);
    expect(gap).toEqual({ east: 0, north: -6 * INCH });
    expect(printGap(gap, inInches)).toBe('6 in short to the south');
  });

  test('the gap names each direction', () => {
    expect(printGap({ east: -6 * INCH, north: 0 }, inInches)).toBe('6 in short to the west');
    expect(printGap({ east: 3 * INCH, north: 2 * INCH }, inInches)).toBe(
      '3 in short to the east and 2 in short to the north',
    );
    expect(printGap({ east: 0, north: 0 }, inInches)).toBe('closes exactly');
  });

  test('no steps leave one corner', () => {
    expect(walk([5, 7], [])).toEqual({ corners: [[5, 7]], gap: { east: 0, north: 0 } });
  });
});

describe('areas', () => {
  test('are positive either way round, and signed when doubled', () => {
    // 28 × 42 ft is 1,176 sq ft a level: a published two-storey sum in an account of ANSI Z765.
    const floor = rectangle([-FOOT, 3 * FOOT], 28 * FOOT, 42 * FOOT);
    expect(areaOf(floor)).toBe(1176n * SQUARE_FOOT);
    expect(twiceArea(floor)).toBe(2n * 1176n * SQUARE_FOOT);
    expect(twiceArea(floor.toReversed())).toBe(-2n * 1176n * SQUARE_FOOT);
    expect(areaOf(floor.toReversed())).toBe(1176n * SQUARE_FOOT);
  });

  test('an odd doubled area drops its last half unit', () => {
    const corners: Point[] = [
      [0, 0],
      [1, 0],
      [0, 1],
    ];
    expect(twiceArea(corners)).toBe(1n);
    expect(areaOf(corners)).toBe(0n);
  });

  test('are exact at the largest coordinates, where floating point isn’t', () => {
    const far = 2 ** 45 - 1;
    const corners: Point[] = [
      [-far, -far],
      [far, -far],
      [far, far],
      [-far, far - 1],
    ];
    // By hand: the square of 2·far less the sliver 2·far × 1 / 2 on top.
    expect(twiceArea(corners)).toBe(2n * (2n * BigInt(far)) ** 2n - 2n * BigInt(far));
  });

  test('no corners, one or two have none', () => {
    expect(areaOf([])).toBe(0n);
    expect(areaOf(feet([3, 4]))).toBe(0n);
    expect(areaOf(feet([3, 4], [5, 6]))).toBe(0n);
  });
});

describe('places', () => {
  test('bounds are the outermost lines', () => {
    expect(boundsOf(feet([3, -2], [7, 5], [-1, 4]))).toEqual({
      west: -FOOT,
      south: -2 * FOOT,
      east: 7 * FOOT,
      north: 5 * FOOT,
    });
    expect(() => boundsOf([])).toThrow(RangeError);
  });

  test('a point on an edge or a corner is inside, one unit off it isn’t', () => {
    expect(containsPoint(elbow, [34 * FOOT, 5 * FOOT])).toBe(true);
    expect(containsPoint(elbow, [34 * FOOT + 1, 5 * FOOT])).toBe(false);
    expect(containsPoint(elbow, [22 * FOOT, 30 * FOOT])).toBe(true);
    expect(containsPoint(elbow, [22 * FOOT + 1, 26 * FOOT + 1])).toBe(false);
    expect(containsPoint(elbow, [22 * FOOT - 1, 30 * FOOT - 1])).toBe(true);
  });

  test('the centre of a rectangle is its middle, of an elbow its two parts weighed', () => {
    expect(centroidOf(rectangle(origin, 10 * FOOT, 6 * FOOT))).toEqual([5 * FOOT, 3 * FOOT]);
    // By hand: 34 × 26 round (17, 13) and 22 × 4 round (11, 28).
    const [a, b] = [34 * 26, 22 * 4];
    expect(centroidOf(elbow)).toEqual([
      Math.round((FOOT * (17 * a + 11 * b)) / (a + b)),
      Math.round((FOOT * (13 * a + 28 * b)) / (a + b)),
    ]);
    expect(centroidOf(feet([0, 0], [4, 2]))).toEqual([2 * FOOT, FOOT]);
  });

  test('a name stands in the middle where that has room, and in the widest part where it hasn’t', () => {
    expect(labelSpot(rectangle(origin, 12 * FOOT, 9 * FOOT))).toEqual([6 * FOOT, 4.5 * FOOT]);
    expect(labelSpot(elbow)).toEqual(centroidOf(elbow));
    // A horseshoe: the centre of gravity lies in the opening, the wide arm is the west one, 6 ft.
    const horseshoe = feet([0, 0], [21, 0], [21, 20], [18, 20], [18, 3], [6, 3], [6, 20], [0, 20]);
    expect(containsPoint(horseshoe, centroidOf(horseshoe))).toBe(false);
    const [x, y] = labelSpot(horseshoe);
    expect(x / FOOT).toBeGreaterThan(2.75);
    expect(x / FOOT).toBeLessThan(3.25);
    expect(y / FOOT).toBeGreaterThan(2.75);
    expect(y / FOOT).toBeLessThan(17.25);
    expect(labelSpot(horseshoe)).toEqual([x, y]);
  });

  test('a hall a hundred times as long as wide, and an outline of no area, have a spot too', () => {
    expect(labelSpot(rectangle(origin, 300 * FOOT, 3 * FOOT))).toEqual([150 * FOOT, 1.5 * FOOT]);
    expect(labelSpot(feet([0, 0], [4, 0]))).toEqual([2 * FOOT, 0]);
    expect(
      labelSpot([
        [0, 0],
        [1e9, 0],
        [1e9, 1],
        [0, 1],
      ]),
    ).toEqual([5e8, 1]);
  });
});

describe('growOutward', () => {
  test('27 by 41 ft inside half-foot walls is 28 by 42 ft outside', () => {
    // A made example for the rule of ANSI Z765 that adds the walls back to an inside measure.
    const inside = rectangle(origin, 27 * FOOT, 41 * FOOT);
    for (const corners of [inside, inside.toReversed()]) {
      const grown = growOutward(corners, () => FOOT / 2);
      expect(Array.isArray(grown) && areaOf(grown)).toBe(1176n * SQUARE_FOOT);
      expect(Array.isArray(grown) && boundsOf(grown).west).toBe(-FOOT / 2);
    }
  });

  test('each edge is asked for by its number and the side it faces', () => {
    const asked: string[] = [];
    const grown = growOutward(elbow, ({ index, side }) => {
      asked.push(`${index} ${side}`);
      return side === 'east' ? 3 * INCH : 0;
    });
    expect(asked).toEqual(['0 south', '1 east', '2 north', '3 east', '4 north', '5 west']);
    const east = 3 / 12;
    expect(grown).toEqual(
      feet([0, 0], [34 + east, 0], [34 + east, 26], [22 + east, 26], [22 + east, 30], [0, 30]),
    );
  });

  test('an inner corner moves with its walls', () => {
    const grown = growOutward(elbow, () => FOOT);
    expect(grown).toEqual(feet([-1, -1], [35, -1], [35, 27], [23, 27], [23, 31], [-1, 31]));
  });

  test('walls of two thicknesses in one line make a jog, of one thickness don’t', () => {
    const split = feet([0, 0], [6, 0], [10, 0], [10, 8], [0, 8]);
    expect(growOutward(split, ({ index }) => (index === 1 ? FOOT : 0))).toEqual(
      feet([0, 0], [6, 0], [6, -1], [10, -1], [10, 8], [0, 8]),
    );
    expect(growOutward(split, () => FOOT)).toEqual(feet([-1, -1], [6, -1], [11, -1], [11, 9], [-1, 9]));
  });

  test('a slanted edge is said, not grown', () => {
    expect(growOutward(feet([0, 0], [10, 0], [7, 3], [3, 3]), () => FOOT)).toEqual({ slanted: true });
  });

  test('a notch narrower than its walls closes up and is caught as a crossing', () => {
    const notched = feet([0, 0], [10, 0], [10, 8], [6, 8], [6, 4], [5, 4], [5, 8], [0, 8]);
    const grown = growOutward(notched, () => FOOT);
    expect(Array.isArray(grown) && firstCrossing(grown)).toBeTruthy();
  });

  test('sides face outward either way round', () => {
    expect(sidesOf(rectangle(origin, 5, 4))).toEqual(['south', 'east', 'north', 'west']);
    expect(sidesOf(rectangle(origin, 5, 4).toReversed())).toEqual(['north', 'east', 'south', 'west']);
    expect(
      sidesOf([
        [0, 0],
        [5, 0],
        [3, 3],
        [0, 0],
      ]),
    ).toEqual(['south', 'slanted', 'slanted', 'slanted']);
  });
});

describe('what holds for any outline', () => {
  const coordinate = fc.integer({ min: -(2 ** 44), max: 2 ** 44 });
  const point = fc.tuple(coordinate, coordinate) as fc.Arbitrary<Point>;
  const corners = fc.array(point, { minLength: 3, maxLength: 30 });
  const step = fc.record({
    east: fc.integer({ min: -1e9, max: 1e9 }),
    north: fc.integer({ min: -1e9, max: 1e9 }),
  });

  test('moving, turning by 90° and reversing keep the area', () => {
    fc.assert(
      fc.property(corners, point, fc.nat(29), (outline, [dx, dy], start) => {
        const doubled = twiceArea(outline);
        expect(twiceArea(outline.map(([x, y]) => [x + dx, y + dy]))).toBe(doubled);
        expect(twiceArea(outline.map(([x, y]) => [-y, x]))).toBe(doubled);
        expect(twiceArea(outline.toReversed())).toBe(-doubled);
        const k = start % outline.length;
        expect(twiceArea([...outline.slice(k), ...outline.slice(0, k)])).toBe(doubled);
        expect(areaOf(outline.toReversed())).toBe(areaOf(outline));
      }),
      { seed: 1 },
    );
  });

  test('any walk and the way back close', () => {
    fc.assert(
      fc.property(point, fc.array(step, { maxLength: 20 }), (start, steps) => {
        const back = steps.toReversed().map(({ east, north }) => ({ east: -east, north: -north }));
        expect(walk(start, [...steps, ...back]).gap).toEqual({ east: 0, north: 0 });
        const { corners: reached, gap } = walk(start, steps);
        expect(walk(start, [...steps, gap]).gap).toEqual({ east: 0, north: 0 });
        expect(reached[0]).toEqual(start);
      }),
      { seed: 3 },
    );
  });

  test('growing out and back gives the same outline, and walls add their area', () => {
    const size = fc.integer({ min: 4_000_000, max: 400_000_000 });
    fc.assert(
      fc.property(point, size, size, fc.nat(2_000_000), (at, width, depth, wall) => {
        const inside = rectangle(at, width, depth);
        const grown = growOutward(inside, () => wall) as Point[];
        expect(areaOf(grown)).toBe(BigInt(width + 2 * wall) * BigInt(depth + 2 * wall));
        expect(growOutward(grown, () => -wall)).toEqual(inside);
      }),
      { seed: 4 },
    );
  });
});
