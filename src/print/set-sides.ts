/**
 * One leaf, printed on both sides: the sheet of the open house.
 *
 * Its first section is side one, all others are side two. Type, photo and white space are chosen so that each side is
 * one page and well filled: the largest type with which both sides fit, then as much air as is left. Nothing is cut; a
 * text too long for two sides goes on to a third, and whoever builds the packet says so.
 */
import type { Block, Drawing, DrawingBlock, Packet, PhotoBlock } from '../packet/packet.js';
import { printedBlocks } from '../packet/words-of.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, rule, textColumn } from './composer.js';
import type { LineBreaker, LineRange } from './lines.js';
import { DUST_PT, PageCursor } from './page-cursor.js';
import { keepHeadings, type Pagination, paginate } from './paginate.js';
import { aspectOf, CAPTION_GAP_PT, captionColumn, pictureBoxes } from './set-figure.js';
import { setEdition, setStandingLast } from './set-front.js';
import { setSectionTitle } from './set-prose.js';
import { extentOf } from './set-text.js';
import { sideSpaces, sideStyles, withLargeCells } from './side-styles.js';
import type { Slab } from './slab.js';
import { moved, slab } from './slab.js';
import type { TypeStyle } from './type-styles.js';

/** Sets one block into slabs, as in every other packet. */
type SetBlock = (composer: Composer, block: Block, tags: TagPath) => Slab[];

/** How a side is set: type as a part of the usual size, the photo's height in points, white space. */
interface Trial {
  readonly type: number;
  readonly photoPt: number;
  readonly air: number;
}

const trials = (types: readonly number[], photosPt: readonly number[]): Trial[] =>
  types.flatMap((type) => photosPt.map((photoPt) => ({ type, photoPt, air: 1 })));

/** Large to small: the type first, down to nine points; then the photo, which is what the eye falls on; then both. */
const TRIALS: readonly Trial[] = [
  ...trials([1.2, 1.15, 1.1, 1.06, 1.03, 1, 0.97, 0.94, 0.91], [250, 225, 205]),
  ...trials([0.94, 0.91, 0.88, 0.85, 0.82], [180, 150]),
];

const SMALLEST: Trial = { type: 0.82, photoPt: 150, air: 1 };

/** White space grows to this many times its usual measure at most; then a side rather ends early. */
const MOST_AIR = 2.6;

/** Both sides, as pages. More than two only where the texts are too long for one leaf in the smallest type. */
export function fillSides(composer: Composer, packet: Packet, set: SetBlock): Pagination {
  const setter = { ...composer.setter, breakLines: remembering(composer.setter.breakLines) };
  const known = new Map<string, Slab[]>();
  /** Blocks look the same whatever the photo's size. */
  const setIn =
    ({ type, air }: Trial): SetBlock =>
    (within, block, tags) => {
      const key = `${type} ${air} ${block.id}`;
      const slabs = known.get(key) ?? set(within, block, tags);
      known.set(key, slabs);
      return slabs;
    };
  const one = (trial: Trial): Side => sideOne(sized({ ...composer, setter }, trial), packet, setIn(trial));
  const two = (trial: Trial): Side => sideTwo(sized({ ...composer, setter }, trial), packet, setIn(trial));
  const hasPhoto = packet.sections[0]?.blocks.some((block) => block.kind === 'photo') ?? false;
  const first = filled(one, hasPhoto, 1);
  const second = filled(two, false, first.pages.length + 1);
  return { pages: [...first.pages, ...second.pages], anchors: [...first.anchors, ...second.anchors] };
}

/** The same lines for the same words: most trials differ in white space alone, and breaking lines is what takes long. */
function remembering(breakLines: LineBreaker): LineBreaker {
  const known = new Map<string, LineRange[]>();
  return (chunks, measurePt) => {
    const key = `${measurePt} ${chunks.map(({ widthPt, gapPt }) => `${widthPt} ${gapPt}`).join(' ')}`;
    const lines = known.get(key) ?? breakLines(chunks, measurePt);
    known.set(key, lines);
    return lines;
  };
}

/** The same grid with another type. The frame stays, so that heads and feet stand where they always do. */
function sized(composer: Composer, { type, photoPt, air }: Trial): Composer {
  const linePt = composer.paper.linePt * type;
  return {
    ...composer,
    paper: { ...composer.paper, linePt },
    unitPt: linePt / 2,
    styles: sideStyles(type),
    spaces: sideSpaces(type, air),
    tallestPhotoPt: photoPt,
  };
}

/** What stands on a side, and what stands at its foot. */
interface Side {
  readonly composer: Composer;
  readonly slabs: readonly Slab[];
  readonly foot: Slab | undefined;
}

const roomOf = ({ composer: { paper } }: Side): number => paper.bottomPt - paper.topPt;

/** How far down a side reaches, with the room that its last slabs ask for below them. */
function heightOf({ composer, slabs, foot }: Side): number {
  const cursor = new PageCursor(composer.paper);
  for (const each of [...slabs, ...(foot === undefined ? [] : [foot])]) cursor.advance(each);
  return Math.max(cursor.y, cursor.demandPt);
}

