/**
 * A file that the writer keeps gets new bytes in one step, behind links that stay in its folder, and keeps its rights. If
 * it is no longer what was read, or lies outside, nothing is touched. Whoever calls this holds the lock.
 */
import { realpath, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { bytesOf, ChangedWhileRead } from './file-digest.js';
import { settleFolder } from './settle-folder.js';
import { dropHalfMade, keepCopy, writeOver } from './write-whole.js';

/** The file is no longer what it was when it was read: somebody's editor saved it, for example. */
export class ChangedMeanwhile extends Error {}

/** The file is a link that leads out of the folder. */
export class LeadsOutside extends Error {
  readonly syscall = 'open';
  readonly code = 'ELOOP';
}

export interface Change {
  /** What it held when it was read; undefined: it was not there. */
  readonly was: Uint8Array | undefined;
  readonly next: Uint8Array;
  /** Where a copy of what was there is wanted; given the folder and the file itself, behind links. */
  readonly copyTo?: (home: string, target: string) => string;
}

/**
 * Puts `next` in the place of `folder/name`, with forward slashes, and answers with the copy’s path, if one was wanted.
 * Throws `ChangedMeanwhile`, `LeadsOutside`, or the system’s error; the file is as it was then, and no new copy is there.
 */
export async function putFile(folder: string, name: string, change: Change): Promise<string | undefined> {
  const { was, next, copyTo } = change;
  const home = await realpath(folder);
  const wanted = path.join(home, ...name.split('/'));
  const target =
    was === undefined
      ? path.join(await realpath(path.dirname(wanted)), path.basename(wanted))
      : await realpath(wanted);
  if (!target.startsWith(home + path.sep)) throw new LeadsOutside(`${name} leads out of its folder`);
  const mayStill = async (): Promise<void> => {
    if (!(await isStill(target, was))) throw new ChangedMeanwhile(name);
  };
  await mayStill();
  await dropHalfMade(path.dirname(target));
  const rights = was === undefined ? undefined : await stat(target);
  const kept =
    was === undefined || rights === undefined || copyTo === undefined
      ? undefined
      : await keepCopy(copyTo(home, target), was, rights);
  try {
    await writeOver(target, next, rights, mayStill);
  } catch (thrown) {
    if (kept?.isNew === true) await rm(kept.copy, { force: true }).catch(() => undefined);
    throw thrown;
  }
  await settleFolder(path.dirname(target));
  return kept?.copy;
}

async function isStill(file: string, was: Uint8Array | undefined): Promise<boolean> {
  try {
    const now = await bytesOf(file);
    return was !== undefined && now.equals(was);
  } catch (thrown) {
    if (thrown instanceof ChangedWhileRead) return false;
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return was === undefined;
    throw thrown;
  }
}
