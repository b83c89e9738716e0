/** Whatever lies in the folder as a sheet: nothing throws, everything said has a place, and no sheet takes long. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/node';
import { printReport } from '../../src/diagnostics/report.js';
import { readCsv } from '../../src/intake/csv-cells.js';
import { csvSpans } from '../../src/intake/csv-spans.js';
import { ledgerFrom, rowHouse } from './ledger-from.js';

const HEAD = 'date,payee,what,amount,bucket,place,paid,receipt,tax year,sales tax,note';
const GOOD = [
  HEAD,
  '2026-03-01,A,"paint, ""white""",107.25,repair,kitchen,card,receipt-031,2026,7.25,',
  '2/17/2026,B,"two\r\nlines",(12.00),rebate,,cash,,,,1:30',
  'Mar 4 2026,C,tax 12-3456789,"$1,234.50",tool,hall,check,receipt-032,,,',
  '',
].join('\r\n');
const house = rowHouse();

async function holds(files: Record<string, string | Uint8Array>): Promise<void> {
  const { ledger, located } = await ledgerFrom(files, house);
  for (const { place, diagnostic } of located) {
    expect(place ?? diagnostic.file, diagnostic.message).toBeDefined();
    expect(diagnostic.hints.length).toBeGreaterThan(0);
    if (place === undefined) continue;
    expect(place.line).toBeGreaterThan(0);
    expect(place.column).toBeGreaterThan(0);
    expect(place.column).toBeLessThanOrEqual(place.source.length + 1);
    expect(place.length).toBeGreaterThan(0);
  }
  expect(printReport(located, 'text', false)).not.toContain('undefined');
  for (const { cents, salesTax = 0, date } of ledger.costs) {
    expect(Number.isSafeInteger(cents) && Number.isSafeInteger(salesTax)).toBe(true);
    expect(new Date(`${date}T00:00:00Z`).toISOString().slice(0, 10)).toBe(date);
  }
}

/** A good text with some of its signs changed, taken out or put in. */
const mutated = (good: string) =>
  fc
    .array(
      fc.tuple(
        fc.nat(good.length),
        fc.nat(3),
        fc.oneof(
          fc.constantFrom('"', ',', ';', '\n', '\r', '\t', '', '.', '-', '/', '0'),
          fc.string({ unit: 'binary', maxLength: 3 }),
        ),
      ),
      { minLength: 1, maxLength: 6 },
    )
    .map((edits) =>
      edits.reduce((text, [at, out, into]) => text.slice(0, at) + into + text.slice(at + out), good),
    );

describe('a CSV file', () => {
  it('of any bytes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), (bytes) =>
        holds({ 'costs.csv': bytes, 'hours.csv': bytes }),
      ),
      { numRuns: 200, seed: 2_606 },
    );
  });

  it('of any text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 200 }), (text) =>
        holds({ 'costs.csv': `${HEAD}\n${text}`, 'miles.csv': text }),
      ),
      { numRuns: 200, seed: 2_606 },
    );
  });

  it('with some signs of it changed', async () => {
    await fc.assert(
      fc.asyncProperty(mutated(GOOD), (text) => holds({ 'costs.csv': text })),
      { numRuns: 500, seed: 2_606 },
    );
  });

  it('is cut into the same rows and cells where it is read and where a place is looked for', () => {
    const sign = fc.constantFrom('"', '"', ',', ';', '\n', '\r', '\r\n', 'a', ' ', 'ü');
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 30 }), (signs) => {
        const text = `a,b\n${signs.join('')}`;
        const { sheet } = readCsv(Buffer.from(text), 'costs.csv', 'costs.csv', 'costs');
        const spans = csvSpans(text, 0, ',', 'x.csv');
        const rows = sheet?.rows ?? [];
        for (const [at, cells] of rows.entries()) {
          const found = spans.cellsOf(at + 1);
          expect(found).toHaveLength(cells.length);
          for (const [index, { start, end, broken }] of found.entries()) {
            const typed = text.slice(start, end);
            const cell = typed.startsWith('"') && !broken ? typed.slice(1, -1).replaceAll('""', '"') : typed;
            if (!broken) expect(cells[index]).toBe(cell);
          }
        }
        if (spans.unclosed === undefined) expect(spans.cellsOf(rows.length + 1)).toEqual([]);
        else expect(rows).toHaveLength(spans.unclosed.row - 1);
      }),
      { numRuns: 3000, seed: 2_606 },
    );
  });
});

describe('a workbook', () => {
  let whole: Buffer;
  beforeAll(async () => {
    const rows = ['date,payee,what,amount,bucket'.split(','), ['2026-03-01', 'A', 'paint', 107.25, 'repair']];
    const sheets = [{ sheet: 'costs', data: rows.map((row) => row.map((value) => ({ value }))) }];
    whole = await (await writeWorkbook(sheets as never)).toBuffer();
  });

  it('of any bytes behind the signs of one', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), (bytes) =>
        holds({ 'costs.xlsx': Buffer.concat([Buffer.from('PK\u0003\u0004'), bytes]) }),
      ),
      { numRuns: 50, seed: 2_606 },
    );
  });

  it('with some bytes of it changed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 8 }),
        async (edits) => {
          const bytes = Buffer.from(whole);
          for (const [at, byte] of edits) bytes[at % bytes.length] = byte;
          await holds({ 'costs.xlsx': bytes });
        },
      ),
      { numRuns: 100, seed: 2_606 },
    );
  });
});

describe('a long sheet', () => {
  const many = (rows: number, row: (index: number) => string): string =>
    `${HEAD}\n${Array.from({ length: rows }, (_one, index) => row(index)).join('\n')}\n`;

  // Generous, for slow and busy machines; what takes the square of its rows would take minutes.
  it('of good rows takes a moment', async () => {
    const text = many(
      50_000,
      (n) =>
        `2026-03-${10 + (n % 20)},P ${n % 100},"part ${n}",${n}.25,repair,hall,card,receipt-031,,,"n ""${n}"""`,
    );
    const { ledger, said } = await ledgerFrom({ 'costs.csv': text }, house);
    expect(said).toEqual([]);
    expect(ledger.costs).toHaveLength(50_000);
  }, 10_000);

  it('of which every cell is wrong in its own way as well', async () => {
    const text = many(20_000, (n) => `${n}/3/2026,,w,${n}x,rep${n},ha${n},c${n},r${n},,,`);
    const { ledger, said } = await ledgerFrom({ 'costs.csv': text }, house);
    expect(said.length).toBeGreaterThan(100_000);
    expect(ledger.costs).toEqual([]);
  }, 20_000);

  it('with more wrong rows than a call has arguments', async () => {
    const rows = `${'"3/4/2026"x,A,b,1.00,repair\n3/4/2026,A,b,1.00,repair\n'.repeat(90_000)}`;
    const { located } = await ledgerFrom({ 'costs.csv': `date,payee,what,amount,bucket\n${rows}` }, house);
    // The broken quotes and the doubtful days; that a broken cell is no date either is not said as well.
    expect(located.map(({ also }) => also.length)).toEqual([89_999, 89_999]);
  }, 20_000);
});
