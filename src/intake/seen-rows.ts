/**
 * What became of every row of a bank that was imported once: `imports/seen.csv` of a house.
 *
 * A row is known by its day, cents, the bank's text and its reference, whatever their capitals and blanks: one account
 * as CSV and as a workbook may differ in those. Several such rows of one file are several
 * payments and are counted; the same rows in two overlapping files are one each.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { asInert, asItWas } from '../facts/inert-text.js';
import { readSheetDate } from '../facts/sheet-date.js';
import { readSheetAmount } from '../facts/sheet-number.js';
import { readPlainCsv } from './bank-csv.js';
import { amountIn, layoutOf, newLayout, PLAIN_MANNER, rowIn, type SheetLayout } from './bank-layout.js';
import type { BankRow } from './bank-rows.js';
import { plainText } from './bank-text.js';
import { readPlainFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';
import { plainWord } from './sheet-headings.js';
import { MOST_BYTES, type SheetRows } from './sheet-rows.js';

const SEEN_COLUMNS = ['date', 'amount', 'text', 'reference', 'nth', 'became', 'payee'] as const;
type SeenColumn = (typeof SEEN_COLUMNS)[number];

/** added: to the costs. in-costs: it stood there already. not-this-house, left-out: by the writer's word, or money in. */
export const BECAME = ['added', 'in-costs', 'not-this-house', 'left-out'] as const;
export type Became = (typeof BECAME)[number];

/** What a row of a bank is known by. */
export type RowKey = Pick<BankRow, 'date' | 'cents' | 'text' | 'reference'>;

export interface SeenRow extends RowKey {
  /** Which of equal rows, from 1. */
  readonly nth: number;
  readonly became: Became;
  /** Payee that was chosen for the bank's text; empty where none was. */
  readonly payee: string;
}

export interface SeenFile {
  /** Undefined if there is no file yet. */
  readonly bytes: Buffer | undefined;
  readonly rows: readonly SeenRow[];
  readonly layout: SheetLayout<SeenColumn>;
  readonly diagnostics: readonly Diagnostic[];
}

export const keyOf = ({ date, cents, text, reference }: RowKey): string =>
  JSON.stringify([date, cents, plainText(text), plainText(reference)]);
export const numberedKey = (row: RowKey & { readonly nth: number }): string => `${row.nth} ${keyOf(row)}`;

/** Equal rows of one file are counted from 1, in their order. */
export function numberRows<Row extends RowKey>(rows: readonly Row[]): (Row & { readonly nth: number })[] {
  const counts = new Map<string, number>();
  return rows.map((row) => {
    const nth = (counts.get(keyOf(row)) ?? 0) + 1;
    counts.set(keyOf(row), nth);
    return { ...row, nth };
  });
}

/** The file's name below the house folder. */
export const SEEN_FILE = 'imports/seen.csv';

const NEW_LAYOUT: SheetLayout<SeenColumn> = newLayout(SEEN_COLUMNS);

/** `shown`: the house folder as the writer would type it. */
export async function readSeen(folder: string, shown: string): Promise<SeenFile> {
  const file = `${shown}/${SEEN_FILE}`;
  const safe = await safePath(folder, SEEN_FILE);
  const nothing = { bytes: undefined, rows: [], layout: NEW_LAYOUT };
  if (!safe.ok)
    return safe.why === 'absent'
      ? { ...nothing, diagnostics: [] }
      : safe.why === 'closed'
        ? { ...nothing, diagnostics: [closed(file, 'EACCES')] }
        : {
            ...nothing,
            diagnostics: [wrong(file, `${file} is no plain file of this folder`, 'move it away')],
          };
  const bytes = await readPlainFile(safe.absolute, MOST_BYTES).catch(
    (thrown: NodeJS.ErrnoException) => thrown,
  );
  return bytes instanceof Error
    ? { ...nothing, diagnostics: [closed(file, bytes.code)] }
    : seenFrom(bytes, file);
}

