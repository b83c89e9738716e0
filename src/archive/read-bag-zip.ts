/** A bag in a ZIP file, read by its list at the end; what a file unpacks to is never held as a whole. */
import { stat } from 'node:fs/promises';
import type { Entry, ZipFile } from 'yauzl';
import { decodeText } from './bag-info.js';
import { FREE_SWELLING, MOST_SWELLING } from './bag-limits.js';
import type { Algorithm } from './bag-manifest.js';
import { type BagListing, type BagSource, BagUnreadable, type Digested, isTag } from './bag-source.js';
import { namesIn, sizesIn } from './bag-zip-header.js';
import { Hashes } from './file-digest.js';
import { PackListing } from './pack-listing.js';

/** `from`: a file's name, or the bytes themselves. */
export function readBagZip(from: string | Buffer): BagSource {
  return {
    list: async () => {
      const size = typeof from === 'string' ? (await stat(from)).size : from.length;
      return withZip(from, (zip) => list(zip, size));
    },
    digest: (wanted, onBytes) => withZip(from, (zip) => digest(zip, wanted, onBytes)),
  };
}

async function withZip<T>(from: string | Buffer, work: (zip: ZipFile) => Promise<T>): Promise<T> {
  const yauzl = await import('yauzl');
  let zip: ZipFile | undefined;
  try {
    // Names are read here, so that one that climbs out is told in our words.
    const options = { autoClose: false, decodeStrings: false, lazyEntries: true } as const;
    zip =
      typeof from === 'string'
        ? await yauzl.openPromise(from, options)
        : await yauzl.fromBufferPromise(from, options);
    return await work(zip);
  } catch (thrown) {
    throw asUnreadable(thrown);
  } finally {
    zip?.close();
  }
}

/** Whatever the library says of bytes from elsewhere is a fault of those bytes; a mistake of ours has no such words. */
function asUnreadable(thrown: unknown): unknown {
  if (thrown instanceof BagUnreadable || !(thrown instanceof Error)) return thrown;
  if (thrown instanceof TypeError || thrown instanceof ReferenceError) return thrown;
  return new BagUnreadable(
    `can’t be read as a ZIP file: ${thrown.message.slice(0, 200)}`,
    'it is cut short or damaged; take another copy of it',
  );
}

/** Bit 11 says that a name is UTF-8 (APPNOTE 4.4.4), and field 0x7075 says it once more in UTF-8 (4.6.9). */
async function nameOf(entry: Entry): Promise<string> {
  const isSaid =
    (entry.generalPurposeBitFlag & 0x800) !== 0 || entry.extraFields.some(({ id }) => id === 0x7075);
  // Many programs write UTF-8 and do not say so; what is no UTF-8 is the character set of the first ZIPs.
  const text = isSaid ? undefined : decodeText(entry.fileNameRaw, 'utf-8');
  if (text !== undefined) return text;
  const { getFileNameLowLevel } = await import('yauzl');
  return getFileNameLowLevel(entry.generalPurposeBitFlag, entry.fileNameRaw, entry.extraFields, true);
}

async function list(zip: ZipFile, packed: number): Promise<BagListing> {
  const listing = new PackListing();
  const most = Math.max(FREE_SWELLING, packed * MOST_SWELLING);
  const odd: BagListing['odd'][number][] = [];
  let all = 0;
  for await (const entry of zip.eachEntry()) {
    const name = await nameOf(entry);
    all += entry.uncompressedSize;
    if (all > most)
      throw new BagUnreadable(
        `unpacks to more than ${MOST_SWELLING} times its size, as no bag does`,
        'do not unpack it; ask for it again from where it came',
      );
    const path = listing.take(name, kindOf(entry, name), entry.uncompressedSize);
    const other = await otherInPlace(zip, entry, name);
    if (other !== undefined) odd.push({ path: path ?? name, what: other, hint: ASK });
    if (path === undefined || !isTag(path)) continue;
    const pieces: Buffer[] = [];
    const trouble = await through(zip, entry, (piece) => pieces.push(piece));
    if (trouble !== undefined)
      throw new BagUnreadable(`has a ${path} that ${trouble}`, 'take another copy of it');
    listing.keepTag(path, Buffer.concat(pieces));
  }
  const listed = listing.end();
  return { ...listed, odd: [...listed.odd, ...odd] };
}

