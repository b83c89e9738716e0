/** Photos, pairs, rows of photos and drawings, each with its caption. Contact sheets are in `set-contact.ts`. */
import type { DrawingBlock, PairBlock, PhotoBlock, PhotosBlock, Rich } from '../packet/packet.js';
import { isPanorama } from '../packet/panorama.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, textColumn } from './composer.js';
import { LETTER_STYLES } from './drawing-styles.js';
import { widthOf } from './set-text.js';
import type { Slab } from './slab.js';
import { slab } from './slab.js';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Height over width; pictures that are not there count as landscape. */
export function aspectOf(composer: Composer, photo: string): number {
  const picture = composer.pictures.get(photo);
  return picture === undefined ? 0.75 : picture.height / picture.width;
}

/**
 * The photo, or, where its picture is lacking, a plain area that says what should be seen. `key` tells it from others
 * in its block.
 */
export function pictureBoxes(
  composer: Composer,
  photo: string,
  at: Rect,
  { block, tags, key }: Place,
): Box[] {
  const alt = composer.altOf(photo);
  const figure: TagPath = [...tags, { type: 'Figure', key: `${key}/picture`, alt }];
  if (composer.pictures.has(photo)) return [{ kind: 'picture', photo, ...at, block, tags: figure }];
  const inner = { x: at.x + 8, y: at.y + 8, width: at.width - 16 };
  const words = textColumn(composer, plainRich(alt), composer.styles.caption, inner, { block, tags: figure });
  return [
    { kind: 'rule', ink: 'wash', ...at, block, tags: [] },
    ...words.boxes.filter((box) => box.y + box.height <= at.y + at.height),
  ];
}

/** Whose a picture is, and which one of its block. */
export interface Place {
  readonly block: string;
  readonly tags: TagPath;
  readonly key: string;
}

/** Air between a picture and its caption. */
export const CAPTION_GAP_PT = 4;

/** A figure's words, in their own element. */
export function captionColumn(
  composer: Composer,
  caption: Rich,
  at: { x: number; y: number; width: number },
  { block, tags, key }: Place,
): { boxes: Box[]; heightPt: number } {
  const owner = { block, tags: [...tags, { type: 'Caption', key: `${key}/caption` }] };
  const column = textColumn(composer, caption, composer.styles.caption, at, owner);
  return column.heightPt === 0 ? column : { ...column, heightPt: column.heightPt + CAPTION_GAP_PT };
}

function asFigure(composer: Composer, heightPt: number, boxes: readonly Box[], anchors: string[]): Slab {
  const { figure } = composer.spaces;
  return { ...slab(heightPt, boxes, { beforePt: figure, afterPt: figure * 1.2, anchors }), floats: true };
}

/** Shares of a figure's size to try when the page would be filled better. */
const SMALLER = [0.9, 0.8, 0.7];

/** A single photo is at most this share of the text column wide. */
const SINGLE_SHARE = 0.6;

/** Whether a photo takes the full measure, in a row of its own; one that is not there doesn't. */
function fillsMeasure(composer: Composer, photo: string): boolean {
  const picture = composer.pictures.get(photo);
  return picture !== undefined && isPanorama(picture);
}

export function setPhoto(composer: Composer, block: PhotoBlock, tags: TagPath): Slab[] {
  const { paper, tallestPhotoPt } = composer;
  const aspect = aspectOf(composer, block.photo);
  const measure = fillsMeasure(composer, block.photo) ? paper.fullPt : paper.textPt * SINGLE_SHARE;
  const widest = Math.min(measure, tallestPhotoPt / aspect);
  const place = { block: block.id, tags, key: block.id };
  const form = (width: number): Slab => {
    const height = width * aspect;
    const picture = pictureBoxes(composer, block.photo, { x: 0, y: 0, width, height }, place);
    const at = { x: 0, y: height + CAPTION_GAP_PT, width: paper.textPt };
    const caption = captionColumn(composer, block.caption, at, place);
    return asFigure(composer, height + caption.heightPt, [...picture, ...caption.boxes], [block.id]);
  };
  return [{ ...form(widest), smaller: SMALLER.map((share) => form(widest * share)) }];
}

/** Between two pictures side by side, and between one and the word above it. */
const PAIR_GAP_PT = 5;
const WHEN_GAP_PT = 2;

/** Two photos are compared, so they shrink less than one. */
const PAIR_SMALLER = [0.92, 0.84];

/** A pair may be this much taller than a photo that stands for itself: it is what a reader compares. */
const PAIR_TALLER = 1.2;

/** Both photos cut to the pair's own shape, each under the word that tells which it is. */
export function setPair(composer: Composer, block: PairBlock, tags: TagPath): Slab[] {
  const { textPt } = composer.paper;
  const tallest = composer.tallestPhotoPt * PAIR_TALLER;
  const form = (measure: number): Slab => {
    const width = Math.min((measure - PAIR_GAP_PT) / 2, tallest * block.aspect);
    const height = width / block.aspect;
    const half = (word: string, photo: string, x: number): { boxes: Box[]; bottomPt: number } => {
      const place = { block: block.id, tags, key: `${block.id}/${word}` };
      const above = captionColumn(composer, strongRich(word), { x, y: 0, width }, place);
      const y = above.heightPt - CAPTION_GAP_PT + WHEN_GAP_PT;
      const picture = pictureBoxes(composer, photo, { x, y, width, height }, place);
      return { boxes: [...above.boxes, ...picture], bottomPt: y + height };
    };
    const before = half('Before', block.before, 0);
    const after = half('After', block.after, width + PAIR_GAP_PT);
    const at = { x: 0, y: before.bottomPt + CAPTION_GAP_PT, width: textPt };
    const caption = captionColumn(composer, block.caption, at, { block: block.id, tags, key: block.id });
    const boxes = [...before.boxes, ...after.boxes, ...caption.boxes];
    return asFigure(composer, before.bottomPt + caption.heightPt, boxes, [block.id]);
  };
  return [{ ...form(textPt), smaller: PAIR_SMALLER.map((share) => form(textPt * share)) }];
}

