/** What stands in the way of a delivery is told where it stands, once, and never as a mistake of the program. */
import { cpSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { ChangedWhileRead } from '../../src/archive/file-digest.js';
import { typed } from '../tools/gallery.js';
import { SMALL_HOUSE, scratchFolder, writeHouse } from './cli-program.js';

/** What the disk says while a delivery is written. */
let refusal: Error | undefined;
let tries = 0;
let untilTry = Number.POSITIVE_INFINITY;
vi.mock('../../src/archive/write-delivery.js', async (original) => {
  const real = await original<typeof import('../../src/archive/write-delivery.js')>();
  return {
    ...real,
    writeDelivery: (order: Parameters<typeof real.writeDelivery>[0]) => {
      tries += 1;
      return refusal === undefined || tries > untilTry ? real.writeDelivery(order) : Promise.reject(refusal);
    },
  };
});

/** Any photo will do: it is never opened. */
const PHOTO = fileURLToPath(new URL('../../content/quarry-road/photos/IMG_0412.jpg', import.meta.url));

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let home: string;
let out: string;
let count = 0;
beforeEach(() => {
  refusal = undefined;
  tries = 0;
  untilTry = Number.POSITIVE_INFINITY;
  home = writeHouse(path.join(scratch, String(++count)), 'test-lane');
  out = path.join(home, '..', 'out');
});

const deliver = () =>
  typed([
    'deliver',
    home,
    '--edition',
    'buyer',
    '--to',
    'J. Cole',
    '--as-of',
    '2026-06-12',
    '--on',
    '2026-06-12',
    '--out',
    out,
  ]);
const systemSays = (code: string, file?: string): Error =>
  Object.assign(new Error(code), { code, syscall: 'open', ...(file === undefined ? {} : { path: file }) });

describe('a refusal', () => {
  it.each([
    [
      'of a photo',
      () => path.join(home, 'photos', 'hall.jpg'),
      'photos/hall.jpg can’t be read: the system says',
    ],
    ['of the picture cache', () => path.join(out, '.photo-cache', 'a', 'b.jpg'), 'error archive.disk'],
  ])('%s sends nobody to the folder deliveries', async (_of, file, words) => {
    refusal = systemSays('EACCES', file());
    const { said, status } = await deliver();
    expect(said).toContain(words);
    expect(said).not.toContain('deliveries can’t be written to');
    expect(status).toBe(1);
  });

  it.each([
    ['of a file there', () => path.join(home, 'deliveries', 'x')],
    ['that names no file', () => undefined],
  ])('%s is one of deliveries', async (_of, file) => {
    refusal = systemSays('ENOSPC', file());
    const { said, status } = await deliver();
    expect(said).toContain('deliveries can’t be written to, since the disk is full');
    expect(status).toBe(1);
  });

  it('of the output, which photos are made ready in, is one of the output', async () => {
    mkdirSync(path.join(home, 'photos'));
    cpSync(PHOTO, path.join(home, 'photos', 'hall.jpg'));
    writeFileSync(
      path.join(home, 'house.yaml'),
      `${SMALL_HOUSE}levels:\n  - { id: main, name: Main level, grade: above }\nrooms:\n  - { id: hall, level: main, use: hall, size: 10' x 8' }\nphotos:\n  hall: { shows: hall, when: as-found, where: hall, alt: A hall with a window. }\n`,
    );
    mkdirSync(out);
    writeFileSync(path.join(out, '.photo-cache'), 'a file of mine');
    const { said, status } = await deliver();
    expect(said).toContain('error archive.disk');
    expect(said).toContain('a file stands where a folder is needed');
    expect(said).not.toContain('deliveries can’t be written to');
    expect(status).toBe(1);
    expect(readdirSync(home)).not.toContain('deliveries');
  });
});

describe('a file that is never at rest', () => {
  it('is named after three tries, and is no mistake of the program', async () => {
    refusal = new ChangedWhileRead(path.join(home, 'photos', 'hall.jpg'));
    const { said, status } = await deliver();
    expect(tries).toBe(3);
    expect(said).toContain('photos/hall.jpg was changed each time it was read');
    expect(said).not.toContain('bug.internal');
    expect(status).toBe(1);
  });

  it('keeps nothing from being told once only', async () => {
    // The house’s name tells its street.
    const yaml = SMALL_HOUSE.replace('{ city', '{ street: 9 Test Lane, show: street-withheld, city');
    writeFileSync(path.join(home, 'house.yaml'), yaml);
    refusal = new ChangedWhileRead(path.join(home, 'house.yaml'));
    const { said } = await deliver();
    const told = said.match(/^(?:warning|error) .*$/gmu) ?? [];
    expect(told.length, said).toBeGreaterThan(1);
    expect(new Set(told).size).toBe(told.length);
  });

  it('is no hindrance where it comes to rest', async () => {
    refusal = new ChangedWhileRead(path.join(home, 'house.yaml'));
    untilTry = 2;
    expect((await deliver()).status).toBe(0);
    expect(readdirSync(path.join(home, 'deliveries'))).toHaveLength(1);
  });
});