const fits = (side: Side): boolean => heightOf(side) <= roomOf(side) + DUST_PT;

function largestThatFits(sideOf: (trial: Trial) => Side, hasPhoto: boolean): Trial {
  let refused: Trial | undefined;
  for (const trial of TRIALS) {
    // A side without a photo is as tall whatever the photo is.
    if (refused?.type === trial.type && !hasPhoto) continue;
    if (fits(sideOf(trial))) return trial;
    refused = trial;
  }
  return SMALLEST;
}

/** A side in the largest type that fits on its page, with as much air as the page has then, and its foot at the page's. */
function filled(sideOf: (trial: Trial) => Side, hasPhoto: boolean, firstNumber: number): Pagination {
  // Where not even the smallest type fits, no other need be tried: long texts take long to set.
  const trial = fits(sideOf(SMALLEST)) ? largestThatFits(sideOf, hasPhoto) : SMALLEST;
  const inAir = (air: number): Side => sideOf({ ...trial, air });
  let [least, most] = [1, MOST_AIR];
  if (trial !== SMALLEST && fits(inAir(most))) least = most;
  for (let step = 0; step < 6 && least < most && trial !== SMALLEST; step++) {
    const air = (least + most) / 2;
    if (fits(inAir(air))) least = air;
    else most = air;
  }
  const side = inAir(least);
  const left = Math.max(0, roomOf(side) - heightOf(side));
  const foot = side.foot === undefined ? [] : [{ ...side.foot, beforePt: side.foot.beforePt + left }];
  return paginate([...side.slabs, ...foot], side.composer.paper, firstNumber);
}

function sideOne(composer: Composer, packet: Packet, set: SetBlock): Side {
  const [front] = packet.sections;
  const blocks = front === undefined ? [] : printedBlocks(front);
  const photo = blocks.find((block) => block.kind === 'photo');
  const code = blocks.find(
    (block): block is DrawingBlock => block.kind === 'drawing' && block.role === 'code',
  );
  // The code stands beside the photo or, where there is none, beside the title.
  const slabs = [setSheetTitle(composer, packet, photo === undefined ? code : undefined)];
  if (front !== undefined) {
    const tags: TagPath = [{ type: 'Sect', key: front.id }];
    slabs.push({ ...setSectionTitle(composer, front, tags), reachPt: 0 });
    for (const block of blocks) {
      if (block === code) continue;
      if (block === photo) slabs.push(setPhotoAndCode(composer, photo, code, tags));
      else
        slabs.push(
          ...set(block.kind === 'table' && block.size === 'large' ? large(composer) : composer, block, tags),
        );
    }
  }
  return { composer, slabs: keepHeadings(slabs, composer.paper.linePt), foot: undefined };
}

function sideTwo(composer: Composer, packet: Packet, set: SetBlock): Side {
  const slabs = packet.sections.slice(1).flatMap((section) => {
    const tags: TagPath = [{ type: 'Sect', key: section.id }];
    return [
      // Where all of a side is known to fit, no title need ask for room below it.
      { ...setSectionTitle(composer, section, tags), reachPt: 0 },
      ...printedBlocks(section).flatMap((block) => set(composer, block, tags)),
    ];
  });
  return {
    composer,
    slabs: keepHeadings(slabs, composer.paper.linePt),
    foot: setStandingLast(composer, packet)[0],
  };
}

const large = (composer: Composer): Composer => ({
  ...composer,
  styles: withLargeCells(composer.styles),
});

/** Between a photo or a title and the code beside it. */
const GAP_PT = 16;

/** Edition, house and place; where no photo stands below, the code at the right, and its words at the left. */
function setSheetTitle(composer: Composer, packet: Packet, code: DrawingBlock | undefined): Slab {
  const { styles, paper } = composer;
  const boxes: Box[] = [rule(0, 0, paper.fullPt, 2, 'ink', 'title')];
  const edition = setEdition(composer, packet, 9);
  boxes.push(...edition.boxes);
  let y = 9 + edition.heightPt + 5;
  const top = y;
  const width = code === undefined ? paper.fullPt : paper.fullPt - code.drawing.width - GAP_PT;
  for (const [text, style, type, key] of [
    [packet.house.name, nameStyle(composer, packet.house.name, width), 'H1', 'house'],
    [packet.house.place, styles.place, 'P', 'place'],
  ] as const) {
    const owner = { block: 'title', tags: [{ type, key: `title/${key}` }] };
    const column = textColumn(composer, plainRich(text), style, { x: 0, y, width }, owner);
    boxes.push(...column.boxes);
    y += column.heightPt + 2;
  }
  const options = { afterPt: composer.spaces.aboveSection };
  if (code === undefined) return slab(y, boxes, options);
  const { drawing } = code;
  const inset = whiteAround(drawing);
  const picture = codeBox(code, { x: paper.fullPt - drawing.width + inset, y: top - inset / 2 }, []);
  const bottom = top + drawing.height - inset * 1.5;
  const words = setCodeWords(composer, code, { x: 0, y: 0, width }, []);
  const wordsAt = Math.max(y + GAP_PT, bottom - words.heightPt);
  boxes.push(picture, ...words.boxes.map((box) => moved(box, 0, wordsAt)));
  return slab(Math.max(bottom, wordsAt + words.heightPt), boxes, { ...options, anchors: [code.id] });
}

