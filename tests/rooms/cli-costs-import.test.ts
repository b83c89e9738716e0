/** `sillplate costs import`: what is asked, what is written, and that no row comes twice or gets lost. */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/node';
import { addRows, leftOver } from '../../src/archive/append-rows.js';
import { type CostsImportOptions, costsImportCommand, type Typing } from '../../src/command-costs.js';
import { importDiskTrouble } from '../../src/import-disk-trouble.js';
import { readFacts } from '../../src/intake/read-facts.js';
import { quietProgress } from '../tools/quiet-progress.js';
import { SMALL_HOUSE, scratchFolder } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const HOUSE = `${SMALL_HOUSE}levels:
  - { id: main, name: Main level, floor: 0 ft, outline: 30 ft x 20 ft }
rooms:
  - { id: kitchen, level: main, use: kitchen }
`;
const HEAD = 'date,payee,what,amount,bucket,place,paid,receipt,note\n';
/** Of a file that an import makes. */
const NEW_HEAD = 'date,payee,what,amount,bucket,place,paid,receipt,tax year,sales tax,note\n';
let count = 0;

/** A content folder of its own with one house. */
function home(costs?: string | Uint8Array, name = 'costs.csv'): string {
  count += 1;
  const folder = path.join(scratch, `c${count}`, 'mill-lane');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'house.yaml'), HOUSE);
  if (costs !== undefined) writeFileSync(path.join(folder, name), costs);
  return folder;
}

function bank(folder: string, text: string | Uint8Array, name = 'bank.csv'): string {
  const file = path.join(folder, '..', name);
  writeFileSync(file, text);
  return file;
}

const read = (folder: string, name = 'costs.csv'): string => readFileSync(path.join(folder, name), 'utf8');

interface Said {
  readonly said: string;
  readonly status: number;
}

/** `answers` undefined: `--yes`. */
async function imported(
  folder: string,
  file: string,
  options: Partial<CostsImportOptions> = {},
  answers?: readonly string[] | Typing,
): Promise<Said> {
  let said = '';
  const write = (text: string): void => {
    said += text;
  };
  const terminal = { out: write, error: write, colour: false, progress: quietProgress };
  const typing = Array.isArray(answers)
    ? (Readable.from(answers.length === 0 ? [] : [`${answers.join('\n')}\n`]) as Typing)
    : (answers as Typing | undefined);
  const status = await costsImportCommand(
    file,
    folder,
    { content: path.dirname(folder), yes: typing === undefined, ...options },
    terminal,
    typing,
  );
  return { said, status };
}

const rowsOf = (folder: string, name = 'costs.csv'): string[] =>
  read(folder, name).trimEnd().split(/\r?\n/).slice(1).sort();

const PAST = `${HEAD}2026-03-27,Tollgate Building Supply,paint,312.40,repair,,card,,
2026-04-03,Tollgate Building Supply,vinyl plank,472.14,improvement,kitchen,card,,
2026-04-09,Tollgate Building Supply,trim,80.00,improvement,kitchen,card,,
2026-04-16,Ridge Street Plumbing,water heater,4186.00,improvement,,check,,
`;
const LIST = `Account: Everyday Checking 123456789012

Posting Date,Description,Amount
04/20/2026,PAYROLL MILL SCHOOLS,2140.00
04/18/2026,COFFEE AT THE MILL,-4.50
04/18/2026,COFFEE AT THE MILL,-4.50
04/05/2026,TOLLGATE BUILDING SUPPLY #0412,-472.14
04/17/2026,TOLLGATE BUILDING SUPPLY #0388,-118.40
04/19/2026,TOLLGATE BUILDING SUPPLY #0388,18.40
`;

