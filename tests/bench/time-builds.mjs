/** A whole build of each demo house: without and with its photo cache, as a process and within one. */
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { buildHouse, PUBLISHED } from '../../dist/build.js';
import { AS_OF, firstError, orderFor, PROGRAM } from './demo-houses.mjs';
import { inMs, runProgram, timeChildren, timeInside } from './measure.mjs';

/**
 * @param {string} base holds content/ with the demo houses
 * @param {readonly string[]} names
 * @param {number} runs
 * @returns {Promise<import('./table.mjs').Row[]>}
 */
export async function timeBuilds(base, names, runs) {
  const bare = await timeChildren(runs, () => runProgram(process.execPath, ['-e', '0']));
  const beside = `Node started for nothing: ${inMs(bare.clock)}`;
  const rows = [];
  for (const name of names) {
    const out = path.join(base, 'out');
    const emptied = () => rm(out, { recursive: true, force: true });
    const build = () =>
      runProgram(process.execPath, [
        PROGRAM,
        ...['build', name, '--content', path.join(base, 'content'), '--out', out, '--as-of', AS_OF],
      ]);
    const cold = await timeChildren(runs, build, emptied);
    const warm = await timeChildren(runs, build);
    const order = orderFor(base, name, PUBLISHED);
    const inside = async () => {
      const { made, located } = await buildHouse(order);
      if (made.length !== PUBLISHED.length) throw new Error(`${name} made nothing: ${firstError(located)}`);
    };
    await inside();
    const within = await timeInside(runs, inside);
    for (const [how, timing, peer] of /** @type {const} */ ([
      ['cold: no photo cache, whole process', cold, beside],
      ['warm: photo cache there, whole process', warm, beside],
      ['warm, within one process', within, ''],
    ]))
      rows.push({
        what: `${name}, ${PUBLISHED.length} editions, ${how}`,
        ours: inMs(timing.clock),
        cpu: timing.cpu === undefined ? '' : inMs(timing.cpu),
        runs,
        beside: peer,
      });
  }
  return rows;
}
