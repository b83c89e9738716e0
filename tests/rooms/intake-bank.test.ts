/** What a bank's file looks like: headings, columns, days, amounts, and what is refused with its way out. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/node';
import { asInert, asItWas } from '../../src/facts/inert-text.js';
import { readSheetAmount } from '../../src/facts/sheet-number.js';
import {
  type BankColumns,
  chatterAbove,
  columnsFrom,
  findHeadings,
  likelySign,
  proposeColumns,
  readColumnsOption,
} from '../../src/intake/bank-columns.js';
import { readBankDay } from '../../src/intake/bank-day.js';
import { readBankFile } from '../../src/intake/bank-file.js';
import { amountIn, dayIn, layoutOf, newLayout, PLAIN_MANNER, rowIn } from '../../src/intake/bank-layout.js';
import { mappingFrom, withMapping } from '../../src/intake/bank-mappings.js';
import { type BankRows, readBankRows } from '../../src/intake/bank-rows.js';
import { alike, bankText, sameStem } from '../../src/intake/bank-text.js';
import { readCsv } from '../../src/intake/csv-cells.js';
import { COST_HEADINGS } from '../../src/intake/read-costs.js';
import { numberRows, seenFrom, withSeen } from '../../src/intake/seen-rows.js';
import { readHeadings } from '../../src/intake/sheet-headings.js';

const scratch = mkdtempSync(path.join(tmpdir(), 'sillplate-bank-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
let count = 0;

function saved(content: string | Uint8Array, ending = 'csv'): string {
  count += 1;
  const file = path.join(scratch, `bank-${count}.${ending}`);
  writeFileSync(file, content);
  return file;
}

const fileOf = (content: string | Uint8Array, ending = 'csv') =>
  readBankFile(saved(content, ending), 'bank.csv');

/** Reads a text by what is proposed for it, or by other columns. */
async function rowsOf(content: string | Uint8Array, change: Partial<BankColumns> = {}): Promise<BankRows> {
  const { sheet, diagnostics } = await fileOf(content);
  expect(diagnostics).toEqual([]);
  if (sheet === undefined) throw new Error('no sheet');
  const head = findHeadings(sheet.rows);
  const columns = proposeColumns(sheet.rows, head);
  if (columns === undefined) throw new Error('nothing was proposed');
  return readBankRows(sheet, head, { ...columns, ...change });
}

const short = ({ rows }: BankRows) => rows.map(({ date, cents, text }) => [date, cents, text]);
const TWO = [
  ['2026-04-03', 47214, 'Tollgate Building Supply'],
  ['2026-04-20', -5902, 'Tollgate Building Supply'],
];