describe('with --yes', () => {
  it('takes over what has a history, appends the rest without a bucket, and drops nothing in silence', async () => {
    const folder = home(PAST);
    const { said, status } = await imported(folder, bank(folder, LIST), { paid: 'card' });
    expect(status).toBe(0);
    expect(
      read(folder),
    ).toBe(`${PAST}2026-04-17,Tollgate Building Supply,TOLLGATE BUILDING SUPPLY #0388,118.40,,,card,,
2026-04-18,COFFEE AT THE MILL,COFFEE AT THE MILL,4.50,,,card,,
2026-04-18,COFFEE AT THE MILL,COFFEE AT THE MILL,4.50,,,card,,
2026-04-19,Tollgate Building Supply,TOLLGATE BUILDING SUPPLY #0388,-18.40,,,card,,
`);
    expect(said).toContain('passed over above it: “Account: Everyday Checking …9012”');
    expect(said).not.toContain('123456789012');
    expect(said).toContain('2026-04-20  PAYROLL MILL SCHOOLS  $2,140.00 came in\n');
    expect(said).toContain(`: 6 rows
  4  added to ${folder}/costs.csv, rows 6 to 9
  1  in the costs already
       2026-04-05  TOLLGATE BUILDING SUPPLY #0412  $472.14  =  row 3
  1  left out: money that came in
       2026-04-20  PAYROLL MILL SCHOOLS  $2,140.00 came in

Without a bucket: rows 6 to 9. Write what they were for.
  rows 7 and 8: nobody like them was paid before
  rows 6 and 9: Tollgate Building Supply, paid for several things before (improvement 2, repair 1)
`);
    expect(said).not.toContain('taken over');
    expect(rowsOf(folder, 'imports/seen.csv')).toEqual([
      '2026-04-05,472.14,TOLLGATE BUILDING SUPPLY #0412,,1,in-costs,Tollgate Building Supply',
      '2026-04-17,118.40,TOLLGATE BUILDING SUPPLY #0388,,1,added,Tollgate Building Supply',
      '2026-04-18,4.50,COFFEE AT THE MILL,,1,added,',
      '2026-04-18,4.50,COFFEE AT THE MILL,,2,added,',
      '2026-04-19,-18.40,TOLLGATE BUILDING SUPPLY #0388,,1,added,Tollgate Building Supply',
      '2026-04-20,-2140.00,PAYROLL MILL SCHOOLS,,1,left-out,',
    ]);
    expect(read(folder, 'imports/columns.yaml')).toContain(
      '    payee: "Description"\n    amount: "Amount"\n    paid-is: negative\n    paid: card\n    days: month-first\n',
    );
    expect(readdirSync(path.join(folder, 'imports')).sort()).toEqual([
      'columns.yaml',
      'costs.csv.before-import',
      'seen.csv',
    ]);
  });

  it('adds nothing the second time, also from a workbook of the same rows', async () => {
    const folder = home(PAST);
    await imported(folder, bank(folder, LIST));
    const [costs, seen] = [read(folder), read(folder, 'imports/seen.csv')];
    const again = await imported(folder, bank(folder, LIST));
    expect([again.status, read(folder), read(folder, 'imports/seen.csv')]).toEqual([0, costs, seen]);
    expect(again.said).toContain('6  imported before\n');
    const cell = (value: string) => ({ value, type: String });
    const data = LIST.split('\n')
      .filter((line) => line.includes(','))
      .map((line) => line.split(',').map(cell));
    const book = path.join(folder, '..', 'bank.xlsx');
    await writeWorkbook(data as never).toFile(book);
    expect((await imported(folder, book)).said).toContain('6  imported before\n');
    expect(read(folder)).toBe(costs);
  });

  it('learns a payee and its bucket that were written by hand since, also from the house beside it', async () => {
    const folder = home();
    await imported(
      folder,
      bank(
        folder,
        'Date,Description,Amount\n2026-04-18,SQ *NFD 0148,-385.00\n2026-04-18,OTHER THING,-1.00\n',
      ),
    );
    expect(read(folder)).toBe(
      `${NEW_HEAD}2026-04-18,OTHER THING,OTHER THING,1.00,,,,,,,\n2026-04-18,SQ *NFD 0148,SQ *NFD 0148,385.00,,,,,,,\n`,
    );
    writeFileSync(
      path.join(folder, 'costs.csv'),
      read(folder).replace(
        'SQ *NFD 0148,SQ *NFD 0148,385.00,,',
        'North Fork Dumpsters,dumpster,385.00,holding,',
      ),
    );
    const next = 'Date,Description,Amount\n2026-05-18,SQ *NFD 0149,-385.00\n';
    await imported(folder, bank(folder, next));
    expect(read(folder)).toContain('2026-05-18,North Fork Dumpsters,SQ *NFD 0149,385.00,holding,,,,,,\n');
    const beside = path.join(folder, '..', 'oak-lane');
    mkdirSync(beside);
    writeFileSync(path.join(beside, 'house.yaml'), HOUSE);
    await imported(beside, bank(folder, next));
    expect(read(beside)).toBe(
      `${NEW_HEAD}2026-05-18,North Fork Dumpsters,SQ *NFD 0149,385.00,holding,,,,,,\n`,
    );
  });

  it('--dry-run writes nothing at all', async () => {
    const folder = home(PAST);
    const { said, status } = await imported(folder, bank(folder, LIST), { dryRun: true }, ['y']);
    expect(status).toBe(0);
    expect(said).toContain(
      '→  Tollgate Building Supply, no bucket: paid for several things before (improvement 2, repair 1)\n',
    );
    expect(said).toContain('→  COFFEE AT THE MILL, no bucket\n');
    expect(said).toContain('Nothing is written (--dry-run).');
    expect([readdirSync(folder).sort(), read(folder)]).toEqual([['costs.csv', 'house.yaml'], PAST]);
  });

  it('takes columns, sign and way from the command line', async () => {
    const folder = home();
    const file = bank(
      folder,
      'When;Who;How much\n2026-04-18;North Fork;385.00\n2026-04-19;North Fork;-5.00\n2026-04-20;Gate;-1.00\n',
    );
    const refused = await imported(folder, file);
    expect([refused.status, existsSync(path.join(folder, 'costs.csv'))]).toEqual([1, false]);
    expect(refused.said).toContain('--columns "date=When,payee=Who,amount=How much"');
    const { status } = await imported(folder, file, {
      columns: 'date=When,payee=Who,amount=How much',
      paidIs: 'positive',
      paid: 'network',
      yes: true,
    });
    expect([status, rowsOf(folder)]).toEqual([0, ['2026-04-18,North Fork,North Fork,385.00,,,network,,,,']]);
    const wrong = await imported(folder, file, { columns: 'who=When' });
    expect([wrong.status, wrong.said.includes('“who=When” names no column')]).toEqual([2, true]);
  });

  it('a check may be the payment of another row: it is added, and told', async () => {
    const folder = home(PAST);
    const { said } = await imported(
      folder,
      bank(folder, 'Date,Check Number,Description,Amount\n2026-04-24,1044,CHECK,-4186.00\n'),
    );
    expect(rowsOf(folder)).toContain('2026-04-24,CHECK,CHECK,4186.00,,,check,,1044');
    expect(said).toContain(
      'Row 6 is perhaps the same as row 5 (Ridge Street Plumbing): if so, take one out.\n',
    );
  });

  it.each([
    ['a formula', '=HYPERLINK("http://x.invalid","y")', "'=HYPERLINK"],
    ['an escape', 'RED\u001b[31m STORE', 'RED [31m STORE'],
    ['an account', 'TO ACCOUNT 123456789012', 'TO ACCOUNT …9012'],
    ['a taxpayer number', 'SSN 123-45-6789', 'SSN •••-••-••••'],
  ])('%s in a text stays a text', async (_name, text, kept) => {
    const folder = home();
    const file = bank(folder, `Date,Description,Amount\n2026-04-18,"${text.replaceAll('"', '""')}",-1.00\n`);
    const { said } = await imported(folder, file);
    for (const one of [read(folder), read(folder, 'imports/seen.csv')]) expect(one).toContain(kept);
    const everything = said + read(folder) + read(folder, 'imports/seen.csv');
    for (const secret of ['\u001b', '123456789012', '123-45-6789']) expect(everything).not.toContain(secret);
    expect((await imported(folder, file)).said).toContain('1  imported before');
  });
});

