/**
 * What a house's files are while they are read: whatever is made of them is of one state, or is not put in place.
 *
 * Names, sizes, times and places on the disk are held against each other, before and after; nothing is read twice.
 */
import path from 'node:path';
import { ChangedWhileRead } from './archive/file-digest.js';
import { changedBetween, type FolderSeen, lookAtFolder } from './archive/folder-digest.js';
import { DELIVERIES } from './diagnostics/delivery-names.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { isPicture } from './intake/look-at-photo.js';

/** The folder as it lies there now; undefined if it can't be looked into, which those who read it tell. */
export const lookNow = (folder: string): Promise<FolderSeen | undefined> =>
  lookAtFolder(folder).catch(() => undefined);

/** Whether packets are made of it. A film that is being copied into the folder is none of theirs. */
function isFact(file: string): boolean {
  const [home, ...inner] = file.split('/');
  if (inner.length === 0) return /\.(ya?ml|csv|xlsx)$/iu.test(file);
  return home === 'documents' || home === DELIVERIES || (home === 'photos' && isPicture(file));
}

/** The first file of the facts that is not what it was, from the folder; undefined if all are. */
export async function changedSince(
  folder: string,
  before: FolderSeen | undefined,
): Promise<string | undefined> {
  if (before === undefined) return undefined;
  const now = await lookNow(folder);
  return now === undefined ? undefined : changedBetween(before, now).find(isFact);
}

/** Throws `ChangedWhileRead` if a file of the facts is not what it was. */
export async function mustBeAsRead(folder: string, before: FolderSeen | undefined): Promise<void> {
  const changed = await changedSince(folder, before);
  if (changed !== undefined) throw new ChangedWhileRead(path.join(path.resolve(folder), changed));
}

/** `file` as the writer would type it; `done` says what was not done: "nothing was written". */
export const changedTrouble = (file: string, done: string): Diagnostic => ({
  code: 'archive.facts',
  severity: 'error',
  file,
  message: `${file} was changed each time while it was being read, so ${done}`,
  hints: ['wait until no other program writes to it, and type the same command again'],
});