describe('a bank’s list', () => {
  it.each([
    [
      'a minus for what was paid',
      'Date,Description,Amount\n04/03/2026,Tollgate Building Supply,-472.14\n04/20/2026,Tollgate Building Supply,59.02\n',
    ],
    [
      'no minus for what was paid',
      'Trans. Date,Post Date,Merchant Name,Amount\n04/03/2026,04/05/2026,Tollgate Building Supply,472.14\n04/13/2026,04/15/2026,X,1\n04/20/2026,04/21/2026,Tollgate Building Supply,-59.02\n',
    ],
    [
      'debit and credit',
      'Date;Payee;Debit;Credit;Balance\r\n2026-04-03;Tollgate Building Supply;472.14;;100.00\r\n2026-04-20;Tollgate Building Supply;0.00;59.02;159.02\r\n',
    ],
    [
      'withdrawals with a minus',
      'Date\tName\tWithdrawals\tDeposits\n2026-04-03\tTollgate Building Supply\t-472.14\t\n2026-04-20\tTollgate Building Supply\t\t59.02\n',
    ],
    [
      'a column that says which',
      '﻿Posted Date|Amount|Debit/Credit|Details\n20260403|$472.14|Debit|Tollgate Building Supply\n20260420|$59.02|CREDIT|Tollgate Building Supply\n',
    ],
    [
      '"details" that say which',
      'Details,Posting Date,Description,Amount,Type\nDEBIT,04/03/2026,Tollgate Building Supply,-472.14,ACH_DEBIT\nCREDIT,04/20/2026,Tollgate Building Supply,59.02,ACH_CREDIT\n',
    ],
    [
      'parentheses, times behind the day',
      'date,description,amount\n2026-04-03T00:00:00,Tollgate Building Supply,(472.14)\n4/20/2026 12:31 PM,Tollgate Building Supply,+59.02\n',
    ],
    [
      'chatter with another delimiter',
      'Account: Everyday Checking, Mill Bend\n"From; to",01/01/2026 to 06/30/2026\n\nDate;Description;Amount\n04/03/2026;Tollgate Building Supply;-472.14\n04/20/2026;Tollgate Building Supply;59.02\n\nEnd of report\n',
    ],
    [
      'a delimiter that is told',
      'sep=;\nDate;Description;Amount\n04/03/2026;Tollgate Building Supply;-472.14\n04/20/2026;Tollgate Building Supply;59.02\n',
    ],
  ])('with %s', async (_name, text) => {
    const read = await rowsOf(text);
    expect(read.diagnostics).toEqual([]);
    expect(short(read).filter(([, , payee]) => payee !== 'X')).toEqual(TWO);
  });

  it('as a workbook, behind a cover page', async () => {
    const cell = (value: string) => ({ value, type: String });
    const file = saved('', 'xlsx');
    await writeWorkbook([
      { sheet: 'Cover', data: [[cell('Everyday Checking')]] },
      {
        sheet: 'Activity',
        data: [
          ['Date', 'Description', 'Amount'].map(cell),
          [
            { value: new Date(Date.UTC(2026, 3, 3)), type: Date, format: 'mm/dd/yyyy' },
            cell('Tollgate Building Supply'),
            { value: -472.14, type: Number },
          ],
          [cell('04/20/2026'), cell('Tollgate Building Supply'), cell('59.02')],
        ],
      },
    ] as never).toFile(file);
    const { sheet, diagnostics } = await readBankFile(file, 'bank.xlsx');
    expect(diagnostics).toEqual([]);
    const rows = sheet?.rows ?? [];
    const head = findHeadings(rows);
    const columns = proposeColumns(rows, head);
    if (sheet === undefined || columns === undefined) throw new Error('not read');
    expect(short(readBankRows(sheet, head, columns))).toEqual(TWO);
  });

  it('without headings: proposed by its looks, and not sure', async () => {
    const { sheet } = await fileOf(
      '04/03/2026,-472.14,*,,Tollgate Building Supply\n04/20/2026,59.02,*,,Tollgate Building Supply\n',
    );
    const head = findHeadings(sheet?.rows ?? []);
    expect([head.headings, head.from, head.isSure]).toEqual([undefined, 1, false]);
    expect(proposeColumns(sheet?.rows ?? [], head)).toMatchObject({
      date: 0,
      payee: 4,
      amount: { kind: 'one', at: 1 },
    });
  });

  it('tells what stands above it, without the account’s number', async () => {
    const { sheet } = await fileOf('Account 123456789012,\n\nDate,Description,Amount\n2026-04-03,A,-1\n');
    expect(chatterAbove(sheet?.rows ?? [], findHeadings(sheet?.rows ?? []))).toEqual(['Account …9012']);
  });

  it('passes over balances, sums, pending rows and zeros, each with its reason', async () => {
    const read = await rowsOf(
      'Status,Date,Description,Amount,Balance\nPosted,,Beginning balance,,10.00\nPending,2026-04-02,Gate,-4.00,\nPosted,2026-04-03,Gate,-4.00,6.00\nPosted,2026-04-03,Note,0.00,6.00\n,Total,,-4.00,\n',
    );
    expect(read.diagnostics).toEqual([]);
    expect(short(read)).toEqual([['2026-04-03', 400, 'Gate']]);
    expect(read.passedOver.map(({ row }) => row)).toEqual([2, 3, 5, 6]);
    expect(read.passedOver.map(({ why }) => why).join('; ')).toBe(
      'it is a balance or a sum; the bank has not booked it yet; it will come again; its amount is 0; it is a balance or a sum',
    );
  });

  it('knows a check by its number or its text', async () => {
    const { rows } = await rowsOf(
      'Date,Check Number,Description,Amount\n2026-04-03,1044,DRAFT,-1\n2026-04-03,,CHECK 1045,-2\n2026-04-03,,Gate,-3\n',
    );
    expect(rows.map(({ paid, reference }) => [paid, reference])).toEqual([
      ['check', '1044'],
      ['check', ''],
      [undefined, ''],
    ]);
  });
});

