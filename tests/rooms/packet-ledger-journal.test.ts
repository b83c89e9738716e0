/** The journal as text; what two accounting programs make of it is asked in `outside/journal-hledger`. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { journalText } from '../../src/packet/ledger-journal.js';
import { houseFrom } from './house-from.js';
import { costRow, costRows, nastyRows, saleOf } from './made-ledger.js';

const AS_OF = '2026-11-20';
const house = houseFrom();
const journal = (rows: ReturnType<typeof nastyRows>): string =>
  journalText('test-house', house, rows, undefined);
const withoutHead = (text: string): string => text.replace(/^(?:;.*\n)+\n/, '');

describe('the journal', () => {
  it('has a row as one transaction, with its tags', () => {
    const row = costRow({ place: 'kitchen', salesTax: 75, taxYear: 2027, paid: undefined });
    expect(withoutHead(journal([row]))).toBe(
      [
        '2026-02-17 (row-2) Seller | price of the house',
        '    ; receipt: closing-statement',
        '    ; for: kitchen',
        '    ; sales-tax: 0.75 USD',
        '    ; tax-year: 2027',
        '    house:purchase                         148000.00 USD',
        '    paid:not-told                         -148000.00 USD',
        '',
      ].join('\n'),
    );
  });

  it('says first what it is and how it is read', () => {
    const head = /^(?:;.*\n)+/.exec(journal([]))?.[0] ?? '';
    expect(head.split('\n').length).toBeGreaterThan(4);
    expect(head).toContain('Test House (test-house)');
    expect(head).toContain('hledger -f test-house.journal balance house');
  });

  it('goes by date, then by row, and has the sale behind the rows of its day', () => {
    const sold = houseFrom({ money: { sale: { closed: '2026-03', price: '200,000' } } });
    const rows = [
      costRow({ row: 2, date: '2026-04-01' }),
      costRow({ row: 3, date: '2026-03-31' }),
      costRow({ row: 4, date: '2026-01-05' }),
      costRow({ row: 5, date: '2026-03-31' }),
    ];
    const text = journalText('test-house', sold, rows, saleOf(sold, AS_OF));
    expect(text.match(/^\d{4}-\d\d-\d\d \([^)]*\)/gm)).toEqual([
      '2026-01-05 (row-4)',
      '2026-03-31 (row-3)',
      '2026-03-31 (row-5)',
      '2026-03-31 (sale)',
      '2026-04-01 (row-2)',
    ]);
    expect(text).toContain('    ; closed: 2026-03\n    sale:price ');
    expect(journalText('test-house', sold, rows, saleOf(sold, '2026-03-30'))).not.toContain('(sale)');
  });

  it('has nothing but its own lines, whatever the texts say', () => {
    const line =
      /^(?:;.*|\d{4}-\d\d-\d\d \(row-\d+\) [^;|\p{Cc}]+ \| [^;|\p{Cc}]+| {4}; (?:receipt|for|sales-tax|tax-year): [^;\p{Cc}]+| {4}[a-z:-]+ {2,}-?\d+\.\d\d USD|)$/u;
    const check = (rows: ReturnType<typeof nastyRows>): void => {
      const lines = journal(rows).split('\n');
      for (const one of lines) expect(one).toMatch(line);
      expect(lines.filter((one) => /^\d/.test(one)).length).toBe(rows.length);
      expect(lines.filter((one) => /^ {4}[a-z]/.test(one)).length).toBe(2 * rows.length);
      // Two blanks would end a payee.
      for (const one of lines.filter((each) => /^\d/.test(each))) expect(one).not.toMatch(/ {2}|\t/);
    };
    check(nastyRows());
    fc.assert(fc.property(costRows(30), check), { numRuns: 200, seed: 2_604 });
  });

  it('keeps a text that means nothing in it', () => {
    expect(journal([costRow({ payee: 'Zahnbürste & Söhne, “1½″”', what: '🔧 £ 3 @ 2' })])).toContain(
      ') Zahnbürste & Söhne, “1½″” | 🔧 £ 3 @ 2\n',
    );
    expect(journal([costRow({ payee: ';;', what: '*' })])).toContain(') ,, | not told\n');
  });
});
