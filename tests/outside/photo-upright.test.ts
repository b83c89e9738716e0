/**
 * Independent check: photos stored in all eight orientations come out upright in every format, as ImageMagick's
 * `-auto-orient` and libheif's `heif-convert` turn them.
 *
 * Orientations: Exif 2.32 (CIPA DC-008), 4.6.4 A; in HEIC and AVIF the container's `irot` and `imir` (ISO/IEC
 * 23008-12, 6.5.10 and 6.5.12).
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DevelopedPhoto } from '../../src/intake/develop-photos.js';
import { developFiles, meanColour, type Pixels, pixelsOf } from '../tools/develop-file.js';
import { heifEnc, lacking, run, turnHeic } from '../tools/outside-programs.js';

const { some: lacks, words: without } = lacking('convert', 'heif-enc', 'heif-convert');

const [WIDTH, HEIGHT] = [96, 64];
/** From the top left, in the order of reading; no two alike. */
const CORNERS = [
  [200, 40, 40],
  [40, 170, 60],
  [50, 70, 210],
  [220, 200, 60],
] as const;
const ORIENTATIONS = [1, 2, 3, 4, 5, 6, 7, 8];
const FORMATS = ['jpeg', 'png', 'webp', 'tiff', 'avif'] as const;
/** Quarter turns anticlockwise in the container, for the orientation that says the same. */
const QUARTERS = { 1: 0, 8: 1, 3: 2, 6: 3 } as const;
/** Levels of 255 by which the mean colour of a corner may be off: two lossy codings lie between. */
const NEAR = 6;

let folder: string;
let pictures: ReadonlyMap<string, DevelopedPhoto>;

beforeAll(async () => {
  if (lacks) return;
  folder = mkdtempSync(path.join(tmpdir(), 'upright-'));
  const data = Buffer.alloc(WIDTH * HEIGHT * 3);
  for (let i = 0; i < WIDTH * HEIGHT; i++) {
    const corner = (i % WIDTH < WIDTH / 2 ? 0 : 1) + (i < (WIDTH * HEIGHT) / 2 ? 0 : 2);
    data.set(CORNERS[corner] ?? [], i * 3);
  }
  const stored = sharp(data, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } });
  const files: string[] = [];
  for (const orientation of ORIENTATIONS)
    for (const format of FORMATS) {
      const file = path.join(folder, `${orientation}.${format}`);
      const lossy = format === 'jpeg' ? { quality: 95, chromaSubsampling: '4:4:4' } : { effort: 1 };
      await stored.clone().withMetadata({ orientation }).toFormat(format, lossy).toFile(file);
      files.push(file);
    }
  const png = path.join(folder, 'stored.png');
  await stored.clone().png().toFile(png);
  const still = path.join(folder, '1.heic');
  heifEnc(still, [png]);
  files.push(still);
  for (const [orientation, quarters] of Object.entries(QUARTERS)) {
    if (quarters === 0) continue;
    const file = path.join(folder, `${orientation}.heic`);
    turnHeic(still, file, quarters);
    files.push(file);
  }
  const { pictures: made, failed } = await developFiles(files, path.join(folder, 'cache'));
  expect([...failed]).toEqual([]);
  pictures = made;
});
afterAll(() => {
  if (!lacks) rmSync(folder, { recursive: true });
});

interface Corners {
  readonly width: number;
  readonly height: number;
  readonly colours: readonly (readonly number[])[];
}

function cornersOf(pixels: Pixels): Corners {
  const { width, height } = pixels;
  const [left, right] = [Math.floor(width / 4), Math.floor((width * 3) / 4)];
  const [top, bottom] = [Math.floor(height / 4), Math.floor((height * 3) / 4)];
  const colours = [
    [left, top],
    [right, top],
    [left, bottom],
    [right, bottom],
  ].map(([x = 0, y = 0]) => meanColour(pixels, x, y, 6));
  return { width, height, colours };
}

const bySomebodyElse = async (program: 'convert' | 'heif-convert', file: string): Promise<Corners> => {
  const out = `${file}.upright.png`;
  if (program === 'convert') run('convert', file, '-auto-orient', out);
  else run('heif-convert', file, out);
  return cornersOf(await pixelsOf(out));
};

async function expectAlike(name: string, reference: Corners): Promise<void> {
  const picture = pictures.get(name);
  const { width, height } = reference;
  expect(picture, name).toMatchObject({ width, height });
  const files = [...(picture?.sizes ?? []).flatMap(({ jpeg, avif }) => [jpeg.file, avif.file])];
  expect(files, name).toHaveLength(2);
  for (const file of files) {
    const made = cornersOf(await pixelsOf(file));
    expect({ width: made.width, height: made.height }, file).toEqual({ width, height });
    for (const [i, colour] of made.colours.entries())
      for (const [channel, level] of colour.entries())
        expect(
          Math.abs(level - (reference.colours[i]?.[channel] ?? 999)),
          `${name}, corner ${i}: ${colour} where ${reference.colours[i]} is right`,
        ).toBeLessThanOrEqual(NEAR);
  }
}

describe.skipIf(lacks)(`a photo stored in any orientation${without}`, () => {
  it.each(ORIENTATIONS)('comes out as ImageMagick turns it: orientation %i', async (orientation) => {
    // Of the JPEG: ImageMagick 6.9 passes over the tag in a PNG, and turns a TIFF otherwise than the JPEG of its pixels.
    const reference = await bySomebodyElse('convert', path.join(folder, `${orientation}.jpeg`));
    for (const format of FORMATS) await expectAlike(`${orientation}.${format}`, reference);
  });

  it.each(ORIENTATIONS)('in AVIF comes out as libheif turns it: orientation %i', async (orientation) => {
    const avif = path.join(folder, `${orientation}.avif`);
    await expectAlike(`${orientation}.avif`, await bySomebodyElse('heif-convert', avif));
  });

  it.each(Object.keys(QUARTERS))('in HEIC comes out as libheif turns it: as orientation %s', async (same) => {
    const reference = await bySomebodyElse('heif-convert', path.join(folder, `${same}.heic`));
    const magick = await bySomebodyElse('convert', path.join(folder, `${same}.jpeg`));
    // Both others agree, so the turning that was written into the container is the one meant.
    for (const [i, colour] of reference.colours.entries())
      for (const [channel, level] of colour.entries())
        expect(Math.abs(level - (magick.colours[i]?.[channel] ?? 999))).toBeLessThanOrEqual(NEAR);
    await expectAlike(`${same}.heic`, reference);
  });

  it('lies in eight ways, told apart by its corners: the check can fail', async () => {
    const ways = new Set<string>();
    for (const orientation of ORIENTATIONS) {
      const { colours } = await bySomebodyElse('convert', path.join(folder, `${orientation}.jpeg`));
      ways.add(JSON.stringify(colours.map((colour) => colour.map(Math.round))));
    }
    expect(ways.size).toBe(8);
  });
});
