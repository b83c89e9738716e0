/** The Library of Congress's `bagit` for Python, which `prepare.mjs` puts into a folder of its own. */
import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Lacking } from './outside-programs.js';

const env = {
  ...process.env,
  PYTHONPATH: fileURLToPath(new URL('../../node_modules/.cache/python', import.meta.url)),
  PYTHONIOENCODING: 'utf-8',
};

const python = (...words: readonly string[]): SpawnSyncReturns<string> =>
  spawnSync('python3', words, { encoding: 'utf8', env });

export function lackingBagit(): Lacking {
  const some = python('-c', 'import bagit').status !== 0;
  return { some, words: some ? ' (skipped: bagit for Python not on this machine)' : '' };
}

/** Whether it takes the folder for a valid bag; its own words if it does not. */
export function validByBagit(folder: string): true | string {
  const run = python('-m', 'bagit', '--validate', '--quiet', folder);
  return run.status === 0 ? true : run.stderr || run.stdout || 'no words';
}

/** Makes a bag of a folder where it lies, by these algorithms. */
export function bagByBagit(folder: string, ...algorithms: readonly string[]): void {
  const run = python('-m', 'bagit', '--quiet', ...algorithms.map((name) => `--${name}`), folder);
  if (run.status !== 0) throw new Error(run.stderr);
}
