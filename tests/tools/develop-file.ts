/** A photo on disk, looked at and made ready as the program does it; for tests of what comes out. */
import path from 'node:path';
import sharp from 'sharp';
import type { Rectangle } from '../../src/intake/cover.js';
import { type DevelopedPhoto, type Development, developPhotos } from '../../src/intake/develop-photos.js';
import { lookAtPhoto, type PhotoFile } from '../../src/intake/look-at-photo.js';
import type { PictureUse } from '../../src/intake/make-picture.js';

export interface Wanted {
  readonly hide?: readonly Rectangle[];
  readonly use?: PictureUse;
  readonly huge?: boolean;
}

/** Throws, and so fails the test, if the photo is not taken for one. */
export async function lookedAt(file: string, huge = false): Promise<PhotoFile> {
  const looked = await lookAtPhoto({
    id: path.basename(file),
    name: path.basename(file),
    original: file,
    huge,
  });
  if ('trouble' in looked) throw new Error(looked.trouble.message);
  return looked.file;
}

/** Makes many ready at once, each under its file's name. */
export async function developFiles(
  files: readonly string[],
  cache: string,
  { hide = [], use = 'full', huge = false }: Wanted = {},
): Promise<Development> {
  const orders = [];
  for (const file of files) orders.push({ file: await lookedAt(file, huge), hide, use });
  return developPhotos(orders, { cache, shownCache: 'cache', program: 'test' });
}

/** Throws, and so fails the test, if it can't be shown. */
export async function developFile(file: string, cache: string, wanted: Wanted = {}): Promise<DevelopedPhoto> {
  const { pictures, failed, diagnostics } = await developFiles([file], cache, wanted);
  const picture = pictures.get(path.basename(file));
  if (picture === undefined) throw new Error(JSON.stringify([[...failed.values()], diagnostics]));
  return picture;
}

export interface Pixels {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: number;
}

/** Red, green and blue of a picture that has no profile, row by row. */
export async function pixelsOf(file: string | Buffer): Promise<Pixels> {
  const { data, info } = await sharp(file)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

/** Mean colour of a square round a spot, 0 to 255 a channel. */
export function meanColour({ data, width, channels }: Pixels, x: number, y: number, reach: number): number[] {
  const sum = [0, 0, 0];
  for (let row = y - reach; row <= y + reach; row++)
    for (let column = x - reach; column <= x + reach; column++)
      for (let channel = 0; channel < 3; channel++)
        sum[channel] = (sum[channel] ?? 0) + (data[(row * width + column) * channels + channel] ?? 0);
  return sum.map((each) => each / (2 * reach + 1) ** 2);
}
