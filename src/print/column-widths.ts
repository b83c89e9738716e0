/** How wide a table's columns are, from what stands in them. */

export interface ColumnExtent {
  /** Widest cell on one line, and widest word of all cells. */
  readonly naturalPt: number;
  readonly narrowestPt: number;
  /** The packet's wish, beside the other columns'. */
  readonly weight: number;
  /** May take air that nobody needs: not a column of numbers, which would drift from its neighbour. */
  readonly stretches: boolean;
  /** Each row's cell on one line. With these, widths are evened out until the table is no taller than it must be. */
  readonly cellsPt?: readonly number[];
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
  const filled = widths.map((width, i) => width + (left * (appetite[i] ?? 0)) / weights);
  return shortest(columns, least, filled);
}

/** How much width goes from one column to another at a time, in points. */
const STEPS_PT = [96, 64, 48, 32, 24, 16, 8, 4];

/** What a broken line leaves empty at its end, in points: some half of a word. */
const RAGGED_PT = 14;

/** Gives width from column to column as long as that makes the table lower. */
function shortest(
  columns: readonly ColumnExtent[],
  least: readonly number[],
  start: readonly number[],
): number[] {
  let widths = [...start];
  let height = heightOf(columns, widths);
  for (const step of STEPS_PT) {
    for (let better = true; better; ) {
      better = false;
      for (let from = 0; from < columns.length; from++) {
        if ((widths[from] ?? 0) - step < (least[from] ?? 0)) continue;
        for (let to = 0; to < columns.length; to++) {
          if (to === from) continue;
          const trial = widths.map((width, i) => width + (i === to ? step : i === from ? -step : 0));
          const next = heightOf(columns, trial);
          if (next >= height - 1e-9 || (trial[from] ?? 0) < (least[from] ?? 0)) continue;
          widths = trial;
          height = next;
          better = true;
        }
      }
    }
  }
  return widths;
}

/** Lines of all rows; of two tables as tall, the one with fewer lines in its cells counts as lower. */
function heightOf(columns: readonly ColumnExtent[], widths: readonly number[]): number {
  const rows = Math.max(0, ...columns.map((column) => column.cellsPt?.length ?? 0));
  let lines = 0;
  for (let row = 0; row < rows; row++) {
    let tallest = 0;
    columns.forEach((column, i) => {
      const natural = column.cellsPt?.[row] ?? 0;
      const width = Math.max(1, widths[i] ?? 1);
      const mine = natural <= width + 0.01 ? 1 : Math.ceil(natural / Math.max(1, width - RAGGED_PT));
      lines += mine * 0.02;
      tallest = Math.max(tallest, mine);
    });
    lines += tallest;
  }
  return lines;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
