/** The one table that the timings end in. */

/**
 * A row: what was done, ours, something comparable, and what we aim for. Empty text prints as a dash.
 * @typedef {{ readonly what: string, readonly ours: string, readonly cpu?: string, readonly runs?: number,
 *   readonly beside?: string, readonly aim?: string }} Row
 */

/**
 * @param {readonly Row[]} rows
 * @returns {string} Markdown
 */
export function printTable(rows) {
  const head = ['what', 'sillplate', 'processor time', 'runs', 'beside it', 'aim'];
  const lines = rows.map((row) => [
    row.what,
    row.ours,
    row.cpu ?? '',
    row.runs === undefined ? '' : String(row.runs),
    row.beside ?? '',
    row.aim ?? '',
  ]);
  const print = (/** @type {readonly string[]} */ cells) =>
    `| ${cells.map((cell) => (cell === '' ? '–' : cell.replaceAll('|', '/').replaceAll('\n', ' '))).join(' | ')} |`;
  return [print(head), `|${head.map(() => '---').join('|')}|`, ...lines.map(print)].join('\n');
}
