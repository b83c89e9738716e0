/** Everything that can be read out of a file, for searching: as it is, unpacked, and in every way a text can be written. */
import { constants, inflateRawSync, inflateSync } from 'node:zlib';

/** Packed within packed, for instance a PDF in a ZIP; deeper than this nothing of ours is. */
const DEPTH = 4;
/** A packed part is unpacked so far. */
const MOST = { maxOutputLength: 64 * 1024 * 1024, finishFlush: constants.Z_SYNC_FLUSH };

/**
 * The file's own bytes, and those of every packed part in it, wherever it lies: whatever begins as deflated data does (RFC
 * 1950, 2.2: streams of a PDF, its object streams and attachments, zTXt, iTXt and iCCP of a PNG), as gzip does (RFC 1952,
 * 2.3.1), and every entry of a ZIP (APPNOTE 4.3.7: a workbook), each searched for packed parts again.
 */
export function unpacked(bytes: Buffer, depth = DEPTH): Buffer[] {
  const found = [bytes];
  if (depth === 0) return found;
  for (const part of packedParts(bytes)) found.push(...unpacked(part, depth - 1));
  return found;
}

function* packedParts(bytes: Buffer): Generator<Buffer> {
  // The window is at most 32 KB (first byte 0x08 to 0x78), and in practice always that.
  for (const at of placesOf(bytes, Buffer.from([0x78]))) {
    if (((0x78 << 8) + (bytes[at + 1] ?? 0)) % 31 !== 0) continue;
    const part = opened(inflateSync, bytes.subarray(at));
    if (part !== undefined) yield part;
  }
  for (const at of placesOf(bytes, Buffer.from([0x1f, 0x8b, 0x08]))) {
    // A name may stand between the head and what is packed (2.3, FNAME).
    const named = ((bytes[at + 3] ?? 0) & 8) === 0 ? at + 9 : bytes.indexOf(0, at + 10);
    const part = opened(inflateRawSync, bytes.subarray(named + 1));
    if (part !== undefined) yield part;
  }
  for (const at of placesOf(bytes, Buffer.from('PK\x03\x04', 'latin1'))) {
    if (at + 30 > bytes.length || bytes.readUInt16LE(at + 8) !== 8) continue;
    const begin = at + 30 + bytes.readUInt16LE(at + 26) + bytes.readUInt16LE(at + 28);
    const part = opened(inflateRawSync, bytes.subarray(begin));
    if (part !== undefined) yield part;
  }
}

function* placesOf(bytes: Buffer, sign: Buffer): Generator<number> {
  for (let at = bytes.indexOf(sign); at >= 0; at = bytes.indexOf(sign, at + 1)) yield at;
}

function opened(open: typeof inflateSync, packed: Buffer): Buffer | undefined {
  try {
    // Chance makes one sign in a few thousand of a photo look like a beginning: a look at what follows settles most.
    open(packed.subarray(0, 64), MOST);
    const part = open(packed, MOST);
    return part.length === 0 ? undefined : part;
  } catch {
    // Not packed this way: its own bytes are searched.
    return undefined;
  }
}

/** A text as bytes may hold it, in small letters: plain, UTF-16 both ways round, hexadecimal of each, and base64 (as it is). */
function waysToWrite(text: string): {
  readonly small: readonly Buffer[];
  readonly exact: readonly Buffer[];
} {
  const plain = Buffer.from(text);
  const utf16le = Buffer.from(text, 'utf16le');
  const utf16be = Buffer.from(utf16le).swap16();
  const all = [plain, utf16le, utf16be];
  return {
    small: [...all.map(lower), ...all.map((bytes) => Buffer.from(bytes.toString('hex')))],
    exact: all.flatMap((bytes) => [0, 1, 2].map((offset) => inBase64(bytes, offset))),
  };
}

/** The signs that do not depend on what stands around, at one of the three offsets. */
function inBase64(bytes: Buffer, offset: number): Buffer {
  const whole = Buffer.concat([Buffer.alloc(offset), bytes]).toString('base64');
  return Buffer.from(whole.slice(offset === 0 ? 0 : 4, -4));
}

const lower = (bytes: Buffer): Buffer => Buffer.from(bytes.toString('latin1').toLowerCase(), 'latin1');

const signOf = (code: number): string => (code < 0x100 ? String.fromCharCode(code) : '?');

/**
 * Ways in which a text is spelt out within another one. Each takes and gives bytes as latin1, which is enough: what is
 * searched for is ASCII.
 */