export function seenFrom(bytes: Buffer, file: string): SeenFile {
  const { sheet, diagnostics, delimiter } = readPlainCsv(bytes, 'seen.csv', file);
  const nothing = { bytes, rows: [], layout: NEW_LAYOUT };
  if (sheet === undefined || diagnostics.length > 0) return { ...nothing, diagnostics };
  const at = new Map<SeenColumn, number>();
  for (const column of SEEN_COLUMNS) {
    const index = sheet.rows[0]?.findIndex((cell) => plainWord(cell) === plainWord(column)) ?? -1;
    if (index >= 0) at.set(column, index);
  }
  const missing = SEEN_COLUMNS.find((column) => !at.has(column));
  if (missing !== undefined)
    return {
      ...nothing,
      diagnostics: [
        wrong(
          file,
          `${file} has no column headed ${missing}, so what was imported before is not known`,
          `its first line is  ${SEEN_COLUMNS.join(',')}`,
          'take the file out, and rows that were imported before are asked about again',
        ),
      ],
    };
  const found: Diagnostic[] = [];
  const rows = readRows(sheet, at, found);
  return {
    bytes,
    rows,
    layout: layoutOf(bytes, sheet, { row: 1, at, width: sheet.rows[0]?.length ?? 0 }, delimiter),
    diagnostics: found,
  };
}

function readRows(
  sheet: SheetRows,
  at: ReadonlyMap<SeenColumn, number>,
  diagnostics: Diagnostic[],
): SeenRow[] {
  const rows: SeenRow[] = [];
  for (const [index, cells] of sheet.rows.entries()) {
    if (index === 0 || cells.every((cell) => cell.trim() === '')) continue;
    const cell = (column: SeenColumn): string => (cells[at.get(column) ?? -1] ?? '').trim();
    const refuse = (column: SeenColumn, message: string): void => {
      const place = sheet.placeOf(index + 1, at.get(column));
      diagnostics.push({
        code: 'cli.import',
        severity: 'error',
        ...(place === undefined ? { file: sheet.file } : { place }),
        message,
        hints: ['correct it, or take the row out: it is then asked about again'],
      });
    };
    const day = readSheetDate(cell('date'));
    const amount = readSheetAmount(cell('amount'));
    const became = BECAME.find((one) => one === cell('became'));
    if (!day.ok) refuse('date', day.problem);
    else if (!amount.ok) refuse('amount', amount.problem);
    else if (!/^[1-9]\d{0,5}$/.test(cell('nth'))) refuse('nth', 'this is no count');
    else if (became === undefined) refuse('became', `this is none of ${BECAME.join(', ')}`);
    else
      rows.push({
        date: day.value.day,
        cents: amount.value,
        text: asItWas(cell('text')),
        reference: asItWas(cell('reference')),
        nth: Number(cell('nth')),
        became,
        payee: asItWas(cell('payee')),
      });
  }
  return rows;
}

/** The file with rows behind those it has; rows it has already are left away. */
export function withSeen(file: SeenFile, added: readonly SeenRow[]): Buffer {
  const known = new Set(file.rows.map(numberedKey));
  const lines = added
    .filter((row) => !known.has(numberedKey(row)))
    .map((row) =>
      rowIn(file.layout, {
        date: row.date,
        amount: amountIn(PLAIN_MANNER, row.cents),
        text: asInert(row.text),
        reference: asInert(row.reference),
        nth: String(row.nth),
        became: row.became,
        payee: asInert(row.payee),
      }),
    );
  const { layout, bytes } = file;
  const before =
    bytes === undefined || bytes.length === 0 ? Buffer.from(`${SEEN_COLUMNS.join(',')}\n`) : bytes;
  return Buffer.concat([
    before,
    Buffer.from((layout.isClosed || lines.length === 0 ? '' : layout.lineEnd) + lines.join('')),
  ]);
}

/** It is there, and the system does not give its bytes. */
const closed = (file: string, code = 'unknown reason'): Diagnostic =>
  wrong(file, `${file} can’t be read (${code})`, 'check who may read it');

const wrong = (file: string, message: string, ...hints: string[]): Diagnostic => ({
  code: 'cli.import',
  severity: 'error',
  file,
  message,
  hints,
});
