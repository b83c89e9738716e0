/**
 * Outlines in whole tenths of a micrometre, and what can be said about them exactly.
 *
 * Takes corners and steps; gives areas, crossings, overlaps and places. Never rounds a length and never knows
 * what a room is. Coordinates are whole numbers of 0.1 µm with |x| < 2^45 (about 3,500 km), east is +x and
 * north is +y. Areas are bigints of (0.1 µm)², so that nothing is lost when they are added up.
 *
 * An outline is its corners in order, either way round, without the first one repeated at the end. Unless a
 * function says otherwise it expects an outline without crossings: ask `firstCrossing` before.
 * Start reading at `walk`.
 */
import { difference, type Geom, intersection, union } from 'polyclip-ts';
import { SQUARE_INCH } from '../facts/floor-area.js';

/** East and north of the origin, each a whole number of 0.1 µm. */
export type Point = readonly [number, number];

/** How far east and how far north something goes, in 0.1 µm; west and south are negative. */
export interface Move {
  readonly east: number;
  readonly north: number;
}

/** Which side of the house a stretch of wall is on; `slanted` for a wall that follows neither axis. */
export type Side = 'north' | 'east' | 'south' | 'west' | 'slanted';

/** An outline's outermost lines, in 0.1 µm. */
export interface Bounds {
  west: number;
  south: number;
  east: number;
  north: number;
}