const ASK = 'do not unpack it; ask for it again from where it came';

/**
 * How a file's own header, where its bytes lie, differs from the list at the end; to follow its name. Most programs
 * unpack by the list, those that read from a stream by the header. A header that can't be read is told when its bytes are.
 */
async function otherInPlace(zip: ZipFile, entry: Entry, name: string): Promise<string | undefined> {
  const header = await zip.readLocalFileHeaderPromise(entry).catch((thrown: unknown) => {
    if (thrown instanceof TypeError || thrown instanceof ReferenceError) throw thrown;
    return undefined;
  });
  if (header === undefined) return undefined;
  const names = namesIn(header);
  const wrong = names.find((one) => one !== name && !Buffer.from(one).equals(entry.fileNameRaw));
  if (!header.fileName.equals(entry.fileNameRaw) || wrong !== undefined)
    return `is called ${(wrong ?? header.fileName.toString('utf8')).slice(0, 200)} where its bytes lie in the ZIP, so programs differ in what they unpack`;
  const { size, packed } = sizesIn(header);
  if (size !== undefined && size !== entry.uncompressedSize) return otherSize(size, entry.uncompressedSize);
  if (packed !== undefined && packed !== entry.compressedSize) return otherSize(packed, entry.compressedSize);
  return undefined;
}

const otherSize = (here: number, listed: number): string =>
  `has ${here} bytes by the header where its bytes lie in the ZIP, and ${listed} by the list at its end, so programs differ in what they unpack`;

function kindOf(entry: Entry, name: string): Parameters<PackListing['take']>[1] {
  // The system that packed it, and the mode that Unix systems keep (APPNOTE 4.4.2 and 4.4.15, the latter by custom).
  const mode = entry.versionMadeBy >> 8 === 3 ? (entry.externalFileAttributes >>> 16) & 0o170000 : 0;
  if (mode === 0o120000) return { what: 'is a link, and a bag holds files' };
  if (name.endsWith('/')) return 'folder';
  if (mode !== 0 && mode !== 0o100000) return { what: 'is a pipe, a socket or a device' };
  return 'file';
}

/** Hands on what an entry unpacks to. Answers with why it can't be unpacked, to follow its name. */
async function through(
  zip: ZipFile,
  entry: Entry,
  each: (piece: Buffer) => void,
): Promise<string | undefined> {
  if (!entry.canDecodeFileData())
    return entry.isEncrypted() ? 'is locked with a password' : 'is packed in a way this program can’t unpack';
  try {
    for await (const piece of await zip.openReadStreamPromise(entry)) each(piece as Buffer);
    return undefined;
  } catch (thrown) {
    if (thrown instanceof TypeError || thrown instanceof ReferenceError) throw thrown;
    return `can’t be unpacked: ${(thrown as Error).message.slice(0, 200)}`;
  }
}

async function digest(
  zip: ZipFile,
  wanted: ReadonlyMap<string, ReadonlySet<Algorithm>>,
  onBytes?: (n: number) => void,
): Promise<ReadonlyMap<string, Digested>> {
  const found = new Map<string, Digested>();
  // The same walk again: what `list` passed over is passed over.
  const listing = new PackListing();
  for await (const entry of zip.eachEntry()) {
    const name = await nameOf(entry);
    const path = listing.take(name, kindOf(entry, name), entry.uncompressedSize);
    const algorithms = path === undefined ? undefined : wanted.get(path);
    if (path === undefined || algorithms === undefined) continue;
    const hashes = new Hashes(algorithms);
    const trouble = await through(zip, entry, (piece) => {
      hashes.update(piece);
      onBytes?.(piece.length);
    });
    found.set(path, trouble === undefined ? hashes.end() : { trouble });
  }
  return found;
}
