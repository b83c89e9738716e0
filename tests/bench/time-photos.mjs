/**
 * Photos from originals to every size, without a cache, beside libvips' own command making the same sizes.
 *
 * The comparison leans towards libvips' command: it neither covers what `hide` names nor spends mozjpeg's time on
 * the picture for paper. It leans the other way in starting a process and reading the original for every size.
 */
import { spawnSync } from 'node:child_process';
import { mkdir, rm } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { PUBLISHED } from '../../dist/build.js';
import { developPhotos } from '../../dist/intake/develop-photos.js';
import { composed, orderFor } from './demo-houses.mjs';
import { inMs, perPart, runProgram, timeChildren, timeInside } from './measure.mjs';

/** Widths and quality of the pages' pictures, longest edge and quality of the picture for paper. */
const SIZES = [
  { size: '480x100000>', quality: 78 },
  { size: '960x100000>', quality: 78 },
  { size: '1600x100000>', quality: 78 },
  { size: '1600x1600>', quality: 80 },
];

/** What a phone takes: 12 million pixels. */
const PHONE = { width: 4032, height: 3024 };

/** @typedef {import('../../dist/intake/develop-photos.js').PhotoOrder} PhotoOrder */

/**
 * @param {string} base holds content/ with the demo houses
 * @param {readonly string[]} names
 * @param {number} runs
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timePhotos(base, names, runs) {
  /** @type {PhotoOrder[]} */
  const orders = [];
  for (const name of names) {
    const { read } = await composed(orderFor(base, name, PUBLISHED));
    for (const file of read.found?.photos.values() ?? [])
      orders.push({
        file: { ...file, id: `${name}-${file.id}` },
        hide: read.found?.house.photos[file.id]?.hide ?? [],
      });
  }
  if (orders.length === 0) return [{ what: 'photos', ours: 'the demo houses have none' }];
  const large = await phoneSized(orders, path.join(base, 'phone'));
  return [
    await oneRow(
      base,
      `photos of the demo houses, ${megapixels(orders)}, cold: one photo (of ${orders.length})`,
      orders,
      runs,
    ),
    await oneRow(
      base,
      `the first enlarged to a phone’s size, ${megapixels(large)}, cold: one photo (of ${large.length})`,
      large,
      runs,
    ),
  ];
}

/**
 * @param {string} base
 * @param {string} what
 * @param {readonly PhotoOrder[]} orders
 * @param {number} runs
 */
async function oneRow(base, what, orders, runs) {
  const cache = path.join(base, 'developed');
  const develop = async () => {
    const { pictures } = await developPhotos(orders, cache, 'developed');
    if (pictures.size !== orders.length)
      throw new Error(`${orders.length - pictures.size} photos were not made`);
  };
  const emptied = () => rm(cache, { recursive: true, force: true });
  const ours = perPart(await timeInside(runs, develop, emptied), orders.length);
  return {
    what,
    ours: inMs(ours.clock),
    cpu: ours.cpu === undefined ? '' : inMs(ours.cpu),
    runs,
    beside: await thumbnails(base, orders, runs),
  };
}

/**
 * @param {string} base
 * @param {readonly PhotoOrder[]} orders
 * @param {number} runs
 */
async function thumbnails(base, orders, runs) {
  const version = spawnSync('vipsthumbnail', ['--vips-version'], { encoding: 'utf8' });
  if (version.error !== undefined || version.status !== 0)
    return 'no vipsthumbnail here (Debian: libvips-tools)';
  const out = path.join(base, 'thumbnails');
  await mkdir(out, { recursive: true });
  const originals = orders.map(({ file }) => file.original);
  const make = async () => {
    for (const [index, { size, quality }] of SIZES.entries())
      await runProgram('vipsthumbnail', [
        ...['--size', size, '--export-profile', 'srgb'],
        ...['--output', path.join(out, `%s-${index}.jpg[Q=${quality},strip]`)],
        ...originals,
      ]);
  };
  const { clock, cpu } = perPart(await timeChildren(runs, make), orders.length);
  return `vipsthumbnail (${version.stdout.trim()}), the same four sizes: ${inMs(clock)}${cpu === undefined ? '' : `, processor ${inMs(cpu)}`}`;
}

/**
 * @param {readonly PhotoOrder[]} orders
 * @param {string} folder
 * @returns {Promise<PhotoOrder[]>}
 */
async function phoneSized(orders, folder) {
  await mkdir(folder, { recursive: true });
  const made = [];
  for (const { file } of orders.slice(0, 6)) {
    const original = path.join(folder, `${file.id}.jpg`);
    await sharp(file.original)
      .autoOrient()
      .resize(PHONE.width, PHONE.height, { fit: 'cover' })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 92 })
      .toFile(original);
    made.push({ file: { ...file, original, ...PHONE }, hide: [] });
  }
  return made;
}

/** @param {readonly PhotoOrder[]} orders */
function megapixels(orders) {
  const sizes = orders.map(({ file }) => (file.width * file.height) / 1e6).sort((a, b) => a - b);
  const [least, most] = [sizes[0]?.toFixed(1), sizes.at(-1)?.toFixed(1)];
  return `${least === most ? least : `${least} to ${most}`} million pixels`;
}
