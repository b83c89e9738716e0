/** Photos of every odd kind that can be shown: sizes, colours, frames, names; and places under photos/ that hold none. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HouseSpec } from '../../src/facts/house.js';
import type { DevelopedPhoto } from '../../src/intake/develop-photos.js';
import { lookAtPhoto } from '../../src/intake/look-at-photo.js';
import { findPhotos } from '../../src/intake/photo-files.js';
import { developFile, meanColour, pixelsOf } from '../tools/develop-file.js';
import { interlacedHead, oneColourPng } from '../tools/one-colour-png.js';
import { houseFrom } from './house-from.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'odd-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const put = (name: string, bytes: Buffer): string => {
  const file = path.join(folder, name);
  writeFileSync(file, bytes);
  return file;
};

const develop = (name: string, bytes: Buffer): Promise<DevelopedPhoto> =>
  developFile(put(name, bytes), path.join(folder, 'cache'));

const plain = (width: number, height: number, background: string): Sharp =>
  sharp({ create: { width, height, channels: 3, background } });

const notesOn = async (file: string): Promise<string[]> => {
  const looked = await lookAtPhoto({ id: 'x', name: path.basename(file), original: file, huge: false });
  if ('trouble' in looked) throw new Error(looked.trouble.message);
  return looked.notes.map(({ message }) => message);
};

/** The mean colour of what pages show of it, JPEG and AVIF. */
async function shownColours({ sizes }: DevelopedPhoto): Promise<number[][]> {
  const size = sizes.at(-1);
  const colours: number[][] = [];
  for (const file of [size?.jpeg.file ?? '', size?.avif.file ?? '']) {
    const pixels = await pixelsOf(file);
    const reach = Math.floor((Math.min(pixels.width, pixels.height) - 1) / 4);
    colours.push(meanColour(pixels, Math.floor(pixels.width / 2), Math.floor(pixels.height / 2), reach));
  }
  return colours;
}

async function expectColour(picture: DevelopedPhoto, expected: readonly number[], most = 4): Promise<void> {
  for (const colour of await shownColours(picture))
    for (const [channel, level] of colour.entries())
      expect(Math.abs(level - (expected[channel] ?? 999)), `${colour} for ${expected}`).toBeLessThanOrEqual(
        most,
      );
}

describe('a photo of an odd size', () => {
  test('one pixel wide and high', async () => {
    const picture = await develop('dot.png', await plain(1, 1, '#804020').png().toBuffer());
    expect(picture).toMatchObject({ width: 1, height: 1, sizes: [{ width: 1, height: 1 }] });
    expect(picture.tiny).toMatch(/^data:image\/png;base64,/u);
    await expectColour(picture, [0x80, 0x40, 0x20]);
  });

  test('a panorama 20,000 wide', async () => {
    const picture = await develop('panorama.png', oneColourPng(20_000, 3000));
    expect(picture).toMatchObject({ width: 1600, height: 240 });
    expect(picture.sizes.map(({ width, height }) => [width, height])).toEqual([
      [480, 72],
      [960, 144],
      [1600, 240],
    ]);
    await expectColour(picture, [255, 255, 255]);
  });

  test.each([1, 10, 100])('65,000 high and %i wide', async (width) => {
    const picture = await develop(`thread-${width}.png`, oneColourPng(width, 65_000));
    const expected = { width: Math.max(1, Math.round((width * 1600) / 65_000)), height: 1600 };
    expect(picture).toMatchObject(expected);
    expect(picture.sizes).toMatchObject([expected]);
    for (const { jpeg, avif } of picture.sizes)
      for (const { file } of [jpeg, avif]) expect(await sharp(file).metadata()).toMatchObject(expected);
  });

  test('smaller than every size is not enlarged', async () => {
    const picture = await develop('small.jpg', await plain(300, 200, '#336699').jpeg().toBuffer());
    expect(picture.sizes.map(({ width, height }) => [width, height])).toEqual([[300, 200]]);
    expect(picture.print).toMatchObject({ width: 300, height: 200 });
  });
});

