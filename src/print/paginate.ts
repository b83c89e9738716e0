/**
 * Slabs onto pages.
 *
 * Takes slabs in reading order, gives pages of placed boxes and where each anchor lies. Knows nothing of what the
 * slabs hold: what must stay together, and what comes again at a page's top, is written on them.
 */
import type { Anchor, Box, FrameBox } from './box.js';
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

/** Sums of heights leave dust; what fits exactly must fit. */
const DUST_PT = 0.01;

/** Makes every heading hold on to two lines of what follows it, however many slabs these are in. */
export function keepHeadings(slabs: readonly Slab[], linePt: number): Slab[] {
  const kept = [...slabs];
  slabs.forEach((each, i) => {
    if (each.heading !== true) return;
    let following = 0;
    for (let j = i + 1; j < kept.length - 1 && following < linePt * 2; j++) {
      const slab = kept[j];
      if (slab === undefined || slab.heading === true) break;
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

class PageFiller {
  readonly pages: FilledPage[] = [];
  readonly anchors: Anchor[] = [];
  private readonly paper: Paper;
  private boxes: Box[] = [];
  private frames: OpenFrame[] = [];
  private y = 0;
  private after = 0;
  private underHeading = false;
  private empty = true;
  private number: number;

  constructor(paper: Paper, firstNumber: number) {
    this.paper = paper;
    this.number = firstNumber;
  }

  get isEmpty(): boolean {
    return this.empty;
  }

  /** How many of these slabs fit on the rest of this page. */
  fitting(slabs: readonly Slab[]): number {
    const room = this.paper.bottomPt - this.paper.topPt;
    let y = this.y;
    let after = this.after;
    let top = this.empty;
    let heading = this.underHeading;
    let demand = 0;
    for (const [i, slab] of slabs.entries()) {
      y = this.topOf(slab, y, after, top, heading);
      if (top) for (const each of slab.resume ?? []) y += each.heightPt;
      demand = Math.max(demand, y + (slab.reachPt ?? 0));
      const end = y + slab.heightPt + (slab.tailPt ?? 0);
      if (Math.max(end, demand) > room + DUST_PT) return i;
      y += slab.heightPt;
      after = slab.afterPt;
      heading = slab.heading === true;
      top = false;
    }
    return slabs.length;
  }

  place(slab: Slab): void {
    let y = this.topOf(slab, this.y, this.after, this.empty, this.underHeading);
    const top = y;
    if (this.empty) {
      for (const each of slab.resume ?? []) {
        this.put(each.boxes, y);
        y += each.heightPt;
      }
    }
    this.put(slab.boxes, y);
    for (const id of slab.anchors) {
      this.anchors.push({ id, page: this.number, y: this.paper.topPt + y });
    }
    this.y = y + slab.heightPt;
    this.after = slab.afterPt;
    this.underHeading = slab.heading === true;
    this.empty = false;
    this.extendFrame(slab, top);
  }

  turnPage(): void {
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
    this.pages.push({
      number: this.number,
      boxes: [...frames, ...this.boxes],
      filledToPt: topPt + this.y,
    });
    this.number++;
    this.boxes = [];
    this.frames = [];
    this.y = 0;
    this.after = 0;
    this.underHeading = false;
    this.empty = true;
  }

  private topOf(slab: Slab, y: number, after: number, top: boolean, underHeading: boolean): number {
    const space =
      underHeading && !(slab.heading === true && slab.opensSection === true)
        ? after
        : Math.max(after, slab.beforePt);
    const wanted = top ? y : y + space;
    if (slab.onGrid !== true) return wanted;
    const step = this.paper.linePt / 2;
    return Math.ceil((wanted - DUST_PT) / step) * step;
  }

  private put(boxes: readonly Box[], y: number): void {
    for (const box of boxes) this.boxes.push(moved(box, this.paper.leftPt, this.paper.topPt + y));
  }

  private extendFrame(slab: Slab, top: number): void {
    if (slab.frame === undefined) return;
    const { id, first, last } = slab.frame;
    let frame = this.frames.find((each) => each.id === id);
    if (frame === undefined) {
      frame = { id, top, bottom: this.y, openTop: !first, openBottom: !last, tail: 0 };
      this.frames.push(frame);
    }
    frame.bottom = this.y;
    frame.openBottom = !last;
    frame.tail = slab.tailPt ?? 0;
  }
}

/** The largest of a cluster's smaller forms that fits on the rest of the page. */
function smallerThatFits(cluster: readonly Slab[], filler: PageFiller): Slab[] | undefined {
  const steps = Math.max(0, ...cluster.map((each) => each.smaller?.length ?? 0));
  for (let step = 0; step < steps; step++) {
    const form = cluster.map((each) => each.smaller?.[Math.min(step, each.smaller.length - 1)] ?? each);
    if (filler.fitting(form) === form.length) return form;
  }
  return undefined;
}

/** Fills pages, the first of them with the given number. There is one page at least. */
export function paginate(slabs: readonly Slab[], paper: Paper, firstNumber: number): Pagination {
  const filler = new PageFiller(paper, firstNumber);
  let i = 0;
  while (i < slabs.length) {
    let end = i;
    while (slabs[end]?.keepNext === true && end + 1 < slabs.length) end++;
    let cluster = slabs.slice(i, end + 1);
    let fit = filler.fitting(cluster);
    if (fit < cluster.length && !filler.isEmpty) {
      const smaller = smallerThatFits(cluster, filler);
      cluster = smaller ?? cluster;
      fit = smaller?.length ?? fit;
    }
    if (fit < cluster.length && !filler.isEmpty) {
      filler.turnPage();
      continue;
    }
    // On an empty page something must be placed, or the walk would never end: what fits of a cluster taller
    // than a page, or one slab that is.
    const count = Math.max(1, fit);
    for (const slab of cluster.slice(0, count)) filler.place(slab);
    i += count;
  }
  filler.turnPage();
  return { pages: filler.pages, anchors: filler.anchors };
}
