/**
 * What is hidden is gone, proved by pixels: no block of a hidden part correlates with the original, in any size and
 * format, whatever the original's format and however it lies; nor in the stand-in of a few pixels, nor in the pictures
 * that pdfimages takes out of a PDF.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import type { Rectangle } from '../../src/intake/cover.js';
import type { DevelopedPhoto } from '../../src/intake/develop-photos.js';
import { filesBelow } from '../tools/built-houses.js';
import { developFiles, type Pixels, pixelsOf } from '../tools/develop-file.js';
import { blockLikenesses, furthestFrom, likeness, regionOf } from '../tools/likeness.js';
import { heifEnc, lacking, run, turnHeic } from '../tools/outside-programs.js';
import { buildPhotoHouse } from '../tools/photo-house.js';
import { seeded } from './seeded-outlines.js';

const noEncoder = lacking('heif-enc', 'convert');
const noTaker = lacking('pdfimages');

const [WIDTH, HEIGHT] = [1000, 750];
/** At two corners, at an edge, in the middle, and two that overlap. */
const HIDE: readonly Rectangle[] = [
  [0, 0, 0.2, 0.22],
  [0.85, 0.4, 0.15, 0.3],
  [0.7, 0.85, 0.3, 0.15],
  [0.35, 0.3, 0.25, 0.25],
  [0.5, 0.45, 0.2, 0.25],
];
/** Never hidden: shows that the picture is the one looked for. */
const SHOWN: Rectangle = [0.05, 0.6, 0.25, 0.3];
/** Fill of a cover, by what the program promises: a quiet grey. */
const COVER = [138, 146, 150];

/** Letters and figures of a number plate, 3 by 5. */
const GLYPHS = [0b111_101_101_101_111, 0b010_110_010_010_111, 0b111_001_111_100_111, 0b110_101_110_101_110];

/** Upright: a room of slow waves, written over with a code of squares, text and grain. */
function scene(seed: number): Pixels {
  const next = seeded(seed);
  const [cell, across] = [9, Math.ceil(WIDTH / 9)];
  const squares = Array.from({ length: across * across }, () => next() < 0.5);
  const data = Buffer.alloc(WIDTH * HEIGHT * 3);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const square = squares[Math.floor(y / cell) * across + Math.floor(x / cell)] === true ? 55 : -55;
      const glyph = GLYPHS[(Math.floor(x / 32) + Math.floor(y / 48)) % GLYPHS.length] ?? 0;
      const [gx, gy] = [Math.floor((x % 32) / 8), Math.floor((y % 48) / 8)];
      const ink = gx < 3 && gy < 5 && ((glyph >> (14 - gy * 3 - gx)) & 1) === 1 ? -45 : 0;
      for (let channel = 0; channel < 3; channel++) {
        const wave = 25 * Math.sin(x / 90 + channel + seed) + 15 * Math.cos(y / 70 - channel);
        const level = 128 + wave + square + ink + 40 * (next() - 0.5);
        data[(y * WIDTH + x) * 3 + channel] = Math.min(255, Math.max(0, Math.round(level)));
      }
    }
  return { data, width: WIDTH, height: HEIGHT, channels: 3 };
}

const ORIENTATIONS = [1, 6, 8] as const;
type Orientation = (typeof ORIENTATIONS)[number];
/** Degrees clockwise by which the upright picture is turned to be stored so, and quarters by which a container turns it back. */
const STORED = { 1: 0, 6: 270, 8: 90 } as const;
const QUARTERS = { 1: 0, 6: 3, 8: 1 } as const;

const FORMATS = ['jpeg', 'png', 'heic', 'deep', 'cmyk', 'grey'] as const;
type Format = (typeof FORMATS)[number];
const ENDINGS: Readonly<Record<Format, string>> = {
  jpeg: 'jpg',
  png: 'png',
  heic: 'heic',
  deep: 'png',
  cmyk: 'jpg',
  grey: 'jpg',
};

