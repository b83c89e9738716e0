/** How far down a page is filled: the one place that knows how spaces between slabs meet. */
import type { Paper } from './paper.js';
import type { Slab } from './slab.js';

/** Sums of heights leave dust; what fits exactly must fit. */
export const DUST_PT = 0.01;

export class PageCursor {
  /** From the frame's top to where the lowest slab ends. */
  y = 0;
  /** The lowest end that a slab's boxes or its wish for room reach to. */
  demandPt = 0;
  isEmpty = true;
  private after = 0;
  private underHeading = false;
  /** Whether a slab that goes on from the page before would have to say again what it is. */
  private resumes = true;
  private readonly linePt: number;

  constructor(paper: Paper) {
    this.linePt = paper.linePt;
  }

  /** Moves below a slab; gives where its own boxes begin, and where what comes again before it begins. */
  advance(slab: Slab): { readonly top: number; readonly resumeTop: number | undefined } {
    const resumeTop = this.topOf(slab);
    const again = this.resumes && !slab.heldOver ? (slab.resume ?? []) : [];
    const top = resumeTop + again.reduce((sum, each) => sum + each.heightPt, 0);
    this.demandPt = Math.max(this.demandPt, top + Math.max(slab.reachPt ?? 0, slab.heightPt));
    this.y = top + slab.heightPt;
    this.after = slab.afterPt;
    this.underHeading = slab.heading === true;
    this.isEmpty = false;
    if (slab.heldOver !== true) this.resumes = false;
    return { top, resumeTop: again.length > 0 ? resumeTop : undefined };
  }

  private topOf(slab: Slab): number {
    const ignoresBefore = this.underHeading && !(slab.heading === true && slab.opensSection === true);
    const space = ignoresBefore ? this.after : Math.max(this.after, slab.beforePt);
    const wanted = this.isEmpty ? this.y : this.y + space;
    if (slab.onGrid !== true) return wanted;
    const step = this.linePt / 2;
    return Math.ceil((wanted - DUST_PT) / step) * step;
  }
}
