/** Rates for business miles by the date of the trip, in tenths of a cent a mile, and what a log holds. */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const day = z.iso.date();

const table = z.strictObject({
  'business-mile-rate': rule({
    /** Both days included; none reaches over the end of a year. */
    spans: z.array(z.strictObject({ from: day, to: day, tenthsOfCent: whole })),
  }),
  'mileage-log': rule({ mostVehiclesAtOnce: whole }),
});

/** The rules of `mileage.yaml` by id. */
export type MileageRules = z.infer<typeof table>;

/** Reads `mileage.yaml`; throws on a broken table, which is our own mistake. */
export function mileageRules(): MileageRules {
  return readTable('mileage', table);
}
