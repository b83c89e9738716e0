/**
 * Whole numbers of tenths, hundredths or thousandths as decimals. Nothing is divided, so nothing is rounded.
 * Money that people read has a printer of its own, in `money.ts`.
 */
import { groupThousands } from './written-number.js';

/** How many digits stand behind the point. */
export type Places = 1 | 2 | 3;

/** For people, without needless zeros: 1234500 thousandths → `1,234.5`, -25 hundredths → `−0.25`. */
export function printDecimal(whole: number, places: Places): string {
  const [units, rest] = withoutZeros(plainDecimal(Math.abs(whole), places)).split('.');
  return `${whole < 0 ? '−' : ''}${groupThousands(Number(units))}${rest === undefined ? '' : `.${rest}`}`;
}

/**
 * For programs, and for what is typed into a file: a hyphen for a minus, nothing between thousands, and every place:
 * -5902 hundredths → `-59.02`.
 */
export function plainDecimal(whole: number, places: Places): string {
  const unit = 10 ** places;
  const all = Math.abs(whole);
  const rest = all % unit;
  // Written once or twice for each of many thousands of rows: no padding by the text's own means, which is slow.
  const zeros = rest * 10 >= unit || places === 1 ? '' : places === 3 && rest < 10 ? '00' : '0';
  return `${whole < 0 ? '-' : ''}${(all - rest) / unit}.${zeros}${rest}`;
}

/** A decimal without the zeros at its end: `9.50` → `9.5`, `18.000` → `18`. */
export const withoutZeros = (decimal: string): string => decimal.replace(/\.?0+$/, '');
