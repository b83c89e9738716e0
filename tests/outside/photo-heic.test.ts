/**
 * Independent check: HEIC pictures are decoded as Debian's heif-convert (libheif with libde265) decodes them, pixel by
 * pixel and before anything is shrunk: odd sizes, full and halved colour, 10 bits, transparency, tiles, several
 * pictures in one file. The files are made by heif-enc (libheif with x265).
 */
import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HeicDecoder, type HeicPixels } from '../../src/intake/decode-heic.js';
import { developPhotos, type PhotoOrder } from '../../src/intake/develop-photos.js';
import { lookAtPhoto } from '../../src/intake/look-at-photo.js';
import { developFile, meanColour, pixelsOf } from '../tools/develop-file.js';
import { heifEnc, lacking, run, turnHeic } from '../tools/outside-programs.js';
import { greyProfile } from '../tools/rgb-profile.js';
import { seeded } from './seeded-outlines.js';

const { some: lacks, words: without } = lacking('heif-enc', 'heif-convert', 'heif-info', 'convert');

let folder: string;
const decoder = new HeicDecoder(1);
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'heic-'));
});
afterAll(async () => {
  await decoder.close();
  rmSync(folder, { recursive: true });
});

/** Slow waves with edges and grain, so that every part of a codec is used. 16 bits a channel where `deep`. */
async function scene(
  width: number,
  height: number,
  { deep = false, alpha = false, seed = 5 } = {},
): Promise<string> {
  const next = seeded(seed);
  const channels = alpha ? 4 : 3;
  const data = new Uint16Array(width * height * channels);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    const edge = (Math.floor(x / 37) + Math.floor(y / 23) + seed) % 3 === 0 ? 60 : 0;
    for (let channel = 0; channel < 3; channel++) {
      const wave = Math.sin(x / (19 + 7 * channel) + channel) + Math.cos(y / (31 - 5 * channel));
      const level = Math.min(255, Math.max(0, 100 + 40 * wave + edge + 12 * next()));
      data[i * channels + channel] = Math.round(level * (deep ? 257 : 1));
    }
    if (alpha) data[i * channels + 3] = Math.floor((255 * x) / width);
  }
  const file = path.join(folder, `scene-${width}-${height}-${deep}-${alpha}-${seed}.png`);
  const pixels = deep ? data : Uint8Array.from(data);
  await sharp(pixels, { raw: { width, height, channels } })
    .toColourspace(deep ? 'rgb16' : 'srgb')
    .png()
    .toFile(file);
  return file;
}

interface Difference {
  readonly most: number;
  readonly mean: number;
}

/** Levels of 255 between our decoder's red, green, blue and alpha and heif-convert's. */
async function differenceOn(heic: string): Promise<Difference> {
  run('heif-convert', heic, `${heic}.png`);
  return difference(await decoder.decode(readFileSync(heic)), await rgbaOf(`${heic}.png`));
}

