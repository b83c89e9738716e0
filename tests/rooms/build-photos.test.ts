import { rmSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildHouse, type HouseOrder } from '../../src/build.js';
import type { EditionName } from '../../src/packet/packet.js';

/** Only its decoder finds out that half of it is missing. */
const cutShort = async (): Promise<Buffer> => {
  const whole = await picture('#883322');
  return whole.subarray(0, whole.length / 2);
};
const picture = (background: string): Promise<Buffer> =>
  sharp({
    create: {
      width: 400,
      height: 300,
      channels: 3,
      background,
      noise: { type: 'gaussian', mean: 128, sigma: 40 },
    },
  })
    .jpeg()
    .toBuffer();

const HOUSE = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
photos:
  A: { shows: front of the house, when: after, alt: A house. }
  B: { shows: kitchen, when: after, alt: A kitchen. }
  C: { shows: living room, when: after, alt: A room. }
  D: { shows: bath, when: after, alt: A bath. }
`;

let root: string;
beforeEach(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'broken-photo-'));
  await mkdir(path.join(root, 'test-lane', 'photos'), { recursive: true });
  await writeFile(path.join(root, 'test-lane', 'house.yaml'), HOUSE);
});
afterEach(() => rm(root, { recursive: true }));

const build = (...editions: EditionName[]) => buildWith(editions.length === 0 ? {} : { editions });

const buildWith = (order: Partial<HouseOrder>) =>
  buildHouse({
    folder: path.join(root, 'test-lane'),
    shown: 'test-lane',
    asOf: '2026-06-30',
    editions: ['agent'],
    out: path.join(root, 'out'),
    outShown: 'out',
    paper: 'letter',
    ...order,
  });

const put = async (name: string, bytes: Buffer): Promise<void> =>
  writeFile(path.join(root, 'test-lane', 'photos', `${name}.jpg`), bytes);

describe('a photo that only its decoder finds broken', () => {
  it('is left out by name, another takes its place, and the packet is made', async () => {
    await put('A', await cutShort());
    await put('B', await cutShort());
    await put('C', await picture('#446688'));
    await put('D', await picture('#99aa77'));
    const { located, made } = await build();
    expect(made).toHaveLength(1);
    const told = located.filter(({ diagnostic }) => diagnostic.code === 'intake.photo');
    expect(
      told.map(({ diagnostic, place }) => [diagnostic.severity, place?.line, diagnostic.path?.[1]]),
    ).toEqual([
      ['warning', 7, 'A'],
      ['warning', 8, 'B'],
    ]);
    const shown = await readdir(path.join(root, 'out', 'test-lane', 'agent', 'assets', 'photos'));
    // Two photos stand in the sheet, each 400 wide: one size, two formats.
    expect(shown.filter((name) => /\.(jpg|avif)$/u.test(name))).toHaveLength(4);
  });

  it('is an error where a fact rests on it, once, and nothing is made', async () => {
    for (const name of ['A', 'B', 'C', 'D']) await put(name, await picture('#446688'));
    await put('B', await cutShort());
    await writeFile(
      path.join(root, 'test-lane', 'house.yaml'),
      `${HOUSE}conditions:\n  - { what: a crack, evidence: [B] }\n`,
    );
    const { located, made } = await build();
    expect(made).toEqual([]);
    const errors = located.filter(({ diagnostic }) => diagnostic.severity === 'error');
    expect(errors.map(({ diagnostic }) => diagnostic.path)).toEqual([['photos', 'B']]);
  });
});

describe('an edition', () => {
  /** Every file of an edition's folder with its bytes. */
  const filesOf = async (edition: EditionName): Promise<Record<string, string>> => {
    const folder = path.join(root, 'out', 'test-lane', edition);
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = entries.filter((one) => one.isFile()).map((one) => path.join(one.parentPath, one.name));
    const read = files
      .sort()
      .map(async (file) => [path.relative(folder, file), await readFile(file, 'base64')]);
    return Object.fromEntries(await Promise.all(read));
  };

  it.each(['agent', 'visit', 'buyer', 'file'] as const)(
    '%s is the same by itself and among others',
    async (edition) => {
      for (const name of ['A', 'B', 'C', 'D']) await put(name, await picture('#446688'));
      await put('unnamed', await picture('#884466'));
      await build(edition);
      const alone = await filesOf(edition);
      await rm(path.join(root, 'out'), { recursive: true });
      await build('agent', 'visit', 'buyer', 'care', 'file');
      const among = await filesOf(edition);
      expect(Object.keys(among)).toEqual(Object.keys(alone));
      for (const [file, bytes] of Object.entries(alone)) expect(among[file] === bytes, file).toBe(true);
    },
  );

  it('shows a photo that only a contact sheet has in small', async () => {
    for (const name of ['A', 'B', 'C', 'D']) await put(name, await picture('#446688'));
    await writeFile(
      path.join(root, 'test-lane', 'photos', 'unnamed.jpg'),
      await sharp({ create: { width: 2000, height: 1500, channels: 3, background: '#123456' } })
        .jpeg()
        .toBuffer(),
    );
    await build('file');
    const folder = path.join(root, 'out', 'test-lane', 'file', 'assets', 'photos');
    const widths = await Promise.all(
      (await readdir(folder))
        .filter((name) => name.endsWith('.jpg'))
        .map(async (name) => (await sharp(path.join(folder, name)).metadata()).width),
    );
    expect(Math.max(...widths)).toBe(480);
  });
});

describe('a build from under which something is taken', () => {
  it('begins again where the cache is deleted, and makes what it would have made', async () => {
    for (const name of ['A', 'B', 'C', 'D']) await put(name, await picture('#446688'));
    const cache = path.join(root, 'out', '.photo-cache');
    let taken = 0;
    const { made } = await buildWith({
      onStep: () => {
        // After the photos are made ready, before the pages are: once.
        if (taken++ === 0) rmSync(cache, { recursive: true });
      },
    });
    expect(taken).toBeGreaterThan(1);
    expect(made).toHaveLength(1);
  });

  it('names the photo that is gone, and makes the packet without it', async () => {
    for (const name of ['A', 'B', 'C', 'D']) await put(name, await picture('#446688'));
    const { located, made } = await buildWith({
      editions: ['file'],
      onStep: () => rmSync(path.join(root, 'test-lane', 'photos', 'C.jpg'), { force: true }),
    });
    expect(made).toHaveLength(1);
    const told = located.filter(({ diagnostic }) => diagnostic.code === 'intake.no-file');
    expect(told.map(({ diagnostic, place }) => [diagnostic.severity, place?.line])).toEqual([['warning', 9]]);
  });
});
