/**
 * The cache of pictures: never serves half a picture, whoever writes beside, whenever a run is killed, whatever lies
 * in it; and what comes out of it is what would have been made.
 */
import { execFile, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import sharp from 'sharp';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  type Development,
  type DevelopOptions,
  developPhotos,
  type PhotoOrder,
} from '../../src/intake/develop-photos.js';
import { seeded } from '../outside/seeded-outlines.js';
import { lookedAt } from '../tools/develop-file.js';

const PROGRAM = fileURLToPath(new URL('../tools/develop-in-process.mjs', import.meta.url));

let root: string;
let photos: string;
/** An empty one for each test. */
let cache: string;
let count = 0;

beforeAll(async () => {
  root = mkdtempSync(path.join(tmpdir(), 'photo-cache-'));
  photos = path.join(root, 'photos');
  mkdirSync(photos);
  for (let i = 0; i < 4; i++) {
    const next = seeded(100 + i);
    const pixels = Buffer.from(
      Array.from({ length: 700 * 500 * 3 }, (_, at) => (at % 700) / 4 + 60 * next()),
    );
    const raw = { width: 700, height: 500, channels: 3 } as const;
    writeFileSync(path.join(photos, `photo-${i}.jpg`), await sharp(pixels, { raw }).jpeg().toBuffer());
  }
});
afterAll(() => rmSync(root, { recursive: true }));
beforeEach(() => {
  count += 1;
  cache = path.join(root, `cache-${count}`);
});

async function orders(change: Partial<PhotoOrder> = {}): Promise<PhotoOrder[]> {
  const made: PhotoOrder[] = [];
  for (const name of readdirSync(photos))
    made.push({ file: await lookedAt(path.join(photos, name)), hide: [], use: 'full', ...change });
  return made;
}

const develop = (list: readonly PhotoOrder[], options: Partial<DevelopOptions> = {}): Promise<Development> =>
  developPhotos(list, { cache, shownCache: 'cache', program: 'test', ...options });

/** Everything that comes out, with the bytes as they lie there now. */
function contents({ pictures, failed, diagnostics }: Development): unknown {
  expect(diagnostics).toEqual([]);
  expect([...failed]).toEqual([]);
  const digest = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');
  return [...pictures]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([id, { width, height, sizes, tiny, print }]) => ({
      id,
      width,
      height,
      tiny,
      print: digest(print.file),
      sizes: sizes.map(({ jpeg, avif, ...size }) => ({
        ...size,
        names: [jpeg.name, avif.name],
        bytes: [digest(jpeg.file), digest(avif.file)],
      })),
    }));
}

const entriesOf = (folder: string): string[] => readdirSync(folder).sort();

