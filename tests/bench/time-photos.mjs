/**
 * Photos from originals to every size, without a cache, beside libvips' own command making the same sizes in the same
 * formats.
 *
 * The comparison leans towards libvips' command: it makes no picture for paper. It leans the
 * other way in starting a process and reading the original for every size, which is how one uses it.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { developPhotos } from '../../dist/intake/develop-photos.js';
import { inMs, perPart, runProgram, spread, timeChildren, timeInside } from './measure.mjs';
import { asHeic, manyOf, ordersFor, phoneJpegs } from './phone-photos.mjs';

/** Widths, and how each format is written; the same in src/intake/make-picture.ts. */
const WIDTHS = [480, 960, 1600];
const FORMATS = ['.jpg[Q=78,strip]', '.avif[Q=50,effort=0,strip]'];

/** @typedef {import('../../dist/intake/develop-photos.js').PhotoOrder} PhotoOrder */
/** @typedef {import('./table.mjs').Row} Row */

/**
 * @param {string} base holds content/ with the demo houses
 * @param {readonly string[]} names
 * @param {number} runs
 * @param {readonly [few: number, many: number]} counts photos whose peak memory is compared
 * @returns {Promise<Row[]>}
 */
export async function timePhotos(base, names, runs, counts) {
  const from = path.join(base, 'content', names.at(-1) ?? '', 'photos');
  const jpegs = await phoneJpegs(from, path.join(base, 'phone'), 6);
  const heics = asHeic(jpegs.slice(0, 4));
  const aim = 'at most 0.4 of its time';
  return [
    ...(await coldAndWarm(base, '12 million pixels, JPEG in Display P3', jpegs, runs, aim)),
    ...(heics === undefined
      ? [{ what: '12 million pixels, HEIC', ours: 'no heif-enc here (Debian: libheif-examples)' }]
      : await coldAndWarm(base, '12 million pixels, HEIC in Display P3', heics, runs, '–')),
    await shares(jpegs[0] ?? ''),
    await memory(base, jpegs, counts),
  ];
}

/**
 * @param {string} base
 * @param {string} what
 * @param {readonly string[]} originals
 * @param {number} runs
 * @param {string} aim
 * @returns {Promise<Row[]>}
 */
async function coldAndWarm(base, what, originals, runs, aim) {
  const made = Array.from({ length: runs }, () => inItsProcess(path.join(base, 'developed'), originals));
  /** @type {(which: 'cold' | 'warm', measure: 'clock' | 'cpu') => import('./measure.mjs').Spread} */
  const each = (which, measure) => spread(made.map((run) => run[which][measure] / originals.length));
  const part = (100 * each('warm', 'clock').median) / each('cold', 'clock').median;
  return [
    {
      what: `photos of ${what}, cold: one photo (of ${originals.length})`,
      ours: inMs(each('cold', 'clock')),
      cpu: inMs(each('cold', 'cpu')),
      runs,
      beside: await thumbnails(base, originals, runs, each('cold', 'clock').median),
      aim,
    },
    {
      what: 'the same, warm: from the cache',
      ours: `${inMs(each('warm', 'clock'))}, ${part.toFixed(1)} % of cold`,
      cpu: inMs(each('warm', 'cpu')),
      runs,
      aim: 'under 5 %',
    },
  ];
}

/**
 * @typedef {{ readonly clock: number, readonly cpu: number }} Took milliseconds
 * @param {string} cache
 * @param {readonly string[]} originals
 * @returns {{ readonly cold: Took, readonly warm: Took, readonly peakMb: number }}
 */
function inItsProcess(cache, originals) {
  const program = fileURLToPath(new URL('photo-process.mjs', import.meta.url));
  return JSON.parse(execFileSync(process.execPath, [program, cache, ...originals], { encoding: 'utf8' }));
}

/**
 * @param {string} base
 * @param {readonly string[]} originals
 * @param {number} runs
 * @param {number} ours milliseconds a photo
 */
