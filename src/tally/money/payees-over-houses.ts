/**
 * The threshold of a return counts what one payer paid for all houses: here several houses' sheets are one.
 *
 * Ids and positions hold within one house only, so each house first tells by itself who stands behind a name; only
 * then are those of one name taken together. What the houses say of a payee counts whichever of them says it, and
 * where two contradict each other it is not known. The order of the houses decides nothing.
 */
import { yearOf } from '../../facts/day-number.js';
import type { House, Money, Payee } from '../../facts/house.js';
import type { CostRow, Ledger } from '../../facts/ledger.js';
import { nameKey } from '../../facts/name-key.js';
import { type Books, openBooks } from './books.js';
import { type Group, groupBy } from './group-by.js';
import type { PayeeYear } from './money-tally.js';
import type { KnownPayee } from './payee-names.js';
import { type PayeeFinding, payeeYears } from './payee-years.js';

export interface HouseBooks {
  readonly house: House;
  readonly ledger: Ledger;
}

/** Row numbers are those of several sheets, and lead nowhere. */
export function payeesOverHouses(houses: readonly HouseBooks[], asOf: string): PayeeYear[] {
  const opened = houses.map(({ house, ledger }) => openBooks(house, ledger, asOf));
  const keyOf = keysOver(opened);
  const paid = groupBy(
    opened.flatMap((books) => books.costs.map((row): Paid => ({ books, row }))),
    ({ books, row }) => keyOf(books.findPayee(row.payee).key),
  );
  return [...groupBy(opened.flatMap(knownIn), ({ key }) => keyOf(key))]
    .flatMap(([key, own]) => {
      const known = merged(key, own);
      const byYear = groupBy(paid.get(key) ?? [], ({ row }) => yearOf(row.date));
      return [...byYear.values()].flatMap((all) => yearOfPayee(all, known));
    })
    .map(({ year }) => year)
    .sort((a, b) => a.year - b.year || b.paid - a.paid || (a.payee < b.payee ? -1 : 1));
}

interface Paid {
  readonly books: Books;
  readonly row: CostRow;
}

/** `own`: what one payee was paid in one year. Whether it was in a business is asked of the houses it was paid for. */
function yearOfPayee(own: Group<Paid>, known: KnownPayee): PayeeFinding[] {
  const [{ books }] = own;
  const costs = own.map(({ row }) => row);
  const money = { ...books.money, 'in-business': unanimous(own.map((one) => one.books.money)) };
  return payeeYears({ costs, money, findPayee: () => known }, 'all houses');
}

/** Everybody whom a house names: under `money: payees:`, under `people:` and in its rows. */
const knownIn = ({ house, costs, findPayee }: Books): KnownPayee[] => [
  ...new Set(
    [
      ...(house.money?.payees ?? []).map(({ name }) => name),
      ...house.people.map(({ name }) => name),
      ...costs.map(({ payee }) => payee),
    ].map(findPayee),
  ),
];

/** One key for an entry and the person it is, also where another house has that person's name alone. */
function keysOver(opened: readonly Books[]): (key: string) => string {
  const leads = new Map<string, string>();
  const keyOf = (key: string): string => {
    const next = leads.get(key);
    return next === undefined ? key : keyOf(next);
  };
  for (const { house, findPayee } of opened)
    for (const { name } of house.people) {
      const [own, entry] = [keyOf(nameKey(name)), keyOf(findPayee(name).key)];
      if (own < entry) leads.set(entry, own);
      else if (entry < own) leads.set(own, entry);
    }
  return keyOf;
}

function merged(key: string, own: Group<KnownPayee>): KnownPayee {
  const entries = own.flatMap(({ facts }) => facts ?? []);
  const person = own.find((one) => one.person !== undefined)?.person;
  const names = entries.length > 0 ? entries.map(({ name }) => name) : own.map(({ label }) => label);
  const label = names.reduce((least, one) => {
    if (one < least) return one;
    return least;
  });
  return {
    key,
    label,
    facts: entries.length === 0 ? undefined : mergedFacts(label, entries),
    index: undefined,
    person,
  };
}

function mergedFacts(name: string, entries: readonly Payee[]): Payee {
  const attorney = entries.flatMap((one) => one.attorney ?? []);
  const relation = [...new Set(entries.flatMap((one) => one.relation ?? []))].toSorted().join('; ');
  return {
    name,
    sells: agreed(
      entries.map(({ sells }) => sells),
      'not-known',
    ),
    // That it is an LLC leaves open how it is taxed.
    'tax-class': agreed(
      entries.map((one) => one['tax-class']),
      'not-known',
      'llc',
    ),
    'taxpayer-form': agreed(
      entries.map((one) => one['taxpayer-form']),
      'not-known',
    ),
    ...(attorney.length === 0 ? {} : { attorney: agreed(attorney, 'not known') }),
    ...(relation === '' ? {} : { relation }),
  };
}

/**
 * What all say who know it, else `vague`, where somebody says that: it leaves the answer open, and says something all
 * the same. `open`: nobody knows, or two contradict each other.
 */
function agreed<T extends string>(said: readonly T[], open: T, vague: T = open): T {
  const [only, other] = new Set(said.filter((one) => one !== open && one !== vague));
  if (other !== undefined) return open;
  return only ?? (said.includes(vague) ? vague : open);
}

/** What all of these houses say alike. */
function unanimous(houses: readonly Money[]): Money['in-business'] {
  const said = new Set(houses.map((one) => one['in-business'] ?? 'not known'));
  const [only] = said;
  return said.size === 1 ? only : 'not known';
}
