/** Under which permit it was done, and how that permit stands. */
import { printDate } from '../../../facts/date.js';
import type { Permit } from '../../../facts/house.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';

/** Holds "permitted", "with permits", "inspected" against permits and how they stand. */
export function judgePermit(
  known: Known,
  items: readonly Item[],
  claim: { readonly all: boolean; readonly thing: string; readonly words: string },
): Judgement {
  const rule = 'permit';
  const named = permitsNamed(known, claim.words, items, claim.thing);
  const of = (state: (permit: Permit) => boolean): Permit[] => named.filter(state);
  const good = of(({ state }) => state === 'final');
  const bad = of(({ state }) => state !== 'final' && state !== 'not-known');
  const open = of(({ state }) => state === 'not-known');
  const facts = [...bad, ...open, ...good].slice(0, 4).map((permit) => permitFact(known, permit));
  const without = claim.all ? items.filter((item) => item.kind === 'work' && item.permit === undefined) : [];
  if (named.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder names no permit for it',
      facts: factsOf(items, 2),
    };
  if (bad.length > 0 && good.length === 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says: ${permitState(bad[0] as Permit)}`,
      facts,
    };
  if (good.length > 0 && (bad.length > 0 || open.length > 0 || without.length > 0))
    return claim.all && bad.length > 0
      ? {
          verdict: 'contradicted',
          rule,
          because: `not all: ${permitState(bad[0] as Permit)}`,
          facts,
        }
      : claim.all || bad.length > 0
        ? {
            verdict: 'wider',
            rule,
            because:
              bad.length > 0
                ? `not all: ${permitState(bad[0] as Permit)}`
                : 'not all of the work names a permit',
            facts: [...facts, ...factsOf(without, 2)],
          }
        : { verdict: 'backed', rule, because: 'its permit is closed', facts };
  if (good.length > 0) return { verdict: 'backed', rule, because: 'its permit is closed', facts };
  return { verdict: 'no-fact', rule, because: 'how the permit stands is not known', facts };
}

export function permitsNamed(
  { house }: Known,
  words: string,
  items: readonly Item[],
  thing: string,
): Permit[] {
  const of = [...new Set(items.map(({ permit }) => permit).filter((permit) => permit !== undefined))];
  if (thing === 'work' || thing === 'house') return of.length > 0 ? of : [...house.permits];
  // A permit for the thing that no fact names: the finding that there is none.
  const exact = house.permits.filter(({ what }) => endsIn(words, what.toLowerCase()));
  if (of.length === 0 && exact.length > 0) return exact;
  const told = house.permits.filter(
    (permit) =>
      words !== '' &&
      words.split(' ').some((word) => word.length > 3 && permit.what.toLowerCase().includes(word)),
  );
  return of.length > 0 ? of : told;
}

/** "The swimming pool": a permit that is called just so is meant, and not that of the pool fence. */
const endsIn = (words: string, what: string): boolean => words === what || words.endsWith(` ${what}`);

const permitState = (permit: Permit): string =>
  ({
    final: `closed${permit.final === undefined ? '' : ` ${printDate(permit.final)}`}`,
    open: 'the permit is still open',
    expired: 'the permit has expired',
    'none-found': 'the office found no permit',
    'not-known': 'whether there is a permit is not known',
  })[permit.state];

export function permitFact({ house }: Known, permit: Permit): FactSaid {
  return {
    path: ['permits', house.permits.indexOf(permit)],
    words: `permit${permit.number === undefined ? '' : ` ${permit.number}`}, ${permit.what}: ${permitState(permit)}`,
    evidence: permit.evidence,
  };
}
