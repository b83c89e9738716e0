/**
 * The corners of an outline and the edges between them, in whole tenths of a micrometre.
 *
 * East is +x and north is +y, with |x| < 2^45 (about 3,500 km). An outline is its corners in order, either way
 * round, without the first one repeated at the end. Products of coordinates are bigints, so nothing is rounded.
 */

/** East and north of the origin, each a whole number of 0.1 µm. */
export type Point = readonly [number, number];

/** From one corner to the next. */
export type Edge = readonly [Point, Point];

/** Edge `i` runs from corner `i` to the one after it; the last one leads back to the first corner. */
export function edgesOf(corners: readonly Point[]): Edge[] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] as Point] as const);
}

export function isSame(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Twice the area of the triangle with the origin, with its sign. */
export function crossOf(a: Point, b: Point): bigint {
  return BigInt(a[0]) * BigInt(b[1]) - BigInt(b[0]) * BigInt(a[1]);
}

/** Positive when going from `a` by `b` to `c` turns left, negative when right, zero when the three are in line. */
export function turnOf(a: Point, b: Point, c: Point): bigint {
  return BigInt(b[0] - a[0]) * BigInt(c[1] - a[1]) - BigInt(b[1] - a[1]) * BigInt(c[0] - a[0]);
}

/** Whether `p`, known to be in line with `a` and `b`, lies on the stretch between them. */
export function isBetween(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}

export function absolute(n: bigint): bigint {
  return n < 0n ? -n : n;
}

/** To the nearest whole number, halves away from zero. */
export function divideRounded(top: bigint, bottom: bigint): bigint {
  const [over, under] = [absolute(top), absolute(bottom)];
  const whole = (2n * over + under) / (2n * under);
  return top < 0n === bottom < 0n ? whole : -whole;
}
