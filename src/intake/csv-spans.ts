/**
 * Where the rows and cells of a CSV text stand in it, by RFC 4180 (a line break may be CR, LF or both).
 *
 * Asked only for a message about a cell: the reading itself keeps no positions, so that a long sheet stays quick.
 */
import type { Place } from '../diagnostics/place.js';
import { coverTaxpayerNumbers } from '../facts/taxpayer-number.js';
import type { Span } from './line-index.js';

interface CellSpan extends Span {
  /** Text stands behind its closing quote. */
  readonly broken: boolean;
  /** Its quote is never closed. */
  readonly unclosed: boolean;
}

const CR = 13;
const LF = 10;

/** The cell that begins at `start`. It ends before the delimiter, the line break or the end of the text. */
function cellAt(text: string, start: number, delimiter: number): CellSpan {
  let at = start;
  let broken = false;
  if (text[at] === '"') {
    for (at = text.indexOf('"', at + 1); at >= 0 && text[at + 1] === '"'; at = text.indexOf('"', at + 2));
    if (at < 0) return { start, end: text.length, broken, unclosed: true };
    at += 1;
    broken = at < text.length && !ends(text.charCodeAt(at), delimiter);
  }
  while (at < text.length && !ends(text.charCodeAt(at), delimiter)) at += 1;
  return { start, end: at, broken, unclosed: false };
}

const ends = (sign: number, delimiter: number): boolean => sign === delimiter || sign === CR || sign === LF;

/** Behind the line break at `at`. */
const behindBreak = (text: string, at: number): number =>
  at + (text.charCodeAt(at) === CR && text.charCodeAt(at + 1) === LF ? 2 : 1);

export interface CsvSpans {
  /** Cells of a row, counted from 1; none where there is no such row. */
  readonly cellsOf: (row: number) => readonly CellSpan[];
  /** The place of a part of the text. */
  readonly place: (span: Span) => Place;
  /** The row whose quote is never closed, and that cell. */
  readonly unclosed: { readonly row: number; readonly start: number; readonly cell: CellSpan } | undefined;
}

/** `from`: where the rows begin, behind a line that only names the delimiter. */
export function csvSpans(text: string, from: number, separator: string, file: string): CsvSpans {
  const delimiter = separator.charCodeAt(0);
  const rows: number[] = [];
  let unclosed: CsvSpans['unclosed'];
  for (let at = from, atRow = true; at < text.length; ) {
    if (atRow) rows.push(at);
    const cell = cellAt(text, at, delimiter);
    if (cell.unclosed) unclosed = { row: rows.length, start: rows.at(-1) ?? from, cell };
    atRow = cell.end < text.length && text.charCodeAt(cell.end) !== delimiter;
    at = cell.end >= text.length ? text.length : atRow ? behindBreak(text, cell.end) : cell.end + 1;
  }
  return {
    cellsOf: (row) => cellsFrom(text, rows[row - 1], delimiter),
    place: placeFinder(text, file),
    unclosed,
  };
}

function cellsFrom(text: string, start: number | undefined, delimiter: number): CellSpan[] {
  if (start === undefined) return [];
  const cells: CellSpan[] = [];
  for (let at = start; ; ) {
    const cell = cellAt(text, at, delimiter);
    cells.push(cell);
    if (cell.end >= text.length || text.charCodeAt(cell.end) !== delimiter) return cells;
    at = cell.end + 1;
  }
}

/** Enough of a line behind the spot to know it by. */
const BEHIND = 300;

function placeFinder(text: string, file: string): (span: Span) => Place {
  const starts = [0];
  for (const { index, 0: sign } of text.matchAll(/\r\n|\r|\n/g)) starts.push(index + sign.length);
  // The line that was asked for last: a sheet may be one line of a million signs, with a thousand spots in it.
  let covered = { at: -1, line: '' };
  return ({ start, end }) => {
    let low = 0;
    for (let high = starts.length - 1; low < high; ) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= start) low = middle;
      else high = middle - 1;
    }
    const begin = starts[low] ?? 0;
    const next = starts[low + 1] ?? text.length;
    if (covered.at !== begin)
      covered = {
        at: begin,
        line: coverTaxpayerNumbers(text.slice(begin, next).replace(/(?:\r\n|\r|\n)$/, '')),
      };
    // A cell with breaks in it ends behind its line.
    const line = covered.line.slice(0, end + BEHIND - begin);
    const column = start - begin + 1;
    return {
      file,
      line: low + 1,
      column,
      length: Math.max(1, Math.min(end - start, line.length - column + 1)),
      source: line,
    };
  };
}
