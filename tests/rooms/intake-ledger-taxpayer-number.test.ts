/** Taxpayer numbers are found, said without being repeated, and covered where a line is shown. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { locate, printReport } from '../../src/diagnostics/report.js';
import {
  coverTaxpayerNumbers,
  findTaxpayerNumbers,
  taxpayerNumberIn,
} from '../../src/facts/taxpayer-number.js';
import { readHouse } from '../../src/intake/read-house.js';
import { costs, ledgerFrom } from './ledger-from.js';

const NUMBER = /123-?45-?6789|12-3456789/;

describe('a text of a cost sheet', () => {
  it.each([
    'Ridge Plumbing 123-45-6789',
    '912-70-6789',
    '123–45–6789',
    '12-3456789',
    'EIN 12-3456789',
    'ein: 123456789',
    'W-9 says 123 45 6789',
    'taxpayer no. 123456789',
  ])('%s holds one', (text) => {
    expect(taxpayerNumberIn(text)).toMatch(/^ends in \d{4}$/);
  });

  it.each([
    '',
    'paint',
    '2026-02-17 to 2026-03-01',
    'order 123456789',
    'parcel 45-123-45-6789',
    '123-45-67890',
    '1123-45-6789',
    '112-3456789',
    'phone 555-123-4567',
    'property tax, parcel 123456789',
    'protein 123456789',
  ])('%s holds none', (text) => {
    expect(taxpayerNumberIn(text)).toBeUndefined();
  });
});

describe('the facts', () => {
  const found = (spec: unknown): string[] =>
    findTaxpayerNumbers(spec).map(({ path }) => JSON.stringify(path));

  it('are walked to the last text, with its path', () => {
    expect(
      found({
        people: [{ name: 'A' }, { name: 'B', note: 'his number: 123-45-6789' }],
        answers: [{ ask: 'x', answer: { value: '123-45-6789' } }],
      }),
    ).toEqual(['["people",1,"note"]', '["answers",0,"answer","value"]']);
  });

  it('let parcels, serials, models and permits have numbers of such a form', () => {
    const number = '123-45-6789';
    expect(
      found({
        record: { parcel: number },
        systems: [{ serial: number, model: { value: number }, label: number }],
        permits: [{ number }],
        people: [{ licence: number, license: number }],
      }),
    ).toEqual([]);
  });

  it('take ##-####### for one only beside words that say so, or under money:', () => {
    const number = '12-3456789';
    expect(found({ permits: [{ what: number }] })).toEqual([]);
    expect(found({ permits: [{ what: `tax ${number}` }] })).toHaveLength(1);
    expect(found({ people: [{ ein: number }] })).toHaveLength(1);
    expect(found({ money: { payees: [{ name: number }] } })).toHaveLength(1);
  });

  it('take nine digits for one only under or beside a word that names it, also as a number', () => {
    expect(
      found({ people: [{ phone: '123456789' }], money: { payees: [{ name: 'job 123456789' }] } }),
    ).toEqual([]);
    expect(found({ people: [{ tin: 123_456_789 }, { note: 'SSN 123456789' }] })).toHaveLength(2);
  });
});

describe('what is said', () => {
  it('never repeats the number, in no format and not in the line that is shown', async () => {
    const { located, ledger } = await ledgerFrom(
      costs(
        '2026-03-01,Ridge 123-45-6789,paint,12.00,repair,,,,,,',
        '2026-03-01,Ridge,paint,x12.00,repair,,,,,,EIN 12-3456780',
      ),
    );
    expect(located.map(({ diagnostic }) => diagnostic.code).sort()).toEqual([
      'facts.taxpayer-number',
      'facts.taxpayer-number',
      'intake.cell',
    ]);
    expect(ledger.costs).toEqual([]);
    for (const format of ['text', 'json', 'github'] as const) {
      const report = printReport(located, format, false);
      expect(report).toContain('ends in 6789');
      expect(report).toContain('ends in 6780');
      expect(report).not.toMatch(/123-45-6789|12-3456780/);
      expect(report).toContain('taxpayer-form: on-file');
    }
  });

  it.each([
    ['date', '123-45-6789,Ridge,paint,12.00,repair,,,,,,'],
    ['amount', '2026-03-01,Ridge,paint,12-3456789,repair,,,,,,'],
    ['bucket', '2026-03-01,Ridge,paint,12.00,EIN 123456789,,,,,,'],
    ['place', '2026-03-01,Ridge,paint,12.00,repair,123-45-6789,,,,,'],
    ['paid', '2026-03-01,Ridge,paint,12.00,repair,,12-3456789,,,,'],
    ['receipt', '2026-03-01,Ridge,paint,12.00,repair,,,123-45-6789,,,'],
    ['tax year', '2026-03-01,Ridge,paint,12.00,repair,,,,123-45-6789,,'],
    ['sales tax', '2026-03-01,Ridge,paint,12.00,repair,,,,,12-3456789,'],
  ])('never repeats one that stands under %s', async (_column, row) => {
    const { located, ledger } = await ledgerFrom(costs(row));
    expect(located.map(({ diagnostic }) => diagnostic.code)).toEqual(['facts.taxpayer-number']);
    expect(ledger.costs).toEqual([]);
    for (const format of ['text', 'json', 'github'] as const)
      expect(printReport(located, format, false)).not.toMatch(NUMBER);
  });

  it.each(['EIN 12-3456789', 'payee 123-45-6789', 'W-9 123456789'])(
    'never repeats the heading %s',
    async (heading) => {
      const { located } = await ledgerFrom({
        'costs.csv': `date,payee,what,amount,bucket,${heading}\n2026-03-01,Ridge,paint,12.00,repair,x\n`,
      });
      expect(located.map(({ diagnostic }) => diagnostic.code)).toEqual(['facts.taxpayer-number']);
      expect(located[0]?.place).toMatchObject({ line: 1, column: 31 });
      for (const format of ['text', 'json', 'github'] as const)
        expect(printReport(located, format, false)).not.toMatch(NUMBER);
    },
  );

  it.each([
    [
      'a word that knows a few answers',
      'money: { payees: [{ name: Ridge, taxpayer-form: 123456789 }] }\n',
      1,
    ],
    ['a date', 'money: { sale: { date: 123-45-6789 } }\n', 1],
    ['a place where no such number is looked for', 'permits: [{ what: new roof, date: 12-3456789 }]\n', 0],
    ['a line that is no YAML', 'people: [{ name: Ridge, note: "123-45-6789 }]\n', 0],
  ])('never repeats one of house.yaml: %s', async (_what, text, numbers) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-number-'));
    try {
      writeFileSync(path.join(folder, 'house.yaml'), `house: { address: 1 Mill Lane }\n${text}`);
      const { diagnostics, places } = await readHouse(folder, 'house');
      expect(diagnostics.length).toBeGreaterThan(0);
      expect(diagnostics.filter(({ code }) => code === 'facts.taxpayer-number')).toHaveLength(numbers);
      for (const format of ['text', 'json', 'github'] as const)
        expect(printReport(locate(diagnostics, places), format, false)).not.toMatch(NUMBER);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('covers sign for sign', () => {
    expect(coverTaxpayerNumbers('a 123-45-6789, b 12-3456789.')).toBe('a •••-••-••••, b ••-•••••••.');
    expect(coverTaxpayerNumbers('EIN 123456789')).toBe('EIN •••••••••');
    expect(coverTaxpayerNumbers('2026-03-01, 555-123-4567')).toBe('2026-03-01, 555-123-4567');
    expect(coverTaxpayerNumbers('order 123456789')).toBe('order 123456789');
  });
});
