import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { FileToWrite } from './write-tree.js';

/** Every file below `root/folder`, as an order to copy it to the same path. Empty if there is no such folder. */
export async function listTree(root: string, folder: string): Promise<FileToWrite[]> {
  try {
    const entries = await readdir(path.join(root, folder), { recursive: true, withFileTypes: true });
    return entries
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const file = path.join(entry.parentPath, entry.name);
        return { path: path.relative(root, file).split(path.sep).join('/'), copyOf: file };
      });
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw thrown;
  }
}
