/** The rows of a cost sheet: one payment each. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { House } from '../facts/house.js';
import type { CostColumn, CostRow } from '../facts/ledger.js';
import { bad, good, type Read } from '../facts/read.js';
import { readSheetAmount } from '../facts/sheet-number.js';
import { bucketReader, paidReader, placeReader, receiptReader } from './cell-words.js';
import type { ColumnWords, Headings } from './sheet-headings.js';
import { LONGEST_NAME, LONGEST_NOTE, LONGEST_SENTENCE, readRows, type SheetRow } from './sheet-row.js';
import type { SheetRows } from './sheet-rows.js';

/** Other headings of each column, in the order of `COST_COLUMNS`. */
export const COST_HEADINGS = {
  date: { also: ['day', 'date paid', 'payment date', 'paid on'], needed: true },
  payee: { also: ['paid to', 'vendor', 'store', 'supplier', 'to whom'], needed: true },
  what: { also: ['description', 'what for', 'item', 'items', 'for what'], needed: true },
  amount: { also: ['total', 'price', 'cost', 'dollars', 'sum', 'amount paid'], needed: true },
  bucket: { also: ['category'], needed: true },
  place: {
    also: ['room', 'system', 'work item', 'work', 'room or work', 'room or system', 'where'],
    needed: false,
  },
  paid: { also: ['how paid', 'method', 'payment method', 'paid by', 'paid with'], needed: false },
  receipt: { also: ['paper', 'document', 'receipt id', 'invoice'], needed: false },
  'tax year': { also: ['year', 'counts in'], needed: false },
  'sales tax': { also: ['of which sales tax', 'sales tax included'], needed: false },
  note: { also: ['notes', 'remark', 'remarks', 'comment', 'comments', 'memo'], needed: false },
} as const satisfies Record<CostColumn, ColumnWords>;

export function readCosts(
  sheet: SheetRows,
  headings: Headings<CostColumn>,
  house: House,
  written: unknown,
): { readonly rows: readonly CostRow[]; readonly diagnostics: readonly Diagnostic[] } {
  const bucketOf = bucketReader();
  const paidBy = paidReader();
  const placeOf = placeReader(house, written);
  const receiptOf = receiptReader(house, written);
  return readRows('costs', sheet, headings, (row): CostRow | undefined => {
    const date = row.day();
    const payee = row.words('payee', LONGEST_NAME, ['write who was paid']);
    const what = row.words('what', LONGEST_SENTENCE, ['write in a few words what was bought or done']);
    const cents = row.read('amount', readSheetAmount);
    const bucket = row.read('bucket', bucketOf);
    const place = row.maybe('place', placeOf);
    const paid = row.maybe('paid', paidBy);
    const receipt = row.maybe('receipt', receiptOf);
    const taxYear = row.maybe('tax year', (cell) => readTaxYear(cell, date));
    const salesTax = readSalesTax(row, cents);
    const note = row.words('note', LONGEST_NOTE);
    if (date === undefined || payee === undefined || what === undefined) return undefined;
    if (cents === undefined || bucket === undefined) return undefined;
    return { row: row.row, date, payee, what, cents, salesTax, bucket, place, paid, receipt, taxYear, note };
  });
}

/** Four digits, the year of the day or one beside it. `date` is undefined if it could not be read. */
function readTaxYear(cell: string, date: string | undefined): Read<number> {
  const hint = 'write the year in four digits, for example 2026';
  if (!/^\d{4}$/.test(cell))
    return bad(`“${cell.length > 60 ? `${cell.slice(0, 59)}…` : cell}” is no year`, hint);
  const year = Number(cell);
  if (date === undefined) return good(year);
  const paid = Number(date.slice(0, 4));
  if (Math.abs(year - paid) <= 1) return good(year);
  return bad(
    `the tax year ${year} is far from the payment of ${paid}`,
    'leave it empty where it is the year of the date; else check both',
  );
}

function readSalesTax(row: SheetRow<CostColumn>, cents: number | undefined): number | undefined {
  const salesTax = row.maybe('sales tax', readSheetAmount);
  if (salesTax === undefined || cents === undefined || salesTax === 0) return salesTax;
  if (Math.sign(salesTax) !== Math.sign(cents) && cents !== 0)
    row.refuse('sales tax', 'the sales tax and the amount have different signs', [
      'the sales tax is a part of the amount: write both above zero, or both below zero for a refund',
    ]);
  else if (Math.abs(salesTax) > Math.abs(cents))
    row.refuse('sales tax', 'the sales tax is more than the amount', [
      'the amount is what was paid, sales tax included: check both',
    ]);
  return salesTax;
}
