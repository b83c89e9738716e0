/**
 * A file is made under a name that begins with a dot, brought to the disk, and only then gets its own: whatever is killed
 * when, there is never half of one.
 */
import type { Stats } from 'node:fs';
import { link, lstat, open, readdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../diagnostics/is-running.js';
import { bytesOf } from './file-digest.js';

/** Who may read and write a file, and whose it is. */
export type Rights = Pick<Stats, 'mode' | 'uid' | 'gid'>;

const makingOf = (file: string): string =>
  path.join(path.dirname(file), `.sillplate-writing-${path.basename(file)}-${process.pid}`);

/**
 * Writes `bytes` beside `file` and, after `mayStill`, which throws if it is no longer to be done, puts them in its place
 * in one step. `like`: the rights that it gets; left out: those that the system gives a new file.
 */
export async function writeOver(
  file: string,
  bytes: Uint8Array,
  like: Rights | undefined,
  mayStill: () => Promise<void>,
): Promise<void> {
  const making = makingOf(file);
  try {
    await writeAside(making, bytes, like);
    await mayStill();
    await rename(making, file);
  } finally {
    await rm(making, { force: true }).catch(() => undefined);
  }
}

/**
 * Keeps `bytes` as a copy under the first of `file`, `file-2`, `file-3` … that is free; an earlier copy is never written
 * over. Answers with the copy and whether it is new: the latest one may hold the same, after a run that was killed.
 */
export async function keepCopy(
  file: string,
  bytes: Uint8Array,
  like: Rights,
): Promise<{ readonly copy: string; readonly isNew: boolean }> {
  const nameOf = (count: number): string => (count === 1 ? file : `${file}-${count}`);
  let count = 1;
  while (await isThere(nameOf(count))) count++;
  if (count > 1 && (await bytesOf(nameOf(count - 1)).catch(() => undefined))?.equals(bytes) === true)
    return { copy: nameOf(count - 1), isNew: false };
  const making = makingOf(file);
  try {
    await writeAside(making, bytes, like);
    for (; ; count++) if (await nameIt(making, nameOf(count))) return { copy: nameOf(count), isNew: true };
  } finally {
    await rm(making, { force: true }).catch(() => undefined);
  }
}

/** Writes a file that is not there yet. False: it is. */
export async function writeNew(file: string, bytes: Uint8Array): Promise<boolean> {
  const making = makingOf(file);
  try {
    await writeAside(making, bytes, undefined);
    return await nameIt(making, file);
  } finally {
    await rm(making, { force: true }).catch(() => undefined);
  }
}

/** To the disk, not only to the system's memory. */
async function writeAside(making: string, bytes: Uint8Array, like: Rights | undefined): Promise<void> {
  // What a killed run left under this name is nobody's.
  await rm(making, { force: true });
  const handle = await open(making, 'wx', like?.mode);
  try {
    await handle.writeFile(bytes);
    if (like !== undefined) {
      // Only root may give a file away; it is the writer's own then, as every file that an editor saves anew.
      const { uid, gid } = await handle.stat();
      if (uid !== like.uid || gid !== like.gid) await handle.chown(like.uid, like.gid).catch(() => undefined);
      // The mask of the process may have taken rights away.
      await handle.chmod(like.mode & 0o7777);
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** False: the name is taken. */
async function nameIt(making: string, name: string): Promise<boolean> {
  try {
    await link(making, name);
    return true;
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === 'EEXIST' || (await isThere(name))) return false;
    if (code === 'ENOSPC' || code === 'EDQUOT') throw thrown;
    // A disk without links.
    await rename(making, name);
    return true;
  }
}

const isThere = (file: string): Promise<boolean> =>
  lstat(file).then(
    () => true,
    () => false,
  );

const HALF_MADE = /^\.sillplate-writing-.+-(\d{1,10})$/;

/** Takes away what killed runs left half-made. What a running program makes stays; what can't be taken out does no harm. */
export async function dropHalfMade(folder: string): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const maker = HALF_MADE.exec(entry.name)?.[1];
    if (maker === undefined || !entry.isFile() || isRunning(Number(maker))) continue;
    await rm(path.join(folder, entry.name), { force: true }).catch(() => undefined);
  }
}
