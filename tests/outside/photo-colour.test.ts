/**
 * Independent check: the colours of photos in wide spaces, as ImageMagick (with Little CMS and profiles worked out from
 * the published primaries) and colorjs.io convert them to sRGB.
 *
 * Spaces: CSS Color Module Level 4, 10.4 and 10.5 (sRGB, Display P3); Adobe RGB (1998) Color Image Encoding, 2005-05.
 * Distance: CIEDE2000 (CIE 142-2001) by colorjs.io. Outside of sRGB, both sides cut each channel off at 0 and 255, as
 * the relative colorimetric intent between two matrix profiles does (ICC.1:2010, 6.3 and F.3).
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Color from 'colorjs.io';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { developFile, meanColour, type Pixels, pixelsOf } from '../tools/develop-file.js';
import { heifEnc, lacking, run, tagsOf } from '../tools/outside-programs.js';
import { ADOBE_RGB, type ColourSpace, DISPLAY_P3, profileOf, SRGB } from '../tools/rgb-profile.js';

const { some: lacks, words: without } = lacking('convert', 'heif-enc', 'exiftool');

/** Within sRGB when read as Display P3: strong and weak ones, skin, wood, sky, greys. */
const INSIDE = [
  [128, 128, 128],
  [20, 20, 20],
  [250, 250, 250],
  [200, 80, 60],
  [110, 180, 100],
  [60, 70, 200],
  [190, 150, 120],
  [120, 80, 50],
  [110, 160, 210],
  [220, 200, 80],
  [150, 60, 130],
  [80, 150, 150],
  [230, 90, 80],
  [120, 200, 120],
  [70, 60, 190],
  [235, 215, 190],
] as const;
/** The edges of Display P3 itself, outside of sRGB. */
const OUTSIDE = [
  [255, 0, 0],
  [0, 255, 0],
  [0, 255, 255],
  [255, 255, 0],
  [255, 0, 255],
  [240, 40, 20],
  [20, 220, 60],
  [255, 140, 0],
] as const;
const PATCHES = [...INSIDE, ...OUTSIDE];
const [ACROSS, SIDE] = [6, 64];
/** CIEDE2000 by which a patch may be off. One just noticeable difference is about 1. */
const MOST = 2;

let folder: string;
let patches: string;
beforeAll(async () => {
  if (lacks) return;
  folder = mkdtempSync(path.join(tmpdir(), 'colour-'));
  patches = path.join(folder, 'patches.png');
  const [width, height] = [ACROSS * SIDE, (PATCHES.length / ACROSS) * SIDE];
  const data = Buffer.alloc(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const [column, row] = [Math.floor((i % width) / SIDE), Math.floor(i / width / SIDE)];
    data.set(PATCHES[row * ACROSS + column] ?? [], i * 3);
  }
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(patches);
  for (const space of [SRGB, DISPLAY_P3, ADOBE_RGB]) writeFileSync(profileFile(space), profileOf(space));
});
afterAll(() => {
  if (!lacks) rmSync(folder, { recursive: true });
});

const profileFile = ({ name }: ColourSpace): string => path.join(folder, `${name.replaceAll(' ', '-')}.icc`);

/** The same numbers, said to be of that space, in a format. Made once. */
function taggedAs(space: ColourSpace, format: string): string {
  const file = path.join(folder, `${space.name.replaceAll(' ', '-')}.${format}`);
  if (existsSync(file)) return file;
  if (format === 'png') run('convert', patches, '-profile', profileFile(space), `PNG24:${file}`);
  else if (format === 'heic') heifEnc(file, [taggedAs(space, 'png')], '-q', '98', '-p', 'chroma=444');
  else run('convert', taggedAs(space, 'png'), '-quality', '97', '-sampling-factor', '4:4:4', file);
  const [tags] = tagsOf([file]);
  expect(tags?.['ICC_Profile:ProfileDescription'], `${file} has the profile in it`).toBe(space.name);
  return file;
}

/**
 * The patches of a space in sRGB, by ImageMagick and the relative colorimetric intent. From the PNG, which loses
 * nothing; it stands for the HEIC as well, whose profile ImageMagick drops.
 */
async function convertedBySomebodyElse(space: ColourSpace): Promise<number[][]> {
  const out = path.join(folder, `${space.name.replaceAll(' ', '-')}-converted.png`);
  const to = ['-intent', 'Relative', '-profile', profileFile(SRGB), '+profile', '*', `PNG24:${out}`];
  run('convert', taggedAs(space, 'png'), ...to);
  return coloursOf(await pixelsOf(out));
}

const coloursOf = (pixels: Pixels): number[][] =>
  PATCHES.map((_, i) =>
    meanColour(pixels, (i % ACROSS) * SIDE + SIDE / 2, Math.floor(i / ACROSS) * SIDE + SIDE / 2, 10),
  );

const srgb = (levels: readonly number[]): Color =>
  new Color('srgb', levels.map((level) => level / 255) as [number, number, number]);
const distance = (one: readonly number[], other: readonly number[]): number =>
  srgb(one).deltaE(srgb(other), '2000');

