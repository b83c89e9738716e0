import { open } from 'node:fs/promises';

/** The names in a folder reach the disk. Some systems can't do that for a folder, and need not. */
export async function settleFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // What lies in it is in place all the same.
  }
}
