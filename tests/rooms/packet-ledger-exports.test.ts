/** Which files a house's money becomes, and that nothing but the house file has them. */
import { describe, expect, it } from 'vitest';
import { ledgerExports } from '../../src/packet/ledger-exports.js';
import type { WorkbookCell, WorkbookSheet } from '../../src/packet/workbook.js';
import { houseFrom } from './house-from.js';
import { costRow, moneyOf } from './made-ledger.js';

const house = houseFrom({
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: `20' x 20'` }],
  rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen', name: 'Kitchen' }],
});
const trip = {
  row: 2,
  date: '2026-02-21',
  from: 'home',
  to: 'the house',
  purpose: 'keys',
  thousandths: 18_400,
  tolls: 150,
  vehicle: 'van',
} as const;
const worked = {
  row: 2,
  date: '2026-03-01',
  who: 'owner',
  what: 'walls',
  place: 'kitchen',
  hundredths: 950,
} as const;

const exportsOf = (rows: Parameters<typeof moneyOf>[1], change: Partial<ReturnType<typeof moneyOf>> = {}) =>
  ledgerExports({
    folder: 'test-house',
    house,
    money: { ...moneyOf(house, rows), ...change },
    asOf: '2026-11-20',
  });

const full = { costs: [costRow({ place: 'kitchen', salesTax: 75 })], trips: [trip], hours: [worked] };

function sheetsOf(change: Parameters<typeof exportsOf>[1] = {}): Map<string, WorkbookSheet> {
  const found = exportsOf(full, change).find((one) => 'workbook' in one);
  if (found === undefined || !('workbook' in found)) throw new Error('no workbook was made');
  return new Map(found.workbook().sheets.map((sheet) => [sheet.name, sheet]));
}

/** A row by its columns' titles. */
function rowOf(sheet: WorkbookSheet | undefined, at = 0): Record<string, WorkbookCell> {
  return Object.fromEntries(
    (sheet?.columns ?? []).map(({ title }, column) => [title, sheet?.rows[at]?.[column]]),
  );
}

describe('the files of a house’s money', () => {
  it('are named once each, and are the same each time', () => {
    expect(exportsOf(full).map(({ file }) => file)).toEqual([
      'ledger.csv',
      'miles.csv',
      'hours.csv',
      'test-house.journal',
      'ledger.json',
      'ledger.schema.json',
      'ledger.xlsx',
    ]);
    const whole = () =>
      exportsOf(full).map((one) => ('text' in one ? one : { ...one, workbook: one.workbook() }));
    expect(whole()).toEqual(whole());
  });

  it('are fewer where there is no list of miles or hours, and none where there is nothing', () => {
    expect(exportsOf({ costs: [costRow()] }).map(({ file }) => file)).not.toContain('miles.csv');
    expect(exportsOf({ costs: [costRow()] }).map(({ file }) => file)).not.toContain('hours.csv');
    expect(exportsOf({})).toEqual([]);
  });

  it('all end in a line end where they are texts', () => {
    for (const one of exportsOf(full))
      if ('text' in one) expect(one.text.endsWith('\n'), one.file).toBe(true);
  });
});

describe('the workbook', () => {
  it('has a sheet for each list', () => {
    expect([...sheetsOf().keys()]).toEqual([
      'Costs',
      'Miles',
      'Miles by rate',
      'Hours',
      'Buckets',
      'Worksheet',
      'Payees',
      'Keep until',
      'Rules',
    ]);
  });

  it('has a cell for every column of every row', () => {
    for (const { name, columns, rows } of sheetsOf().values()) {
      expect(rows.length, name).toBeGreaterThan(0);
      for (const row of rows) expect(row.length, name).toBe(columns.length);
      for (const { title, width } of columns)
        expect(width, `${name}, ${title}`).toBeGreaterThanOrEqual(title.length);
    }
  });

  it('says what a row is in the words of the house, with whole cents', () => {
    const sheets = sheetsOf();
    expect(rowOf(sheets.get('Costs'))).toMatchObject({
      Row: 2,
      Date: '2026-02-17',
      Amount: 14_800_000,
      Bucket: 'Purchase price',
      Place: 'Kitchen',
      'Sales tax': 75,
    });
    expect(rowOf(sheets.get('Miles'))).toMatchObject({
      Miles: 18_400,
      'Dollars a mile': 725,
      'Tolls and parking': 150,
    });
    expect(rowOf(sheets.get('Hours'))).toMatchObject({ Who: 'owner', Place: 'Kitchen', Hours: 950 });
    expect(rowOf(sheets.get('Buckets'), 1)).toMatchObject({ Bucket: 'Everything paid', Total: 14_800_000 });
    expect(rowOf(sheets.get('Payees'))).toMatchObject({
      Paid: 310_000,
      'Left out': 100_000,
      'Why left out': 'paid by card (row 5)',
      'Return due': '2027-02-01',
    });
    expect(rowOf(sheets.get('Keep until'), 1)).toMatchObject({
      What: 'Deed',
      Kept: 'for good',
      'Keep through': undefined,
    });
  });

  it('leads each line of the worksheet to its rows and rules', () => {
    expect(rowOf(sheetsOf().get('Worksheet'))).toMatchObject({
      'Held as': 'dealer',
      'Line of the form': '36',
      Amount: -5_902,
      'Rows of the costs': '2-4, 9',
      Facts: 'sale price $2,460.00',
      Rules: 'made-up',
    });
    const remark = sheetsOf().get('Worksheet');
    expect(rowOf(remark, 2)).toMatchObject({
      Part: 'To be read with it',
      Line: 'Read this too.',
      Rules: 'made-up',
    });
  });

  it('has the worksheet of the stated role, and all of them where none is stated', () => {
    const held = (sheet: WorkbookSheet | undefined) => [...new Set(sheet?.rows.map(([role]) => role))];
    expect(held(sheetsOf().get('Worksheet'))).toEqual(['dealer']);
    expect(held(sheetsOf({ role: undefined }).get('Worksheet'))).toEqual(['dealer', 'investor']);
  });

  it('counts rows rather than listing thousands of them', () => {
    const rows = Array.from({ length: 5_000 }, (_, at) => 2 * at + 2);
    const [total] = moneyOf(house, full).totals;
    if (total === undefined) throw new Error('no total');
    const cell = String(
      rowOf(sheetsOf({ totals: [{ ...total, rows }] }).get('Buckets'))['Rows of the costs'],
    );
    expect(cell.endsWith('and more: 5000 rows')).toBe(true);
    expect(cell.length).toBeLessThan(2_000);
  });
});
