import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SQUARE_FOOT, SQUARE_INCH } from '../../src/facts/floor-area.js';
import { FOOT, INCH } from '../../src/facts/length.js';
import {
  areaOf,
  boundsOf,
  centroidOf,
  containsPoint,
  firstCrossing,
  growOutward,
  labelSpot,
  overlapOf,
  type Point,
  partOutside,
  printGap,
  rectangle,
  sidesOf,
  twiceArea,
  unionOf,
  walk,
} from '../../src/tally/geometry.js';

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
    expect(unionOf([room, shifted]).area).toBe(areaOf(room) + areaOf(shifted) - common.area);
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

  test('a union of none is empty, of one is itself', () => {
    expect(unionOf([])).toEqual({ area: 0n, polygons: [] });
    expect(unionOf([room]).area).toBe(100n * SQUARE_FOOT);
    // However small: only overlaps and parts outside have pieces that count as none.
    expect(unionOf([rectangle(origin, 1000, 1000)]).area).toBe(1_000_000n);
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

  test('two rectangles: overlap, rest and union are what intervals say', () => {
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
        expect(unionOf([a, b]).area).toBe(areaOf(a) + areaOf(b) - common);
      }),
      { seed: 5 },
    );
  });
});
