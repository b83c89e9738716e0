/** Dated readings of a rule, picked by the day of the contract and never by the day of the run. */
import type { DutyRule } from '../tables/duties.js';
import type { Span } from './duty-fact.js';

/** Before and after every day. */
const [ALWAYS, FOREVER] = ['', '9999'];

type Versions = NonNullable<DutyRule['versions']>;

/** Those that may hold: one for a known day, more where the contract’s day is open. None: the rule came later. */
export function pickVersions(versions: Versions | undefined, { is }: { readonly is: Span }): Versions {
  if (versions === undefined) return [];
  return versions.filter(
    ({ from, to }) => (from ?? ALWAYS) <= (is.high ?? FOREVER) && (is.low ?? ALWAYS) <= (to ?? FOREVER),
  );
}
