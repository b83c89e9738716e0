/**
 * How a CSV sheet is written, so that a row added to it looks like its neighbours: order of the columns, delimiter, line
 * ends, and the manner of dates and amounts.
 */
import { SHORT_MONTHS } from '../facts/month-names.js';
import { plainDecimal } from '../facts/print-decimal.js';
import { readSheetDate } from '../facts/sheet-date.js';
import { groupThousands } from '../facts/written-number.js';
import type { Headings } from './sheet-headings.js';
import type { SheetRows } from './sheet-rows.js';

export interface SheetLayout<Column extends string> {
  readonly at: ReadonlyMap<Column, number>;
  readonly width: number;
  readonly delimiter: string;
  readonly lineEnd: string;
  /** The last line of the file has its end. */
  readonly isClosed: boolean;
  /** How many rows the sheet has, as a spreadsheet counts them. */
  readonly rows: number;
  readonly manner: Manner;
}

/** How days and amounts are written. */
export interface Manner {
  readonly day: 'iso' | 'strokes' | 'words';
  /** 03/09/2026 rather than 3/9/2026. */
  readonly isPadded: boolean;
  readonly yearDigits: 2 | 4;
  readonly dollar: boolean;
  readonly commas: boolean;
  readonly parentheses: boolean;
}

export const PLAIN_MANNER: Manner = {
  day: 'iso',
  isPadded: true,
  yearDigits: 4,
  dollar: false,
  commas: false,
  parentheses: false,
};

/** The layout of a file that is there. `bytes` is the whole file, `delimiter` the one it was read with. */
export function layoutOf<Column extends string>(
  bytes: Buffer,
  sheet: SheetRows,
  { row, at, width }: Headings<Column>,
  delimiter: string,
): SheetLayout<Column> {
  const text = bytes.toString('utf8');
  const columnOf = (word: string): string[] => {
    const index = at.get(word as Column);
    return index === undefined
      ? []
      : sheet.rows
          .slice(row)
          .map((cells) => (cells[index] ?? '').trim())
          .filter((cell) => cell !== '');
  };
  return {
    at,
    width,
    delimiter,
    lineEnd: /\r\n|\n|\r/.exec(text)?.[0] ?? '\n',
    isClosed: /[\r\n]$/.test(text),
    rows: sheet.rows.length,
    manner: mannerOf(columnOf('date'), columnOf('amount')),
  };
}

/** The layout of a file that is made new. */
export const newLayout = <Column extends string>(columns: readonly Column[]): SheetLayout<Column> => ({
  at: new Map(columns.map((column, index) => [column, index])),
  width: columns.length,
  delimiter: ',',
  lineEnd: '\n',
  isClosed: true,
  rows: 1,
  manner: PLAIN_MANNER,
});

/** A manner is taken only where every cell has it. Days day first are written year-month-day: those can't be misread. */
function mannerOf(days: readonly string[], amounts: readonly string[]): Manner {
  const strokes = days.map((cell) => /^(\d{1,2})\/(\d{1,2})\/(\d{4}|\d{2})$/.exec(cell));
  const isStrokes =
    days.length > 0 &&
    strokes.every((match) => match !== null) &&
    !days.some((cell) => {
      const read = readSheetDate(cell);
      return read.ok && read.value.order === 'day-first';
    });
  const isWords = days.length > 0 && days.every((cell) => /^[A-Z][a-z]{2} \d{1,2}, \d{4}$/.test(cell));
  return {
    day: isStrokes ? 'strokes' : isWords ? 'words' : 'iso',
    isPadded: !isStrokes || strokes.every((match) => match?.[1]?.length === 2 && match[2]?.length === 2),
    yearDigits: isStrokes && strokes.every((match) => match?.[3]?.length === 2) ? 2 : 4,
    dollar: amounts.length > 0 && amounts.every((cell) => cell.includes('$')),
    commas: amounts.some((cell) => /\d,\d{3}/.test(cell)),
    parentheses: amounts.some((cell) => cell.startsWith('(')),
  };
}

/** `day`: YYYY-MM-DD. */
export function dayIn(manner: Manner, day: string): string {
  const [year = '', month = '', date = ''] = day.split('-');
  const number = (digits: string): string => (manner.isPadded ? digits : String(Number(digits)));
  if (manner.day === 'words') return `${SHORT_MONTHS[Number(month) - 1]} ${Number(date)}, ${year}`;
  // Two digits are read as this century.
  const short = manner.yearDigits === 2 && year.startsWith('20') ? year.slice(2) : year;
  return manner.day === 'strokes' ? `${number(month)}/${number(date)}/${short}` : day;
}

export function amountIn(manner: Manner, cents: number): string {
  const [dollars = '', rest] = plainDecimal(Math.abs(cents), 2).split('.');
  const text = `${manner.dollar ? '$' : ''}${manner.commas ? groupThousands(Number(dollars)) : dollars}.${rest}`;
  if (cents >= 0) return text;
  return manner.parentheses ? `(${text})` : `-${text}`;
}

/** A row of the sheet with its line end. Columns that the sheet lacks are left away. */
export function rowIn<Column extends string>(
  { at, width, delimiter, lineEnd }: SheetLayout<Column>,
  cells: Readonly<Partial<Record<Column, string>>>,
): string {
  const row = new Array<string>(width).fill('');
  for (const [column, index] of at) row[index] = cells[column] ?? '';
  return row.map((cell) => quoted(cell, delimiter)).join(delimiter) + lineEnd;
}

const quoted = (cell: string, delimiter: string): string =>
  cell.includes(delimiter) || /["\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
