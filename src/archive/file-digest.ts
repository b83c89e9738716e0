/**
 * Files are read in large pieces and hashed as they pass, the next piece being read meanwhile.
 *
 * Hashing takes one processor, reading and writing go on beside it in Node's own threads; a file is never in
 * memory as a whole.
 */
import { createHash, type Hash } from 'node:crypto';
import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { Algorithm } from './bag-manifest.js';

/** Bytes read at once. */
const PIECE = 2 ** 20;
/** Files that are read beside each other. */
const LANES = 4;

export type Digests = ReadonlyMap<Algorithm, string>;

/** What tells that a file is still the one that was looked at. */
export interface FileSeen {
  readonly size: number;
  readonly mtimeMs: number;
  readonly ino: number;
}

/** A file was written to, or replaced, while it was being read. */
export class ChangedWhileRead extends Error {
  readonly file: string;
  constructor(file: string) {
    super(`${file} was changed while it was being read`);
    this.file = file;
  }
}

/** Two buffers that take turns: one is filled while the other is worked on. */
export interface Lane {
  readonly buffers: readonly [Buffer, Buffer];
}

/** Works on many files, a few beside each other. The first that fails ends it, when those begun have ended. */
export async function inLanes<T>(
  items: readonly T[],
  work: (item: T, lane: Lane) => Promise<void>,
): Promise<void> {
  let next = 0;
  let failed = false;
  const run = async (): Promise<void> => {
    const lane: Lane = { buffers: [Buffer.allocUnsafeSlow(PIECE), Buffer.allocUnsafeSlow(PIECE)] };
    while (next < items.length && !failed) {
      const item = items[next++] as T;
      try {
        await work(item, lane);
      } catch (thrown) {
        failed = true;
        throw thrown;
      }
    }
  };
  const ended = await Promise.allSettled(Array.from({ length: Math.min(LANES, items.length) }, run));
  const broken = ended.find((one) => one.status === 'rejected');
  if (broken?.status === 'rejected') throw broken.reason;
}

/** Hashes by one or more algorithms at once. */
export class Hashes {
  readonly #all: ReadonlyMap<Algorithm, Hash>;

  constructor(algorithms: Iterable<Algorithm>) {
    this.#all = new Map([...algorithms].map((name) => [name, createHash(name)]));
  }

  update(bytes: Uint8Array): void {
    for (const hash of this.#all.values()) hash.update(bytes);
  }

  end(): Digests {
    return new Map([...this.#all].map(([name, hash]) => [name, hash.digest('hex')]));
  }
}

export const digestBytes = (bytes: Uint8Array, algorithms: Iterable<Algorithm>): Digests => {
  const hashes = new Hashes(algorithms);
  hashes.update(bytes);
  return hashes.end();
};

export interface ReadFile {
  readonly bytes: number;
  readonly digests: Digests;
}

/**
 * Reads a file once, hashes it, and, with `to`, writes the very bytes that were hashed. Throws `ChangedWhileRead`
 * if it is not what was `seen`, or another at the end than at the beginning; throws the system's errors.
 */
export async function digestFile(
  file: string,
  algorithms: Iterable<Algorithm>,
  lane: Lane,
  also: {
    readonly seen?: FileSeen | undefined;
    readonly to?: FileHandle;
    readonly onBytes?: ((n: number) => void) | undefined;
  } = {},
): Promise<ReadFile> {
  const handle = await openPlain(file);
  try {
    const before = await handle.stat();
    if (!isStill(before, also.seen ?? before)) throw new ChangedWhileRead(file);
    const hashes = new Hashes(algorithms);
    let bytes = 0;
    let [filled, free] = lane.buffers;
    let reading = handle.read(filled, 0, PIECE, 0);
    for (;;) {
      const { bytesRead } = await reading;
      if (bytesRead === 0) break;
      const piece = filled.subarray(0, bytesRead);
      const at = bytes;
      bytes += bytesRead;
      [filled, free] = [free, filled];
      reading = handle.read(filled, 0, PIECE, bytes);
      // Nobody waits for it if writing fails first.
      reading.catch(() => undefined);
      const written = also.to === undefined ? undefined : writeAll(also.to, piece, at);
      hashes.update(piece);
      await written;
      also.onBytes?.(bytesRead);
    }
    const after = await handle.stat();
    if (bytes !== before.size || !isStill(after, before)) throw new ChangedWhileRead(file);
    return { bytes, digests: hashes.end() };
  } finally {
    await handle.close();
  }
}

/** The same for what packs files one behind the other: new buffers, so that a piece may wait for its turn. */
export async function* piecesOf(file: string, seen?: FileSeen): AsyncGenerator<Buffer> {
  const handle = await openPlain(file);
  try {
    const before = await handle.stat();
    if (!isStill(before, seen ?? before)) throw new ChangedWhileRead(file);
    let bytes = 0;
    const read = (at: number) => handle.read(Buffer.allocUnsafeSlow(PIECE), 0, PIECE, at);
    let reading = read(0);
    for (;;) {
      const { bytesRead, buffer } = await reading;
      if (bytesRead === 0) break;
      bytes += bytesRead;
      reading = read(bytes);
      reading.catch(() => undefined);
      yield buffer.subarray(0, bytesRead);
    }
    await reading;
    const after = await handle.stat();
    if (bytes !== before.size || !isStill(after, before)) throw new ChangedWhileRead(file);
  } finally {
    await handle.close();
  }
}

/** Opens a file to read it. Throws `ChangedWhileRead` if a pipe, which is not waited for, or a folder is in its place. */
export async function openPlain(file: string): Promise<FileHandle> {
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    if ((await handle.stat()).isFile()) return handle;
    throw new ChangedWhileRead(file);
  } catch (thrown) {
    await handle.close();
    throw thrown;
  }
}

/** All of a file, which must be one. */
export async function bytesOf(file: string): Promise<Buffer> {
  const handle = await openPlain(file);
  try {
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}

const isStill = (now: FileSeen, seen: FileSeen): boolean =>
  now.size === seen.size && now.mtimeMs === seen.mtimeMs && now.ino === seen.ino;

/** All of a piece: the system may take less than it is given. */
export async function writeAll(to: FileHandle, piece: Uint8Array, at: number): Promise<void> {
  for (let done = 0; done < piece.length; ) {
    const { bytesWritten } = await to.write(piece, done, piece.length - done, at + done);
    done += bytesWritten;
  }
}
