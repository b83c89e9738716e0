/** Whole numbers as plain decimals for files that programs read: a hyphen for a minus, a point, nothing between thousands. */
import { plainDecimal, withoutZeros } from '../facts/print-decimal.js';

/** Cents as dollars with both decimals: -5902 → `-59.02`. */
export const plainDollars = (cents: number): string => plainDecimal(cents, 2);

/** Hundredths of an hour without needless zeros: 950 → `9.5`. */
export const plainHours = (hundredths: number): string => withoutZeros(plainDecimal(hundredths, 2));

/** Thousandths of a mile without needless zeros: 18400 → `18.4`. */
export const plainMiles = (thousandths: number): string => withoutZeros(plainDecimal(thousandths, 3));
