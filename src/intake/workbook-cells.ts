/**
 * A workbook (.xlsx) becomes sheets of cells as texts: numbers by their shortest text of 15 significant digits, which
 * is what a spreadsheet keeps of them, dates as days.
 */
import readWorkbookFile from 'read-excel-file/node';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { coverTaxpayerNumbers } from '../facts/taxpayer-number.js';
import { type List, MOST_COLUMNS, MOST_ROWS, type SheetRows, unreadable } from './sheet-rows.js';
import { lookIntoWorkbook, MOST_UNFOLDED } from './workbook-parts.js';

export interface WorkbookRead {
  readonly sheets: readonly WorkbookSheet[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface WorkbookSheet extends SheetRows {
  /** As its tab says. */
  readonly title: string;
  /** Cells whose formula failed or was never worked out: they read as empty, and are not. */
  readonly failed: readonly { readonly row: number; readonly column: number; readonly sign: string }[];
}

export async function readWorkbook(
  bytes: Buffer,
  name: string,
  file: string,
  list?: List,
): Promise<WorkbookRead> {
  const wrong = (message: string, ...hints: string[]): WorkbookRead => ({
    sheets: [],
    diagnostics: [unreadable(list, file, message, hints)],
  });
  if (bytes.subarray(0, 4).toString('hex') === 'd0cf11e0')
    return wrong(`${name} has a password, or is of the old kind .xls`, 'save it as .xlsx without a password');
  if (bytes.subarray(0, 2).toString('latin1') !== 'PK')
    return wrong(
      `${name} is not a workbook, whatever its ending says`,
      `if it is text, call it ${name.replace(/\.xlsx$/i, '.csv')}`,
      'open it in the spreadsheet and save it as .xlsx',
    );
  const tooBig = (): WorkbookRead => ({
    sheets: [],
    diagnostics: [
      unreadable(
        list,
        file,
        `${name} unfolds into more than ${MOST_ROWS / 1000},000 rows, ${MOST_COLUMNS} columns, 2,000 parts or 64 MB`,
        ['keep only the rows of this house in it'],
        'intake.too-big',
      ),
    ],
  });
  const looked = await lookIntoWorkbook(bytes);
  if ('why' in looked)
    return looked.why === 'too big'
      ? tooBig()
      : wrong(
          `${name} can’t be opened as a workbook`,
          'open it in the spreadsheet and save it again as .xlsx',
        );
  try {
    const read = await readWorkbookFile(bytes);
    if (lettersOf(read) > MOST_UNFOLDED) return tooBig();
    return {
      sheets: read.map(({ sheet, data }) => ({
        title: sheet,
        failed: looked.failed.get(sheet) ?? [],
        ...sheetOf(name, file, data),
      })),
      diagnostics: [],
    };
  } catch {
    // Its own words are about XML, which nobody who keeps a sheet has seen.
    return wrong(
      `${name} can’t be read as a workbook`,
      'open it in the spreadsheet and save it again as .xlsx',
    );
  }
}

/** Of all texts: cells share theirs, and a long one may stand in each of them. */
const lettersOf = (read: readonly { readonly data: readonly (readonly unknown[])[] }[]): number =>
  read.reduce(
    (sum, { data }) =>
      data.reduce(
        (all, row) =>
          row.reduce((some: number, cell) => some + (typeof cell === 'string' ? cell.length : 0), all),
        sum,
      ),
    0,
  );

function sheetOf(name: string, file: string, data: readonly (readonly unknown[])[]): SheetRows {
  const rows = data.map((row) => row.map(asText));
  return { name, file, rows, placeOf: (row, column) => placeIn(rows[row - 1], row, column, file) };
}

const DAY_MS = 86_400_000;
/** Day 0 of spreadsheets. Times of the day are parts of it. */
const FIRST_DAY_MS = Date.UTC(1899, 11, 30);

function asText(cell: unknown): string {
  if (typeof cell === 'string') return cell;
  if (typeof cell === 'number') return String(Number(cell.toPrecision(15)));
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return cell instanceof Date ? dayOrTime(cell) : '';
}

function dayOrTime(date: Date): string {
  const since = date.getTime() - FIRST_DAY_MS;
  if (!Number.isFinite(since)) return '';
  if (since < 0 || since >= 2 * DAY_MS) return date.toISOString().slice(0, 10);
  const minutes = Math.round(since / 60_000);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

const BETWEEN = ' | ';

/** A workbook has no lines: the row's cells stand for one, and the row's number for its number. */
function placeIn(
  cells: readonly string[] | undefined,
  row: number,
  column: number | undefined,
  file: string,
): Place | undefined {
  if (cells === undefined) return undefined;
  const shown = cells.map((cell) => coverTaxpayerNumbers(cell.replace(/[\r\n]+/g, ' ')));
  const source = shown.join(BETWEEN).trimEnd();
  if (column === undefined) return { file, line: row, column: 1, length: Math.max(1, source.length), source };
  const before = shown.slice(0, column).reduce((sum, cell) => sum + cell.length + BETWEEN.length, 0);
  return { file, line: row, column: before + 1, length: Math.max(1, shown[column]?.length ?? 1), source };
}
