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

/** Widths of the three columns, and air at head and foot; points. */
interface Grid {
  readonly textPt: number;
  readonly gutterPt: number;
  readonly marginPt: number;
  readonly linePt: number;
  readonly topPt: number;
  readonly belowPt: number;
  readonly headPt: number;
  readonly footPt: number;
}

/** Ten-point lines of some seventy-five letters, 0.8 in of white at the sides of a letter sheet. */
const AIRY: Grid = {
  textPt: 345.6,
  gutterPt: 18,
  marginPt: 131.4,
  linePt: 13,
  topPt: 64,
  belowPt: 56,
  headPt: 42,
  footPt: 35,
};

/** An agent's sheet: 0.7 in at the sides, and a margin wide enough for most marks to stay on one line. */
const DENSE: Grid = {
  textPt: 383,
  gutterPt: 15,
  marginPt: 113,
  linePt: 10.5,
  topPt: 50,
  belowPt: 45,
  headPt: 34,
  footPt: 28,
};

/**
 * The grid for a sheet. A dense one (an agent's sheet) has less air on all sides and a shorter line step; the order
 * of the columns is the same, so a reader who knows one edition finds the margin in the other.
 */
export function paperOf(name: PaperName, dense: boolean): Paper {
  const [widthPt, heightPt] = SHEETS[name];
  const grid = dense ? DENSE : AIRY;
  const { textPt, gutterPt, marginPt, linePt, topPt } = grid;
  const fullPt = textPt + gutterPt + marginPt;
  const leftPt = Math.round(((widthPt - fullPt) / 2) * 10) / 10;
  const lines = Math.floor((heightPt - topPt - grid.belowPt) / linePt);
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
    headBaselinePt: grid.headPt,
    footBaselinePt: heightPt - grid.footPt,
    linePt,
  };
}
