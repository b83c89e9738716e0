/**
 * New output takes the place of the old in one step, or the old stays.
 *
 * A folder is made beside its target under a name that begins with a dot, then two renames put it in place.
 * If the program is killed between the two, the old output lies whole under `.sillplate-old-…` and the next run
 * puts it back (`recover`). There is no moment at which a half-written folder bears the target's name, and a lock keeps
 * two programs from swapping one house at once.
 */
import { constants } from 'node:fs';
import { access, mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import { isRunning } from '../diagnostics/is-running.js';
import { alone, lockOf } from './folder-lock.js';
import { type FileToWrite, writeTree } from './write-tree.js';

const oldOf = (name: string): string => `.sillplate-old-${name}`;
const makingOf = (name: string, maker: number | string): string => `.sillplate-making-${name}-${maker}`;

/** What is written; a function where it rests on what lies there, which no other program changes while it is asked. */
export type FilesToWrite = readonly FileToWrite[] | (() => Promise<readonly FileToWrite[]>);

/**
 * Writes `files` as `parent/name`. `mayStill` is asked when all is written and nothing is in place yet, and throws if
 * what was written is no longer to be put there. Returns what went wrong with the disk; throws the system's error if a
 * file to be copied is gone, and what `mayStill` throws. In any case the earlier folder is as it was.
 */
export async function replaceFolder(
  parent: string,
  name: string,
  files: FilesToWrite,
  shown: string,
  mayStill: () => Promise<void> = async () => undefined,
): Promise<Diagnostic | undefined> {
  let all: readonly FileToWrite[] = [];
  try {
    await mkdir(parent, { recursive: true });
    await alone(parent, name, async () => {
      await putBack(parent, name);
      all = typeof files === 'function' ? await files() : files;
      await swap(parent, name, all, mayStill);
    });
    return undefined;
  } catch (thrown) {
    if (isMissingSource(thrown, all)) throw thrown;
    return diskTrouble(thrown, shown);
  }
}

async function swap(
  parent: string,
  name: string,
  files: readonly FileToWrite[],
  mayStill: () => Promise<void>,
): Promise<void> {
  const staging = path.join(parent, makingOf(name, process.pid));
  const target = path.join(parent, name);
  const old = path.join(parent, oldOf(name));
  try {
    const had = await exists(target);
    // A folder that is somebody else's could be moved aside, but not cleared away afterwards.
    if (had) await access(target, constants.W_OK);
    await rm(staging, { recursive: true, force: true });
    await writeTree(staging, files);
    await mayStill();
    if (had) await rename(target, old);
    try {
      await rename(staging, target);
    } catch (thrown) {
      if (had) await rename(old, target);
      throw thrown;
    }
    // The new one is in its place: that something of the old can't be cleared away is no failure any more.
    await rm(old, { recursive: true, force: true }).catch(() => undefined);
  } finally {
    await rm(staging, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** What a run that was killed between the two renames left under `.sillplate-old-…` goes back to its place. */
async function putBack(parent: string, name: string): Promise<void> {
  const old = path.join(parent, oldOf(name));
  if (!(await exists(old))) return;
  if (await exists(path.join(parent, name)))
    await rm(old, { recursive: true, force: true }).catch(() => undefined);
  else await rename(old, path.join(parent, name));
}

/** Puts back what a killed run left of this house, and clears what it was making. Touches nothing else in `parent`. */
export const recover = (parent: string, name: string): Promise<void> => recoverAll(parent, [name]);

/** The same for many houses, with one look at `parent`. */
export async function recoverAll(parent: string, names: readonly string[]): Promise<void> {
  const entries = await readdir(parent).catch((): string[] => []);
  const left = entries.filter((entry) => entry.startsWith('.sillplate-'));
  if (left.length === 0) return;
  for (const name of names) {
    const prefix = makingOf(name, '');
    for (const entry of left) {
      const maker = entry.startsWith(prefix) ? entry.slice(prefix.length) : '';
      if (/^\d+$/.test(maker) && !isRunning(Number(maker)))
        await rm(path.join(parent, entry), { recursive: true, force: true });
    }
    // A lock by itself is taken and given back, which clears one that a killed run left.
    const lock = lockOf(name);
    if (left.some((entry) => entry === oldOf(name) || entry === lock || entry.startsWith(`${lock}.`)))
      await alone(parent, name, () => putBack(parent, name));
  }
}

async function exists(file: string): Promise<boolean> {
  try {
    await stat(file);
    return true;
  } catch {
    return false;
  }
}

/** What was to be copied is gone: no fault of the place that is written to. */
function isMissingSource(thrown: unknown, files: readonly FileToWrite[]): boolean {
  const { code, path: at } = thrown as NodeJS.ErrnoException;
  return code === 'ENOENT' && files.some((file) => 'copyOf' in file && file.copyOf === at);
}
