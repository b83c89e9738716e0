/** How wide a table's columns are, from what stands in them. */

export interface ColumnExtent {
  /** Widest cell on one line, and widest word of all cells. */
  readonly naturalPt: number;
  readonly narrowestPt: number;
  /** The packet's wish, beside the other columns'. */
  readonly weight: number;
  /** May take air that nobody needs: not a column of numbers, which would drift from its neighbour. */
  readonly stretches: boolean;
}

/** One very long word may not take more than this share from the other columns; it is parted instead. */
const GREEDIEST = 0.4;

/**
 * Widths that fill `totalPt` exactly.
 *
 * Every column gets its widest word; what is left goes to the columns by weight, but never more than a column's
 * natural width while another is still short of its own; air that nobody needs goes by weight. If not even the
 * words fit, all columns shrink alike and words will be parted.
 */
export function columnWidths(columns: readonly ColumnExtent[], totalPt: number): number[] {
  const least = columns.map((column) => Math.min(column.narrowestPt, totalPt * GREEDIEST));
  const leastSum = sum(least);
  if (leastSum >= totalPt) return least.map((width) => (width / leastSum) * totalPt);
  const widths = [...least];
  let left = totalPt - leastSum;
  for (let round = 0; round < columns.length && left > 0.01; round++) {
    const hungry = columns.map((column, i) => column.naturalPt - (widths[i] ?? 0) > 0.01);
    const weights = sum(columns.map((column, i) => (hungry[i] ? column.weight : 0)));
    if (weights === 0) break;
    const share = left / weights;
    columns.forEach((column, i) => {
      if (!hungry[i]) return;
      const have = widths[i] ?? 0;
      const take = Math.min(column.naturalPt - have, share * column.weight);
      widths[i] = have + take;
      left -= take;
    });
  }
  const anyStretches = columns.some((column) => column.stretches);
  const appetite = columns.map((column) => (column.stretches || !anyStretches ? column.weight : 0));
  const weights = sum(appetite);
  return widths.map((width, i) => width + (left * (appetite[i] ?? 0)) / weights);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