function strongRich(text: string): Rich {
  return [{ text, manner: 'strong' }];
}

/**
 * Rows of two in the text column; threes, and all rows of a sheet of few pages, over the full measure. A panorama has
 * a row of its own.
 */
export function setPhotos(composer: Composer, block: PhotosBlock, tags: TagPath): Slab[] {
  return rowsOf(composer, block.photos).map(({ row, measure }, i) => {
    const form = (share: number): Slab => photoRow(composer, block, row, { measure, share }, i === 0, tags);
    return { ...form(1), smaller: SMALLER.map(form) };
  });
}

interface Row {
  readonly row: PhotosBlock['photos'];
  readonly measure: number;
}

function rowsOf(composer: Composer, photos: PhotosBlock['photos']): Row[] {
  const { fullPt, textPt } = composer.paper;
  const others = photos.filter((each) => !fillsMeasure(composer, each.photo)).length;
  const columns = photoColumns(composer, others);
  const rows: Row[] = [];
  let open: PhotosBlock['photos'][number][] = [];
  const close = (): void => {
    if (open.length > 0) rows.push({ row: open, measure: columns > 2 ? fullPt : textPt });
    open = [];
  };
  for (const each of photos) {
    const panorama = fillsMeasure(composer, each.photo);
    if (panorama || open.length === columns) close();
    if (panorama) rows.push({ row: [each], measure: fullPt });
    else open.push(each);
  }
  close();
  return rows;
}

function photoColumns(composer: Composer, count: number): number {
  if (count === 3) return 3;
  if (!composer.dense) return 2;
  // Three columns would leave the last of four or seven alone in its row.
  return count % 3 === 1 ? (count % 4 === 0 ? 4 : 2) : 3;
}

/** A very tall photo gets at least this much width for its caption, as a share of the row's height. */
const LEAST_WIDTH = 0.5;

/** Photos of one height beside each other, none of them cut: labels are photographed to be read. */
function photoRow(
  composer: Composer,
  block: PhotosBlock,
  row: PhotosBlock['photos'],
  size: { readonly measure: number; readonly share: number },
  first: boolean,
  tags: TagPath,
): Slab {
  const gap = composer.spaces.figure;
  /** Width of each picture, and of its place, for a height of one. */
  const widths = row.map((each) => 1 / aspectOf(composer, each.photo));
  const places = widths.map((width) => Math.max(LEAST_WIDTH, width));
  const widthOfOne = places.reduce((sum, width) => sum + width, 0);
  const widest = (size.measure - gap * (row.length - 1)) / widthOfOne;
  const height = Math.min(composer.tallestPhotoPt, widest) * size.share;
  let tall = height;
  let x = 0;
  const boxes = row.flatMap((each, j) => {
    const place = { block: block.id, tags, key: each.id };
    const width = height * (widths[j] ?? 1);
    const room = height * (places[j] ?? 1);
    const picture = pictureBoxes(composer, each.photo, { x, y: 0, width, height }, place);
    const at = { x, y: height + CAPTION_GAP_PT, width: room };
    const caption = captionColumn(composer, each.caption, at, place);
    tall = Math.max(tall, height + caption.heightPt);
    x += room + gap;
    return [...picture, ...caption.boxes];
  });
  return asFigure(composer, tall, boxes, [...(first ? [block.id] : []), ...row.map((each) => each.id)]);
}

export function setDrawing(composer: Composer, block: DrawingBlock, tags: TagPath): Slab[] {
  const { paper } = composer;
  const { drawing } = block;
  const frame = paper.bottomPt - paper.topPt;
  const at = { x: 0, y: 0, width: drawing.width > paper.textPt ? paper.fullPt : paper.textPt };
  const captionAt = (y: number): ReturnType<typeof captionColumn> =>
    captionColumn(
      composer,
      block.caption,
      { ...at, y, width: Math.min(paper.textPt * 1.15, paper.fullPt) },
      { block: block.id, tags, key: block.id },
    );
  const room = frame - captionAt(0).heightPt - composer.spaces.figure;
  const scale = Math.min(1, paper.fullPt / drawing.width, room / drawing.height);
  noteMissing(composer, block);
  const height = drawing.height * scale;
  const box: Box = {
    kind: 'drawing',
    drawing,
    scale,
    ...at,
    width: drawing.width * scale,
    height,
    block: block.id,
    tags: [...tags, { type: 'Figure', key: block.id, alt: block.alt }],
  };
  const caption = captionAt(height + CAPTION_GAP_PT);
  return [asFigure(composer, height + caption.heightPt, [box, ...caption.boxes], [block.id])];
}

/** Lettering in drawings is shaped when it is painted; measuring it here finds what no face has. */
function noteMissing(composer: Composer, block: DrawingBlock): void {
  for (const shape of block.drawing.shapes) {
    if (shape.kind === 'text') widthOf(composer.setter, LETTER_STYLES[shape.style], shape.text);
  }
}