/** One connected piece of a region. */
export interface Piece {
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

/**
 * The first place where an outline meets itself: crosses, touches, runs along or turns back on itself.
 *
 * Edge `i` runs from corner `i` to the one after it. Of several crossings the one with the lowest first edge
 * wins, then the lowest second one. An edge without any length (a corner written twice running) comes before
 * all of these and is reported with its own number twice. `at` is exact where edges touch or share a stretch
 * (then it is the shared place nearest to where the first edge starts), and to the nearest 0.1 µm where two
 * slanted edges cross.
 */
export function firstCrossing(corners: readonly Point[]): { edges: [number, number]; at: Point } | undefined {
  const edges = edgesOf(corners);
  const empty = edges.findIndex(([from, to]) => isSame(from, to));
  if (empty !== -1) return { edges: [empty, empty], at: corners[empty] as Point };
  const last = edges.length - 1;
  for (const [i, first] of edges.entries()) {
    for (let j = i + 1; j <= last; j++) {
      const second = edges[j] as Edge;
      const follows = j === i + 1;
      const leads = i === 0 && j === last;
      const at = follows || leads ? foldOf(first, second, follows) : meetingOf(first, second);
      if (at !== undefined) return { edges: [i, j], at };
    }
  }
  return undefined;
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
  thicknessOf: (edge: { index: number; side: Side }) => number,
): Point[] | { slanted: true } {
  const sides = sidesOf(corners);
  if (sides.includes('slanted')) return { slanted: true };
  const moves = sides.map((side, index) => outward(side, thicknessOf({ index, side })));
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

/** What two outlines have in common. A piece below one square inch counts as none. */
export function overlapOf(a: readonly Point[], b: readonly Point[]): Region {
  return regionOf(intersection(toGeom(a), toGeom(b)), SQUARE_INCH);
}

/** What of `inner` lies outside `outer`. A piece below one square inch counts as none. */
export function partOutside(inner: readonly Point[], outer: readonly Point[]): Region {
  return regionOf(difference(toGeom(inner), toGeom(outer)), SQUARE_INCH);
}

/** What any of the outlines covers; nothing counts as too small here. No outlines give an empty region. */
export function unionOf(list: readonly (readonly Point[])[]): Region {
  const [first, ...rest] = list.map(toGeom);
  return first === undefined ? { area: 0n, polygons: [] } : regionOf(union(first, ...rest), 0n);
}

/**
 * A place well inside an outline, for its name on a drawing: the centre of gravity where that has room around
 * it, else the place farthest from every edge, to about a hundredth of the outline's shorter side (or a five hundredth
 * of a much longer one). The same outline gives the same place. An outline without any area gives the middle of its bounds.
 */
export function labelSpot(corners: readonly Point[]): Point {
  const bounds = boundsOf(corners);
  if (twiceArea(corners) === 0n) return middleOf(bounds);
  const centre = spotAt(corners, centroidOf(corners), 0);
  const roomiest = roomiestSpot(corners, bounds, centre);
  // A centred name looks right, so the roomiest place wins only where the centre is cramped.
  return 3 * centre.room >= 2 * roomiest.room ? centre.at : roomiest.at;
}

/** A square of the search in `roomiestSpot`. */
interface Spot {
  at: Point;
  /** Half the side of its square, in 0.1 µm. */
  half: number;
  /** Distance to the nearest edge, negative outside the outline. */
  room: number;
}

/**
 * Finds the place farthest from every edge by quartering squares: a square is looked into only while its
 * farthest corner could still beat the best place by more than `precision`. Only plain arithmetic and square
 * roots are used, which every machine rounds alike.
 */
function roomiestSpot(corners: readonly Point[], bounds: Bounds, first: Spot): Spot {
  let best = first;
  const [width, depth] = [bounds.east - bounds.west, bounds.north - bounds.south];
  // A sliver would be cut into millions of squares if its width alone set the precision.
  const precision = Math.max(Math.min(width, depth) / 100, Math.max(width, depth) / 500);
  // Squares as wide as the outline is narrow, but never more than 64 of them along a very long one.
  const half = Math.max(1, Math.ceil(Math.min(width, depth) / 2), Math.ceil(Math.max(width, depth) / 128));
  const queue: Spot[] = [];
  const look = (x: number, y: number, size: number) => {
    const spot = spotAt(corners, [Math.round(x), Math.round(y)], size);
    if (spot.room > best.room) best = spot;
    queue.push(spot);
  };
  for (let y = bounds.south; y < bounds.north; y += 2 * half)
    for (let x = bounds.west; x < bounds.east; x += 2 * half) look(x + half, y + half, half);
  const promise = (spot: Spot) => spot.room + spot.half * Math.SQRT2;
  while (queue.length > 0) {
    let next = 0;
    for (const [i, spot] of queue.entries()) if (promise(spot) > promise(queue[next] as Spot)) next = i;
    const [spot] = queue.splice(next, 1) as [Spot];
    if (promise(spot) <= best.room + precision || spot.half <= 1) break;
    const quarter = spot.half / 2;
    for (const dy of [-quarter, quarter])
      for (const dx of [-quarter, quarter]) look(spot.at[0] + dx, spot.at[1] + dy, quarter);
  }
  return best;
}

function spotAt(corners: readonly Point[], at: Point, half: number): Spot {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [a, b] of edgesOf(corners)) nearest = Math.min(nearest, squaredDistance(a, b, at));
  const distance = Math.sqrt(nearest);
  return { at, half, room: containsPoint(corners, at) ? distance : -distance };
}

/** The squared distance from a point to a stretch; approximate, for choosing between places only. */
function squaredDistance([ax, ay]: Point, [bx, by]: Point, [px, py]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const along = length === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / length));
  const [ox, oy] = [px - ax - along * dx, py - ay - along * dy];
  return ox * ox + oy * oy;
}

type Edge = readonly [Point, Point];

function edgesOf(corners: readonly Point[]): Edge[] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] as Point] as const);
}

function isSame(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function crossOf(a: Point, b: Point): bigint {
  return BigInt(a[0]) * BigInt(b[1]) - BigInt(b[0]) * BigInt(a[1]);
}

/** Positive when going from `a` by `b` to `c` turns left, negative when right, zero when the three are in line. */
function turnOf(a: Point, b: Point, c: Point): bigint {
  return BigInt(b[0] - a[0]) * BigInt(c[1] - a[1]) - BigInt(b[1] - a[1]) * BigInt(c[0] - a[0]);
}

/** Whether `p`, known to be in line with `a` and `b`, lies on the stretch between them. */
function isBetween(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}

/** Where two edges that share no corner by right meet, nearest to where the first one starts. */
function meetingOf([a, b]: Edge, [c, d]: Edge): Point | undefined {
  if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0]))
    return undefined;
  if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1]))
    return undefined;
  const [turnC, turnD, turnA, turnB] = [turnOf(a, b, c), turnOf(a, b, d), turnOf(c, d, a), turnOf(c, d, b)];
  if (turnA === 0n && isBetween(c, d, a)) return a;
  // A `c` on the first edge needs no look: the edge that ends there comes before this one and was reported.
  if (turnD === 0n && isBetween(a, b, d)) return d;
  if (turnB === 0n && isBetween(c, d, b)) return b;
  if (turnC > 0n === turnD > 0n || turnA > 0n === turnB > 0n || turnC === 0n || turnD === 0n)
    return undefined;
  // A true crossing: the share of the way from a to b is turnA / (turnA - turnB).
  const along = (from: number, to: number) =>
    from + Number(divideRounded(BigInt(to - from) * turnA, turnA - turnB));
  return [along(a[0], b[0]), along(a[1], b[1])];
}