async function thumbnails(base, originals, runs, ours) {
  const version = spawnSync('vipsthumbnail', ['--vips-version'], { encoding: 'utf8' });
  if (version.error !== undefined || version.status !== 0)
    return 'no vipsthumbnail here (Debian: libvips-tools)';
  // sharp points it at its own libvips, which would keep the system's from finding its formats.
  delete process.env.VIPSHOME;
  const out = path.join(base, 'thumbnails');
  await mkdir(out, { recursive: true });
  const make = async () => {
    for (const width of WIDTHS)
      for (const format of FORMATS)
        await runProgram('vipsthumbnail', [
          ...['--size', `${width}x100000>`, '--export-profile', 'srgb'],
          ...['--output', path.join(out, `%s-${width}${format}`)],
          ...originals,
        ]);
  };
  const { clock, cpu } = perPart(await timeChildren(runs, make), originals.length);
  const ratio = (ours / clock.median).toFixed(2);
  return `vipsthumbnail (${version.stdout.trim()}), the same sizes and formats: ${inMs(clock)}${cpu === undefined ? '' : `, processor ${inMs(cpu)}`}; ours is ${ratio} of it`;
}

/**
 * What decoding and encoding alone take of one photo, one after the other on one processor: no pipeline is quicker
 * than its decoder and encoders.
 * @param {string} original
 * @returns {Promise<Row>}
 */
async function shares(original) {
  const decode = () =>
    sharp(original).autoOrient().keepIccProfile().resize(1600).raw().toBuffer({ resolveWithObject: true });
  const { data, info } = await decode();
  const raw = { width: info.width, height: info.height, channels: info.channels };
  const pictures = await Promise.all(
    WIDTHS.map((width) => sharp(data, { raw }).resize(width).raw().toBuffer({ resolveWithObject: true })),
  );
  const encode = async () => {
    for (const picture of pictures) {
      const one = sharp(picture.data, {
        raw: { width: picture.info.width, height: picture.info.height, channels: picture.info.channels },
      });
      await one.clone().jpeg({ quality: 78, quantisationTable: 3 }).toBuffer();
      await one.clone().avif({ quality: 50, effort: 0, chromaSubsampling: '4:2:0' }).toBuffer();
    }
  };
  const [decoding, encoding] = [await timeInside(5, decode), await timeInside(5, encode)];
  const cache = `${original}-cache`;
  const orders = await ordersFor([original]);
  const whole = await timeInside(
    5,
    () => developPhotos(orders, { cache, shownCache: 'cache', program: 'bench' }),
    () => rm(cache, { recursive: true, force: true }),
  );
  const percent = (/** @type {{ clock: import('./measure.mjs').Spread }} */ timing) =>
    `${Math.round((100 * timing.clock.median) / whole.clock.median)} %`;
  return {
    what: 'one JPEG photo by itself: what decoding with turning and shrinking, and encoding, take when nothing else is done',
    ours: `whole ${inMs(whole.clock)}; decoding ${inMs(decoding.clock)} (${percent(decoding)}), encoding ${inMs(encoding.clock)} (${percent(encoding)})`,
    runs: 5,
  };
}

/**
 * @param {string} base
 * @param {readonly string[]} jpegs
 * @param {readonly [few: number, many: number]} counts
 * @returns {Promise<Row>}
 */
async function memory(base, jpegs, [few, many]) {
  const peak = async (/** @type {number} */ count) => {
    const folder = path.join(base, `many-${count}`);
    const { peakMb } = inItsProcess(path.join(folder, 'cache'), await manyOf(jpegs, folder, count));
    await rm(folder, { recursive: true, force: true });
    return peakMb;
  };
  const runs = 3;
  const peaks = async (/** @type {number} */ count) => {
    const found = [];
    for (let run = 0; run < (count === few ? runs : 1); run++) found.push(await peak(count));
    return spread(found).median;
  };
  const [atFew, atMany] = [await peaks(few), await peaks(many)];
  return {
    what: `most memory held while making ${few} and ${many} photos of 12 million pixels ready`,
    ours: `${Math.round(atFew)} MB and ${Math.round(atMany)} MB (${atMany >= atFew ? '+' : ''}${Math.round((100 * (atMany - atFew)) / atFew)} %)`,
    runs: 1,
    aim: 'the same within 20 %',
  };
}
