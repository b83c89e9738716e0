/** A web address as a code to scan (QR, ISO/IEC 18004), drawn as vectors. */
import qrcode from 'qrcode';
import { tidy, tidyUp } from './draw-tidy.js';
import type { Drawing, Shape, XY } from './packet.js';

/** White border, in modules: what the standard asks for. */
const QUIET = 4;

/** A module's least side, in points: one millimetre, so that a phone reads it from a table. Common practice, no source. */
export const LEAST_MODULE_PT = 72 / 25.4;

/** The side to be filled where modules may be larger than the least, in points: some 42 mm. */
const USUAL_PT = 118;

/** Modules a side up to which the stronger correction is taken: with its border such a code is not larger than usual. */
const MOST_FOR_STRONG = 33;

/** Draws the code with its white border. Errors of the library are passed on: a text too long for any code. */
export function drawQr(text: string): Drawing {
  const { size, data } = modulesOf(text);
  const whole = size + QUIET * 2;
  const side = Math.max(tidyUp(LEAST_MODULE_PT), tidy(USUAL_PT / whole));
  const dark = (row: number, column: number): boolean =>
    row < size && column < size && data[row * size + column] === 1;
  const at = (modules: number): number => tidy((modules + QUIET) * side);
  const box = (left: number, top: number, right: number, bottom: number): Shape => {
    const [x1, y1, x2, y2] = [at(left), at(top), at(right), at(bottom)];
    const points: XY[] = [
      [x1, y1],
      [x2, y1],
      [x2, y2],
      [x1, y2],
    ];
    return { kind: 'path', points, closed: true, fill: 'ink' };
  };
  const shapes: Shape[] = [];
  // Runs along the rows, and again along the columns: each covers the seams between the others, where a screen or a
  // printer would let a hairline of paper through.
  for (let line = 0; line < size; line++) {
    for (const [from, to] of runs(size, (n) => dark(line, n))) shapes.push(box(from, line, to, line + 1));
    for (const [from, to] of runs(size, (n) => dark(n, line)))
      if (to - from > 1) shapes.push(box(line, from, line + 1, to));
  }
  return { width: tidy(whole * side), height: tidy(whole * side), shapes };
}

/** The stronger of two corrections, where the code gets no larger by it than it is usually printed. */
function modulesOf(text: string): { readonly size: number; readonly data: Uint8Array } {
  const strong = qrcode.create(text, { errorCorrectionLevel: 'Q' }).modules;
  return strong.size <= MOST_FOR_STRONG ? strong : qrcode.create(text, { errorCorrectionLevel: 'M' }).modules;
}

/** Stretches of a line that are dark: from, and up to. */
function runs(size: number, dark: (n: number) => boolean): (readonly [from: number, to: number])[] {
  const found: (readonly [number, number])[] = [];
  let from = 0;
  for (let n = 0; n <= size; n++) {
    if (n < size && dark(n)) continue;
    if (n > from) found.push([from, n]);
    from = n + 1;
  }
  return found;
}
