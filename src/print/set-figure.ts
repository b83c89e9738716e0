/** Photos, pairs, grids of photos and drawings, each with its caption. */
import type { DrawingBlock, PairBlock, PhotoBlock, PhotosBlock, Rich } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, textColumn } from './composer.js';
import { LETTER_STYLES } from './drawing-styles.js';
import { widthOf } from './set-text.js';
import type { Slab } from './slab.js';
import { slab } from './slab.js';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Height over width; pictures that are not there count as landscape. */
function aspectOf(composer: Composer, photo: string): number {
  const picture = composer.pictures.get(photo);
  return picture === undefined ? 0.75 : picture.height / picture.width;
}

/** The photo, or, where its picture is lacking, a plain area that says what should be seen. */
function pictureBoxes(composer: Composer, photo: string, at: Rect, block: string, tags: TagPath): Box[] {
  const alt = composer.altOf(photo);
  const figure: TagPath = [...tags, { type: 'Figure', key: `${block}/${photo}@${at.x},${at.y}`, alt }];
  if (composer.pictures.has(photo)) return [{ kind: 'picture', photo, ...at, block, tags: figure }];
  const inner = { x: at.x + 8, y: at.y + 8, width: at.width - 16 };
  const words = textColumn(composer, plainRich(alt), composer.styles.caption, inner, { block, tags: figure });
  return [
    { kind: 'rule', ink: 'wash', ...at, block, tags: [] },
    ...words.boxes.filter((box) => box.y + box.height <= at.y + at.height),
  ];
}

/** Air between a picture and its caption. */
export const CAPTION_GAP_PT = 4;

/** A figure's words, in their own element. */
export function captionColumn(
  composer: Composer,
  caption: Rich,
  at: { x: number; y: number; width: number },
  block: string,
  tags: TagPath,
): { boxes: Box[]; heightPt: number } {
  const owner = { block, tags: [...tags, { type: 'Caption', key: `${block}/caption@${at.x},${at.y}` }] };
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

export function setPhoto(composer: Composer, block: PhotoBlock, tags: TagPath): Slab[] {
  const { paper, tallestPhotoPt } = composer;
  const aspect = aspectOf(composer, block.photo);
  const widest = Math.min(paper.textPt * SINGLE_SHARE, tallestPhotoPt / aspect);
  const form = (width: number): Slab => {
    const height = width * aspect;
    const picture = pictureBoxes(composer, block.photo, { x: 0, y: 0, width, height }, block.id, tags);
    const at = { x: 0, y: height + CAPTION_GAP_PT, width: paper.textPt };
    const caption = captionColumn(composer, block.caption, at, block.id, tags);
    return asFigure(composer, height + caption.heightPt, [...picture, ...caption.boxes], [block.id]);
  };
  return [{ ...form(widest), smaller: SMALLER.map((share) => form(widest * share)) }];
}

/** One height for pictures that stand side by side: between square and wide, near what they are. */
function commonAspect(composer: Composer, photos: readonly string[]): number {
  const mean = photos.reduce((sum, photo) => sum + aspectOf(composer, photo), 0) / photos.length;
  return Math.min(1.3, Math.max(0.62, mean));
}

/** Between two pictures side by side. */
const PAIR_GAP_PT = 5;

/** Two photos are compared, so they shrink less than one. */
const PAIR_SMALLER = [0.92, 0.84];

/** A pair may be this much taller than a photo that stands for itself: it is what a reader compares. */
const PAIR_TALLER = 1.2;

export function setPair(composer: Composer, block: PairBlock, tags: TagPath): Slab[] {
  const { textPt } = composer.paper;
  const aspect = commonAspect(composer, [block.before, block.after]);
  const tallest = composer.tallestPhotoPt * PAIR_TALLER;
  const form = (measure: number): Slab => {
    const width = Math.min((measure - PAIR_GAP_PT) / 2, tallest / aspect);
    const height = width * aspect;
    const right = { x: width + PAIR_GAP_PT, y: 0, width, height };
    const boxes = [
      ...pictureBoxes(composer, block.before, { x: 0, y: 0, width, height }, block.id, tags),
      ...pictureBoxes(composer, block.after, right, block.id, tags),
    ];
    const at = { x: 0, y: height + CAPTION_GAP_PT, width: textPt };
    const caption = captionColumn(composer, block.caption, at, block.id, tags);
    return asFigure(composer, height + caption.heightPt, [...boxes, ...caption.boxes], [block.id]);
  };
  return [{ ...form(textPt), smaller: PAIR_SMALLER.map((share) => form(textPt * share)) }];
}

/** Rows of two in the text column; threes, and all rows of a sheet of few pages, over the full measure. */
export function setPhotos(composer: Composer, block: PhotosBlock, tags: TagPath): Slab[] {
  const columns = photoColumns(composer, block.photos.length);
  const measure = columns > 2 ? composer.paper.fullPt : composer.paper.textPt;
  const slabs: Slab[] = [];
  for (let i = 0; i < block.photos.length; i += columns) {
    const row = block.photos.slice(i, i + columns);
    const form = (share: number): Slab => photoRow(composer, block, row, { measure, share }, i === 0, tags);
    slabs.push({ ...form(1), smaller: SMALLER.map(form) });
  }
  return slabs;
}

function photoColumns(composer: Composer, count: number): number {
  if (count === 3) return 3;
  if (!composer.dense) return 2;
  // Three columns would leave the last of four or seven alone in its row.
  return count % 3 === 1 ? (count % 4 === 0 ? 4 : 2) : 3;
}

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
  const aspects = row.map((each) => Math.min(1.6, Math.max(0.5, aspectOf(composer, each.photo))));
  const widthOfOne = aspects.reduce((sum, aspect) => sum + 1 / aspect, 0);
  const widest = (size.measure - gap * (row.length - 1)) / widthOfOne;
  const height = Math.min(composer.tallestPhotoPt, widest) * size.share;
  let tall = height;
  let x = 0;
  const boxes = row.flatMap((each, j) => {
    const width = height / (aspects[j] ?? 0.75);
    const picture = pictureBoxes(composer, each.photo, { x, y: 0, width, height }, block.id, tags);
    const at = { x, y: height + CAPTION_GAP_PT, width };
    const caption = captionColumn(composer, each.caption, at, block.id, tags);
    tall = Math.max(tall, height + caption.heightPt);
    x += width + gap;
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
      block.id,
      tags,
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
