/**
 * The demo houses' costs, miles, hours and papers agree with each other to the cent.
 *
 * Rows come through two doors that share no code below the file: the project's own reader, and Papa Parse with
 * BigInt. What a paper says is read out of its PDF by PDF.js, not out of the list that drew it.
 */
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import papaparse from 'papaparse';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { BUCKET_NAMES } from '../../src/facts/bucket.js';
import type { House } from '../../src/facts/house.js';
import type { CostRow, Ledger } from '../../src/facts/ledger.js';
import { readHouse } from '../../src/intake/read-house.js';
import { readLedger } from '../../src/intake/read-ledger.js';

/** The day on which the demo packets are made. */
const AS_OF = '2026-11-20';
/** The mileage rate changes between these two days. */
const LAST_OF_2025 = '2025-12-31';
/** A row of more than a hundred dollars has its paper in the folder, not in the binder. */
const PAPER_FROM = 100_00;

const content = fileURLToPath(new URL('../../content/', import.meta.url));

describe.each(['quarry-road', 'larkspur-court'])('%s', (name) => {
  const folder = join(content, name);
  let house: House;
  let ledger: Ledger;
  /** Text of every paper, by file name. */
  const papers = new Map<string, string>();

  beforeAll(async () => {
    const { found, diagnostics } = await readHouse(folder, `content/${name}`);
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    if (found === undefined) throw new Error(`${name} can't be read`);
    house = found.house;
    const read = await readLedger(folder, `content/${name}`, house);
    expect(read.diagnostics.filter(({ severity }) => severity !== 'note')).toEqual([]);
    ledger = read.ledger;
    for (const file of await readdir(join(folder, 'documents')))
      papers.set(file, await textOf(join(folder, 'documents', file)));
  });

  const documentOf = (id: string) => house.documents.find((one) => one.id === id);
  const rowsOf = (id: string): CostRow[] => ledger.costs.filter(({ receipt }) => receipt === id);
  const lastDay = (): string => house.money?.sale?.closed?.latest ?? AS_OF;

  it('holds as many rows as a renovation makes', () => {
    expect(ledger.costs.length).toBeGreaterThanOrEqual(60);
    expect(ledger.costs.length).toBeLessThanOrEqual(110);
    expect(ledger.trips.length).toBeGreaterThanOrEqual(30);
    expect(ledger.trips.length).toBeLessThanOrEqual(50);
    expect(ledger.hours.length).toBeGreaterThanOrEqual(40);
    expect(ledger.hours.length).toBeLessThanOrEqual(80);
  });

  it('adds up to the same, bucket by bucket, in two readers', async () => {
    const other = await bucketSums(join(folder, 'costs.csv'));
    const ours = new Map<string, bigint>();
    for (const { bucket, cents } of ledger.costs) ours.set(bucket, (ours.get(bucket) ?? 0n) + BigInt(cents));
    expect(ours).toEqual(other);
    expect([...ours.keys()].filter((bucket) => !BUCKET_NAMES.some((known) => known === bucket))).toEqual([]);
    expect(sumOf(ledger.costs.map(({ cents }) => cents))).toBe(
      [...other.values()].reduce((a, b) => a + b, 0n),
    );
  });

  it('loses no row of any sheet', async () => {
    for (const list of ['costs', 'trips', 'hours'] as const) {
      const file = { costs: 'costs.csv', trips: 'miles.csv', hours: 'hours.csv' }[list];
      const rows: unknown[] = parse(await readFile(join(folder, file)), { bom: true, columns: true });
      expect(ledger[list].length, file).toBe(rows.length);
    }
  });

  it('has every paper that a row names, and a row for every receipt and invoice', () => {
    const lacking = ledger.costs.filter(
      ({ receipt }) => receipt !== undefined && documentOf(receipt) === undefined,
    );
    expect(lacking).toEqual([]);
    const priced = house.documents.filter(({ kind }) => kind === 'receipt' || kind === 'invoice');
    expect(priced.length).toBeGreaterThan(30);
    expect(priced.filter(({ id }) => rowsOf(id).length === 0)).toEqual([]);
    expect(priced.filter(({ total }) => total === undefined)).toEqual([]);
  });

  it('keeps a few payments without a paper, as in life', () => {
    const without = ledger.costs.filter(({ receipt }) => receipt === undefined);
    expect(without.length).toBeGreaterThanOrEqual(1);
    expect(without.length).toBeLessThanOrEqual(5);
    expect(without.filter(({ cents }) => cents >= PAPER_FROM)).toEqual([]);
  });

  it('pays every paper in full: its rows add up to its total, refunds told apart', () => {
    const wrong = house.documents.flatMap(({ id, total }) => {
      if (total === undefined) return [];
      const cents = rowsOf(id).map((row) => row.cents);
      const paid = sumOf(cents.filter((one) => one > 0));
      return paid === BigInt(total) || sumOf(cents) === BigInt(total) ? [] : [{ id, total, cents }];
    });
    expect(wrong).toEqual([]);
  });

  it('has a PDF for what cost more than a hundred dollars', () => {
    const large = ledger.costs.filter(
      ({ cents, receipt }) => Math.abs(cents) > PAPER_FROM && receipt !== undefined,
    );
    const unseen = large.filter(({ receipt = '' }) => !papers.has(documentOf(receipt)?.file ?? ''));
    expect(large.length).toBeGreaterThan(40);
    expect(unseen).toEqual([]);
  });

  it('prints on every receipt and invoice the total and the tax that the facts and rows tell', () => {
    const read = house.documents.filter(
      ({ kind, file }) => file && (kind === 'receipt' || kind === 'invoice'),
    );
    expect(read.length).toBeGreaterThan(25);
    for (const { id, file = '', total } of read) {
      const text = papers.get(file) ?? '';
      expect(/\bTotal\s+(-?\$[\d,.]+)/.exec(text)?.[1], file).toBe(dollars(total ?? 0));
      const tax = /\bSales tax\s+(-?\$[\d,.]+)/.exec(text)?.[1];
      const told = sumOf(
        rowsOf(id)
          .filter((row) => !isRefundOf(row, total))
          .map(({ salesTax }) => salesTax ?? 0),
      );
      expect(dollars(Number(told)), file).toBe(tax ?? '$0.00');
    }
  });

  it('gives its invented papers no telephone number that could ring', () => {
    const numbers = [...papers.values()].flatMap((text) => text.match(/\b\d{3}-\d{4}\b/g) ?? []);
    expect(numbers.length).toBeGreaterThan(40);
    expect(numbers.filter((one) => !/^555-01\d\d$/.test(one))).toEqual([]);
  });

  it('charges sales tax within the amount, and with its sign', () => {
    const taxed = ledger.costs.filter(({ salesTax }) => salesTax !== undefined);
    expect(taxed.length).toBeGreaterThan(20);
    const wrong = taxed.filter(
      ({ cents, salesTax = 0 }) =>
        Math.sign(salesTax) !== Math.sign(cents) || Math.abs(salesTax) * 10 > Math.abs(cents),
    );
    expect(wrong).toEqual([]);
  });

  it('names only places that the house has', () => {
    const ids = new Set(
      [house.rooms, house.levels, house.structures, house.systems, house.work].flatMap((list) =>
        list.map(({ id }) => id),
      ),
    );
    const places = [...ledger.costs, ...ledger.hours].flatMap(({ place }) => place ?? []);
    expect(places.length).toBeGreaterThan(60);
    expect(places.filter((place) => !ids.has(place))).toEqual([]);
  });

  it('pays and works within its life, and drives across a change of the rate', () => {
    const bought = house.house.bought?.earliest ?? '';
    const days = [...ledger.costs, ...ledger.hours].map(({ date }) => date);
    expect(days.filter((day) => day < bought || day > lastDay())).toEqual([]);
    const trips = ledger.trips.map(({ date }) => date);
    expect(trips.filter((day) => day > lastDay())).toEqual([]);
    expect(trips.some((day) => day <= LAST_OF_2025)).toBe(true);
    expect(trips.some((day) => day > LAST_OF_2025)).toBe(true);
  });

  it('spends its hours on work that those people did, before it was done', () => {
    const wrong = ledger.hours.flatMap((row) => {
      const work = house.work.find(({ id }) => id === row.place);
      if (work === undefined) return [];
      const begun = work.started?.earliest ?? '';
      const done = work.done?.latest ?? '';
      return work.by === row.who && begun <= row.date && row.date <= done ? [] : [row];
    });
    expect(wrong).toEqual([]);
    const perDay = new Map<string, number>();
    for (const { date, who, hundredths } of ledger.hours)
      perDay.set(`${who} ${date}`, (perDay.get(`${who} ${date}`) ?? 0) + hundredths);
    expect([...perDay].filter(([, hundredths]) => hundredths > 14_00)).toEqual([]);
  });

  it('drives fewer miles for the house than the odometer ran', () => {
    const years = new Set(ledger.trips.map(({ date }) => Number(date.slice(0, 4))));
    expect(years.size).toBe(2);
    for (const year of years) {
      const reading = house.money?.odometer.find((one) => one.year === year);
      const driven = ledger.trips.filter(({ date }) => date.startsWith(String(year)));
      expect(new Set(driven.map(({ vehicle }) => vehicle))).toEqual(new Set([reading?.vehicle]));
      const thousandths = driven.reduce((sum, trip) => sum + trip.thousandths, 0);
      expect(((reading?.end ?? 0) - (reading?.start ?? 0)) * 1000).toBeGreaterThan(thousandths);
    }
  });

  it('knows every payee of its money section from the sheet', () => {
    const paid = new Set(ledger.costs.map(({ payee }) => payee));
    const listed = house.money?.payees.map((one) => one.name) ?? [];
    expect(listed.length).toBeGreaterThan(20);
    expect(listed.filter((one) => !paid.has(one))).toEqual([]);
  });

  it('divides the property tax of the year of purchase by days', () => {
    const [bill] = house.money?.['property-tax'] ?? [];
    const days = daysBetween(bill?.from.earliest ?? '', house.house.bought?.earliest ?? '');
    const share = (BigInt(bill?.amount ?? 0) * BigInt(days) * 2n + 365n) / (2n * 365n);
    const told =
      bill?.reimbursed === 'yes'
        ? ledger.costs
            .filter(({ bucket, cents }) => bucket === 'property-tax' && cents < 0)
            .map(({ cents }) => -cents)
        : ledger.costs.filter(({ bucket }) => bucket === 'property-tax-taken-over').map(({ cents }) => cents);
    expect(told.map(BigInt)).toEqual([share]);
  });
});

