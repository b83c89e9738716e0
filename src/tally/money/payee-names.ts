/** Who stands behind a payee's name in a cost sheet. */
import type { House, Payee, Person } from '../../facts/house.js';
import { nameKey } from '../../facts/name-key.js';

export interface KnownPayee {
  /** Its name without what is no difference: unique among payees. */
  readonly key: string;
  /** As it is printed. */
  readonly label: string;
  readonly facts: Payee | undefined;
  /** Position under `money: payees:`. */
  readonly index: number | undefined;
  readonly person: Person | undefined;
}

/** Answers the same object for every spelling of one payee. */
export type FindPayee = (name: string) => KnownPayee;

/**
 * Finds payees by name: those of `money: payees:` first, by their own name or by that of the person they are, then
 * people that were hired. A name that neither has gets only itself.
 */
export function payeeFinder(house: House): FindPayee {
  const known = new Map<string, KnownPayee>();
  for (const [index, facts] of (house.money?.payees ?? []).entries()) {
    const person = house.people.find(({ id }) => id === facts.person);
    const key = nameKey(facts.name);
    const one = { key, label: facts.name, facts, index, person };
    for (const name of [facts.name, ...(person === undefined ? [] : [person.name])]) {
      if (!known.has(nameKey(name))) known.set(nameKey(name), one);
    }
  }
  for (const person of house.people) {
    const key = nameKey(person.name);
    if (!known.has(key))
      known.set(key, { key, label: person.name, facts: undefined, index: undefined, person });
  }
  const spellings = new Map<string, KnownPayee>();
  return (name) => {
    const spelt = spellings.get(name);
    if (spelt !== undefined) return spelt;
    const key = nameKey(name);
    const found = known.get(key) ?? {
      key,
      label: name,
      facts: undefined,
      index: undefined,
      person: undefined,
    };
    known.set(key, found);
    spellings.set(name, found);
    return found;
  };
}

/** What a payee is paid for. Whoever stands under `people:` was hired for services, unless `money: payees:` says otherwise. */
export function sellsOf({ facts, person }: KnownPayee): Payee['sells'] {
  const stated = facts?.sells ?? 'not-known';
  return stated === 'not-known' && person !== undefined ? 'services' : stated;
}
