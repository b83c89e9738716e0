import { constants, createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';

/**
 * All of a plain file. Throws the system's error; of what is no file by now, a pipe or a folder that was put in its
 * place, one with the code `ENOTFILE`, and of more bytes than `most` one with `EFBIG`. A pipe is not waited for.
 */
export async function readPlainFile(file: string, most = Number.POSITIVE_INFINITY): Promise<Buffer> {
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  const refused = (code: string, what: string): Error =>
    Object.assign(new Error(`${file} ${what}`), { code, syscall: 'read', path: file });
  try {
    const found = await handle.stat();
    if (!found.isFile()) throw refused('ENOTFILE', 'is no plain file');
    if (found.size > most) throw refused('EFBIG', `has more than ${most} bytes`);
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}

/** What a shell hands over for `<(…)` and for its own input: a pipe that somebody writes into. */
const HANDED_OVER = /^\/(?:dev\/(?:stdin|fd\/\d+)|proc\/self\/fd\/\d+)$/u;

/**
 * A file that was named on the command line, up to `most` bytes and one more. Besides plain files, as `readPlainFile`
 * takes them, also what the shell hands over; any other pipe may have nobody who writes, and a device has no end.
 */
export async function readGivenFile(file: string, most: number): Promise<Buffer> {
  if (!HANDED_OVER.test(file)) return readPlainFile(file);
  const pieces: Buffer[] = [];
  for await (const piece of createReadStream(file, { end: most })) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}
