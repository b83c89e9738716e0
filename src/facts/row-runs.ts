/** Numbers of rows, gathered where they follow each other. */

/** First and last number of a stretch without a gap; the same where it is one row. */
export type RowRun = readonly [first: number, last: number];

/** Stretches without a gap. Rows are ascending: 4, 7, 8, 9 → [4, 4], [7, 9]. */
export function runsOf(rows: readonly number[]): RowRun[] {
  const runs: [first: number, last: number][] = [];
  for (const row of rows) {
    const run = runs.at(-1);
    if (run !== undefined && row === run[1] + 1) run[1] = row;
    else runs.push([row, row]);
  }
  return runs;
}

/**
 * In a sentence: "row 4", "rows 4 and 5", "rows 4, 7 to 9 and 12". Of more than `most` stretches the first ones,
 * and how many rows there are: "rows 4, 7 to 9 … (31 rows)".
 */
export function rowsInWords(rows: readonly number[], most = 8): string {
  const words = runsOf(rows).flatMap(([first, last]) =>
    last - first < 2 ? [...new Set([`${first}`, `${last}`])] : [`${first} to ${last}`],
  );
  const noun = rows.length === 1 ? 'row' : 'rows';
  if (words.length > most) return `${noun} ${words.slice(0, most).join(', ')} … (${rows.length} rows)`;
  const end = words.at(-1) ?? '';
  return `${noun} ${words.length < 2 ? end : `${words.slice(0, -1).join(', ')} and ${end}`}`;
}
