/**
 * Outlines laid over one another: what they share, what sticks out, what they cover together.
 *
 * Shapes are cut by polyclip-ts; its answers are read back as whole tenths of a micrometre and measured exactly.
 */
import { difference, type Geom, intersection } from 'polyclip-ts';
import { SQUARE_INCH } from '../facts/floor-area.js';
import { isSame, type Point } from './corners.js';
import { twiceArea } from './measuring.js';

/** One connected piece of a region. */
interface Piece {
  /** Its outer corners, anticlockwise. */
  outer: Point[];
  /** The corners of each hole in it, clockwise. */
  holes: Point[][];
}

/** What is left after laying outlines over one another. */
export interface Region {
  /** In (0.1 µm)², rounded down where the doubled area is odd. */
  area: bigint;
  /** The pieces that make it up, the one with the southernmost (then westernmost) corner first. */
  polygons: Piece[];
}

/** What two outlines have in common. A piece below one square inch counts as none. */
export function overlapOf(a: readonly Point[], b: readonly Point[]): Region {
  return regionOf(intersection(toGeom(a), toGeom(b)));
}

/** What of `inner` lies outside `outer`. A piece below one square inch counts as none. */
export function partOutside(inner: readonly Point[], outer: readonly Point[]): Region {
  return regionOf(difference(toGeom(inner), toGeom(outer)));
}

function toGeom(corners: readonly Point[]): Geom {
  return [corners.map(([x, y]): [number, number] => [x, y])];
}

/**
 * Reads a clipping result back. Corners made where slanted edges cross are set to the nearest 0.1 µm; corners of
 * outlines along the axes are whole already, so that nothing is rounded there. Areas are taken after that.
 */
function regionOf(result: [number, number][][][]): Region {
  const pieces: Piece[] = [];
  let doubled = 0n;
  for (const rings of result) {
    // Rounding may flatten a ring altogether.
    const [outer, ...holes] = rings.map(toCorners).filter((ring) => twiceArea(ring) !== 0n);
    if (outer === undefined) continue;
    // Outer rings come anticlockwise and holes clockwise.
    const own = holes.reduce((sum, hole) => sum + twiceArea(hole), twiceArea(outer));
    if (own < 2n * SQUARE_INCH) continue;
    doubled += own;
    pieces.push({ outer, holes });
  }
  pieces.sort((a, b) => compareLowest(a.outer, b.outer));
  return { area: doubled / 2n, polygons: pieces };
}

/** A ring with whole coordinates, without the repeated last corner and without corners that rounding merged. */
function toCorners(ring: [number, number][]): Point[] {
  const whole = ring.map(([x, y]): Point => [Math.round(x) + 0, Math.round(y) + 0]);
  return whole.filter((p, i) => !isSame(p, whole[(i + 1) % whole.length] as Point));
}

/** By their southernmost corner, and of those on one line the westernmost. */
const compareLowest = (a: Point[], b: Point[]): number => southFirst(southmost(a), southmost(b));
const southFirst = (a: Point, b: Point): number => a[1] - b[1] || a[0] - b[0];
const southmost = (corners: Point[]): Point => corners.toSorted(southFirst)[0] as Point;
