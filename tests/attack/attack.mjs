/**
 * Long attacks on the compiled program, with their counts as words: `npm run attack -- kill 200`.
 *
 * kill: so many kills, shared among all commands that write. faults: a full disk, closed files, files that change, two runs at
 * once and a jumping clock, so many of each for every command; or one of them by its name. mutate: so many mutated house
 * folders. The suite runs shorter ones of the kills and the mutated houses. `--only "costs import,new"` takes these commands
 * alone. A seed gives the same attack again: `--seed 7`; of the mutated
 * houses `mutate 1 --from 4711` gives one again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { seeded } from '../tools/seeded.mjs';
import { changeAll } from './fault-changing.mjs';
import { jumpAll } from './fault-clock.mjs';
import { COMMANDS } from './fault-commands.mjs';
import { fillAll } from './fault-disk.mjs';
import { closeAll } from './fault-rights.mjs';
import { runTwo } from './fault-two.mjs';
import { killAll } from './kill.mjs';
import { mutateAll } from './mutate.mjs';

/** Undefined: this machine does not allow it. */
const FAULTS = { disk: fillAll, rights: closeAll, changing: changeAll, two: runTwo, clock: jumpAll };
const ATTACKS = ['kill', 'mutate', 'faults', ...Object.keys(FAULTS)];

const words = process.argv.slice(2);
const numberAfter = (/** @type {string} */ word, /** @type {number} */ otherwise) => {
  const at = words.indexOf(word);
  return at < 0 ? otherwise : Number(words.splice(at, 2)[1]);
};
/** @param {string} word */
const textAfter = (word) => {
  const at = words.indexOf(word);
  return at < 0 ? undefined : words.splice(at, 2)[1]?.split(',');
};
/** Names of commands or pairs; all where none is given. */
const only = textAfter('--only');
const seed = numberAfter('--seed', 1);
const from = numberAfter('--from', 0);
const [what = 'kill', asked = '200'] = words;
const count = Number(asked);
const scratch = mkdtempSync(path.join(tmpdir(), 'sillplate-attack-'));
const say = (/** @type {string} */ line) => void process.stdout.write(`${line}\n`);

/** @param {readonly unknown[] | undefined} rows */
const mustBeSome = (rows) => {
  if (rows?.length === 0) throw new Error(`nothing is called ${only?.join(', ')}`);
};

/** @param {readonly { command: string, broken: string[] }[]} rows */
const brokenIn = (rows) => rows.flatMap(({ command, broken }) => broken.map((one) => `${command}, ${one}`));

async function faults() {
  const broken = [];
  for (const [name, attack] of Object.entries(FAULTS)) {
    if (what !== 'faults' && what !== name) continue;
    say(`\n${name}`);
    const rows = await attack(scratch, count, seeded(seed), say, only);
    if (rows === undefined) say('skipped: it needs root, and a machine where a small disk can be mounted');
    mustBeSome(rows);
    broken.push(...brokenIn(rows ?? []));
  }
  return broken;
}

try {
  if (!ATTACKS.includes(what)) throw new Error(`there is no attack “${what}”: ${ATTACKS.join(', ')}`);
  if (![count, seed, from].every(Number.isSafeInteger) || count < 1)
    throw new Error('a count, a seed and a first number are whole numbers');
  const broken =
    what === 'kill'
      ? brokenIn(
          await killAll(scratch, Math.ceil(count / (only ?? COMMANDS).length), seeded(seed), say, only),
        )
      : what === 'mutate'
        ? (await mutateAll(scratch, count, seed, say, from)).wrong
        : await faults();
  if (what !== 'mutate') for (const one of broken.slice(0, 20)) say(one);
  process.exitCode = broken.length === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
