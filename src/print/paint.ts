/**
 * A planned page becomes PDF operators.
 *
 * Takes boxes, gives the text of a content stream with every painted thing inside marked content, and the links.
 * Knows no PDF objects: those are made in `write-….ts`. PDF's y axis grows upwards, a plan's downwards; the turn is
 * made here and nowhere else.
 */
import type { Picture } from '../packet/packet.js';
import type { Box, FieldBox, PlannedPage, Span, TagPath, TextBox } from './box.js';
import type { GlyphBook } from './glyph-book.js';
import type { InkName } from './inks.js';
import { INKS } from './inks.js';
import type { Letters, ShapedPart } from './letters.js';
import { numeral } from './numeral.js';
import { paintDrawing } from './paint-drawing.js';
import type { FaceName, Figures } from './type-styles.js';

export interface PaintedLink {
  /** Anchor it leads to. */
  readonly to: string;
  /** What the link says. */
  readonly text: string;
  /** Left, bottom, right, top in PDF coordinates. */
  readonly rect: readonly [number, number, number, number];
  /** The structure element of the link's words. */
  readonly tags: TagPath;
}

/** A field to be made: it paints itself, empty or filled in. */
export interface PaintedField {
  readonly field: FieldBox;
  /** Left, bottom, right, top in PDF coordinates. */
  readonly rect: readonly [number, number, number, number];
}

export interface PaintedPage {
  readonly operators: string;
  /** The structure element of each marked stretch, by its number on the page. */
  readonly marked: readonly TagPath[];
  readonly links: readonly PaintedLink[];
  readonly fields: readonly PaintedField[];
  /** Photos painted, by id. */
  readonly photos: readonly string[];
}

/** Resource names of faces in content streams. */
export const FACE_KEYS: Record<FaceName, string> = {
  serif: 'R',
  'serif-italic': 'RI',
  'serif-semibold': 'RB',
  sans: 'S',
  'sans-italic': 'SI',
  'sans-semibold': 'SB',
};

/** Collects operators; opens and closes marked content as boxes' owners change. */
export class Canvas {
  readonly marked: TagPath[] = [];
  readonly links: PaintedLink[] = [];
  readonly fields: PaintedField[] = [];
  readonly photos = new Set<string>();
  readonly book: GlyphBook;
  readonly letters: Letters;
  private readonly out: string[] = [];
  private openKey: string | undefined;
  private fillInk: InkName | undefined;

  constructor(book: GlyphBook, letters: Letters) {
    this.book = book;
    this.letters = letters;
  }

  op(text: string): void {
    this.out.push(text);
  }

  /** Goes on painting for this element, or for none (an artifact). */
  for(tags: TagPath): void {
    const key = tags.map((tag) => tag.key).join('\n');
    if (key === this.openKey) return;
    this.closeMark();
    this.openKey = key;
    const last = tags.at(-1);
    if (last === undefined) {
      this.op('/Artifact BMC');
    } else {
      this.op(`/${last.type} <</MCID ${this.marked.length}>> BDC`);
      this.marked.push(tags);
    }
  }

  closeMark(): void {
    if (this.openKey !== undefined) this.op('EMC');
    this.openKey = undefined;
  }

  fill(ink: InkName): void {
    if (ink === this.fillInk) return;
    this.fillInk = ink;
    this.op(`${INKS[ink].map(numeral).join(' ')} rg`);
  }

  stroke(ink: InkName): void {
    this.op(`${INKS[ink].map(numeral).join(' ')} RG`);
  }

  /** Saves or restores the graphics state; the remembered ink doesn't outlive it. */
  save(): void {
    this.op('q');
  }

  restore(): void {
    this.op('Q');
    this.fillInk = undefined;
  }

  /** Shows a text from the current text position on; blanks are real glyphs. */
  show(face: FaceName, figures: Figures, sizePt: number, text: string): void {
    let current: FaceName | undefined;
    let array = '';
    const flush = (): void => {
      if (array !== '') this.op(`[<${array}>] TJ`.replaceAll('<>', ''));
      array = '';
    };
    const add = (part: ShapedPart): void => {
      if (part.face !== current) {
        flush();
        current = part.face;
        this.op(`/${FACE_KEYS[part.face]} ${numeral(sizePt)} Tf`);
      }
      for (const glyph of part.glyphs) {
        array += this.book.codeOf(part.face, glyph);
        // TJ moves left by thousandths: what kerning takes away from the glyph's own width.
        const back = glyph.width - glyph.advance;
        if (Math.abs(back) >= 0.5) array += `>${numeral(back)}<`;
      }
    };
    const blank = this.letters.shape(face, 'tabular', ' ').parts[0] ?? { face, glyphs: [] };
    text.split(' ').forEach((word, i) => {
      if (i > 0) add(blank);
      if (word !== '') for (const part of this.letters.shape(face, figures, word).parts) add(part);
    });
    flush();
  }

  finish(): string {
    this.closeMark();
    return `${this.out.join('\n')}\n`;
  }
}

