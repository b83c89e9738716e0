/**
 * Independent check: LibreOffice (MPL-2.0), without a window, opens the workbook and writes each sheet as CSV. Every cell
 * is compared twice: as it is kept (exact numbers, texts told from them by their quotes) and as it is shown (decimals).
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { workbookBytes } from '../../src/archive/write-workbook.js';
import { ledgerWorkbook } from '../../src/packet/ledger-workbook.js';
import type { WorkbookCell, WorkbookSheet } from '../../src/packet/workbook.js';
import { houseFrom } from '../rooms/house-from.js';
import { costRows, hoursRows, moneyOf, nastyRows, trips } from '../rooms/made-ledger.js';
import { lacking, run } from '../tools/outside-programs.js';

const house = houseFrom();
const one = <T>(made: fc.Arbitrary<T>): T => fc.sample(made, { numRuns: 1, seed: 11 })[0] as T;
const { sheets } = ledgerWorkbook(
  house,
  moneyOf(house, {
    costs: [...nastyRows(), ...one(costRows(200))],
    trips: one(trips(60)),
    hours: one(hoursRows(60)),
  }),
);

/** Comma, quotes, UTF-8, quotes about each text, numbers as numbers, as shown, no formulas, blanks kept, every sheet. */
const filter = (asShown: boolean): string =>
  `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,${!asShown},true,${asShown},false,false,-1`;

const here = lacking('soffice');

describe.skipIf(here.some)(`the workbook in LibreOffice${here.words}`, () => {
  let folder = '';
  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'workbook-'));
    writeFileSync(path.join(folder, 'ledger.xlsx'), await workbookBytes({ sheets }));
    // A profile of its own: two runs at once would wait for each other.
    const profile = `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile')).href}`;
    for (const [to, asShown] of [
      ['kept', false],
      ['shown', true],
    ] as const)
      run(
        'soffice',
        profile,
        '--headless',
        '--convert-to',
        filter(asShown),
        '--outdir',
        path.join(folder, to),
        path.join(folder, 'ledger.xlsx'),
      );
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const written = (how: 'kept' | 'shown', sheet: WorkbookSheet): string =>
    readFileSync(path.join(folder, how, `ledger-${sheet.name}.csv`), 'utf8');

  it('has the sheets that were made, and no other', () => {
    expect(readdirSync(path.join(folder, 'kept')).sort()).toEqual(
      sheets.map(({ name }) => `ledger-${name}.csv`).sort(),
    );
    expect(sheets.length).toBeGreaterThanOrEqual(7);
  });

  it.each(sheets.map((sheet) => [sheet.name, sheet] as const))(
    'keeps every cell of %s, and takes no text for a number',
    (_name, sheet) => {
      const heads = sheet.columns.map(({ title }) => quoted(title)).join(',');
      const rows = sheet.rows.map((row) =>
        sheet.columns.map(({ holds }, column) => kept(holds, row[column])).join(','),
      );
      expect(written('kept', sheet)).toBe(`${[heads, ...rows].join('\n')}\n`);
    },
  );

  it.each(sheets.map((sheet) => [sheet.name, sheet] as const))(
    'shows %s with its decimals',
    (_name, sheet) => {
      const { data } = Papa.parse<string[]>(written('shown', sheet), { newline: '\n' });
      // Behind the last row, a line end.
      const [heads, ...rows] = data.slice(0, -1);
      expect(heads).toEqual(sheet.columns.map(({ title }) => title));
      expect(rows.length).toBe(sheet.rows.length);
      sheet.rows.forEach((row, at) => {
        const ours = sheet.columns.map(({ holds }, column) => shown(holds, row[column]));
        expect(rows[at], `row ${at + 2}`).toEqual(ours);
      });
    },
  );
});

type Holds = WorkbookSheet['columns'][number]['holds'];

const PLACES = {
  text: undefined,
  day: undefined,
  whole: 0,
  cents: 2,
  hundredths: 2,
  thousandths: 3,
} as const;

function kept(holds: Holds, cell: WorkbookCell): string {
  if (cell === undefined || cell === '') return '';
  if (typeof cell === 'string') return holds === 'day' ? cell : quoted(asXmlHolds(cell));
  const plain = decimal(cell, PLACES[holds]);
  return plain.includes('.') ? plain.replace(/\.?0+$/, '') : plain;
}

function shown(holds: Holds, cell: WorkbookCell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return asXmlHolds(cell);
  const plain = decimal(cell, PLACES[holds]);
  return holds === 'cents' ? plain.replace(/\B(?=(\d{3})+\.)/g, ',') : plain;
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function decimal(whole: number, places: number | undefined): string {
  if (places === undefined) throw new Error('a number where a text belongs');
  const digits = String(Math.abs(whole)).padStart(places + 1, '0');
  const point = digits.length - places;
  const rest = places === 0 ? '' : `.${digits.slice(point)}`;
  return `${whole < 0 ? '-' : ''}${digits.slice(0, point)}${rest}`;
}

/** Line ends as XML reads them, blanks for what it can't hold. */
const asXmlHolds = (text: string): string =>
  text.replace(/\r\n?/g, '\n').replace(/[^\t\n\u0020-\u007E\u00A0-\uFFFD\u{10000}-\u{10FFFF}]/gu, ' ');
