/** Everything below a folder: what it is and how it is named. Links are told and never followed. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';

export interface Walked {
  /** From the folder, with forward slashes. */
  readonly path: string;
  readonly file: string;
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  /** The name is no UTF-8 text, and what stands in `path` can't be opened. */
  readonly unnamed: boolean;
  /** Of a folder: it holds nothing. */
  readonly empty: boolean;
}

/** What `passes` says no to is neither told nor looked into. Throws the system's error for a folder that can't be read. */
export async function* walkFolder(
  root: string,
  passes: (path: string) => boolean = () => true,
): AsyncGenerator<Walked> {
  const waiting: { readonly file: string; readonly path: string }[] = [{ file: root, path: '' }];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const entries = await readdir(at.file, { encoding: 'buffer', withFileTypes: true });
    if (at.path !== '') yield { ...at, kind: 'folder', unnamed: false, empty: entries.length === 0 };
    for (const entry of entries) {
      const name = entry.name.toString('utf8');
      const unnamed = !Buffer.from(name).equals(entry.name);
      const inner = { path: at.path === '' ? name : `${at.path}/${name}`, file: path.join(at.file, name) };
      if (!passes(inner.path)) continue;
      if (entry.isDirectory() && !unnamed) waiting.push(inner);
      else yield { ...inner, kind: kindOf(entry), unnamed, empty: false };
    }
  }
}

function kindOf(entry: {
  isFile(): boolean;
  isDirectory(): boolean;
  isSymbolicLink(): boolean;
}): Walked['kind'] {
  if (entry.isFile()) return 'file';
  if (entry.isSymbolicLink()) return 'link';
  return entry.isDirectory() ? 'folder' : 'other';
}
