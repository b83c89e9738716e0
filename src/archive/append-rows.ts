/**
 * Rows are added to the sheets of a house in one go: several files, so that a killed program leaves no row twice and
 * none lost.
 *
 * Before anything else, a note of what is about to be done is brought to the disk (`imports/.unfinished.json`). Then the
 * costs are replaced, then the list of what was imported, then the note goes. The next import looks for the note first:
 * if the rows stand in the costs, it finishes the list; if they do not, it drops the note, and the rows come as new.
 */
import { createHash } from 'node:crypto';
import { mkdir, realpath, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { bytesOf } from './file-digest.js';
import { alone, dropLeft } from './folder-lock.js';
import { LeadsOutside, putFile } from './put-file.js';
import { dropHalfMade } from './write-whole.js';

const WORK = 'import';

/** One import at a time in a house. Makes `imports/`, and takes out what killed runs left half-made. */
export async function aloneInImports<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const imports = path.join(folder, 'imports');
  // Not `recursive`: of a disk that can only be read that says ENOENT, which tells nobody anything.
  await mkdir(imports).catch(async (thrown: NodeJS.ErrnoException) => {
    const isThere = await stat(imports).then(
      (found) => found.isDirectory(),
      () => false,
    );
    if (!isThere) throw thrown;
  });
  if (!(await realpath(imports)).startsWith((await realpath(folder)) + path.sep))
    throw new LeadsOutside('imports leads out of its folder');
  return alone(imports, WORK, async () => {
    for (const one of [folder, imports]) await dropHalfMade(one);
    return work();
  });
}

/** What a killed import left of its lock: one that finds no new row needs none. */
export const dropLeftOfImports = (folder: string): Promise<void> =>
  dropLeft(path.join(folder, 'imports'), WORK);

/** Copies of what files were before one run of the program wrote into them, by the file's name; each is made once. */
export type Copies = Map<string, string>;

/**
 * Puts `next` in the place of a file of the house, as `putFile` does. With `copies`, what was there stays as a copy in
 * `imports/`, and its name is entered there.
 */
export async function putSheet(
  folder: string,
  name: string,
  was: Uint8Array | undefined,
  next: Uint8Array,
  copies?: Copies,
): Promise<void> {
  const copyTo = (home: string): string =>
    path.join(home, 'imports', `${path.posix.basename(name)}.before-import`);
  const copy = await putFile(folder, name, {
    was,
    next,
    ...(copies?.has(name) === false ? { copyTo } : {}),
  });
  if (copy !== undefined) copies?.set(name, path.posix.join('imports', path.basename(copy)));
}

const NOTE = 'imports/.unfinished.json';

/** What is about to be done. */
interface Note<Row> {
  /** File that the rows go into, below the folder. */
  readonly sheet: string;
  /** SHA-256 of it with the rows. */
  readonly after: string;
  /** The rows as they are added, and how often they stood in it before. */
  readonly added: string;
  readonly times: number;
  /** What the list of imported rows gets. */
  readonly seen: readonly Row[];
}

export interface Addition<Row> {
  readonly sheet: string;
  readonly was: Buffer | undefined;
  readonly next: Buffer;
  /** The added rows as text, without what closes the line before. */
  readonly added: string;
  readonly seen: readonly Row[];
}

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const timesIn = (bytes: Buffer | undefined, added: string): number =>
  (bytes?.toString('utf8').split(added).length ?? 1) - 1;

/** Writes the note, the rows, and by `writeSeen` the list, in this order. To be called within `aloneInImports`. */
export async function addRows<Row>(
  folder: string,
  addition: Addition<Row>,
  writeSeen: () => Promise<void>,
  copies?: Copies,
): Promise<void> {
  const { sheet, was, next, added, seen } = addition;
  const note: Note<Row> = { sheet, after: digest(next), added, times: timesIn(was, added), seen };
  await dropNote(folder);
  await putFile(folder, NOTE, { was: undefined, next: Buffer.from(JSON.stringify(note)) });
  try {
    await putSheet(folder, sheet, was, next, copies);
  } catch (thrown) {
    await dropNote(folder);
    throw thrown;
  }
  await writeSeen();
  await dropNote(folder);
}

export const dropNote = (folder: string): Promise<void> =>
  rm(path.join(folder, ...NOTE.split('/')), { force: true });

/**
 * What a killed import had added to the costs without entering it in the list; undefined if nothing is left over, or the
 * costs were not reached.
 */
export async function leftOver<Row>(folder: string): Promise<readonly Row[] | undefined> {
  let note: Note<Row>;
  try {
    note = JSON.parse((await bytesOf(path.join(folder, ...NOTE.split('/')))).toString('utf8'));
  } catch {
    // None is there; a note is never half there, and what is none of ours says nothing.
    return undefined;
  }
  if (typeof note !== 'object' || note === null) return undefined;
  const { sheet, after, added, times, seen } = note;
  if (![sheet, after, added].every((one) => typeof one === 'string') || !Array.isArray(seen) || added === '')
    return undefined;
  // A folder that came from somebody else may name anything.
  if (path.isAbsolute(sheet) || sheet.split(/[\\/]/).includes('..')) return undefined;
  const bytes = await bytesOf(path.join(folder, ...sheet.split('/'))).catch(() => undefined);
  if (bytes === undefined) return undefined;
  // Somebody may have written on since.
  return digest(bytes) === after || timesIn(bytes, added) > times ? seen : undefined;
}
