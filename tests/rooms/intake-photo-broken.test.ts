/** Files that are no whole picture: each is named with what to do, nothing is thrown, and the other photos go on. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { developPhotos, type PhotoOrder } from '../../src/intake/develop-photos.js';
import { lookAtPhoto, type PhotoRemark } from '../../src/intake/look-at-photo.js';
import { seeded } from '../outside/seeded-outlines.js';
import { leastMs } from '../tools/least-ms.js';
import { oneColourPng } from '../tools/one-colour-png.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'broken-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const put = (name: string, bytes: Buffer | string): string => {
  const file = path.join(folder, name);
  writeFileSync(file, bytes);
  return file;
};

const look = (file: string, huge = false) =>
  lookAtPhoto({ id: path.basename(file), name: path.basename(file), original: file, huge });

/** What is said of each file, all made ready in one go; nothing of those that are shown. */
async function remarksOn(files: readonly string[]): Promise<Map<string, PhotoRemark>> {
  const remarks = new Map<string, PhotoRemark>();
  const orders: PhotoOrder[] = [];
  for (const file of files) {
    const looked = await look(file);
    if ('trouble' in looked) remarks.set(path.basename(file), looked.trouble);
    else orders.push({ file: looked.file, hide: [], use: 'contact' });
  }
  const { pictures, failed, diagnostics } = await developPhotos(orders, {
    cache: path.join(folder, 'cache'),
    shownCache: 'cache',
    program: 'test',
  });
  expect(diagnostics).toEqual([]);
  for (const [id, remark] of failed) remarks.set(id, remark);
  for (const id of pictures.keys()) expect(remarks.has(id)).toBe(false);
  expect(pictures.size + remarks.size).toBe(files.length);
  return remarks;
}

/** 200 by 150 pixels with edges and grain, so that every part of the file counts. */
function grainy(): Sharp {
  const next = seeded(77);
  const pixels = Buffer.from(Array.from({ length: 200 * 150 * 3 }, (_, i) => (i % 200) / 2 + 150 * next()));
  return sharp(pixels, { raw: { width: 200, height: 150, channels: 3 } });
}

describe('a picture cut short', () => {
  test.each(['jpeg', 'png', 'webp', 'tiff', 'avif', 'gif'] as const)(
    'at any of 20 places is named, and the whole one beside it goes on: %s',
    async (format) => {
      const whole = await grainy().toFormat(format).toBuffer();
      const next = seeded(whole.length);
      const files = Array.from({ length: 20 }, (_, i) =>
        put(`cut-${i}.${format}`, whole.subarray(0, 1 + Math.floor(next() * (whole.length * 0.98)))),
      );
      const remarks = await remarksOn([
        ...files.slice(0, 10),
        put(`whole.${format}`, whole),
        ...files.slice(10),
      ]);
      expect([...remarks.keys()].sort()).toEqual(files.map((file) => path.basename(file)).sort());
      for (const [name, { message, hints }] of remarks) {
        expect(message).toContain(`photos/${name}`);
        expect(hints.length).toBeGreaterThan(0);
      }
    },
  );

  test('of which only the last bytes are missing is either whole or named', async () => {
    for (const format of ['jpeg', 'png', 'webp'] as const) {
      const whole = await grainy().toFormat(format).toBuffer();
      for (const missing of [1, 2, 3, 12]) {
        const file = put(`end-${missing}.${format}`, whole.subarray(0, -missing));
        for (const [name, { message }] of await remarksOn([file]))
          expect(message).toContain(`photos/${name}`);
      }
    }
  });

  test('that has bytes in its middle changed is either shown or named', async () => {
    const next = seeded(4711);
    for (const format of ['jpeg', 'png', 'webp', 'tiff', 'avif', 'gif'] as const) {
      const whole = await grainy().toFormat(format).toBuffer();
      const files = Array.from({ length: 6 }, (_, i) => {
        const bytes = Buffer.from(whole);
        for (let change = 0; change < 8; change++)
          bytes[Math.floor(next() * bytes.length)] = Math.floor(next() * 256);
        return put(`changed-${i}.${format}`, bytes);
      });
      for (const [name, { message }] of await remarksOn(files)) expect(message).toContain(`photos/${name}`);
    }
  });
});

