/** The threshold of a return counts what one payer paid for all houses: here several houses' sheets are one. */
import type { House, Money } from '../../facts/house.js';
import type { Ledger } from '../../facts/ledger.js';
import { EMPTY_LEDGER } from '../../facts/ledger.js';
import { openBooks } from './books.js';
import type { PayeeYear } from './money-tally.js';
import { payeeYears } from './payee-years.js';

export interface HouseBooks {
  readonly house: House;
  readonly ledger: Ledger;
}

/** Row numbers are those of several sheets, and lead nowhere. */
export function payeesOverHouses(books: readonly HouseBooks[], asOf: string): PayeeYear[] {
  const [first] = books;
  if (first === undefined) return [];
  const lists = books.flatMap(({ house }) => (house.money === undefined ? [] : [house.money]));
  const house: House = {
    ...first.house,
    people: books.flatMap((one) => one.house.people),
    money:
      lists[0] === undefined
        ? undefined
        : {
            ...lists[0],
            payees: lists.flatMap(({ payees }) => payees),
            'in-business': unanimous(lists),
          },
  };
  const ledger: Ledger = { ...EMPTY_LEDGER, costs: books.flatMap((one) => one.ledger.costs) };
  return payeeYears(openBooks(house, ledger, asOf), 'all houses').map(({ year }) => year);
}

/** What all houses say alike; where they differ, it is not known for a payee of both. */
function unanimous(lists: readonly Money[]): Money['in-business'] {
  const said = new Set(lists.map((one) => one['in-business']));
  return said.size === 1 ? lists[0]?.['in-business'] : 'not known';
}
