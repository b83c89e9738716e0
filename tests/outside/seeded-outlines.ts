/** Made outlines for comparing our geometry with other programs. The same seed gives the same outlines. */
import type { Point } from '../../src/tally/corners.js';

/** Numbers from 0 up to 1, in an order fixed by the seed (Park and Miller's generator). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Corners at rising angles round the origin, at random distances up to `size`: never crosses itself. */
export function starOutline(next: () => number, size: number): Point[] {
  const count = 3 + Math.floor(next() * 22);
  const corners: Point[] = [];
  for (let i = 0; i < count; i++) {
    const angle = ((i + 0.8 * next()) * 2 * Math.PI) / count;
    const distance = size * (0.25 + 0.75 * next());
    corners.push([Math.round(distance * Math.cos(angle)), Math.round(distance * Math.sin(angle))]);
  }
  return varied(corners, next);
}

/** Columns of random width that all cross the line y = 0: corners at right angles, never crosses itself. */
export function squareOutline(next: () => number, size: number): Point[] {
  const count = 1 + Math.floor(next() * 8);
  const whole = () => 1 + Math.floor((next() * size) / count);
  const tops: Point[] = [];
  const bottoms: Point[] = [];
  let x = 0;
  for (let i = 0; i < count; i++) {
    const [top, bottom, right] = [whole(), -whole(), x + whole()];
    tops.push([x, top], [right, top]);
    bottoms.push([x, bottom], [right, bottom]);
    x = right;
  }
  const corners = [...bottoms, ...tops.toReversed()];
  const apart = corners.filter((p, i) => {
    const after = corners[(i + 1) % corners.length] as Point;
    return p[0] !== after[0] || p[1] !== after[1];
  });
  return varied(apart, next);
}

/** A walk over a coarse grid that mostly touches or crosses itself; without a corner twice running. */
export function tangledOutline(next: () => number, step: number): Point[] {
  const count = 4 + Math.floor(next() * 5);
  const corners: Point[] = [];
  while (corners.length < count) {
    const p: Point = [step * Math.floor(next() * 5), step * Math.floor(next() * 5)];
    const ends = [corners.at(-1), corners.length === count - 1 ? corners[0] : undefined];
    if (ends.every((end) => end === undefined || end[0] !== p[0] || end[1] !== p[1])) corners.push(p);
  }
  return corners;
}

/** The same outline, perhaps turned round and begun at another corner. */
function varied(corners: Point[], next: () => number): Point[] {
  const start = Math.floor(next() * corners.length);
  const moved = [...corners.slice(start), ...corners.slice(0, start)];
  return next() < 0.5 ? moved : moved.toReversed();
}
