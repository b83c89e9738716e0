/**
 * What can be said exactly about an outline: its area, its bounds, its sides, what lies inside.
 *
 * Takes corners and steps; gives areas and places. Never rounds a length and never knows what a room is. Areas
 * are bigints of (0.1 µm)², so that nothing is lost when they are added up. Unless a function says otherwise it
 * expects an outline without crossings: ask `firstCrossing` before. Start reading at `walk`.
 */
import { absolute, crossOf, divideRounded, edgesOf, isBetween, type Point, turnOf } from './corners.js';

/** How far east and how far north something goes, in 0.1 µm; west and south are negative. */
export interface Move {
  readonly east: number;
  readonly north: number;
}

/** Which side of the house a stretch of wall is on; `slanted` for a wall that follows neither axis. */
export type Side = 'north' | 'east' | 'south' | 'west' | 'slanted';

/** Of a wall that follows one of the axes. */
export type Compass = Exclude<Side, 'slanted'>;

/** An outline's outermost lines, in 0.1 µm. */
export interface Bounds {
  west: number;
  south: number;
  east: number;
  north: number;
}

/**
 * Follows steps from a starting corner.
 *
 * When the last step arrives at the start, the start isn't repeated among the corners. When it doesn't, the
 * place where the walk ended is the last corner, and `gap` is the step that would still lead back.
 */
export function walk(start: Point, steps: readonly Move[]): { corners: Point[]; gap: Move } {
  const corners: Point[] = [start];
  let [x, y] = start;
  for (const step of steps) {
    x += step.east;
    y += step.north;
    corners.push([x, y]);
  }
  const gap = { east: start[0] - x, north: start[1] - y };
  if (gap.east === 0 && gap.north === 0 && corners.length > 1) corners.pop();
  return { corners, gap };
}

/** Says in words what a walk lacks, e.g. "0′ 6″ short to the west"; `print` writes a length of 0.1 µm. */
export function printGap(gap: Move, print: (length: number) => string): string {
  const parts: string[] = [];
  if (gap.east !== 0)
    parts.push(`${print(Math.abs(gap.east))} short to the ${gap.east > 0 ? 'east' : 'west'}`);
  if (gap.north !== 0)
    parts.push(`${print(Math.abs(gap.north))} short to the ${gap.north > 0 ? 'north' : 'south'}`);
  return parts.length === 0 ? 'closes exactly' : parts.join(' and ');
}

/** A rectangle from its south-west corner, anticlockwise; `width` runs east and `depth` north, in 0.1 µm. */
export function rectangle(at: Point, width: number, depth: number): Point[] {
  const [x, y] = at;
  return [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ];
}

/** Twice the area in (0.1 µm)², exact: positive when the corners run anticlockwise, negative when clockwise. */
export function twiceArea(corners: readonly Point[]): bigint {
  let sum = 0n;
  for (const [a, b] of edgesOf(corners)) sum += crossOf(a, b);
  return sum;
}

/**
 * The area in (0.1 µm)². Exact whenever the doubled area is even; when it is odd, the last half unit (5e-15 m²)
 * is dropped. A sum over many slanted outlines that must not lose it adds `twiceArea` and halves once.
 */
export function areaOf(corners: readonly Point[]): bigint {
  return absolute(twiceArea(corners)) / 2n;
}

/** Whether a point lies inside an outline or on its edge; exact. */
export function containsPoint(corners: readonly Point[], p: Point): boolean {
  let inside = false;
  for (const [a, b] of edgesOf(corners)) {
    const turn = turnOf(a, b, p);
    if (turn === 0n && isBetween(a, b, p)) return true;
    if (a[1] > p[1] !== b[1] > p[1] && (b[1] > a[1] ? turn > 0n : turn < 0n)) inside = !inside;
  }
  return inside;
}

/**
 * The centre of gravity, to the nearest 0.1 µm. It may lie outside a bent outline: use `labelSpot` for names.
 * Without any area it is the middle of the bounds.
 */
