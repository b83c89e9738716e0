/**
 * Which glyphs a document uses, and the codes it writes them with.
 *
 * A code stands for a glyph *and* the characters it was drawn for, so that one glyph serving several characters (or
 * the stand-in for a missing one) still copies as what was written.
 */
import type { ShapedGlyph } from './faces.js';
import type { FaceName } from './type-styles.js';

export interface BookedGlyph {
  readonly code: number;
  readonly id: number;
  readonly text: string;
  readonly width: number;
}

export class GlyphBook {
  private readonly faces = new Map<FaceName, Map<string, BookedGlyph>>();

  /** The two-byte code of a glyph as four hex digits. Code 0 stays free for .notdef, which is never drawn. */
  codeOf(face: FaceName, glyph: ShapedGlyph): string {
    let booked = this.faces.get(face);
    if (booked === undefined) {
      booked = new Map();
      this.faces.set(face, booked);
    }
    const key = `${glyph.id} ${glyph.text}`;
    let entry = booked.get(key);
    if (entry === undefined) {
      entry = { code: booked.size + 1, id: glyph.id, text: glyph.text, width: glyph.width };
      booked.set(key, entry);
    }
    return entry.code.toString(16).padStart(4, '0');
  }

  /** Faces used so far, in order of first use. */
  used(): FaceName[] {
    return [...this.faces.keys()];
  }

  /** The glyphs of a face, by code. */
  glyphsOf(face: FaceName): BookedGlyph[] {
    return [...(this.faces.get(face)?.values() ?? [])];
  }
}
