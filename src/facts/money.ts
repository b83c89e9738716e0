/** Money in United States dollars, kept as whole cents. */
import { bad, good, type Read } from './read.js';
import { groupThousands, LONGEST_TEXT } from './written-number.js';

const EXAMPLE = 'write dollars and cents, for example 1,234.50';
/** A billion dollars, in cents: far above any house, and far below where whole numbers stop being exact. */
const LARGEST_CENTS = 100_000_000_000;

/**
 * Reads an amount of dollars into cents: `$1,234.50`, `1234.5`, `1234`; negative as `-12.00`, `−$12.00`, `(12.00)`.
 * A number, as a YAML file gives it, is read as the text it prints as.
 *
 * Refuses a third decimal, misplaced commas, other currencies, and a billion dollars or more.
 */
export function readMoney(text: string | number): Read<number> {
  const written = String(text).trim();
  if (written === '') return bad('there is no amount', EXAMPLE);
  if (written.length > LONGEST_TEXT) return bad('this is too long for an amount', EXAMPLE);
  const { negative, body } = takeSign(written);
  if (/[€£¥]|\b(?:eur|gbp|cad)\b/i.test(body)) return bad('the amount is not in dollars', EXAMPLE);

  const match = /^(\d{1,3}(?:,\d{3})+|\d+)?(?:\.(\d+))?$/.exec(body);
  if (!match || body === '') return unreadable(written, body);
  const [, dollars = '0', places = ''] = match;
  if (places.length > 2)
    return bad(`${written} has a part of a cent`, 'write at most two decimals, for example 12.34');
  const cents = Number(`${dollars.replaceAll(',', '')}${places.padEnd(2, '0')}`);
  if (cents >= LARGEST_CENTS)
    return bad('an amount of a billion dollars or more is no cost of a house', EXAMPLE);
  return good(negative && cents > 0 ? -cents : cents);
}

function takeSign(written: string): { negative: boolean; body: string } {
  const inParentheses = /^\((.*)\)$/s.exec(written)?.[1];
  const signed = inParentheses === undefined ? /^(\$?)\s*[-−]\s*(.*)$/s.exec(written) : null;
  const body = inParentheses ?? (signed ? `${signed[1]}${signed[2]}` : written);
  return {
    negative: inParentheses !== undefined || signed !== null,
    body: body.trim().replace(/^\$\s*/, ''),
  };
}

function unreadable(written: string, body: string): Read<never> {
  if (/^[\d.,]+$/.test(body)) {
    return bad(
      `the comma or point in ${written} is not where dollars have one`,
      'write commas between thousands and a point before cents, for example 1,234.50',
    );
  }
  return bad(`“${written}” is no amount of money`, EXAMPLE);
}

/**
 * Prints cents as dollars: 123450 → `$1,234.50`, -1200 → `−$12.00`.
 *
 * @throws RangeError if `cents` is not a whole number that can be held exactly.
 */
export function printMoney(cents: number): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError(`not a whole number of cents: ${cents}`);
  const all = Math.abs(cents);
  const dollars = groupThousands(Math.floor(all / 100));
  return `${cents < 0 ? '−' : ''}$${dollars}.${String(all % 100).padStart(2, '0')}`;
}
