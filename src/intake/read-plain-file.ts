import { constants, createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';

/**
 * Opens a plain file to read it. Throws the system's error, and of what is no file by now, a pipe or a folder that was
 * put in its place, one with the code `ENOTFILE`. A pipe is not waited for.
 */
export async function openPlain(file: string, more: { readonly noLink?: boolean } = {}): Promise<FileHandle> {
  const { O_RDONLY, O_NONBLOCK = 0, O_NOFOLLOW = 0 } = constants;
  const handle = await open(file, O_RDONLY | O_NONBLOCK | (more.noLink === true ? O_NOFOLLOW : 0));
  try {
    if ((await handle.stat()).isFile()) return handle;
    throw refused(file, 'ENOTFILE', 'is no plain file');
  } catch (thrown) {
    await handle.close();
    throw thrown;
  }
}

const refused = (file: string, code: string, what: string): Error =>
  Object.assign(new Error(`${file} ${what}`), { code, syscall: 'read', path: file });

/** All of a plain file. Throws what `openPlain` throws, and of more bytes than `most` an error with `EFBIG`. */
export async function readPlainFile(file: string, most = Number.POSITIVE_INFINITY): Promise<Buffer> {
  const handle = await openPlain(file);
  try {
    if ((await handle.stat()).size > most) throw refused(file, 'EFBIG', `has more than ${most} bytes`);
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}

/** What a shell hands over for `<(…)` and for its own input: a pipe that somebody writes into. */
const HANDED_OVER = /^\/(?:dev\/(?:stdin|fd\/\d+)|proc\/self\/fd\/\d+)$/u;

/**
 * A file that was named on the command line, up to `most` bytes and one more. Besides plain files, as `openPlain`
 * opens them, also what the shell hands over; any other pipe may have nobody who writes, and a device has no end.
 */
export async function readGivenFile(file: string, most: number): Promise<Buffer> {
  const stream = HANDED_OVER.test(file)
    ? createReadStream(file, { end: most })
    : (await openPlain(file)).createReadStream({ end: most });
  const pieces: Buffer[] = [];
  for await (const piece of stream) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}
