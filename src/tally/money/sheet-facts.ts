/** Facts that lines of worksheets rest on, in words that a reader of paper understands. */
import { printDate } from '../../facts/date.js';
import type { Money } from '../../facts/house.js';
import { printMoney } from '../../facts/money.js';
import type { Books } from './books.js';
import { shareOf } from './divide.js';
import type { Sale, SheetFact } from './money-tally.js';

export const salePriceFact = ({ price }: Sale): SheetFact => ({
  path: 'money.sale.price',
  says: `sale price ${printMoney(price)}`,
});

export const saleDayFact = ({ words }: Sale): SheetFact => ({
  path: 'money.sale.closed',
  says: `sale closed ${words}`,
});

export const boughtFacts = ({ house }: Books): SheetFact[] =>
  house.house.bought === undefined
    ? []
    : [{ path: 'house.bought', says: `bought ${printDate(house.house.bought)}` }];

export const inServiceFacts = ({ money }: Books): SheetFact[] => {
  const day = money.rental?.['in-service'];
  return day === undefined
    ? []
    : [{ path: 'money.rental.in-service', says: `ready to be let ${printDate(day)}` }];
};

/** What building and land were worth when a home became a rental. */
export const marketValueFacts = ({ money }: Books): SheetFact[] =>
  (
    [
      ['market-value-building', 'building worth'],
      ['market-value-land', 'land worth'],
    ] as const
  ).flatMap(([word, words]) => {
    const cents = money.rental?.[word];
    return cents === undefined
      ? []
      : [{ path: `money.rental.${word}`, says: `${words} ${printMoney(cents)} on the day of the change` }];
  });

/** A bill under `money: property-tax:`; `days` tells how it was divided, where it was. */
export function propertyTaxFact(
  bill: Money['property-tax'][number],
  at: number,
  split: { readonly days: number; readonly sellerDays: number } | undefined,
): SheetFact {
  const from = bill.from.earliest;
  const year = from?.endsWith('-01-01') ? from.slice(0, 4) : undefined;
  const which =
    year === undefined ? `property tax of the year from ${printDate(bill.from)}` : `property tax of ${year}`;
  const part = split === undefined ? '' : `, ${split.sellerDays} of ${split.days} days the seller’s`;
  const back =
    bill.reimbursed === 'yes'
      ? ', settled at closing'
      : bill.reimbursed === 'no'
        ? ', not paid back at closing'
        : '';
  return {
    path: `money.property-tax[${at}]`,
    says: `${which}: ${printMoney(bill.amount)}${part}${back}`,
  };
}

/** The assessor's two values, as one fact for each of the two words. */
export function assessedFacts(land: number, building: number): SheetFact[] {
  const percent = shareOf(100, land, land + building);
  const exact = BigInt(percent) * BigInt(land + building) === BigInt(land) * 100n;
  const share = exact ? ` (${percent} and ${100 - percent} percent)` : '';
  return [
    { path: 'money.land.assessed-land', says: `assessor’s values: land ${printMoney(land)}` },
    { path: 'money.land.assessed-building', says: `building ${printMoney(building)}${share}` },
  ];
}
