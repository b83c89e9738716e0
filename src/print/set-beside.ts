/**
 * A drawing with text beside it, on a sheet of few pages: a modest plan would leave half of the measure white.
 *
 * Takes the blocks of a section, gives them with a drawing and the unmarked blocks before it as one slab. Blocks with
 * marks keep the text column and the margin to themselves, so they come after.
 */
import type { Block, DrawingBlock } from '../packet/packet.js';
import type { Box } from './box.js';
import type { Composer } from './composer.js';
import { PageCursor } from './page-cursor.js';
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

/** The text in what the drawing leaves, and the drawing at the right; what grows too tall follows below. */
export function setBeside(
  composer: Composer,
  beside: Beside,
  set: (composer: Composer, block: Block) => Slab[],
): Slab[] {
  const { paper } = composer;
  const narrow = textPt(composer, beside.drawing);
  const inner: Composer = { ...composer, paper: { ...paper, textPt: narrow, fullPt: narrow } };
  const wide: Composer = { ...composer, paper: { ...paper, textPt: beside.drawing.drawing.width } };
  const figure = set({ ...wide, paper: { ...wide.paper, fullPt: wide.paper.textPt } }, beside.drawing);
  const tall = figure.reduce((sum, each) => sum + each.heightPt, 0);
  const cursor = new PageCursor(paper);
  const boxes: Box[] = [];
  const anchors: string[] = [];
  const below: Slab[] = [];
  for (const block of beside.text) {
    const slabs = set(inner, block);
    const height = slabs.reduce((sum, each) => sum + each.heightPt, 0);
    if (below.length > 0 || (cursor.y > 0 && cursor.y + height > tall * TALLER)) {
      below.push(...set(composer, block));
      continue;
    }
    for (const each of slabs) {
      const { top } = cursor.advance(each);
      boxes.push(...each.boxes.map((box) => moved(box, 0, top)));
      anchors.push(...each.anchors);
    }
  }
  for (const each of figure) {
    boxes.push(...each.boxes.map((box) => moved(box, narrow + GAP_PT, 0)));
    anchors.push(...each.anchors);
  }
  const { figure: space } = composer.spaces;
  const both = slab(Math.max(cursor.y, tall), boxes, { beforePt: space, afterPt: space, anchors });
  return [both, ...below];
}
