/** Where an outline meets itself: such an outline has no area, and the writer is told which walls. */
import { divideRounded, type Edge, edgesOf, isBetween, isSame, type Point, turnOf } from './corners.js';

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
  // Of the last edge and the first this is never so: the edge before the last ends at `other`, and was reported.
  if (isBetween(shared, mine, other)) return other;
  if (isBetween(shared, other, mine)) return follows ? mine : shared;
  return undefined;
}
