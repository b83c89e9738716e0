/** Which way a bag is packed, by its name; and the source that reads it. */
import { stat } from 'node:fs/promises';
import { type Keys, openSealed, sealOf } from './age-file.js';
import { LARGEST_SEALED_ZIP } from './bag-limits.js';
import { type BagListing, type BagSource, BagUnreadable, readTrouble } from './bag-source.js';
import { piecesOf } from './file-digest.js';
import { readBagFolder } from './read-bag-folder.js';
import { readBagTar } from './read-bag-tar.js';
import { readBagZip } from './read-bag-zip.js';
import { inStream, streamOf } from './stream-pieces.js';

/** Whether a file's name says that it is a packed bag. */
export const isPackedBag = (file: string): boolean => /\.(zip|tar|age)$/iu.test(file);

export const isSealedBag = (file: string): boolean => /\.age$/iu.test(file);

/** A source for a folder, a ZIP, a tar, or one of these sealed. Throws `BagUnreadable`. */
export async function openBag(file: string, keys: Keys = {}): Promise<BagSource> {
  const found = await stat(file).catch((thrown: unknown) => {
    const trouble = readTrouble(thrown);
    throw trouble === undefined ? thrown : new BagUnreadable(trouble, 'type its name as it lies there');
  });
  if (found.isDirectory()) return readBagFolder(file);
  if (!found.isFile())
    throw new BagUnreadable('is no file', 'name a folder, or a file ending in .zip or .tar');
  if (/\.zip$/iu.test(file)) return readBagZip(file);
  if (/\.tar$/iu.test(file)) return readBagTar(async () => streamOf(piecesOf(file)));
  if (!isSealedBag(file))
    throw new BagUnreadable('is no bag', 'name a folder, or a file ending in .zip, .tar or .tar.age');
  await sealOf(file);
  const opened = () => openSealed(piecesOf(file), keys);
  return /\.zip\.age$/iu.test(file) ? sealedZip(file, found.size, opened) : readBagTar(opened);
}

/** ZIP is read from its end, so it is opened as a whole; a large one is refused. */
function sealedZip(file: string, size: number, opened: () => Promise<ReadableStream<Uint8Array>>): BagSource {
  let inner: BagSource | undefined;
  const whole = async (): Promise<BagSource> => {
    if (size > LARGEST_SEALED_ZIP)
      throw new BagUnreadable(
        'is a sealed ZIP too large to be opened in memory',
        `open it with the age program first:  age -d -o bag.zip ${file}`,
      );
    const pieces: Uint8Array[] = [];
    for await (const piece of inStream(await opened())) pieces.push(piece);
    return readBagZip(Buffer.concat(pieces));
  };
  return {
    list: async (): Promise<BagListing> => {
      inner ??= await whole();
      return inner.list();
    },
    digest: async (wanted, onBytes) => {
      inner ??= await whole();
      return inner.digest(wanted, onBytes);
    },
  };
}
