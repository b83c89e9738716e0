/**
 * Whether a PDF unfolds into more than a paper of a house can need. The program that draws pages does what a page asks for,
 * and has no limit of its own: a few hundred bytes may ask for hours and gigabytes.
 */
import { inflateSync } from 'node:zlib';

/** Of what a page is drawn by, in bytes: a thousand times what a receipt has. A scanned page alone may have more. */
const MOST = { words: 16_000_000, picture: 256_000_000 } as const;
/** Streams packed in one another; more than one layer is rare. */
const LAYERS = 3;

/** Nothing of the file is followed: every stream is unpacked so far, wherever it stands. */
export function unfoldsTooFar(bytes: Buffer): boolean {
  // Looked for once: a file of a thousand streams before one end is not read through a thousand times.
  let end = 0;
  // What is said of a stream stands between `obj` and it; read on from the stream before, for the same reason.
  let before = 0;
  let picture = false;
  for (let at = bytes.indexOf('stream'); at >= 0; at = bytes.indexOf('stream', at + 6)) {
    if (bytes.subarray(at - 3, at).toString('latin1') === 'end') continue;
    let begin = at + 6;
    if (bytes[begin] === 0x0d) begin++;
    if (bytes[begin] === 0x0a) begin++;
    if (end < begin) end = bytes.indexOf('endstream', begin);
    const packed = bytes.subarray(begin, end < 0 ? bytes.length : end);
    const about = bytes.subarray(before, at);
    const object = about.lastIndexOf('obj');
    picture = (object < 0 && picture) || about.subarray(Math.max(0, object)).includes('/Image');
    before = at;
    const most = picture ? MOST.picture : MOST.words;
    if (isLonger(packed, most)) return true;
    // One that has no end reaches to the end of the file, and so would all behind it.
    if (end < 0) return false;
  }
  return false;
}

function isLonger(stream: Buffer, most: number): boolean {
  let part = stream;
  for (let layer = 0; layer <= LAYERS; layer++) {
    if (part.length > most) return true;
    // As deflated data begins (RFC 1950, 2.2): to try and fail takes time with each of a million streams.
    const [method = 0, flags = 0] = part;
    if (method % 16 !== 8 || (method * 256 + flags) % 31 !== 0) return false;
    try {
      part = inflateSync(part, { maxOutputLength: most });
    } catch (thrown) {
      // Not packed this way, or damaged, or longer than that.
      return (thrown as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
    }
  }
  return true;
}
