/** When somebody who was paid for work is named on an information return. Dollars are whole. */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const table = z.strictObject({
  'threshold-by-payment-date': rule({
    /** Calendar years, both ends included; a year in no span has no known threshold. */
    spans: z.array(z.strictObject({ from: whole, to: whole, dollars: whole })),
  }),
  'four-conditions': rule({}),
  'cards-left-out': rule({}),
  'corporations-left-out': rule({}),
  'public-bodies-left-out': rule({}),
  'goods-or-services': rule({}),
  'rent-on-another-form': rule({}),
  'taxpayer-form-first': rule({ percent: whole }),
  'return-due': rule({}),
  'not-for-services': rule({}),
  'paid-family': rule({ socialSecurityUnderYears: whole, unemploymentUnderYears: whole }),
});

/** The rules of `payees.yaml` by id. */
export type PayeeRules = z.infer<typeof table>;

/** Reads `payees.yaml`; throws on a broken table, which is our own mistake. */
export function payeeRules(): PayeeRules {
  return readTable('payees', table);
}
