/** Taxpayer numbers are found, said without being repeated, and covered where a line is shown. */
import { describe, expect, it } from 'vitest';
import { printReport } from '../../src/diagnostics/report.js';
import {
  coverTaxpayerNumbers,
  findTaxpayerNumbers,
  taxpayerNumberIn,
} from '../../src/facts/taxpayer-number.js';
import { costs, ledgerFrom } from './ledger-from.js';

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

  it('covers sign for sign', () => {
    expect(coverTaxpayerNumbers('a 123-45-6789, b 12-3456789.')).toBe('a •••-••-••••, b ••-•••••••.');
    expect(coverTaxpayerNumbers('EIN 123456789')).toBe('EIN •••••••••');
    expect(coverTaxpayerNumbers('2026-03-01, 555-123-4567')).toBe('2026-03-01, 555-123-4567');
    expect(coverTaxpayerNumbers('order 123456789')).toBe('order 123456789');
  });
});
