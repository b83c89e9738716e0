/**
 * Characters on their way to glyphs: which spellings become one, which face has a character, what stands in for
 * one that no face has.
 *
 * Takes text, gives shaped words, and remembers them: measuring and painting ask for the same words again and
 * again, and shaping is most of the work of a page.
 */
import type { Face, Faces, ShapedGlyph } from './faces.js';
import type { FaceName, Figures } from './type-styles.js';

/** Drawn for a character that no face has. Source Sans has it; it can't be taken for a letter. */
const STAND_IN = '□';

/** A stretch of one word in one face. */
export interface ShapedPart {
  readonly face: FaceName;
  readonly glyphs: readonly ShapedGlyph[];
}

export interface ShapedWord {
  readonly parts: readonly ShapedPart[];
  /** Thousandths of the type size. */
  readonly width: number;
  /** Characters that no face has, each drawn as the stand-in. */
  readonly missing: readonly string[];
}

/** Soft hyphens, joiners, direction and variation signs: they steer other letters, and nothing is drawn for them. */
const UNSEEN = /[\p{Cf}\p{Variation_Selector}]/gu;

/**
 * One spelling for what looks the same: composed accents, one hyphen, no invisible characters, control characters
 * as blanks. A no-break blank stays one until the line breaker has seen it. The font has one glyph for each of
 * these families, and a reader who copies or searches text should find one spelling.
 */
export function normaliseText(text: string): string {
  return text
    .normalize('NFC')
    .replace(UNSEEN, '')
    .replace(/[\u202F\u2007]/gu, '\u00A0')
    .replace(/[\u2000-\u2006\u2008-\u200A\u205F\u3000]/gu, ' ')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')
    .replace(/\u2010/gu, '-');
}

const SANS_OF: Record<FaceName, FaceName> = {
  serif: 'sans',
  'serif-italic': 'sans-italic',
  'serif-semibold': 'sans-semibold',
  sans: 'sans',
  'sans-italic': 'sans',
  'sans-semibold': 'sans',
};

export interface Letters {
  readonly faces: Faces;
  /** Shapes one word (or any text that is not broken inside). */
  shape(face: FaceName, figures: Figures, text: string): ShapedWord;
  /** Width of a blank, thousandths of the type size. */
  blank(face: FaceName): number;
}

/** Shaping with fallback and memory over a set of faces. */
export function lettersOf(faces: Faces): Letters {
  const known = new Map<string, ShapedWord>();
  const blanks = new Map<FaceName, number>();

  function shapeAnew(name: FaceName, figures: Figures, text: string): ShapedWord {
    const parts: ShapedPart[] = [];
    const missing: string[] = [];
    for (const stretch of stretchesOf(faces, name, text)) {
      if (stretch.face === undefined) {
        missing.push(stretch.text);
        parts.push({ face: 'sans', glyphs: [standIn(faces.sans, stretch.text)] });
      } else {
        parts.push({ face: stretch.face, glyphs: faces[stretch.face].shape(stretch.text, figures) });
      }
    }
    const width = parts.reduce((sum, part) => part.glyphs.reduce((s, glyph) => s + glyph.advance, sum), 0);
    return { parts, width, missing };
  }

  return {
    faces,
    shape(face, figures, text) {
      const key = `${face}|${figures}|${text}`;
      let word = known.get(key);
      if (word === undefined) {
        // A bound, so that a long-lived process (a watch) does not grow for ever.
        if (known.size > 50_000) known.clear();
        word = shapeAnew(face, figures, text);
        known.set(key, word);
      }
      return word;
    },
    blank(face) {
      let width = blanks.get(face);
      if (width === undefined) {
        width = faces[face].shape(' ', 'tabular')[0]?.advance ?? 250;
        blanks.set(face, width);
      }
      return width;
    },
  };
}

/** The glyph of the stand-in that still says, to whoever copies it, which character was meant. */
function standIn(sans: Face, character: string): ShapedGlyph {
  const glyph = sans.shape(STAND_IN, 'tabular')[0];
  if (glyph === undefined) throw new Error('the sans face has no stand-in glyph');
  return { ...glyph, text: character };
}

/** Cuts a text where the face must change: to the sans of the same cut, or to none. */
function stretchesOf(
  faces: Faces,
  name: FaceName,
  text: string,
): { face: FaceName | undefined; text: string }[] {
  const stretches: { face: FaceName | undefined; text: string }[] = [];
  for (const character of text) {
    const codePoint = character.codePointAt(0) ?? 0;
    const face = faces[name].has(codePoint)
      ? name
      : faces[SANS_OF[name]].has(codePoint)
        ? SANS_OF[name]
        : undefined;
    const last = stretches.at(-1);
    if (last !== undefined && face !== undefined && last.face === face) last.text += character;
    else stretches.push({ face, text: character });
  }
  return stretches;
}

let shared: Letters | undefined;

/** The letters of the process's faces, with one memory for all packets. */
export function sharedLetters(load: () => Faces): Letters {
  shared ??= lettersOf(load());
  return shared;
}
