/**
 * A house of 2 GB written into a bag and verified, beside `sha256sum` over the same files in the same run.
 *
 * All is read from the system's memory: the files are read once before anything is timed. Writing ends when the bag
 * is on the disk; the other programs write nothing. `sha256sum` of Debian hashes without the processor's own
 * instructions for SHA-256, Node's OpenSSL with them, so `openssl` stands beside it as well.
 */
import { spawnSync } from 'node:child_process';
import { createCipheriv } from 'node:crypto';
import { mkdir, open, rm } from 'node:fs/promises';
import path from 'node:path';
import { openBag } from '../../dist/archive/open-bag.js';
import { surveyFolder } from '../../dist/archive/survey-folder.js';
import { verifyBag } from '../../dist/archive/verify-bag.js';
import { bagHouse } from '../../dist/archive/write-bag.js';
import { AS_OF } from './demo-houses.mjs';
import { inMs, runProgram, timeChildren, timeInside } from './measure.mjs';

/** @typedef {import('./table.mjs').Row} Row */
/** @typedef {import('./measure.mjs').Timing} Timing */

const MEGABYTE = 2 ** 20;
const AIM = 'at least 80 % of its speed';

/**
 * @param {string} base temporary folder
 * @param {number} megabytes
 * @param {number} runs
 * @returns {Promise<Row[]>}
 */
export async function timeBags(base, megabytes, runs) {
  const house = path.join(base, 'house');
  const files = await makeFiles(house, megabytes);
  await runProgram('cat', files, 600_000).catch(() => undefined);
  const sha = has('sha256sum') ? await timeChildren(runs, () => runProgram('sha256sum', files)) : undefined;
  const ssl = has('openssl', 'version')
    ? await timeChildren(runs, () => runProgram('openssl', ['dgst', '-sha256', ...files]))
    : undefined;
  const rows = [];
  for (const form of /** @type {const} */ (['folder', 'zip', 'tar']))
    rows.push(...(await timeForm(base, house, form, megabytes, runs, sha, ssl)));
  await rm(base, { recursive: true, force: true });
  return rows;
}

/**
 * @param {string} base
 * @param {string} house
 * @param {'folder' | 'zip' | 'tar'} form
 * @param {number} megabytes
 * @param {number} runs
 * @param {Timing | undefined} sha
 * @param {Timing | undefined} ssl
 * @returns {Promise<Row[]>}
 */
async function timeForm(base, house, form, megabytes, runs, sha, ssl) {
  const to = path.join(base, 'archive');
  let peak = 0;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage.rss());
  }, 20);
  const clear = () => rm(to, { recursive: true, force: true });
  let bag = '';
  const written = await timeInside(
    runs,
    async () => {
      const { files } = await surveyFolder(house, 'house');
      const result = await bagHouse({
        house: 'house',
        asOf: AS_OF,
        to,
        shown: 'archive',
        form,
        description: 'A made house',
        program: 'bench',
        payload: files.map((one) => ({ path: `originals/${one.path}`, source: one })),
      });
      if (result.kind !== 'written') throw new Error(`no bag: ${JSON.stringify(result)}`);
      bag = path.join(to, path.basename(result.shown));
    },
    clear,
  );
  const verified = await timeInside(runs, async () => {
    const { verdict } = await verifyBag(await openBag(bag), bag);
    if (verdict !== 'whole') throw new Error(`the bag is ${verdict}`);
  });
  clearInterval(watch);
  await clear();
  const what = `${megabytes} MB in ${COUNT} files as a bag, ${form}`;
  const aim = form === 'folder' ? AIM : '';
  return [
    row(
      `${what}: written, to the disk; memory at most ${Math.round(peak / MEGABYTE)} MB`,
      written,
      sha,
      ssl,
      aim,
    ),
    row(`${what}: verified`, verified, sha, ssl, aim),
  ];
}

/**
 * @param {string} what
 * @param {Timing} ours
 * @param {Timing | undefined} sha
 * @param {Timing | undefined} ssl
 * @param {string} aim
 * @returns {Row}
 */
function row(what, ours, sha, ssl, aim) {
  const share = (/** @type {Timing} */ other) =>
    `${Math.round((other.clock.median / ours.clock.median) * 100)} %`;
  const beside = [
    sha === undefined ? 'no sha256sum here' : `sha256sum ${inMs(sha.clock)}: ${share(sha)} of its speed`,
    ...(ssl === undefined ? [] : [`openssl dgst ${inMs(ssl.clock)}: ${share(ssl)}`]),
  ].join('; ');
  return {
    what,
    ours: inMs(ours.clock),
    cpu: ours.cpu === undefined ? '' : inMs(ours.cpu),
    runs: ours.clock.runs,
    beside,
    aim,
  };
}

/** As many as a house has: some films, many photos, and papers. */
const COUNT = 440;

/**
 * @param {string} folder
 * @param {number} megabytes
 * @returns {Promise<string[]>}
 */
async function makeFiles(folder, megabytes) {
  await mkdir(folder, { recursive: true });
  // A stream cipher makes bytes that nothing can pack, the same each time.
  const noise = createCipheriv('aes-128-ctr', Buffer.alloc(16, 1), Buffer.alloc(16));
  const sizes = [
    ...Array.from({ length: 4 }, () => 0.15),
    ...Array.from({ length: 196 }, () => 0.39 / 196),
    ...Array.from({ length: 240 }, () => 0.01 / 240),
  ];
  const files = [];
  for (const [index, share] of sizes.entries()) {
    const file = path.join(folder, `file-${String(index).padStart(3, '0')}.bin`);
    const handle = await open(file, 'w');
    let left = Math.round(share * megabytes * MEGABYTE);
    while (left > 0) {
      const piece = noise.update(Buffer.alloc(Math.min(left, 8 * MEGABYTE)));
      await handle.write(piece);
      left -= piece.length;
    }
    await handle.sync();
    await handle.close();
    files.push(file);
  }
  return files;
}

/**
 * @param {string} program
 * @param {string} word
 */
function has(program, word = '--version') {
  return spawnSync(program, [word], { stdio: 'ignore' }).error === undefined;
}