describe('a file that is no photo', () => {
  const DRAWING =
    '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10"><rect width="9" height="9"/></svg>';
  test.each([
    ['empty.jpg', '', 'photos/empty.jpg is empty'],
    ['words.jpg', 'This is a shopping list, not a photo.\n', 'photos/words.jpg is not a whole picture'],
    ['zeros.png', Buffer.alloc(5000), 'photos/zeros.png is not a whole picture'],
    [
      'paper.jpg',
      '%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer <<>>\n',
      'photos/paper.jpg is not a whole picture',
    ],
    ['drawing.png', DRAWING, 'photos/drawing.png is no photo but a drawing (SVG)'],
    ['drawing.svg', DRAWING, 'photos/drawing.svg is no photo but a drawing (SVG)'],
    ['head.jpg', Buffer.from([0xff, 0xd8, 0xff]), 'photos/head.jpg is not a whole picture'],
  ])('is named: %s', async (name, bytes, message) => {
    const looked = await look(put(name, bytes));
    expect(looked).toMatchObject({ trouble: { message: expect.stringContaining(message) } });
    expect('trouble' in looked && looked.trouble.hints.length).toBeGreaterThan(0);
  });

  test('or can’t be read is named', async () => {
    const looked = await look(path.join(folder, 'gone.jpg'));
    expect(looked).toMatchObject({ trouble: { message: 'photos/gone.jpg can’t be read (ENOENT)' } });
  });

  test('or was changed between looking and making is named, and the next one goes on', async () => {
    const plain = (background: string): Promise<Buffer> =>
      sharp({ create: { width: 40, height: 30, channels: 3, background } })
        .png()
        .toBuffer();
    const changed = await look(put('changed.png', await plain('white')));
    const same = await look(put('same.png', await plain('grey')));
    if (!('file' in changed) || !('file' in same)) throw new Error('both are photos');
    writeFileSync(changed.file.original, await plain('black'));
    const { pictures, failed } = await developPhotos(
      [changed, same].map(({ file }) => ({ file, hide: [], use: 'contact' })),
      { cache: path.join(folder, 'cache-changed'), shownCache: 'cache', program: 'test' },
    );
    expect(failed.get('changed.png')?.message).toBe('photos/changed.png was changed while it was read');
    expect(pictures.has('same.png')).toBe(true);
  });
});

describe('a small file that unfolds into a picture without end', () => {
  const BOMB = oneColourPng(20_000, 10_000);

  test('is refused without unfolding it, and says how to allow it', async () => {
    expect(BOMB.length).toBeLessThan(50_000);
    const file = put('bomb.png', BOMB);
    await look(file);
    const before = process.memoryUsage().rss;
    let looked: Awaited<ReturnType<typeof look>> | undefined;
    const again = async (): Promise<void> => {
      looked = await look(file);
    };
    expect(await leastMs(again, 200)).toBeLessThan(200);
    expect(process.memoryUsage().rss - before).toBeLessThan(50_000_000);
    expect(looked).toMatchObject({
      trouble: {
        message: 'photos/bomb.png has 200 million pixels (20000 × 10000); the most is 100 million',
        hints: [expect.stringContaining('huge: yes'), expect.any(String)],
      },
    });
  });

  test('is shown where the writer allows it', async () => {
    const looked = await look(put('allowed.png', BOMB), true);
    if (!('file' in looked)) throw new Error(looked.trouble.message);
    expect(looked.file).toMatchObject({ width: 20_000, height: 10_000 });
    const { pictures, failed } = await developPhotos([{ file: looked.file, hide: [], use: 'contact' }], {
      cache: path.join(folder, 'cache'),
      shownCache: 'cache',
      program: 'test',
    });
    expect([...failed]).toEqual([]);
    expect(pictures.get('allowed.png')).toMatchObject({ width: 480, height: 240 });
  });

  test('is refused beyond that, allowed or not', async () => {
    const looked = await look(put('beyond.png', oneColourPng(50_000, 10_001)), true);
    expect(looked).toMatchObject({
      trouble: { message: expect.stringContaining('the most is 500 million') },
    });
    expect('trouble' in looked && looked.trouble.hints.join()).not.toContain('huge');
  });
});