export function centroidOf(corners: readonly Point[]): Point {
  let doubled = 0n;
  let x = 0n;
  let y = 0n;
  for (const [a, b] of edgesOf(corners)) {
    const cross = crossOf(a, b);
    doubled += cross;
    x += (BigInt(a[0]) + BigInt(b[0])) * cross;
    y += (BigInt(a[1]) + BigInt(b[1])) * cross;
  }
  if (doubled === 0n) return middleOf(boundsOf(corners));
  return [Number(divideRounded(x, 3n * doubled)), Number(divideRounded(y, 3n * doubled))];
}

/** The outermost lines of an outline. Throws on an outline without corners, which is our own mistake. */
export function boundsOf(corners: readonly Point[]): Bounds {
  const [first, ...rest] = corners;
  if (first === undefined) throw new RangeError('an outline without corners has no bounds');
  const bounds = { west: first[0], south: first[1], east: first[0], north: first[1] };
  for (const [x, y] of rest) {
    bounds.west = Math.min(bounds.west, x);
    bounds.east = Math.max(bounds.east, x);
    bounds.south = Math.min(bounds.south, y);
    bounds.north = Math.max(bounds.north, y);
  }
  return bounds;
}

/** For each edge the side of the house that it faces. An edge without any length counts as slanted. */
export function sidesOf(corners: readonly Point[]): Side[] {
  const anticlockwise = twiceArea(corners) >= 0n;
  return edgesOf(corners).map(([a, b]) => {
    const east = Math.sign(b[0] - a[0]);
    const north = Math.sign(b[1] - a[1]);
    if ((east === 0) === (north === 0)) return 'slanted';
    // Going anticlockwise, outside is on the right hand.
    if (north === 0) return east > 0 === anticlockwise ? 'south' : 'north';
    return north > 0 === anticlockwise ? 'east' : 'west';
  });
}

/**
 * Moves every edge outward by its wall's thickness (0.1 µm), for an outline that was measured inside.
 *
 * Corners keep their order. Where two edges in one line have walls of different thickness, the corner between
 * them becomes two, so that edge numbers past it shift by one. An outline with a slanted edge isn't grown, since
 * its new corners would no longer be whole numbers. A notch narrower than the walls on both its sides closes up
 * and crosses itself: ask `firstCrossing` about the result.
 */
export function growOutward(
  corners: readonly Point[],
  thicknessOf: (edge: { index: number; side: Compass }) => number,
): Point[] | { slanted: true } {
  const sides = sidesOf(corners);
  const moves: Move[] = [];
  for (const [index, side] of sides.entries()) {
    if (side === 'slanted') return { slanted: true };
    moves.push(outward(side, thicknessOf({ index, side })));
  }
  const grown: Point[] = [];
  for (const [index, [x, y]] of corners.entries()) {
    const before = (index + corners.length - 1) % corners.length;
    const came = moves[before] as Move;
    const goes = moves[index] as Move;
    const straight =
      (sides[before] === 'north' || sides[before] === 'south') ===
      (sides[index] === 'north' || sides[index] === 'south');
    if (!straight) {
      grown.push([x + came.east + goes.east, y + came.north + goes.north]);
      continue;
    }
    grown.push([x + came.east, y + came.north]);
    if (came.east !== goes.east || came.north !== goes.north) grown.push([x + goes.east, y + goes.north]);
  }
  return grown;
}

/** The middle of the bounds, to the whole 0.1 µm below. */
export function middleOf(bounds: Bounds): Point {
  return [Math.floor((bounds.west + bounds.east) / 2), Math.floor((bounds.south + bounds.north) / 2)];
}

function outward(side: Compass, thickness: number): Move {
  if (side === 'north') return { east: 0, north: thickness };
  if (side === 'south') return { east: 0, north: -thickness };
  return { east: side === 'east' ? thickness : -thickness, north: 0 };
}
