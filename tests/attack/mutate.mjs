/** Many mutated house folders over a few processes; one that thinks for more than five seconds is ended and told. */
import { fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const PROCESS = fileURLToPath(new URL('mutate-process.mjs', import.meta.url));
/** A check that takes longer counts as hanging. */
const PATIENCE_MS = 5000;
/** A process that waits for something that never comes uses no processor time at all. */
const LONGEST_MS = 60_000;
/** Until the program is loaded and the photos are ready. */
const PREPARING_MS = 600_000;
const BATCH = 1000;

/** @typedef {{ houses: number, withErrors: number, whole: number, slowestMs: number, mostMb: number }} Said */

/**
 * @param {string} scratch
 * @param {number} count
 * @param {number} seed
 * @param {(line: string) => void} say
 * @param {number} [from] the first number
 */
export async function mutateAll(scratch, count, seed, say, from = 0) {
  const wrong = /** @type {string[]} */ ([]);
  /** @type {Said} */
  const all = { houses: 0, withErrors: 0, whole: 0, slowestMs: 0, mostMb: 0 };
  // As it is found: a long run is stopped and looked at.
  const tell = (/** @type {string} */ line) => {
    wrong.push(line);
    say(line);
  };
  let next = from;
  const lane = async (/** @type {number} */ number) => {
    // The photos, in a process of their own: what that takes is another question, and `npm run bench -- photos` asks it.
    await batch(path.join(scratch, String(number)), from, from, seed, { wrong, all, tell });
    while (next < from + count) {
      let at = next;
      next = Math.min(from + count, next + BATCH);
      const end = next;
      // After one that hung, the batch goes on behind it.
      while (at < end)
        at = await batch(path.join(scratch, String(number)), at, end, seed, { wrong, all, tell });
      say(
        `${all.houses} houses (${all.whole} as a whole), ${all.withErrors} with errors, slowest ${all.slowestMs.toFixed(0)} ms, most memory ${all.mostMb.toFixed(0)} MB, ${wrong.length} wrong`,
      );
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, availableParallelism()) }, (_, number) => lane(number)));
  return { ...all, wrong };
}

/**
 * @param {string} folder
 * @param {number} first
 * @param {number} end
 * @param {number} seed
 * @param {{ wrong: readonly string[], all: Said, tell: (line: string) => void }} found added to
 * @returns {Promise<number>} the number to go on with
 */
function batch(folder, first, end, seed, { wrong, all, tell }) {
  return new Promise((resolve, reject) => {
    const words = [folder, String(first), String(end), String(seed)];
    // Left alone, V8 collects nothing until it holds a good part of a large machine, and the figure would say little.
    const child = fork(PROCESS, words, { stdio: 'inherit', execArgv: ['--max-old-space-size=200'] });
    let at = first - 1;
    let finished = false;
    let since = { clock: performance.now(), cpu: 0 };
    const watch = setInterval(() => {
      const cpu = cpuMs(child.pid ?? 0);
      const waited = performance.now() - since.clock;
      const isPreparing = at < first;
      // Processor time where it can be read: on a busy machine the clock says little of the program.
      const thought = cpu === undefined ? waited : cpu - since.cpu;
      if (isPreparing ? waited < PREPARING_MS : thought < PATIENCE_MS && waited < LONGEST_MS) return;
      tell(
        `house ${at}: no answer in ${(thought / 1000).toFixed(1)} s of thinking, ${(waited / 1000).toFixed(1)} s in all`,
      );
      child.kill('SIGKILL');
    }, 500);
    child.on('message', (/** @type {any} */ message) => {
      if (message.wrong !== undefined) tell(`house ${message.at}: ${message.wrong}`);
      else if (message.at !== undefined) {
        at = message.at;
        since = { clock: performance.now(), cpu: cpuMs(child.pid ?? 0) ?? 0 };
      }
      if (message.done === undefined) return;
      finished = true;
      for (const key of /** @type {const} */ (['houses', 'withErrors', 'whole']))
        all[key] += message.done[key];
      for (const key of /** @type {const} */ (['slowestMs', 'mostMb']))
        all[key] = Math.max(all[key], message.done[key]);
    });
    child.on('close', () => {
      clearInterval(watch);
      if (!finished && !wrong.some((one) => one.startsWith(`house ${at}:`)))
        tell(`house ${at}: the process ended`);
      if (!finished && at < first)
        reject(new Error(`a process of the houses from ${first} ended before the first`));
      else resolve(finished ? end : at + 1);
    });
  });
}

/**
 * Processor time of a process, all its threads, from Linux's own count (man 5 proc, utime and stime, in ticks of 10 ms).
 *
 * @param {number} pid
 */
function cpuMs(pid) {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
    // Fields 14 and 15; the name in brackets is field 2, so field 3 is the first here.
    return (Number(fields[11]) + Number(fields[12])) * 10;
  } catch {
    return undefined;
  }
}
