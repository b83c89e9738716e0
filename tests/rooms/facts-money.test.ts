import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printMoney, readMoney } from '../../src/facts/money.js';

describe('readMoney', () => {
  it.each([
    ['$1,234.50', 123_450],
    ['1234.50', 123_450],
    ['1234.5', 123_450],
    ['$ 12', 1200],
    ['.50', 50],
    ['0.07', 7],
    ['1,000,000', 100_000_000],
    ['(12.00)', -1200],
    ['($1,200)', -120_000],
    ['-12.00', -1200],
    ['−$12.00', -1200],
    ['$-12.00', -1200],
    ['(0.00)', 0],
    [1234.5, 123_450],
    [-12, -1200],
    [0.1, 10],
    [0, 0],
    [-0, 0],
  ])('reads %s', (text, cents) => {
    expect(readMoney(text)).toStrictEqual({ ok: true, value: cents });
  });

  it.each([
    ['12.345', '12.345 has a part of a cent'],
    [0.1 + 0.2, '0.30000000000000004 has a part of a cent'],
    ['1.234,50', 'the comma or point in 1.234,50 is not where dollars have one'],
    ['12,50', 'the comma or point in 12,50 is not where dollars have one'],
    ['1234,500', 'the comma or point in 1234,500 is not where dollars have one'],
    ['12.', 'the comma or point in 12. is not where dollars have one'],
    ['€12', 'the amount is not in dollars'],
    ['12 CAD', 'the amount is not in dollars'],
    ['about 12', '“about 12” is no amount of money'],
    ['12k', '“12k” is no amount of money'],
    ['--12', '“--12” is no amount of money'],
    ['(-12)', '“(-12)” is no amount of money'],
    ['$', '“$” is no amount of money'],
    ['()', '“()” is no amount of money'],
    ['-', '“-” is no amount of money'],
    [Number.NaN, '“NaN” is no amount of money'],
    [1e21, '“1e+21” is no amount of money'],
    ['1,000,000,000', 'an amount of a billion dollars or more is no cost of a house'],
    ['', 'there is no amount'],
  ])('refuses %s', (text, problem) => {
    expect(readMoney(text)).toMatchObject({ ok: false, problem });
  });
});

describe('printMoney', () => {
  it.each([
    [123_450, '$1,234.50'],
    [-1200, '−$12.00'],
    [7, '$0.07'],
    [0, '$0.00'],
    [100_000_000, '$1,000,000.00'],
  ])('prints %s cents as %s', (cents, printed) => {
    expect(printMoney(cents)).toBe(printed);
  });

  it('is read again as the same cents', () => {
    fc.assert(
      fc.property(fc.integer({ min: -99_999_999_999, max: 99_999_999_999 }), (cents) => {
        expect(readMoney(printMoney(cents))).toEqual({ ok: true, value: cents });
      }),
      { seed: 13, numRuns: 500 },
    );
  });

  it('throws on parts of a cent', () => {
    expect(() => printMoney(0.5)).toThrow(RangeError);
  });
});
