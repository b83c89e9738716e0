/**
 * Slabs: what a block is cut into before pages are known.
 *
 * A slab is never broken. Its boxes are placed from its own top and from the left edge of the text column.
 */
import type { Box } from './box.js';

export interface Slab {
  readonly heightPt: number;
  /** Wanted space above and below; of two that meet, the larger counts. Dropped at a page's top. */
  readonly beforePt: number;
  readonly afterPt: number;
  readonly boxes: readonly Box[];
  /** Must stand on the same page as the slab after it. */
  readonly keepNext: boolean;
  /** Ids found here. */
  readonly anchors: readonly string[];
  /** Set again first when this slab opens a page: a table's head, a notice's upper air. */
  readonly resume?: readonly Slab[];
  /** Room that must stay free below when the page ends after this slab. */
  readonly tailPt?: number;
  /** The page must have this much room from the slab's top: for boxes that hang below it, or to open well. */
  readonly reachPt?: number;
  /** Notice that this slab is part of: slabs with the same frame on one page get one outline. */
  readonly frame?: { readonly id: string; readonly first: boolean; readonly last: boolean };
  /** The same thing smaller, largest first: taken when the slab itself would leave a page half empty. */
  readonly smaller?: readonly Slab[];
  /** A heading: it is never the last thing on a page, and its own space below it counts alone. */
  readonly heading?: boolean;
  /** A section's title: after an empty section it keeps its distance from the title above. */
  readonly opensSection?: boolean;
  /** A figure that may go to the top of the next page while the text after it goes on. */
  readonly floats?: boolean;
  /** Came here from the page before, so what goes on below still says again what it is. */
  readonly heldOver?: boolean;
  /** Goes on with a block: a page rather doesn't begin here. */
  readonly inner?: boolean;
  /** Put its top on the baseline grid. */
  readonly onGrid?: boolean;
}

export interface SlabOptions {
  readonly beforePt?: number;
  readonly afterPt?: number;
  readonly keepNext?: boolean;
  readonly anchors?: readonly string[];
  readonly onGrid?: boolean;
}

/** A slab with nothing special about it. */
export function slab(heightPt: number, boxes: readonly Box[], options: SlabOptions = {}): Slab {
  return {
    heightPt,
    boxes,
    beforePt: options.beforePt ?? 0,
    afterPt: options.afterPt ?? 0,
    keepNext: options.keepNext ?? false,
    anchors: options.anchors ?? [],
    onGrid: options.onGrid ?? false,
  };
}

/** The same box somewhere else. */
export function moved<B extends Box>(box: B, dx: number, dy: number): B {
  return { ...box, x: box.x + dx, y: box.y + dy };
}

/**
 * Adds anchors and space to the ends of a run of slabs: what belongs to a whole block goes to its first and last.
 */
export function asBlock(slabs: readonly Slab[], ends: SlabOptions): Slab[] {
  return slabs.map((each, i) => ({
    ...each,
    beforePt: i === 0 ? (ends.beforePt ?? each.beforePt) : each.beforePt,
    afterPt: i === slabs.length - 1 ? (ends.afterPt ?? each.afterPt) : each.afterPt,
    anchors: i === 0 ? [...(ends.anchors ?? []), ...each.anchors] : each.anchors,
    keepNext: each.keepNext || (i === slabs.length - 1 && (ends.keepNext ?? false)),
    inner: i > 0,
    onGrid: (each.onGrid ?? false) || (i === 0 && (ends.onGrid ?? false)),
  }));
}