describe('a photo of odd colours', () => {
  const GREY = '#909090';
  test.each<[string, () => Promise<Buffer>, readonly number[], number]>([
    ['grey.jpg', () => plain(60, 40, GREY).toColourspace('b-w').jpeg().toBuffer(), [0x90, 0x90, 0x90], 3],
    ['grey.png', () => plain(60, 40, GREY).toColourspace('b-w').png().toBuffer(), [0x90, 0x90, 0x90], 3],
    [
      'deep.png',
      () => plain(60, 40, '#406080').toColourspace('rgb16').png().toBuffer(),
      [0x40, 0x60, 0x80],
      3,
    ],
    [
      'deep-grey.png',
      () => plain(60, 40, GREY).toColourspace('grey16').png().toBuffer(),
      [0x90, 0x90, 0x90],
      3,
    ],
    [
      'deep.tif',
      () => plain(60, 40, '#406080').toColourspace('rgb16').tiff().toBuffer(),
      [0x40, 0x60, 0x80],
      3,
    ],
    ['palette.png', () => plain(60, 40, '#406080').png({ palette: true }).toBuffer(), [0x40, 0x60, 0x80], 3],
    // Ink colours can't say every screen colour; this one they can.
    [
      'ink.jpg',
      () => plain(60, 40, '#a08070').toColourspace('cmyk').jpeg().toBuffer(),
      [0xa0, 0x80, 0x70],
      8,
    ],
    [
      'ink.tif',
      () => plain(60, 40, '#a08070').toColourspace('cmyk').tiff().toBuffer(),
      [0xa0, 0x80, 0x70],
      8,
    ],
  ])('comes out in the same ones: %s', async (name, make, expected, most) => {
    await expectColour(await develop(name, await make()), expected, most);
  });

  test.each([
    ['clear.png', 4, [0, 0, 0, 0]],
    ['grey-clear.png', 2, [0, 0]],
  ] as const)('with nothing but transparency is white: %s', async (name, channels, pixel) => {
    const raw = { width: 40, height: 30, channels };
    const bytes = Buffer.alloc(40 * 30 * channels, Buffer.from(pixel));
    const image = sharp(bytes, { raw });
    const png = await (channels === 2 ? image.toColourspace('b-w') : image).png().toBuffer();
    const file = put(name, png);
    await expectColour(await developFile(file, path.join(folder, 'cache')), [255, 255, 255]);
    const covered = await developFile(file, path.join(folder, 'cache'), { hide: [[0.2, 0.2, 0.6, 0.6]] });
    await expectColour(covered, [138, 146, 150]);
  });

  test('with a profile that is none is shown by its numbers', async () => {
    const jpeg = await plain(60, 40, '#406080').withIccProfile('p3').jpeg().toBuffer();
    const at = jpeg.indexOf('ICC_PROFILE\0');
    expect(at).toBeGreaterThan(0);
    jpeg.fill(0x55, at + 14, at + 300);
    const picture = await develop('profile.jpg', jpeg);
    for (const colour of await shownColours(picture)) expect(Math.max(...colour)).toBeGreaterThan(90);
  });
});

describe('a file that holds several pictures', () => {
  const frames = Buffer.concat([
    Buffer.alloc(40 * 30 * 3, Buffer.from([200, 30, 30])),
    Buffer.alloc(40 * 30 * 3, Buffer.from([30, 30, 200])),
  ]);
  const moving = () => sharp(frames, { raw: { width: 40, height: 60, channels: 3, pageHeight: 30 } });

  test.each([
    ['moves.gif', () => moving().gif().toBuffer()],
    ['moves.webp', () => moving().webp({ lossless: true }).toBuffer()],
  ])('shows the first one and says so: %s', async (name, make) => {
    const file = put(name, await make());
    expect(await notesOn(file)).toEqual([`photos/${name} moves (2 pictures); the first one is shown`]);
    const picture = await developFile(file, path.join(folder, 'cache'));
    expect(picture).toMatchObject({ width: 40, height: 30 });
    await expectColour(picture, [200, 30, 30], 12);
    const covered = await developFile(file, path.join(folder, 'cache'), { hide: [[0, 0, 0.1, 0.1]] });
    expect(covered).toMatchObject({ width: 40, height: 30 });
  });
});

describe('a picture whose name says another kind', () => {
  test('is read as what it is, with a note', async () => {
    const file = put('really.png', await plain(60, 40, '#406080').jpeg({ quality: 95 }).toBuffer());
    expect(await notesOn(file)).toEqual([
      'photos/really.png is a JPEG picture by its content, whatever its ending says; it is read as that',
    ]);
    await expectColour(await developFile(file, path.join(folder, 'cache')), [0x40, 0x60, 0x80]);
  });

  test.each([['photo.JPG'], ['photo.jpeg'], ['photo.Jfif']])('is no matter for %s', async (name) => {
    expect(await notesOn(put(name, await plain(6, 4, '#406080').jpeg().toBuffer()))).toEqual([]);
  });
});

