/** How much of one picture is left in another, block by block. */
import type { Pixels } from './develop-file.js';

/** Left, top, right and bottom in pixels; right and bottom are the first ones beyond it. */
export type Region = readonly [left: number, top: number, right: number, bottom: number];

/** A rectangle given as parts of a picture (left, top, width, height), drawn in by some pixels on every side. */
export function regionOf(
  [left, top, width, height]: readonly [number, number, number, number],
  size: { readonly width: number; readonly height: number },
  inset: number,
): Region {
  return [
    Math.ceil(left * size.width) + inset,
    Math.ceil(top * size.height) + inset,
    Math.floor((left + width) * size.width) - inset,
    Math.floor((top + height) * size.height) - inset,
  ];
}

export interface Likeness {
  /** Pearson's r of the two pictures' brightness; 0 where one of them does not vary at all. */
  readonly r: number;
  /** Levels of 255 by which the first varies with the second: r times its standard deviation. */
  readonly carried: number;
}

export function likeness(one: Pixels, other: Pixels, [left, top, right, bottom]: Region): Likeness {
  let [n, sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0, 0];
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const [a, b] = [brightness(one, x, y), brightness(other, x, y)];
      n += 1;
      sa += a;
      sb += b;
      saa += a * a;
      sbb += b * b;
      sab += a * b;
    }
  const own = Math.sqrt(Math.max(0, n * saa - sa * sa));
  const spread = own * Math.sqrt(Math.max(0, n * sbb - sb * sb));
  const r = spread < 1e-6 ? 0 : (n * sab - sa * sb) / spread;
  return { r, carried: (r * own) / n };
}

/** Of every whole block of 8 by 8 pixels of a region. */
export function blockLikenesses(one: Pixels, other: Pixels, [left, top, right, bottom]: Region): Likeness[] {
  const found: Likeness[] = [];
  for (let y = top; y + 8 <= bottom; y += 8)
    for (let x = left; x + 8 <= right; x += 8) found.push(likeness(one, other, [x, y, x + 8, y + 8]));
  return found;
}

/** The largest distance of any channel of any pixel of a region from a colour, in levels of 255. */
export function furthestFrom(
  colour: readonly number[],
  { data, width, channels }: Pixels,
  [left, top, right, bottom]: Region,
): number {
  let most = 0;
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++)
      for (let channel = 0; channel < 3; channel++)
        most = Math.max(
          most,
          Math.abs((data[(y * width + x) * channels + channel] ?? 999) - (colour[channel] ?? 0)),
        );
  return most;
}

/** Luma of ITU-R BT.601, 2.5.1. */
function brightness({ data, width, channels }: Pixels, x: number, y: number): number {
  const at = (y * width + x) * channels;
  return 0.299 * (data[at] ?? 0) + 0.587 * (data[at + 1] ?? 0) + 0.114 * (data[at + 2] ?? 0);
}
