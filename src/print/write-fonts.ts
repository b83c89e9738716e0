/**
 * Subset fonts as PDF objects, with the characters of every code.
 *
 * Pages are written in composite TrueType fonts (ISO 32000-1, 9.7). What is typed into a field comes later and from
 * another program, which needs a simple font (9.6.3) with a known encoding and all its letters.
 */
import { createHash } from 'node:crypto';
import type { Face, Faces } from './faces.js';
import type { BookedGlyph, GlyphBook } from './glyph-book.js';
import { numeral } from './numeral.js';
import { FACE_KEYS } from './paint.js';
import type { PdfDict, PdfStore, Ref } from './pdf-store.js';
import type { FaceName } from './type-styles.js';
import { TYPED_LETTERS } from './typed-letters.js';

/** The face of what is typed. */
const TYPED_FACE: FaceName = 'sans';

export interface WrittenFonts {
  /** Every face that was used, under its key. */
  readonly pages: PdfDict;
  /** For what is typed into fields; undefined where there are none, for it is some kilobytes. */
  readonly typed: Ref | undefined;
}

/** Six capital letters from what the subset holds; two different subsets of a face must not share a name. */
function subsetTag(face: Face, glyphs: readonly BookedGlyph[], typed: boolean): string {
  const digest = createHash('sha256')
    .update(`${face.postscriptName} ${glyphs.map((glyph) => glyph.id).join(' ')}${typed ? ' typed' : ''}`)
    .digest();
  return [...digest.subarray(0, 6)].map((byte) => String.fromCharCode(65 + (byte % 26))).join('');
}

function utf16Hex(text: string): string {
  let hex = '';
  for (let i = 0; i < text.length; i++) hex += text.charCodeAt(i).toString(16).padStart(4, '0');
  return hex;
}

/**
 * The CMap that says which characters each code stands for (ISO 32000-1, 9.10.3; at most 100 a section). Codes have
 * one byte or two.
 */
function toUnicode(codes: readonly { readonly code: number; readonly text: string }[], bytes: 1 | 2): string {
  const hex = (code: number): string => code.toString(16).padStart(bytes * 2, '0');
  const lines = codes
    .filter(({ text }) => text !== '')
    .map(({ code, text }) => `<${hex(code)}> <${utf16Hex(text)}>`);
  const sections: string[] = [];
  for (let i = 0; i < lines.length; i += 100) {
    const part = lines.slice(i, i + 100);
    sections.push(`${part.length} beginbfchar\n${part.join('\n')}\nendbfchar`);
  }
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    `1 begincodespacerange\n<${hex(0)}> <${hex(256 ** bytes - 1)}>\nendcodespacerange`,
    ...sections,
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
    '',
  ].join('\n');
}

/** Flags of a font descriptor (ISO 32000-1, table 123): serif, nonsymbolic, italic. */
function flagsOf(face: Face): number {
  const serif = face.name.startsWith('serif') ? 2 : 0;
  const italic = face.italicAngle === 0 ? 0 : 64;
  return 32 + serif + italic;
}

/** A font program in the file, with what every font that uses it must say of it. */
interface Program {
  readonly name: string;
  readonly descriptor: Ref;
  /** Places of the glyphs in it. */
  readonly ids: readonly number[];
}

function writeProgram(store: PdfStore, face: Face, glyphs: readonly BookedGlyph[], typed: boolean): Program {
  const { ids, program } = face.subset(
    glyphs.map((glyph) => glyph.id),
    typed ? [...TYPED_LETTERS.values()] : [],
  );
  const name = `${subsetTag(face, glyphs, typed)}+${face.postscriptName}`;
  const descriptor = store.add({
    Type: 'FontDescriptor',
    FontName: name,
    Flags: flagsOf(face),
    FontBBox: face.bbox,
    ItalicAngle: face.italicAngle,
    Ascent: face.ascent,
    Descent: face.descent,
    CapHeight: face.capHeight,
    // The width of upright stems is not in a TrueType file; these are usual for the two weights (from memory).
    StemV: face.name.endsWith('semibold') ? 120 : 80,
    FontFile2: store.stream(program, { Length1: program.length }),
  });
  return { name, descriptor, ids };
}

function writePageFont(store: PdfStore, program: Program, glyphs: readonly BookedGlyph[]): Ref {
  const { name, descriptor, ids } = program;
  const places = new Uint8Array((glyphs.length + 1) * 2);
  glyphs.forEach((glyph, i) => {
    const place = ids[i] ?? 0;
    places[glyph.code * 2] = place >> 8;
    places[glyph.code * 2 + 1] = place & 255;
  });
  const descendant = store.add({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont: name,
    CIDSystemInfo: { Registry: store.ascii('Adobe'), Ordering: store.ascii('Identity'), Supplement: 0 },
    FontDescriptor: descriptor,
    DW: 1000,
    W: [1, glyphs.map((glyph) => Number(numeral(glyph.width)))],
    CIDToGIDMap: store.stream(places),
  });
  return store.add({
    Type: 'Font',
    Subtype: 'Type0',
    BaseFont: name,
    Encoding: 'Identity-H',
    DescendantFonts: [descendant],
    ToUnicode: store.stream(toUnicode(glyphs, 2)),
  });
}

function writeTypedFont(store: PdfStore, face: Face, { name, descriptor }: Program): Ref {
  const [first, last] = [0x20, 0xff];
  // Codes that the encoding leaves open are bullets (ISO 32000-1, annex D.2).
  const bullet = '•'.codePointAt(0) ?? 0;
  const widths = Array.from({ length: last - first + 1 }, (_, i) =>
    Number(numeral(face.widthOf(TYPED_LETTERS.get(first + i) ?? bullet))),
  );
  const codes = [...TYPED_LETTERS].map(([code, codePoint]) => ({
    code,
    text: String.fromCodePoint(codePoint),
  }));
  return store.add({
    Type: 'Font',
    Subtype: 'TrueType',
    BaseFont: name,
    FirstChar: first,
    LastChar: last,
    Widths: widths,
    FontDescriptor: descriptor,
    Encoding: 'WinAnsiEncoding',
    ToUnicode: store.stream(toUnicode(codes, 1)),
  });
}

/** The fonts of a document. The letters to type with share the program of their face, which has most of them anyway. */
export function writeFonts(
  store: PdfStore,
  faces: Faces,
  book: GlyphBook,
  withFields: boolean,
): WrittenFonts {
  let typed: Ref | undefined;
  const pages: Record<string, Ref> = {};
  const used = book.used();
  for (const name of withFields ? new Set([...used, TYPED_FACE]) : used) {
    const types = withFields && name === TYPED_FACE;
    const glyphs = book.glyphsOf(name);
    const program = writeProgram(store, faces[name], glyphs, types);
    if (glyphs.length > 0) pages[FACE_KEYS[name]] = writePageFont(store, program, glyphs);
    if (types) typed = writeTypedFont(store, faces[name], program);
  }
  return { pages, typed };
}