describe('with questions', () => {
  it('settles the columns once, and asks about each row', async () => {
    const folder = home(PAST);
    const answers = [
      '', // the columns are right
      'debit',
      ...['', ''], // 04-05: row 3 is the same; 04-17: the bucket
      ...['primer', 'kitchn', 'kitchen'],
      ...['tool', 'Coffee Mill', '?', 'utilites', '-'],
      '', // the second coffee: what was said of the first
      ...['', 'improvement', '', ''], // a refund
      '', // pay is left out
    ];
    const { said, status } = await imported(folder, bank(folder, LIST), {}, answers);
    expect(status).toBe(0);
    expect(said).toContain('  2026-04-18  COFFEE AT THE MILL  $4.50 paid\n');
    expect(said).toContain(
      'row 3 of costs.csv looks like this one: 2026-04-03, Tollgate Building Supply, vinyl plank. The same [y]: ',
    );
    expect(said).toContain('  Bucket [improvement]: ');
    expect(said).toContain('perhaps  kitchen\n');
    expect(said).toContain('tool is a bucket, and is asked for next; who was paid?\n');
    expect(said).toContain('perhaps  utilities\n');
    expect(said).toContain('insurance-payment          what an insurer paid for damage; below zero\n');
    expect(said).toContain('  Bucket [-]: ');
    expect(
      read(folder),
    ).toBe(`${PAST}2026-04-17,Tollgate Building Supply,primer,118.40,improvement,kitchen,card,,TOLLGATE BUILDING SUPPLY #0388
2026-04-19,Tollgate Building Supply,TOLLGATE BUILDING SUPPLY #0388,-18.40,improvement,,card,,
`);
    expect(said).toContain('  2  left out: not of this house\n');
    expect(said).toContain('  1  left out: money that came in\n');
    expect((await imported(folder, bank(folder, LIST), {}, [])).said).not.toContain('Is that right');
    // Not of this house: remembered for the same text on another day, and left out where nobody is asked.
    const more = await imported(
      folder,
      bank(folder, 'Posting Date,Description,Amount\n05/18/2026,COFFEE AT THE MILL,-4.50\n'),
    );
    expect(more.said).toContain('  1  left out: not of this house\n');
  });

  it('q stops: what was answered is written, and the same command goes on there', async () => {
    for (const end of [['q'], []]) {
      const folder = home(PAST);
      const first = await imported(folder, bank(folder, LIST), { paid: 'card' }, [
        '',
        'y',
        'repair',
        'paint',
        '',
        ...end,
      ]);
      expect(first.status).toBe(0);
      expect(first.said).toContain('  4  not asked about; the same command goes on there\n');
      expect(rowsOf(folder).filter((row) => row.startsWith('2026-04-17'))).toHaveLength(1);
      const second = await imported(folder, bank(folder, LIST), {}, ['', 'tool', 'filter', '']);
      expect(second.said).toContain('4 new rows.');
      expect(second.said).toContain('  2  imported before\n');
      expect(rowsOf(folder).filter((row) => row.includes('filter'))).toEqual([
        '2026-04-18,COFFEE AT THE MILL,filter,4.50,tool,,card,,',
      ]);
    }
  });

  it('an order of the days that was only assumed is not kept as if it had been said', async () => {
    const folder = home();
    const doubtful = bank(folder, 'Date,Description,Amount\n03/04/2026,GATE,-1.00\n');
    const first = await imported(folder, doubtful, { yes: true });
    expect(first.said).toContain('are read month first');
    expect(read(folder, 'imports/columns.yaml')).not.toMatch(/^ {4}days:/m);
    // The next file shows that the bank writes the day first.
    const next = bank(folder, 'Date,Description,Amount\n25/04/2026,GATE,-2.00\n');
    const { said, status } = await imported(folder, next, { yes: true });
    expect([status, said]).toEqual([0, expect.stringContaining('added to')]);
    expect(rowsOf(folder)[1]).toContain('2026-04-25');
    const other = home();
    await imported(other, doubtful, { yes: true, days: 'day-first' });
    expect(read(other, 'imports/columns.yaml')).toContain('    days: day-first\n');
  });

  it('says which column is which where the headings do not tell, and asks for a doubtful day', async () => {
    const folder = home();
    const file = bank(folder, '3/4/2026,-12.00,*,,Gate Hardware\n5/4/2026,3.00,*,,Gate Hardware\n');
    const { said, status } = await imported(folder, file, {}, [
      '9',
      '',
      '',
      'improvement',
      '',
      '',
      'y',
      '2',
      'check',
      '',
      'tool',
      '',
      '',
      'n',
    ]);
    expect(said).toContain('there is no column “9” for date');
    expect(said).toContain('there is no column “improvement” for amount');
    expect(said).not.toContain('“improvement” for date');
    expect(said).toContain('3/4/2026: is that 1 ');
    expect([status, rowsOf(folder)]).toEqual([
      0,
      ['2026-04-03,Gate Hardware,Gate Hardware,12.00,tool,,check,,,,'],
    ]);
    expect(read(folder, 'imports/columns.yaml')).toContain(
      '  - columns: 5\n    date: "column 1"\n    payee: "column 5"\n    amount: "column 2"\n',
    );
    expect(read(folder, 'imports/columns.yaml')).toContain('days: day-first');
  });

  it('writes nothing where the questions about the columns end', async () => {
    const folder = home(PAST);
    const { said, status } = await imported(folder, bank(folder, LIST), {}, ['n']);
    expect([status, said.includes('not answered to the end'), readdirSync(folder).sort()]).toEqual([
      1,
      true,
      ['costs.csv', 'house.yaml'],
    ]);
  });

  it('a taxpayer number that is typed goes nowhere', async () => {
    const folder = home();
    await imported(
      folder,
      bank(folder, 'Date,Description,Amount\n2026-04-18,GATE,-1.00\n'),
      { paid: 'card' },
      ['', 'Ann 123-45-6789', 'Ann', 'tool', 'saw', ''],
    );
    expect(rowsOf(folder)).toEqual(['2026-04-18,Ann,saw,1.00,tool,,card,,,,GATE']);
  });

  it('keeps what was written into the costs while it asked', async () => {
    const folder = home(PAST);
    const changed = PAST.replace(HEAD, 'payee;what;amount;bucket;date\n'.replaceAll(';', ',')).split('\n')[0];
    async function* slowly() {
      yield '\n';
      await new Promise((resolve) => setTimeout(resolve, 200));
      // Another order of columns, and no column for how it was paid.
      writeFileSync(path.join(folder, 'costs.csv'), `${changed}\r\nA,b,1.00,tool,2026-01-01\r\n`);
      yield 'tool\nsaw\n\n';
    }
    const file = bank(folder, 'Date,Description,Amount\n2026-04-18,TOLLGATE BUILDING SUPPLY,-1.00\n');
    const { said } = await imported(folder, file, { paid: 'card' }, Readable.from(slowly()) as Typing);
    expect(said).toContain('costs.csv has no column headed paid, so this is not written: row 3 card\n');
    expect(read(folder)).toBe(
      'payee,what,amount,bucket,date\r\nA,b,1.00,tool,2026-01-01\r\nTollgate Building Supply,saw,1.00,tool,2026-04-18\r\n',
    );
  });
});

