/** The rules that figures of money cite, from the published tables, by id. */
import { type BasisRules, basisRules } from '../tables/basis.js';
import { leadAsbestosRules } from '../tables/lead-asbestos.js';
import { type MileageRules, mileageRules } from '../tables/mileage.js';
import { type PayeeRules, payeeRules } from '../tables/payees.js';
import { type RetentionRules, retentionRules } from '../tables/retention.js';
import type { MoneyRule } from './money-tally.js';

export type RuleId =
  | keyof BasisRules
  | keyof PayeeRules
  | keyof MileageRules
  | keyof RetentionRules
  | 'lead-disclosure-kept'
  | 'lead-records-kept';

/** What every row of a table has, whatever its figures. */
interface Row {
  readonly rule: string;
  readonly source: { readonly title: string; readonly section: string; readonly publisher: string };
  readonly read: MoneyRule['read'];
  readonly how: string;
  readonly caution: string;
}

/** Every rule that can be cited. */
export function moneyRules(): ReadonlyMap<string, MoneyRule> {
  const { leadDisclosureKept, leadRecordsKept } = leadAsbestosRules();
  const rows: Record<RuleId, Row> = {
    ...basisRules(),
    ...payeeRules(),
    ...mileageRules(),
    ...retentionRules(),
    'lead-disclosure-kept': leadDisclosureKept,
    'lead-records-kept': leadRecordsKept,
  };
  return new Map(
    Object.entries(rows).map(([id, { rule, source, read, how, caution }]) => [
      id,
      {
        id,
        rule,
        source: { title: source.title, section: source.section, publisher: source.publisher },
        read,
        how,
        caution,
      },
    ]),
  );
}

/** The rules with these ids, each once, in order of id. An id that no table has is our mistake and throws. */
export function citedRules(ids: Iterable<string>): MoneyRule[] {
  const all = moneyRules();
  return [...new Set(ids)].sort().map((id) => {
    const found = all.get(id);
    if (found === undefined) throw new Error(`no table has the rule ${id}`);
    return found;
  });
}
