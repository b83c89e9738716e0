/**
 * Pictures that were made ready are kept, one folder each, under a key of all that they depend on.
 *
 * A folder is made beside its place and moved there in one step, so that nobody finds half of one; two builds at
 * once make the same bytes. What does not fit its list is made again. It can be deleted at any time.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

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
}

/** Puts a file into the picture's folder. */
export type Keep = (name: string, bytes: Buffer) => Promise<void>;

/** What is kept under a key, or else what `make` makes. Fails with the system's error, or with what `make` fails with. */
export async function keptOrMade(
  cache: string,
  key: string,
  make: (keep: Keep) => Promise<Omit<KeptPicture, 'files'>>,
): Promise<{ readonly picture: KeptPicture; readonly folder: string }> {
  const folder = path.join(cache, key);
  const kept = await whole(folder);
  if (kept !== undefined) return { picture: kept, folder };
  const making = path.join(cache, `.making-${key}-${randomUUID()}`);
  await mkdir(making, { recursive: true });
  try {
    const files: Record<string, number> = {};
    const made = await make(async (name, bytes) => {
      files[name] = bytes.length;
      await writeFile(path.join(making, name), bytes);
    });
    const picture: KeptPicture = { ...made, files };
    await writeFile(path.join(making, LIST), JSON.stringify(picture));
    await putInPlace(making, folder);
    return { picture, folder };
  } finally {
    await rm(making, { recursive: true, force: true });
  }
}

const LIST = 'picture.json';
/** What a system says of a folder that is already there. */
const TAKEN = ['ENOTEMPTY', 'EEXIST', 'EPERM'];

async function putInPlace(making: string, folder: string): Promise<void> {
  for (let tries = 1; ; tries++) {
    try {
      return await rename(making, folder);
    } catch (thrown) {
      if (!TAKEN.includes((thrown as NodeJS.ErrnoException).code ?? '')) throw thrown;
      // Another build made the same picture first; its bytes are the same.
      if ((await whole(folder)) !== undefined) return;
      if (tries === 3) throw thrown;
      // Something lies there that is no whole picture: a disk that filled up, a hand in the cache.
      await rm(folder, { recursive: true, force: true });
    }
  }
}

/** The list of a folder, if everything on it is there in full. */
async function whole(folder: string): Promise<KeptPicture | undefined> {
  try {
    const kept = JSON.parse(await readFile(path.join(folder, LIST), 'utf8')) as KeptPicture;
    const sizes = await Promise.all(
      Object.entries(kept.files).map(
        async ([name, bytes]) => (await stat(path.join(folder, name))).size === bytes,
      ),
    );
    return sizes.length > 0 && sizes.every(Boolean) ? kept : undefined;
  } catch {
    return undefined;
  }
}