/** A name that would be broken is set smaller first. */
function nameStyle({ setter, styles }: Composer, name: string, width: number): TypeStyle {
  const { houseName } = styles;
  if (extentOf(setter, plainRich(name), houseName).naturalPt <= width) return houseName;
  return { ...houseName, sizePt: houseName.sizePt * 0.7, leadingPt: houseName.leadingPt * 0.7 };
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The code as large as it was drawn. */
function codeBox(code: DrawingBlock, { x, y }: Place, tags: TagPath): Box {
  const { width, height } = code.drawing;
  const figure = { type: 'Figure', key: code.id, alt: code.alt };
  return {
    kind: 'drawing',
    drawing: code.drawing,
    scale: 1,
    x,
    y,
    width,
    height,
    block: code.id,
    tags: [...tags, figure],
  };
}

/** What the code leads to. An address that is typed off paper begins on a line of its own, so that it need not be broken. */
function setCodeWords(
  composer: Composer,
  code: DrawingBlock,
  at: Place & { readonly width: number },
  tags: TagPath,
): { readonly boxes: Box[]; readonly heightPt: number } {
  const caption: TagPath = [...tags, { type: 'Caption', key: `${code.id}/caption` }];
  const first = code.caption.findIndex((run) => run.verbatim === true);
  const parts = [
    { key: 'words', runs: first < 0 ? code.caption : code.caption.slice(0, first) },
    { key: 'address', runs: first < 0 ? [] : code.caption.slice(first) },
  ];
  const boxes: Box[] = [];
  let { y } = at;
  for (const { key, runs } of parts) {
    const owner = { block: code.id, tags: [...caption, { type: 'P', key }] };
    const column = textColumn(composer, runs, composer.styles.body, { ...at, y }, owner);
    boxes.push(...column.boxes);
    y += column.heightPt;
  }
  return { boxes, heightPt: y - at.y };
}

/** The code at the left of a place, its words below it or, where that is wide enough, beside it. */
function setCode(
  composer: Composer,
  code: DrawingBlock,
  at: Place & { readonly width: number },
  tags: TagPath,
): { readonly boxes: Box[]; readonly heightPt: number } {
  const { drawing } = code;
  const inset = whiteAround(drawing);
  const left = drawing.width - inset + GAP_PT;
  const aside = at.width - left >= LEAST_ASIDE_PT;
  const wordsAt = aside
    ? { x: at.x + left, y: at.y + inset, width: at.width - left }
    : { x: at.x, y: at.y + drawing.height + CAPTION_GAP_PT, width: at.width };
  const words = setCodeWords(composer, code, wordsAt, tags);
  const picture = codeBox(code, { x: at.x - inset, y: at.y }, tags);
  const bottom = Math.max(at.y + drawing.height, wordsAt.y + words.heightPt);
  return { boxes: [picture, ...words.boxes], heightPt: bottom - at.y };
}

/** How far a code's dark part stands in from its left edge: the white around it is paper, and lines are drawn to the dark. */
function whiteAround({ shapes }: Drawing): number {
  const xs = shapes.flatMap((shape) => (shape.kind === 'path' ? shape.points.map(([x]) => x) : []));
  return Math.max(0, Math.min(...xs));
}

/** Words beside the code need this much, in points; else they go below it. */
const LEAST_ASIDE_PT = 150;

/** The photo at the left, the code in what is left of the measure. Without a code the caption stands there. */
function setPhotoAndCode(
  composer: Composer,
  photo: PhotoBlock,
  code: DrawingBlock | undefined,
  tags: TagPath,
): Slab {
  const { paper, tallestPhotoPt, spaces } = composer;
  const aspect = aspectOf(composer, photo.photo);
  const least = Math.max(paper.marginPt, code?.drawing.width ?? 0);
  const width = Math.min(tallestPhotoPt / aspect, paper.fullPt - GAP_PT - least);
  const height = width * aspect;
  const place = { block: photo.id, tags, key: photo.id };
  const picture = pictureBoxes(composer, photo.photo, { x: 0, y: 0, width, height }, place);
  const right = { x: width + GAP_PT, y: 0, width: paper.fullPt - width - GAP_PT };
  const captionAt = code === undefined ? right : { x: 0, y: height + CAPTION_GAP_PT, width };
  const caption = captionColumn(composer, photo.caption, captionAt, place);
  const beside = code === undefined ? undefined : setCode(composer, code, right, tags);
  const tall = Math.max(
    code === undefined ? Math.max(height, caption.heightPt) : height + caption.heightPt,
    beside?.heightPt ?? 0,
  );
  return slab(tall, [...picture, ...caption.boxes, ...(beside?.boxes ?? [])], {
    beforePt: spaces.figure,
    afterPt: spaces.figure,
    anchors: [photo.id, ...(code === undefined ? [] : [code.id])],
  });
}
