/** Property tax of the year of purchase, divided by days between seller and buyer. */

import { addYears } from '../../facts/age.js';
import { dayNumber } from '../../facts/day-number.js';
import type { Money } from '../../facts/house.js';
import { shareOf } from './divide.js';

export interface TaxSplit {
  readonly days: number;
  readonly buyerDays: number;
  readonly buyerCents: number;
  readonly sellerCents: number;
}

/**
 * Divides `cents`, the tax of the property tax year that begins on `from`, for a sale on `sold` (both YYYY-MM-DD).
 *
 * The day of sale is the buyer's, the year has 366 days where it holds a 29 February, and the buyer's share is
 * rounded once, half up; the seller's is the rest. A sale outside the year leaves all of it with one side.
 * Source: `property-tax-by-days` in tables/basis.yaml.
 */
export function splitPropertyTax(cents: number, from: string, sold: string): TaxSplit {
  const first = dayNumber(from);
  const days = dayNumber(addYears(from, 1)) - first;
  const buyerDays = Math.min(days, Math.max(0, first + days - dayNumber(sold)));
  const buyerCents = shareOf(cents, buyerDays, days);
  return { days, buyerDays, buyerCents, sellerCents: cents - buyerCents };
}

type TaxFact = Money['property-tax'][number];

/** By how much a tax bill moves the buyer's basis; `undefined` where it isn't known whether it was paid back. */
export function basisChange(
  split: TaxSplit,
  fact: Pick<TaxFact, 'paid-by' | 'reimbursed'>,
): number | undefined {
  if (fact.reimbursed === 'yes') return 0;
  const moved = unpaidBack(split, fact);
  return fact.reimbursed === 'no' || moved === 0 ? moved : undefined;
}

/** By how much a tax bill moves the buyer's basis that was not paid back. */
export const unpaidBack = (split: TaxSplit, fact: Pick<TaxFact, 'paid-by'>): number =>
  fact['paid-by'] === 'buyer' ? split.sellerCents : 0 - split.buyerCents;
