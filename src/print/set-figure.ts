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
const CAPTION_GAP_PT = 4;

function captionColumn(
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
  return slab(heightPt, boxes, { beforePt: composer.unitPt * 1.5, afterPt: composer.unitPt * 2, anchors });
}

/** Shares of a figure's size to try when it would not fit on the rest of a page. */
const SMALLER = [0.85, 0.7];

export function setPhoto(composer: Composer, block: PhotoBlock, tags: TagPath): Slab[] {
  const { paper } = composer;
  const tallest = (paper.bottomPt - paper.topPt) * composer.tallestPhoto;
  const aspect = aspectOf(composer, block.photo);
  const widest = Math.min(paper.textPt, tallest / aspect);
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
  return Math.min(1.15, Math.max(0.62, mean));
}

/** Between two pictures side by side. */
const PAIR_GAP_PT = 5;

export function setPair(composer: Composer, block: PairBlock, tags: TagPath): Slab[] {
  const { fullPt, textPt } = composer.paper;
  const natural = commonAspect(composer, [block.before, block.after]);
  const form = (measure: number, aspect: number): Slab => {
    const width = (measure - PAIR_GAP_PT) / 2;
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
  const flat = Math.min(natural, 0.75);
  const flattest = Math.min(natural, 0.64);
  // A sheet of few pages has its pairs in the text column from the start.
  if (composer.dense)
    return [{ ...form(textPt, natural), smaller: [form(textPt, flat), form(textPt, flattest)] }];
  const smaller = [form(fullPt, flat), form(textPt, natural), form(textPt, flat), form(textPt, flattest)];
  return [{ ...form(fullPt, natural), smaller }];
}

/** Two columns, on a sheet of few pages rather three over the full measure; each row is one slab. */
export function setPhotos(composer: Composer, block: PhotosBlock, tags: TagPath): Slab[] {
  const gap = composer.unitPt * 1.5;
  // Three columns would leave the last of four or seven alone in its row.
  const columns = composer.dense && block.photos.length % 3 !== 1 ? 3 : 2;
  const measure = columns === 3 ? composer.paper.fullPt : composer.paper.textPt;
  const width = (measure - gap * (columns - 1)) / columns;
  const slabs: Slab[] = [];
  for (let i = 0; i < block.photos.length; i += columns) {
    const row = block.photos.slice(i, i + columns);
    const height =
      width *
      commonAspect(
        composer,
        row.map((each) => each.photo),
      );
    let tall = height;
    const boxes = row.flatMap((each, j) => {
      const x = j * (width + gap);
      const picture = pictureBoxes(composer, each.photo, { x, y: 0, width, height }, block.id, tags);
      const at = { x, y: height + CAPTION_GAP_PT, width };
      const caption = captionColumn(composer, each.caption, at, block.id, tags);
      tall = Math.max(tall, height + caption.heightPt);
      return [...picture, ...caption.boxes];
    });
    slabs.push(
      slab(tall, boxes, {
        beforePt: composer.unitPt * 1.5,
        afterPt: composer.unitPt * 1.5,
        anchors: [...(i === 0 ? [block.id] : []), ...row.map((each) => each.id)],
      }),
    );
  }
  return slabs;
}

export function setDrawing(composer: Composer, block: DrawingBlock, tags: TagPath): Slab[] {
  const { paper } = composer;
  const { drawing } = block;
  const frame = paper.bottomPt - paper.topPt;
  const at = { x: 0, y: 0, width: drawing.width > paper.textPt ? paper.fullPt : paper.textPt };
  const captionAt = (y: number): ReturnType<typeof captionColumn> =>
    captionColumn(composer, block.caption, { ...at, y, width: paper.textPt * 1.15 }, block.id, tags);
  const room = frame - captionAt(0).heightPt - composer.unitPt;
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
