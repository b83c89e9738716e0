/** Many mutated house folders over a few processes; one that falls silent for five seconds is ended and told. */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const PROCESS = fileURLToPath(new URL('mutate-process.mjs', import.meta.url));
const CONTENT = fileURLToPath(new URL('../../content', import.meta.url));
/** A check that takes longer counts as hanging. */
const PATIENCE_MS = 5000;
const BATCH = 2000;

/**
 * @param {string} scratch
 * @param {number} count
 * @param {number} seed
 * @param {(line: string) => void} say
 */
export async function mutateAll(scratch, count, seed, say) {
  const wrong = /** @type {string[]} */ ([]);
  const all = { houses: 0, withErrors: 0, slowestMs: 0, mostMb: 0 };
  let next = 0;
  const lane = async (/** @type {number} */ number) => {
    while (next < count) {
      const first = next;
      next = Math.min(count, next + BATCH);
      let from = first;
      const end = next;
      // After one that hung, the batch goes on behind it.
      while (from < end) from = await batch(path.join(scratch, String(number)), from, end);
      say(
        `${all.houses} houses, ${all.withErrors} with errors, slowest ${all.slowestMs.toFixed(0)} ms, most memory ${all.mostMb.toFixed(0)} MB, ${wrong.length} wrong`,
      );
    }
  };
  /** @param {string} folder @param {number} from @param {number} end @returns {Promise<number>} */
  const batch = (folder, from, end) =>
    new Promise((resolve) => {
      const child = fork(PROCESS, [CONTENT, folder, String(from), String(end), String(seed)], {
        stdio: 'inherit',
      });
      let at = from - 1;
      let timer = setTimeout(() => undefined, 0);
      const watch = () => {
        clearTimeout(timer);
        // The first waits for the program to be loaded and for the photos.
        timer = setTimeout(
          () => {
            wrong.push(`house ${at}: no answer in ${PATIENCE_MS} ms`);
            child.kill('SIGKILL');
          },
          PATIENCE_MS * (at < from ? 40 : 1),
        );
      };
      watch();
      let finished = false;
      child.on('message', (/** @type {any} */ message) => {
        if (message.wrong !== undefined) wrong.push(`house ${message.at}: ${message.wrong}`);
        else if (message.at !== undefined) at = message.at;
        if (message.done !== undefined) {
          finished = true;
          all.houses += message.done.houses;
          all.withErrors += message.done.withErrors;
          all.slowestMs = Math.max(all.slowestMs, message.done.slowestMs);
          all.mostMb = Math.max(all.mostMb, message.done.mostMb);
        }
        watch();
      });
      child.on('close', () => {
        clearTimeout(timer);
        if (!finished && !wrong.some((one) => one.startsWith(`house ${at}:`)))
          wrong.push(`house ${at}: the process ended`);
        resolve(finished ? end : at + 1);
      });
    });
  await Promise.all(Array.from({ length: Math.max(1, availableParallelism()) }, (_, number) => lane(number)));
  return { ...all, wrong };
}
