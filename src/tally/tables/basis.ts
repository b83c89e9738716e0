/**
 * What counts as cost of a house, what moves that figure, and what a role changes: rules for worksheets that a tax
 * preparer takes over, never advice. Dollars are whole; hundredths of a per cent are whole.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const table = z.strictObject({
  'cost-when-bought': rule({}),
  'closing-in-basis': rule({}),
  'closing-outside-basis': rule({}),
  'property-tax-by-days': rule({}),
  'debt-taken-over': rule({}),
  'what-moves-basis': rule({}),
  'adjusted-basis': rule({}),
  'improvement-meaning': rule({ lifeOverYears: whole }),
  'repairs-kept-out': rule({}),
  'own-labour': rule({}),
  'paid-building-costs': rule({}),
  'land-and-building': rule({}),
  'home-turned-rental': rule({}),
  'separate-accounts': rule({}),
  'local-assessments': rule({}),
  'gain-on-sale': rule({}),
  'role-is-stated': rule({}),
  'forms-by-role': rule({}),
  'cost-of-goods-sold': rule({}),
  'gross-profit-lines': rule({}),
  'self-employment': rule({ rateHundredthsOfPercent: whole, netHundredthsOfPercent: whole }),
  'no-exchange-for-dealers': rule({}),
  'main-home-exclusion': rule({
    singleDollars: whole,
    jointDollars: whole,
    useYears: whole,
    windowYears: whole,
  }),
  'small-business-test': rule({
    yearsBefore: whole,
    /** By tax year; a year that is not there has no known amount. */
    amounts: z.array(z.strictObject({ year: whole, dollars: whole })),
  }),
  'inventory-method': rule({}),
  'holding-apart': rule({}),
  'improvement-test': rule({}),
  'work-before-use': rule({}),
  'de-minimis': rule({ dollars: whole, auditedDollars: whole }),
  'small-building': rule({
    receiptsDollars: whole,
    /** Highest cost of the building before depreciation. */
    buildingDollars: whole,
    capDollars: whole,
    capPercent: whole,
  }),
});

/** The rules of `basis.yaml` by id. */
export type BasisRules = z.infer<typeof table>;

/** Reads `basis.yaml`; throws on a broken table, which is our own mistake. */
export function basisRules(): BasisRules {
  return readTable('basis', table);
}
