/**
 * The cost sheets that an import looks at: the house's own, which rows are added to, and those of the houses beside it,
 * whose payees are remembered. Rows are read leniently: what can't be read of one is left open here, and `check` tells it.
 */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Bucket } from '../facts/bucket.js';
import { asItWas } from '../facts/inert-text.js';
import type { CostColumn } from '../facts/ledger.js';
import { readSheetDate } from '../facts/sheet-date.js';
import { readSheetAmount } from '../facts/sheet-number.js';
import { readPlainCsv } from './bank-csv.js';
import { layoutOf, type SheetLayout } from './bank-layout.js';
import { bucketReader } from './cell-words.js';
import { COST_HEADINGS } from './read-costs.js';
import { readPlainFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';
import { findSheets } from './sheet-file.js';
import { type Headings, readHeadings } from './sheet-headings.js';
import type { SheetRows } from './sheet-rows.js';

/** A row of a cost sheet, as far as it could be read. */
export interface KnownCost {
  readonly row: number;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly payee: string;
  readonly what: string;
  readonly cents: number;
  readonly bucket: Bucket | undefined;
  readonly place: string | undefined;
}

export interface CostSheet {
  /** Name in the house folder, `costs.csv` if there is none yet. */
  readonly name: string;
  readonly kind: 'csv' | 'xlsx' | 'none';
  /** Of a CSV file that is there. */
  readonly bytes: Buffer | undefined;
  /** Undefined where there are no headings yet: no file, or one of blank lines alone. */
  readonly layout: SheetLayout<CostColumn> | undefined;
  /** Columns of a workbook, in its order. */
  readonly columns: readonly CostColumn[];
  readonly rows: readonly KnownCost[];
  /** What keeps rows from being placed. */
  readonly diagnostics: readonly Diagnostic[];
}

const NOTHING: CostSheet = {
  name: 'costs.csv',
  kind: 'none',
  bytes: undefined,
  layout: undefined,
  columns: [],
  rows: [],
  diagnostics: [],
};

/** `shown`: the house folder as the writer would type it. */
export async function readCostSheet(folder: string, shown: string): Promise<CostSheet> {
  const { sheets, diagnostics } = await findSheets(folder, shown);
  const found = sheets.get('costs');
  const about = diagnostics.filter(
    (one) => one.severity === 'error' && /(?:^|\/)costs\.[a-z]+$/i.test(one.place?.file ?? one.file ?? ''),
  );
  if (found === undefined || about.length > 0) return { ...NOTHING, diagnostics: about };
  if (!/\.csv$/i.test(found.name)) return fromWorkbook(found);
  const safe = await safePath(folder, found.name);
  if (!safe.ok) return NOTHING;
  // It was read a moment ago; whoever took it away meanwhile is told of where the file is put in place.
  const bytes = await readPlainFile(safe.absolute).catch(() => undefined);
  return bytes === undefined ? NOTHING : fromCsv(bytes, found.name, found.file);
}

/** A CSV file with the headings of costs at `name` below the folder, or none. */
export async function readPasteSheet(folder: string, name: string): Promise<CostSheet> {
  const safe = await safePath(folder, name);
  return safe.ok ? fromCsv(await readPlainFile(safe.absolute), name, name) : { ...NOTHING, name };
}

function fromCsv(bytes: Buffer, name: string, file: string): CostSheet {
  const { sheet, diagnostics, delimiter } = readPlainCsv(bytes, name, file);
  const unread: CostSheet = { ...NOTHING, name, kind: 'csv', bytes };
  if (sheet === undefined || diagnostics.length > 0) return { ...unread, diagnostics };
  // A file that was made and never filled.
  if (sheet.rows.every((cells) => cells.every((cell) => cell.trim() === ''))) return unread;
  const { headings, diagnostics: about } = readHeadings('costs', sheet, COST_HEADINGS);
  if (headings === undefined)
    return { ...unread, diagnostics: about.filter((one) => one.severity === 'error') };
  return { ...unread, layout: layoutOf(bytes, sheet, headings, delimiter), rows: knownRows(sheet, headings) };
}

function fromWorkbook(sheet: SheetRows): CostSheet {
  const { headings, diagnostics } = readHeadings('costs', sheet, COST_HEADINGS);
  const unread: CostSheet = { ...NOTHING, name: sheet.name, kind: 'xlsx' };
  if (headings === undefined)
    return { ...unread, diagnostics: diagnostics.filter((one) => one.severity === 'error') };
  const columns = [...headings.at].sort(([, a], [, b]) => a - b).map(([column]) => column);
  return { ...unread, columns, rows: knownRows(sheet, headings) };
}

function knownRows(sheet: SheetRows, { row: heading, at }: Headings<CostColumn>): KnownCost[] {
  const bucketOf = bucketReader();
  const rows: KnownCost[] = [];
  for (let row = heading + 1; row <= sheet.rows.length; row += 1) {
    const cells = sheet.rows[row - 1] ?? [];
    const cell = (column: CostColumn): string => (cells[at.get(column) ?? -1] ?? '').trim();
    const date = readSheetDate(cell('date'));
    const cents = readSheetAmount(cell('amount'));
    if (!date.ok || !cents.ok || cell('payee') === '') continue;
    const bucket = cell('bucket') === '' ? undefined : bucketOf(cell('bucket'));
    rows.push({
      row,
      date: date.value.day,
      payee: asItWas(cell('payee')).trim(),
      what: asItWas(cell('what')).trim(),
      cents: cents.value,
      bucket: bucket?.ok === true ? bucket.value : undefined,
      place: cell('place') === '' ? undefined : cell('place'),
    });
  }
  return rows;
}

/** More houses than anybody has beside one another. */
const MOST_HOUSES = 200;

/** The house folders beside this one, sorted: those with a house.yaml. */
export async function siblingHouses(folder: string): Promise<string[]> {
  const own = path.resolve(folder);
  const content = path.dirname(own);
  const found: string[] = [];
  let entries: string[] = [];
  try {
    entries = (await readdir(content, { withFileTypes: true }))
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map((entry) => path.join(content, entry.name));
  } catch {
    // A folder that can't be listed has no neighbours to learn from.
  }
  for (const one of entries.sort()) {
    if (one === own || found.length >= MOST_HOUSES) continue;
    if ((await safePath(one, 'house.yaml')).ok) found.push(one);
  }
  return found;
}
