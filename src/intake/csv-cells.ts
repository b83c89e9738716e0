/**
 * A CSV file becomes rows of cells: UTF-8, with commas, semicolons or tabs, whichever its heading line has.
 *
 * A quote inside an unquoted cell (`12" pipe`) is a letter like any other. Text behind a closing quote is refused:
 * whether the quote or the text is the slip, only the writer knows.
 */
import { isUtf8 } from 'node:buffer';
import { type CsvError, parse } from 'csv-parse/sync';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { groupThousands } from '../facts/written-number.js';
import { type CsvSpans, csvSpans } from './csv-spans.js';
import { isUtf16 } from './is-utf16.js';
import { lineIndex } from './line-index.js';
import {
  aboutList,
  type List,
  MOST_CELLS,
  MOST_COLUMNS,
  MOST_ROWS,
  type SheetRows,
  unreadable,
} from './sheet-rows.js';

export interface CsvRead {
  /** Undefined if it could not be read at all. */
  readonly sheet: SheetRows | undefined;
  readonly diagnostics: readonly Diagnostic[];
  /** Between the cells: the one it was read with. */
  readonly delimiter: string;
}

export interface CsvOptions {
  /** Taken instead of what the heading line tells, unless the file names one itself (`sep=;`). */
  readonly delimiter?: CsvDelimiter;
}

const BOM = Buffer.from([0xef, 0xbb, 0xbf]);
const SAVE_AS = 'in the spreadsheet choose “Save as” and the kind “CSV UTF-8”';
/** The heading line lies within these many bytes. */
export const CSV_HEAD = 65_536;

/** `name`: in the house folder; `file`: as the writer would type it; `list`: which list of the house it is. */
export function readCsv(
  bytes: Buffer,
  name: string,
  file: string,
  list?: List,
  options: CsvOptions = {},
): CsvRead {
  const wrong = noCsv(bytes, name, file, list);
  if (wrong !== undefined) return { sheet: undefined, diagnostics: [wrong], delimiter: ',' };
  const begins = bytes.subarray(0, 3).equals(BOM) ? 3 : 0;
  const head = bytes.subarray(begins, begins + CSV_HEAD).toString('utf8');
  const told = toldDelimiter(head);
  const skipped = told?.length ?? 0;
  const delimiter = told?.delimiter ?? options.delimiter ?? likelyDelimiter(head);
  if (hasMore(bytes, delimiter.charCodeAt(0), MOST_CELLS))
    return { sheet: undefined, diagnostics: [tooManyOf('cells', MOST_CELLS, name, file, list)], delimiter };
  const textOf = (): string => bytes.toString('utf8', begins);
  // Only a message needs to know where a cell stands.
  let known: CsvSpans | undefined;
  const spans = (): CsvSpans => {
    known ??= csvSpans(textOf(), skipped, delimiter, file);
    return known;
  };
  const { rows, diagnostics } = parseRows(bytes.subarray(begins + skipped), delimiter, spans, textOf, list);
  const placeOf: SheetRows['placeOf'] = (row, column) => {
    const cells = spans().cellsOf(row);
    const [first, last] = [cells[0], cells.at(-1)];
    if (first === undefined || last === undefined) return undefined;
    // A row that ends early lacks the cell; its place is where the row ends.
    const cell = column === undefined ? { start: first.start, end: last.end } : cells[column];
    return spans().place(cell ?? { start: last.end, end: last.end });
  };
  return {
    sheet: { name, file, rows, placeOf },
    diagnostics: [...diagnostics, ...brokenCells(rows, spans, list)],
    delimiter,
  };
}

function parseRows(
  bytes: Buffer,
  delimiter: string,
  spans: () => CsvSpans,
  /** The text that the spans count in. */
  textOf: () => string,
  list: List | undefined,
): { rows: string[][]; diagnostics: Diagnostic[] } {
  const options = {
    bom: false,
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
  };
  try {
    return { rows: parse(bytes, options), diagnostics: [] };
  } catch (thrown) {
    const { unclosed, place } = spans();
    if ((thrown as CsvError).code !== 'CSV_QUOTE_NOT_CLOSED' || unclosed === undefined) throw thrown;
    const rest = Buffer.byteLength(textOf().slice(unclosed.start));
    return {
      rows: parse(bytes.subarray(0, bytes.length - rest), options),
      diagnostics: [
        {
          code: 'intake.sheet',
          severity: 'error',
          ...aboutList(list, unclosed.row),
          place: place({ start: unclosed.cell.start, end: unclosed.cell.start + 1 }),
          message: 'the quote that opens here is never closed, so the rest of the sheet can’t be read',
          hints: [
            'close it behind the words, or take it out; a quote inside quotes is written twice: "12"" pipe"',
          ],
        },
      ],
    };
  }
}

