import { constants, copyFile, mkdir, open, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { openPlain } from './file-digest.js';

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
  const ended = await Promise.allSettled(
    targets.map(({ file, target }) =>
      'copyOf' in file
        ? copyPlain(file.copyOf, target)
        : 'text' in file && file.text.length > LONG_TEXT
          ? writeLongText(target, file.text)
          : writeFile(target, 'text' in file ? file.text : file.bytes),
    ),
  );
  // Told when no other is being written any more: whoever clears the tree away must not meet one.
  for (const one of ended) if (one.status === 'rejected') throw one.reason;
}

/** A pipe or a folder that was put in the file's place is not waited for, and not copied. */
async function copyPlain(from: string, to: string): Promise<void> {
  await (await openPlain(from)).close();
  await copyFile(from, to, constants.COPYFILE_FICLONE);
}

const LONG_TEXT = 500_000;

/** A text of many megabytes is not held a second time, as bytes. No character is cut in two. */
async function writeLongText(target: string, text: string): Promise<void> {
  const encoder = new TextEncoder();
  // A unit of UTF-16 is three bytes at most.
  const buffer = new Uint8Array(3 * LONG_TEXT);
  const file = await open(target, 'w');
  try {
    for (let at = 0; at < text.length; ) {
      const end = at + LONG_TEXT;
      const cutsPair = /[\uD800-\uDBFF]/.test(text.charAt(end - 1));
      const piece = text.slice(at, cutsPair ? end - 1 : end);
      const { written } = encoder.encodeInto(piece, buffer);
      await file.writeFile(buffer.subarray(0, written));
      at += piece.length;
    }
  } finally {
    await file.close();
  }
}
