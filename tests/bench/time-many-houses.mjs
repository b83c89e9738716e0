/**
 * Many houses one after another in a process of their own: how long one takes and whether memory grows.
 *
 * Run as a program it does the work and prints its figures as JSON; that keeps everything else that was timed
 * out of its memory.
 */
import { execFile } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { buildHouse, EDITION_NAMES } from '../../dist/build.js';
import { firstError, orderFor } from './demo-houses.mjs';
import { MADE, writeMadeHouses } from './made-houses.mjs';
import { inMs, spread } from './measure.mjs';

const MEGABYTE = 2 ** 20;

/**
 * @param {string} base temporary folder
 * @param {number} count houses, a multiple of 10
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timeManyHouses(base, count) {
  const words = ['--expose-gc', fileURLToPath(import.meta.url), base, String(count)];
  const { stdout } = await promisify(execFile)(process.execPath, words, { maxBuffer: 2 ** 24 });
  const found = /** @type {Awaited<ReturnType<typeof buildMany>>} */ (JSON.parse(stdout));
  const each = (/** @type {readonly { house: number }[]} */ list, /** @type {(one: any) => string} */ say) =>
    list.map(say).join(' · ');
  return [
    {
      what: `${count} made houses without photos (${MADE.rooms} rooms, ${MADE.systems} systems, ${MADE.work} pieces of work; ${found.sheets} sheets a house), all ${EDITION_NAMES.length} editions, one process: one house`,
      ours: `${inMs(spread(found.clockMs))}; ${(found.totalMs / count / 1000).toFixed(2)} s a house over all`,
      cpu: inMs(spread(found.cpuMs)),
      runs: count,
      aim: 'under 250 ms a house',
    },
    {
      what: `the same: memory at house ${each(found.memory, ({ house }) => String(house))}`,
      ours: `resident ${each(found.memory, ({ resident }) => `${resident} MB`)}; live heap after collecting ${each(found.memory, ({ heap }) => `${heap} MB`)}`,
      runs: 1,
      aim: 'flat',
    },
  ];
}

/**
 * @param {string} base
 * @param {number} count
 */
async function buildMany(base, count) {
  const houses = await writeMadeHouses(path.join(base, 'content'), count);
  const [clockMs, cpuMs] = [/** @type {number[]} */ ([]), /** @type {number[]} */ ([])];
  const memory = [];
  let sheets = 0;
  const started = performance.now();
  for (const [index, { folder }] of houses.entries()) {
    const cpuBefore = process.cpuUsage();
    const before = performance.now();
    const { made, located } = await buildHouse(orderFor(base, path.basename(folder), EDITION_NAMES));
    clockMs.push(performance.now() - before);
    const { user, system } = process.cpuUsage(cpuBefore);
    cpuMs.push((user + system) / 1000);
    if (made.length !== EDITION_NAMES.length)
      throw new Error(`${path.basename(folder)} made nothing: ${firstError(located)}`);
    sheets += made.reduce((sum, one) => sum + one.sheets, 0);
    const house = index + 1;
    if ([count / 10, count / 2, count].includes(house)) memory.push({ house, ...memoryNow() });
  }
  return { clockMs, cpuMs, memory, totalMs: performance.now() - started, sheets: Math.round(sheets / count) };
}

/** Resident as it stands; the live heap after a collection, which tells a leak from a lazy collector. */
function memoryNow() {
  const resident = Math.round(process.memoryUsage.rss() / MEGABYTE);
  globalThis.gc?.();
  return { resident, heap: Math.round(process.memoryUsage().heapUsed / MEGABYTE) };
}

const [, program, base, count] = process.argv;
if (program === fileURLToPath(import.meta.url) && base !== undefined)
  process.stdout.write(JSON.stringify(await buildMany(base, Number(count))));
