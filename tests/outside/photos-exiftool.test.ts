/**
 * Independent check: ExifTool finds nothing beside the picture in any picture that is given away, also not in those
 * taken out of the PDF by pdfimages; and every picture stands upright, by ExifTool's reading of the original.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { developPhotos } from '../../src/intake/develop-photos.js';
import { builtFolder, builtHouses, filesBelow } from '../tools/built-houses.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';

const missing = ['exiftool', 'pdfimages'].filter((tool) => spawnSync(tool, ['-v']).error !== undefined);
const without = missing.length === 0 ? '' : ` (skipped: ${missing.join(' and ')} not on this machine)`;

type Tags = Record<string, unknown> & { readonly SourceFile: string };

/** Every tag of many files, groups in front of the names. */
function tagsOf(files: readonly string[]): Tags[] {
  const words = ['-json', '-a', '-u', '-G1', '-n', '-ee', ...files];
  return JSON.parse(execFileSync('exiftool', words, { encoding: 'utf8', maxBuffer: 2 ** 28 })) as Tags[];
}

/** What a picture is made of: its format, size and colours, and what ExifTool works out from those. */
const OF_THE_PICTURE =
  /^(SourceFile$|ExifTool:|System:|File:(?!Comment)|JFIF:|Composite:(ImageSize|Megapixels)$|ICC[_-])/u;

const beside = (tags: Tags): string[] => Object.keys(tags).filter((name) => !OF_THE_PICTURE.test(name));

describe.skipIf(missing.length > 0)(`pictures given away${without}`, () => {
  const picturesOf = (house: string): string[] => {
    const out = path.join(builtFolder(), 'out', house);
    return filesBelow(out)
      .filter((name) => /\.(jpe?g|png|webp|avif)$/u.test(name))
      .map((name) => path.join(out, name));
  };
  const withPhotos = builtHouses().filter((house) => picturesOf(house).length > 0);

  it('are there to look at', () => {
    expect(withPhotos.length).toBeGreaterThanOrEqual(2);
  });

  it.each(withPhotos)('of %s hold nothing but the picture, and are named by their content', (house) => {
    const pictures = picturesOf(house);
    const found = tagsOf(pictures).flatMap((tags) =>
      beside(tags).map((name) => `${tags.SourceFile}: ${name}`),
    );
    expect(found).toEqual([]);
    expect(pictures.every((file) => /^[0-9a-f]{20}\.jpg$/u.test(path.basename(file)))).toBe(true);
  });

  it.each(withPhotos)('in the sheets of %s hold nothing but the picture', (house) => {
    const out = path.join(builtFolder(), 'out', house);
    let seen = 0;
    for (const name of filesBelow(out).filter((one) => one.endsWith('.pdf'))) {
      const folder = mkdtempSync(path.join(tmpdir(), 'taken-out-'));
      execFileSync('pdfimages', ['-all', path.join(out, name), path.join(folder, 'p')]);
      const files = readdirSync(folder).map((file) => path.join(folder, file));
      if (files.length === 0) continue;
      seen += files.length;
      expect(tagsOf(files).flatMap((tags) => beside(tags).map((tag) => `${name}: ${tag}`))).toEqual([]);
    }
    expect(seen).toBeGreaterThan(0);
  });

  it('come from originals that hold a place, a serial number and a name: the check can fail', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'originals-'));
    const file = path.join(folder, 'photo.jpg');
    writeFileSync(file, await photoWithSecrets('photo'));
    const [tags] = tagsOf([file]);
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
    const folder = mkdtempSync(path.join(tmpdir(), 'upright-'));
    mkdirSync(path.join(folder, 'cache'));
    const original = path.join(folder, 'photo.jpg');
    writeFileSync(original, await photoWithSecrets('photo', orientation));
    const [read] = tagsOf([original]);
    expect(read?.['IFD0:Orientation']).toBe(orientation);
    const file = { id: 'photo', original, width: 0, height: 0, takenOn: undefined, content: '' };
    const { pictures } = await developPhotos([{ file, hide: [] }], path.join(folder, 'cache'), 'cache');
    const made = pictures.get('photo');
    const stored = { width: Number(read?.['File:ImageWidth']), height: Number(read?.['File:ImageHeight']) };
    const upright = orientation >= 5 ? { width: stored.height, height: stored.width } : stored;
    expect({ width: made?.width, height: made?.height }).toEqual(upright);
    const files = [...(made?.sizes ?? []), ...(made === undefined ? [] : [made.print])];
    for (const size of files) {
      const [tags] = tagsOf([size.file]);
      expect(beside(tags as Tags)).toEqual([]);
      expect(Number(tags?.['File:ImageWidth']) / Number(tags?.['File:ImageHeight'])).toBeCloseTo(
        upright.width / upright.height,
        2,
      );
      expect(await cornerError(original, orientation, size.file)).toBeLessThan(12);
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