function paintSpan(canvas: Canvas, box: TextBox, span: Span, pageHeight: number): void {
  const linked: TagPath =
    span.to === undefined || box.tags.length === 0
      ? box.tags
      : [...box.tags, { type: 'Link', key: `link:${span.to}@${box.y.toFixed(2)},${span.xPt.toFixed(2)}` }];
  canvas.for(linked);
  const x = box.x + span.xPt;
  const baseline = pageHeight - box.y - box.baseline;
  if (span.to !== undefined) {
    const top = pageHeight - box.y;
    canvas.links.push({
      to: span.to,
      text: span.text.trim(),
      rect: [x, top - box.height, x + span.widthPt, top],
      tags: linked,
    });
  }
  if (span.underlined === true) {
    canvas.fill('accent-soft');
    canvas.op(`${[x, baseline - span.sizePt * 0.2, span.widthPt, 0.5].map(numeral).join(' ')} re f`);
  }
  canvas.fill(span.ink);
  canvas.op('BT');
  canvas.op(`1 0 0 1 ${numeral(x)} ${numeral(baseline)} Tm`);
  canvas.show(span.face, span.figures, span.sizePt, span.text);
  canvas.op('ET');
}

function paintShape(canvas: Canvas, box: Extract<Box, { kind: 'shape' }>, pageHeight: number): void {
  const { x, width } = box;
  const y = pageHeight - box.y - box.height;
  const inset = 0.35;
  if (box.standing === 'documented') {
    canvas.fill('accent');
    canvas.op(`${[x, y, width, box.height].map(numeral).join(' ')} re f`);
    return;
  }
  canvas.stroke('accent');
  canvas.op(`${inset * 2} w`);
  const outline = [x + inset, y + inset, width - inset * 2, box.height - inset * 2];
  canvas.op(`${outline.map(numeral).join(' ')} re S`);
  if (box.standing === 'owner') {
    canvas.fill('accent');
    canvas.op(`${[x, y, width / 2, box.height].map(numeral).join(' ')} re f`);
  }
}

function paintFrame(canvas: Canvas, box: Extract<Box, { kind: 'frame' }>, pageHeight: number): void {
  const left = numeral(box.x);
  const right = numeral(box.x + box.width);
  const top = numeral(pageHeight - box.y);
  const bottom = numeral(pageHeight - box.y - box.height);
  canvas.stroke('ink');
  canvas.op('0.7 w');
  if (!box.openTop && !box.openBottom) {
    canvas.op(`${left} ${bottom} m ${right} ${bottom} l ${right} ${top} l ${left} ${top} l s`);
    return;
  }
  if (!box.openTop)
    canvas.op(`${left} ${bottom} m ${left} ${top} l ${right} ${top} l ${right} ${bottom} l S`);
  else if (!box.openBottom)
    canvas.op(`${left} ${top} m ${left} ${bottom} l ${right} ${bottom} l ${right} ${top} l S`);
  else canvas.op(`${left} ${top} m ${left} ${bottom} l S ${right} ${top} m ${right} ${bottom} l S`);
}

function paintPicture(
  canvas: Canvas,
  box: Extract<Box, { kind: 'picture' }>,
  picture: Picture | undefined,
  key: string,
  pageHeight: number,
): void {
  if (picture === undefined) return;
  canvas.photos.add(box.photo);
  const scale = Math.max(box.width / picture.width, box.height / picture.height);
  const width = picture.width * scale;
  const height = picture.height * scale;
  const y = pageHeight - box.y - box.height;
  const left = box.x - (width - box.width) / 2;
  const bottom = y - (height - box.height) / 2;
  canvas.save();
  canvas.op(`${[box.x, y, box.width, box.height].map(numeral).join(' ')} re W n`);
  canvas.op(`${numeral(width)} 0 0 ${numeral(height)} ${numeral(left)} ${numeral(bottom)} cm`);
  canvas.op(`/${key} Do`);
  canvas.restore();
}

function paintBox(
  canvas: Canvas,
  box: Box,
  pageHeight: number,
  pictures: ReadonlyMap<string, Picture>,
  keyOf: (photo: string) => string,
): void {
  if (box.kind === 'field') {
    const top = pageHeight - box.y;
    canvas.fields.push({ field: box, rect: [box.x, top - box.height, box.x + box.width, top] });
    return;
  }
  // Each span of a text says for itself whose it is: a link's words are the link's. An empty cell has none.
  if (box.kind !== 'text' || box.spans.length === 0) canvas.for(box.tags);
  switch (box.kind) {
    case 'text':
      for (const span of box.spans) paintSpan(canvas, box, span, pageHeight);
      return;
    case 'rule':
      canvas.fill(box.ink);
      canvas.op(
        `${[box.x, pageHeight - box.y - box.height, box.width, box.height].map(numeral).join(' ')} re f`,
      );
      return;
    case 'shape':
      paintShape(canvas, box, pageHeight);
      return;
    case 'frame':
      paintFrame(canvas, box, pageHeight);
      return;
    case 'picture':
      paintPicture(canvas, box, pictures.get(box.photo), keyOf(box.photo), pageHeight);
      return;
    case 'drawing':
      paintDrawing(canvas, box, pageHeight);
      return;
  }
}

/** Paints a page. `keyOf` names a photo's image in the page's resources. */
export function paintPage(
  page: PlannedPage,
  pageHeight: number,
  book: GlyphBook,
  letters: Letters,
  pictures: ReadonlyMap<string, Picture>,
  keyOf: (photo: string) => string,
): PaintedPage {
  const canvas = new Canvas(book, letters);
  for (const box of page.boxes) paintBox(canvas, box, pageHeight, pictures, keyOf);
  return {
    operators: canvas.finish(),
    marked: canvas.marked,
    links: canvas.links,
    fields: canvas.fields,
    photos: [...canvas.photos],
  };
}
