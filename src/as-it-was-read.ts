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

/**
 * What packets are made of, as it lies there now; undefined if the folder can't be looked into, which those who read it
 * tell. A film, which may take minutes to be copied into the folder, is none of it, nor is a draft of a listing text.
 */
export async function lookAtFacts(folder: string): Promise<FolderSeen | undefined> {
  const seen = await lookAtFolder(folder).catch(() => undefined);
  return seen && { ...seen, files: seen.files.filter(({ path: file }) => isFact(file)) };
}

const FILM = /\.(mov|mp4|m4v|avi|mkv|webm|wmv|3gp|mpe?g)$/iu;

/** Photos may bear any ending: what they are is told by their bytes. */
function isFact(file: string): boolean {
  const [home, ...inner] = file.split('/');
  if (inner.length === 0) return /\.(ya?ml|csv|xlsx)$/iu.test(file);
  return home === 'documents' || home === DELIVERIES || (home === 'photos' && !FILM.test(file));
}

/** `before`: what `lookAtFacts` saw. The first file of the facts that is not what it was, from the folder; undefined if all are. */
export async function changedSince(
  folder: string,
  before: FolderSeen | undefined,
): Promise<string | undefined> {
  if (before === undefined) return undefined;
  const now = await lookAtFacts(folder);
  return now === undefined ? undefined : changedBetween(before, now)[0];
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
