/**
 * A bag packed as one file, ZIP or tar, and a tar sealed.
 *
 * Files are stored as they are, in the order they are given, with one time and one mode for all: the same files
 * give the same bytes, on every system and in every time zone. ZIP's deflate is left out, since its bytes depend on
 * the version of zlib, and photos and PDF hardly get smaller.
 */
import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { type Seal, sealStream } from './age-file.js';
import { ChangedWhileRead, digestBytes, type FileSeen, Hashes, piecesOf, writeAll } from './file-digest.js';
import { inStream } from './stream-pieces.js';

/** What a packed bag holds: the bytes, or the file that is read a second time and must still have its digest. */
export interface PackedFile {
  /** From the folder the bag is unpacked into: begins with the bag's name. */
  readonly path: string;
  readonly size: number;
  readonly sha256: string;
  readonly source: { readonly bytes: Uint8Array } | { readonly file: string; readonly seen: FileSeen };
}

export interface PackOrder {
  /** Made anew. */
  readonly to: string;
  readonly files: readonly PackedFile[];
  /** YYYY-MM-DD. */
  readonly day: string;
  readonly onBytes?: ((n: number) => void) | undefined;
}

const MODE = 0o644;

/** Noon in Greenwich is the same day nearly everywhere. */
export const noonOf = (day: string): Date => new Date(`${day}T12:00:00Z`);

/** Throws `ChangedWhileRead`, and the system's errors. */
export async function packZip({ to, files, day, onBytes }: PackOrder): Promise<void> {
  const { ZipFile } = await import('yazl');
  const zip = new ZipFile();
  const out = zip.outputStream as Readable;
  const fail = (thrown: unknown): void => void out.destroy(thrown as Error);
  zip.on('error', fail);
  // ZIP's own time has no zone: made of the clock on the wall, it is one and the same everywhere.
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  const common = { mtime: new Date(year, month - 1, date, 12), mode: 0o100000 | MODE, compress: false };
  const options = { ...common, forceDosTimestamp: true };
  for (const file of files) {
    if ('bytes' in file.source) zip.addBuffer(Buffer.from(file.source.bytes), file.path, options);
    else
      zip.addReadStreamLazy(file.path, { ...options, size: file.size }, (give) => {
        const stream = Readable.from(checked(file, onBytes), { objectMode: false, highWaterMark: 2 ** 20 });
        stream.on('error', fail);
        give(null, stream);
      });
  }
  zip.end();
  await write(to, out, day);
}

/** The same; with a seal, what is written is an age file with the tar in it. */
export async function packTar({ to, files, day, onBytes }: PackOrder, seal?: Seal): Promise<void> {
  const { createTarPacker } = await import('modern-tar');
  const { readable, controller } = createTarPacker();
  const mtime = noonOf(day);
  const fill = async (): Promise<void> => {
    try {
      for (const file of files) {
        const { path, size } = file;
        // Names beyond ASCII are said once more in the form that every system reads alike.
        const pax = /^[\x20-\x7e]*$/u.test(path) ? {} : { pax: { path } };
        const entry = controller
          .add({ name: path, size, mtime, mode: MODE, uid: 0, gid: 0, type: 'file', ...pax })
          .getWriter();
        for await (const piece of checked(file, onBytes)) await entry.write(piece);
        await entry.close();
      }
      controller.finalize();
    } catch (thrown) {
      controller.error(thrown as Error);
      throw thrown;
    }
  };
  const drain = async (): Promise<void> =>
    write(to, inStream(seal === undefined ? readable : await sealStream(readable, seal)), day);
  const [filled, drained] = await Promise.allSettled([fill(), drain()]);
  // Whichever failed first made the other fail; a file that was changed is the cause that can be told.
  for (const one of [filled, drained])
    if (one.status === 'rejected' && one.reason instanceof ChangedWhileRead) throw one.reason;
  for (const one of [drained, filled]) if (one.status === 'rejected') throw one.reason;
}

/** The file's bytes, which must turn out to be those that were hashed before. */
async function* checked(file: PackedFile, onBytes?: (n: number) => void): AsyncGenerator<Uint8Array> {
  if ('bytes' in file.source) {
    if (digestBytes(file.source.bytes, ['sha256']).get('sha256') !== file.sha256)
      throw new Error(`the digest of ${file.path} is not that of its bytes`);
    if (file.source.bytes.length > 0) yield file.source.bytes;
    return;
  }
  const hashes = new Hashes(['sha256']);
  for await (const piece of piecesOf(file.source.file, file.source.seen)) {
    hashes.update(piece);
    onBytes?.(piece.length);
    yield piece;
  }
  if (hashes.end().get('sha256') !== file.sha256) throw new ChangedWhileRead(file.source.file);
}

async function write(to: string, pieces: AsyncIterable<Uint8Array>, day: string): Promise<void> {
  const handle = await open(to, 'wx', MODE);
  try {
    let at = 0;
    for await (const piece of pieces) {
      await writeAll(handle, piece, at);
      at += piece.length;
    }
    await handle.sync();
    await handle.chmod(MODE);
    await handle.utimes(noonOf(day), noonOf(day));
  } finally {
    await handle.close();
  }
}
