/** Workbooks: sheets by name, numbers and dates as they were typed, and where a cell stands. */
import { describe, expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/node';
import { printReport } from '../../src/diagnostics/report.js';
import { ledgerFrom } from './ledger-from.js';

type Cell = string | number | Date | null | { readonly value: number; readonly format: string };

/** Sheets by their title. */
async function workbook(sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>): Promise<Uint8Array> {
  const cell = (one: Cell) => {
    if (one === null) return null;
    if (one instanceof Date) return { value: one, type: Date, format: 'mm/dd/yyyy' };
    return typeof one === 'object' ? { ...one, type: Number } : { value: one };
  };
  const named = Object.entries(sheets).map(([sheet, rows]) => ({
    sheet,
    data: rows.map((row) => row.map(cell)),
  }));
  return (await writeWorkbook(named as never)).toBuffer();
}

const day = (iso: string): Date => new Date(`${iso}T00:00:00Z`);
const COSTS = ['date', 'payee', 'what', 'amount', 'bucket', 'note'];
const MILES = ['date', 'to', 'purpose', 'miles'];
const HOURS = ['date', 'who', 'what', 'hours'];

describe('a workbook', () => {
  it('holds costs, miles and hours in sheets of these names', async () => {
    const { ledger, said } = await ledgerFrom({
      'costs.xlsx': await workbook({
        costs: [COSTS, [day('2026-03-01'), 'A', 'paint', 312.4, 'repair', null]],
        Miles: [MILES, [day('2026-03-02'), 'yard', 'lumber', 18.4]],
        HOURS: [HOURS, [day('2026-03-03'), 'owner', 'walls', { value: 1.5 / 24, format: 'h:mm' }]],
      }),
    });
    expect(said).toEqual([]);
    expect(ledger.costs).toMatchObject([{ row: 2, date: '2026-03-01', cents: 31240, bucket: 'repair' }]);
    expect(ledger.trips).toMatchObject([{ row: 2, date: '2026-03-02', thousandths: 18400 }]);
    expect(ledger.hours).toMatchObject([{ row: 2, date: '2026-03-03', hundredths: 150 }]);
    expect(ledger.sheets).toEqual({ costs: 'costs.xlsx', miles: 'costs.xlsx', hours: 'costs.xlsx' });
  });

  it('may be one for each list, and its first sheet may have any name', async () => {
    const { ledger, said } = await ledgerFrom({
      'miles.xlsx': await workbook({ Sheet1: [MILES, [day('2026-03-02'), 'yard', 'lumber', 7]], Empty: [] }),
      'hours.xlsx': await workbook({ hours: [HOURS, [day('2026-03-03'), 'owner', 'walls', 2]] }),
    });
    expect(said).toEqual([]);
    expect([ledger.trips.length, ledger.hours.length]).toEqual([1, 1]);
  });

  it('says which sheets are not read, and which list is there twice', async () => {
    const { ledger, said } = await ledgerFrom({
      'costs.xlsx': await workbook({ costs: [COSTS], miles: [MILES], Pivot: [['sum'], [12]] }),
      'miles.csv': 'date,to,purpose,miles\n',
    });
    expect(said.filter((one) => !one.includes('no rows'))).toEqual([
      'error intake.sheet house/costs.xlsx the miles stand in two places: costs.xlsx, sheet miles and miles.csv',
      'note intake.sheet house/costs.xlsx the sheet “Pivot” of costs.xlsx is not read',
    ]);
    expect(ledger.sheets.miles).toBeUndefined();
  });

  it('and a CSV file for one list: an error that names both, and no rows', async () => {
    const { ledger, said, hints } = await ledgerFrom({
      'costs.csv': 'date,payee,what,amount,bucket\n2026-03-01,A,paint,1.00,repair\n',
      'costs.xlsx': await workbook({ Sheet1: [COSTS, [day('2026-03-01'), 'A', 'paint', 1, 'repair', null]] }),
    });
    expect(said).toEqual([
      'error intake.sheet house/costs.csv the costs stand in two places: costs.csv and costs.xlsx, sheet Sheet1',
    ]);
    expect(hints).toEqual(['keep the newer one and delete the other: costs.csv or costs.xlsx, sheet Sheet1']);
    expect(ledger.costs).toEqual([]);
    expect(ledger.sheets.costs).toBeUndefined();
  });

  it('without a sheet for its own list says so', async () => {
    const { said } = await ledgerFrom({
      'costs.xlsx': await workbook({ miles: [MILES, [day('2026-03-02'), 'a', 'b', 7]] }),
    });
    expect(said).toEqual(['error intake.sheet house/costs.xlsx costs.xlsx has no sheet called costs']);
  });

  it('counts blank rows, and shows a row as its cells with its number', async () => {
    const { ledger, located } = await ledgerFrom({
      'costs.xlsx': await workbook({
        costs: [
          COSTS,
          [],
          [day('2026-03-01'), 'A', 'paint', 1, 'repair', null],
          [day('2026-03-01'), 'A', 'two\nlines', 12.345, 'repair', 'x'],
        ],
      }),
    });
    expect(ledger.costs.map(({ row }) => row)).toEqual([3]);
    expect(printReport(located, 'text', false)).toBe(
      [
        'error intake.cell  house/costs.xlsx:4:30  costs[4].amount',
        '  4 | 2026-03-01 | A | two lines | 12.345 | repair | x',
        '    |                              ^^^^^^ 12.345 has a part of a cent',
        '  do: write at most two decimals, for example 12.34, or 12,345.00 if thousands were meant',
        '',
      ].join('\n'),
    );
  });

  it('reads the number that was typed, not the binary fraction behind it', async () => {
    const amounts = [0.1 + 0.2, 1.1 * 3, 312.4, 1e6 + 0.07, -0.3];
    const { ledger, said } = await ledgerFrom({
      'costs.xlsx': await workbook({
        costs: [COSTS, ...amounts.map((amount) => [day('2026-03-01'), 'A', 'b', amount, 'repair', null])],
      }),
    });
    expect(said).toEqual([]);
    expect(ledger.costs.map(({ cents }) => cents)).toEqual([30, 330, 31240, 100_000_007, -30]);
  });

  it('an unformatted date and a failed number are refused with what to do', async () => {
    const { said } = await ledgerFrom({
      'costs.xlsx': await workbook({ costs: [COSTS, [46082, 'A', 'b', 1e21, 'repair', null]] }),
    });
    expect(said).toEqual([
      'error intake.cell house/costs.xlsx:2:1 46082 is a spreadsheet’s count of days, not a date',
      'error intake.cell house/costs.xlsx:2:17 “1e+21” is no amount of money',
    ]);
  });

  it('cut short or changed is refused in plain words', async () => {
    const whole = await workbook({ costs: [COSTS] });
    const { said } = await ledgerFrom({ 'costs.xlsx': whole.slice(0, whole.length >> 1) });
    expect(said).toEqual(['error intake.sheet house/costs.xlsx costs.xlsx can’t be opened as a workbook']);
  });

  it('with a value far to the right is refused before it unfolds', async () => {
    const { said } = await ledgerFrom({
      'costs.xlsx': await workbook({ costs: [[...COSTS, ...Array<null>(300).fill(null), 'x']] }),
    });
    expect(said).toEqual([expect.stringContaining('error intake.too-big house/costs.xlsx')]);
  });
});
