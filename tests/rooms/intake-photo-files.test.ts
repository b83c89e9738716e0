import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { findPhotos } from '../../src/intake/photo-files.js';
import { houseFrom } from './house-from.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'photo-files-'));
  await mkdir(path.join(folder, 'photos'));
});
afterEach(() => rm(folder, { recursive: true }));

const HOUSE = houseFrom({ photos: { IMG_1: { shows: 'kitchen' } } });

/** What is found of IMG_1 among these files. */
async function found(...names: string[]) {
  const picture = sharp({ create: { width: 4, height: 3, channels: 3, background: 'white' } });
  for (const name of names) {
    const bytes = /heic$/i.test(name)
      ? Buffer.from('not read')
      : await picture
          .clone()
          .toFormat(/png$/.test(name) ? 'png' : 'jpeg')
          .toBuffer();
    await writeFile(path.join(folder, 'photos', name), bytes);
  }
  const { files, diagnostics } = await findPhotos(folder, 'house', HOUSE);
  const shown = files.get('IMG_1')?.original;
  return { shown: shown && path.basename(shown), diagnostics };
}

describe('a photo named without its ending', () => {
  test('is the copy that can be read, not the phone’s HEIC original beside it', async () => {
    const { shown, diagnostics } = await found('IMG_1.HEIC', 'IMG_1.jpg');
    expect(shown).toBe('IMG_1.jpg');
    expect(diagnostics).toMatchObject([{ severity: 'note', path: ['photos', 'IMG_1'] }]);
    expect(diagnostics[0]?.message).toContain('taken for its original');
  });

  test('that is no picture is left out with a warning', async () => {
    const { shown, diagnostics } = await found('IMG_1.HEIC');
    expect(shown).toBeUndefined();
    expect(diagnostics.map((one) => [one.severity, one.code])).toEqual([['warning', 'intake.photo']]);
    expect(diagnostics[0]?.message).toMatch(
      /^photos\/IMG_1\.HEIC is not a whole picture: .*; it is left out$/u,
    );
  });

  test('that two pictures answer to is told with both, and the first is shown', async () => {
    const { shown, diagnostics } = await found('IMG_1.jpg', 'IMG_1.png', 'IMG_1.heic');
    expect(shown).toBe('IMG_1.jpg');
    expect(diagnostics).toMatchObject([
      {
        code: 'intake.photo',
        severity: 'warning',
        path: ['photos', 'IMG_1'],
        message: '2 pictures in photos/ are named IMG_1 (IMG_1.jpg, IMG_1.png); IMG_1.jpg is shown',
      },
    ]);
    expect(diagnostics[0]?.hints[1]).toContain('file: IMG_1.png');
  });
});

/** A small picture under photos/. */
const picture = async (name: string): Promise<void> => {
  const white = sharp({ create: { width: 4, height: 3, channels: 3, background: 'white' } });
  await writeFile(path.join(folder, 'photos', name), await white.jpeg().toBuffer());
};

describe('a photo that a fact rests on', () => {
  const house = houseFrom({
    photos: { IMG_1: { shows: 'kitchen' }, IMG_2: { shows: 'bath' } },
    conditions: [{ what: 'a crack', evidence: ['IMG_1'] }],
  });

  test('has to be there; another one is left out, and the rest go on', async () => {
    const { files, diagnostics } = await findPhotos(folder, 'house', house);
    expect(files.size).toBe(0);
    expect(diagnostics.map((one) => [one.path?.[1], one.severity, one.code])).toEqual([
      ['IMG_1', 'error', 'intake.no-file'],
      ['IMG_2', 'warning', 'intake.no-file'],
    ]);
    expect(diagnostics[0]?.message).toContain('; a fact rests on it');
    await picture('IMG_2.jpg');
    expect([...(await findPhotos(folder, 'house', house)).files.keys()]).toEqual(['IMG_2']);
  });

  test('outside of the folder is an error whatever rests on it', async () => {
    await picture('IMG_1.jpg');
    await symlink('/etc/hostname', path.join(folder, 'photos', 'IMG_2.jpg'));
    const { diagnostics } = await findPhotos(folder, 'house', house);
    expect(diagnostics.map((one) => [one.path?.[1], one.severity, one.code])).toEqual([
      ['IMG_2', 'error', 'intake.outside'],
    ]);
  });
});

describe('names', () => {
  test('with letters composed or not, blanks, quotes and signs are found', async () => {
    const names = ['Küche vorher', "Bob's bath", '“hall” 😀', 'a  b'];
    const house = houseFrom({ photos: Object.fromEntries(names.map((name) => [name, { shows: 'x' }])) });
    for (const name of names) await picture(`${name.normalize('NFD')}.jpg`);
    const { files, diagnostics } = await findPhotos(folder, 'house', house);
    expect(diagnostics).toEqual([]);
    expect([...files.keys()]).toEqual(names);
    const byFile = houseFrom({ photos: { a: { shows: 'x', file: 'Küche vorher.jpg'.normalize('NFC') } } });
    expect((await findPhotos(folder, 'house', byFile)).files.get('a')?.name).toBe(
      'Küche vorher.jpg'.normalize('NFD'),
    );
  });

  test('written with detours name the file all the same', async () => {
    await picture('IMG_1.jpg');
    const house = houseFrom({
      photos: { a: { shows: 'x', file: './IMG_1.jpg' }, b: { shows: 'y', file: 'c/../IMG_1.jpg' } },
    });
    const { files, diagnostics } = await findPhotos(folder, 'house', house, true);
    expect([...files.values()].map((file) => file.name)).toEqual(['IMG_1.jpg', 'IMG_1.jpg']);
    expect(diagnostics).toEqual([]);
  });

  test('that differ only in capital letters are told', async () => {
    await picture('IMG_1.jpg');
    await picture('img_1.JPG');
    const { files, diagnostics } = await findPhotos(folder, 'house', HOUSE);
    expect(files.get('IMG_1')?.name).toBe('IMG_1.jpg');
    expect(diagnostics.map((one) => [one.severity, one.file])).toContainEqual(['warning', 'house/photos']);
    expect(diagnostics.map((one) => one.message).join()).toContain(
      'IMG_1.jpg and img_1.JPG differ only in capital',
    );
  });
});

describe('photos that no fact names', () => {
  test('are looked at where they are asked for, and a link out of the folder is not followed', async () => {
    await picture('IMG_1.jpg');
    await picture('IMG_9.jpg');
    await writeFile(path.join(folder, 'secret.jpg'), 'secret');
    await symlink('../secret.jpg', path.join(folder, 'photos', 'IMG_8.jpg'));
    expect((await findPhotos(folder, 'house', HOUSE)).unnamed).toEqual([]);
    const { unnamed, diagnostics } = await findPhotos(folder, 'house', HOUSE, true);
    expect(unnamed.map((file) => [file.id, file.name, file.width])).toEqual([
      ['*/IMG_9.jpg', 'IMG_9.jpg', 4],
    ]);
    expect(diagnostics.map((one) => [one.severity, one.code])).toEqual([
      ['note', 'intake.unused-photo'],
      ['note', 'intake.photo'],
    ]);
    expect(diagnostics[1]?.message).toBe('photos/IMG_8.jpg leads out of the house folder');
  });
});
