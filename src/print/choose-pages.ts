/**
 * Which slabs stand on which page.
 *
 * Takes slabs in reading order, gives pages of slabs. Looks at all pages together: of all legal ways to break, the one
 * with the fewest half-empty pages. It may take a figure smaller, and it may hold a figure over to the top of the
 * next page while the text after it goes on, but never past a heading or another figure. Starts at `choosePages`.
 */
import { DUST_PT, PageCursor } from './page-cursor.js';
import type { Paper } from './paper.js';
import type { Slab } from './slab.js';

/** A page that is not the last should be filled at least to this share. */
const LEAST_FILL = 0.6;

/** What breaks cost, beside the square of the part of a page that stays empty. */
const COST = {
  /** A page below the least fill, and each further share below it. */
  halfEmpty: 20,
  emptier: 50,
  /** A figure one step smaller; a figure held over. */
  smaller: 0.12,
  held: 0.35,
  /** A figure held over into the middle of a table. */
  splits: 0.8,
  /** A break inside a block; a break before a heading or a section takes some away. */
  inside: 0.2,
  beforeHeading: -0.05,
  beforeSection: -0.15,
  /** A last page with only a few lines. */
  shortLast: 3,
  /** Nothing legal fits: a run of slabs taller than a page is cut somewhere. */
  forced: 30,
} as const;

/** Of a page: less on the last one looks forgotten, and the pages before it can spare some. */
const SHORT_LAST = 0.4;

interface Choice {
  readonly cost: number;
  readonly page: readonly Slab[];
  readonly next: State | undefined;
}

/** What is still to be placed: figures held over, then all slabs from `from` on. */
interface State {
  readonly from: number;
  readonly held: readonly number[];
}

/** Pages for all slabs, each with one slab at least. No slabs give no pages. */
export function choosePages(slabs: readonly Slab[], paper: Paper): (readonly Slab[])[] {
  const search = new Search(slabs, paper);
  const pages: (readonly Slab[])[] = [];
  let state: State | undefined = slabs.length > 0 ? { from: 0, held: [] } : undefined;
  while (state !== undefined) {
    const choice = search.best(state);
    pages.push(choice.page);
    state = choice.next;
  }
  return pages;
}

class Search {
  private readonly slabs: readonly Slab[];
  private readonly paper: Paper;
  private readonly room: number;
  private readonly known = new Map<string, Choice>();

  constructor(slabs: readonly Slab[], paper: Paper) {
    this.slabs = slabs;
    this.paper = paper;
    this.room = paper.bottomPt - paper.topPt;
  }