describe('answers that were piped in', () => {
  const one = 'Date,Description,Amount\n2026-04-18,GATE,-1.00\n2026-04-19,DOOR,-2.00\n';

  it('are taken; where they end, what was answered is written, and the rest is told', async () => {
    const folder = home();
    const answers = ['', 'card', 'Gate', 'improvement', 'latch', ''];
    const { said, status } = await imported(folder, bank(folder, one), {}, answers);
    expect([status, rowsOf(folder)]).toEqual([0, ['2026-04-18,Gate,latch,1.00,improvement,,card,,,,GATE']]);
    expect(said).toContain('  1  not asked about; the same command goes on there\n');
  });

  it('none at all: nothing is written, and --yes is named, also where the columns are settled', async () => {
    const folder = home();
    const settled = { columns: 'date=Date,payee=Description,amount=Amount' };
    for (const options of [{}, settled]) {
      const { said, status } = await imported(folder, bank(folder, one), options, []);
      expect([status, readdirSync(folder)]).toEqual([2, ['house.yaml']]);
      expect(said).toContain('no answers came on standard input, so nothing is written');
      expect(said).toContain('add  --yes\n');
    }
  });

  it('are not needed where there is no question', async () => {
    const folder = home();
    await imported(folder, bank(folder, one));
    const { said, status } = await imported(folder, bank(folder, one), {}, []);
    expect([status, said.includes('2  imported before')]).toEqual([0, true]);
  });
});

