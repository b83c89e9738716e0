/** Covers for the parts of a picture that nobody is to see: filled, with a soft edge outside of them. */
import type { OverlayOptions } from 'sharp';

/** Left, top, width and height as parts of the upright picture, 0 to 1. */
export type Rectangle = readonly [left: number, top: number, width: number, height: number];

/** A quiet grey: a cover is to be seen as one, not taken for a wall. */
const COVER = [138, 146, 150] as const;
/** The edge fades over this part of the picture's longer side, outside the rectangle: inside, nothing is left. */
const SOFT_PART = 0.008;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** All that a cover's bytes depend on beside the rectangle. */
export const COVER_RECIPE = [COVER, SOFT_PART] as const;

/** A cover to lay over an upright picture of that size, in pixels of the whole picture, before it is made smaller. */
export function coverOf([left, top, width, height]: Rectangle, size: Size): OverlayOptions {
  const soft = Math.max(3, Math.round(Math.max(size.width, size.height) * SOFT_PART));
  // Outwards to whole pixels, so that no pixel is covered in part.
  const [x0, x1] = [Math.floor(left * size.width), Math.ceil((left + width) * size.width)];
  const [y0, y1] = [Math.floor(top * size.height), Math.ceil((top + height) * size.height)];
  const from = { x: clamp(x0 - soft, size.width - 1), y: clamp(y0 - soft, size.height - 1) };
  const to = { x: clamp(x1 + soft, size.width), y: clamp(y1 + soft, size.height) };
  const across = Math.max(1, to.x - from.x);
  const down = Math.max(1, to.y - from.y);
  const data = Buffer.alloc(across * down * 4);
  // Rows at the same distance from the rectangle are the same: each is worked out once and copied.
  const rows = new Map<number, number>();
  for (let row = 0; row < down; row++) {
    const dy = outside(from.y + row, y0, y1);
    const at = row * across * 4;
    const same = rows.get(dy);
    if (same !== undefined) {
      data.copyWithin(at, same, same + across * 4);
      continue;
    }
    rows.set(dy, at);
    for (let column = 0; column < across; column++) {
      const distance = Math.max(outside(from.x + column, x0, x1), dy);
      const opacity = distance === 0 ? 255 : Math.round(255 * (1 - distance / (soft + 1)));
      data.set([...COVER, opacity], at + column * 4);
    }
  }
  return { input: data, raw: { width: across, height: down, channels: 4 }, left: from.x, top: from.y };
}

/** How many pixels a pixel lies outside of a span; 0 within it. */
const outside = (at: number, from: number, to: number): number =>
  at < from ? from - at : at >= to ? at - to + 1 : 0;

const clamp = (value: number, most: number): number => Math.min(Math.max(value, 0), most);
