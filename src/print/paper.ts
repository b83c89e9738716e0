/**
 * The grid of a sheet: where the text column, the evidence margin and the furniture lie.
 *
 * All lengths are points (1/72 inch) from the sheet's top left corner, y growing downwards.
 */

export type PaperName = 'letter' | 'a4';

export interface Paper {
  readonly name: PaperName;
  readonly widthPt: number;
  readonly heightPt: number;
  /** Left edge of the text column. */
  readonly leftPt: number;
  /** Width of the text column. */
  readonly textPt: number;
  /** From the sheet's left edge to the evidence margin. */
  readonly marginLeftPt: number;
  /** Width of the evidence margin. */
  readonly marginPt: number;
  /** Text column, gutter and margin together. */
  readonly fullPt: number;
  /** Top and bottom of the frame that holds blocks. */
  readonly topPt: number;
  readonly bottomPt: number;
  /** Baselines of the running head and of the foot. */
  readonly headBaselinePt: number;
  readonly footBaselinePt: number;
  /** Step of the baseline grid inside the frame. */
  readonly linePt: number;
}

const SHEETS: Record<PaperName, readonly [widthPt: number, heightPt: number]> = {
  letter: [612, 792],
  a4: [595.28, 841.89],
};

/**
 * The grid for a sheet. A dense one (an agent's sheet) has less air at head and foot and a shorter line step;
 * the columns are the same, so a reader who knows one edition finds the margin in the other.
 */
export function paperOf(name: PaperName, dense: boolean): Paper {
  const [widthPt, heightPt] = SHEETS[name];
  const textPt = 316.8;
  const gutterPt = 18;
  const marginPt = 126;
  const fullPt = textPt + gutterPt + marginPt;
  const leftPt = Math.round(((widthPt - fullPt) / 2) * 10) / 10;
  const linePt = dense ? 12 : 14;
  const topPt = dense ? 63 : 74;
  const below = dense ? 58 : 70;
  const lines = Math.floor((heightPt - topPt - below) / linePt);
  return {
    name,
    widthPt,
    heightPt,
    leftPt,
    textPt,
    marginLeftPt: leftPt + textPt + gutterPt,
    marginPt,
    fullPt,
    topPt,
    bottomPt: topPt + lines * linePt,
    headBaselinePt: dense ? 40 : 46,
    footBaselinePt: heightPt - (dense ? 34 : 42),
    linePt,
  };
}