describe('days', () => {
  const list = (...days: string[]): string =>
    `Date,Description,Amount\n${days.map((day) => `${day},A,-1\n`).join('')}`;
  const daysOf = async (
    text: string,
    change: Partial<BankColumns> = {},
  ): Promise<[string[], unknown, boolean, string[]]> => {
    const read = await rowsOf(text, change);
    return [
      read.rows.map(({ date }) => date),
      read.days,
      read.daysAreAssumed,
      read.diagnostics.map(({ message }) => message),
    ];
  };
  it('are read as the file as a whole tells', async () => {
    expect(await daysOf(list('3/4/2026', '3/14/2026'))).toEqual([
      ['2026-03-04', '2026-03-14'],
      'month-first',
      false,
      [],
    ]);
    expect(await daysOf(list('3/4/2026', '14/3/2026'))).toEqual([
      ['2026-04-03', '2026-03-14'],
      'day-first',
      false,
      [],
    ]);
    expect(await daysOf(list('3/4/2026', '5/5/2026'))).toEqual([
      ['2026-03-04', '2026-05-05'],
      'month-first',
      true,
      [],
    ]);
    expect(await daysOf(list('3/4/2026'), { days: 'day-first' })).toEqual([
      ['2026-04-03'],
      'day-first',
      false,
      [],
    ]);
    expect(await daysOf(list('2026-03-04'))).toEqual([['2026-03-04'], undefined, false, []]);
  });
  it('that contradict each other, or what was said before, are refused', async () => {
    expect((await daysOf(list('14/3/2026', '3/14/2026')))[3]).toEqual([
      'Date: 14/3/2026 begins with the day, and 3/14/2026 in row 3 with the month',
    ]);
    expect((await daysOf(list('3/4/2026', '14/3/2026'), { days: 'month-first' }))[3]?.[0]).toContain(
      '14/3/2026 can’t be read month first',
    );
  });
  it.each([
    ['20260403', '2026-04-03'],
    ['2026/4/3', '2026-04-03'],
    ['2026-04-03 14:05:00 EST', '2026-04-03'],
    ['04-13-2026', '2026-04-13'],
    ['Apr 3, 2026', '2026-04-03'],
  ])('%s', (written, day) => {
    const read = readBankDay(written);
    expect(read.ok && read.value.day).toBe(day);
  });
});

