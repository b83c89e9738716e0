/**
 * A file that the writer keeps is replaced in one step, and what it was lies beside it.
 *
 * The new text is written under a name that begins with a dot, brought to the disk, and renamed over the old. If the
 * file is no longer what was read, or lies outside its folder, nothing is touched. Two programs take turns.
 */
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import { ChangedWhileRead } from './file-digest.js';
import { alone, dropLeft } from './folder-lock.js';
import { ChangedMeanwhile, LeadsOutside, putFile } from './put-file.js';

export type ReplacedFile =
  /** Name of the copy of what was there, in the folder of the file itself. */
  { readonly ok: true; readonly copy: string } | { readonly ok: false; readonly diagnostic: Diagnostic };

/** Its lock is called `.sillplate-lock-facts`. */
const WORK = 'facts';

/**
 * Replaces `folder/name`, whose bytes were `was` when they were read, by `next`. `shown` is the file as the writer
 * would type it; `reason` becomes the ending of the copy's name: `house.yaml.before-photos`.
 */
export async function replaceFile(
  folder: string,
  name: string,
  was: Uint8Array,
  next: Uint8Array,
  { shown, reason }: { readonly shown: string; readonly reason: string },
): Promise<ReplacedFile> {
  try {
    const copyTo = (_home: string, target: string): string => `${target}.${reason}`;
    const copy = await alone(folder, WORK, () => putFile(folder, name, { was, next, copyTo }));
    return { ok: true, copy: path.basename(copy ?? '') };
  } catch (thrown) {
    if (thrown instanceof LeadsOutside)
      return refuse(
        shown,
        'is a link that leads out of the house folder',
        'put the file itself into the folder',
      );
    if (thrown instanceof ChangedMeanwhile || thrown instanceof ChangedWhileRead) return changed(shown);
    return { ok: false, diagnostic: { ...diskTrouble(thrown, shown), hints: [whatToDo(thrown)] } };
  }
}

/** What a killed program left of its lock on the facts: a run that finds them as it wants them needs none. */
export const dropLeftOfFacts = (folder: string): Promise<void> => dropLeft(folder, WORK);

function whatToDo(thrown: unknown): string {
  const { code } = thrown as NodeJS.ErrnoException;
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'free some space, and type the same command again';
  if (code === 'ETIMEDOUT')
    return 'wait for it to end; if none runs, delete the file  .sillplate-lock-facts  of the house';
  return 'check who may write there, and whether the disk is full';
}

const changed = (shown: string): ReplacedFile =>
  refuse(
    shown,
    'was changed by another program while this one was at work, and is left as it is',
    'type the same command again',
  );

const refuse = (shown: string, what: string, hint: string): ReplacedFile => ({
  ok: false,
  diagnostic: {
    code: 'archive.facts',
    severity: 'error',
    file: shown,
    message: `${shown} ${what}`,
    hints: [hint],
  },
});
