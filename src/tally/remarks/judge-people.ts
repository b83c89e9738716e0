/** Who did it and under which permit. */
import { printDate } from '../../facts/date.js';
import type { Permit } from '../../facts/house.js';
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import type { FactSaid, Judgement, Known } from './known.js';

const DEED = (item: Item): boolean => item.deed !== undefined || item.kind === 'work';

/** Words of a stated trade, by the trade that the draft names. */
const TRADES: Readonly<Record<string, RegExp>> = {
  electrician: /electri/i,
  plumber: /plumb/i,
  roofer: /roof/i,
  heating: /heat|cool|hvac|air/i,
  pool: /pool/i,
  carpenter: /carpent|build|renovat/i,
  painter: /paint/i,
  mason: /mason|stone|brick/i,
  engineer: /engineer/i,
  tiler: /til(e|ing)/i,
  flooring: /floor|carpet/i,
};

/** Holds "by a licensed electrician", "professionally", "by owner" against who is named in the folder. */
export function judgeWho(
  items: readonly Item[],
  id: string,
  trade: string | undefined,
  all = true,
): Judgement {
  const rule = `who.${id}`;
  const done = items.filter(DEED).filter(({ kept, who }) => !kept || who.kind === 'hired');
  const known = done.filter(({ who }) => who.kind !== 'not-known');
  if (known.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder does not say who did it',
      facts: factsOf(items, 2),
    };
  const fits = known.filter((item) => didFit(item, id, trade) === true);
  const against = known.filter((item) => didFit(item, id, trade) === false);
  const facts = (of: readonly Item[]): FactSaid[] =>
    of.slice(0, 4).map((item) => ({
      path: item.path,
      words: `${item.label}: ${whoWords(item)}`,
      evidence: item.evidence,
    }));
  const instead = [
    ...new Set([...fits, ...against].slice(0, 3).map((item) => `${item.label}, ${whoWords(item)}`)),
  ].join('; ');
  if (fits.length > 0 && against.length === 0)
    return { verdict: 'backed', rule, because: 'the folder names who did it', facts: facts(fits) };
  if (fits.length > 0 && !all && fits.length >= against.length)
    return { verdict: 'backed', rule, because: 'the folder names who did it', facts: facts(fits) };
  if (fits.length > 0)
    return {
      verdict: against.length > fits.length ? 'contradicted' : 'wider',
      rule,
      because: 'so of some, but not of all',
      facts: facts([...against, ...fits]),
      instead,
    };
  if (against.length > 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says ${whoWords(against[0] as Item)}`,
      facts: facts(against),
      instead,
    };
  return { verdict: 'no-fact', rule, because: 'the folder does not state a licence', facts: facts(known) };
}

/** "licensed roofer", of no thing named: whether somebody of the trade was hired, and stated a licence. */
export function judgeTrade(known: Known, id: string, trade: string): Judgement | undefined {
  const people = known.house.people.filter((person) =>
    TRADES[trade]?.test(`${person.trade ?? ''} ${person.name}`),
  );
  if (people.length === 0) return undefined;
  const licensed = people.filter(({ licence }) => licence?.value !== undefined);
  const facts = people.map((person) => ({
    path: ['people', known.house.people.indexOf(person)],
    words: `${person.trade ?? 'hired'}: licence ${person.licence?.value === undefined ? 'not stated' : 'stated'}`,
    evidence: person.licence?.evidence ?? [],
  }));
  return id !== 'licensed' || licensed.length > 0
    ? { verdict: 'backed', rule: `who.${id}`, because: 'the folder names one', facts }
    : { verdict: 'no-fact', rule: `who.${id}`, because: 'the folder does not state a licence', facts };
}

/** "… by Ridge Street Plumbing": somebody of the folder named as the one who did it. */
export function judgeNamed(known: Known, items: readonly Item[], words: string): Judgement | undefined {
  const said = words.toLowerCase();
  const named = known.house.people.find((person) => said.includes(`by ${person.name.toLowerCase()}`));
  if (named === undefined) return undefined;
  const done = items.filter(({ who, kept }) => who.kind !== 'not-known' && !kept);
  if (done.length === 0) return undefined;
  const fits = done.filter(({ who }) => who.kind === 'hired' && who.person.id === named.id);
  const of = fits.length > 0 ? fits : done;
  return {
    verdict: fits.length > 0 ? 'backed' : 'contradicted',
    rule: 'who.named',
    because: fits.length > 0 ? 'the folder names who did it' : `the folder says ${whoWords(done[0] as Item)}`,
    facts: of.slice(0, 3).map((item) => ({
      path: item.path,
      words: `${item.label}: ${whoWords(item)}`,
      evidence: item.evidence,
    })),
    instead: fits.length > 0 ? undefined : `${(done[0] as Item).label}, ${whoWords(done[0] as Item)}`,
  };
}

function didFit({ who }: Item, id: string, trade: string | undefined): boolean | undefined {
  if (who.kind === 'not-known') return undefined;
  if (id === 'owner') return who.kind !== 'hired';
  if (id === 'amateur')
    return who.kind === 'hired' && who.person.licence?.value !== undefined ? false : undefined;
  if (who.kind !== 'hired') return false;
  const pattern = trade === undefined ? undefined : TRADES[trade];
  if (
    pattern !== undefined &&
    who.person.trade !== undefined &&
    !pattern.test(`${who.person.trade} ${who.person.name}`)
  )
    return false;
  if (id === 'licensed') return who.person.licence?.value === undefined ? undefined : true;
  return true;
}

function whoWords({ who }: Item): string {
  if (who.kind === 'not-known') return 'by whom is not known';
  if (who.kind !== 'hired') return who.kind === 'owner' ? 'done by the owner' : 'done by family';
  const { trade, licence } = who.person;
  return `done by ${trade === undefined ? 'someone hired' : `a hired ${trade}`}${licence?.value === undefined ? ', licence not stated' : ', licensed by their own word'}`;
}

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
  const instead =
    good.length > 0
      ? `${good
          .slice(0, 3)
          .map(({ what, number }) => `${what}${number === undefined ? '' : `, permit ${number}, closed`}`)
          .join('; ')}`
      : undefined;
  if (named.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder names no permit for it',
      facts: factsOf(items, 2),
      instead,
    };
  if (bad.length > 0 && good.length === 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says: ${permitState(bad[0] as Permit)}`,
      facts,
      instead: bad.map((permit) => `${permit.what}: ${permitState(permit)}`).join('; '),
    };
  if (good.length > 0 && (bad.length > 0 || open.length > 0 || without.length > 0))
    return claim.all && bad.length > 0
      ? {
          verdict: 'contradicted',
          rule,
          because: `not all: ${permitState(bad[0] as Permit)}`,
          facts,
          instead,
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
            instead,
          }
        : { verdict: 'backed', rule, because: 'its permit is closed', facts };
  if (good.length > 0) return { verdict: 'backed', rule, because: 'its permit is closed', facts };
  return { verdict: 'no-fact', rule, because: 'how the permit stands is not known', facts };
}

function permitsNamed({ house }: Known, words: string, items: readonly Item[], thing: string): Permit[] {
  const of = [...new Set(items.map(({ permit }) => permit).filter((permit) => permit !== undefined))];
  if (thing === 'work' || thing === 'house') return of.length > 0 ? of : [...house.permits];
  // A permit for the thing that no fact names: the finding that there is none.
  const told = house.permits.filter(
    (permit) =>
      words !== '' &&
      words.split(' ').some((word) => word.length > 3 && permit.what.toLowerCase().includes(word)),
  );
  return of.length > 0 ? of : told;
}

const permitState = (permit: Permit): string =>
  ({
    final: `closed${permit.final === undefined ? '' : ` ${printDate(permit.final)}`}`,
    open: 'the permit is still open',
    expired: 'the permit has expired',
    'none-found': 'the office found no permit',
    'not-known': 'whether there is a permit is not known',
  })[permit.state];

function permitFact({ house }: Known, permit: Permit): FactSaid {
  return {
    path: ['permits', house.permits.indexOf(permit)],
    words: `permit${permit.number === undefined ? '' : ` ${permit.number}`}, ${permit.what}: ${permitState(permit)}`,
    evidence: permit.evidence,
  };
}