describe('a row that can’t be read names itself, its column and the way out', () => {
  it.each([
    ['2026-04-03,A,"1.234,50"', '2:14', 'Amount: ', 'write 1,234.50'],
    ['2026-04-03,A,1e3', '2:14', 'Amount: “1e3” is no amount', 'write dollars'],
    ['2026-04-03,A,12.345', '2:14', 'Amount: 12.345 has a part of a cent', 'two decimals'],
    ['2026-04-03,A,€5.00', '2:14', 'Amount: the amount is not in dollars', ''],
    ['2026-04-03,A,', '2:14', 'Amount: there is no amount', ''],
    ['2026-02-30,A,-1', '2:1', 'Date: ', 'year-month-day'],
    [',A,-1', '2:1', 'Date: this row has no date', ''],
    ['2026-04-03,paint, white,-1', '2:', 'cells', ''],
    ['2026-04-03', '2:', 'cells', ''],
  ])('%s', async (row, place, problem, way) => {
    const { diagnostics } = await rowsOf(`Date,Description,Amount\n${row}\n2026-04-04,B,-1\n`);
    const [first] = diagnostics;
    expect(diagnostics.map(({ code, severity }) => [code, severity])).toContainEqual(['cli.import', 'error']);
    expect(`${first?.place?.line}:${first?.place?.column}`).toMatch(new RegExp(`^${place}`));
    const all = diagnostics.map(({ message, hints }) => `${message} ${hints.join(' ')}`).join(' ');
    expect(all).toContain(problem);
    expect(all).toContain(way);
  });

  it('debit and credit both, or neither', async () => {
    const { diagnostics } = await rowsOf(
      'Date,Payee,Debit,Credit\n2026-04-03,A,1,2\n2026-04-03,B,,\n2026-04-03,B,1,\n',
    );
    expect(diagnostics.map(({ place, message }) => [place?.line, message])).toEqual([
      [2, 'Credit: both what was paid and what came in are filled in'],
      [3, 'Debit: neither what was paid nor what came in is filled in'],
    ]);
  });

  it('a minus beside “credit”, and another word than debit or credit', async () => {
    const change: Partial<BankColumns> = { amount: { kind: 'marked', at: 2, mark: 3 } };
    const { diagnostics } = await rowsOf(
      'Date,Payee,Amount,Type\n2026-04-03,A,-1,credit\n2026-04-03,B,1,Sale\n',
      change,
    );
    expect(diagnostics.map(({ message }) => message)).toEqual([
      'Amount: a minus and “credit” contradict each other',
      'Type: “Sale” is neither debit nor credit',
    ]);
  });

  it('never shows a whole account number beside it', async () => {
    const { diagnostics } = await rowsOf(
      'Date,Description,Amount\n2026-04-03,TO 123456789012,1e3\n2026-04-03,x,-1\n',
    );
    expect(diagnostics[0]?.place?.source).toBe('2026-04-03,TO ••••••••9012,1e3');
  });
});

describe('another kind of file is told to be one', () => {
  it.each([
    ['%PDF-1.7 ...', 'a PDF'],
    ['<!DOCTYPE html><html></html>', 'a web page (HTML)'],
    ['\n<table><tr><td>1</td></tr></table>', 'a web page (HTML)'],
    ['OFXHEADER:100\nDATA:OFXSGML\n', 'an OFX or QFX file'],
    ['<?xml version="1.0"?>\n<?OFX OFXHEADER="200"?>\n', 'an OFX or QFX file'],
    ['!Type:Bank\nD04/03/2026\n', 'a QIF file'],
    ['<?xml version="1.0"?><Document/>', 'an XML file'],
    ['[{"date":"2026-04-03"}]', 'a JSON file'],
    ['{1:F01}', 'an MT940 file'],
  ])('%j', async (text, kind) => {
    const { sheet, diagnostics } = await fileOf(text);
    expect([sheet, diagnostics[0]?.code, diagnostics[0]?.message]).toEqual([
      undefined,
      'cli.import',
      `bank.csv is ${kind}, not a list of rows`,
    ]);
    expect(diagnostics[0]?.hints[0]).toContain('choose  CSV');
  });

  it.each([
    ['UTF-16', Buffer.from('\uFEFFDate,Description,Amount\n', 'utf16le')],
    ['Windows-1252', Buffer.from('Date,Description,Amount\n2026-04-03,Caf\xe9,-1\n', 'latin1')],
    ['a NUL', Buffer.from('Date,Description,Amount\n2026-04-03,A\0B,-1\n')],
    ['an old workbook', Buffer.from('d0cf11e0a1b11ae1', 'hex')],
    ['a broken zip', Buffer.from('PK\x03\x04 nothing')],
  ])('%s', async (_name, bytes) => {
    const { sheet, diagnostics } = await fileOf(bytes);
    expect([sheet, diagnostics.length, diagnostics[0]?.path]).toEqual([undefined, 1, undefined]);
    expect(diagnostics[0]?.hints.length).toBeGreaterThan(0);
  });

  it('nothing at that path, a folder, an empty file', async () => {
    const said = async (file: string) => (await readBankFile(file, 'bank.csv')).diagnostics[0]?.message;
    expect(await said(path.join(scratch, 'none.csv'))).toBe('there is no file bank.csv');
    expect(await said(scratch)).toBe('bank.csv is no file');
    expect(await said(saved(''))).toBe('bank.csv is empty');
  });
});

