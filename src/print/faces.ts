/**
 * The six faces: what they have, how a word is shaped in them, and the subset of one that a file carries.
 *
 * Takes font files, gives glyph ids and advances. The only file that imports fontkit. fontkit is asked directly
 * (not through pdf-lib) because pdf-lib drops kerning and figure features on the way.
 */
import { readFileSync } from 'node:fs';
import type { FontkitFont } from 'fontkit';
import { create } from 'fontkit';
import { withCharacterMap } from './character-map.js';
import type { FaceName, Figures } from './type-styles.js';

/** One glyph in a shaped word. Advances are thousandths of the type size. */
export interface ShapedGlyph {
  readonly id: number;
  /** The characters this glyph stands for; several for a ligature. */
  readonly text: string;
  /** The glyph's own width, as the font file says. */
  readonly width: number;
  /** How far to go on to the next glyph: the width with kerning. */
  readonly advance: number;
}

export interface Face {
  readonly name: FaceName;
  readonly postscriptName: string;
  readonly italicAngle: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly bbox: readonly [number, number, number, number];
  has(codePoint: number): boolean;
  /** Of a character by itself, as the font file says: thousandths of the type size. */
  widthOf(codePoint: number): number;
  /** Shapes a text without line breaks; not cached. */
  shape(text: string, figures: Figures): ShapedGlyph[];
  /**
   * The font program that holds only these glyphs; the answer's `ids` are the glyphs' places in it. With characters,
   * it can be asked for their glyphs; they must be among those that the face has.
   */
  subset(
    ids: readonly number[],
    characters?: readonly number[],
  ): { readonly ids: readonly number[]; readonly program: Uint8Array };
}

export type Faces = Record<FaceName, Face>;

const FILES: Record<FaceName, string> = {
  serif: 'SourceSerif4-Regular.ttf',
  'serif-italic': 'SourceSerif4-It.ttf',
  'serif-semibold': 'SourceSerif4-Semibold.ttf',
  sans: 'SourceSans3-Regular.ttf',
  'sans-italic': 'SourceSans3-It.ttf',
  'sans-semibold': 'SourceSans3-Semibold.ttf',
};

// Both families have lining tabular figures unless asked otherwise.
const FEATURES: Record<Figures, Record<string, boolean>> = {
  'old-style': { onum: true, pnum: true },
  lining: { pnum: true },
  tabular: { lnum: true, tnum: true },
};

function faceFrom(name: FaceName, font: FontkitFont): Face {
  const k = 1000 / font.unitsPerEm;
  return {
    name,
    postscriptName: font.postscriptName,
    italicAngle: font.italicAngle,
    ascent: font.ascent * k,
    descent: font.descent * k,
    capHeight: font.capHeight * k,
    bbox: [font.bbox.minX * k, font.bbox.minY * k, font.bbox.maxX * k, font.bbox.maxY * k],
    has: (codePoint) => font.hasGlyphForCodePoint(codePoint),
    shape(text, figures) {
      const { glyphs, positions } = font.layout(text, FEATURES[figures]);
      return glyphs.map((glyph, i) => ({
        id: glyph.id,
        text: String.fromCodePoint(...glyph.codePoints),
        width: glyph.advanceWidth * k,
        advance: (positions[i]?.xAdvance ?? glyph.advanceWidth) * k,
      }));
    },
    subset(ids, characters = []) {
      const subset = font.createSubset();
      const places = ids.map((id) => subset.includeGlyph(id));
      const glyphs = new Map(
        characters.map((codePoint) => [codePoint, subset.includeGlyph(font.glyphForCodePoint(codePoint).id)]),
      );
      const program = subset.encode();
      return { ids: places, program: glyphs.size === 0 ? program : withCharacterMap(program, glyphs) };
    },
    widthOf: (codePoint) => font.glyphForCodePoint(codePoint).advanceWidth * k,
  };
}

/**
 * Makes a font answer for what it is asked, whatever it was asked before.
 *
 * fontkit keeps one object a glyph, with the characters it was *first* asked for: none, if an earlier document's
 * subset took the glyph as part of another (the point of a colon). Words would then copy as nothing, or as another
 * character that shares the glyph, depending on which packet was printed first.
 */
function withoutMemoryOfCharacters(font: FontkitFont): FontkitFont {
  const kept = font.getGlyph.bind(font);
  font.getGlyph = (id, codePoints = []) => {
    const glyph = kept(id, codePoints);
    // A code that the font lacks has no glyph at all.
    return glyph === null ? glyph : Object.create(glyph, { codePoints: { value: codePoints } });
  };
  return font;
}

let loaded: Faces | undefined;

/**
 * The faces from `dist/fonts/`, read once a process.
 *
 * Throws the file system's error when a font file is absent: the compile step copies them there.
 */
export function loadFaces(): Faces {
  if (loaded === undefined) {
    const folder = new URL('../../dist/fonts/', import.meta.url);
    loaded = Object.fromEntries(
      Object.entries(FILES).map(([name, file]) => [
        name,
        faceFrom(name as FaceName, withoutMemoryOfCharacters(create(readFileSync(new URL(file, folder))))),
      ]),
    ) as Faces;
  }
  return loaded;
}