const distances = (one: readonly number[][], other: readonly number[][]): number[] =>
  one.map((colour, i) => distance(colour, other[i] ?? [999, 999, 999]));

/** The pictures that pages show, largest size: JPEG and AVIF. */
async function shown(file: string, hide: readonly [number, number, number, number][] = []) {
  const { sizes } = await developFile(file, path.join(folder, 'cache'), { hide });
  const largest = sizes.at(-1);
  return {
    jpeg: coloursOf(await pixelsOf(largest?.jpeg.file ?? '')),
    avif: coloursOf(await pixelsOf(largest?.avif.file ?? '')),
  };
}

// Measured, the furthest of 24 patches: Display P3 as PNG and TIFF 0.65, as JPEG and HEIC 0.94; Adobe RGB as JPEG and
// HEIC 1.53; all of it from whole levels (one of 255 in a dark or strong colour) and the lossy codings between.
describe.skipIf(lacks)(`24 patches in a wide space${without}`, () => {
  it.each([
    ['Display P3', 'jpg', DISPLAY_P3],
    ['Display P3', 'png', DISPLAY_P3],
    ['Display P3', 'tif', DISPLAY_P3],
    ['Display P3', 'heic', DISPLAY_P3],
    ['Adobe RGB', 'jpg', ADOBE_RGB],
    ['Adobe RGB', 'heic', ADOBE_RGB],
  ])('come out as ImageMagick converts them: %s in %s', async (_, format, space) => {
    const reference = await convertedBySomebodyElse(space);
    const { jpeg, avif } = await shown(taggedAs(space, format));
    expect(Math.max(...distances(jpeg, reference))).toBeLessThan(MOST);
    expect(Math.max(...distances(avif, reference))).toBeLessThan(MOST);
  });

  it('come out the same where a part is covered, a way of its own through the program', async () => {
    const reference = await convertedBySomebodyElse(DISPLAY_P3);
    for (const format of ['jpg', 'heic']) {
      const { jpeg } = await shown(taggedAs(DISPLAY_P3, format), [[0, 0, 0.01, 0.01]]);
      expect(Math.max(...distances(jpeg, reference)), format).toBeLessThan(MOST);
    }
  });

  it('within sRGB come out as colorjs.io converts them', async () => {
    const expected = INSIDE.map((levels) => {
      const inSrgb = new Color('p3', levels.map((level) => level / 255) as [number, number, number]).to(
        'srgb',
      );
      expect(inSrgb.inGamut(), String(levels)).toBe(true);
      return inSrgb.coords.map((each) => (each ?? 0) * 255);
    });
    for (const levels of OUTSIDE)
      expect(
        new Color('p3', levels.map((level) => level / 255) as [number, number, number]).to('srgb').inGamut(),
        String(levels),
      ).toBe(false);
    for (const format of ['jpg', 'png', 'heic']) {
      const { jpeg } = await shown(taggedAs(DISPLAY_P3, format));
      expect(Math.max(...distances(jpeg.slice(0, INSIDE.length), expected)), format).toBeLessThan(MOST);
    }
  });

  it.each(['heic', 'avif'] as const)(
    'of %s that says so by code points alone come out the same (ITU-T H.273: primaries 12)',
    async (format) => {
      const tagged = path.join(folder, `tagged.${format}`);
      const png = taggedAs(DISPLAY_P3, 'png');
      if (format === 'heic') heifEnc(tagged, [png], '-q', '98', '-p', 'chroma=444');
      else await sharp(png).keepIccProfile().avif({ quality: 95, chromaSubsampling: '4:4:4' }).toFile(tagged);
      // Both leave this box out, so their profile's is written over: what follows the seven bytes is passed over.
      const bytes = readFileSync(tagged);
      const at = bytes.indexOf(format === 'heic' ? 'colrprof' : 'colrrICC');
      bytes.write('colrnclx', at, 'latin1');
      bytes.set([0, 12, 0, 13, 0, 6, 0x80], at + 8);
      const file = path.join(folder, `code-points.${format}`);
      writeFileSync(file, bytes);
      expect(tagsOf([file])[0], 'no profile').not.toHaveProperty(['ICC_Profile:ProfileDescription']);
      const reference = await convertedBySomebodyElse(DISPLAY_P3);
      const { jpeg } = await shown(file);
      expect(Math.max(...distances(jpeg, reference))).toBeLessThan(MOST);
    },
  );

  it('without a profile are sRGB already', async () => {
    const heic = path.join(folder, 'untagged.heic');
    heifEnc(heic, [patches], '-q', '98', '-p', 'chroma=444');
    for (const file of [patches, heic]) {
      const { jpeg, avif } = await shown(file);
      for (const colours of [jpeg, avif])
        expect(
          Math.max(
            ...distances(
              colours,
              PATCHES.map((each) => [...each]),
            ),
          ),
          file,
        ).toBeLessThan(MOST);
    }
  });

  it('read as if they were sRGB are further off: the check can fail', async () => {
    const reference = await convertedBySomebodyElse(DISPLAY_P3);
    const off = distances(
      PATCHES.map((each) => [...each]),
      reference,
    );
    expect(off.filter((each) => each > MOST).length).toBeGreaterThan(PATCHES.length / 2);
  });
});