describe('a bucket that is taken over', () => {
  const gate = (...buckets: readonly string[]): string =>
    HEAD +
    buckets.map((bucket, day) => `2026-01-0${day + 1},Gate Supply,x,${day + 5}.00,${bucket},,,,\n`).join('');
  const beside = (folder: string, name: string, costs: string): void => {
    mkdirSync(path.join(folder, '..', name));
    writeFileSync(path.join(folder, '..', name, 'house.yaml'), HOUSE);
    writeFileSync(path.join(folder, '..', name, 'costs.csv'), costs);
  };
  const list = 'Date,Description,Amount\n2026-04-18,GATE SUPPLY 7,-1.00\n2026-04-19,GATE SUPPLY 8,-2.00\n';

  it('is told for each row, with the houses whose rows have it', async () => {
    const folder = home();
    beside(folder, 'quarry-road', gate('improvement', 'improvement', 'improvement'));
    const { said } = await imported(folder, bank(folder, list));
    expect(said).toContain(`Buckets taken over by history; correct what does not hold:
  row 2  2026-04-18  Gate Supply  $1.00  improvement, as in 3 of 3 rows of quarry-road
  row 3  2026-04-19  Gate Supply  $2.00  improvement, as in 3 of 3 rows of quarry-road
`);
    const dry = home(gate('improvement'));
    beside(dry, 'oak-lane', gate('improvement', 'improvement', 'improvement', 'improvement', 'repair'));
    expect((await imported(dry, bank(dry, list), { dryRun: true })).said).toContain(
      '→  Gate Supply, improvement, as in 1 of 1 row of this house, 4 of 5 of oak-lane\n',
    );
  });

  it.each([
    ['four of five rows', ['tool', 'tool', 'tool', 'tool', 'repair'], 'tool'],
    ['three of four rows', ['tool', 'tool', 'tool', 'repair'], ''],
  ])('%s', async (_what, buckets, bucket) => {
    const folder = home(gate(...buckets));
    await imported(folder, bank(folder, list));
    expect(rowsOf(folder).filter((row) => row.startsWith('2026-04'))).toEqual([
      `2026-04-18,Gate Supply,GATE SUPPLY 7,1.00,${bucket},,,,`,
      `2026-04-19,Gate Supply,GATE SUPPLY 8,2.00,${bucket},,,,`,
    ]);
  });

  it('of a mixed history may still be proposed where somebody is asked', async () => {
    const folder = home(gate('tool', 'tool', 'repair'));
    const { said } = await imported(folder, bank(folder, list), { paid: 'card' }, ['', '', '', '', 'q']);
    expect(said).toContain('  Bucket [tool]: ');
    expect(rowsOf(folder)).toContain('2026-04-18,Gate Supply,GATE SUPPLY 7,1.00,tool,,card,,');
  });
});

describe('one account in two files', () => {
  const csv = 'Date,Description,Amount\n2026-04-18,GATE  SUPPLY 7,-1.00\n2026-04-19,DOOR AND SON,-2.00\n';

  it('a text that differs in capitals and blanks is the same', async () => {
    const folder = home();
    await imported(folder, bank(folder, csv));
    const cell = (value: string) => ({ value, type: String });
    const book = path.join(folder, '..', 'bank.xlsx');
    const rows = [
      ['Date', 'Description', 'Amount'],
      ['2026-04-18', 'Gate Supply   7', '-1.00'],
      ['2026-04-19', 'Door and Son', '-2.00'],
    ];
    await writeWorkbook(rows.map((cells) => cells.map(cell)) as never).toFile(book);
    const before = read(folder);
    const { said } = await imported(folder, book);
    expect([read(folder), said.includes('2  imported before')]).toEqual([before, true]);
  });

  const other = csv.replace('DOOR AND SON', 'CARD 4471 HINGES').replace('GATE  SUPPLY 7', 'POS GATE SUPPLY');

  it('a text that is another, on the same day with the same cents, is told with --yes', async () => {
    const folder = home();
    await imported(folder, bank(folder, csv));
    const { said } = await imported(folder, bank(folder, other));
    expect(said).toContain('Row 4 is perhaps the same as row 2 (GATE SUPPLY 7): if so, take one out.\n');
    expect(said).toContain('Row 5 is perhaps the same as row 3 (DOOR AND SON): if so, take one out.\n');
    // Both stand in one file: they are two payments.
    const both = home();
    expect(
      (await imported(both, bank(both, csv + other.split('\n').slice(1).join('\n')))).said,
    ).not.toContain('perhaps the same');
    expect(
      (await imported(both, bank(both, csv + other.split('\n').slice(1).join('\n')))).said,
    ).not.toContain('perhaps the same');
  });

  it('and asked where somebody is there; Enter is yes only where the words are alike', async () => {
    const folder = home();
    await imported(folder, bank(folder, csv), { paid: 'card' });
    const { said } = await imported(folder, bank(folder, other), {}, ['', '', 'Hinges', 'tool', '', '']);
    expect(said).toContain('perhaps the same as row 2 of costs.csv: 2026-04-18, GATE SUPPLY 7, ');
    expect(said).toMatch(/perhaps the same as row 3 of costs\.csv: .* The same \[n\]: /);
    expect(rowsOf(folder)).toHaveLength(3);
    expect(said).toContain('  1  in the costs already\n');
  });
});

describe('a folder that can’t be written to', () => {
  it.each([
    ['EROFS', 'that disk can only be read'],
    ['EACCES', 'you may not write there'],
    ['ENOSPC', 'the disk is full'],
  ])('%s', (code, what) => {
    const { message, hints } = importDiskTrouble(
      Object.assign(new Error(code), { code, syscall: 'mkdir' }),
      'my-house',
    );
    expect(message).toBe(
      `the house folder my-house can’t be written to: ${what}. What was there before is as it was`,
    );
    expect(hints.join(' ')).not.toMatch(/--out|build/);
    expect(hints).toHaveLength(1);
  });

  it('is told as such by the command', async () => {
    const folder = home(PAST);
    writeFileSync(path.join(folder, 'imports'), '');
    const { said, status } = await imported(folder, bank(folder, LIST));
    expect([status, read(folder)]).toEqual([1, PAST]);
    expect(said).toContain('can’t be written to: a file stands where the folder imports is needed');
    expect(said).not.toContain('--out');
  });
});

