/**
 * One digest of everything that lies in a folder: names and contents, and nothing of where or when.
 *
 * The same folder gives the same digest on every machine. What systems and editors keep for themselves does not count.
 */
import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { isLeftOut } from './bag-left-out.js';
import { ChangedWhileRead, digestFile, type FileSeen, inLanes } from './file-digest.js';
import { walkFolder } from './walk-folder.js';

/** A folder as it was looked at, sorted by path. */
export interface FolderSeen {
  readonly files: readonly (FileSeen & { readonly path: string; readonly file: string })[];
  /** What is no file and leads to none, with its kind: a pipe, a link into nowhere. */
  readonly odd: readonly string[];
}

/** Names, sizes and times; nothing is read. Throws the system's error for a folder that can't be looked into. */
export async function lookAtFolder(root: string): Promise<FolderSeen> {
  const files: (FileSeen & { path: string; file: string })[] = [];
  const odd: string[] = [];
  for await (const one of walkFolder(root, (path) => !isLeftOut(path))) {
    if (one.kind === 'folder') continue;
    // What a link leads to is read like a file, so it counts like one.
    const seen =
      one.unnamed || one.kind === 'other' ? undefined : await stat(one.file).catch(() => undefined);
    if (seen?.isFile() === true)
      files.push({
        path: one.path,
        file: one.file,
        size: seen.size,
        mtimeMs: seen.mtimeMs,
        ino: seen.ino,
      });
    else odd.push(`${one.kind} ${one.path}`);
  }
  files.sort((a, b) => (a.path < b.path ? -1 : 1));
  return { files, odd: odd.sort() };
}

/** Undefined: a file was changed or taken away while it was read. Throws the system's other errors. */
export async function digestOfFolder({ files, odd }: FolderSeen): Promise<string | undefined> {
  const found = new Map<string, string>();
  try {
    await inLanes(files, async (one, lane) => {
      const { digests } = await digestFile(one.file, ['sha256'], lane, { seen: one });
      found.set(one.path, digests.get('sha256') ?? '');
    });
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (thrown instanceof ChangedWhileRead || code === 'ENOENT') return undefined;
    throw thrown;
  }
  const hash = createHash('sha256');
  // A name may hold any sign but a zero.
  for (const { path } of files) hash.update(`${found.get(path)} ${path}\0`);
  for (const one of odd) hash.update(`${one}\0`);
  return hash.digest('hex');
}

/** Whether nothing was written between two looks. */
export const isSameFolder = (a: FolderSeen, b: FolderSeen): boolean =>
  a.odd.join('\0') === b.odd.join('\0') && changedBetween(a, b).length === 0;

/** Paths of files that were written to, replaced, put there or taken away between two looks. */
export function changedBetween(a: FolderSeen, b: FolderSeen): string[] {
  const before = new Map(a.files.map((one) => [one.path, one]));
  const now = new Set(b.files.map((one) => one.path));
  return [
    ...a.files.flatMap((one) => (now.has(one.path) ? [] : [one.path])),
    ...b.files.flatMap((one) => {
      const was = before.get(one.path);
      const isSame = was?.size === one.size && was.mtimeMs === one.mtimeMs && was.ino === one.ino;
      return isSame ? [] : [one.path];
    }),
  ].sort();
}
