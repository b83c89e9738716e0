/** A house's rows, written as CSV and read again by the program's own reader, are the same rows. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { COST_COLUMNS, type CostRow, type Trip } from '../../src/facts/ledger.js';
import { COST_HEADINGS } from '../../src/intake/read-costs.js';
import { readHouse } from '../../src/intake/read-house.js';
import { readLedger } from '../../src/intake/read-ledger.js';
import { costsCsv, hoursCsv, milesCsv } from '../../src/packet/ledger-csv.js';
import { ledgerFrom } from './ledger-from.js';

const content = fileURLToPath(new URL('../../content/', import.meta.url));

const NO_ROW: CostRow = {
  row: 2,
  date: '2026-03-01',
  payee: '',
  what: '',
  cents: 1200,
  salesTax: undefined,
  bucket: 'repair',
  place: undefined,
  paid: undefined,
  receipt: undefined,
  taxYear: undefined,
  note: undefined,
};
const NO_TRIP: Trip = {
  row: 2,
  date: '2026-03-01',
  from: undefined,
  to: '',
  purpose: '',
  thousandths: 1000,
  tolls: 0,
  vehicle: undefined,
};

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe('rows that were written as CSV', () => {
  it.each(['quarry-road', 'larkspur-court'])('of %s come back', async (name) => {
    const { found } = await readHouse(path.join(content, name), `content/${name}`, { ledger: true });
    if (found?.ledger === undefined) throw new Error(`${name} has no ledger`);
    const { costs, trips, hours } = found.ledger;
    expect(costs.length).toBeGreaterThan(20);
    expect(trips.length).toBeGreaterThan(3);
    expect(hours.length).toBeGreaterThan(3);
    const folder = mkdtempSync(path.join(tmpdir(), 'ledger-'));
    made.push(folder);
    writeFileSync(path.join(folder, 'costs.csv'), costsCsv(costs));
    writeFileSync(path.join(folder, 'miles.csv'), milesCsv(trips));
    writeFileSync(path.join(folder, 'hours.csv'), hoursCsv(hours));
    const back = await readLedger(folder, 'back', found.house);
    expect(back.ledger.costs).toEqual(costs);
    expect(back.ledger.trips).toEqual(trips);
    expect(back.ledger.hours).toEqual(hours);
    expect(back.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it.each([
    '+1 DOLLAR STORE',
    "'=QUOTE STORE",
    "''-two",
    '＝wide',
    '@home',
    "'t Veld",
    "'",
    '=HYPERLINK("x",\'y\')',
    "say 'a', then -b",
  ])('with the words %j come back, and no spreadsheet runs them', async (words) => {
    const row = { ...NO_ROW, payee: words, what: words, note: words };
    const trip = { ...NO_TRIP, from: words, to: words, purpose: words, vehicle: words };
    const hour = { row: 2, date: '2026-03-01', who: words, what: words, place: undefined, hundredths: 100 };
    const csv = {
      'costs.csv': costsCsv([row]),
      'miles.csv': milesCsv([trip]),
      'hours.csv': hoursCsv([hour]),
    };
    for (const text of Object.values(csv)) expect(text).not.toMatch(/(?:^|[,\n]"?)[=+@\-＝]/);
    const { ledger, said } = await ledgerFrom(csv);
    expect([ledger.costs, ledger.trips, ledger.hours, said]).toEqual([[row], [trip], [hour], []]);
  });

  it('have the columns that the reader knows, in its order', () => {
    expect(Object.keys(COST_HEADINGS)).toEqual([...COST_COLUMNS]);
    expect(costsCsv([])).toBe(`${COST_COLUMNS.join(',')}\r\n`);
  });
});
