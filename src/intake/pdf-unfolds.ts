/**
 * Whether a PDF unfolds into more than a paper of a house can need. The program that draws pages does what a page asks for,
 * and has no limit of its own: a few hundred bytes may ask for hours and gigabytes.
 */
import { inflateSync } from 'node:zlib';
import { beginsDeflated, pdfStreams } from './pdf-streams.js';

/** Of what a page is drawn by, in bytes: a thousand times what a receipt has. A scanned page alone may have more. */
const MOST = { words: 16_000_000, picture: 256_000_000 } as const;
/** Streams packed in one another; more than one layer is rare. */
const LAYERS = 3;

/** Nothing of the file is followed: every stream is unpacked so far, wherever it stands. */
export function unfoldsTooFar(bytes: Buffer): boolean {
  // What is said of a stream stands between `obj` and it; read on from the stream before, so that each byte is read once.
  let before = 0;
  let picture = false;
  for (const { at, data, ended } of pdfStreams(bytes)) {
    if (bytes.subarray(at - 3, at).toString('latin1') === 'end') continue;
    const about = bytes.subarray(before, at);
    const object = about.lastIndexOf('obj');
    picture = (object < 0 && picture) || about.subarray(Math.max(0, object)).includes('/Image');
    before = at;
    const most = picture ? MOST.picture : MOST.words;
    if (isLonger(data, most)) return true;
    // One that has no end reaches to the end of the file, and so would all behind it.
    if (!ended) return false;
  }
  return false;
}

function isLonger(stream: Buffer, most: number): boolean {
  let part = stream;
  for (let layer = 0; layer <= LAYERS; layer++) {
    if (part.length > most) return true;
    if (!beginsDeflated(part)) return false;
    try {
      part = inflateSync(part, { maxOutputLength: most });
    } catch (thrown) {
      // Not packed this way, or damaged, or longer than that.
      return (thrown as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
    }
  }
  return true;
}
