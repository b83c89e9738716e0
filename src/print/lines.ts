/**
 * Where lines end.
 *
 * Takes unbreakable chunks with their widths, gives which chunks stand on which line. Knows no fonts and no pages,
 * so another breaker can take this one's place.
 */
import type { InputItem } from 'tex-linebreak';
import texLinebreak from 'tex-linebreak';

/** Something that is never broken: a word, a part of a word up to a hyphen, a piece of an overlong word. */
export interface Chunk {
  readonly widthPt: number;
  /** The blank after it when the line goes on; 0 where a line may end inside a word. */
  readonly gapPt: number;
}

/** Chunks `from` up to, not including, `to`. */
export interface LineRange {
  readonly from: number;
  readonly to: number;
}

/** Breaks chunks into lines no wider than the measure, except where one chunk alone is wider. */
export type LineBreaker = (chunks: readonly Chunk[], measurePt: number) => LineRange[];

/** Adding many widths leaves dust; a text exactly as wide as its measure must still fit. */
const DUST_PT = 0.001;

/** How far a ragged line's end may fall short before it looks bad, as a share of what stands on the line. */
const RAGGED = 0.5;

/** The same for the last line, as a share of the measure: it may be short, but not one little word. */
const RAGGED_LAST = 0.8;

/**
 * Of all ways to break a paragraph the one whose line ends are the most even (Knuth and Plass, “Breaking paragraphs
 * into lines”, 1981). Ragged, with blanks as they are: each chunk lends the line's end its share of stretch, so that a
 * line's badness grows with what it lacks. Their own items for ragged setting take the stretch back by negative glue,
 * which keeps the library from dropping lines that are full: minutes for a text of pages.
 */
export const breakWholeParagraph: LineBreaker = (chunks, measurePt) => {
  if (chunks.length === 0) return [];
  if (widthOfAll(chunks) <= measurePt + DUST_PT) return [{ from: 0, to: chunks.length }];
  const { items, begins } = raggedItems(chunks, measurePt);
  const ends = texLinebreak.breakLines(items, measurePt + DUST_PT, {
    maxAdjustmentRatio: null,
    // Neighbouring lines of a ragged paragraph may differ.
    adjacentLooseTightPenalty: 0,
  });
  // The first of the breakpoints is the paragraph's beginning, the last its end.
  const starts = ends.slice(1, -1).map((end) => {
    const begin = begins.get(end);
    if (begin === undefined) throw new Error('a line was broken where no chunk begins');
    return begin;
  });
  return [0, ...starts].map((from, i) => ({ from, to: starts[i] ?? chunks.length }));
};

function widthOfAll(chunks: readonly Chunk[]): number {
  return chunks.reduce(
    (sum, { widthPt, gapPt }, i) => sum + widthPt + (i < chunks.length - 1 ? gapPt : 0),
    0,
  );
}

/** The paragraph for the library, and which chunk begins a line that is broken at an item. */
function raggedItems(
  chunks: readonly Chunk[],
  measurePt: number,
): { readonly items: InputItem[]; readonly begins: ReadonlyMap<number, number> } {
  const items: InputItem[] = [];
  const begins = new Map<number, number>();
  const never: InputItem = { type: 'penalty', width: 0, cost: texLinebreak.MAX_COST, flagged: false };
  const glue = (width: number, stretch: number): InputItem => ({ type: 'glue', width, stretch, shrink: 0 });
  chunks.forEach((chunk, i) => {
    // Wider than the measure it stands on a line of its own, whose width is then all the same.
    const width = Math.min(chunk.widthPt, measurePt);
    items.push({ type: 'box', width });
    if (i === chunks.length - 1) return;
    // Glue right behind a box would be one more place to break, and one without a ragged end.
    items.push(never, glue(0, width * RAGGED));
    begins.set(items.length, i + 1);
    items.push({ type: 'penalty', width: 0, cost: 0, flagged: false });
    items.push(glue(chunk.gapPt, chunk.gapPt * RAGGED));
  });
  items.push(never, glue(0, measurePt * RAGGED_LAST), texLinebreak.forcedBreak());
  return { items, begins };
}