describe('the sheet stays as it was', () => {
  it('in its own columns, delimiter, line ends, mark and manner, every earlier byte kept', async () => {
    const text =
      '\uFEFFAmount;Category;Vendor;Description;Date;Method;Color\r\n$1,200.00;tool;A;b;1/2/2026;card;red\r\n$1.00;tool;Gate;c;3/20/2026;card;\r\n;;;;;;';
    const folder = home(text);
    const { said } = await imported(
      folder,
      bank(folder, 'Date,Description,Amount\n2026-04-08,GATE; INC,-2345.00\n2026-04-09,NEW,-1.00\n'),
      { paid: 'check' },
    );
    expect(read(folder)).toBe(
      `${text}\r\n$2,345.00;;"GATE; INC";"GATE; INC";4/8/2026;check;\r\n$1.00;;NEW;NEW;4/9/2026;check;\r\n`,
    );
    expect(said).toContain('rows 5 and 6');
  });

  it.each([
    ['no bytes', ''],
    ['blank lines', '\n \n\n'],
    ['a blank line that is not ended', '  '],
    ['delimiters alone', ';;;\r\n;;;'],
    ['a line that names a delimiter', 'sep=;\n'],
  ])('of %s: it gets its headings, and rows are told by their numbers', async (_what, text) => {
    const folder = home(text);
    const { said } = await imported(
      folder,
      bank(folder, 'Date,Description,Amount\n2026-04-08,A,-1.00\n2026-04-09,B,-2.00\n'),
      { yes: true },
    );
    expect(read(folder)).toBe(`${NEW_HEAD}2026-04-08,A,A,1.00,,,,,,,\n2026-04-09,B,B,2.00,,,,,,,\n`);
    expect(said).toContain('rows 2 and 3');
  });

  it.each([
    ['no column for the bucket', 'date,payee,what,amount\n2026-01-01,A,b,1.00\n', 'no column headed bucket'],
    ['a quote that is never closed', `${HEAD}2026-01-01,"A,b,1.00,tool,,,,\n`, 'never closed'],
    ['two sheets of costs', HEAD, 'stand in two places'],
  ])('and is left alone with %s', async (name, costs, problem) => {
    const folder = home(costs);
    if (name.startsWith('two')) {
      const cells = HEAD.trim()
        .split(',')
        .map((value) => ({ value, type: String }));
      await writeWorkbook([cells] as never).toFile(path.join(folder, 'costs.xlsx'));
    }
    const { said, status } = await imported(folder, bank(folder, LIST));
    expect([status, read(folder), existsSync(path.join(folder, 'imports'))]).toEqual([1, costs, false]);
    expect(said).toContain(problem);
  });

  it('a workbook of costs is not written into: rows to paste lie beside it, in its columns', async () => {
    const folder = home();
    const head = ['Date', 'Payee', 'What', 'Bucket', 'Amount'];
    const cell = (value: string) => ({ value, type: String });
    await writeWorkbook([
      head.map(cell),
      ['2026-04-03', 'Gate', 'plank', 'improvement', '472.14'].map(cell),
    ] as never).toFile(path.join(folder, 'costs.xlsx'));
    const before = readFileSync(path.join(folder, 'costs.xlsx'));
    const file = bank(folder, 'Date,Description,Amount\n2026-04-04,GATE,-472.14\n2026-05-04,GATE,-4.00\n');
    const { said, status } = await imported(folder, file);
    expect(status).toBe(0);
    expect(read(folder, 'imports/new-rows.csv')).toBe(
      'date,payee,what,bucket,amount\n2026-05-04,Gate,GATE,improvement,4.00\n',
    );
    expect(said).toContain('Paste the rows of');
    expect(readFileSync(path.join(folder, 'costs.xlsx')).equals(before)).toBe(true);
    await imported(folder, bank(folder, 'Date,Description,Amount\n2026-06-04,GATE,-5.00\n'));
    expect(rowsOf(folder, 'imports/new-rows.csv')).toHaveLength(2);
  });

  it('rows to paste are not put below headings that somebody has changed', async () => {
    const folder = home();
    const cells = ['Date', 'Payee', 'What', 'Bucket', 'Amount'].map((value) => ({ value, type: String }));
    await writeWorkbook([cells] as never).toFile(path.join(folder, 'costs.xlsx'));
    mkdirSync(path.join(folder, 'imports'));
    writeFileSync(path.join(folder, 'imports/new-rows.csv'), 'date,who\n');
    const { said, status } = await imported(folder, bank(folder, LIST));
    expect([
      status,
      read(folder, 'imports/new-rows.csv'),
      existsSync(path.join(folder, 'imports/seen.csv')),
    ]).toEqual([1, 'date,who\n', false]);
    expect(said).toContain('imports/new-rows.csv:1');
  });

  it('two imports of one file at once are one', async () => {
    const folder = home(PAST);
    const file = bank(folder, LIST);
    const both = await Promise.all([imported(folder, file), imported(folder, file)]);
    expect(both.map(({ status }) => status)).toEqual([0, 0]);
    expect([rowsOf(folder).length, rowsOf(folder, 'imports/seen.csv').length]).toEqual([8, 6]);
  });

  it('nothing is written through a link that leads out', async () => {
    const folder = home();
    const outside = path.join(folder, '..', 'outside.csv');
    writeFileSync(outside, PAST);
    symlinkSync(outside, path.join(folder, 'costs.csv'));
    const { status } = await imported(folder, bank(folder, LIST));
    expect([status, readFileSync(outside, 'utf8')]).toEqual([1, PAST]);
  });

  it('files of imports/ are no facts', async () => {
    const folder = home(PAST);
    const before = await readFacts(folder, folder);
    await imported(folder, bank(folder, LIST));
    const after = await readFacts(folder, folder);
    expect('spec' in before && 'spec' in after && [after.spec, after.diagnostics]).toEqual(
      'spec' in before && [before.spec, before.diagnostics],
    );
  });
});