/** Eight bits a channel, transparency included. */
async function rgbaOf(file: string): Promise<HeicPixels> {
  const { data, info } = await sharp(file)
    .toColourspace('srgb')
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

function difference(ours: HeicPixels, theirs: HeicPixels): Difference {
  expect([ours.width, ours.height]).toEqual([theirs.width, theirs.height]);
  let [most, sum] = [0, 0];
  for (const [i, level] of ours.data.entries()) {
    const off = Math.abs(level - (theirs.data[i] ?? 999));
    most = Math.max(most, off);
    sum += off;
  }
  return { most, mean: sum / ours.data.length };
}

type Case = readonly [
  name: string,
  size: readonly [number, number],
  kind: object,
  most: number,
  options: readonly string[],
];

/** `most`: levels of 255 that any channel of any pixel may be off. Measured: 1 where 2 stands, 3 where 4, else 0. */
const CASES: readonly Case[] = [
  ['colour at half the width and height (4:2:0)', [320, 240], {}, 2, ['-p', 'chroma=420']],
  ['colour at half the width (4:2:2)', [320, 240], {}, 0, ['-p', 'chroma=422']],
  ['colour in full (4:4:4)', [320, 240], {}, 0, ['-p', 'chroma=444']],
  ['an odd size', [641, 479], {}, 2, ['-p', 'chroma=420']],
  ['an odd size with colour in full', [321, 239], {}, 0, ['-p', 'chroma=444']],
  ['10 bits', [322, 242], { deep: true }, 4, ['-b', '10', '-p', 'chroma=420']],
  ['10 bits with colour in full', [161, 121], { deep: true }, 0, ['-b', '10', '-p', 'chroma=444']],
  ['12 bits', [162, 122], { deep: true }, 4, ['-b', '12', '-p', 'chroma=420']],
  ['transparency', [160, 120], { alpha: true }, 0, ['-p', 'chroma=444']],
  ['fewer than 64 pixels, so a tile cut off (grid)', [33, 17], {}, 2, []],
  ['no loss', [160, 120], {}, 0, ['-L', '-p', 'chroma=444', '--matrix_coefficients=0']],
];

/** Makes the second picture of a file the main one (`pitm`, ISO/IEC 14496-12, 8.11.4), as a phone does after a burst. */
function chooseSecond(file: string): void {
  const ids = [
    ...run('heif-info', file)
      .toString()
      .matchAll(/^image: .*\(id=(\d+)\)/gmu),
  ].map(([, id]) => Number(id));
  const bytes = readFileSync(file);
  const at = bytes.indexOf('pitm') + 8;
  expect([ids.length, bytes.readUInt16BE(at)]).toEqual([2, ids[0]]);
  bytes.writeUInt16BE(ids[1] ?? 0, at);
  writeFileSync(file, bytes);
}

describe.skipIf(lacks)(`a HEIC picture${without}`, () => {
  it.each(CASES)(
    'is decoded as heif-convert decodes it: %s',
    async (name, [width, height], kind, most, options) => {
      const file = path.join(folder, `${name.replace(/[^a-z0-9]+/gu, '-')}.heic`);
      heifEnc(file, [await scene(width, height, kind)], ...options);
      const difference = await differenceOn(file);
      expect(difference.most).toBeLessThanOrEqual(most);
    },
  );

  // Even sizes, as cameras make them: libheif-js 1.23.2 loses the last line of an odd 4:2:0 picture turned by 180° or 270°
  // and puts its colour half a pixel beside (up to 165 levels on that line); heif-convert 1.15.1 does not.
  it('turned by its container is decoded as heif-convert decodes it', async () => {
    const still = path.join(folder, 'still.heic');
    heifEnc(still, [await scene(160, 118)]);
    for (const quarters of [1, 2, 3]) {
      const turned = path.join(folder, `turned-${quarters}.heic`);
      turnHeic(still, turned, quarters);
      expect((await differenceOn(turned)).most).toBeLessThanOrEqual(2);
    }
  });

  it('of another scene is far off: the check can fail', async () => {
    const [one, other] = [path.join(folder, 'one.heic'), path.join(folder, 'other.heic')];
    heifEnc(one, [await scene(160, 120, { seed: 1 })]);
    heifEnc(other, [await scene(160, 120, { seed: 2 })]);
    const theirs = `${one}.png`;
    run('heif-convert', one, theirs);
    expect(difference(await decoder.decode(readFileSync(other)), await rgbaOf(theirs)).most).toBeGreaterThan(
      50,
    );
  });

  it.each(['first', 'second'])('of several in one file is the main one: the %s', async (which) => {
    const burst = path.join(folder, `burst-${which}.heic`);
    const scenes = [await scene(160, 120, { seed: 1 }), await scene(120, 200, { seed: 2 })];
    heifEnc(burst, scenes);
    if (which === 'second') chooseSecond(burst);
    const alone = path.join(folder, `alone-${which}.heic`);
    heifEnc(alone, [scenes[which === 'first' ? 0 : 1] ?? '']);
    run('heif-convert', alone, `${alone}.png`);
    const theirs = await rgbaOf(`${alone}.png`);
    expect(difference(await decoder.decode(readFileSync(burst)), theirs).most).toBeLessThanOrEqual(2);
    const looked = await lookAtPhoto({ id: 'burst', name: 'burst.heic', original: burst, huge: false });
    expect(looked).toMatchObject({ file: { width: theirs.width, height: theirs.height, coding: 'heic' } });
    expect('notes' in looked && looked.notes.map((note) => note.message).join()).toContain(
      'holds 2 pictures',
    );
    expect(await developFile(burst, path.join(folder, 'cache'))).toMatchObject({
      width: theirs.width,
      height: theirs.height,
    });
  });

  it('that is grey and has a grey profile comes out grey', async () => {
    const grey = path.join(folder, 'grey.png');
    const profile = path.join(folder, 'grey.icc');
    writeFileSync(profile, greyProfile());
    const toGrey = [await scene(160, 120), '-colorspace', 'Gray', '-depth', '8'];
    run('convert', ...toGrey, '-profile', profile, grey);
    run('convert', ...toGrey, `${grey}.plain.png`);
    const file = path.join(folder, 'grey.heic');
    heifEnc(file, [grey]);
    expect(readFileSync(file).includes('GRAYXYZ '), 'the profile is in it').toBe(true);
    const { sizes } = await developFile(file, path.join(folder, 'cache'));
    const made = await pixelsOf(sizes[0]?.jpeg.file ?? '');
    const expected = await pixelsOf(`${grey}.plain.png`);
    let sum = 0;
    for (const [i, level] of made.data.entries()) sum += Math.abs(level - (expected.data[i] ?? 999));
    expect(sum / made.data.length).toBeLessThan(4);
  });

  it('with transparent parts shows white there, covered or not', async () => {
    const file = path.join(folder, 'clear.heic');
    heifEnc(file, [await scene(160, 120, { alpha: true })], '-p', 'chroma=444');
    for (const hide of [[], [[0.8, 0.8, 0.1, 0.1]]] as const) {
      const { sizes } = await developFile(file, path.join(folder, 'cache'), { hide });
      const [red = 0, green = 0, blue = 0] = meanColour(await pixelsOf(sizes[0]?.jpeg.file ?? ''), 4, 60, 3);
      expect(Math.min(red, green, blue), `${hide.length} covers`).toBeGreaterThan(240);
    }
  });

  it('cut short at any of 20 places is named, and the whole one beside it goes on', async () => {
    const whole = path.join(folder, 'whole.heic');
    heifEnc(whole, [await scene(160, 120, { seed: 3 })]);
    const bytes = readFileSync(whole);
    const next = seeded(20);
    const cut = Array.from({ length: 20 }, (_, i) => {
      const file = path.join(folder, `cut-${i}.heic`);
      writeFileSync(file, bytes.subarray(0, 1 + Math.floor(next() * bytes.length * 0.98)));
      return file;
    });
    const said = new Map<string, string>();
    const orders: PhotoOrder[] = [];
    for (const original of [...cut, whole]) {
      const name = path.basename(original);
      const looked = await lookAtPhoto({ id: name, name, original, huge: false });
      if ('trouble' in looked) said.set(name, looked.trouble.message);
      else orders.push({ file: looked.file, hide: [], use: 'contact' });
    }
    const cache = path.join(folder, 'cache-cut');
    const { pictures, failed } = await developPhotos(orders, { cache, shownCache: 'cache', program: 'test' });
    for (const [name, { message }] of failed) said.set(name, message);
    expect([...pictures.keys()]).toEqual(['whole.heic']);
    expect([...said.keys()].sort()).toEqual(cut.map((file) => path.basename(file)).sort());
    for (const [name, message] of said) expect(message).toContain(`photos/${name}`);
    // Some are only found out by the decoder, so its own words were there to be put right.
    expect(failed.size).toBeGreaterThan(5);
  });

  it('changed in any of 60 ways is decoded or refused, and the next one is decoded by the same thread', async () => {
    const file = path.join(folder, 'to-change.heic');
    heifEnc(file, [await scene(160, 120, { seed: 4 })]);
    const bytes = readFileSync(file);
    const whole = await decoder.decode(bytes);
    const next = seeded(60);
    let refused = 0;
    for (let i = 0; i < 60; i++) {
      const changed = Buffer.from(bytes);
      // Half of them in the boxes at its head, where sizes and places stand.
      const reach = i % 2 === 0 ? 600 : changed.length;
      for (let change = 0; change < 4; change++)
        changed[Math.floor(next() * reach)] = Math.floor(next() * 256);
      await decoder.decode(changed).catch(() => {
        refused += 1;
      });
    }
    expect(refused).toBeGreaterThan(5);
    expect(difference(await decoder.decode(bytes), whole).most).toBe(0);
  });

  it('with another ending is read as what it is, with a note', async () => {
    const file = path.join(folder, 'really-heic.jpg');
    heifEnc(`${file}.heic`, [await scene(160, 120, { seed: 3 })]);
    renameSync(`${file}.heic`, file);
    const looked = await lookAtPhoto({ id: 'x', name: 'really-heic.jpg', original: file, huge: false });
    expect(looked).toMatchObject({
      file: { coding: 'heic', width: 160, height: 120 },
      notes: [
        { message: expect.stringContaining('photos/really-heic.jpg is a HEIC picture by its content') },
      ],
    });
    expect(await developFile(file, path.join(folder, 'cache'))).toMatchObject({ width: 160, height: 120 });
  });
});
