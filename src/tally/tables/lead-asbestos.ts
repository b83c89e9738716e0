/**
 * What federal rules ask of a seller and a renovator of an old house about lead paint, and where asbestos may be.
 * States add their own. A packet carries these words; the signed attachment to the contract does the legal work.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { rule, whole } from './sourced.js';

const table = z.strictObject({
  targetHousing: rule({
    /** Houses built before this year; a year that isn't known counts as before it. */
    builtBeforeYear: whole,
    childUnderYears: whole,
  }),
  leadWarning: rule({
    /** The statement word for word. It is a federal text in the public domain and is never shortened. */
    statement: z.string().min(1),
  }),
  leadTestPeriod: rule({ days: whole }),
  leadPamphlet: rule({ title: z.string().min(1), number: z.string().min(1) }),
  leadDisclosureKept: rule({ years: whole }),
  leadRecordsKept: rule({ years: whole }),
  leadMinorRepair: rule({
    /** At most this much painted surface in one room, exactly this much included. */
    insideSquareFeet: whole,
    outsideSquareFeet: whole,
    /** Work in one room within this many days is one job. */
    sameJobDays: whole,
    neverMinor: z.array(z.string().min(1)),
  }),
  leadRenovateToSell: rule({}),
  asbestosPlaces: rule({
    /** The year in which textured paint and patching compound with asbestos were banned. */
    textureBanYear: whole,
    insulationFromYear: whole,
    insulationToYear: whole,
    materials: z.array(z.string().min(1)),
  }),
  asbestosPresumed: rule({
    /** Installed in this year or earlier. */
    installedThroughYear: whole,
  }),
});

/** The rules of `lead-asbestos.yaml` by name. */
export type LeadAsbestosRules = z.infer<typeof table>;

/** Reads `lead-asbestos.yaml`; throws on a broken table, which is our own mistake. */
export function leadAsbestosRules(): LeadAsbestosRules {
  return readTable('lead-asbestos', table);
}