it('larkspur-court: the cost sheet is one that a spreadsheet wrote, and is read all the same', async () => {
  const text = await readFile(join(content, 'larkspur-court/costs.csv'), 'utf8');
  expect(text.startsWith('\uFEFFDate,Paid to,What for,Bucket,Room or work,Amount,')).toBe(true);
  expect(text).toContain('\r\n1/15/2025,Seller,');
  expect(text).toContain(',"$112,000.00",');
  expect(text).toContain(',($78.08),($6.18),');
});

it('quarry-road: the settlement statement leads from the price to the wire', async () => {
  const text = await textOf(join(content, 'quarry-road/documents/sale-statement.pdf'));
  const figure = (label: string): bigint =>
    centsOf(new RegExp(`${label}\\s+(\\$[\\d,.]+)`).exec(text)?.[1] ?? '');
  const left =
    figure('Price') - figure('Charged to the seller') - figure('Principal paid off, Fallow Savings Bank');
  expect(left).toBe(figure('Paid to the seller by wire'));
});

it('refuses to draw a paper whose lines do not add up', async () => {
  const draw: { writePapers: (folder: string, papers: readonly object[]) => Promise<void> } = await import(
    new URL('../scenes/paper.mjs', import.meta.url).href
  );
  const folder = await mkdtemp(join(tmpdir(), 'demo-paper-'));
  const paper = { file: 'a.pdf', date: '2026-01-02', head: ['Shop'], title: 'Receipt', taxPerMille: 75 };
  const items = [
    ['Nails', 1_000],
    ['Delivery', 500, 'untaxed'],
  ];
  await draw.writePapers(folder, [{ ...paper, items, total: 1_575 }]);
  expect(await readdir(folder)).toEqual(['a.pdf']);
  await expect(draw.writePapers(folder, [{ ...paper, items, total: 1_576 }])).rejects.toThrow(
    'a.pdf: the lines add up to $15.75, the total says $15.76',
  );
  await rm(folder, { recursive: true });
});

