import jsqr from 'jsqr';
import { describe, expect, it } from 'vitest';
import { LONGEST_ADDRESS } from '../../src/facts/web-address.js';
import { drawQr, LEAST_MODULE_PT } from '../../src/packet/draw-qr.js';
import type { Drawing } from '../../src/packet/packet.js';

const longest = `https://quarry-road.example/${'packet-'.repeat(20)}`.slice(0, LONGEST_ADDRESS);
const ADDRESSES = ['https://a.example', 'https://quarry-road.example/packet/', longest];

interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function rectsOf(drawing: Drawing): Rect[] {
  return drawing.shapes.map((shape) => {
    if (shape.kind !== 'path') throw new Error(`a ${shape.kind} in a code`);
    const [xs, ys] = [shape.points.map(([x]) => x), shape.points.map(([, y]) => y)];
    return {
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys),
      bottom: Math.max(...ys),
    };
  });
}

/** Side of a module: the finder's ring in the corner is seven wide. */
const sideOf = (drawing: Drawing): number => {
  const rects = rectsOf(drawing);
  const first = rects.reduce((best, one) => (one.top < best.top - 0.01 ? one : best));
  return (first.right - first.left) / 7;
};

/** The drawing as a reader's picture: four pixels a module, each asked at its middle. */
function pixelsOf(drawing: Drawing): { data: Uint8ClampedArray; width: number } {
  const step = sideOf(drawing) / 4;
  const width = Math.round(drawing.width / step);
  const rects = rectsOf(drawing);
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (let row = 0; row < width; row++)
    for (let column = 0; column < width; column++) {
      const [x, y] = [(column + 0.5) * step, (row + 0.5) * step];
      const dark = rects.some((one) => x > one.left && x < one.right && y > one.top && y < one.bottom);
      if (dark) data.fill(0, (row * width + column) * 4, (row * width + column) * 4 + 3);
    }
  return { data, width };
}

describe.each(ADDRESSES)('the code for %s', (address) => {
  const drawing = drawQr(address);

  it('is read back by jsQR as it was written', () => {
    const { data, width } = pixelsOf(drawing);
    expect(jsqr.default(data, width, width)?.data).toBe(address);
  });

  it('has modules of a millimetre at least, and four of them white all around', () => {
    const side = sideOf(drawing);
    expect(side).toBeGreaterThanOrEqual(LEAST_MODULE_PT);
    const rects = rectsOf(drawing);
    const white = [
      Math.min(...rects.map((one) => one.left)),
      Math.min(...rects.map((one) => one.top)),
      drawing.width - Math.max(...rects.map((one) => one.right)),
      drawing.height - Math.max(...rects.map((one) => one.bottom)),
    ];
    for (const margin of white) expect(margin).toBeCloseTo(side * 4, 0);
  });

  it('covers every seam between two dark modules by a shape that lies over it', () => {
    const rects = rectsOf(drawing);
    const inside = (x: number, y: number): boolean =>
      rects.some(
        (one) => x > one.left + 0.01 && x < one.right - 0.01 && y > one.top + 0.01 && y < one.bottom - 0.01,
      );
    const side = sideOf(drawing);
    const count = Math.round(drawing.width / side);
    let seams = 0;
    for (let row = 4; row < count - 4; row++)
      for (let column = 4; column < count - 4; column++) {
        const [x, y] = [(column + 0.5) * side, (row + 0.5) * side];
        if (!inside(x, y)) continue;
        for (const [nx, ny] of [
          [x + side, y],
          [x, y + side],
        ] as const)
          if (inside(nx, ny)) {
            seams += 1;
            expect(inside((x + nx) / 2, (y + ny) / 2)).toBe(true);
          }
      }
    expect(seams).toBeGreaterThan(100);
  });

  it('is the same every time', () => expect(drawQr(address)).toEqual(drawing));
});