describe('the photos of a house', () => {
  const NAMES = [
    'two words.jpg',
    'Küche.jpg',
    'Bäder.jpg'.normalize('NFD'),
    'stairs 🪜.jpg',
    `it's "quoted" & <odd>.jpg`,
    'a%20b#c?d.jpg',
    '-dash.jpg',
    'name.with.dots.jpg',
  ];

  const houseWith = (photos: HouseSpec['photos']) => houseFrom({ photos });

  test('are found under any name, and made ready', async () => {
    const house = path.join(folder, 'names');
    mkdirSync(path.join(house, 'photos'), { recursive: true });
    const jpeg = await plain(60, 40, '#406080').jpeg().toBuffer();
    for (const name of NAMES) writeFileSync(path.join(house, 'photos', name), jpeg);
    // Written in the other spelling of letters with marks than the disk has.
    const spec = Object.fromEntries(
      NAMES.map((name, i) => [
        `photo-${i}`,
        { shows: 'kitchen', file: name.normalize(name === name.normalize('NFC') ? 'NFD' : 'NFC') },
      ]),
    );
    const { files, diagnostics } = await findPhotos(house, 'house', houseWith(spec));
    expect(diagnostics).toEqual([]);
    expect([...files.values()].map(({ name }) => name)).toEqual(NAMES);
    for (const { original } of files.values())
      expect((await developFile(original, path.join(folder, 'cache'))).width).toBe(60);
  });

  test('are told one by one where they lead out, are no file or are broken; the others go on', async () => {
    const house = path.join(folder, 'places');
    const photos = path.join(house, 'photos');
    mkdirSync(path.join(photos, 'folder.jpg'), { recursive: true });
    const jpeg = await plain(60, 40, '#406080').jpeg().toBuffer();
    writeFileSync(path.join(photos, 'good.jpg'), jpeg);
    writeFileSync(path.join(folder, 'outside.jpg'), jpeg);
    symlinkSync(path.join(folder, 'outside.jpg'), path.join(photos, 'link.jpg'));
    symlinkSync('nowhere.jpg', path.join(photos, 'dangling.jpg'));
    symlinkSync('good.jpg', path.join(photos, 'inside.jpg'));
    expect(spawnSync('mkfifo', [path.join(photos, 'pipe.jpg')]).status).toBe(0);
    writeFileSync(path.join(photos, 'empty.jpg'), '');
    const ids = ['folder', 'link', 'dangling', 'pipe', 'empty', 'absent', 'inside', 'good'];
    const spec = Object.fromEntries(ids.map((id) => [id, { shows: 'kitchen' }]));
    const { files, diagnostics } = await findPhotos(house, 'house', houseWith(spec));
    expect([...files.keys()]).toEqual(['inside', 'good']);
    expect(diagnostics.map(({ severity, code, path: at }) => [at?.join('.'), severity, code])).toEqual([
      ['photos.folder', 'warning', 'intake.no-file'],
      ['photos.link', 'error', 'intake.outside'],
      ['photos.dangling', 'warning', 'intake.no-file'],
      ['photos.pipe', 'warning', 'intake.no-file'],
      ['photos.empty', 'warning', 'intake.photo'],
      ['photos.absent', 'warning', 'intake.no-file'],
    ]);
    for (const [i, { message }] of diagnostics.entries()) expect(message).toContain(ids[i]);
  });

  test('are told where the folder of photos is itself a link that leads out', async () => {
    const house = path.join(folder, 'linked');
    mkdirSync(house);
    symlinkSync(path.join(folder, 'places', 'photos'), path.join(house, 'photos'));
    const { files, diagnostics } = await findPhotos(
      house,
      'house',
      houseWith({ good: { shows: 'kitchen' } }),
    );
    expect([...files.keys()]).toEqual([]);
    expect(diagnostics.map(({ severity, code }) => [severity, code])).toContainEqual([
      'error',
      'intake.outside',
    ]);
    const { unnamed } = await findPhotos(house, 'house', houseWith({}), true);
    expect(unnamed).toEqual([]);
  });

  test('that have to be held whole are refused by what they would take, unless they are allowed', async () => {
    const file = put('passes.png', interlacedHead(9_990, 9_990));
    const look = (huge: boolean) => lookAtPhoto({ id: 'x', name: 'passes.png', original: file, huge });
    const looked = await look(false);
    if (!('trouble' in looked)) throw new Error('it was taken');
    expect(looked.trouble.message).toContain('stored in several passes');
    expect(looked.trouble.hints.join()).toContain('huge: yes');
    expect('file' in (await look(true))).toBe(true);
    const small = put('passes-small.png', interlacedHead(4_000, 3_000));
    expect(
      'file' in (await lookAtPhoto({ id: 'x', name: 'passes-small.png', original: small, huge: false })),
    ).toBe(true);
  });

  test('that no fact names are told in the same way, once', async () => {
    const house = path.join(folder, 'places');
    const { unnamed, diagnostics } = await findPhotos(house, 'house', houseWith({}), true);
    expect(unnamed.map(({ name }) => name)).toEqual(['good.jpg', 'inside.jpg']);
    const said = diagnostics.filter(({ code }) => code === 'intake.photo').map(({ message }) => message);
    expect(said).toHaveLength(5);
    for (const name of ['folder.jpg', 'link.jpg', 'dangling.jpg', 'pipe.jpg', 'empty.jpg'])
      expect(said.filter((message) => message.includes(`photos/${name}`))).toHaveLength(1);
  });

  test('whose names differ only in capital letters are told', async () => {
    const house = path.join(folder, 'twins');
    mkdirSync(path.join(house, 'photos'), { recursive: true });
    const jpeg = await plain(60, 40, '#406080').jpeg().toBuffer();
    for (const name of ['Attic.jpg', 'attic.JPG']) writeFileSync(path.join(house, 'photos', name), jpeg);
    const spec = { one: { shows: 'attic', file: 'Attic.jpg' }, other: { shows: 'attic', file: 'attic.JPG' } };
    const { files, diagnostics } = await findPhotos(house, 'house', houseWith(spec));
    expect([...files.values()].map(({ name }) => name)).toEqual(['Attic.jpg', 'attic.JPG']);
    expect(diagnostics).toMatchObject([
      {
        severity: 'warning',
        message: expect.stringContaining('Attic.jpg and attic.JPG differ only in capital'),
      },
    ]);
  });
});
