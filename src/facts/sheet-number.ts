/** Numbers in the cells of a sheet: amounts, miles, hours. Whole cents, thousandths and hundredths; never a binary fraction. */
import { readMoney } from './money.js';
import { bad, good, type Read } from './read.js';
import { groupThousands, LONGEST_TEXT } from './written-number.js';

/** An amount with its comma where the cents begin, as in Europe, or its minus sign behind it, as in books. */
const COMMA_CENTS = /^([-−(]?)\s*\$?\s*(\d{1,3}(?:[.\s'’]\d{3})+|\d+),(\d{1,2})\)?$/;
const MINUS_BEHIND = /^\$?\s*([\d,]*\.?\d{1,2}|[\d,]+)\s*[-−]$/;

/**
 * Reads an amount into cents as `readMoney` does, and where it refuses one that another country or program
 * writes, says exactly what to type: `312,40` asks for 312.40.
 */
export function readSheetAmount(text: string): Read<number> {
  const written = text.trim();
  const money = readMoney(written);
  if (money.ok || written.length > LONGEST_TEXT) return money;
  const comma = COMMA_CENTS.exec(written);
  if (comma) {
    const dollars = groupThousands(BigInt((comma[2] ?? '').replace(/\D/g, '')));
    const cents = (comma[3] ?? '').padEnd(2, '0');
    return bad(money.problem, `write ${comma[1] === '' ? '' : '-'}${dollars}.${cents}`);
  }
  // In Europe the point stands before thousands; which of the two was meant, only the paper tells.
  const point = /^(\d{1,3})\.(\d{3})$/.exec(written);
  if (point && point[1] !== '0')
    return bad(
      money.problem,
      `write at most two decimals, for example 12.34, or ${point[1]},${point[2]}.00 if thousands were meant`,
    );
  const minus = MINUS_BEHIND.exec(written);
  return minus ? bad(`the minus sign of ${written} stands behind it`, `write -${minus[1]}`) : money;
}

const DECIMAL = /^(\d{1,3}(?:,\d{3})+|\d*)(?:\.(\d+))?$/;

/** A number above zero as a whole number of its `places`-th parts; undefined for any other text. */
function parts(written: string, places: number): number | 'too fine' | undefined {
  const match = DECIMAL.exec(written);
  if (!match || !/\d/.test(written) || written.length > LONGEST_TEXT) return undefined;
  const decimals = (match[2] ?? '').replace(/0+$/, '');
  if (decimals.length > places) return 'too fine';
  return Number(`${(match[1] ?? '').replaceAll(',', '')}${decimals.padEnd(places, '0')}`);
}

const MILES = 'write miles as a number, for example 18.4';

/** Miles of one trip in thousandths of a mile: above 0, below 2,000, at most three decimals. */
export function readMiles(text: string): Read<number> {
  const written = text.trim();
  if (written === '') return bad('this trip has no miles', MILES);
  const thousandths = parts(written, 3);
  if (thousandths === 'too fine')
    return bad(`${written} has more than three decimals`, 'write at most three, for example 18.4');
  if (thousandths === undefined)
    return bad(`“${shorten(written)}” is no number of miles`, numberAlone(written, MILES));
  if (thousandths === 0) return bad('a trip of 0 miles is none', 'write how far it was, or take the row out');
  if (thousandths >= 2_000_000)
    return bad(`${written} miles are too many for one trip`, 'write one row a trip, each below 2,000 miles');
  return good(thousandths);
}

const HOURS = 'write hours as a number or as hours:minutes, for example 1.5 or 1:30';

/**
 * Hours of one row in hundredths of an hour: above 0, at most 24. `1:30` is one hour and a half; minutes that are
 * no whole hundredths are rounded once, half upwards (1:20 is 1.33).
 */
export function readHours(text: string): Read<number> {
  const written = text.trim();
  if (written === '') return bad('this row has no hours', HOURS);
  const clock = /^(\d{1,2}):([0-5]\d)$/.exec(written);
  // Rounded in whole numbers: sixty minutes are a hundred hundredths.
  const hundredths = clock
    ? Number(clock[1]) * 100 + Math.floor((Number(clock[2]) * 100 + 30) / 60)
    : parts(written, 2);
  if (hundredths === 'too fine')
    return bad(`${written} has more than two decimals`, 'write at most two, for example 1.25');
  if (hundredths === undefined)
    return bad(`“${shorten(written)}” is no number of hours`, numberAlone(written, HOURS));
  if (hundredths === 0) return bad('0 hours are none', 'write how long it was, or take the row out');
  if (hundredths > 2400)
    return bad(`${written} hours do not fit in one day`, 'write one row a day, each at most 24 hours');
  return good(hundredths);
}

const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

/** `18.4 mi` and `7,5` say what was meant; the writer has to type it. */
function numberAlone(written: string, otherwise: string): string {
  const comma = /^(\d+),(\d{1,2})$/.exec(written);
  if (comma) return `write ${comma[1]}.${comma[2]}`;
  const unit = /^(\d+(?:\.\d+)?)\s*(?:mi|miles?|h|hrs?|hours?)\.?$/i.exec(written);
  return unit ? `write the number alone: ${unit[1]}` : otherwise;
}