describe('what comes out', () => {
  test('is the same from an empty and from a filled cache, and is not made again', async () => {
    const list = await orders();
    const cold = contents(await develop(list));
    const before = entriesOf(cache);
    expect(before).toHaveLength(4);
    const [first = ''] = before;
    renameSync(path.join(photos, 'photo-0.jpg'), path.join(root, 'away.jpg'));
    // An original that is gone would fail if it were read.
    const warm = contents(await develop(list));
    renameSync(path.join(root, 'away.jpg'), path.join(photos, 'photo-0.jpg'));
    expect(warm).toEqual(cold);
    expect(entriesOf(cache)).toEqual(before);
    expect(entriesOf(path.join(cache, first))).toContain('picture.json');
  });

  test('is named by its content', async () => {
    const { pictures } = await develop(await orders());
    for (const { sizes } of pictures.values())
      for (const { jpeg, avif } of sizes)
        for (const { name, file } of [jpeg, avif])
          expect(name.slice(0, 20)).toBe(
            createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 20),
          );
  });

  test('is the same where two builds are at it at once', async () => {
    const list = await orders();
    const both = await Promise.all([develop(list), develop(list)]);
    const alone = contents(await develop(list, { cache: path.join(root, 'alone') }));
    for (const one of both) expect(contents(one)).toEqual(alone);
    expect(entriesOf(cache)).toHaveLength(4);
  });

  test('is the same where the cache was deleted in between', async () => {
    const list = await orders();
    const before = contents(await develop(list));
    rmSync(cache, { recursive: true });
    expect(contents(await develop(list))).toEqual(before);
  });

  test('is kept apart for another use', async () => {
    const [order] = await orders();
    if (order === undefined) throw new Error('there is a photo');
    await develop([order]);
    await develop([{ ...order, use: 'contact' }]);
    expect(entriesOf(cache)).toHaveLength(2);
  });

  test.each<[string, (order: PhotoOrder) => [PhotoOrder, Partial<DevelopOptions>]]>([
    ['version of the program', (order) => [order, { program: 'another' }]],
    ['cover', (order) => [{ ...order, hide: [[0, 0, 0.5, 0.5]] }, {}]],
    ['cover, a hair larger', (order) => [{ ...order, hide: [[0, 0, 0.5, 0.500001]] }, {}]],
  ])('is made anew for another %s, and what was made before does not lie about', async (_, change) => {
    const [order, another] = await orders();
    if (order === undefined || another === undefined) throw new Error('there are photos');
    await develop([order, another], { program: 'one' });
    const before = entriesOf(cache);
    const [changed, options] = change(order);
    await develop([changed], { program: 'one', ...options });
    const after = entriesOf(cache);
    const kept = before.filter((entry) => after.includes(entry));
    // The other photo's stays, unless all of them are another version's.
    expect(kept).toHaveLength(options.program === undefined ? 1 : 0);
    expect(after).toHaveLength(kept.length + 1);
  });
});

describe('what lies in the cache and is no whole picture', () => {
  let list: PhotoOrder[];
  let made: unknown;
  let filled: string;
  beforeAll(async () => {
    list = (await orders()).slice(0, 1);
    filled = path.join(root, 'filled');
    made = contents(await develop(list, { cache: filled }));
  });

  const largest = (folder: string, ending: string): string =>
    readdirSync(folder)
      .filter((name) => name.endsWith(ending))
      .map((name) => path.join(folder, name))
      .sort((one, other) => readFileSync(other).length - readFileSync(one).length)[0] ?? '';

  test.each<[string, (entry: string) => void]>([
    ['a picture cut short', (entry) => truncateSync(largest(entry, '.jpg'), 1000)],
    ['an emptied picture', (entry) => truncateSync(largest(entry, '.avif'), 0)],
    ['a picture that is gone', (entry) => rmSync(largest(entry, '.jpg'))],
    [
      'a picture with other bytes, as many',
      (entry) => {
        const file = largest(entry, '.jpg');
        const bytes = readFileSync(file);
        writeFileSync(file, bytes.fill(0, Math.floor(bytes.length / 2)));
      },
    ],
    ['a longer picture', (entry) => writeFileSync(largest(entry, '.jpg'), 'x', { flag: 'a' })],
    ['an emptied list', (entry) => truncateSync(path.join(entry, 'picture.json'), 0)],
    ['a list cut short', (entry) => truncateSync(path.join(entry, 'picture.json'), 60)],
    ['a list that is gone', (entry) => rmSync(path.join(entry, 'picture.json'))],
    [
      'a list of something else',
      (entry) => writeFileSync(path.join(entry, 'picture.json'), '{"files":{"picture.json":32}}\n\n\n'),
    ],
    ['a list that is no list', (entry) => writeFileSync(path.join(entry, 'picture.json'), 'null')],
    [
      'an empty folder',
      (entry) => {
        rmSync(entry, { recursive: true });
        mkdirSync(entry);
      },
    ],
    [
      'a folder of something else',
      (entry) => {
        rmSync(entry, { recursive: true });
        mkdirSync(path.join(entry, 'inner'), { recursive: true });
        writeFileSync(path.join(entry, 'inner', 'note.txt'), 'mine');
      },
    ],
    [
      'a plain file in the folder’s place',
      (entry) => {
        rmSync(entry, { recursive: true });
        writeFileSync(entry, 'mine');
      },
    ],
  ])('is not served but made again: %s', async (_, spoil) => {
    cpSync(filled, cache, { recursive: true });
    const [entry = ''] = entriesOf(cache);
    spoil(path.join(cache, entry));
    expect(contents(await develop(list))).toEqual(made);
    expect(contents(await develop(list))).toEqual(made);
    expect(entriesOf(cache)).toEqual([entry]);
  });

  test('beside a whole one is left alone', async () => {
    cpSync(filled, cache, { recursive: true });
    const [entry = ''] = entriesOf(cache);
    writeFileSync(path.join(cache, entry, 'stray.jpg'), 'mine');
    writeFileSync(path.join(cache, 'stray'), 'mine');
    expect(contents(await develop(list))).toEqual(made);
    expect(existsSync(path.join(cache, 'stray'))).toBe(true);
  });

  test('half-made by a run that was killed is swept away, and what another run is making stays', async () => {
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    const [left, making] = [`.making-${dead}-a`, `.making-${process.pid}-b`];
    for (const name of [left, making]) mkdirSync(path.join(cache, name), { recursive: true });
    await develop(list);
    expect(existsSync(path.join(cache, left))).toBe(false);
    expect(existsSync(path.join(cache, making))).toBe(true);
  });

  test('in the place of the cache itself is told, and nothing is thrown', async () => {
    writeFileSync(cache, 'mine');
    const { pictures, failed, diagnostics } = await develop(list);
    expect([pictures.size, failed.size]).toEqual([0, 0]);
    expect(diagnostics).toMatchObject([{ severity: 'error' }]);
  });
});

