/** Photos as a phone takes them, made from the demo's: 12 million pixels, in Display P3, held sideways, JPEG or HEIC. */
import { spawnSync } from 'node:child_process';
import { copyFile, mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { lookAtPhoto } from '../../dist/intake/look-at-photo.js';

const SIZE = { width: 4032, height: 3024 };

/** @typedef {import('../../dist/intake/develop-photos.js').PhotoOrder} PhotoOrder */

/**
 * Orders for every size of pages and paper.
 * @param {readonly string[]} originals
 * @returns {Promise<PhotoOrder[]>}
 */
export async function ordersFor(originals) {
  const orders = [];
  for (const original of originals) {
    const name = path.basename(original);
    const looked = await lookAtPhoto({ id: name, name, original, huge: false });
    if ('trouble' in looked) throw new Error(looked.trouble.message);
    orders.push({ file: looked.file, hide: [], use: /** @type {const} */ ('full') });
  }
  return orders;
}

/**
 * The demo photos of a house in a phone's size, as JPEG.
 * @param {string} from a folder of photos
 * @param {string} to
 * @param {number} count
 * @returns {Promise<string[]>}
 */
export async function phoneJpegs(from, to, count) {
  await mkdir(to, { recursive: true });
  const names = (await readdir(from)).filter((name) => /\.jpg$/i.test(name)).slice(0, count);
  const made = [];
  for (const name of names) {
    const file = path.join(to, name);
    await sharp(path.join(from, name))
      .autoOrient()
      .resize(SIZE.width, SIZE.height, { fit: 'cover' })
      .withIccProfile('p3')
      .withExif({ IFD0: { Orientation: '6' } })
      .jpeg({ quality: 92 })
      .toFile(file);
    made.push(file);
  }
  return made;
}

/**
 * The same as HEIC. Undefined where heif-enc is not installed.
 * @param {readonly string[]} jpegs
 * @returns {readonly string[] | undefined}
 */
export function asHeic(jpegs) {
  const made = jpegs.map((file) => file.replace(/\.jpg$/i, '.heic'));
  for (const [index, file] of jpegs.entries()) {
    const run = spawnSync('heif-enc', ['-q', '60', file, '-o', made[index] ?? ''], { stdio: 'ignore' });
    if (run.error !== undefined || run.status !== 0) return undefined;
  }
  return made;
}

/**
 * As many files as are asked for, each with bytes of its own, from a few.
 * @param {readonly string[]} originals
 * @param {string} to
 * @param {number} count
 * @returns {Promise<string[]>}
 */
export async function manyOf(originals, to, count) {
  await mkdir(to, { recursive: true });
  const made = [];
  for (let i = 0; i < count; i++) {
    const from = originals[i % originals.length] ?? '';
    const file = path.join(to, `${i}${path.extname(from)}`);
    await copyFile(from, file);
    // What follows the end of a JPEG is read by nobody, and makes another content of it.
    await writeFile(file, `${i}`, { flag: 'a' });
    made.push(file);
  }
  return made;
}