describe('a bank’s text', () => {
  it.each([
    ['  POS   4471\tMILL\r\n BEND ', 'POS 4471 MILL BEND'],
    ['\u001b[31mred\u001b]0;x\u0007', '[31mred ]0;x'],
    ['a\u202Eb\u200Bc', 'a b c'],
    ['TO 12345678', 'TO …5678'],
    ['TO 1234567', 'TO 1234567'],
    ['CARD 4111 1111 1111 1111', 'CARD …1111'],
    ['SSN 123-45-6789', 'SSN •••-••-••••'],
    ['EIN 12 3456789 X', 'EIN •• ••••••• X'],
    ['=HYPERLINK("http://x")', '=HYPERLINK("http://x")'],
  ])('%j is kept as %j', (raw, kept) => {
    expect(bankText(raw)).toBe(kept);
    // What was kept once is what is kept of it again.
    expect(bankText(kept)).toBe(kept);
  });

  it('is the same store with another number, and no store where it names nobody', () => {
    expect(sameStem('TOLLGATE #0412', 'TOLLGATE #0388')).toBe(true);
    expect(sameStem('CHECK 1044', 'CHECK 1045')).toBe(false);
    expect(alike('TOLLGATE BLDG #0412', 'Tollgate Building Supply')).toBe(true);
    expect(alike('CHECK 1044', 'Check Point Doors')).toBe(false);
  });
});

describe('the columns of a bank', () => {
  const headings = ['Posting Date', 'Amount, USD', 'yes', '3', 'Name', 'Name', '"q" # x: y'];
  const head = { headings, width: 7 };
  const columns: BankColumns = {
    date: 0,
    payee: 5,
    memo: 6,
    amount: { kind: 'two', paid: 1, received: 3 },
    paidIs: 'positive',
    days: 'month-first',
  };

  it('are written, and read back as they were', () => {
    const first = withMapping(undefined, head, { columns, paid: 'card' });
    expect(mappingFrom(first ?? Buffer.alloc(0), 'x', head).mapping).toEqual({ columns, paid: 'card' });
    const other = { headings: undefined, width: 4 };
    const bare: BankColumns = {
      date: 0,
      payee: 3,
      memo: undefined,
      amount: { kind: 'one', at: 1 },
      paidIs: 'negative',
      days: undefined,
    };
    // A comment that somebody wrote stays.
    const noted = Buffer.concat([first ?? Buffer.alloc(0), Buffer.from('  # mine')]);
    const both = withMapping(noted, other, { columns: bare, paid: undefined });
    expect(both?.subarray(0, noted.length).equals(noted)).toBe(true);
    expect(mappingFrom(both ?? Buffer.alloc(0), 'x', other).mapping).toEqual({
      columns: bare,
      paid: undefined,
    });
    expect(mappingFrom(both ?? Buffer.alloc(0), 'x', head).mapping).toEqual({ columns, paid: 'card' });
    expect(
      mappingFrom(both ?? Buffer.alloc(0), 'x', { headings: ['Posting Date'], width: 1 }).mapping,
    ).toBeUndefined();
    expect(withMapping(Buffer.from('files: {}\n'), head, { columns, paid: 'card' })).toBeUndefined();
  });

  it.each([
    ['paid-is: positive', 'paid-is: maybe', 'paid-is says'],
    ['date: "Posting Date"', 'date: "Day"', 'there is no column “Day” for date'],
    ['paid: card', 'paid: barter', 'no way of paying'],
    ['days: month-first', 'days: first', 'which comes first'],
  ])('%s turned into %s is told with its line', (from, to, problem) => {
    const text = withMapping(undefined, head, { columns, paid: 'card' })?.toString().replace(from, to) ?? '';
    const { mapping, diagnostics } = mappingFrom(Buffer.from(text), 'columns.yaml', head);
    expect([mapping, diagnostics[0]?.message.includes(problem)]).toEqual([undefined, true]);
    expect(text.split('\n')[(diagnostics[0]?.place?.line ?? 0) - 1]).toContain(to);
  });

  it.each([
    ['-5.00', '-6.00', '7.00', 'negative'],
    ['(5.00)', '$ -6.00', '7.00', 'negative'],
    ['5.00', '6.00', '-7.00', 'positive'],
    ['0.00', '0.00', '5.00', 'positive'],
  ])('that are named have the sign that is proposed without: %s %s %s', (...cells) => {
    const paidIs = cells.pop();
    const rows = [['Date', 'Payee', 'Amount'], ...cells.map((cell) => ['2026-04-03', 'A', cell])];
    const found = findHeadings(rows);
    expect(proposeColumns(rows, found)?.paidIs).toBe(paidIs);
    expect(likelySign(rows, found, { kind: 'one', at: 2 })).toBe(paidIs);
  });

  it('are named on the command line', () => {
    const named = readColumnsOption('date=Posting Date, payee=Name,amount=Amount, USD');
    expect(named).toEqual({ date: 'Posting Date', payee: 'Name', amount: 'Amount, USD' });
    expect(readColumnsOption('date=1,who=2')).toEqual({ problem: '“who=2” names no column' });
    expect(columnsFrom({ date: '1', payee: '5', amount: 'amount usd' }, head)).toMatchObject({
      ok: true,
      columns: { payee: 4 },
    });
    expect(columnsFrom({ date: '1', payee: '1', amount: '2' }, head)).toMatchObject({
      ok: false,
      problem: 'one column is named for two things',
    });
    expect(columnsFrom({ date: '1', payee: '9', amount: '2' }, head)).toMatchObject({
      ok: false,
      problem: 'there is no column “9” for payee',
    });
    expect(columnsFrom({ date: '1', payee: '5', debit: '2' }, head)).toMatchObject({ ok: false });
    // Which of the two the sign is about can't be told, and to pass it over would turn payments round.
    expect(columnsFrom({ date: '1', payee: '5', debit: '2', credit: '3', sign: '4' }, head)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('sign'),
    });
  });
});