describe('bad input', () => {
  it.each([
    ['no headings', '', 'column 3'],
    ['headings in another language', 'Tag;Text;Summe\n', 'Summe'],
    ['headings', 'Date;Description;Amount\n', 'Amount'],
  ])('in the manner of Europe, with %s: row, column, cell and what to type', async (_what, head, amount) => {
    const folder = home(PAST);
    const file = bank(folder, `${head}13.05.2026;Gate Supply;-1.234,50\n14.05.2026;Door;-2,00\n`);
    const line = head === '' ? 1 : 2;
    for (const columns of [undefined, 'date=1,payee=2,amount=3']) {
      const { said, status } = await imported(folder, file, { yes: true, ...(columns && { columns }) });
      expect([status, read(folder), existsSync(path.join(folder, 'imports'))]).toEqual([1, PAST, false]);
      expect(said).toContain(`bank.csv:${line}:1\n`);
      expect(said).toContain(`bank.csv:${line}:24\n`);
      expect(said).toContain('do: write 2026-05-13 for “13 May 2026”\n');
      expect(said).toContain(`${amount}: the comma or point in -1.234,50 is not where dollars have one`);
      expect(said).toContain('do: write -1,234.50\n');
    }
  });

  it('is all named, and nothing of the file is taken', async () => {
    const folder = home(PAST);
    const file = bank(
      folder,
      'Date,Description,Amount\n2026-04-01,A,-1.00\n2026-04-31,B,-1.00\n2026-04-02,C,"1.234,50"\n2026-04-02,D,-1,00\n',
    );
    const { said, status } = await imported(folder, file);
    expect([status, read(folder), existsSync(path.join(folder, 'imports'))]).toEqual([1, PAST, false]);
    for (const place of [':3:1', ':4:14', ':5:']) expect(said).toContain(`bank.csv${place}`);
    expect(said).toContain('do: write 1,234.50');
  });

  it('a list of imports that can’t be read stops it', async () => {
    const folder = home(PAST);
    mkdirSync(path.join(folder, 'imports'));
    writeFileSync(path.join(folder, 'imports/seen.csv'), 'date,amount\n2026-01-01,1\n');
    const { said, status } = await imported(folder, bank(folder, LIST));
    expect([status, read(folder), said.includes('no column headed text')]).toEqual([1, PAST, true]);
  });

  it('no file, no house, several houses', async () => {
    const folder = home(PAST);
    expect((await imported(folder, 'nowhere.csv')).said).toContain('there is no file nowhere.csv');
    expect((await imported(path.join(folder, '..', 'oak-lane'), bank(folder, LIST))).said).toContain(
      'intake.no-folder',
    );
    const beside = path.join(folder, '..', 'oak-lane');
    mkdirSync(beside);
    writeFileSync(path.join(beside, 'house.yaml'), HOUSE);
    const terminal = {
      out: () => undefined,
      error: (text: string) => {
        said += text;
      },
      colour: false,
      progress: quietProgress,
    };
    let said = '';
    const status = await costsImportCommand(
      'bank.csv',
      undefined,
      { content: path.join(folder, '..') },
      terminal,
    );
    expect([status, said.includes('rows go into one house, and 2 are meant here')]).toEqual([2, true]);
  });
});

describe('a kill between two files', () => {
  const one = 'Date,Description,Amount\n2026-04-18,GATE,-1.00\n2026-04-18,GATE,-1.00\n';
  const seen = [1, 2].map((nth) => ({
    date: '2026-04-18',
    cents: 100,
    text: 'GATE',
    reference: '',
    nth,
    became: 'added',
    payee: '',
  }));
  const row = '2026-04-18,GATE,GATE,1.00,,,,,\n';
  const killed = async (folder: string, was: string) => {
    mkdirSync(path.join(folder, 'imports'), { recursive: true });
    const addition = {
      sheet: 'costs.csv',
      was: Buffer.from(was),
      next: Buffer.from(was + row + row),
      added: row + row,
      seen,
    };
    await expect(
      addRows(folder, addition, () => {
        throw new Error('killed');
      }),
    ).rejects.toThrow('killed');
  };

  it('after the costs: no row comes twice, also where somebody wrote on since', async () => {
    for (const more of ['', '2026-05-01,B,b,2.00,tool,,,,\n']) {
      const folder = home(PAST);
      await killed(folder, PAST);
      expect(existsSync(path.join(folder, 'imports/seen.csv'))).toBe(false);
      writeFileSync(path.join(folder, 'costs.csv'), read(folder) + more);
      const { said } = await imported(folder, bank(folder, one));
      expect(said).toContain('2  imported before');
      expect(read(folder)).toBe(PAST + row + row + more);
      // The list is whole again, and the note gone.
      expect([rowsOf(folder, 'imports/seen.csv').length, await leftOver(folder)]).toEqual([2, undefined]);
    }
  });

  it('before the costs: no row is lost', async () => {
    // The same rows stand there already, from another month’s import.
    for (const was of [PAST, PAST + row + row]) {
      const folder = home(was);
      await killed(folder, was);
      writeFileSync(path.join(folder, 'costs.csv'), was);
      expect(await leftOver(folder)).toBeUndefined();
      await imported(folder, bank(folder, one.replaceAll('04-18', '04-28')));
      expect(rowsOf(folder)).toHaveLength(was.split('\n').length - 2 + 2);
    }
  });

  it('what it was making is taken out by the next import; what a running program makes stays', async () => {
    const folder = home(PAST);
    const { pid: dead } = spawnSync(process.execPath, ['-e', '']);
    mkdirSync(path.join(folder, 'imports'));
    const names = (pid: number): string[] => [
      `.sillplate-writing-costs.csv-${pid}`,
      `imports/.sillplate-writing-seen.csv-${pid}`,
      `imports/.sillplate-writing-.unfinished.json-${pid}`,
      `imports/.sillplate-lock-import.${pid}`,
    ];
    const others = [...names(process.ppid), '.sillplate-writing-mine', 'costs.csv-1'];
    for (const name of [...names(dead), ...others]) writeFileSync(path.join(folder, name), '');
    await imported(folder, bank(folder, one));
    for (const name of names(dead)) expect(existsSync(path.join(folder, name)), name).toBe(false);
    for (const name of others) expect(existsSync(path.join(folder, name)), name).toBe(true);
  });

  it('a note that is none of ours says nothing', async () => {
    const folder = home(PAST);
    mkdirSync(path.join(folder, 'imports'));
    for (const note of ['', '{', '[]', '{"sheet":1}', 'null']) {
      writeFileSync(path.join(folder, 'imports/.unfinished.json'), note);
      expect(await leftOver(folder), note).toBeUndefined();
    }
  });
});

