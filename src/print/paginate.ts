/**
 * Slabs onto pages.
 *
 * Takes slabs in reading order, gives pages of placed boxes and where each anchor lies. Knows nothing of what the
 * slabs hold: what must stay together, and what comes again at a page's top, is written on them. Which slabs stand on
 * which page is decided in `choose-pages.ts`.
 */
import type { Anchor, Box, FrameBox } from './box.js';
import { choosePages } from './choose-pages.js';
import { PageCursor } from './page-cursor.js';
import type { Paper } from './paper.js';
import type { Slab } from './slab.js';
import { moved } from './slab.js';

export interface FilledPage {
  readonly number: number;
  readonly boxes: Box[];
  /** Where the lowest slab ends, from the sheet's top. */
  readonly filledToPt: number;
}

export interface Pagination {
  readonly pages: readonly FilledPage[];
  readonly anchors: readonly Anchor[];
}

/** Makes every heading hold on to two lines of what follows it, however many slabs these are in. */
export function keepHeadings(slabs: readonly Slab[], linePt: number): Slab[] {
  const kept = [...slabs];
  slabs.forEach((each, i) => {
    if (each.heading !== true) return;
    let following = 0;
    for (let j = i + 1; j < kept.length - 1 && following < linePt * 2; j++) {
      const slab = kept[j];
      if (slab === undefined || slab.heading === true) break;
      // A figure may be held over; what stands under the heading then must be two lines too.
      if (slab.floats === true) continue;
      following += slab.heightPt;
      const next = kept[j + 1];
      if (following < linePt * 2 && next?.heading !== true) kept[j] = { ...slab, keepNext: true };
    }
  });
  return kept;
}

interface OpenFrame {
  readonly id: string;
  readonly top: number;
  bottom: number;
  readonly openTop: boolean;
  openBottom: boolean;
  tail: number;
}

/** Places the slabs of one page. */
class PageFiller {
  private readonly paper: Paper;
  private readonly number: number;
  private readonly cursor: PageCursor;
  private readonly anchors: Anchor[];
  private readonly boxes: Box[] = [];
  private readonly frames: OpenFrame[] = [];

  constructor(paper: Paper, number: number, anchors: Anchor[]) {
    this.paper = paper;
    this.number = number;
    this.anchors = anchors;
    this.cursor = new PageCursor(paper);
  }

  place(slab: Slab): void {
    const { top, resumeTop } = this.cursor.advance(slab);
    let y = resumeTop ?? top;
    if (resumeTop !== undefined) {
      for (const each of slab.resume ?? []) {
        this.put(each.boxes, y);
        y += each.heightPt;
      }
    }
    this.put(slab.boxes, top);
    for (const id of slab.anchors) {
      this.anchors.push({ id, page: this.number, y: this.paper.topPt + top });
    }
    this.extendFrame(slab, resumeTop ?? top);
  }

  finish(): FilledPage {
    const { leftPt, topPt, textPt } = this.paper;
    const frames = this.frames.map((frame): FrameBox => {
      const bottom = frame.bottom + (frame.openBottom ? frame.tail : 0);
      return {
        kind: 'frame',
        x: leftPt,
        y: topPt + frame.top,
        width: textPt,
        height: bottom - frame.top,
        openTop: frame.openTop,
        openBottom: frame.openBottom,
        block: frame.id,
        tags: [],
      };
    });
    return {
      number: this.number,
      boxes: [...frames, ...this.boxes],
      filledToPt: topPt + this.cursor.y,
    };
  }

  private put(boxes: readonly Box[], y: number): void {
    for (const box of boxes) this.boxes.push(moved(box, this.paper.leftPt, this.paper.topPt + y));
  }

  private extendFrame(slab: Slab, top: number): void {
    if (slab.frame === undefined) return;
    const { id, first, last } = slab.frame;
    let frame = this.frames.find((each) => each.id === id);
    if (frame === undefined) {
      frame = { id, top, bottom: this.cursor.y, openTop: !first, openBottom: !last, tail: 0 };
      this.frames.push(frame);
    }
    frame.bottom = this.cursor.y;
    frame.openBottom = !last;
    frame.tail = slab.tailPt ?? 0;
  }
}

/** Fills pages, the first of them with the given number. There is one page at least. */
export function paginate(slabs: readonly Slab[], paper: Paper, firstNumber: number): Pagination {
  const anchors: Anchor[] = [];
  const chosen = slabs.length === 0 ? [[]] : choosePages(slabs, paper);
  const pages = chosen.map((page, i) => {
    const filler = new PageFiller(paper, firstNumber + i, anchors);
    for (const slab of page) filler.place(slab);
    return filler.finish();
  });
  return { pages, anchors };
}
