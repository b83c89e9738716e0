/** The most memory that a program and all it starts hold at once, by Linux's own count. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** Often enough for a peak of a few tens of milliseconds. */
const EVERY_MS = 8;

/**
 * Runs a program and watches its tree of processes. Shared pages count once (PSS, man 5 proc), so that many processes
 * of one program are not held against it. Undefined where Linux doesn't say.
 * @param {string} program
 * @param {readonly string[]} words
 * @returns {Promise<number | undefined>} in MB of 2^20 bytes
 */
export function peakOfTree(program, words) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, { stdio: 'ignore' });
    let mostKb = 0;
    const look = () => {
      if (child.pid !== undefined) mostKb = Math.max(mostKb, heldByTree(child.pid));
    };
    const watch = setInterval(look, EVERY_MS);
    child.on('error', (trouble) => {
      clearInterval(watch);
      reject(trouble);
    });
    child.on('close', () => {
      clearInterval(watch);
      resolve(mostKb === 0 ? undefined : mostKb / 1024);
    });
  });
}

/**
 * What a process and all it started hold now, 0 where Linux doesn't say.
 * @param {number} pid
 * @returns {number} kB
 */
export function heldByTree(pid) {
  return read(`/proc/${pid}/task/${pid}/children`)
    .split(' ')
    .filter((word) => word !== '')
    .reduce((sum, child) => sum + heldByTree(Number(child)), heldBy(pid));
}

/** @param {number} pid */
const heldBy = (pid) => Number(/^Pss:\s+(\d+) kB$/m.exec(read(`/proc/${pid}/smaps_rollup`))?.[1] ?? 0);

/**
 * A process may end between two looks.
 * @param {string} file
 */
function read(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
