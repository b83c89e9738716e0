/** How long the papers of a house are kept, in years. Lead papers stand in `lead-asbestos.yaml`. */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const table = z.strictObject({
  'time-limits': rule({ years: whole, omittedIncomeYears: whole, badDebtYears: whole }),
  /** The least first, then the safer choices. */
  'property-papers': rule({ years: z.tuple([whole], whole) }),
  'return-due-in-april': rule({}),
  'employment-papers': rule({ years: whole }),
  'payer-copies': rule({ years: whole, yearsIfTaxKeptBack: whole }),
});

/** The rules of `retention.yaml` by id. */
export type RetentionRules = z.infer<typeof table>;

/** Reads `retention.yaml`; throws on a broken table, which is our own mistake. */
export function retentionRules(): RetentionRules {
  return readTable('retention', table);
}
