/** Until when the papers of a duty are kept. The years stand in `tables/lead-asbestos.yaml`, as for the money pages. */
import { dayWords } from '../../facts/date-moment.js';
import type { House } from '../../facts/house.js';
import type { LeadJob } from '../lead-jobs.js';
import { disclosureKeptThrough } from '../lead-notes.js';
import type { DutyRule } from '../tables/duties.js';
import { leadAsbestosRules } from '../tables/lead-asbestos.js';
import { closingOf } from './contract-day.js';
import type { DutyKeep } from './duty.js';

export function keepOf({ keep }: DutyRule, house: House, jobs: readonly LeadJob[]): DutyKeep | undefined {
  const rules = leadAsbestosRules();
  if (keep === 'lead-disclosure') {
    const day = closingOf(house)?.latest;
    return {
      years: rules.leadDisclosureKept.figures.years,
      through: day && disclosureKeptThrough(day),
      from: day === undefined ? 'the closing, which is not written' : `the closing of ${dayWords(day)}`,
    };
  }
  if (keep === 'lead-renovation') {
    const beyond = jobs.filter(({ verdict }) => verdict !== 'minor');
    if (beyond.length === 0) return undefined;
    const days = beyond.map(({ keepRecordsThrough }) => keepRecordsThrough);
    return {
      years: rules.leadRecordsKept.figures.years,
      through: days.includes(undefined) ? undefined : days.toSorted().at(-1),
      from: 'the end of the last work that disturbed more than a little paint',
    };
  }
  return undefined;
}
