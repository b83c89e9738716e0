/** A folder and those it lies in. */
import { mkdir, stat } from 'node:fs/promises';
import path from 'node:path';

/**
 * Makes what is not there yet; throws the system's error. Node's own `recursive` tries for ever where a system says
 * ENOENT of a folder that it never lets anybody make (Linux: `/proc/x`), and takes a link that leads nowhere for a file.
 */
export async function makeFolders(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    const parent = path.dirname(folder);
    if (code !== 'ENOENT' || parent === folder) return await needFolder(folder, thrown);
    await makeFolders(parent);
    await mkdir(folder).catch((again: unknown) => needFolder(folder, again));
  }
}

/** Throws what is wrong unless a folder lies there all the same. */
async function needFolder(folder: string, thrown: unknown): Promise<void> {
  const look = stat(folder);
  // Something lies there: if it can't be followed, that is what is wrong.
  const found = await ((thrown as NodeJS.ErrnoException).code === 'EEXIST'
    ? look
    : look.catch(() => undefined));
  if (found?.isDirectory() !== true) throw thrown;
}
