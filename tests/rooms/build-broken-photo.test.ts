import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { buildHouse } from '../../src/build.js';

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

const build = () =>
  buildHouse({
    folder: path.join(root, 'test-lane'),
    shown: 'test-lane',
    asOf: '2026-06-30',
    editions: ['agent'],
    out: path.join(root, 'out'),
    outShown: 'out',
    paper: 'letter',
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