describe('whatever the bank’s list holds', () => {
  const entry = fc.record({
    day: fc.integer({ min: 1, max: 6 }),
    cents: fc.constantFrom(450, 451, 47214, -5902, 100, -1),
    text: fc.constantFrom(
      'COFFEE',
      'TOLLGATE BUILDING SUPPLY #1',
      'TOLLGATE BUILDING SUPPLY #2',
      'CHECK',
      'MILL, "BEND"',
      '=x',
      "'=x",
      "''+x",
    ),
  });
  type Entry = typeof entry extends fc.Arbitrary<infer T> ? T : never;
  const line = ({ day, cents, text }: Entry): string => {
    const all = String(Math.abs(cents)).padStart(3, '0');
    return `2026-04-0${day},"${text.replaceAll('"', '""')}",${cents < 0 ? '' : '-'}${all.slice(0, -2)}.${all.slice(-2)}\n`;
  };
  const list = (entries: readonly Entry[]): string =>
    `Date,Description,Amount\n${entries.map(line).join('')}`;
  const yes = { paidIs: 'negative' as const, yes: true };
  const resultOf = async (...lists: readonly (readonly Entry[])[]) => {
    const folder = home(PAST);
    for (const one of lists) if (one.length > 0) await imported(folder, bank(folder, list(one)), yes);
    const seen = existsSync(path.join(folder, 'imports/seen.csv')) ? rowsOf(folder, 'imports/seen.csv') : [];
    const costs = rowsOf(folder);
    const text = read(folder);
    rmSync(path.dirname(folder), { recursive: true });
    return { costs, seen, text };
  };

  it('twice is once, two overlapping halves are the whole, and the order does not matter', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(entry, { maxLength: 14 }).chain((entries) => {
          const sorted = [...entries].sort((a, b) => a.day - b.day);
          return fc.record({
            entries: fc.constant(sorted),
            shuffled: fc.shuffledSubarray(sorted, { minLength: sorted.length, maxLength: sorted.length }),
            from: fc.integer({ min: 1, max: 6 }),
            to: fc.integer({ min: 1, max: 6 }),
          });
        }),
        async ({ entries, shuffled, from, to }) => {
          const whole = await resultOf(entries);
          expect(whole.seen).toHaveLength(entries.length);
          expect((await resultOf(entries, entries)).text).toBe(whole.text);
          expect((await resultOf(shuffled)).text).toBe(whole.text);
          // A bank's export holds whole days.
          const [first, last] = [Math.min(from, to), Math.max(from, to)];
          const halves = await resultOf(
            entries.filter(({ day }) => day <= last),
            entries.filter(({ day }) => day >= first),
          );
          expect([halves.costs, halves.seen]).toEqual([whole.costs, whole.seen]);
        },
      ),
      { numRuns: 25, seed: 2_607 },
    );
  });

  it('every cent of it is in the costs, in the costs already, or left out by name', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(entry, { minLength: 1, maxLength: 20 }), async (entries) => {
        const folder = home();
        const { said } = await imported(folder, bank(folder, list(entries)), yes);
        const cents = (text: string): number => Number(text.replace('.', ''));
        const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
        const seen = rowsOf(folder, 'imports/seen.csv').map((row) => ({
          row,
          cents: cents(/,(-?\d+\.\d\d),/.exec(row)?.[1] ?? ''),
        }));
        expect(sum(seen.map((one) => one.cents))).toBe(sum(entries.map((one) => one.cents)));
        const costs = existsSync(path.join(folder, 'costs.csv')) ? rowsOf(folder) : [];
        const left = seen.filter(({ row }) => row.includes(',left-out,'));
        expect(sum(costs.map((row) => cents(/,(-?\d+\.\d\d),/.exec(row)?.[1] ?? '')))).toBe(
          sum(seen.map((one) => one.cents)) - sum(left.map((one) => one.cents)),
        );
        expect(said).toContain(`: ${entries.length} row`);
        rmSync(path.dirname(folder), { recursive: true });
      }),
      { numRuns: 20, seed: 2_607 },
    );
  });
});
