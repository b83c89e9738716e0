/**
 * A file that the writer keeps is replaced in one step, and what it was lies beside it.
 *
 * The new text is written under a name that begins with a dot, brought to the disk, and renamed over the old. If the
 * file is no longer what was read, or lies outside its folder, nothing is touched.
 */
import { lstat, open, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diskTrouble } from '../diagnostics/disk-trouble.js';

export type ReplacedFile =
  /** Name of the copy of what was there, in the folder of the file itself. */
  { readonly ok: true; readonly copy: string } | { readonly ok: false; readonly diagnostic: Diagnostic };

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
    const { mode } = await stat(target);
    const copy = await keepCopy(target, was, reason, mode);
    const making = path.join(
      path.dirname(target),
      `.sillplate-writing-${path.basename(target)}-${process.pid}`,
    );
    let replaced = false;
    try {
      // What a killed run left under this name is nobody's.
      await rm(making, { force: true });
      await writeWhole(making, next, mode);
      // Somebody's editor may have saved in between.
      if (!(await isStill(target, was))) return changed(shown);
      await rename(making, target);
      replaced = true;
    } finally {
      if (!replaced)
        for (const left of [making, copy]) await rm(left, { force: true }).catch(() => undefined);
    }
    await settle(path.dirname(target));
    return { ok: true, copy: path.basename(copy) };
  } catch (thrown) {
    return {
      ok: false,
      diagnostic: {
        ...diskTrouble(thrown, shown),
        hints: ['check who may write there, and whether the disk is full'],
      },
    };
  }
}

/** The file itself, behind links that stay in the folder. */
async function insideOf(folder: string, name: string): Promise<string | undefined> {
  const home = await realpath(folder);
  const real = await realpath(path.join(folder, name));
  return real.startsWith(home + path.sep) && (await lstat(real)).isFile() ? real : undefined;
}

const isStill = async (file: string, was: Uint8Array): Promise<boolean> => (await readFile(file)).equals(was);

/** Under the first name that is free: an earlier copy is never written over. */
async function keepCopy(file: string, bytes: Uint8Array, reason: string, mode: number): Promise<string> {
  for (let count = 1; ; count++) {
    const copy = `${file}.${reason}${count === 1 ? '' : `-${count}`}`;
    try {
      await writeWhole(copy, bytes, mode);
      return copy;
    } catch (thrown) {
      if ((thrown as NodeJS.ErrnoException).code !== 'EEXIST') throw thrown;
    }
  }
}

/** To the disk, not only to the system's memory; nothing is left of a file that could not be written whole. */
async function writeWhole(file: string, bytes: Uint8Array, mode: number): Promise<void> {
  const handle = await open(file, 'wx', mode);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
    // The mask of the process may have taken rights away.
    await handle.chmod(mode);
  } catch (thrown) {
    await rm(file, { force: true });
    throw thrown;
  } finally {
    await handle.close();
  }
}

/** The rename itself reaches the disk. Some systems can't do that for a folder, and need not. */
async function settle(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // The file is in place all the same.
  }
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
