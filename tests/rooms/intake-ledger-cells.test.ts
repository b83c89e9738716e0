/** Cells of the sheets: what each may hold, and what is said of what it may not. */
import { describe, expect, it } from 'vitest';
import { BUCKET_NAMES, BUCKETS } from '../../src/facts/bucket.js';
import { costs, hours, ledgerFrom, miles } from './ledger-from.js';

/** One cost row with one cell changed. */
const row = (change: Partial<Record<string, string>>): string => {
  const cells: Record<string, string> = {
    date: '2026-03-01',
    payee: 'Tollgate Building Supply',
    what: 'paint',
    amount: '107.25',
    bucket: 'repair',
    place: 'kitchen',
    paid: 'card',
    receipt: 'receipt-031',
    'tax year': '',
    'sales tax': '',
    note: '',
  };
  return Object.entries({ ...cells, ...change })
    .map(([, cell]) => `"${(cell ?? '').replaceAll('"', '""')}"`)
    .join(',');
};
const cost = async (change: Partial<Record<string, string>>) => {
  const { ledger, said, hints } = await ledgerFrom(costs(row(change)));
  return { cost: ledger.costs[0], said, hints };
};

describe('a cost row', () => {
  it('is read whole', async () => {
    const { cost: read, said } = await cost({
      'tax year': '2025',
      'sales tax': '7.25',
      note: 'two\r\nlines',
    });
    expect(said).toEqual([]);
    expect(read).toEqual({
      row: 2,
      date: '2026-03-01',
      payee: 'Tollgate Building Supply',
      what: 'paint',
      cents: 10725,
      salesTax: 725,
      bucket: 'repair',
      place: 'kitchen',
      paid: 'card',
      receipt: 'receipt-031',
      taxYear: 2025,
      note: 'two\nlines',
    });
  });

  it('needs neither place, payment, receipt, year, tax nor note', async () => {
    const { cost: read, said } = await cost({ place: '', paid: '', receipt: '' });
    expect(said).toEqual([]);
    expect(read).toMatchObject({ place: undefined, paid: undefined, receipt: undefined, note: undefined });
  });

  it.each([
    ['$1,234.50', 123450],
    ['1234.5', 123450],
    ['(12.00)', -1200],
    ['-12', -1200],
    ['−$12.00', -1200],
    ['0', 0],
  ])('amount %s', async (amount, cents) => {
    expect((await cost({ amount })).cost?.cents).toBe(cents);
  });

  it.each([
    ['312,40', 'write 312.40'],
    ['1.234,50', 'write 1,234.50'],
    ['-1 234,5', 'write -1,234.50'],
    ['12.00-', 'write -12.00'],
    ['12.345', 'write at most two decimals, for example 12.34, or 12,345.00 if thousands were meant'],
    ['0.125', 'write at most two decimals, for example 12.34'],
    ['1e3', 'write dollars and cents, for example 1,234.50'],
    ['', 'write dollars and cents, for example 1,234.50'],
    ['€12', 'write dollars and cents, for example 1,234.50'],
  ])('amount %s is refused with what to type', async (amount, hint) => {
    const { cost: read, said, hints } = await cost({ amount });
    expect(read).toBeUndefined();
    expect(said).toEqual([expect.stringMatching(/^error intake\.cell house\/costs\.csv:2:\d+ /)]);
    expect(hints[0]).toBe(hint);
  });

  it('knows every bucket by its word and its title, however it is spaced', async () => {
    for (const bucket of BUCKET_NAMES)
      for (const written of [
        bucket,
        bucket.toUpperCase(),
        bucket.replaceAll('-', ' '),
        ` ${bucket.replaceAll('-', '_')} `,
        BUCKETS[bucket].title,
      ])
        expect((await cost({ bucket: written })).cost?.bucket, written).toBe(bucket);
  });

  it.each([
    ['repairs', 'repair'],
    ['Mortgage interest', 'interest'],
    ['HOA dues', 'dues'],
    ['tools', 'tool'],
  ])('bucket %s', async (bucket, expected) => {
    expect((await cost({ bucket })).cost?.bucket).toBe(expected);
  });

  it.each([
    ['repiar', 'is no bucket', 'perhaps  repair'],
    ['', 'has no bucket', 'the program never decides it'],
    ['taxes', 'more than one bucket', 'write property-tax for'],
    ['closing costs', 'more than one bucket', 'write purchase-closing-in-basis'],
    ['materials', 'more than one bucket', 'improvement, repair or restoration'],
  ])('bucket %s is refused', async (bucket, problem, hint) => {
    const { cost: read, said, hints } = await cost({ bucket });
    expect(read).toBeUndefined();
    expect(said.join()).toContain(problem);
    expect(hints[0]).toContain(hint);
  });

  it.each([
    ['cheque', 'check'],
    ['Money Order', 'check'],
    ['wire', 'transfer'],
    ['ACH', 'transfer'],
    ['debit card', 'card'],
    ['online payment app', 'network'],
    ['CASH', 'cash'],
  ])('paid %s', async (paid, expected) => {
    expect((await cost({ paid })).cost?.paid).toBe(expected);
  });

  it.each([
    ['paid', 'check 1043', 'write check, and its number in the note'],
    ['paid', 'carrd', 'perhaps  card'],
    ['place', 'kitchn', 'perhaps  kitchen'],
    ['place', 'Kitchen', 'perhaps  kitchen'],
    ['place', 'floor of the hall', 'perhaps  hall-floor'],
    ['place', 'whole house', 'leave the cell empty for the whole house'],
    ['receipt', 'receipt-031.pdf', 'write receipt-031'],
    ['receipt', 'documents/receipt-031.pdf', 'write receipt-031'],
    ['receipt', 'Receipt 031', 'write receipt-031'],
    ['receipt', 'receipt-033', 'perhaps  receipt-031'],
    ['receipt', 'lost', 'leave the cell empty where there is none'],
    ['receipt', 'receipt-031, receipt-032', 'write one row for each receipt, with its own amount'],
    ['receipt', 'receipt-031 receipt-032', 'write one row for each receipt, with its own amount'],
    ['tax year', '26', 'write the year in four digits, for example 2026'],
    ['tax year', '2028', 'leave it empty where it is the year of the date; else check both'],
    ['sales tax', '107.26', 'the amount is what was paid, sales tax included: check both'],
    [
      'sales tax',
      '-1.00',
      'the sales tax is a part of the amount: write both above zero, or both below zero for a refund',
    ],
    ['payee', '', 'write who was paid'],
    ['what', ' ', 'write in a few words what was bought or done'],
    ['note', 'bell \u0007', 'take it out'],
    ['payee', 'x'.repeat(201), 'say it in a few words, and the rest in a note or a paper of its own'],
  ])('%s %s is refused with what to type', async (column, cell, hint) => {
    const { cost: read, said, hints } = await cost({ [column]: cell });
    expect(read).toBeUndefined();
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^error intake\.cell house\/costs\.csv:2:\d+ /);
    expect(hints[0]).toBe(hint);
  });

  it.each(['main', 'garage', 'hall', 'furnace', 'hall-floor'])(
    'place %s: a level, structure, room, system or work item',
    async (place) => {
      expect((await cost({ place })).cost?.place).toBe(place);
    },
  );

  it('keeps words that a spreadsheet would take for a formula', async () => {
    for (const what of ['=SUM(A1:A2)', '+1 gallon', '@home', '-10 % off'])
      expect((await cost({ what })).cost?.what).toBe(what);
  });

  it('a refund’s sales tax is below zero as well', async () => {
    expect((await cost({ amount: '-107.25', 'sales tax': '-7.25' })).cost).toMatchObject({
      cents: -10725,
      salesTax: -725,
    });
  });

  it('says every wrong cell of every row at once, and one cause once', async () => {
    const { located } = await ledgerFrom(
      costs('2026-13-01,,paint,x,repiar,kitchn,,,,,', '2026-03-01,A,paint,1.00,repiar,kitchn,,,,,'),
    );
    expect(
      located.map(({ diagnostic, also }) => [diagnostic.path?.[2], also.map(({ line }) => line)]),
    ).toEqual([
      ['date', []],
      ['payee', []],
      ['amount', []],
      ['bucket', [3]],
      ['place', [3]],
    ]);
  });

  it('a comma that pushes the cells to the right is one mistake, not many', async () => {
    const { said } = await ledgerFrom(
      costs('Mar 4, 2026,A,paint,1.00,repair,,,,,,', '2026-03-01,A,paint,1.00,repair,,,,,,,,'),
    );
    expect(said).toEqual([
      'error intake.sheet house/costs.csv:2:1 this row has more cells than the 11 headings',
    ]);
  });

  it('a row of sums is said to be one', async () => {
    const { said } = await ledgerFrom(costs('2026-03-01,A,paint,1.00,repair,,,,,,', ',,Total,1.00,,,,,,,'));
    expect(said).toEqual(['error intake.sheet house/costs.csv:3:1 this is a row of sums, not of one thing']);
  });
});

