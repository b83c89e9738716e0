/**
 * One process of the mutated houses: changes a file of a house folder, reads the folder, and tells what must not be.
 * Its parent ends it if it thinks too long.
 *
 * Words: scratch folder, first number, behind the last number, seed. The number and the seed alone make the case.
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { seeded } from '../tools/seeded.mjs';
import { checkMutant } from './check-mutant.mjs';
import { copyHouses } from './mutant-houses.mjs';
import { mutateBytes } from './mutate-bytes.mjs';
import { mutateTree } from './mutate-tree.mjs';

const [scratch = '', first = '0', end = '0', seed = '1'] = process.argv.slice(2);
/** What a process may hold, whatever it is given. */
const MOST_MB = 500;
/** And how long it may think. */
const MOST_MS = 5000;

const out = path.join(scratch, 'out');
const { demos, small } = copyHouses(path.join(scratch, 'houses'));

// The photos are made ready once, before anybody counts seconds.
for (const { folder, name } of [...demos, ...small]) await checkMutant(folder, name, { whole: true, out });
process.send?.({ at: Number(first) - 1 });

const said = { houses: 0, withErrors: 0, whole: 0, slowestMs: 0, mostMb: 0 };
for (let n = Number(first); n < Number(end); n++) {
  const random = seeded(Number(seed) * 1_000_003 + n);
  /** @template T @param {readonly T[]} list */
  const oneOf = (list) => list[Math.floor(random() * list.length)];
  // A demo house has forty photos to be looked at each time, and takes ten times as long as a small one.
  const house = oneOf(random() < 0.15 ? demos : small);
  // A changed picture or paper is only opened when the whole house is checked, and that takes longest.
  const isPicture = random() < 0.01 && house !== undefined && house.pictures.length > 0;
  const source = house === undefined ? undefined : oneOf(isPicture ? house.pictures : house.texts);
  if (house === undefined || source === undefined) throw new Error('a house without files');
  const whole = isPicture || n % 50 === 0;
  const isTree = !isPicture && /\.ya?ml$/i.test(source.file) && random() < 0.5;
  const file = path.join(house.folder, source.file);
  writeFileSync(file, isTree ? mutateTree(source.bytes, random) : mutateBytes(source.bytes, random));
  process.send?.({ at: n });
  const before = process.cpuUsage();
  const { wrong, hasErrors } = await checkMutant(house.folder, house.name, { whole, out });
  const { user, system } = process.cpuUsage(before);
  const took = user + system;
  said.houses++;
  if (whole) said.whole++;
  if (hasErrors) said.withErrors++;
  said.slowestMs = Math.max(said.slowestMs, took / 1000);
  // The most that was ever held, so peaks within a check are seen too.
  const mb = process.resourceUsage().maxRSS / 1024;
  said.mostMb = Math.max(said.mostMb, mb);
  if (took > 1000 * MOST_MS) process.send?.({ at: n, wrong: `${(took / 1e6).toFixed(1)} s of thinking` });
  if (mb > MOST_MB) {
    // Those behind it begin in a new process.
    await new Promise((sent) => process.send?.({ at: n, wrong: `${mb.toFixed(0)} MB were held` }, sent));
    process.exit(1);
  }
  if (wrong !== undefined) process.send?.({ at: n, wrong });
  writeFileSync(file, source.bytes);
}
process.send?.({ done: said });
