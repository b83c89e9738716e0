/**
 * A workbook becomes the bytes of an XLSX file; the same cells give the same bytes on every day and in every time zone.
 *
 * The library packs with the clock's time, so its parts are packed a second time with a fixed one.
 */
import { unzipSync, ZipDeflate, zipSync } from 'fflate';
import writeXlsxFile, { type SheetData } from 'write-excel-file/node';

/** What a column's cells are: texts and days (YYYY-MM-DD) are strings, all else whole numbers. */
type CellKind = 'text' | 'day' | 'whole' | 'cents' | 'hundredths' | 'thousandths';

export interface WorkbookToWrite {
  readonly sheets: readonly {
    readonly name: string;
    readonly columns: readonly {
      readonly title: string;
      /** In characters. */
      readonly width: number;
      readonly holds: CellKind;
    }[];
    readonly rows: readonly (readonly (string | number | undefined)[])[];
  }[];
}

/** One for all parts, whatever the clock says: ZIP's own time has no zone. */
const partTime = (): Date => new Date(1980, 0, 1, 12);

/** The bytes of an XLSX file. Throws if a cell is not what its column holds: that is our bug. */
export async function workbookBytes({ sheets }: WorkbookToWrite): Promise<Uint8Array> {
  // A part that is told no time gets the clock's, and with a clock before 1980, as of a machine whose battery is empty,
  // nothing can be packed at all.
  ZipDeflate.prototype.mtime = partTime();
  const made = writeXlsxFile(
    sheets.map(({ name, columns, rows }) => ({
      sheet: name,
      stickyRowsCount: 1,
      columns: columns.map(({ width }) => ({ width })),
      data: [
        columns.map(({ title, holds }) => ({
          value: title,
          type: String,
          fontWeight: 'bold' as const,
          align: isText(holds) ? ('left' as const) : ('right' as const),
        })),
        ...rows.map((row) => columns.map(({ holds }, at) => cellOf(holds, row[at]))),
      ] satisfies SheetData,
    })),
  );
  return repacked(await made.toBuffer());
}

type Cell = SheetData[number][number];

const isText = (holds: CellKind): boolean => holds === 'text' || holds === 'day';

/** Days before it are counted wrongly by some programs, so they stay texts. */
const FIRST_DAY = '1900-03-01';

/** Formats a spreadsheet has from the start: thousands grouped by the reader's own custom. */
const NUMBERS: Readonly<Record<Exclude<CellKind, 'text' | 'day'>, { places: number; format: string }>> = {
  whole: { places: 0, format: '0' },
  cents: { places: 2, format: '#,##0.00' },
  hundredths: { places: 2, format: '0.00' },
  thousandths: { places: 3, format: '0.000' },
};

function cellOf(holds: CellKind, value: string | number | undefined): Cell {
  if (value === undefined || value === '') return undefined;
  if (holds === 'text' || holds === 'day') {
    if (typeof value !== 'string') throw new TypeError(`a column of ${holds} has the number ${value}`);
    if (holds === 'day' && value >= FIRST_DAY) return dayCell(value);
    return { value: fitting(value), type: String };
  }
  if (typeof value !== 'number' || !Number.isSafeInteger(value))
    throw new TypeError(`a column of ${holds} has ${JSON.stringify(value)}`);
  const { places, format } = NUMBERS[holds];
  // The nearest number a spreadsheet has; written out it is the very decimal, since it has at most sixteen digits.
  return { value: value / 10 ** places, type: Number, format };
}

/** The library counts days in UTC. */
function dayCell(day: string): Cell {
  return { value: new Date(`${day}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
}

/** A spreadsheet calls a file damaged if a cell holds more. */
const MOST_CHARACTERS = 32_767;

/** Signs that an XML file can't hold become blanks, so that none is dropped unseen; line ends become LF; `_x0041_`, which
 * would be read as an A, stays what it is. */
function fitting(text: string): string {
  const written = text
    .replace(/\r\n?/g, '\n')
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are the ones that are looked for
    .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFFFE\uFFFF\p{Cs}]/gu, ' ');
  return written.length <= MOST_CHARACTERS ? written : `${written.slice(0, MOST_CHARACTERS - 1)}…`;
}

/** A ZIP has no time zone: what is written is the hour of a local clock, so a local one is asked for. */
function repacked(bytes: Uint8Array): Uint8Array {
  return zipSync(unzipSync(bytes), { mtime: partTime(), os: 0, level: 6 });
}
