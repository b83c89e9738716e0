/** A workbook's bytes: the same whatever the clock says and wherever it hangs, and read back cell by cell. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/node';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { workbookBytes } from '../../src/archive/write-workbook.js';
import { ledgerWorkbook } from '../../src/packet/ledger-workbook.js';
import type { Workbook, WorkbookSheet } from '../../src/packet/workbook.js';
import { houseFrom } from './house-from.js';
import { costRows, hoursRows, moneyOf, nastyRows, trips } from './made-ledger.js';

const house = houseFrom();

const one = <T>(made: fc.Arbitrary<T>): T => fc.sample(made, { numRuns: 1, seed: 7 })[0] as T;
const workbook = ledgerWorkbook(
  house,
  moneyOf(house, {
    costs: [...nastyRows(), ...one(costRows(200))],
    trips: one(trips(60)),
    hours: one(hoursRows(60)),
  }),
);

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const sheetOf = (
  holds: WorkbookSheet['columns'][number]['holds'],
  ...cells: (string | number)[]
): Workbook => ({
  sheets: [{ name: 'S', columns: [{ title: 'T', width: 8, holds }], rows: cells.map((cell) => [cell]) }],
});

const readBack = async (made: Workbook) =>
  readXlsxFile(Buffer.from(await workbookBytes(made)), { trim: false });

describe('the bytes of a workbook', () => {
  const zone = process.env.TZ;
  afterEach(() => {
    vi.useRealTimers();
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  it('are the same in every time zone and on every day', async () => {
    const places: string[] = [];
    const made = new Set<string>();
    for (const [where, when] of [
      ['UTC', '2026-06-30T12:00:00Z'],
      ['Asia/Tokyo', '2026-06-30T23:30:00Z'],
      ['America/Los_Angeles', '2031-01-01T03:00:00Z'],
      ['Pacific/Apia', '1999-12-30T10:00:00Z'],
    ] as const) {
      process.env.TZ = where;
      vi.useFakeTimers({ now: new Date(when), toFake: ['Date'] });
      places.push(new Date().toString().slice(0, 24));
      made.add(sha256(await workbookBytes(workbook)));
      vi.useRealTimers();
    }
    // The clocks did differ.
    expect(new Set(places).size).toBe(4);
    expect(made.size).toBe(1);
  });

  it('tell neither a day nor a person', async () => {
    const parts = unzipSync(await workbookBytes(workbook));
    expect(Object.keys(parts).filter((file) => file.startsWith('docProps'))).toEqual([]);
    for (const [file, part] of Object.entries(parts))
      if (!/sharedStrings|worksheets\/sheet/.test(file))
        expect(strFromU8(part), file).not.toMatch(/creator|created|modified|lastPrinted/);
  });

  it('freeze the first row, set it bold and give every column its width', async () => {
    const parts = unzipSync(await workbookBytes(workbook));
    const sheet = strFromU8(parts['xl/worksheets/sheet1.xml'] ?? new Uint8Array());
    expect(sheet).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
    expect(sheet.match(/<col /g)).toHaveLength(workbook.sheets[0]?.columns.length ?? 0);
    expect(strFromU8(parts['xl/styles.xml'] ?? new Uint8Array())).toContain('<b/>');
  });
});

describe('a workbook that is read back', () => {
  it('has every sheet, every row and every cell', async () => {
    const back = await readBack(workbook);
    expect(back.map(({ sheet }) => sheet)).toEqual(workbook.sheets.map(({ name }) => name));
    let cells = 0;
    workbook.sheets.forEach((sheet, at) => {
      const [heads, ...rows] = back[at]?.data ?? [];
      expect(heads).toEqual(sheet.columns.map(({ title }) => title));
      expect(rows.length, sheet.name).toBe(sheet.rows.length);
      sheet.rows.forEach((row, number) => {
        sheet.columns.forEach(({ holds, title }, column) => {
          const cell = rows[number]?.[column] ?? undefined;
          expect(cell, `${sheet.name}, row ${number + 2}, ${title}`).toEqual(expected(holds, row[column]));
          cells++;
        });
      });
    });
    expect(cells).toBeGreaterThan(2_000);
  });

  it('keeps what begins like a formula a text', async () => {
    const texts = ['=1+1', '=HYPERLINK("x")', '+1', '-2', '@a', '0012', 'TRUE', '2026-01-01'];
    const parts = unzipSync(await workbookBytes(sheetOf('text', ...texts)));
    expect(strFromU8(parts['xl/worksheets/sheet1.xml'] ?? new Uint8Array())).not.toContain('<f>');
    const [back] = await readBack(sheetOf('text', ...texts));
    expect(back?.data.slice(1).flat()).toEqual(texts);
  });

  it('has the very decimals of the cents', async () => {
    const cents = [-5_902, 1, -1, 99_999_999_999, 10, 14_800_000, 2_999, 0];
    const parts = unzipSync(await workbookBytes(sheetOf('cents', ...cents)));
    const written = [
      ...strFromU8(parts['xl/worksheets/sheet1.xml'] ?? new Uint8Array()).matchAll(/<v>([^<]*)<\/v>/g),
    ];
    expect(written.slice(1).map(([, value]) => value)).toEqual([
      '-59.02',
      '0.01',
      '-0.01',
      '999999999.99',
      '0.1',
      '148000',
      '29.99',
      '0',
    ]);
  });

  it('leaves a day before the spreadsheets’ own calendar a text', async () => {
    const [back] = await readBack(sheetOf('day', '1899-12-31', '1900-02-28', '1900-03-01'));
    expect(back?.data.slice(1).flat()).toEqual([
      '1899-12-31',
      '1900-02-28',
      new Date('1900-03-01T00:00:00Z'),
    ]);
  });

  it('cuts a text that would damage the file, and says so by a sign', async () => {
    const [back] = await readBack(sheetOf('text', 'x'.repeat(40_000)));
    expect(back?.data[1]?.[0]).toBe(`${'x'.repeat(32_766)}…`);
  });

  it('is not made from a part of a cent or a number where a text belongs', async () => {
    await expect(workbookBytes(sheetOf('cents', 1.5))).rejects.toThrow(TypeError);
    await expect(workbookBytes(sheetOf('text', 1))).rejects.toThrow(TypeError);
    await expect(workbookBytes(sheetOf('whole', 'x'))).rejects.toThrow(TypeError);
  });
});

const PLACES = { whole: 0, cents: 2, hundredths: 2, thousandths: 3 } as const;

function expected(
  holds: WorkbookSheet['columns'][number]['holds'],
  value: string | number | undefined,
): unknown {
  if (value === undefined || value === '') return undefined;
  if (holds === 'day') return new Date(`${value}T00:00:00Z`);
  if (typeof value === 'number') return holds === 'text' || value / 10 ** PLACES[holds];
  return asXmlHolds(value);
}

/** Line ends as XML reads them, blanks for what it can't hold. */
const asXmlHolds = (text: string): string =>
  text.replace(/\r\n?/g, '\n').replace(/[^\t\n\u0020-\u007E\u00A0-\uFFFD\u{10000}-\u{10FFFF}]/gu, ' ');
