/**
 * A file that the writer keeps is replaced in one step, and what it was lies beside it.
 *
 * The new text is written under a name that begins with a dot, brought to the disk, and renamed over the old. If the
 * file is no longer what was read, or lies outside its folder, nothing is touched. Two programs take turns.
 */
import { lstat, realpath, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';
import { bytesOf, ChangedWhileRead } from './file-digest.js';
import { alone } from './folder-lock.js';
import { settleFolder } from './settle-folder.js';
import { dropHalfMade, keepCopy, writeOver } from './write-whole.js';

export type ReplacedFile =
  /** Name of the copy of what was there, in the folder of the file itself. */
  { readonly ok: true; readonly copy: string } | { readonly ok: false; readonly diagnostic: Diagnostic };

/** Its lock is called `.sillplate-lock-facts`. */
const WORK = 'facts';

/** Somebody's editor saved the file meanwhile. */
class ChangedMeanwhile extends Error {}

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
    const target = await insideOf(folder, name);
    if (target === undefined)
      return refuse(
        shown,
        'is a link that leads out of the house folder',
        'put the file itself into the folder',
      );
    if (!(await isStill(target, was))) return changed(shown);
    return await alone(folder, WORK, () => replace(target, was, next, reason));
  } catch (thrown) {
    if (thrown instanceof ChangedMeanwhile || thrown instanceof ChangedWhileRead) return changed(shown);
    return { ok: false, diagnostic: { ...diskTrouble(thrown, shown), hints: [whatToDo(thrown)] } };
  }
}

async function replace(
  target: string,
  was: Uint8Array,
  next: Uint8Array,
  reason: string,
): Promise<ReplacedFile> {
  const home = path.dirname(target);
  await dropHalfMade(home);
  const rights = await stat(target);
  const { copy, isNew } = await keepCopy(`${target}.${reason}`, was, rights);
  try {
    await writeOver(target, next, rights, async () => {
      if (!(await isStill(target, was))) throw new ChangedMeanwhile(target);
    });
  } catch (thrown) {
    if (isNew) await rm(copy, { force: true }).catch(() => undefined);
    throw thrown;
  }
  await settleFolder(home);
  return { ok: true, copy: path.basename(copy) };
}

/** The file itself, behind links that stay in the folder. */
async function insideOf(folder: string, name: string): Promise<string | undefined> {
  const home = await realpath(folder);
  const real = await realpath(path.join(folder, name));
  return real.startsWith(home + path.sep) && (await lstat(real)).isFile() ? real : undefined;
}

const isStill = async (file: string, was: Uint8Array): Promise<boolean> => (await bytesOf(file)).equals(was);

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
