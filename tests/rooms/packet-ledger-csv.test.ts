/** Rows as CSV: the form of RFC 4180, read back by papaparse, an independent reader. */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { costsCsv, hoursCsv, milesCsv } from '../../src/packet/ledger-csv.js';
import { costRow, costRows, hoursRows, nastyRows, trips } from './made-ledger.js';

const cellsOf = (csv: string): string[][] => {
  const { data, errors } = Papa.parse<string[]>(csv, { delimiter: ',', newline: '\r\n' });
  expect(errors).toEqual([]);
  return data;
};

/** Own sums beside the writer's: through a whole number of digits, not through division. */
const dollars = (cents: number): string => {
  const digits = String(Math.abs(cents)).padStart(3, '0');
  return `${cents < 0 ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`;
};

/** What a spreadsheet would run, after OWASP’s list for CSV injection: = + - @ tab and CR, and the wide signs. */
const RUNS = ['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'];
/** The list warns of other separators as well: behind a semicolon, a tab or a line break the sign gets its apostrophe. */
const inert = (text: string | undefined): string => {
  const pieces = (text ?? '').split(/(?<=[;\t\r\n])/);
  const within = pieces.map((piece, at) =>
    at === 0 ? piece : piece.replace(/^([\s"]*)('*[=+\-@＝＋－＠])/, "$1'$2"),
  );
  const whole = within.join('');
  return RUNS.some((sign) =>
    whole
      .replace(/^'+/, '')
      .replace(/^[ "\n]+/, '')
      .startsWith(sign),
  )
    ? `'${whole}`
    : whole;
};

describe('costs as CSV', () => {
  it('begin with the headings and nothing before them, and end every record with CRLF', () => {
    const csv = costsCsv([costRow({ note: 'two\nlines, and "quotes"' })]);
    expect(csv).toBe(
      'date,payee,what,amount,bucket,place,paid,receipt,tax year,sales tax,note\r\n' +
        '2026-02-17,Seller,price of the house,148000.00,purchase,,transfer,closing-statement,,,"two\nlines, and ""quotes"""\r\n',
    );
  });

  it('are read back cell by cell, whatever the texts', () => {
    fc.assert(
      fc.property(costRows(40), (rows) => {
        const [heads, ...records] = cellsOf(costsCsv(rows));
        expect(heads).toHaveLength(11);
        // Behind the last CRLF, papaparse sees one more record of one empty cell.
        expect(records.pop()).toEqual(['']);
        expect(records).toEqual(
          rows.map((row) => [
            row.date,
            inert(row.payee),
            inert(row.what),
            dollars(row.cents),
            row.bucket,
            row.place ?? '',
            row.paid ?? '',
            row.receipt ?? '',
            row.taxYear === undefined ? '' : String(row.taxYear),
            row.salesTax === undefined ? '' : dollars(row.salesTax),
            inert(row.note),
          ]),
        );
      }),
      { numRuns: 200, seed: 2_604 },
    );
  });

  it('have no cell that a spreadsheet would run, and still have negative amounts', () => {
    const records = cellsOf(costsCsv(nastyRows())).slice(1, -1);
    expect(records.map((cells) => cells[3])).toContain('-8.99');
    for (const cells of records)
      for (const at of [1, 2, 10]) expect(RUNS.some((sign) => cells[at]?.startsWith(sign))).toBe(false);
    expect(records.filter((cells) => cells[1]?.startsWith("'")).length).toBeGreaterThan(4);
  });

  it('keep the order of the sheet', () => {
    const rows = [costRow({ row: 2, date: '2026-05-01' }), costRow({ row: 3, date: '2026-01-01' })];
    expect(
      cellsOf(costsCsv(rows))
        .slice(1, 3)
        .map(([date]) => date),
    ).toEqual(['2026-05-01', '2026-01-01']);
  });

  it.each([
    [-5_902, '-59.02'],
    [0, '0.00'],
    [-0, '0.00'],
    [5, '0.05'],
    [-5, '-0.05'],
    [99_999_999_999, '999999999.99'],
  ])('write %d cents as %s', (cents, written) => {
    expect(cellsOf(costsCsv([costRow({ cents })]))[1]?.[3]).toBe(written);
  });
});

describe('miles and hours as CSV', () => {
  it('have the headings of their logs and plain decimals', () => {
    const trip = { row: 2, date: '2026-02-21', from: 'home', to: 'Quarry Road', purpose: 'keys' } as const;
    expect(milesCsv([{ ...trip, thousandths: 18_400, tolls: 0, vehicle: undefined }])).toBe(
      'date,from,to,purpose,miles,tolls,vehicle,note\r\n2026-02-21,home,Quarry Road,keys,18.4,,,\r\n',
    );
    expect(
      cellsOf(milesCsv([{ ...trip, thousandths: 1_005, tolls: 250, vehicle: 'van', note: 'ice' }]))[1]?.slice(
        4,
      ),
    ).toEqual(['1.005', '2.50', 'van', 'ice']);
    const worked = { row: 2, date: '2026-03-01', who: 'owner', what: '=tidy', place: 'kitchen' } as const;
    expect(hoursCsv([{ ...worked, hundredths: 1_000 }])).toBe(
      "date,who,what,place,hours,note\r\n2026-03-01,owner,'=tidy,kitchen,10,\r\n",
    );
    expect(cellsOf(hoursCsv([{ ...worked, hundredths: 25 }]))[1]?.[4]).toBe('0.25');
  });

  it('come back as the same numbers', () => {
    fc.assert(
      fc.property(trips(20), hoursRows(20), (driven, worked) => {
        const miles = cellsOf(milesCsv(driven)).slice(1, -1);
        expect(miles.map((cells) => Math.round(Number(cells[4]) * 1_000))).toEqual(
          driven.map(({ thousandths }) => thousandths),
        );
        const hours = cellsOf(hoursCsv(worked)).slice(1, -1);
        expect(hours.map((cells) => Math.round(Number(cells[4]) * 100))).toEqual(
          worked.map(({ hundredths }) => hundredths),
        );
      }),
      { numRuns: 100, seed: 2_604 },
    );
  });
});