/** A refund that names the receipt it goes back on, and no slip of its own. */
const isRefundOf = (row: CostRow, total: number | undefined): boolean => row.cents < 0 && (total ?? 0) > 0;

const sumOf = (cents: readonly number[]): bigint => cents.reduce((sum, one) => sum + BigInt(one), 0n);

function dollars(cents: number): string {
  const whole = new Intl.NumberFormat('en-US').format(Math.floor(Math.abs(cents) / 100));
  return `${cents < 0 ? '-' : ''}$${whole}.${String(Math.abs(cents) % 100).padStart(2, '0')}`;
}

/** `$1,234.50`, `(12.00)`, `-59.02` and `7` as cents. */
function centsOf(written: string): bigint {
  const [, whole = '', part = '00'] = /^(\d+)(?:\.(\d\d))?$/.exec(written.replace(/[$,()-]/g, '')) ?? [];
  if (whole === '') throw new Error(`no amount: ${written}`);
  const cents = BigInt(whole + part);
  return /^[(-]/.test(written) ? -cents : cents;
}

/** Sums of a cost sheet by bucket, from the cells alone. */
async function bucketSums(file: string): Promise<Map<string, bigint>> {
  const text = (await readFile(file, 'utf8')).replace(/^\uFEFF/, '');
  const { data, errors } = papaparse.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  const sums = new Map<string, bigint>();
  for (const cells of data) {
    const bucket = cells.bucket ?? cells.Bucket ?? '';
    sums.set(bucket, (sums.get(bucket) ?? 0n) + centsOf(cells.amount ?? cells.Amount ?? ''));
  }
  return sums;
}

const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);

async function textOf(file: string): Promise<string> {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const { items } = await page.getTextContent();
  const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
  await pdf.loadingTask.destroy();
  return text.replace(/\s+/g, ' ');
}
