import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
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
    expect(await found('IMG_1.HEIC', 'IMG_1.jpg')).toEqual({ shown: 'IMG_1.jpg', diagnostics: [] });
  });

  test('is told as HEIC where there is nothing else', async () => {
    const { shown, diagnostics } = await found('IMG_1.HEIC');
    expect(shown).toBeUndefined();
    expect(diagnostics.map((one) => [one.severity, one.code])).toEqual([['error', 'intake.photo']]);
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
