/** Subset fonts as PDF objects: composite TrueType fonts (ISO 32000-1, 9.7) with the characters of every code. */
import { createHash } from 'node:crypto';
import type { Face, Faces } from './faces.js';
import type { BookedGlyph, GlyphBook } from './glyph-book.js';
import { numeral } from './numeral.js';
import { FACE_KEYS } from './paint.js';
import type { PdfDict, PdfStore, Ref } from './pdf-store.js';

/** Six capital letters from what the subset holds; two different subsets of a face must not share a name. */
function subsetTag(face: Face, glyphs: readonly BookedGlyph[]): string {
  const digest = createHash('sha256')
    .update(`${face.postscriptName} ${glyphs.map((glyph) => glyph.id).join(' ')}`)
    .digest();
  return [...digest.subarray(0, 6)].map((byte) => String.fromCharCode(65 + (byte % 26))).join('');
}

function utf16Hex(text: string): string {
  let hex = '';
  for (let i = 0; i < text.length; i++) hex += text.charCodeAt(i).toString(16).padStart(4, '0');
  return hex;
}

/** The CMap that says which characters each code stands for (ISO 32000-1, 9.10.3; at most 100 a section). */
function toUnicode(glyphs: readonly BookedGlyph[]): string {
  const lines = glyphs
    .filter((glyph) => glyph.text !== '')
    .map((glyph) => `<${glyph.code.toString(16).padStart(4, '0')}> <${utf16Hex(glyph.text)}>`);
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
    '1 begincodespacerange\n<0000> <ffff>\nendcodespacerange',
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

function writeFont(store: PdfStore, face: Face, glyphs: readonly BookedGlyph[]): Ref {
  const { ids, program } = face.subset(glyphs.map((glyph) => glyph.id));
  const name = `${subsetTag(face, glyphs)}+${face.postscriptName}`;
  const places = new Uint8Array((glyphs.length + 1) * 2);
  glyphs.forEach((glyph, i) => {
    const place = ids[i] ?? 0;
    places[glyph.code * 2] = place >> 8;
    places[glyph.code * 2 + 1] = place & 255;
  });
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
    ToUnicode: store.stream(toUnicode(glyphs)),
  });
}

/** The font resources of a document: every face that was used, under its key. */
export function writeFonts(store: PdfStore, faces: Faces, book: GlyphBook): PdfDict {
  return Object.fromEntries(
    book.used().map((name) => [FACE_KEYS[name], writeFont(store, faces[name], book.glyphsOf(name))]),
  );
}
