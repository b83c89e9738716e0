/** Outlines by their corners: how one is cut into rectangles, laid over others, walked, grown and named. */
import { describe, expect, it, test } from 'vitest';
import { FOOT, INCH } from '../../src/facts/length.js';
import { rectanglesOf } from '../../src/tally/area-rectangles.js';
import { lengthToType } from '../../src/tally/area-words.js';
import { overlapOf, partOutside } from '../../src/tally/clipping.js';
import { edgesOf, type Point } from '../../src/tally/corners.js';
import { firstCrossing } from '../../src/tally/crossing.js';
import { labelSpot } from '../../src/tally/label-spot.js';
import { growOutward } from '../../src/tally/measuring.js';

const feet = (...corners: [number, number][]): Point[] => corners.map(([x, y]) => [x * FOOT, y * FOOT]);

describe('an outline as rectangles', () => {
  const cut = (...corners: [number, number][]) =>
    rectanglesOf(corners)?.map(({ west, south, east, north }) => [east - west, north - south]);
  it.each<readonly [string, [number, number][], [number, number][]]>([
    [
      'a bar on a foot is cut along, into two and not three',
      [
        [3, 0],
        [6, 0],
        [6, 6],
        [9, 6],
        [9, 9],
        [0, 9],
        [0, 6],
        [3, 6],
      ],
      [
        [9, 3],
        [3, 6],
      ],
    ],
    [
      'a bar on its side is cut across, into two and not three',
      [
        [0, 3],
        [6, 3],
        [6, 0],
        [9, 0],
        [9, 9],
        [6, 9],
        [6, 6],
        [0, 6],
      ],
      [
        [3, 9],
        [6, 3],
      ],
    ],
    [
      'of two cuts into two, the one with the larger piece: along',
      [
        [0, 0],
        [9, 0],
        [9, 6],
        [2, 6],
        [2, 8],
        [0, 8],
      ],
      [
        [9, 6],
        [2, 2],
      ],
    ],
    [
      'of two cuts into two, the one with the larger piece: across',
      [
        [0, 0],
        [6, 0],
        [6, 9],
        [0, 9],
        [0, 8],
        [-2, 8],
        [-2, 6],
        [0, 6],
      ],
      [
        [6, 9],
        [2, 2],
      ],
    ],
    [
      'pieces of one size stand from the south, then from the west',
      [
        [0, 0],
        [8, 0],
        [8, 3],
        [6, 3],
        [6, 1],
        [2, 1],
        [2, 3],
        [0, 3],
      ],
      [
        [8, 1],
        [2, 2],
        [2, 2],
      ],
    ],
  ])('%s', (_, corners, pieces) => {
    expect(cut(...corners)).toEqual(pieces);
  });

  test('none where a wall is slanted', () => {
    expect(cut([0, 0], [4, 0], [4, 3], [1, 4])).toBeUndefined();
  });
});

describe('outlines laid over one another', () => {
  test('what rounds to nothing is nothing', () => {
    const tip: Point[] = [
      [0, 0],
      [100, -30],
      [100, 30],
    ];
    const beside: Point[] = [
      [-50, -100],
      [1, -100],
      [0, 100],
      [-50, 100],
    ];
    expect(overlapOf(tip, beside)).toEqual({ area: 0n, polygons: [] });
  });

  test('the piece with the southernmost corner comes first, wherever its ring begins', () => {
    // Three teeth below a beam, and the beam taken away.
    const comb = feet(
      ...[
        [-11, 0],
        [-9, 0],
        [-9, 6],
        [-1, 6],
        [-1, 1],
        [1, 1],
        [1, 6],
        [9, 6],
        [9, 0],
        [11, 0],
        [11, 8],
        [-11, 8],
      ].map(([x = 0, y = 0]): [number, number] => [x, y]),
    );
    const { polygons } = partOutside(comb, feet([-12, 5], [12, 5], [12, 9], [-12, 9]));
    expect(polygons.map(({ outer }) => outer.toSorted((a, b) => a[1] - b[1] || a[0] - b[0])[0])).toEqual(
      feet([-11, 0], [9, 0], [-1, 1]),
    );
  });
});

test('a walk that turns back is found at the place where it does', () => {
  // On past its own start and back over it: a corner in the middle of one line.
  expect(
    firstCrossing([
      [0, 0],
      [10, 0],
      [20, 0],
    ]),
  ).toEqual({ edges: [0, 2], at: [0, 0] });
  expect(
    firstCrossing([
      [0, 0],
      [10, 0],
      [5, 0],
    ]),
  ).toEqual({ edges: [0, 1], at: [5, 0] });
  expect(
    firstCrossing([
      [0, 0],
      [10, 0],
      [10, 5],
      [5, 0],
    ]),
  ).toMatchObject({ edges: [0, 2], at: [5, 0] });
});

test('a corner that is written twice moves no name on the plan', () => {
  const square = feet([0, 0], [10, 0], [10, 8], [0, 8]);
  const twice = [...square.slice(0, 2), ...square.slice(1)];
  expect(edgesOf(twice)).toHaveLength(5);
  expect(labelSpot(twice)).toEqual(labelSpot(square));
});

test('an outline with a slanted edge is not grown, and nobody is asked for its thickness', () => {
  const asked: string[] = [];
  const grown = growOutward(feet([0, 0], [4, 3], [4, 9], [0, 9]), ({ side }) => {
    asked.push(side);
    return INCH;
  });
  expect([grown, asked]).toEqual([{ slanted: true }, []]);
});

test.each([
  [11 * FOOT + 6 * INCH + INCH / 2, `11'6 1/2"`],
  [11 * FOOT + INCH / 8, `11'1/8"`],
  [11 * FOOT, `11'`],
  [(3 * INCH) / 4, `3/4"`],
])('%i tenths of a micrometre are typed %s', (units, typed) => {
  expect(lengthToType(units)).toBe(typed);
});