/** Cells with text behind their closing quote. A cell that begins with a quote is rare, and only those are looked at. */
function brokenCells(
  rows: readonly (readonly string[])[],
  spans: () => CsvSpans,
  list: List | undefined,
): Diagnostic[] {
  const diagnostics: Diagnostic[] = [];
  for (let row = 0; row < rows.length; row += 1) {
    const cells = rows[row] ?? [];
    if (!cells.some((cell) => cell.charCodeAt(0) === 34)) continue;
    // A row of more columns is refused; a message for each of thousands would show its line as often.
    for (const cell of spans()
      .cellsOf(row + 1)
      .slice(0, MOST_COLUMNS)) {
      if (!cell.broken) continue;
      const place = spans().place(cell);
      diagnostics.push({
        code: 'intake.sheet',
        severity: 'error',
        ...aboutList(list, row + 1),
        place,
        message: 'text stands behind a closing quote',
        hints: [wholeInQuotes(place)],
      });
    }
  }
  return diagnostics;
}

/** The cell as it should be typed, where all of it can be shown. */
function wholeInQuotes({ source, column, length }: Place): string {
  const written = source.slice(column - 1, column - 1 + length);
  const inner = written.replace(/^"/, '').replace(/"$/, '');
  const example = length > 60 || /•/.test(written) ? '3/4"" pipe, 10 ft' : inner.replace(/"+/g, '""');
  return `put the whole cell into quotes, and write a quote inside it twice:  "${example}"`;
}

/** Another kind of file, or another alphabet than UTF-8. */
function noCsv(bytes: Buffer, name: string, file: string, list: List | undefined): Diagnostic | undefined {
  const starts = (...signs: number[]): boolean => bytes.subarray(0, signs.length).equals(Buffer.from(signs));
  if (starts(0x50, 0x4b, 3, 4))
    return unreadable(list, file, `${name} is a workbook, whatever its ending says`, [
      `call it ${name.replace(/\.csv$/i, '.xlsx')}`,
      SAVE_AS,
    ]);
  if (starts(0xd0, 0xcf, 0x11, 0xe0))
    return unreadable(list, file, `${name} is an old or locked workbook, whatever its ending says`, [
      SAVE_AS,
    ]);
  if (hasMore(bytes, bytes.includes(10) ? 10 : 13, MOST_LINES))
    return tooManyOf('lines', MOST_LINES, name, file, list);
  if (isUtf16(bytes))
    return unreadable(list, file, `${name} is written in UTF-16, not in UTF-8`, [SAVE_AS], 'intake.encoding');
  const nul = bytes.indexOf(0);
  if (isUtf8(bytes) && nul < 0) return undefined;
  const text = bytes.toString('utf8');
  const at = Math.max(0, text.search(nul < 0 ? /\uFFFD/ : /\0/));
  return {
    code: 'intake.encoding',
    severity: 'error',
    ...aboutList(list),
    place: lineIndex(text, file)({ start: at, end: at + 1 }),
    message:
      nul < 0
        ? `${name} is not UTF-8 text; here is the first sign that can’t be read`
        : `${name} holds NUL signs, which no text has`,
    hints: [SAVE_AS],
  };
}

/** Twice as many as rows are taken: a cell may have lines of its own. */
const MOST_LINES = 2 * MOST_ROWS;

/** Whether a sign stands there more often than `most`. */
function hasMore(bytes: Buffer, sign: number, most: number): boolean {
  let count = 0;
  for (let at = bytes.indexOf(sign); at >= 0 && count <= most; at = bytes.indexOf(sign, at + 1)) count += 1;
  return count > most;
}

const tooManyOf = (
  what: string,
  most: number,
  name: string,
  file: string,
  list: List | undefined,
): Diagnostic =>
  unreadable(
    list,
    file,
    `${name} has more than ${groupThousands(most)} ${what}, and no list of a house has as many`,
    ['check that it is the right file'],
    'intake.too-big',
  );

/** What the sheets of a house may have between the cells. */
const LIKELY_DELIMITERS = [',', ';', '\t'] as const;
/** A bar only where the file names it, or where it is asked for. */
export const CSV_DELIMITERS = [...LIKELY_DELIMITERS, '|'] as const;
export type CsvDelimiter = (typeof CSV_DELIMITERS)[number];

/** The delimiter that a first line `sep=;` names, and how many characters that line takes. */
function toldDelimiter(head: string): { delimiter: string; length: number } | undefined {
  const told = /^"?sep=([,;\t|])"?(?:\r\n|\r|\n|$)/i.exec(head);
  return told === null ? undefined : { delimiter: told[1] ?? ',', length: told[0].length };
}

/** The delimiter that the heading line has most. */
function likelyDelimiter(head: string): string {
  const line = /[^\r\n]*\S[^\r\n]*/.exec(head)?.[0] ?? '';
  const outside = line.replace(/"(?:[^"]|"")*"?/g, '');
  let best: string = ',';
  let most = 0;
  for (const one of LIKELY_DELIMITERS) {
    const count = outside.split(one).length - 1;
    if (count > most) [best, most] = [one, count];
  }
  return best;
}