describe('a trip', () => {
  it('is read whole, in thousandths of a mile', async () => {
    const { ledger, said } = await ledgerFrom(
      miles('2026-03-01,home,Quarry Road,first look,18.375,$4.50,van,', '2026-03-02,,yard,lumber,7,,,'),
    );
    expect(said).toEqual([]);
    expect(ledger.trips).toEqual([
      {
        row: 2,
        date: '2026-03-01',
        from: 'home',
        to: 'Quarry Road',
        purpose: 'first look',
        thousandths: 18375,
        tolls: 450,
        vehicle: 'van',
      },
      {
        row: 3,
        date: '2026-03-02',
        from: undefined,
        to: 'yard',
        purpose: 'lumber',
        thousandths: 7000,
        tolls: 0,
        vehicle: undefined,
      },
    ]);
  });

  it.each([
    ['0', 'write how far it was, or take the row out'],
    ['0.0004', 'write at most three, for example 18.4'],
    ['2000', 'write one row a trip, each below 2,000 miles'],
    ['-5', 'write miles as a number, for example 18.4'],
    ['18.4 mi', 'write the number alone: 18.4'],
    ['"18,4"', 'write 18.4'],
    ['', 'write miles as a number, for example 18.4'],
  ])('%s miles are refused', async (written, hint) => {
    const { ledger, hints } = await ledgerFrom(miles(`2026-03-01,a,b,c,${written},,,`));
    expect(ledger.trips).toEqual([]);
    expect(hints).toEqual([hint]);
  });
});

