/** The streams of a PDF, found without following anything in it: its tables may be anybody's. */

export interface PdfStream {
  /** Where the word `stream` begins. */
  readonly at: number;
  /** What stands between it and the next `endstream`, or the end of the file. */
  readonly data: Buffer;
  /** Whether an `endstream` follows. */
  readonly ended: boolean;
}

/** Also what follows the `stream` within `endstream`, which is data in no reader's eyes. */
export function* pdfStreams(bytes: Buffer): Generator<PdfStream> {
  // Looked for once: a file of a thousand streams before one end, or without any, is not read through a thousand times.
  let end = 0;
  for (let at = bytes.indexOf('stream'); at >= 0; at = bytes.indexOf('stream', at + 6)) {
    let begin = at + 6;
    if (bytes[begin] === 0x0d) begin++;
    if (bytes[begin] === 0x0a) begin++;
    if (end >= 0 && end < begin) end = bytes.indexOf('endstream', begin);
    yield { at, data: bytes.subarray(begin, end < 0 ? bytes.length : end), ended: end >= 0 };
  }
}

/** Whether bytes begin as deflated data does (RFC 1950, 2.2): to try and fail takes time with each of a million streams. */
export function beginsDeflated([method = 0, flags = 0]: Uint8Array): boolean {
  return method % 16 === 8 && (method * 256 + flags) % 31 === 0;
}