export const SPELLINGS: Readonly<Record<string, (text: string) => string>> = {
  // RFC 3986, 2.1
  percent: (text) =>
    text.replace(/%([0-9a-f]{2})/giu, (_all, hex: string) => signOf(Number.parseInt(hex, 16))),
  // HTML 13.2.5.80; XML 4.1
  entities: (text) =>
    text.replace(/&#(?:x([0-9a-f]{1,6})|(\d{1,7}));?/giu, (_all, hex?: string, decimal?: string) =>
      signOf(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16)),
    ),
  // RFC 8259, 7; also of scripts and YAML: \u0071, \x71
  json: (text) =>
    text.replace(/\\(?:u([0-9a-f]{4})|x([0-9a-f]{2}))/giu, (_all, four?: string, two?: string) =>
      signOf(Number.parseInt(four ?? two ?? '', 16)),
    ),
  // ISO 32000-1, 7.3.4.2: octal codes, a line that goes on; 7.3.5: #71 in names
  pdf: (text) =>
    text
      .replace(/\\\r?\n/gu, '')
      .replace(/\\([0-7]{1,3})/gu, (_all, octal: string) => signOf(Number.parseInt(octal, 8) & 0xff))
      .replace(/\\([()\\])/gu, '$1')
      .replace(/#([0-9a-f]{2})/giu, (_all, hex: string) => signOf(Number.parseInt(hex, 16))),
  // RFC 2045, 6.7
  quotedPrintable: (text) =>
    text
      .replace(/=[ \t]*\r?\n/gu, '')
      .replace(/=([0-9a-f]{2})/giu, (_all, hex: string) => signOf(Number.parseInt(hex, 16))),
  // RFC 5545, 3.1; and base64 or hexadecimal in lines, which PDF allows anywhere
  folded: (text) => text.replace(/\r?\n[ \t]?/gu, ''),
  blanks: (text) => text.replace(/\s+/gu, ''),
  // Words that are parted by markup, and letters that each stand in an element or a span.
  markup: (text) => text.replace(/<[^<>]{0,300}>/gu, ''),
  // Adjusted letters in a content stream: [(qz) -3 (canary)] TJ
  kerned: (text) => text.replace(/\)\s*-?[\d.]*\s*\(/gu, ''),
  softened: (text) => text.replace(/\xc2\xad|\xe2\x80[\x8b-\x8d]/gu, ''),
};

/** Of a picture or a typeface the stretches that can be words: a tag, a comment, a packet of XMP. */
const STRETCHES = /(?:[\t\n\r\x20-\x7e]|\xc2\xad|\xe2\x80[\x8b-\x8d]){12,}/gu;

/** The bytes, and what each spelling makes of their words where it changes anything; last, all spellings one after another. */
function spelt(bytes: Buffer): Buffer[] {
  const text = wordsOf(bytes);
  const all = Object.values(SPELLINGS);
  const one = all.map((spelling) => spelling(text));
  const whole = all.reduce((so, spelling) => spelling(so), text);
  const changed = [...new Set([...one, whole])].filter((so) => so !== text);
  return [bytes, ...changed.map((so) => Buffer.from(so, 'latin1'))];
}

function wordsOf(bytes: Buffer): string {
  const text = bytes.toString('latin1');
  const stretches = (text.match(STRETCHES) ?? []).join('\n');
  // Words of other alphabets have other bytes between; a picture has hardly anything else.
  return stretches.length * 2 > text.length ? text : stretches;
}

/** Texts with one beginning are looked for one by one only where that beginning stands. */
const BEGINNING = 8;

/** Which of the texts stand somewhere in a file, in whatever spelling. The texts are ASCII. */
export function textsIn(bytes: Buffer, texts: readonly string[]): string[] {
  const groups = new Map<string, Map<string, ReturnType<typeof waysToWrite>>>();
  for (const text of texts) {
    const beginning = text.slice(0, BEGINNING);
    const group = groups.get(beginning) ?? new Map<string, ReturnType<typeof waysToWrite>>();
    groups.set(beginning, group.set(text, waysToWrite(text)));
  }
  const begun = [...groups].map(([beginning, group]) => ({ ways: waysToWrite(beginning), group }));
  const found = new Set<string>();
  for (const part of unpacked(bytes))
    for (const reading of spelt(part)) {
      const small = lower(reading);
      const stands = ({ small: ways, exact }: ReturnType<typeof waysToWrite>): boolean =>
        ways.some((way) => small.includes(way)) || exact.some((way) => reading.includes(way));
      for (const { ways, group } of begun) {
        if (!stands(ways)) continue;
        for (const [text, itsWays] of group) if (!found.has(text) && stands(itsWays)) found.add(text);
      }
    }
  return texts.filter((text) => found.has(text));
}
