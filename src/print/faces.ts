/**
 * The six faces: what they have, how a word is shaped in them, and the subset of one that a file carries.
 *
 * Takes font files, gives glyph ids and advances. HarfBuzz shapes: it is the reference for what OpenType asks, and ten
 * times as quick here as fontkit, which cuts the subsets (HarfBuzz's own come without a way to call them). Neither is
 * asked through pdf-lib, which drops kerning and figure features on the way.
 */
import { readFileSync } from 'node:fs';
import type { FontkitFont } from 'fontkit';
import { create } from 'fontkit';
import {
  Blob,
  Feature,
  Buffer as ShapingBuffer,
  Face as ShapingFace,
  Font as ShapingFont,
  shape,
} from 'harfbuzzjs';
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

/** Below `dist/fonts/`. */
export const FACE_FILES: Record<FaceName, string> = {
  serif: 'SourceSerif4-Regular.ttf',
  'serif-italic': 'SourceSerif4-It.ttf',
  'serif-semibold': 'SourceSerif4-Semibold.ttf',
  sans: 'SourceSans3-Regular.ttf',
  'sans-italic': 'SourceSans3-It.ttf',
  'sans-semibold': 'SourceSans3-Semibold.ttf',
};

// Both families have lining tabular figures unless asked otherwise.
const FEATURES: Record<Figures, readonly string[]> = {
  'old-style': ['onum', 'pnum'],
  lining: ['pnum'],
  tabular: ['lnum', 'tnum'],
};

/** Shapes texts in one font; its answer is in thousandths of the type size. */
function shaperOf(file: Uint8Array): (text: string, figures: Figures) => ShapedGlyph[] {
  const face = new ShapingFace(new Blob(file));
  const font = new ShapingFont(face);
  const k = 1000 / face.upem;
  const buffer = new ShapingBuffer();
  const features = Object.fromEntries(
    Object.entries(FEATURES).map(([figures, tags]) => [figures, tags.map((tag) => new Feature(tag))]),
  ) as Record<Figures, Feature[]>;
  return (text, figures) => {
    buffer.clearContents();
    buffer.addText(text);
    buffer.guessSegmentProperties();
    shape(font, buffer, features[figures]);
    const infos = buffer.getGlyphInfos();
    const positions = buffer.getGlyphPositions();
    return infos.map(({ codepoint: id, cluster }, i) => {
      const width = font.glyphHAdvance(id) * k;
      // A cluster's characters belong to its first glyph; further glyphs of it stand for none.
      const first = infos[i - 1]?.cluster !== cluster;
      const end = infos.slice(i).find((info) => info.cluster > cluster)?.cluster ?? text.length;
      return {
        id,
        text: first ? text.slice(cluster, end) : '',
        width,
        advance: (positions[i]?.xAdvance ?? 0) * k,
      };
    });
  };
}

function faceFrom(name: FaceName, file: Uint8Array): Face {
  const font: FontkitFont = create(file);
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
    shape: shaperOf(file),
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
      Object.entries(FACE_FILES).map(([name, file]) => [
        name,
        faceFrom(name as FaceName, readFileSync(new URL(file, folder))),
      ]),
    ) as Faces;
  }
  return loaded;
}
