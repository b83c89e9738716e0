/**
 * The file that a bank or card gives becomes rows of texts: CSV with any delimiter, or a workbook.
 *
 * Another kind of file is refused with the kind to ask the bank for. Places never show a whole account number.
 */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { findHeadings } from './bank-columns.js';
import { readPlainCsv, withoutPath } from './bank-csv.js';
import { coverNumbers } from './bank-text.js';
import { CSV_DELIMITERS, CSV_HEAD, type CsvDelimiter } from './csv-cells.js';
import { readPlainFile } from './read-plain-file.js';
import { MOST_BYTES, MOST_COLUMNS, MOST_ROWS, type SheetRows } from './sheet-rows.js';
import { readWorkbook } from './workbook-cells.js';

export interface BankFile {
  /** Undefined if it can't be read. */
  readonly sheet: SheetRows | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

const DOWNLOAD =
  'on the bank’s page, choose  CSV  (or Excel) under “download” or “export”, and import that file';

/** `shown`: the file as the writer typed it. */
export async function readBankFile(file: string, shown: string): Promise<BankFile> {
  const refuse = (message: string, ...hints: string[]): BankFile => ({
    sheet: undefined,
    diagnostics: [{ code: 'cli.import', severity: 'error', file: shown, message, hints }],
  });
  let bytes: Buffer;
  try {
    const found = await stat(file);
    if (!found.isFile()) return refuse(`${shown} is no file`, 'name the file that the bank gave you');
    if (found.size > MOST_BYTES)
      return refuse(
        `${shown} has ${Math.ceil(found.size / 1e6)} million bytes, more than any bank’s list`,
        'check that it is the right file',
      );
    bytes = await readPlainFile(file);
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === 'ENOENT') return refuse(`there is no file ${shown}`, 'check the spelling and the folder');
    return refuse(`${shown} can’t be read (${code ?? 'unknown reason'})`, 'check who may read it');
  }
  const kind = otherKind(bytes);
  if (kind !== undefined) return refuse(`${shown} is ${kind}, not a list of rows`, DOWNLOAD);
  if (bytes.length === 0) return refuse(`${shown} is empty`, 'download it again from the bank');
  const name = path.basename(file);
  const read = isWorkbook(bytes) ? await readBook(bytes, name, shown) : readText(bytes, name, shown);
  const { sheet } = read;
  if (sheet === undefined) return { sheet, diagnostics: read.diagnostics.map(covered) };
  if (sheet.rows.length > MOST_ROWS || sheet.rows.some((cells) => cells.length > MOST_COLUMNS))
    return refuse(
      `${shown} has more than ${MOST_ROWS / 1000},000 rows or ${MOST_COLUMNS} columns`,
      'check that it is the right file, or download a shorter time',
    );
  const top = read.diagnostics.length === 0 ? 0 : firstLine(sheet);
  return {
    sheet: { ...sheet, placeOf: (row, column) => coveredPlace(sheet.placeOf(row, column)) },
    // A quote that is amiss in the chatter above the headings does no harm.
    diagnostics: read.diagnostics.filter(({ place }) => (place?.line ?? top) >= top).map(covered),
  };
}

/** The line of the headings; 0 where nothing stands above them. */
function firstLine({ rows, placeOf }: SheetRows): number {
  const { row } = findHeadings(rows);
  return row > 1 ? (placeOf(row)?.line ?? 0) : 0;
}

const isWorkbook = (bytes: Buffer): boolean =>
  bytes.subarray(0, 2).toString('latin1') === 'PK' || bytes.subarray(0, 4).toString('hex') === 'd0cf11e0';

/** Kinds that banks offer beside CSV, by how they begin. */
function otherKind(bytes: Buffer): string | undefined {
  const head = bytes.subarray(0, 2048).toString('latin1').replace(/^ï»¿/, '').trimStart();
  if (head.startsWith('%PDF')) return 'a PDF';
  if (/^(?:OFXHEADER|<\?OFX|<OFX)/i.test(head) || /^<\?xml[^>]*>\s*<\?OFX/i.test(head))
    return 'an OFX or QFX file';
  if (/^!(?:Type|Account|Option)/i.test(head)) return 'a QIF file';
  if (/^<(?:!doctype\s+html|html|head|body|table|!--)/i.test(head)) return 'a web page (HTML)';
  if (/^<\?xml|^</.test(head)) return 'an XML file';
  if (/^[[{]\s*["{[\]}]/.test(head)) return 'a JSON file';
  if (/^(?:\{1:|:20:)/.test(head)) return 'an MT940 file';
  return undefined;
}

async function readBook(bytes: Buffer, name: string, shown: string): Promise<BankFile> {
  const { sheets, diagnostics } = await readWorkbook(bytes, name, shown, 'costs');
  if (diagnostics.length > 0) return { sheet: undefined, diagnostics: diagnostics.map(withoutPath) };
  // The first sheet may be a cover page.
  const sheet =
    sheets.find(({ rows }) => findHeadings(rows).isSure) ?? sheets.find(({ rows }) => rows.length > 0);
  const failed = (sheet?.failed ?? []).map(({ row, column }): Diagnostic => {
    const place = sheet?.placeOf(row, column);
    return {
      code: 'cli.import',
      severity: 'error',
      ...(place === undefined ? { file: shown } : { place }),
      message: 'the formula of this cell failed or was never worked out',
      hints: ['open the file in the spreadsheet, save it, and import it again'],
    };
  });
  return {
    sheet:
      failed.length > 0 ? undefined : (sheet ?? { name, file: shown, rows: [], placeOf: () => undefined }),
    diagnostics: failed,
  };
}

/** Lines of chatter above the headings have delimiters of their own, so the one that gives headings is taken. */
function readText(bytes: Buffer, name: string, shown: string): BankFile {
  const plain = readPlainCsv(bytes, name, shown);
  if (plain.sheet === undefined) return plain;
  // Whole lines of the beginning.
  const end = bytes.length > CSV_HEAD ? bytes.lastIndexOf(10, CSV_HEAD) : -1;
  const head = end > 0 ? bytes.subarray(0, end + 1) : bytes;
  let best: { delimiter: CsvDelimiter; score: number } | undefined;
  for (const delimiter of CSV_DELIMITERS) {
    const { sheet } = readPlainCsv(head, name, shown, { delimiter });
    const { score } = findHeadings(sheet?.rows ?? []);
    if (best === undefined || score > best.score) best = { delimiter, score };
  }
  if (best === undefined || best.score === 0 || best.delimiter === plain.delimiter) return plain;
  return readPlainCsv(bytes, name, shown, { delimiter: best.delimiter });
}

/** Control characters in front of a spot are left as they are: the report makes them visible. */
const coveredPlace = (place: Place | undefined): Place | undefined =>
  place === undefined ? undefined : { ...place, source: coverNumbers(place.source) };

const covered = (one: Diagnostic): Diagnostic =>
  one.place === undefined ? one : { ...one, place: { ...one.place, source: coverNumbers(one.place.source) } };
