/**
 * A drawing with text beside it, on a sheet of few pages: a modest plan would leave half of the measure white.
 *
 * Takes the blocks of a section, gives them with a drawing and the unmarked blocks before it as one slab. Blocks with
 * marks keep the text column and the margin to themselves, so they come after.
 */
import type { Block, DrawingBlock } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { PageCursor } from './page-cursor.js';
import { CAPTION_GAP_PT, captionColumn } from './set-figure.js';
import type { Slab } from './slab.js';
import { moved, slab } from './slab.js';

/** Between the text and the drawing. */
const GAP_PT = 16;

/** Text narrower than this share of the measure is no longer good to read. */
const LEAST_TEXT = 0.33;

/** The text may be this much taller than the drawing. */
const TALLER = 1.12;

export interface Beside {
  readonly drawing: DrawingBlock;
  readonly text: readonly Block[];
}

export function isBeside(of: Block | Beside): of is Beside {
  return !('kind' in of);
}

/** A block that needs no margin. */
function unmarked(block: Block): boolean {
  if (block.kind === 'table') return block.rows.every((row) => row.mark === undefined);
  return block.kind === 'paragraph';
}

function textPt(composer: Composer, drawing: DrawingBlock): number {
  return composer.paper.fullPt - drawing.drawing.width - GAP_PT;
}

/** The blocks in printing order, a drawing and what stands beside it as one. */
export function pairDrawings(composer: Composer, blocks: readonly Block[]): (Block | Beside)[] {
  if (!composer.dense) return [...blocks];
  const paired: (Block | Beside)[] = [];
  let open: Block[] = [];
  let after: Block[] = [];
  const flush = (): void => {
    paired.push(...open, ...after);
    open = [];
    after = [];
  };
  for (const block of blocks) {
    if (unmarked(block) && after.length === 0) open.push(block);
    else if (block.kind === 'statement' && open.length > 0) after.push(block);
    else if (
      block.kind === 'drawing' &&
      open.length > 0 &&
      textPt(composer, block) >= composer.paper.fullPt * LEAST_TEXT
    ) {
      paired.push({ drawing: block, text: open }, ...after);
      open = [];
      after = [];
    } else {
      flush();
      paired.push(block);
    }
  }
  flush();
  return paired;
}

/**
 * The text in what the drawing leaves, and the drawing at the right. Text that would grow too tall follows below; the
 * drawing's caption goes under the text where there is room, so that the two end together.
 */
export function setBeside(
  composer: Composer,
  beside: Beside,
  tags: TagPath,
  set: (composer: Composer, block: Block) => Slab[],
): Slab[] {
  const { paper, spaces } = composer;
  const { drawing } = beside;
  const narrow = textPt(composer, drawing);
  const inPaper = (widthPt: number): Composer => ({
    ...composer,
    paper: { ...paper, textPt: widthPt, fullPt: widthPt },
  });
  const right = narrow + GAP_PT;
  const [figure] = set(inPaper(drawing.drawing.width), { ...drawing, caption: [] });
  if (figure === undefined) return beside.text.flatMap((block) => set(composer, block));
  const cursor = new PageCursor(paper);
  const boxes: Box[] = [];
  const anchors: string[] = [];
  const below: Slab[] = [];
  for (const block of beside.text) {
    const slabs = set(inPaper(narrow), block);
    const height = slabs.reduce((sum, each) => sum + each.heightPt, 0);
    if (below.length > 0 || (cursor.y > 0 && cursor.y + height > figure.heightPt * TALLER)) {
      below.push(...set(composer, block));
      continue;
    }
    for (const each of slabs) {
      const { top } = cursor.advance(each);
      boxes.push(...each.boxes.map((box) => moved(box, 0, top)));
      anchors.push(...each.anchors);
    }
  }
  boxes.push(...figure.boxes.map((box) => moved(box, right, 0)));
  anchors.push(...figure.anchors);
  const under = { x: 0, y: cursor.y + spaces.figure, width: narrow };
  const place = { block: drawing.id, tags, key: drawing.id };
  let caption = captionColumn(composer, drawing.caption, under, place);
  let bottom = Math.max(figure.heightPt, under.y + caption.heightPt);
  if (under.y + caption.heightPt > figure.heightPt) {
    const at = { x: right, y: figure.heightPt + CAPTION_GAP_PT, width: drawing.drawing.width };
    caption = captionColumn(composer, drawing.caption, at, place);
    bottom = Math.max(cursor.y, figure.heightPt + caption.heightPt);
  }
  boxes.push(...caption.boxes);
  const both = slab(bottom, boxes, { beforePt: spaces.figure, afterPt: spaces.figure, anchors });
  return [both, ...below];
}
