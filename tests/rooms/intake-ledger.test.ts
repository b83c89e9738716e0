/** Sheets of a house folder: which are found, how their headings are read, and where a cell stands. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Located, printReport } from '../../src/diagnostics/report.js';
import { EMPTY_LEDGER } from '../../src/facts/ledger.js';
import { readLedger } from '../../src/intake/read-ledger.js';
import { costs, hours, ledgerFrom, miles, rowHouse } from './ledger-from.js';

const ROW = '2026-03-01,A,paint,1.00,repair';
const HEAD = 'date,payee,what,amount,bucket';
const rowsOf = async (text: string | Uint8Array) => {
  const { ledger, said } = await ledgerFrom({ 'costs.csv': text });
  return [ledger.costs.map(({ row, what }) => `${row} ${what}`), said];
};
const utf16 = (text: string, big: boolean, bom: boolean): Buffer => {
  const bytes = Buffer.from((bom ? '\uFEFF' : '') + text, 'utf16le');
  return big ? bytes.swap16() : bytes;
};

describe('the files', () => {
  it('none: an empty ledger and nothing said', async () => {
    const { ledger, said } = await ledgerFrom({ 'remarks.txt': 'costs' });
    expect(ledger).toEqual(EMPTY_LEDGER);
    expect(said).toEqual([]);
  });

  it('one for each list, whatever the case of its name', async () => {
    const { ledger, said } = await ledgerFrom({
      'Costs.CSV': `${HEAD}\n${ROW}\n`,
      ...miles('2026-03-01,a,b,c,1,,,'),
      ...hours('2026-03-01,owner,walls,hall,1,'),
    });
    expect(said).toEqual([]);
    expect([ledger.costs.length, ledger.trips.length, ledger.hours.length]).toEqual([1, 1, 1]);
    expect(ledger.sheets).toEqual({ costs: 'Costs.CSV', miles: 'miles.csv', hours: 'hours.csv' });
  });

  it('a remark of a trip or of a stretch of work is kept', async () => {
    const { ledger } = await ledgerFrom({
      ...miles('2026-03-01,a,b,c,1,,,ice on the road'),
      ...hours('2026-03-01,owner,walls,hall,1,with the neighbour'),
    });
    expect(ledger.trips[0]?.note).toBe('ice on the road');
    expect(ledger.hours[0]?.note).toBe('with the neighbour');
  });

  it.each([
    ['costs.ods', 'save it as costs.xlsx or as “CSV UTF-8” costs.csv'],
    ['hours.xls', 'save it as hours.xlsx or as “CSV UTF-8” hours.csv'],
    ['miles.tsv', 'call it miles.csv; tabs are understood'],
  ])('%s is told of, not passed over', async (name, hint) => {
    const { said, hints } = await ledgerFrom({ [name]: 'x' });
    expect(said).toEqual([expect.stringContaining(`error intake.sheet house/${name} `)]);
    expect(hints).toEqual([hint]);
  });

  it('another kind beside one that is read is worth a word and no more', async () => {
    const { ledger, said } = await ledgerFrom({ 'costs.ods': 'x', 'costs.csv': `${HEAD}\n${ROW}\n` });
    expect(said).toEqual([
      'note intake.sheet house/costs.ods costs.ods is not read; the costs are those of costs.csv',
    ]);
    expect(ledger.costs).toHaveLength(1);
  });

  it('one that can’t be read beside one that can: no rows, since it may be the newer one', async () => {
    const { ledger, said } = await ledgerFrom({ 'costs.xlsx': 'x', 'costs.csv': `${HEAD}\n${ROW}\n` });
    expect(said).toEqual([expect.stringContaining('error intake.sheet house/costs.xlsx')]);
    expect(ledger.costs).toEqual([]);
  });

  it('locks and copies of other names are no sheets', async () => {
    const { said } = await ledgerFrom({
      '.~lock.costs.csv#': 'x',
      '~$costs.xlsx': 'x',
      'costs-old.csv': 'x',
    });
    expect(said).toEqual([]);
  });

  it('a workbook called .csv and a text called .xlsx are told so', async () => {
    expect((await ledgerFrom({ 'costs.csv': 'PK\u0003\u0004…' })).hints[0]).toBe('call it costs.xlsx');
    expect((await ledgerFrom({ 'costs.xlsx': HEAD })).hints[0]).toBe('if it is text, call it costs.csv');
    const old = Buffer.from('d0cf11e0a1b11ae1', 'hex');
    expect((await ledgerFrom({ 'costs.xlsx': old })).said[0]).toContain(
      'has a password, or is of the old kind',
    );
  });
});

describe('the text', () => {
  const both = [['2 paint', '3 plank'], []];

  it.each([
    ['LF', `${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}\n`],
    ['CRLF', `${HEAD}\r\n${ROW}\r\n${ROW.replace('paint', 'plank')}\r\n`],
    ['CR', `${HEAD}\r${ROW}\r${ROW.replace('paint', 'plank')}`],
    ['no break at its end', `${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}`],
    ['a byte order mark', `\uFEFF${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}`],
    ['semicolons', `${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}`.replaceAll(',', ';')],
    ['tabs', `${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}`.replaceAll(',', '\t')],
    ['sep=;', `sep=;\r\n${HEAD};note\r\n${ROW}\r\n${ROW.replace('paint', 'plank')}`.replaceAll(',', ';')],
    ['a mark and "sep=,"', `\uFEFF"sep=,"\n${HEAD}\n${ROW}\n${ROW.replace('paint', 'plank')}`],
    [
      'columns in another order',
      `bucket,amount,what,payee,date\n${ROW.split(',').reverse()}\n${ROW.replace('paint', 'plank').split(',').reverse()}`,
    ],
  ])('with %s', async (_with, text) => {
    expect(await rowsOf(text)).toEqual(both);
  });

  it('blank lines are skipped and counted, as a spreadsheet counts them', async () => {
    expect(await rowsOf(`\n\n${HEAD}\n\n${ROW}\n,,,,\n  \n${ROW}\n\n`)).toEqual([['5 paint', '8 paint'], []]);
  });

  it('a line break in quotes makes no row', async () => {
    const text = `${HEAD}\n2026-03-01,A,"paint,\n""white"",\r\ntwo coats",1.00,repair\n2026-03-01,A,paint,x,repair\n`;
    const { ledger, said } = await ledgerFrom({ 'costs.csv': text });
    expect(ledger.costs.map(({ row, what }) => [row, what])).toEqual([[2, 'paint,\n"white",\ntwo coats']]);
    expect(said).toEqual(['error intake.cell house/costs.csv:5:20 “x” is no amount of money']);
  });

  it('a cell behind a line break is shown on the line where it stands', async () => {
    const { located } = await ledgerFrom({
      'costs.csv': `${HEAD}\n2026-03-01,A,"paint\nwhite",1.005,repair\n`,
    });
    expect(located[0]?.place).toEqual({
      file: 'house/costs.csv',
      line: 3,
      column: 8,
      length: 5,
      source: 'white",1.005,repair',
    });
  });

  it('a quote inside a cell is a letter', async () => {
    expect(await rowsOf(`${HEAD}\n2026-03-01,A,12" pipe,1.00,repair\n`)).toEqual([['2 12" pipe'], []]);
  });

  it('text behind a closing quote is refused where it stands', async () => {
    const [, said] = await rowsOf(
      `${HEAD}\n2026-03-01,A,"3/4" pipe,1.00,repair\n"2026-03-01",A,"""best"" paint",1.00,repair\n`,
    );
    expect(said).toEqual(['error intake.sheet house/costs.csv:2:14 text stands behind a closing quote']);
  });

  it('a quote that is never closed is shown where it opens, and the rows above are read', async () => {
    const [rows, said] = await rowsOf(
      `${HEAD}\n${ROW}\n2026-03-01,A,ü,x,repair\n2026-03-01,A,"paint,1.00,repair\n${ROW}\n`,
    );
    expect(rows).toEqual(['2 paint']);
    expect(said).toEqual([
      'error intake.cell house/costs.csv:3:16 “x” is no amount of money',
      'error intake.sheet house/costs.csv:4:14 the quote that opens here is never closed, so the rest of the sheet can’t be read',
    ]);
  });

  it.each([
    ['UTF-16', utf16(`${HEAD}\n`, false, true), 'UTF-16'],
    ['UTF-16, big end first', utf16(`${HEAD}\n`, true, true), 'UTF-16'],
    ['UTF-16 without a mark', utf16(`${HEAD}\n`, false, false), 'UTF-16'],
    ['UTF-16, big end first, without a mark', utf16(`${HEAD}\n`, true, false), 'UTF-16'],
    [
      'Windows-1252',
      Buffer.from(`${HEAD}\n2026-03-01,Caf\u00e9,paint,1.00,repair`, 'latin1'),
      'house/costs.csv:2:15 costs.csv is not UTF-8',
    ],
    [
      'NUL signs',
      `${HEAD}\n2026-03-01,A\0,paint,1.00,repair`,
      'house/costs.csv:2:13 costs.csv holds NUL signs',
    ],
  ])('%s is refused with what to do', async (_kind, bytes, expected) => {
    const { said, hints, ledger } = await ledgerFrom({ 'costs.csv': bytes });
    expect(said).toEqual([expect.stringMatching(/^error intake\.encoding house\/costs\.csv/)]);
    expect(said[0]).toContain(expected);
    expect(hints[0]).toContain('CSV UTF-8');
    expect(ledger.costs).toEqual([]);
  });

  it('an empty one, and one without rows, are noted', async () => {
    expect(await rowsOf('')).toEqual([
      [],
      ['note intake.sheet house/costs.csv costs.csv holds no costs: it is empty'],
    ]);
    expect(await rowsOf(`\n ,\n`)).toEqual([[], [expect.stringContaining('note intake.sheet')]]);
    expect(await rowsOf(`${HEAD}\n,,,,\n`)).toEqual([
      [],
      ['note intake.sheet house/costs.csv:1:1 costs.csv has headings for costs and no rows'],
    ]);
  });

  it('more rows than any house has are refused with words', async () => {
    const { said, ledger } = await ledgerFrom({ 'costs.csv': `a,b\n${'c,d\n'.repeat(200_000)}` });
    expect(said).toEqual([
      'error intake.too-big house/costs.csv costs.csv has 200001 rows; a house has 200,000 at most',
    ]);
    expect(ledger.costs).toEqual([]);
  });

  it('a larger file than any house needs is refused unread', async () => {
    const { said } = await ledgerFrom({ 'costs.csv': new Uint8Array(64_000_001) });
    expect(said).toEqual([
      expect.stringContaining('error intake.too-big house/costs.csv costs.csv has 65 million bytes'),
    ]);
  });
});

describe('the headings', () => {
  it('are read in plain words, without regard to case, blanks and hyphens', async () => {
    const { ledger, said } = await ledgerFrom({
      'costs.csv':
        'DATE ,Paid to,Description,Amount Paid,Category,Work Item,How-Paid,Paper,TaxYear,Sales  Tax,Remarks\n2026-03-01,A,b,2.00,repair,hall,cash,deed,2026,1.00,c\n',
    });
    expect(said).toEqual([]);
    expect(ledger.costs[0]).toMatchObject({
      payee: 'A',
      place: 'hall',
      paid: 'cash',
      receipt: 'deed',
      salesTax: 100,
      note: 'c',
    });
  });

  it('an unknown one is a warning, and the rows are read', async () => {
    const { ledger, said, hints } = await ledgerFrom({ 'costs.csv': `${HEAD},colour\n${ROW},y\n` });
    expect(ledger.costs).toHaveLength(1);
    expect(said).toEqual([
      'warning intake.sheet house/costs.csv:1:31 no column is called “colour”, so what stands in it is not read',
    ]);
    expect(hints[0]).toContain('call it so: place, paid, receipt,');
  });

  it('an unknown one beside all that there are is left to the writer, headed or not', async () => {
    const all = 'date,who,what,place,hours,note';
    const row = '2026-03-01,owner,walls,kitchen,2,b';
    const headed = await ledgerFrom({ 'hours.csv': `${all},mood\n${row},y\n` });
    const bare = await ledgerFrom({ 'hours.csv': `${all},\n${row},y\n` });
    expect([headed.ledger.hours.length, bare.ledger.hours.length]).toEqual([1, 1]);
    expect([...headed.hints, ...bare.hints]).toEqual([
      'all columns that are read are there: take this one out, or leave it for yourself',
      'give it one, or take out what stands in it',
    ]);
  });

  it('a misspelt one is an error with its neighbour: every row would lack its receipt', async () => {
    const { ledger, said, hints } = await ledgerFrom({ 'costs.csv': `${HEAD},recipt\n${ROW},x\n` });
    expect(ledger.costs).toEqual([]);
    expect(said).toEqual([
      'error intake.sheet house/costs.csv:1:31 no column is called “recipt”, so what stands in it is not read',
    ]);
    expect(hints[0]).toBe('write  receipt  as its heading');
  });

  it('a needed one that is misspelt is one error, one that is missing another', async () => {
    const { ledger, said, hints } = await ledgerFrom({
      'costs.csv': `date,payee,what,amout\n${ROW}\n`,
    });
    expect(ledger.costs).toEqual([]);
    expect(said).toEqual([
      'error intake.sheet house/costs.csv:1:1 the costs have no column headed bucket',
      'error intake.sheet house/costs.csv:1:17 no column is called “amout”, so what stands in it is not read',
    ]);
    expect(hints).toContain('write  amount  as its heading');
  });

  it('one column twice is an error', async () => {
    const { said } = await ledgerFrom({ 'costs.csv': `${HEAD},paid to\n${ROW},B\n` });
    expect(said).toEqual([
      'error intake.sheet house/costs.csv:1:31 “paid to” means the payee, and the column “payee” is that already',
    ]);
  });

  it('a column without a heading is told of only if something stands in it', async () => {
    expect((await rowsOf(`${HEAD},,\n${ROW},,\n`))[1]).toEqual([]);
    expect((await rowsOf(`${HEAD},,\n${ROW},,x\n`))[1]).toEqual([
      'warning intake.sheet house/costs.csv:1:32 column G has no heading, so what stands in it (first in row 2) is not read',
    ]);
  });

  it('none at all: one error with the line to write', async () => {
    const { said, hints } = await ledgerFrom({ 'costs.csv': `${ROW}\n${ROW}\n` });
    expect(said).toEqual([
      expect.stringContaining('error intake.sheet house/costs.csv:1:1 this should be the headings'),
    ]);
    expect(hints[0]).toBe(
      'the first line is, for example:  date,payee,what,amount,bucket,place,paid,receipt',
    );
  });

  it('too many columns are another file', async () => {
    const { said } = await ledgerFrom({ 'costs.csv': `${HEAD}${',x'.repeat(300)}\n` });
    expect(said).toEqual([expect.stringContaining('costs.csv has 305 columns')]);
  });
});

describe('the rows', () => {
  it('may end early where nothing more is to say', async () => {
    const { ledger, said } = await ledgerFrom(costs(ROW));
    expect(said).toEqual([]);
    expect(ledger.costs[0]).toMatchObject({ place: undefined, note: undefined });
  });

  it('with cells beyond the headings are refused as a whole', async () => {
    const [, said] = await rowsOf(`${HEAD}\n2026-03-01,A,paint, white,1.00,repair\n${ROW},,\n`);
    expect(said).toEqual([
      'error intake.sheet house/costs.csv:2:1 this row has more cells than the 5 headings',
    ]);
  });

  it('a missing cell is shown where the row ends', async () => {
    const [, said] = await rowsOf(`${HEAD}\n2026-03-01,A,paint,1.00\n`);
    expect(said).toEqual(['error intake.cell house/costs.csv:2:24 this payment has no bucket']);
  });
});

describe('what was cut away for an error of its own', () => {
  it('may be named by a row, so that one mistake is said once', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-cut-'));
    try {
      writeFileSync(
        path.join(folder, 'costs.csv'),
        `${HEAD},place,receipt\n${ROW},attic,bill\n${ROW},shed,note\n`,
      );
      const written = {
        rooms: [{ id: 'attic', level: 12 }, null, 'x'],
        documents: [{ id: 'bill' }],
        systems: 'none',
      };
      const { diagnostics, ledger } = await readLedger(folder, 'house', rowHouse(), written);
      expect(ledger.costs.map(({ place, receipt }) => [place, receipt])).toEqual([['attic', 'bill']]);
      expect(diagnostics.map(({ path: of }) => of)).toEqual([
        ['costs', 3, 'place'],
        ['costs', 3, 'receipt'],
      ]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('what rests on a sheet', () => {
  it('every error names its list, so that what rests on other lists is still told', async () => {
    const wrong = [
      'x',
      '',
      `${HEAD}\n${ROW},,,x`,
      `${HEAD}\n"a"b,${ROW}`,
      `${HEAD}\n"${ROW}`,
      'date,date',
      'PK\u0003\u0004',
      '\uFEFF\0',
      `date,payee\n${ROW}`,
    ];
    for (const text of wrong)
      for (const { diagnostic } of (await ledgerFrom({ 'costs.csv': text })).located)
        if (diagnostic.severity === 'error') expect(diagnostic.path?.[0], text).toBe('costs');
  });
});

describe('places', () => {
  const find = async (wanted: (string | number)[], word = false) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-places-'));
    try {
      writeFileSync(
        `${folder}/costs.csv`,
        `sep=,\n${HEAD},sales tax\n"2026-03-01",A,"pai\nnt",1.00,repair,0.10\n`,
      );
      const { places } = await readLedger(folder, 'house', rowHouse());
      const found = places.find(wanted, word);
      if (found === undefined || !('place' in found)) return found;
      const { line, column, length } = found.place;
      return `${line}:${column}+${length}${found.near ? ' near' : ''}`;
    } finally {
      rmSync(folder, { recursive: true });
    }
  };

  it.each([
    [['costs', 2, 'date'], '3:1+12'],
    [['costs', 2, 'what'], '3:16+4'],
    [['costs', 2, 'amount'], '4:5+4'],
    [['costs', 2, 'sales tax'], '4:17+4'],
    [['costs', 2, 'sales-tax'], '4:17+4'],
    [['costs', 2, 'salesTax'], '4:17+4'],
    [['costs', 2], '3:1+19'],
    [['costs', 2, 'receipt'], '3:1+19 near'],
    [['costs', 99, 'amount'], '2:1+39 near'],
    [['costs'], '2:1+39'],
  ])('%j', async (wanted, expected) => {
    expect(await find(wanted)).toBe(expected);
  });

  it('a heading, a list without a sheet, and what is no list', async () => {
    expect(await find(['costs', 2, 'amount'], true)).toBe('2:17+6');
    expect(await find(['miles', 2, 'to'])).toEqual({ file: 'house/miles.csv' });
    expect(await find(['rooms', 0])).toBeUndefined();
  });

  it('are what the report shows', async () => {
    const { located } = await ledgerFrom(costs('2026-03-01,A,paint,"312,40",repair'));
    expect(printReport(located as Located[], 'text', false)).toBe(
      [
        'error intake.cell  house/costs.csv:2:20  costs[2].amount',
        '  2 | 2026-03-01,A,paint,"312,40",repair',
        '    |                    ^^^^^^^^ the comma or point in 312,40 is not where dollars have one',
        '  do: write 312.40',
        '',
      ].join('\n'),
    );
  });
});