describe('a delimiter', () => {
  const read = (text: string, options = {}) =>
    readCsv(Buffer.from(text), 'bank.csv', 'bank.csv', undefined, options);

  it('is the one that was asked for, unless the file names its own; places stay those of the file', () => {
    expect(read('a,b|c\n', { delimiter: '|' })).toMatchObject({
      delimiter: '|',
      sheet: { rows: [['a,b', 'c']] },
    });
    expect(read('sep=;\na|b;c\n', { delimiter: '|' })).toMatchObject({
      delimiter: ';',
      sheet: { rows: [['a|b', 'c']] },
    });
    expect(read('\uFEFFa,b\n1|2', { delimiter: '|' }).sheet?.placeOf(2, 1)).toMatchObject({
      line: 2,
      column: 3,
    });
  });

  it('that the file names stands in front of the row with an open quote, which is found all the same', () => {
    const { sheet, diagnostics } = read('\uFEFFsep=;\r\nü;b\r\n"é";2\r\nx;"never\r\nclosed');
    expect(sheet?.rows).toEqual([
      ['ü', 'b'],
      ['é', '2'],
    ]);
    expect(diagnostics).toMatchObject([{ place: { line: 4, column: 3 } }]);
  });
});

describe('a row in the manner of its sheet', () => {
  const layout = (text: string) => {
    const bytes = Buffer.from(text);
    const { sheet, delimiter } = readCsv(bytes, 'costs.csv', 'costs.csv', 'costs');
    const headings = sheet && readHeadings('costs', sheet, COST_HEADINGS).headings;
    if (sheet === undefined || headings === undefined) throw new Error('not read');
    return layoutOf(bytes, sheet, headings, delimiter);
  };
  it.each([
    ['date,payee,what,amount,bucket\n2026-01-02,A,b,1.00,tool\n', '2026-04-03,"A, B",b;c,-1234.50,\n'],
    [
      '\uFEFFAmount;Bucket;Payee;What;Date\r\n$1,234.00;tool;A;b;1/2/2026\r\n',
      '-$1,234.50;;A, B;"b;c";4/3/2026\r\n',
    ],
    [
      'sep=\t\ndate\tpayee\twhat\tamount\tbucket\n01/02/26\tA\tb\t(1.00)\ttool',
      '04/03/26\tA, B\tb;c\t(1234.50)\t\n',
    ],
    ['Date,Payee,What,Amount,Bucket,,\n"Jan 2, 2026",A,b,1,tool\n', '"Apr 3, 2026","A, B",b;c,-1234.50,,,\n'],
    // Day first can be misread; year-month-day can't.
    ['date,payee,what,amount,bucket\n31/01/2026,A,b,1.00,tool\n', '2026-04-03,"A, B",b;c,-1234.50,\n'],
  ])('%j', (text, row) => {
    const found = layout(text);
    expect(
      rowIn(found, {
        date: dayIn(found.manner, '2026-04-03'),
        payee: 'A, B',
        what: 'b;c',
        amount: amountIn(found.manner, -123450),
      }),
    ).toBe(row);
  });

  it('amounts are whole cents, to the last one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999_999, max: 99_999_999_999 }),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (cents, dollar, commas, parentheses) => {
          const read = readSheetAmount(amountIn({ ...PLAIN_MANNER, dollar, commas, parentheses }, cents));
          expect(read.ok && read.value).toBe(cents);
        },
      ),
      { seed: 2_605 },
    );
  });

  it('no spreadsheet runs a text, and it is the same again when it is read', () => {
    const others = [
      ' =1',
      '"=1"',
      '\u200B=1',
      'x;=1',
      'x; "=1"',
      "x\t'+1",
      'x\r\n@a',
      'x;y=1',
      '\t=1',
      ';\n;-1',
    ];
    for (const text of [
      '=1+1',
      '+1',
      '-x',
      '@a',
      '＝a',
      "'=a",
      "''+a",
      "'a",
      "'",
      "''",
      '',
      'a=b',
      ...others,
    ]) {
      // As a program sees it that parts cells by semicolons or tabs, or knows no quoting.
      for (const cell of asInert(text).split(/[;\t\r\n]/)) expect(cell).not.toMatch(/^[\s"\u200B]*[=+\-@＝]/);
      expect(asItWas(asInert(text))).toBe(text);
    }
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom("'", '=', '-', '＠', '\t', '\r', 'a', ' ', ';', '"', '\n') }),
        (text) => {
          expect(asItWas(asInert(text))).toBe(text);
        },
      ),
      { seed: 2_605, numRuns: 1000 },
    );
    expect(rowIn(newLayout(['a', 'b']), { a: 'say "x"', b: ' b' })).toBe('"say ""x"""," b"\n');
  });
});

