/** The part of fontkit 2.0.4 that `faces.ts` uses, and `layout` for its test; the package ships no types. */
declare module 'fontkit' {
  export interface FontkitGlyph {
    readonly id: number;
    readonly codePoints: readonly number[];
    readonly advanceWidth: number;
  }
  export interface FontkitFont {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly capHeight: number;
    readonly xHeight: number;
    readonly italicAngle: number;
    readonly bbox: { minX: number; minY: number; maxX: number; maxY: number };
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): FontkitGlyph;
    layout(
      text: string,
      features: Record<string, boolean>,
    ): {
      readonly glyphs: readonly FontkitGlyph[];
      readonly positions: readonly { xAdvance: number; xOffset: number; yOffset: number }[];
    };
    createSubset(): { includeGlyph(id: number): number; encode(): Uint8Array };
  }
  export function create(bytes: Uint8Array): FontkitFont;
}
