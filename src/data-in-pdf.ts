/**
 * The data that a packet's PDF carries, found without reading the PDF.
 *
 * The file may come from anybody, and what a PDF shows is decided by tables that each reader follows in its own way. So
 * nothing of it is followed: every packed stream is unpacked so far, and what is a packet's data says so itself.
 */
import { constants, inflateSync } from 'node:zlib';
import { beginsDeflated, pdfStreams } from './intake/pdf-streams.js';
import { type FactsFile, readFactsFile } from './packet/facts-file.js';

/** Bytes that the data of no packet exceed, unpacked, of all streams together; and how many streams a packet may have. */
const MOST_UNPACKED = 16 * 1024 * 1024;
const MOST_STREAMS = 20_000;

/** Why there is nothing to compare. */
export type Unreadable = 'no-pdf' | 'locked' | 'no-data' | 'several';

/** The facts in a PDF, or why it has none. */
export function factsInPdf(pdf: Uint8Array): FactsFile | Unreadable {
  const bytes = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  // A viewer looks for it at the beginning (ISO 32000-1, 7.5.2; annex H allows a kilobyte before it).
  if (!bytes.subarray(0, 1024).includes('%PDF-')) return 'no-pdf';
  const found = new Map<string, FactsFile>();
  let streams = 0;
  let left = MOST_UNPACKED;
  for (const { data: packed } of pdfStreams(bytes)) {
    if (!beginsDeflated(packed)) continue;
    if (++streams > MOST_STREAMS) return 'no-data';
    const text = unpacked(packed, left);
    if (text === TOO_LONG) return 'no-data';
    left -= text?.length ?? 0;
    const facts = text === undefined ? undefined : readFactsFile(text);
    if (text !== undefined && facts !== undefined) found.set(text, facts);
  }
  const [facts, another] = found.values();
  if (another !== undefined) return 'several';
  if (facts !== undefined) return facts;
  return bytes.includes('/Encrypt') ? 'locked' : 'no-data';
}

const TOO_LONG = Symbol('too long');

/**
 * The text of a stream, at most `most` bytes of it; undefined where it is none, or does not begin as an object of JSON does.
 */
function unpacked(packed: Buffer, most: number): string | undefined | typeof TOO_LONG {
  try {
    // Most streams are pages and typefaces: a look at the beginning is enough.
    const begin = inflateSync(packed.subarray(0, 512), { finishFlush: constants.Z_SYNC_FLUSH });
    if (!begin.subarray(0, 64).toString('latin1').trimStart().startsWith('{')) return undefined;
    return new TextDecoder('utf-8', { fatal: true }).decode(
      inflateSync(packed, { maxOutputLength: Math.max(1, most) }),
    );
  } catch (thrown) {
    return (thrown as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE' ? TOO_LONG : undefined;
  }
}
