/**
 * Kills the program at random moments of every command that writes, and looks at what is left.
 *
 * What was there before is whole, what is new is whole or is not there, the owner's own files are as before or as after,
 * and the next run makes everything as if nothing had happened. Of a build with several processes the first alone is
 * killed: the others must end by themselves and write no more.
 */
import { brokenAfterFault, brokenAtTheEnd, COMMANDS, makeReady } from './fault-commands.mjs';
import { copyHome, foldersIn, writeFaultHouse } from './fault-house.mjs';
import { fingerprint, marked, program, Runner } from './program.mjs';

/** What a process that lost its parent may take to end, in milliseconds: one that is still loading hears of it when it has. */
const ORPHAN_MS = 5000;

/**
 * @param {string} scratch
 * @param {number} kills of each command
 * @param {() => number} random
 * @param {(line: string) => void} say
 * @param {readonly string[]} [only] names of commands; left out: all
 * @returns {Promise<{ command: string, kills: number, hit: number, broken: string[] }[]>}
 */
export async function killAll(scratch, kills, random, say, only = COMMANDS.map(({ name }) => name)) {
  const rows = [];
  const { origin, after, home } = foldersIn(scratch, 'origin', 'after', 'home');
  for (const command of COMMANDS.filter(({ name }) => only.includes(name))) {
    await writeFaultHouse(origin);
    await makeReady(command, { origin, after }, copyHome);
    const broken = /** @type {string[]} */ ([]);
    let hit = 0;
    let took = 0;
    for (let n = 0; n < kills; n++) {
      copyHome(origin, home);
      const runner = new Runner(home);
      // How long a run takes, with whatever else the machine is doing; looked at anew now and then.
      if (n % 10 === 0) {
        ({ took } = await runner.run(command.words(home, '2026-06-02')));
        await runner.end();
        copyHome(origin, home);
      }
      const killed = n % 10 === 0 ? new Runner(home) : runner;
      const moment = took * random() * 1.05;
      const ended = await killed.run(command.words(home, '2026-06-02'), moment);
      if (ended.status === null) hit++;
      await killed.end();
      const orphans = await orphansOf(home);
      const wrong = brokenAfterFault(command, { origin, after, home });
      const next = await program(command.words(home, '2026-06-02'));
      for (const one of [orphans, wrong, brokenAtTheEnd(command, { after, home }, next)])
        if (one !== undefined)
          broken.push(`kill ${n} at ${moment.toFixed(0)} of ${took.toFixed(0)} ms: ${one}`);
    }
    say(`${command.name}: ${kills} kills, ${hit} before the end, ${broken.length} broken`);
    rows.push({ command: command.name, kills, hit, broken });
  }
  return rows;
}

/** Processes that the killed one had started must be gone soon, and write nothing from then on. @param {string} home */
async function orphansOf(home) {
  const until = performance.now() + ORPHAN_MS;
  while (marked(home).length > 0) {
    if (performance.now() > until) return `${marked(home).length} processes go on without their parent`;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const left = fingerprint(home);
  await new Promise((resolve) => setTimeout(resolve, 100));
  return left === fingerprint(home) ? undefined : 'something is still written';
}