  /** The best way on from a state. The remembered answers are filled from the end, so that no call goes deep. */
  best(state: State): Choice {
    const stack = [state];
    for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
      const missing = this.known.has(keyOf(top)) ? undefined : this.decide(top);
      if (missing === undefined) stack.pop();
      else stack.push(...missing);
    }
    return this.known.get(keyOf(state)) as Choice;
  }

  /** Remembers the best page that begins at a state, or answers which later states must be decided before. */
  private decide(state: State): State[] | undefined {
    const pages = this.pagesFrom(state);
    const missing = pages.flatMap(({ next }) =>
      next === undefined || this.known.has(keyOf(next)) ? [] : [next],
    );
    if (missing.length > 0) return missing;
    let best: Choice | undefined;
    for (const page of pages) {
      const rest = page.next === undefined ? 0 : (this.known.get(keyOf(page.next))?.cost ?? 0);
      const cost = page.cost + rest;
      if (best === undefined || cost < best.cost - 1e-9) best = { ...page, cost };
    }
    this.known.set(keyOf(state), best as Choice);
    return undefined;
  }

  /** All pages worth looking at that begin at a state. There is one at least. */
  private pagesFrom(state: State): Choice[] {
    const full = this.walk(state, 0);
    const steps = Math.max(0, ...full.met.map((slab) => slab.smaller?.length ?? 0));
    const pages = [...full.pages];
    for (let step = 1; step <= steps; step++) pages.push(...this.walk(state, step).pages);
    return pages.length > 0 ? pages : [this.forced(state)];
  }

  /** Fills a page from a state on with figures a number of steps smaller; notes every legal end on the way. */
  private walk(state: State, step: number): { pages: Choice[]; met: Slab[] } {
    const cursor = new PageCursor(this.paper);
    const page: Slab[] = [];
    const met: Slab[] = [];
    const ends: Choice[] = [];
    let extra = 0;
    let held: readonly number[] = [];
    const put = (slab: Slab, heldOver: boolean): boolean => {
      const form = sized(slab, step);
      met.push(slab);
      // A slab taller than a page overflows a page of its own rather than none.
      if (!cursor.isEmpty && !this.fits(cursor, form)) return false;
      if (slab.smaller !== undefined) extra += COST.smaller * Math.min(step, slab.smaller.length);
      const placed = heldOver ? { ...form, heldOver } : form;
      cursor.advance(placed);
      page.push(placed);
      return true;
    };
    for (const [i, index] of state.held.entries()) {
      const slab = this.slabs[index];
      if (slab === undefined) continue;
      if (!put(slab, true)) {
        ends.push(this.end(cursor, page, extra, { from: state.from, held: state.held.slice(i) }));
        return { pages: ends, met };
      }
    }
    if (page.length > 0) ends.push(this.end(cursor, page, extra, { from: state.from, held: [] }));
    for (let i = state.from; i < this.slabs.length; i++) {
      const slab = this.slabs[i];
      if (slab === undefined) break;
      // What is held over is waited for before the next heading or figure.
      if (held.length > 0 && (slab.heading === true || slab.floats === true)) break;
      if (!put(slab, false)) {
        if (slab.floats !== true || slab.keepNext || held.length > 0) break;
        held = [i];
        extra += COST.held;
      }
      const last = page.at(-1);
      const endsWell = last !== undefined && (last.keepNext !== true || i === this.slabs.length - 1);
      if (endsWell && cursor.y + (last.tailPt ?? 0) <= this.room + DUST_PT) {
        ends.push(this.end(cursor, page, extra, { from: i + 1, held }));
      }
    }
    return { pages: worthwhile(ends), met };
  }

  private fits(cursor: PageCursor, slab: Slab): boolean {
    const trial = Object.assign(new PageCursor(this.paper), cursor);
    trial.advance(slab);
    return Math.max(trial.y, trial.demandPt) <= this.room + DUST_PT;
  }

  private end(cursor: PageCursor, page: readonly Slab[], extra: number, next: State): Choice {
    const done = next.from >= this.slabs.length && next.held.length === 0;
    const fill = cursor.y / this.room;
    const cost = done ? lastCost(fill) : pageCost(fill) + this.breakCost(next.from);
    const splits = next.held.length > 0 && this.slabs[next.from]?.resume !== undefined ? COST.splits : 0;
    return { cost: cost + extra + splits, page: [...page], next: done ? undefined : next };
  }

  private breakCost(at: number): number {
    const slab = this.slabs[at];
    if (slab?.opensSection === true) return COST.beforeSection;
    if (slab?.heading === true) return COST.beforeHeading;
    return slab?.inner === true ? COST.inside : 0;
  }

  /** As much as fits, one slab at least, where what must stay together is taller than a page. */
  private forced(state: State): Choice {
    const cursor = new PageCursor(this.paper);
    const page: Slab[] = [];
    let i = state.from;
    for (; i < this.slabs.length; i++) {
      const slab = this.slabs[i];
      if (slab === undefined || (page.length > 0 && !this.fits(cursor, slab))) break;
      cursor.advance(slab);
      page.push(slab);
    }
    // A heading is not left behind alone, if anything else stands before it.
    while (page.length > 1 && page.at(-1)?.heading === true) {
      page.pop();
      i--;
    }
    return this.end(cursor, page, COST.forced, { from: i, held: state.held });
  }
}

function keyOf(state: State): string {
  return `${state.from}|${state.held.join(',')}`;
}

function sized(slab: Slab, step: number): Slab {
  if (step === 0 || slab.smaller === undefined || slab.smaller.length === 0) return slab;
  return slab.smaller[Math.min(step, slab.smaller.length) - 1] ?? slab;
}

function pageCost(fill: number): number {
  const empty = Math.max(0, 1 - fill);
  const below = Math.max(0, LEAST_FILL - fill);
  return 1 + 4 * empty ** 2 + (below > 0 ? COST.halfEmpty + COST.emptier * below : 0);
}

function lastCost(fill: number): number {
  return 1 + (fill < SHORT_LAST ? COST.shortLast * (1 - fill / SHORT_LAST) : 0);
}

/** The ends of the fuller half of what this page could be; the fullest in any case. */
function worthwhile(ends: readonly Choice[]): Choice[] {
  const last = ends.length - 1;
  return ends.filter((end, i) => i === last || end.next === undefined || end.cost < 1 + COST.halfEmpty * 0.5);
}
