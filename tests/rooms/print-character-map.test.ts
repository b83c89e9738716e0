/** A subset that can be asked for characters: read back by fontkit, and summed as OpenType asks. */
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { loadFaces } from '../../src/print/faces.js';
import { TYPED_LETTERS } from '../../src/print/typed-letters.js';

const { sans } = loadFaces();
const characters = [...TYPED_LETTERS.values()];
const { ids, program } = sans.subset([36, 40], characters);
const view = new DataView(program.buffer, program.byteOffset, program.byteLength);

describe('a subset with characters', () => {
  it('gives each character the glyph that it has in the face', () => {
    const font = create(program);
    const k = 1000 / font.unitsPerEm;
    for (const codePoint of characters) {
      const glyph = font.glyphForCodePoint(codePoint);
      expect(glyph.id, String.fromCodePoint(codePoint)).toBeGreaterThan(0);
      expect(glyph.advanceWidth * k).toBe(sans.widthOf(codePoint));
    }
    // A blank and a no-break blank, a hyphen and a soft one are drawn alike; no other two characters are.
    const glyphs = new Set(characters.map((codePoint) => font.glyphForCodePoint(codePoint).id));
    expect(glyphs.size).toBe(characters.length - 2);
    expect(font.hasGlyphForCodePoint('漢'.codePointAt(0) ?? 0)).toBe(false);
  });

  it('keeps the places of the glyphs that it was asked for', () => {
    expect(ids).toEqual(sans.subset([36, 40]).ids);
  });

  it('has its tables in order, each summed, and the sum that a whole file has', () => {
    const count = view.getUint16(4);
    const tags = Array.from({ length: count }, (_, i) => view.getUint32(12 + i * 16));
    expect(tags).toEqual([...tags].sort((a, b) => a - b));
    const sumOf = (from: number, length: number): number => {
      let sum = 0;
      for (let at = from; at < from + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
      return sum;
    };
    expect(program.length % 4).toBe(0);
    // OpenType specification, “Calculating Checksums”.
    expect(sumOf(0, program.length)).toBe(0xb1b0afba);
    for (let i = 0; i < count; i++) {
      const [tag, sum, start, length] = [0, 4, 8, 12].map((at) => view.getUint32(12 + i * 16 + at));
      if (tag === 0x68656164) continue;
      expect(sumOf(start ?? 0, (((length ?? 0) + 3) >> 2) << 2)).toBe(sum);
    }
  });
});
