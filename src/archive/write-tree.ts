import { constants, copyFile, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** One file to be written: a path inside the tree, and its text, bytes or where to copy it from. */
export type FileToWrite =
  | { readonly path: string; readonly text: string }
  | { readonly path: string; readonly bytes: Uint8Array }
  | { readonly path: string; readonly copyOf: string };

/** Writes every file below `root`. A path that would leave it is our bug and throws. */
export async function writeTree(root: string, files: readonly FileToWrite[]): Promise<void> {
  const folders = new Set<string>();
  const targets = files.map((file) => {
    const target = path.join(root, file.path);
    if (!target.startsWith(root + path.sep)) throw new Error(`output path leaves its folder: ${file.path}`);
    folders.add(path.dirname(target));
    return { file, target };
  });
  await mkdir(root, { recursive: true });
  for (const folder of folders) await mkdir(folder, { recursive: true });
  await Promise.all(
    targets.map(({ file, target }) =>
      'copyOf' in file
        ? copyFile(file.copyOf, target, constants.COPYFILE_FICLONE)
        : writeFile(target, 'text' in file ? file.text : file.bytes),
    ),
  );
}
