/**
 * Where a room's name is written on a drawing. The only place where outlines meet binary fractions: they choose
 * between places and decide no figure, and plain arithmetic and square roots come out alike on every machine.
 */
import { edgesOf, type Point } from './corners.js';
import { type Bounds, boundsOf, centroidOf, containsPoint, middleOf, twiceArea } from './measuring.js';

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
