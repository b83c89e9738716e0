import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { coverOf, type Rectangle } from '../../src/intake/cover.js';

const SIZE = { width: 200, height: 100 };

/** A white picture with its covers, one number a pixel: how much darker than white its red is. */
async function covered(...hide: Rectangle[]): Promise<(x: number, y: number) => number> {
  const white = sharp({ create: { ...SIZE, channels: 3, background: '#ffffff' } });
  const { data, info } = await white
    .composite(hide.map((each) => coverOf(each, SIZE)))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return (x, y) => 255 - (data[(y * info.width + x) * info.channels] ?? 0);
}

const FULL = 255 - 138;

describe('a cover', () => {
  it('is whole over every pixel of its rectangle, and fades outside of it', async () => {
    const at = await covered([0.25, 0.2, 0.25, 0.5]);
    for (const x of [50, 75, 99]) for (const y of [20, 45, 69]) expect(at(x, y)).toBe(FULL);
    expect(at(49, 45)).toBeGreaterThan(0);
    expect(at(49, 45)).toBeLessThan(FULL);
    expect(at(48, 45)).toBeLessThan(at(49, 45));
    expect(at(44, 45)).toBe(0);
    expect(at(104, 45)).toBe(0);
  });

  it('takes a pixel that it covers in part for one that it covers', async () => {
    const at = await covered([0.2525, 0.2, 0.0025, 0.01]);
    expect(at(50, 20)).toBe(FULL);
    expect(at(51, 20)).toBeLessThan(FULL);
  });

  it.each([
    ['the whole picture', [0, 0, 1, 1]],
    ['the left edge', [0, 0, 0.1, 1]],
    ['the right edge', [0.9, 0, 0.1, 1]],
    ['the lower right corner', [0.95, 0.9, 0.05, 0.1]],
  ] as const)('stays inside the picture: %s', async (_where, [left, top, width, height]) => {
    const at = await covered([left, top, width, height]);
    const last = {
      x: Math.ceil((left + width) * SIZE.width) - 1,
      y: Math.ceil((top + height) * SIZE.height) - 1,
    };
    expect(at(Math.floor(left * SIZE.width), Math.floor(top * SIZE.height))).toBe(FULL);
    expect(at(last.x, last.y)).toBe(FULL);
  });

  it('is not thinned by another that lies over its edge', async () => {
    const at = await covered([0, 0, 0.5, 1], [0.5, 0, 0.5, 1]);
    for (let x = 0; x < SIZE.width; x++) expect(at(x, 50)).toBe(FULL);
  });
});