describe('hours', () => {
  it.each([
    ['7.5', 750],
    ['.25', 25],
    ['24', 2400],
    ['1:30', 150],
    ['1:20', 133],
    ['0:10', 17],
  ])('%s', async (written, hundredths) => {
    const { ledger, said } = await ledgerFrom(hours(`2026-03-01,Owner,walls,hall,${written},`));
    expect(said).toEqual([]);
    expect(ledger.hours).toEqual([
      { row: 2, date: '2026-03-01', who: 'owner', what: 'walls', place: 'hall', hundredths },
    ]);
  });

  it.each(['0', '24.01', '25:00', '1:75', '1.255', '-1', 'all day', ''])(
    '%s are refused',
    async (written) => {
      const { ledger, said } = await ledgerFrom(hours(`2026-03-01,owner,walls,hall,${written},`));
      expect(ledger.hours).toEqual([]);
      expect(said).toEqual([expect.stringContaining('error intake.cell house/hours.csv:2:')]);
    },
  );
});

describe('day and month', () => {
  const dates = async (...written: string[]) => {
    const { ledger, located } = await ledgerFrom(
      costs(...written.map((date) => `"${date}",A,b,1.00,repair,,,,,,`)),
    );
    return {
      days: ledger.costs.map(({ date }) => date),
      said: located.map(({ diagnostic: { severity, code, path }, also }) => [
        severity,
        code,
        path?.[1],
        ...also.map(({ line }) => line),
      ]),
      hints: located.flatMap(({ diagnostic }) => diagnostic.hints),
    };
  };

  it('nothing is said of days without slashes', async () => {
    expect(await dates('2026-03-04', 'Mar 4, 2026')).toMatchObject({
      days: ['2026-03-04', '2026-03-04'],
      said: [],
    });
  });

  it('a note, once, where a date of the sheet proves that the month comes first', async () => {
    expect(await dates('3/4/2026', '2/17/2026', '02/18/26')).toMatchObject({
      days: ['2026-03-04', '2026-02-17', '2026-02-18'],
      said: [['note', 'intake.day-or-month', 3]],
    });
  });

  it('a warning with every line where none proves it', async () => {
    expect(await dates('3/4/2026', '5/5/2026', '4/5/2026')).toMatchObject({
      days: ['2026-03-04', '2026-05-05', '2026-04-05'],
      said: [['warning', 'intake.day-or-month', 2, 4]],
    });
  });

  it('errors where one can only begin with the day: of it and of all that fit both ways', async () => {
    const { days, said, hints } = await dates('3/4/2026', '17/2/2026', '2/18/2026', '2026-03-01');
    expect(days).toEqual(['2026-02-18', '2026-03-01']);
    expect(said).toEqual([
      ['error', 'intake.day-or-month', 2],
      ['error', 'intake.day-or-month', 3],
    ]);
    expect(hints).toEqual(['write 2026-03-04 or 2026-04-03', 'write 2026-02-17']);
  });
});
