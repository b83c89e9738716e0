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
import { groupBy } from './group-by.js';
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
  const payees = new Map(
    [...groupBy(opened.flatMap(knownIn), (known) => keyOf(known.key))].map(([key, own]) => [
      key,
      merged(key, own),
    ]),
  );
  const paid = opened.flatMap((books) => books.costs.map((row) => ({ books, row })));
  const byYear = groupBy(
    paid,
    ({ books, row }) => `${yearOf(row.date)} ${keyOf(books.findPayee(row.payee).key)}`,
  );
  return [...byYear.values()]
    .flatMap((own) => yearOfPayee(own, payees, keyOf))
    .map(({ year }) => year)
    .sort((a, b) => a.year - b.year || b.paid - a.paid || (a.payee < b.payee ? -1 : 1));
}

interface Paid {
  readonly books: Books;
  readonly row: CostRow;
}

/** `own`: what one payee was paid in one year. Whether it was in a business is asked of the houses it was paid for. */
function yearOfPayee(
  own: readonly Paid[],
  payees: ReadonlyMap<string, KnownPayee>,
  keyOf: (key: string) => string,
): PayeeFinding[] {
  const [first] = own;
  const known = first && payees.get(keyOf(first.books.findPayee(first.row.payee).key));
  if (first === undefined || known === undefined) return [];
  const costs = own.map(({ row }) => row);
  const money = { ...first.books.money, 'in-business': unanimous(own.map(({ books }) => books.money)) };
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
      const [one, other] = [keyOf(nameKey(name)), keyOf(findPayee(name).key)].toSorted();
      if (one !== undefined && other !== undefined && one !== other) leads.set(other, one);
    }
  return keyOf;
}

function merged(key: string, own: readonly KnownPayee[]): KnownPayee {
  const entries = own.flatMap(({ facts }) => facts ?? []);
  const person = own.find((one) => one.person !== undefined)?.person;
  const labels = (
    entries.length > 0 ? entries.map(({ name }) => name) : own.map(({ label }) => label)
  ).toSorted();
  const label = labels[0] ?? key;
  return {
    key,
    label,
    facts: entries.length === 0 ? undefined : mergedFacts(label, entries),
    index: undefined,
    person,
  };
}

function mergedFacts(name: string, entries: readonly Payee[]): Payee {
  const attorney = agreed(
    entries.flatMap((one) => one.attorney ?? []),
    ['not known'],
  );
  const relation = [...new Set(entries.flatMap((one) => one.relation ?? []))].toSorted().join('; ');
  return {
    name,
    sells:
      agreed(
        entries.map(({ sells }) => sells),
        ['not-known'],
      ) ?? 'not-known',
    'tax-class':
      agreed(
        entries.map((one) => one['tax-class']),
        // That it is an LLC leaves open how it is taxed.
        ['llc', 'not-known'],
      ) ?? 'not-known',
    'taxpayer-form':
      agreed(
        entries.map((one) => one['taxpayer-form']),
        ['not-known'],
      ) ?? 'not-known',
    ...(attorney === undefined ? {} : { attorney }),
    ...(relation === '' ? {} : { relation }),
  };
}

/**
 * What all say who know it. `vague`: words that leave it open, the one that says most first; the last one is also for
 * what is contradicted. Undefined where nobody says anything.
 */
function agreed<T extends string>(said: readonly T[], vague: readonly T[]): T | undefined {
  const known = new Set(said.filter((one) => !vague.includes(one)));
  if (known.size > 1) return vague.at(-1);
  const [only] = known;
  return only ?? vague.find((one) => said.includes(one));
}

/** What all of these houses say alike. */
function unanimous(houses: readonly Money[]): Money['in-business'] {
  const said = new Set(houses.map((one) => one['in-business'] ?? 'not known'));
  const [only] = said;
  return said.size === 1 ? only : 'not known';
}
