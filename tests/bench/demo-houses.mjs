/** The demo houses, as the timings use them: copied aside, so that nothing of them is touched. */
import { cp, readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { composeHouse } from '../../dist/build.js';

/** The day that ages are counted to in every timing. */
export const AS_OF = '2026-11-20';

/** The front door, as a path. */
export const PROGRAM = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));

/**
 * Copies the demo houses below a folder.
 * @param {string} to
 * @returns {Promise<string[]>} their names
 */
export async function copyDemoHouses(to) {
  const from = fileURLToPath(new URL('../../content', import.meta.url));
  await cp(from, to, { recursive: true });
  return (await readdir(to)).filter((name) => !name.startsWith('.')).sort();
}

/**
 * The order for one house of a content folder, all paths below `base`.
 * @param {string} base holds content/ and receives out/
 * @param {string} name
 * @param {readonly import('../../dist/packet/packet.js').EditionName[]} editions
 * @returns {import('../../dist/build.js').HouseOrder}
 */
export function orderFor(base, name, editions) {
  return {
    folder: path.join(base, 'content', name),
    shown: `content/${name}`,
    asOf: AS_OF,
    editions,
    out: path.join(base, 'out'),
    outShown: 'out',
    paper: 'letter',
  };
}

/**
 * A house composed and with its photos ready. Throws, naming the first error, if it has one: a timing of a
 * house that makes nothing would look very good.
 * @param {import('../../dist/build.js').HouseOrder} order
 */
export async function composed(order) {
  const house = await composeHouse(order);
  if (house.failed) throw new Error(`${order.shown} has an error: ${firstError(house.locate())}`);
  return house;
}

/** @param {readonly import('../../dist/diagnostics/report.js').Located[]} located */
export function firstError(located) {
  const error = located.find(({ diagnostic }) => diagnostic.severity === 'error')?.diagnostic;
  return error === undefined ? 'none' : `${error.code}, ${error.message}`;
}