describe('a run in a process of its own', () => {
  interface Said {
    readonly made: readonly { readonly id: string }[];
  }
  const runToEnd = async (place: string): Promise<Said> => {
    const { stdout } = await promisify(execFile)(process.execPath, [PROGRAM, photos, place]);
    return JSON.parse(stdout.trim().split('\n').at(-1) ?? '') as Said;
  };

  /** Kills it so many milliseconds after it said that it had finished so many photos. */
  const killed = (after: number, milliseconds: number): Promise<NodeJS.Signals | null> =>
    new Promise((resolve) => {
      const child = spawn(process.execPath, [PROGRAM, photos, cache, 'and-wait'], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      child.stdout.setEncoding('utf8').on('data', (text: string) => {
        if (text.includes(`photo ${after} `)) setTimeout(() => child.kill('SIGKILL'), milliseconds);
      });
      child.on('exit', (_code, signal) => resolve(signal));
    });

  let clean: Said;
  beforeAll(async () => {
    clean = await runToEnd(path.join(root, 'clean'));
    expect(clean.made).toHaveLength(4);
  });

  test.each([
    [0, 0],
    [0, 25],
    [0, 60],
    [1, 0],
    [1, 20],
    [2, 0],
  ])('killed after %i photos and %i ms leaves what the next one can use', async (after, milliseconds) => {
    expect(await killed(after, milliseconds)).toBe('SIGKILL');
    // What lies under a key is whole.
    for (const entry of existsSync(cache) ? entriesOf(cache).filter((name) => !name.startsWith('.')) : []) {
      const { files } = JSON.parse(readFileSync(path.join(cache, entry, 'picture.json'), 'utf8'));
      for (const [name, bytes] of Object.entries(files))
        expect(readFileSync(path.join(cache, entry, name)).length).toBe(bytes);
    }
    expect(await runToEnd(cache)).toEqual(clean);
  });

  test('beside another one on the same cache comes out the same', async () => {
    const both = await Promise.all([runToEnd(cache), runToEnd(cache)]);
    expect(both).toEqual([clean, clean]);
    expect(entriesOf(cache)).toHaveLength(4);
  });
});
