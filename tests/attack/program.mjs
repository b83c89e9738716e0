/** The compiled program as a process that can be killed, and folders as one text that can be compared. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const PROGRAM = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));

/**
 * @param {readonly string[]} words
 * @param {number} [killAfter] milliseconds; left out: it may end
 * @returns {Promise<{ status: number | null, killed: boolean, out: string, error: string, took: number }>}
 */
export function program(words, killAfter) {
  const began = performance.now();
  const child = spawn(process.execPath, [PROGRAM, ...words], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let error = '';
  child.stdout.setEncoding('utf8').on('data', (text) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text) => (error += text));
  const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfter);
  return new Promise((resolve) => {
    child.on('close', (status, signal) => {
      clearTimeout(timer);
      resolve({ status, killed: signal === 'SIGKILL', out, error, took: performance.now() - began });
    });
  });
}

/**
 * One line a file: its path and digest. Undefined if there is no such folder.
 *
 * @param {string} folder
 * @param {(file: string) => boolean} [passes] by path from the folder
 */
export function fingerprint(folder, passes = () => true) {
  if (!existsSync(folder)) return undefined;
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => passes(path.relative(folder, file)))
    .map(
      (file) =>
        `${path.relative(folder, file)} ${createHash('sha256').update(readFileSync(file)).digest('hex')}`,
    )
    .sort()
    .join('\n');
}
