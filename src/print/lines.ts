/**
 * Where lines end.
 *
 * Takes unbreakable chunks with their widths, gives which chunks stand on which line. Knows no fonts and no pages,
 * so another breaker can take this one's place.
 */

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

/** Fills each line as far as it goes. */
export const breakGreedily: LineBreaker = (chunks, measurePt) => {
  const lines: LineRange[] = [];
  let from = 0;
  let width = 0;
  chunks.forEach((chunk, i) => {
    const before = chunks[i - 1];
    const wanted = i === from ? chunk.widthPt : width + (before?.gapPt ?? 0) + chunk.widthPt;
    if (i > from && wanted > measurePt + DUST_PT) {
      lines.push({ from, to: i });
      from = i;
      width = chunk.widthPt;
    } else {
      width = wanted;
    }
  });
  if (from < chunks.length) lines.push({ from, to: chunks.length });
  return lines;
};

/** A last line shorter than this share of the measure looks left over. */
const SHORT_LAST = 0.2;

/**
 * As many lines as greedy breaking needs, with their ends as even as can be: of all ways to break, the one whose
 * unfilled ends, squared, sum up least. The last line may be short, but not one little word.
 */
export const breakEvenly: LineBreaker = (chunks, measurePt) => {
  const greedy = breakGreedily(chunks, measurePt);
  if (greedy.length < 2) return greedy;
  // best[i]: the least cost of setting chunks i to the end, in how many lines, with the first line ending before `to`.
  const best: { cost: number; lines: number; to: number }[] = [];
  const count = chunks.length;
  best[count] = { cost: 0, lines: 0, to: count };
  for (let from = count - 1; from >= 0; from--) {
    let width = 0;
    for (let to = from + 1; to <= count; to++) {
      width +=
        (chunks[to - 2] !== undefined && to - 2 >= from ? (chunks[to - 2]?.gapPt ?? 0) : 0) +
        widthAt(chunks, to - 1);
      if (to > from + 1 && width > measurePt + DUST_PT) break;
      const rest = best[to];
      if (rest === undefined) continue;
      const cost = endCost(width / measurePt, to === count) + rest.cost;
      const lines = rest.lines + 1;
      const have = best[from];
      if (have === undefined || lines < have.lines || (lines === have.lines && cost < have.cost - 1e-9)) {
        best[from] = { cost, lines, to };
      }
    }
  }
  const ranges: LineRange[] = [];
  for (let from = 0; from < count; ) {
    const to = best[from]?.to ?? count;
    ranges.push({ from, to });
    from = to;
  }
  return ranges;
};

function widthAt(chunks: readonly Chunk[], i: number): number {
  return chunks[i]?.widthPt ?? 0;
}

function endCost(filled: number, last: boolean): number {
  if (!last) return (1 - Math.min(1, filled)) ** 2;
  return filled < SHORT_LAST ? (SHORT_LAST - filled) * 0.8 : 0;
}