/**
 * Where two neighbouring edges meet in more than the corner they share. They can do so only in one line, turning
 * back. The second either `follows`, starting where the first ends, or it ends where the first starts.
 */
function foldOf([a, b]: Edge, [c, d]: Edge, follows: boolean): Point | undefined {
  const [shared, mine, other] = follows ? [b, a, d] : [a, b, c];
  if (turnOf(mine, shared, other) !== 0n) return undefined;
  if (isBetween(shared, mine, other)) return follows ? other : shared;
  if (isBetween(shared, other, mine)) return follows ? mine : shared;
  return undefined;
}

function middleOf(bounds: Bounds): Point {
  return [Math.floor((bounds.west + bounds.east) / 2), Math.floor((bounds.south + bounds.north) / 2)];
}

function absolute(n: bigint): bigint {
  return n < 0n ? -n : n;
}

/** To the nearest whole number, halves away from zero. */
function divideRounded(top: bigint, bottom: bigint): bigint {
  const [over, under] = [absolute(top), absolute(bottom)];
  const whole = (2n * over + under) / (2n * under);
  return top < 0n === bottom < 0n ? whole : -whole;
}

function outward(side: Side, thickness: number): Move {
  if (side === 'north') return { east: 0, north: thickness };
  if (side === 'south') return { east: 0, north: -thickness };
  return { east: side === 'east' ? thickness : -thickness, north: 0 };
}

function toGeom(corners: readonly Point[]): Geom {
  return [corners.map(([x, y]): [number, number] => [x, y])];
}

/**
 * Reads a clipping result back. Corners made where slanted edges cross are set to the nearest 0.1 µm; corners of
 * outlines along the axes are whole already, so that nothing is rounded there. Areas are taken after that.
 */
function regionOf(result: [number, number][][][], smallest: bigint): Region {
  const pieces: Piece[] = [];
  let doubled = 0n;
  for (const rings of result) {
    // Rounding may flatten a ring altogether.
    const [outer, ...holes] = rings.map(toCorners).filter((ring) => twiceArea(ring) !== 0n);
    if (outer === undefined) continue;
    const own = holes.reduce((sum, hole) => sum - absolute(twiceArea(hole)), absolute(twiceArea(outer)));
    if (own < 2n * smallest || own <= 0n) continue;
    doubled += own;
    pieces.push({ outer: turned(outer, true), holes: holes.map((hole) => turned(hole, false)) });
  }
  pieces.sort((a, b) => compareLowest(a.outer, b.outer));
  return { area: doubled / 2n, polygons: pieces };
}

/** A ring with whole coordinates, without the repeated last corner and without corners that rounding merged. */
function toCorners(ring: [number, number][]): Point[] {
  const whole = ring.map(([x, y]): Point => [Math.round(x) + 0, Math.round(y) + 0]);
  return whole.filter((p, i) => !isSame(p, whole[(i + 1) % whole.length] as Point));
}

function turned(corners: Point[], anticlockwise: boolean): Point[] {
  return twiceArea(corners) >= 0n === anticlockwise ? corners : corners.toReversed();
}

function compareLowest(a: Point[], b: Point[]): number {
  const lowest = (corners: Point[]) =>
    corners.reduce((low, p) => (p[1] < low[1] || (p[1] === low[1] && p[0] < low[0]) ? p : low));
  const [first, second] = [lowest(a), lowest(b)];
  return first[1] - second[1] || first[0] - second[0];
}
