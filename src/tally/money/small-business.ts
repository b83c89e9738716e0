/** The small-business test of one tax year. Source: `small-business-test` in tables/basis.yaml. */
import { basisRules } from '../tables/basis.js';
import { addUp } from './books.js';
import { divideRounded } from './divide.js';

export interface SmallBusiness {
  readonly year: number;
  /** The year's amount in cents; undefined: none is known. */
  readonly limit: number | undefined;
  /** Rounded once; undefined: a year is missing. */
  readonly average: number | undefined;
  readonly passes: boolean | undefined;
  /** Years before whose receipts are not written. */
  readonly missing: readonly number[];
}

/** `receipts`: gross receipts in cents by year. */
export function testSmallBusiness(year: number, receipts: ReadonlyMap<number, number>): SmallBusiness {
  const { yearsBefore, amounts } = basisRules()['small-business-test'].figures;
  const dollars = amounts.find((one) => one.year === year)?.dollars;
  const limit = dollars === undefined ? undefined : dollars * 100;
  const years = Array.from({ length: yearsBefore }, (_, back) => year - yearsBefore + back);
  const known = years.flatMap((one) => receipts.get(one) ?? []);
  const missing = years.filter((one) => !receipts.has(one));
  if (missing.length > 0) return { year, limit, average: undefined, passes: undefined, missing };
  const sum = addUp(known);
  return {
    year,
    limit,
    average: divideRounded(BigInt(sum), BigInt(yearsBefore)),
    // Held against three times the amount, so that rounding decides nothing.
    passes: limit === undefined ? undefined : sum <= limit * yearsBefore,
    missing,
  };
}
