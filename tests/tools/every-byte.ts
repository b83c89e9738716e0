/** Everything that can be read out of a file, for searching: as it is, unpacked, and in every way a text can be written. */
import { inflateSync } from 'node:zlib';

/** The file's own bytes, and those of every packed stream in it (PDF, and pictures that pack their notes). */
export function unpacked(bytes: Buffer): Buffer[] {
  const found = [bytes];
  let at = bytes.indexOf('stream');
  while (at >= 0) {
    const start = at + 'stream'.length;
    const skip = bytes[start] === 0x0d ? 2 : 1;
    const end = bytes.indexOf('endstream', start);
    if (end > 0 && bytes.subarray(at - 3, at).toString('latin1') !== 'end') {
      const inflated = inflate(bytes.subarray(start + skip, end));
      if (inflated !== undefined) found.push(inflated);
    }
    at = bytes.indexOf('stream', start);
  }
  return found;
}

function inflate(packed: Buffer): Buffer | undefined {
  try {
    return inflateSync(packed);
  } catch {
    // Not packed this way (a photo): its own bytes are searched.
    return undefined;
  }
}

/** A text as bytes may hold it: plain, UTF-16 both ways round, hexadecimal of each, base64 at all three offsets. */
export function waysToWrite(text: string): Buffer[] {
  const utf16le = Buffer.from(text, 'utf16le');
  const utf16be = Buffer.from(utf16le).swap16();
  const hex = [Buffer.from(text), utf16be].flatMap((bytes) => [
    Buffer.from(bytes.toString('hex')),
    Buffer.from(bytes.toString('hex').toUpperCase()),
  ]);
  const base64 = [0, 1, 2].map((offset) => {
    const whole = Buffer.concat([Buffer.alloc(offset), Buffer.from(text)]).toString('base64');
    // The first and last signs also hold bits of what stands around.
    return Buffer.from(whole.slice(offset === 0 ? 0 : 4, -4));
  });
  return [Buffer.from(text), utf16le, utf16be, ...hex, ...base64];
}

const lower = (bytes: Buffer): Buffer => Buffer.from(bytes.toString('latin1').toLowerCase(), 'latin1');

/** Which of the texts stand somewhere in a file, in whatever spelling of capitals. */
export function textsIn(bytes: Buffer, texts: readonly string[]): string[] {
  const places = unpacked(bytes).flatMap((one) => [one, lower(one)]);
  return texts.filter((text) => waysToWrite(text).some((way) => places.some((place) => place.includes(way))));
}
