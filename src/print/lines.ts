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
