/** The compiled program, in a process that can be killed or in this one, and folders as one text that can be compared. */
import { fork } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { run } from '../../dist/cli.js';
import { quietly } from './quiet-terminal.mjs';

const PROCESS = fileURLToPath(new URL('run-process.mjs', import.meta.url));

/**
 * @typedef {object} Ended
 * @property {number | null} status null: it was killed
 * @property {string} out
 * @property {string} error
 * @property {number} took milliseconds
 */

/** Runs it in this process. @param {readonly string[]} words @returns {Promise<Ended>} */
export async function program(words) {
  const began = performance.now();
  const { terminal, said } = quietly();
  const status = await run(words, terminal);
  return { status, ...said, took: performance.now() - began };
}

/** A command on the small house of these attacks takes seconds. */
const PATIENCE_MS = 180_000;

/** The same, or an error that names what hangs. @template T @param {Promise<T>} work @param {string} what @returns {Promise<T>} */
export async function within(work, what) {
  /** @type {NodeJS.Timeout | undefined} */
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what}: a run hangs`)), PATIENCE_MS);
  });
  try {
    return await Promise.race([work, /** @type {Promise<T>} */ (late)]);
  } finally {
    clearTimeout(timer);
  }
}

/** Found in the environment of every process that one run of the program starts. */
const MARK = 'SILLPLATE_ATTACK';

/** A process of its own, which has read the program already. */
export class Runner {
  /** @param {string} [mark] by which it and those that it starts are found */
  constructor(mark = '') {
    this.child = fork(PROCESS, [], { stdio: 'inherit', env: { ...process.env, [MARK]: mark } });
    /** @type {Promise<void>} */
    this.ready = new Promise((resolve, reject) => {
      this.child.once('message', () => resolve());
      this.child.once('error', reject);
    });
    /** @type {Promise<void>} */
    this.ended = new Promise((resolve) => this.child.once('exit', () => resolve()));
  }

  /**
   * @param {readonly string[]} words
   * @param {number} [killAfter] milliseconds; left out: it may end
   * @returns {Promise<Ended>}
   */
  async run(words, killAfter) {
    await this.ready;
    const began = performance.now();
    /** @type {Promise<Omit<Ended, 'took'>>} */
    const answer = new Promise((resolve) => this.child.once('message', resolve));
    this.child.send(words);
    const timer =
      killAfter === undefined ? undefined : setTimeout(() => this.child.kill('SIGKILL'), killAfter);
    const none = this.ended.then(() => ({ status: null, out: '', error: '' }));
    const got = await Promise.race([answer, none]);
    clearTimeout(timer);
    return { ...got, took: performance.now() - began };
  }

  async end() {
    this.child.kill('SIGKILL');
    await this.ended;
  }
}

/** Numbers of the processes that bear a mark; none where the system does not tell (other systems than Linux). @param {string} mark */
export function marked(mark) {
  if (!existsSync('/proc/self/environ')) return [];
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name) && Number(name) !== process.pid)
    .filter((name) => {
      try {
        return readFileSync(`/proc/${name}/environ`, 'utf8').split('\0').includes(`${MARK}=${mark}`);
      } catch {
        // It has ended, or is somebody else's.
        return false;
      }
    })
    .map(Number);
}

/**
 * One line a file: its path and digest; of a file its digest alone. Undefined if nothing lies there.
 *
 * @param {string} folder
 * @param {(file: string) => boolean} [passes] by path from the folder
 */
export function fingerprint(folder, passes = () => true) {
  if (!existsSync(folder)) return undefined;
  const digest = (/** @type {string} */ file) =>
    createHash('sha256').update(readFileSync(file)).digest('hex');
  if (!statSync(folder).isDirectory()) return digest(folder);
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => passes(path.relative(folder, file)))
    .map((file) => `${path.relative(folder, file)} ${digest(file)}`)
    .sort()
    .join('\n');
}
