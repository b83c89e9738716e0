import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Places, plainDecimal, printDecimal, withoutZeros } from '../../src/facts/print-decimal.js';

const places = fc.constantFrom<Places>(1, 2, 3);

describe('a decimal', () => {
  it.each<[number, Places, plain: string, printed: string]>([
    [0, 1, '0.0', '0'],
    [0, 2, '0.00', '0'],
    [0, 3, '0.000', '0'],
    [725, 1, '72.5', '72.5'],
    [-5902, 2, '-59.02', '−59.02'],
    [950, 2, '9.50', '9.5'],
    [-5, 2, '-0.05', '−0.05'],
    [7, 3, '0.007', '0.007'],
    [40, 3, '0.040', '0.04'],
    [1_234_500, 3, '1234.500', '1,234.5'],
    [80_000, 2, '800.00', '800'],
    [100_000_000, 2, '1000000.00', '1,000,000'],
  ])('%d with %d places', (whole, many, plain, printed) => {
    expect(plainDecimal(whole, many)).toBe(plain);
    expect(printDecimal(whole, many)).toBe(printed);
  });

  it('has every digit of the whole number, up to the largest that is exact', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), places, (whole, many) => {
        const plain = plainDecimal(whole, many);
        expect(plain.split('.')[1]).toHaveLength(many);
        expect(BigInt(plain.replace('.', ''))).toBe(BigInt(whole));
        expect(printDecimal(whole, many).replaceAll(',', '').replace('−', '-')).toBe(withoutZeros(plain));
      }),
      { seed: 1905, numRuns: 500 },
    );
  });
});
