/** A bag that lies unpacked in a folder. */
import { lstat } from 'node:fs/promises';
import path from 'node:path';
import { LARGEST_TAG, MOST_ENTRIES, MOST_NAMES, MOST_TAGS } from './bag-limits.js';
import type { Algorithm } from './bag-manifest.js';
import {
  type BagListing,
  type BagSource,
  BagUnreadable,
  type Digested,
  isTag,
  NAME_IT,
  NO_BAGIT,
  readTrouble,
} from './bag-source.js';
import { bytesOf, digestFile, inLanes } from './file-digest.js';
import { walkFolder } from './walk-folder.js';

export const readBagFolder = (folder: string): BagSource => ({
  list: () => list(folder),
  digest: (wanted, onBytes) => digest(folder, wanted, onBytes),
});

async function list(folder: string): Promise<BagListing> {
  const files = new Map<string, number>();
  const tags = new Map<string, Uint8Array>();
  const odd: BagListing['odd'][number][] = [];
  let names = 0;
  let tagBytes = 0;
  try {
    // Somebody may name the folder of all their files.
    if (!(await lstat(path.join(folder, 'bagit.txt')).catch(() => undefined))?.isFile())
      throw new BagUnreadable(NO_BAGIT, NAME_IT);
    for await (const one of walkFolder(folder)) {
      names += one.path.length;
      if (files.size >= MOST_ENTRIES || names > MOST_NAMES)
        throw new BagUnreadable('holds more files than any bag of this program', 'name the bag’s own folder');
      if (one.unnamed)
        odd.push({ path: one.path, what: 'has a name that is not UTF-8 text', hint: 'rename it' });
      else if (one.kind === 'link')
        odd.push({ path: one.path, what: 'is a link, and a bag holds files', hint: PUT_BACK });
      else if (one.kind === 'other')
        odd.push({ path: one.path, what: 'is a pipe, a socket or a device', hint: 'move it out of the bag' });
      else if (one.kind === 'file') {
        const { size } = await lstat(one.file);
        files.set(one.path, size);
        if (!isTag(one.path)) continue;
        tagBytes += size;
        if (size > LARGEST_TAG || tagBytes > MOST_TAGS)
          throw new BagUnreadable(
            `has a ${one.path} larger than that of any bag`,
            'name the bag’s own folder',
          );
        tags.set(one.path, await bytesOf(one.file));
      }
    }
  } catch (thrown) {
    const trouble = readTrouble(thrown);
    throw trouble === undefined ? thrown : new BagUnreadable(trouble, 'check who may read it');
  }
  return { name: path.basename(path.resolve(folder)), files, tags, odd };
}

const PUT_BACK = 'put the file itself in its place, from another copy of the bag';

async function digest(
  folder: string,
  wanted: ReadonlyMap<string, ReadonlySet<Algorithm>>,
  onBytes?: (n: number) => void,
): Promise<ReadonlyMap<string, Digested>> {
  const found = new Map<string, Digested>();
  await inLanes([...wanted], async ([file, algorithms], lane) => {
    try {
      const { digests } = await digestFile(path.join(folder, file), algorithms, lane, { onBytes });
      found.set(file, digests);
    } catch (thrown) {
      const trouble = readTrouble(thrown);
      if (trouble === undefined) throw thrown;
      found.set(file, { trouble });
    }
  });
  return found;
}
