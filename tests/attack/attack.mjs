/**
 * Long attacks on the compiled program, with their counts as words: `npm run attack -- kill 200`.
 *
 * The suite runs shorter ones of the same kind. A seed gives the same attack again: `--seed 7`; of the mutated houses
 * `mutate 1 --from 4711` gives one again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { killAll } from './kill.mjs';
import { mutateAll } from './mutate.mjs';
import { seeded } from './seeded.mjs';

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
try {
  if (what !== 'kill' && what !== 'mutate') throw new Error(`there is no attack “${what}”: kill, mutate`);
  const broken =
    what === 'kill'
      ? (await killAll(scratch, Math.ceil(Number(count) / 4), seeded(seed), say)).flatMap(
          ({ command, broken: list }) => list.map((one) => `${command}, ${one}`),
        )
      : (await mutateAll(scratch, Number(count), seed, say, from)).wrong;
  if (what === 'kill') for (const one of broken.slice(0, 20)) say(one);
  process.exitCode = broken.length === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
