/**
 * Independent check: ExifTool finds nothing beside the picture in any picture that is given away, also not in those
 * taken out of the PDF by pdfimages; and every picture stands upright, by ExifTool's reading of the original.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtFolder, builtHouses, filesBelow } from '../tools/built-houses.js';
import { developFile } from '../tools/develop-file.js';
import { lacking, type Tags } from '../tools/outside-programs.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';
import { beside, everyTag, isPicture, takenOut } from '../tools/picture-tags.js';

const { some: lacks, words: without } = lacking('exiftool', 'pdfimages');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'photos-exiftool-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.skipIf(lacks)(`pictures given away${without}`, () => {
  const picturesOf = (house: string): string[] => {
    const out = path.join(builtFolder(), 'out', house);
    // The house file's copies of the originals keep everything; nobody is given them.
    return filesBelow(out)
      .filter((name) => isPicture(name) && !name.startsWith('file/originals/'))
      .map((name) => path.join(out, name));
  };
  const withPhotos = builtHouses().filter((house) => picturesOf(house).length > 0);

  it('are there to look at', () => {
    expect(withPhotos.length).toBeGreaterThanOrEqual(2);
  });

  it.each(withPhotos)('of %s hold nothing but the picture, and are named by their content', (house) => {
    const pictures = picturesOf(house);
    const found = everyTag(pictures).flatMap((tags) =>
      beside(tags).map((name) => `${tags.SourceFile}: ${name}`),
    );
    expect(found).toEqual([]);
    expect(pictures.every((file) => /^[0-9a-f]{20}\.(jpg|avif)$/u.test(path.basename(file)))).toBe(true);
  });

  it.each(withPhotos)('in the sheets of %s hold nothing but the picture', (house) => {
    const taken = takenOut(path.join(builtFolder(), 'out', house), folder);
    expect(
      everyTag(taken).flatMap((tags) => beside(tags).map((tag) => `${tags.SourceFile}: ${tag}`)),
    ).toEqual([]);
    expect(taken.length).toBeGreaterThan(0);
  });

  it('come from originals that hold a place, a serial number and a name: the check can fail', async () => {
    const file = path.join(folder, 'photo.jpg');
    writeFileSync(file, await photoWithSecrets('photo'));
    const [tags] = everyTag([file]);
    expect(beside(tags as Tags)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^GPS:GPSLatitude$/u),
        'ExifIFD:SerialNumber',
        'IFD0:Artist',
      ]),
    );
  });

  // Orientation of the EXIF standard (CIPA DC-008, 4.6.4 A): 5 to 8 lie on their side.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('stand upright: orientation %i', async (orientation) => {
    const original = path.join(folder, `upright-${orientation}.jpg`);
    writeFileSync(original, await photoWithSecrets('photo', orientation));
    const [read] = everyTag([original]);
    expect(read?.['IFD0:Orientation']).toBe(orientation);
    const made = await developFile(original, path.join(folder, 'cache'));
    const stored = { width: Number(read?.['File:ImageWidth']), height: Number(read?.['File:ImageHeight']) };
    const upright = orientation >= 5 ? { width: stored.height, height: stored.width } : stored;
    expect({ width: made.width, height: made.height }).toEqual(upright);
    for (const file of made.sizes.flatMap(({ jpeg, avif }) => [jpeg.file, avif.file])) {
      const [tags] = everyTag([file]);
      expect(beside(tags as Tags)).toEqual([]);
      const [width = 0, height = 1] = String(tags?.['Composite:ImageSize']).split(' ').map(Number);
      expect(width / height).toBeCloseTo(upright.width / upright.height, 2);
      expect(await cornerError(original, orientation, file)).toBeLessThan(12);
    }
  });
});

/** How far the picture is from the original turned by the standard's table, worked out pixel by pixel. Mean of 0 to 255. */
async function cornerError(original: string, orientation: number, developed: string): Promise<number> {
  const raw = async (file: string) => sharp(file).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const from = await raw(original);
  const to = await raw(developed);
  const { width: W, height: H } = from.info;
  // Where in the stored picture (0 to 1, from its top left) a spot of the upright one lies.
  const source: Record<number, (x: number, y: number) => [number, number]> = {
    1: (x, y) => [x, y],
    2: (x, y) => [1 - x, y],
    3: (x, y) => [1 - x, 1 - y],
    4: (x, y) => [x, 1 - y],
    5: (x, y) => [y, x],
    6: (x, y) => [y, 1 - x],
    7: (x, y) => [1 - y, 1 - x],
    8: (x, y) => [1 - y, x],
  };
  const colour = (image: typeof from, x: number, y: number): number[] => {
    const px = Math.min(image.info.width - 1, Math.floor(x * image.info.width));
    const py = Math.min(image.info.height - 1, Math.floor(y * image.info.height));
    const at = (py * image.info.width + px) * image.info.channels;
    return [...image.data.subarray(at, at + 3)];
  };
  expect([W, H]).toEqual([320, 240]);
  let sum = 0;
  let count = 0;
  for (let i = 1; i < 10; i++)
    for (let j = 1; j < 10; j++) {
      const [x, y] = [i / 10 + 0.003, j / 10 + 0.003];
      const [sx, sy] = source[orientation]?.(x, y) ?? [x, y];
      const a = colour(from, sx, sy);
      colour(to, x, y).forEach((value, channel) => {
        sum += Math.abs(value - (a[channel] ?? 0));
        count += 1;
      });
    }
  return sum / count;
}
