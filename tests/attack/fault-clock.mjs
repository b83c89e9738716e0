/**
 * A clock that jumps by years, back and forth, while every command runs; and files whose times lie in 1970 or 2099.
 *
 * The bytes are those of a run with a clock that goes right, and `build --stale` makes what changed and nothing else.
 */
import { readdirSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { brokenAtTheEnd, COMMANDS, commandNamed, makeReady } from './fault-commands.mjs';
import { copyHome, foldersIn, houseIn, OTHER, writeFaultHouse } from './fault-house.mjs';
import { program, within } from './program.mjs';

const YEARS_50 = 50 * 365 * 24 * 3600 * 1000;

/** @template T @param {() => number} random @param {() => Promise<T>} work @returns {Promise<T>} */
async function withJumpingClock(random, work) {
  const Right = globalThis.Date;
  const now = () => Right.now() + Math.round((random() - 0.5) * 2 * YEARS_50);
  const Jumping = new Proxy(Right, {
    construct: (target, args, made) => Reflect.construct(target, args.length === 0 ? [now()] : args, made),
    apply: () => new Right(now()).toString(),
    get: (target, name, from) => (name === 'now' ? now : Reflect.get(target, name, from)),
  });
  globalThis.Date = /** @type {DateConstructor} */ (Jumping);
  try {
    return await work();
  } finally {
    globalThis.Date = Right;
  }
}

/** Half of the files are of the year 1970, half of 2099. @param {string} home @param {() => number} random */
function oddTimes(home, random) {
  for (const file of readdirSync(home, { recursive: true, encoding: 'utf8' })) {
    const seconds = random() < 0.5 ? 1 : 4_070_908_800;
    utimesSync(path.join(home, file), seconds, seconds);
  }
}

/**
 * @param {string} scratch
 * @param {number} times of each command
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of commands; left out: all
 */
export async function jumpAll(scratch, times, random, say, only = COMMANDS.map(({ name }) => name)) {
  const { origin, after, home } = foldersIn(scratch, 'origin', 'after', 'home');
  const rows = [];
  for (const command of COMMANDS.filter(({ name }) => only.includes(name))) {
    await writeFaultHouse(origin);
    await makeReady(command, { origin, after }, copyHome);
    const broken = /** @type {string[]} */ ([]);
    for (let n = 0; n < times; n++) {
      copyHome(origin, home);
      oddTimes(home, random);
      const ended = await within(
        withJumpingClock(random, () => program(command.words(home, '2026-06-02'))),
        command.name,
      );
      const wrong = brokenAtTheEnd(command, { after, home }, ended);
      if (wrong !== undefined) broken.push(`run ${n}: ${wrong}`);
    }
    say(`${command.name}: ${times} runs, ${broken.length} broken`);
    rows.push({ command: command.name, times, broken });
  }
  if (only.includes('build --stale'))
    rows.push(await staleIsRight({ origin, after, home }, times, random, say));
  return rows;
}

/**
 * One house of two is changed, and its file gets a time before or after all others.
 *
 * @param {{ origin: string, after: string, home: string }} homes @param {number} times @param {() => number} random
 * @param {(line: string) => void} say
 */
async function staleIsRight({ origin, after, home }, times, random, say) {
  const command = commandNamed('build --stale');
  await writeFaultHouse(origin);
  await makeReady(command, { origin, after }, copyHome);
  const broken = /** @type {string[]} */ ([]);
  for (let n = 0; n < times; n++) {
    copyHome(origin, home);
    const day = '2026-06-01';
    const first = await withJumpingClock(random, () => program(command.words(home, day)));
    if (!first.out.includes('2 houses are up to date')) broken.push(`run ${n}: not up to date: ${first.out}`);
    const file = path.join(houseIn(home, OTHER), 'house.yaml');
    writeFileSync(file, `# ${n}\n`, { flag: 'a' });
    const seconds = random() < 0.5 ? 1 : 4_070_908_800;
    utimesSync(file, seconds, seconds);
    const second = await withJumpingClock(random, () => program(command.words(home, day)));
    if (!/1 house is up to date/.test(second.out) || !second.out.includes(`${OTHER}:`))
      broken.push(`run ${n}: the changed house was not the one made: ${second.out}${second.error}`);
  }
  say(`build --stale of one changed house: ${times} times, ${broken.length} broken`);
  return { command: 'build --stale of one changed house', times, broken };
}
