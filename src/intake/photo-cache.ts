/**
 * Pictures that were made ready are kept, one folder each, under a key of all that they depend on.
 *
 * A folder is made beside its place and moved there in one step, so that nobody finds half of one; two builds at
 * once make the same bytes. What does not fit its list is made again. It can be deleted at any time.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { isRunning } from '../diagnostics/is-running.js';

/** A picture's list: what lies in its folder. */
export interface KeptPicture {
  readonly width: number;
  readonly height: number;
  readonly sizes: readonly {
    readonly width: number;
    readonly height: number;
    readonly jpeg: string;
    readonly avif: string;
  }[];
  readonly tiny: string;
  readonly print: { readonly width: number; readonly height: number; readonly name: string };
  /** Name and number of bytes of every file. */
  readonly files: Readonly<Record<string, number>>;
  readonly making: Making;
}

/** What a picture was made of and by; what is kept of an original goes when one of the others has changed. */
export interface Making {
  /** Of all that is the same for every photo: program, sizes, encoders. */
  readonly recipe: string;
  /** SHA-256 of the original. */
  readonly content: string;
  readonly hide: readonly (readonly number[])[];
}

/** Puts a file into the picture's folder. */
export type Keep = (name: string, bytes: Buffer) => Promise<void>;

export type Make = (keep: Keep) => Promise<Omit<KeptPicture, 'files' | 'making'>>;

/** What is kept under a key, or else what `make` makes. Fails with the system's error, or with what `make` fails with. */
export async function keptOrMade(
  cache: string,
  key: string,
  making: Making,
  make: Make,
): Promise<{ readonly picture: KeptPicture; readonly folder: string }> {
  const folder = path.join(cache, key);
  const kept = await whole(folder);
  if (kept !== undefined) return { picture: kept, folder };
  try {
    return { picture: await makeInto(folder, making, make), folder };
  } catch (thrown) {
    // Somebody emptied the cache in the middle: once more from the beginning.
    if ((thrown as NodeJS.ErrnoException).code !== 'ENOENT') throw thrown;
    return { picture: await makeInto(folder, making, make), folder };
  }
}

async function makeInto(folder: string, making: Making, make: Make): Promise<KeptPicture> {
  const half = path.join(path.dirname(folder), `.making-${process.pid}-${randomUUID()}`);
  await mkdir(half, { recursive: true });
  try {
    const files: Record<string, number> = {};
    const made = await make(async (name, bytes) => {
      files[name] = bytes.length;
      await writeFile(path.join(half, name), bytes);
    });
    const picture: KeptPicture = { ...made, files, making };
    await writeFile(path.join(half, LIST), JSON.stringify(picture));
    await putInPlace(half, folder);
    return picture;
  } finally {
    await rm(half, { recursive: true, force: true });
  }
}

const LIST = 'picture.json';
/** What a system says of a place that is taken. */
const TAKEN = ['ENOTEMPTY', 'EEXIST', 'EPERM', 'ENOTDIR'];
const TRIES = 5;

async function putInPlace(half: string, folder: string): Promise<void> {
  for (let tries = 1; ; tries++) {
    try {
      return await rename(half, folder);
    } catch (thrown) {
      if (!TAKEN.includes((thrown as NodeJS.ErrnoException).code ?? '')) throw thrown;
      // Another build made the same picture first; its bytes are the same.
      if ((await whole(folder)) !== undefined) return;
      if (tries === TRIES) throw thrown;
      await setAside(folder);
    }
  }
}

/**
 * What lies there is no whole picture: a disk that filled up, a hand in the cache. Moved away before it is deleted, so
 * that nobody's good one, put there meanwhile, is deleted file by file.
 */
async function setAside(folder: string): Promise<void> {
  const aside = path.join(path.dirname(folder), `.making-${process.pid}-${randomUUID()}`);
  try {
    await rename(folder, aside);
  } catch {
    // Somebody else was first.
    return;
  }
  await rm(aside, { recursive: true, force: true });
}

/** Folders whose files were held against their names in this process; after that, lengths do. */
const proven = new Set<string>();

/** The list of a folder, if everything on it is there in full: a file's name is the beginning of its digest. */
async function whole(folder: string): Promise<KeptPicture | undefined> {
  try {
    const kept = JSON.parse(await readFile(path.join(folder, LIST), 'utf8')) as KeptPicture;
    const names = [...kept.sizes.flatMap(({ jpeg, avif }) => [jpeg, avif]), kept.print.name];
    const fit = await Promise.all(names.map((name) => fits(folder, name, kept.files[name])));
    if (!fit.every(Boolean)) return undefined;
    proven.add(folder);
    return kept;
  } catch {
    // No list, or a list of something else: it is made again.
    return undefined;
  }
}

async function fits(folder: string, name: string, bytes: number | undefined): Promise<boolean> {
  const file = path.join(folder, path.basename(name));
  if (proven.has(folder)) return (await stat(file)).size === bytes;
  return digestName(await readFile(file)) === path.parse(name).name;
}

/** What a picture's file is called, without its ending: the first 80 bits of its SHA-256. */
export const digestName = (bytes: Buffer): string =>
  createHash('sha256').update(bytes).digest('hex').slice(0, 20);

/**
 * Takes away what killed runs left half-made, what another recipe made, and pictures of these originals with other
 * parts covered: what is to be hidden now does not lie about as it was.
 */
export async function sweep(cache: string, recipe: string, makings: readonly Making[]): Promise<void> {
  const hidden = new Map(makings.map(({ content, hide }) => [content, JSON.stringify(hide)]));
  const names = await readdir(cache).catch(() => []);
  for (const name of names) {
    const folder = path.join(cache, name);
    const pid = /^\.making-(\d+)-/.exec(name)?.[1];
    if (pid === undefined ? await isStale(folder, recipe, hidden) : !isRunning(Number(pid)))
      await rm(folder, { recursive: true, force: true });
  }
}

async function isStale(
  folder: string,
  recipe: string,
  hidden: ReadonlyMap<string, string>,
): Promise<boolean> {
  try {
    const { making } = JSON.parse(await readFile(path.join(folder, LIST), 'utf8')) as KeptPicture;
    const now = hidden.get(making.content);
    return making.recipe !== recipe || (now !== undefined && now !== JSON.stringify(making.hide));
  } catch {
    // Nothing of ours: whoever needs its place makes room for itself.
    return false;
  }
}