describe('what was seen', () => {
  const key = { date: '2026-05-20', cents: 450, text: '=Coffee, "Mill"', reference: "'=7" };
  it('is counted, written, and read back', () => {
    const rows = numberRows([key, key, { ...key, cents: -450 }, { ...key, text: `'${key.text}` }]).map(
      (row) => ({
        ...row,
        became: 'added' as const,
        payee: 'Mill',
      }),
    );
    expect(rows.map(({ nth }) => nth)).toEqual([1, 2, 1, 1]);
    const empty = seenFrom(Buffer.from('date,amount,text,reference,nth,became,payee'), 'seen.csv');
    const bytes = withSeen(empty, rows);
    const again = seenFrom(bytes, 'seen.csv');
    expect([again.rows, again.diagnostics]).toEqual([rows, []]);
    expect(withSeen(again, rows).equals(bytes)).toBe(true);
  });
  it.each([
    ['date,amount,text,reference,nth,payee\n', 'no column headed became', 0],
    ['date,amount,text,reference,nth,became,payee\n2026-05-20,"4,50",A,,1,added,\n', 'comma or point', 2],
    ['date,amount,text,reference,nth,became,payee\n2026-05-20,4.50,A,,0,added,\n', 'no count', 2],
    ['date,amount,text,reference,nth,became,payee\n2026-05-20,4.50,A,,1,lost,\n', 'none of added', 2],
  ])('%j is refused', (text, problem, line) => {
    const { diagnostics } = seenFrom(Buffer.from(text), 'seen.csv');
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]?.message).toContain(problem);
    expect(diagnostics[0]?.place?.line ?? 0).toBe(line);
  });
});
