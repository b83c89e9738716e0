/** A font program that knows which glyph a character has: a subset is cut without that table. */

/** Appends a `cmap` of Unicode's first plane (platform 3, encoding 1, format 4) to a TrueType program without one. */
export function withCharacterMap(program: Uint8Array, glyphs: ReadonlyMap<number, number>): Uint8Array {
  const map = characterMap(glyphs);
  const view = viewOf(program);
  const count = view.getUint16(4);
  const records = [...Array(count).keys()].map((i) => {
    const at = 12 + i * 16;
    const [start, length] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    return { tag: view.getUint32(at), bytes: program.subarray(start, start + length) };
  });
  const tables = [...records, { tag: tagOf('cmap'), bytes: map }].sort((a, b) => a.tag - b.tag);
  return fontFile(view.getUint32(0), tables);
}

interface Table {
  readonly tag: number;
  readonly bytes: Uint8Array;
}

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

const tagOf = (name: string): number =>
  [...name].reduce((sum, letter) => sum * 256 + letter.charCodeAt(0), 0);

const paddedTo4 = (length: number): number => (length + 3) & ~3;

/** Sum of a table's 32-bit words, the last one filled with zeros. */
function checksum(bytes: Uint8Array): number {
  const padded = new Uint8Array(paddedTo4(bytes.length));
  padded.set(bytes);
  const view = viewOf(padded);
  let sum = 0;
  for (let at = 0; at < padded.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

/** Table directory and tables (OpenType specification, “Organization of an OpenType font”). */
function fontFile(version: number, tables: readonly Table[]): Uint8Array {
  const headBytes = 12 + tables.length * 16;
  const out = new Uint8Array(tables.reduce((sum, { bytes }) => sum + paddedTo4(bytes.length), headBytes));
  const view = viewOf(out);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, version);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * (tables.length - 2 ** power));
  let at = headBytes;
  let head: number | undefined;
  tables.forEach(({ tag, bytes }, i) => {
    out.set(bytes, at);
    if (tag === tagOf('head')) {
      head = at;
      // The sum of the whole file is counted with this field empty.
      view.setUint32(at + 8, 0);
    }
    const record = 12 + i * 16;
    view.setUint32(record, tag);
    view.setUint32(record + 4, checksum(out.subarray(at, at + bytes.length)));
    view.setUint32(record + 8, at);
    view.setUint32(record + 12, bytes.length);
    at += paddedTo4(bytes.length);
  });
  if (head !== undefined) view.setUint32(head + 8, (0xb1b0afba - checksum(out)) >>> 0);
  return out;
}

/** Runs of characters whose glyphs count up with them. */
function segmentsOf(glyphs: ReadonlyMap<number, number>): { from: number; to: number; glyph: number }[] {
  const segments: { from: number; to: number; glyph: number }[] = [];
  for (const [character, glyph] of [...glyphs].sort(([a], [b]) => a - b)) {
    const last = segments.at(-1);
    const goesOn =
      last !== undefined && last.to + 1 === character && last.glyph + (character - last.from) === glyph;
    if (goesOn) last.to = character;
    else segments.push({ from: character, to: character, glyph });
  }
  return segments;
}

function characterMap(glyphs: ReadonlyMap<number, number>): Uint8Array {
  // The format ends with a segment for the last code, which has no glyph.
  const segments = [...segmentsOf(glyphs), { from: 0xffff, to: 0xffff, glyph: 0 }];
  const count = segments.length;
  const power = Math.floor(Math.log2(count));
  const words = [
    // Header: version, one subtable, for Windows and Unicode, 12 bytes from here.
    ...[0, 1, 3, 1, 0, 12],
    ...[4, 16 + count * 8, 0, count * 2, 2 ** (power + 1), power, (count - 2 ** power) * 2],
    ...segments.map(({ to }) => to),
    0,
    ...segments.map(({ from }) => from),
    ...segments.map(({ from, glyph }) => (glyph - from) & 0xffff),
    ...segments.map(() => 0),
  ];
  const out = new Uint8Array(words.length * 2);
  const view = viewOf(out);
  words.forEach((word, i) => {
    view.setUint16(i * 2, word);
  });
  return out;
}
