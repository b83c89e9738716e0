/**
 * What a PDF may have been before something was added behind it.
 *
 * Programs that fill in a form, sign or comment leave the file as it is and write what they change behind its end
 * (ISO 32000-1, 7.5.6). So each mark of an end in a file may be where the file ended that it was made from.
 */
import { createHash } from 'node:crypto';

/** The mark of a PDF's end (ISO 32000-1, 7.5.5), and the line ends that may follow it and belong to the same file. */
const END = Buffer.from('%%EOF', 'latin1');
const LINE_ENDS: readonly string[] = ['', '\n', '\r', '\r\n'];

/** Marks that are looked at: more than attached papers bring with them, and few enough for a file made to waste time. */
const MOST_ENDS = 10_000;

/** By the SHA-256 of each beginning that ends as a PDF does, and of the whole: how many bytes stand behind it. */
export function pdfBeginnings(pdf: Uint8Array): ReadonlyMap<string, number> {
  const bytes = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  const found = new Map<string, number>();
  const hash = createHash('sha256');
  let hashed = 0;
  const take = (end: number): void => {
    hash.update(bytes.subarray(hashed, end));
    hashed = end;
    found.set(hash.copy().digest('hex'), bytes.length - end);
  };
  let at = bytes.indexOf(END);
  for (let n = 0; at >= 0 && n < MOST_ENDS; n++) {
    const end = at + END.length;
    for (const line of LINE_ENDS)
      if (bytes.subarray(end, end + line.length).equals(Buffer.from(line, 'latin1'))) take(end + line.length);
    at = bytes.indexOf(END, end);
  }
  take(bytes.length);
  return found;
}
