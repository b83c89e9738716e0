/**
 * Which rules reach a house’s sale and renovation, what decided that, by when each is due and what the folder
 * records of it.
 *
 * Points to laws and tells what was recorded; never says that a duty was met in law. Start reading at `deriveDuties`;
 * the rules stand in `../tables/duties/`.
 */
import type { House } from '../../facts/house.js';
import type { LeadJob } from '../lead-jobs.js';
import { type DutyFactName, type DutyRule, federalDuties, stateDuties } from '../tables/duties.js';
import { hiredWork } from './contractor-work.js';
import { dueOf } from './due-day.js';
import type { Duties, Duty, DutyResult, NamedFact } from './duty.js';
import { type DutyFacts, readDutyFacts } from './duty-facts.js';
import { keepOf } from './duty-keep.js';
import { recordOf } from './duty-record.js';
import { dutyWarnings } from './duty-warnings.js';
import { judgeCondition } from './judge-condition.js';
import { pickVersions } from './pick-versions.js';

/** `asOf`: YYYY-MM-DD. `jobs`: paint disturbed, as `deriveLead` found it. */
export function deriveDuties(house: House, asOf: string, jobs: readonly LeadJob[]): Duties {
  const facts = readDutyFacts(house, asOf);
  const { state } = house.house.address;
  const pack = stateDuties(state);
  const rules = [...federalDuties().rules, ...(pack?.rules ?? [])];
  const duties = rules.map((rule) => dutyOf(rule, facts, house, asOf, jobs));
  return {
    state,
    pack: pack?.name,
    lastRead: lastReadOf(rules),
    duties,
    hired: hiredWork(house),
    diagnostics: dutyWarnings(duties, house, asOf),
  };
}

/** All of them hold as of this day; what is from memory was never read. The federal rules among them always were. */
export const lastReadOf = (rules: readonly Pick<DutyRule, 'read' | 'on'>[]): string =>
  rules
    .filter(({ read }) => read !== 'from memory')
    .map(({ on }) => on)
    .toSorted()[0] ?? '';

const RESULTS = { yes: 'applies', no: 'does not apply', 'not known': 'not known' } as const;

function dutyOf(
  rule: DutyRule,
  facts: DutyFacts,
  house: House,
  asOf: string,
  jobs: readonly LeadJob[],
): Duty {
  const judged = judgeCondition(rule.when, facts);
  const named = (names: readonly DutyFactName[]): NamedFact[] =>
    names.map((fact) => ({ fact, ...facts[fact] }));
  const versions = pickVersions(rule.versions, facts.contract);
  // A rule with dated readings, none of which holds on the day of the contract, did not exist yet.
  const undated = rule.versions !== undefined && versions.length === 0;
  const result: DutyResult = undated ? 'does not apply' : RESULTS[judged.truth];
  const due = dueOf(rule, house);
  return {
    rule,
    result,
    because: named(undated ? ['contract'] : judged.because),
    missing: undated ? [] : named(judged.missing),
    assumed: undated ? [] : named(judged.assumed),
    versions: result === 'does not apply' ? [] : versions,
    due,
    record: recordOf(rule, result, due, house, asOf),
    keep: result === 'does not apply' ? undefined : keepOf(rule, house, jobs),
  };
}
