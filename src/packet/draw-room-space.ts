/** Where in a room's outline a box of words has room. Points, y growing downwards. */
import { edgesOf } from '../tally/corners.js';
import type { XY } from './packet.js';

/** How far an outline reaches to both sides of a point inside it. */
export function reach(corners: readonly XY[], [x, y]: XY): number {
  let before = Number.NEGATIVE_INFINITY;
  let after = Number.POSITIVE_INFINITY;
  for (const [a, b] of edgesOf(corners)) {
    if (a[1] > y === b[1] > y) continue;
    const crossing = a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
    if (crossing <= x) before = Math.max(before, crossing);
    else after = Math.min(after, crossing);
  }
  // An outline without any area reaches nowhere.
  return Number.isFinite(after - before) ? after - before : 0;
}

/** Places tried along each side of a bent room. */
const PLACES = 10;

/** The middle of a box of this size inside the outline, the nearest one to the spot that was tried. */
export function findBox(corners: readonly XY[], spot: XY, width: number, height: number): XY | undefined {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const [west, east, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  if (width > east - west || height > bottom - top) return undefined;
  if (holdsBox(corners, spot, width, height)) return spot;
  let best: XY | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let column = 0; column <= PLACES; column++)
    for (let row = 0; row <= PLACES; row++) {
      const at: XY = [
        west + width / 2 + ((east - west - width) * column) / PLACES,
        top + height / 2 + ((bottom - top - height) * row) / PLACES,
      ];
      const away = (at[0] - spot[0]) ** 2 + (at[1] - spot[1]) ** 2;
      if (away >= least || !holdsBox(corners, at, width, height)) continue;
      [best, least] = [at, away];
    }
  return best;
}

/** Nothing of the outline passes through the box, and its middle is inside. */
function holdsBox(corners: readonly XY[], at: XY, width: number, height: number): boolean {
  const half: XY = [width / 2 - GRAIN, height / 2 - GRAIN];
  return holdsPoint(corners, at) && !edgesOf(corners).some(([a, b]) => passesThrough(a, b, at, half));
}

/** Points: a box may touch a wall by as much. */
const GRAIN = 0.01;

function holdsPoint(corners: readonly XY[], [x, y]: XY): boolean {
  return (
    edgesOf(corners).filter(
      ([a, b]) => a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]),
    ).length %
      2 ===
    1
  );
}

/** Whether a stretch has a piece inside a box about a point: it is cut at the box's sides in turn. */
function passesThrough(a: XY, b: XY, at: XY, half: XY): boolean {
  let [from, to] = [0, 1];
  for (const axis of [0, 1] as const) {
    const start = a[axis] - at[axis];
    const run = b[axis] - a[axis];
    if (run === 0) {
      if (Math.abs(start) >= half[axis]) return false;
      continue;
    }
    const cuts = [(-half[axis] - start) / run, (half[axis] - start) / run] as const;
    from = Math.max(from, Math.min(...cuts));
    to = Math.min(to, Math.max(...cuts));
  }
  return from < to;
}
