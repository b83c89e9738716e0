/** What the federal rules ask of a seller before the buyer is bound, and what the folder records of it. */
import { printDate } from '../facts/date.js';
import type { House } from '../facts/house.js';
import type { LeadAsbestosRules } from './tables/lead-asbestos.js';

export interface LeadDuty {
  readonly id: 'pamphlet' | 'disclose-known' | 'records' | 'agents' | 'ten-days' | 'attachment';
  /** What is asked, in our own words. */
  readonly what: string;
  readonly recorded: boolean;
  /** What the folder says of it: "given 22 June 2026", "not recorded in the house folder". */
  readonly words: string;
  /** Ids of the papers behind it. */
  readonly evidence: readonly string[];
}

const NOT_RECORDED = 'not recorded in the house folder';

/** The six duties of 42 USC 4852d and 24 CFR 35.88, in the order in which they fall due. */
export function leadDuties(house: House, rules: LeadAsbestosRules): LeadDuty[] {
  const { lead } = house;
  const given = lead?.['pamphlet-given'];
  const known = lead?.known;
  const reports = lead?.reports ?? [];
  const duty = (
    id: LeadDuty['id'],
    what: string,
    words: string | undefined,
    evidence: readonly string[] = [],
  ): LeadDuty => ({ id, what, recorded: words !== undefined, words: words ?? NOT_RECORDED, evidence });
  return [
    duty(
      'pamphlet',
      `Give the buyer the pamphlet “${rules.leadPamphlet.figures.title}”`,
      given && `given ${printDate(given)}`,
    ),
    duty(
      'disclose-known',
      'Tell the buyer of known lead paint and hazards, where they are, in what condition, and how that is known',
      known && `stated: ${known.value ?? 'not known'}`,
      known?.evidence,
    ),
    duty(
      'records',
      'Hand over the records and reports there are',
      reports.length === 0
        ? undefined
        : reports.length === 1
          ? 'one report is on file'
          : `${reports.length} reports are on file`,
      reports,
    ),
    duty('agents', 'Tell every agent of these duties', undefined),
    duty(
      'ten-days',
      `Allow the buyer ${rules.leadTestPeriod.figures.days} days for a test, or as agreed in writing`,
      undefined,
    ),
    duty(
      'attachment',
      'Attach the signed statement and the Lead Warning Statement to the contract',
      undefined,
    ),
  ];
}
