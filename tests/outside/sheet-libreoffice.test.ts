/** A spreadsheet's own work: a CSV sheet that LibreOffice made a workbook of is read to the same ledger. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { costs, hours, type LedgerFrom, ledgerFrom, miles } from '../rooms/ledger-from.js';
import { lacking, run } from '../tools/outside-programs.js';

const FILES = {
  ...costs(
    '2026-03-01,Tollgate Building Supply,"paint, ""white""",107.25,repair,kitchen,card,receipt-031,2025,7.25,two coats',
    '2026-03-02,Fallow Title Agency,"title work\nand recording",1184.50,purchase-closing-in-basis,,transfer,,,,',
    '2026-03-03,Seller,price of the house,148000,purchase,,transfer,deed,,,',
    '2026-03-04,Café Möbel,returned shelf,-12.10,repair,hall,cash,,,,',
    '2026-03-05,A,a very small part,0.01,tool,,,,,,',
  ),
  ...miles('2026-03-01,home,Quarry Road,first look,18.375,4.5,van,', '2026-03-02,,yard,lumber,7,,,'),
  ...hours('2026-03-01,owner,walls,hall,7.25,', '2026-03-02,family,ceiling,,1.5,'),
};

const CSV_FILTER = 'Text - txt - csv (StarCalc)';
const WORKBOOK = 'xlsx:Calc MS Excel 2007 XML';

const { some, words } = lacking('soffice');

describe.skipIf(some)(`LibreOffice${words}`, () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-office-'));
  let ours: LedgerFrom;

  beforeAll(async () => {
    ours = await ledgerFrom(FILES);
    for (const [name, text] of Object.entries(FILES)) writeFileSync(path.join(folder, name), text);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  /**
   * `from`: options of its CSV filter: field separator 44 (comma) or 59 (semicolon), text delimiter 34, character set
   * 76 (UTF-8). Its own profile, so that a LibreOffice that is open elsewhere does not answer instead.
   */
  const convert = (from: string, to: string, ...files: string[]): void => {
    run(
      'soffice',
      `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile')).href}`,
      '--headless',
      ...(from === '' ? [] : [`--infilter=${CSV_FILTER}:${from}`]),
      '--convert-to',
      to,
      '--outdir',
      folder,
      ...files.map((file) => path.join(folder, file)),
    );
  };
  const made = (...names: string[]): Record<string, Buffer> =>
    Object.fromEntries(names.map((name) => [name, readFileSync(path.join(folder, name))]));

  it('makes workbooks of our CSV sheets that are read to the same rows', async () => {
    convert('44,34,76', WORKBOOK, ...Object.keys(FILES));
    const theirs = await ledgerFrom(made('costs.xlsx', 'miles.xlsx', 'hours.xlsx'));
    expect(ours.said).toEqual([]);
    expect(theirs.said).toEqual([]);
    expect(theirs.ledger.costs).toEqual(ours.ledger.costs);
    expect(theirs.ledger.trips).toEqual(ours.ledger.trips);
    expect(theirs.ledger.hours).toEqual(ours.ledger.hours);
  }, 120_000);

  it('makes CSV with semicolons of those workbooks that is read to the same rows', async () => {
    convert('', `csv:${CSV_FILTER}:59,34,76`, 'costs.xlsx', 'miles.xlsx', 'hours.xlsx');
    const theirs = await ledgerFrom(made('costs.csv', 'miles.csv', 'hours.csv'));
    expect(readFileSync(path.join(folder, 'costs.csv'), 'utf8')).toMatch(/^date;payee;what/);
    expect(theirs.said.filter((one) => !one.startsWith('note'))).toEqual([]);
    expect(theirs.ledger.costs).toEqual(ours.ledger.costs);
    expect(theirs.ledger.trips).toEqual(ours.ledger.trips);
    expect(theirs.ledger.hours).toEqual(ours.ledger.hours);
  }, 120_000);

  it('leaves a failed formula in a workbook, which is told of where it stands', async () => {
    writeFileSync(
      path.join(folder, 'costs.csv'),
      'date,payee,what,amount,bucket,note\n2026-03-01,A,b,1.00,repair,=1/0\n',
    );
    // The last option: formulas are worked out.
    convert('44,34,76,1,,0,false,true,false,false,false,-1,true', WORKBOOK, 'costs.csv');
    const { said, ledger } = await ledgerFrom(made('costs.xlsx'));
    expect(said).toEqual([
      expect.stringMatching(
        /^error intake\.cell house\/costs\.xlsx:2:\d+ the formula of this cell failed \(#DIV\/0!\)$/,
      ),
    ]);
    expect(ledger.costs).toHaveLength(1);
  }, 120_000);
});