const opened = ({ data, width, height }: Pixels): Sharp =>
  sharp(data, { raw: { width, height, channels: 3 } });

/** Writes an original as a camera would that was held that way. */
async function store(upright: Pixels, format: Format, orientation: Orientation, file: string): Promise<void> {
  const lying = sharp(
    await opened(upright).rotate(STORED[orientation]).png({ compressionLevel: 1 }).toBuffer(),
  );
  const marked = lying.clone().withMetadata({ orientation });
  if (format === 'jpeg') await marked.jpeg({ quality: 92 }).toFile(file);
  else if (format === 'png') await marked.png({ compressionLevel: 1 }).toFile(file);
  else if (format === 'grey') await marked.greyscale().jpeg({ quality: 92 }).toFile(file);
  else if (format === 'deep') await marked.toColourspace('rgb16').png({ compressionLevel: 1 }).toFile(file);
  else if (format === 'cmyk') {
    const rgb = `${file}.rgb.jpg`;
    await marked.jpeg({ quality: 95 }).toFile(rgb);
    run('convert', rgb, '-colorspace', 'CMYK', '-quality', '92', file);
  } else {
    const still = `${file}.png`;
    await lying.clone().png({ compressionLevel: 1 }).toFile(still);
    heifEnc(file, [still]);
    if (QUARTERS[orientation] > 0) turnHeic(file, file, QUARTERS[orientation]);
  }
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'hidden-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const scaled = new Map<string, Promise<Pixels>>();
/** The upright original at another size, by sharp's own resizing. */
function original(
  upright: Pixels,
  name: string,
  { width, height }: { width: number; height: number },
): Promise<Pixels> {
  const key = `${name} ${width} ${height}`;
  const made =
    scaled.get(key) ?? opened(upright).resize(width, height, { fit: 'fill' }).png().toBuffer().then(pixelsOf);
  scaled.set(key, made);
  return made;
}

interface Left {
  /** Most levels by which any block of a hidden part varies with the original. */
  readonly most: number;
  /** Mean of all blocks' r. By chance, a block of 64 pixels may have any; a trace of the original lifts them all. */
  readonly mean: number;
  /** Largest |r| of a whole hidden part. */
  readonly whole: number;
  /** Largest distance from the cover's colour, in levels; and the same 16 pixels inside, where no coding reaches. */
  readonly off: number;
  readonly deep: number;
  /** r of the part that is shown. */
  readonly shown: number;
}

/** What is left of the hidden parts of an original in a picture made of it. */
async function leftIn(file: string | Buffer, upright: Pixels, name: string, inset = 3): Promise<Left> {
  const made = await pixelsOf(file);
  const reference = await original(upright, name, made);
  const regions = HIDE.map((rectangle) => regionOf(rectangle, made, inset));
  const blocks = regions.flatMap((region) => blockLikenesses(made, reference, region));
  return {
    most: Math.max(...blocks.map(({ carried }) => Math.abs(carried))),
    mean: blocks.reduce((sum, { r }) => sum + r, 0) / blocks.length,
    whole: Math.max(...regions.map((region) => Math.abs(likeness(made, reference, region).r))),
    off: Math.max(...regions.map((region) => furthestFrom(COVER, made, region))),
    deep: Math.max(...HIDE.map((each) => furthestFrom(COVER, made, regionOf(each, made, 16)))),
    shown: likeness(made, reference, regionOf(SHOWN, made, inset)).r,
  };
}

// Measured over 108 pictures: most 1.7 (73 where nothing is hidden), mean 0.013 (0.93), whole 0.09 (0.98); beside the edge
// of a cover, AVIF's filters reach 33 levels and 16 pixels in, JPEG's 12 levels and 3 pixels.
function expectGone(file: string, left: Left): void {
  const words = `${path.basename(file)}: ${JSON.stringify(left)}`;
  expect(left.shown, words).toBeGreaterThan(0.9);
  expect(left.most, words).toBeLessThan(3);
  expect(Math.abs(left.mean), words).toBeLessThan(0.05);
  expect(left.whole, words).toBeLessThan(0.15);
  expect(left.off, words).toBeLessThan(48);
  expect(left.deep, words).toBeLessThanOrEqual(file.endsWith('.avif') ? 8 : 2);
}

function expectThere(file: string, left: Left): void {
  const words = `${path.basename(file)}: ${JSON.stringify(left)}`;
  expect(left.shown, words).toBeGreaterThan(0.9);
  expect(left.most, words).toBeGreaterThan(30);
  expect(left.mean, words).toBeGreaterThan(0.85);
  expect(left.whole, words).toBeGreaterThan(0.9);
}

const UPRIGHT = scene(41);

describe.skipIf(noEncoder.some)(`a hidden part${noEncoder.words}`, () => {
  let hidden: ReadonlyMap<string, DevelopedPhoto>;
  let bare: ReadonlyMap<string, DevelopedPhoto>;
  const nameOf = (format: Format, orientation: Orientation): string =>
    `${format}-${orientation}.${ENDINGS[format]}`;

  beforeAll(async () => {
    const files: string[] = [];
    for (const format of FORMATS)
      for (const orientation of ORIENTATIONS) {
        const file = path.join(folder, nameOf(format, orientation));
        await store(UPRIGHT, format, orientation, file);
        files.push(file);
      }
    hidden = (await developFiles(files, path.join(folder, 'cache'), { hide: HIDE })).pictures;
    const some = FORMATS.map((format) => path.join(folder, nameOf(format, 6)));
    bare = (await developFiles(some, path.join(folder, 'cache-bare'))).pictures;
  });

  const filesOf = (picture: DevelopedPhoto | undefined): string[] =>
    [...(picture?.sizes ?? [])].flatMap(({ jpeg, avif }) => [jpeg.file, avif.file]);

  it.each(FORMATS.flatMap((format) => ORIENTATIONS.map((orientation) => [format, orientation] as const)))(
    'is gone from every size and format: %s, orientation %i',
    async (format, orientation) => {
      const files = filesOf(hidden.get(nameOf(format, orientation)));
      expect(files).toHaveLength(6);
      for (const file of files) expectGone(file, await leftIn(file, UPRIGHT, 'scene'));
    },
  );

  it.each(FORMATS)(
    'is there where nothing is hidden, by the same measure: the check can fail: %s',
    async (format) => {
      const files = filesOf(bare.get(nameOf(format, 6)));
      expect(files).toHaveLength(6);
      for (const file of files) expectThere(file, await leftIn(file, UPRIGHT, 'scene'));
    },
  );

  // Whatever lies under the covers, the same bytes come out: so nothing of it can be in them, in any form.
  it.each(['png', 'deep'] as const)(
    'changes nothing of what comes out, stand-in included: %s',
    async (format) => {
      const other = scene(97);
      const changed: Pixels = { ...UPRIGHT, data: Buffer.from(UPRIGHT.data) };
      for (const rectangle of HIDE) {
        const [left, top, right, bottom] = regionOf(rectangle, UPRIGHT, 0);
        for (let y = top; y < bottom; y++)
          other.data.copy(
            changed.data,
            (y * WIDTH + left) * 3,
            (y * WIDTH + left) * 3,
            (y * WIDTH + right) * 3,
          );
      }
      const file = path.join(folder, `changed-${format}.png`);
      await store(changed, format, 6, file);
      const { pictures } = await developFiles([file], path.join(folder, 'cache'), { hide: HIDE });
      const made = pictures.get(path.basename(file));
      const before = hidden.get(nameOf(format, 6));
      const contents = (picture: DevelopedPhoto | undefined): unknown => [
        filesOf(picture).map((each) => readFileSync(each).toString('base64')),
        picture?.tiny,
      ];
      expect(made?.tiny).toMatch(/^data:image\/png;base64,/u);
      expect(contents(made)).toEqual(contents(before));
      const uncovered = (await developFiles([file], path.join(folder, 'cache-bare'))).pictures;
      expect(contents(uncovered.get(path.basename(file)))).not.toEqual(contents(bare.get(nameOf(format, 6))));
    },
  );
});

/** A scene that is hidden in part in every photo of it, and one that never is. */
const SCENES = { covered: UPRIGHT, open: scene(7) } as const;

describe.skipIf(noEncoder.some || noTaker.some)(
  `a house with hidden parts${noEncoder.words}${noTaker.words}`,
  () => {
    let out: string;
    beforeAll(async () => {
      const photo = { shows: 'kitchen', where: 'kitchen', alt: 'A kitchen.', when: 'after' } as const;
      const hide = HIDE.map(([left, top, width, height]): [number, number, number, number] => [
        left,
        top,
        width,
        height,
      ]);
      const photos = {
        first: { ...photo, hide, when: 'before' as const },
        second: { ...photo, hide },
        third: { ...photo, hide },
        fourth: photo,
      };
      const built = await buildPhotoHouse(path.join(folder, 'house'), photos, async (to) => {
        await store(SCENES.covered, 'jpeg', 6, path.join(to, 'first.jpg'));
        await store(SCENES.covered, 'heic', 8, path.join(to, 'second.heic'));
        rmSync(path.join(to, 'second.heic.png'));
        await store(SCENES.covered, 'deep', 1, path.join(to, 'third.png'));
        await store(SCENES.open, 'jpeg', 6, path.join(to, 'fourth.jpg'));
      });
      out = built.out;
    });

    /** How many photos of each an edition has a place for: a pair for the agent, none of a kitchen at the sign or among the yearly chores. */
    const LEAST = {
      agent: { covered: 2, open: 0 },
      visit: { covered: 0, open: 0 },
      buyer: { covered: 3, open: 1 },
      care: { covered: 0, open: 0 },
      file: { covered: 3, open: 1 },
    } as const;
    const count = (seen: readonly string[], which: keyof typeof SCENES): number =>
      seen.filter((one) => one === which).length;

    /** Which of the two scenes a picture is of, by its part that is never hidden, and that the hidden one is. */
    async function expectHidden(file: string): Promise<keyof typeof SCENES> {
      const covered = await leftIn(file, SCENES.covered, 'scene');
      const open = await leftIn(file, SCENES.open, 'open');
      if (covered.shown > open.shown) expectGone(file, covered);
      else expectThere(file, open);
      return covered.shown > open.shown ? 'covered' : 'open';
    }

    it.each(EDITION_NAMES)('shows none of them in the pages of the edition %s', async (edition) => {
      const folderOf = path.join(out, edition);
      const pictures = filesBelow(folderOf).filter(
        (name) => /\.(jpg|avif)$/u.test(name) && !name.startsWith('originals/'),
      );
      const seen = [];
      for (const name of pictures) seen.push(await expectHidden(path.join(folderOf, name)));
      // Each as JPEG and AVIF.
      expect(count(seen, 'covered')).toBeGreaterThanOrEqual(LEAST[edition].covered * 2);
      expect(count(seen, 'open')).toBeGreaterThanOrEqual(LEAST[edition].open * 2);
    });

    it.each(EDITION_NAMES)('shows none of them in the PDF of the edition %s', async (edition) => {
      const folderOf = path.join(out, edition);
      const pdf = filesBelow(folderOf).find((name) => name.endsWith('.pdf')) ?? '';
      const taken = mkdtempSync(path.join(folder, 'taken-'));
      run('pdfimages', '-all', path.join(folderOf, pdf), path.join(taken, 'p'));
      const seen = [];
      for (const name of readdirSync(taken)) seen.push(await expectHidden(path.join(taken, name)));
      expect(count(seen, 'covered')).toBeGreaterThanOrEqual(LEAST[edition].covered);
      expect(count(seen, 'open')).toBeGreaterThanOrEqual(LEAST[edition].open);
    });
  },
);
