import type { Point } from './corners.js';

/** A rectangle along the axes, in 0.1 µm. */
export interface Rectangle {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/**
 * Cuts an outline without crossings into the rectangles whose areas add up to its own, so that a sum can be
 * shown and checked by hand, the largest first. Of the cuts along and across, the one with fewer pieces is taken,
 * then the one with the larger main piece. Undefined if some wall is slanted.
 */
export function rectanglesOf(corners: readonly Point[]): readonly Rectangle[] | undefined {
  const slanted = corners.some(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length] as Point;
    return x !== nextX && y !== nextY;
  });
  if (slanted) return undefined;
  const along = largestFirst(bandsOf(corners));
  const turned = bandsOf(corners.map(([x, y]): Point => [y, x]));
  const across = largestFirst(
    turned.map(({ west, south, east, north }) => ({ west: south, south: west, east: north, north: east })),
  );
  if (along.length !== across.length) return along.length < across.length ? along : across;
  return largestOf(along) >= largestOf(across) ? along : across;
}

const extent = ({ west, south, east, north }: Rectangle): bigint =>
  BigInt(east - west) * BigInt(north - south);

function largestOf(rectangles: readonly Rectangle[]): bigint {
  let most = 0n;
  for (const one of rectangles.map(extent)) if (one > most) most = one;
  return most;
}

function largestFirst(rectangles: readonly Rectangle[]): Rectangle[] {
  return [...rectangles].sort((a, b) => {
    const [first, second] = [extent(a), extent(b)];
    if (first !== second) return first > second ? -1 : 1;
    return a.south - b.south || a.west - b.west;
  });
}

/** Cuts along every line that runs east and west, then joins what lies in one column again. */
function bandsOf(corners: readonly Point[]): Rectangle[] {
  const lines = [...new Set(corners.map(([, y]) => y))].sort((a, b) => a - b);
  const done: Rectangle[] = [];
  let open: Rectangle[] = [];
  for (const [i, south] of lines.slice(0, -1).entries()) {
    const north = lines[i + 1] as number;
    const xs = crossedAt(corners, south, north);
    const band: Rectangle[] = [];
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const [west, east] = [xs[k] as number, xs[k + 1] as number];
      const below = open.find((one) => one.west === west && one.east === east);
      band.push({ west, east, south: below?.south ?? south, north });
    }
    done.push(...open.filter((one) => !band.some((b) => b.west === one.west && b.east === one.east)));
    open = band;
  }
  return [...done, ...open];
}

/** Where walls run north and south through the band, from west to east. */
function crossedAt(corners: readonly Point[], south: number, north: number): number[] {
  return corners
    .flatMap(([x, y], i) => {
      const [nextX, nextY] = corners[(i + 1) % corners.length] as Point;
      return x === nextX && Math.min(y, nextY) <= south && Math.max(y, nextY) >= north ? [x] : [];
    })
    .sort((a, b) => a - b);
}
