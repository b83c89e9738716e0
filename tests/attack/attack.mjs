/**
 * Long attacks on the compiled program, with their counts as words: `npm run attack -- kill 200`.
 *
 * kill: so many kills over all commands that write. faults: a full disk, closed files, files that change, two runs at
 * once and a jumping clock, so many of each for every command; or one of them by its name. mutate: so many mutated house
 * folders. The suite runs shorter ones of the same kind. A seed gives the same attack again: `--seed 7`; of the mutated
 * houses `mutate 1 --from 4711` gives one again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { changeAll } from './fault-changing.mjs';
import { jumpAll } from './fault-clock.mjs';
import { COMMANDS } from './fault-commands.mjs';
import { fillAll } from './fault-disk.mjs';
import { closeAll } from './fault-rights.mjs';
import { runTwo } from './fault-two.mjs';
import { killAll } from './kill.mjs';
import { mutateAll } from './mutate.mjs';
import { seeded } from './seeded.mjs';

/** Undefined: this machine does not allow it. */
const FAULTS = { disk: fillAll, rights: closeAll, changing: changeAll, two: runTwo, clock: jumpAll };
const ATTACKS = ['kill', 'mutate', 'faults', ...Object.keys(FAULTS)];

const words = process.argv.slice(2);
const numberAfter = (/** @type {string} */ word, /** @type {number} */ otherwise) => {
  const at = words.indexOf(word);
  return at < 0 ? otherwise : Number(words.splice(at, 2)[1]);
};
const seed = numberAfter('--seed', 1);
const from = numberAfter('--from', 0);
const [what = 'kill', count = '200'] = words;
const scratch = mkdtempSync(path.join(tmpdir(), 'sillplate-attack-'));
const say = (/** @type {string} */ line) => void process.stdout.write(`${line}\n`);

/** @param {readonly { command: string, broken: string[] }[]} rows */
const brokenIn = (rows) => rows.flatMap(({ command, broken }) => broken.map((one) => `${command}, ${one}`));

async function faults() {
  const broken = [];
  for (const [name, attack] of Object.entries(FAULTS)) {
    if (what !== 'faults' && what !== name) continue;
    say(`\n${name}`);
    const rows = await attack(path.join(scratch), Number(count), seeded(seed), say);
    if (rows === undefined) say('skipped: it needs root, and a machine where a small disk can be mounted');
    broken.push(...brokenIn(rows ?? []));
  }
  return broken;
}

try {
  if (!ATTACKS.includes(what)) throw new Error(`there is no attack “${what}”: ${ATTACKS.join(', ')}`);
  const broken =
    what === 'kill'
      ? brokenIn(await killAll(scratch, Math.ceil(Number(count) / COMMANDS.length), seeded(seed), say))
      : what === 'mutate'
        ? (await mutateAll(scratch, Number(count), seed, say, from)).wrong
        : await faults();
  if (what !== 'mutate') for (const one of broken.slice(0, 20)) say(one);
  process.exitCode = broken.length === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
