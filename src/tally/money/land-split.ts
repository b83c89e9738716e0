/** The cost of a purchase, divided between land and building. */
import type { Money } from '../../facts/house.js';
import { printMoney } from '../../facts/money.js';
import { shareOf } from './divide.js';
import type { SheetFact } from './money-tally.js';
import { assessedFacts } from './sheet-facts.js';

export interface LandSplit {
  readonly land: number;
  readonly building: number;
  readonly words: string;
  readonly facts: readonly SheetFact[];
}

/**
 * Divides `cost` (cents, costs of closing included) in the ratio that the contract names, else in that of the
 * assessor's values. `price` is the price alone. Land is rounded once, half up; the building is the rest.
 * Undefined where neither ratio is there. Source: `land-and-building` in tables/basis.yaml.
 */
export function splitLand(cost: number, price: number, land: Money['land']): LandSplit | undefined {
  const named = land?.price;
  if (named !== undefined && price > 0 && named >= 0 && named <= price) {
    const share = shareOf(cost, named, price);
    return {
      land: share,
      building: cost - share,
      words: 'in the ratio of the price of the land to the whole price, as the contract names them',
      facts: [{ path: 'money.land.price', says: `price of the land by the contract ${printMoney(named)}` }],
    };
  }
  const [ground, building] = [land?.['assessed-land'], land?.['assessed-building']];
  if (ground === undefined || building === undefined || ground < 0 || building < 0) return undefined;
  if (ground + building <= 0) return undefined;
  const share = shareOf(cost, ground, ground + building);
  return {
    land: share,
    building: cost - share,
    words: 'in the ratio of the assessor’s values of land and building',
    facts: assessedFacts(ground, building),
  };
}
