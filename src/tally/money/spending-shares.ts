/** What was spent on the house, and the unpaid hours, by trade and by room. */
import type { Bucket } from '../../facts/bucket.js';
import type { House } from '../../facts/house.js';
import type { CostRow, HoursRow } from '../../facts/ledger.js';
import { nameOfPlace } from '../../facts/place-name.js';
import type { Improvement } from '../improvements.js';
import { tradeOf } from '../trades.js';
import { sumRows } from './books.js';
import { divideRounded } from './divide.js';
import { groupBy } from './group-by.js';
import type { Share } from './money-tally.js';
import type { FindPayee } from './payee-names.js';

/** Work on the house; rebates lower it. */
export const SPENT: readonly Bucket[] = ['improvement', 'restoration', 'repair', 'rebate'];

/** Where a row belongs: an id, unique among its kind, and the words for it. */
export interface Belonging {
  readonly id: string;
  readonly label: string;
}

type Placed =
  | Pick<CostRow, 'place' | 'payee'>
  | (Pick<HoursRow, 'place' | 'what'> & { readonly payee?: undefined });

const NOT_NAMED: Belonging = { id: 'not-named', label: 'Not named' };
const WHOLE: Belonging = { id: 'whole-house', label: 'Whole house' };
const SEVERAL: Belonging = { id: 'several-rooms', label: 'Several rooms (whole-house rows apart)' };

/**
 * The trade of what a row names: a work item's, a system's, else that of the person who was paid. Unpaid hours that
 * name only a place are read by their own words.
 */
export function tradeFinder(
  house: House,
  find: FindPayee,
  improvements: readonly Improvement[],
): (row: Placed) => Belonging {
  const byPlace = new Map<string, string>(house.systems.map((system) => [system.id, tradeOf(system.is)]));
  for (const { source, trade } of improvements)
    if (source.kind === 'work') byPlace.set(source.item.id, trade);
  return (row) => {
    const named = row.place === undefined ? undefined : byPlace.get(row.place);
    const trade = named ?? (row.payee === undefined ? tradeOfWords(row.what) : tradeOfPayee(find, row.payee));
    return trade === undefined ? NOT_NAMED : belongingOfTrade(trade);
  };
}

function tradeOfPayee(find: FindPayee, payee: string): string | undefined {
  const stated = find(payee).person?.trade;
  return stated === undefined ? undefined : tradeOf(stated);
}

/** Words that name no trade are no trade of their own. */
function tradeOfWords(what: string): string | undefined {
  const trade = tradeOf(what);
  return trade === 'other' ? undefined : trade;
}

export const belongingOfTrade = (trade: string): Belonging => ({
  id: `trade-${trade.replaceAll(' ', '-')}`,
  label: trade.charAt(0).toUpperCase() + trade.slice(1),
});

/** The room, level, stair or structure of what a row names. */
export function roomFinder(house: House): (row: Placed) => Belonging {
  const places = new Set(
    [...house.levels, ...house.rooms, ...house.stairs, ...house.structures].map(({ id }) => id),
  );
  const known = new Map<string, Belonging>();
  const at = (id: string): Belonging => {
    const found = known.get(id) ?? { id: `place-${id}`, label: nameOfPlace(house, id) };
    known.set(id, found);
    return found;
  };
  const things = new Map<string, readonly string[]>([
    ...house.systems.map(({ id, where }) => [id, where === undefined ? [] : [where]] as const),
    ...house.work.map(({ id, where }) => [id, where] as const),
  ]);
  return ({ place }) => {
    if (place === undefined) return WHOLE;
    if (places.has(place)) return at(place);
    const [first, ...more] = things.get(place) ?? [];
    if (first === undefined) return WHOLE;
    return more.length > 0 ? SEVERAL : at(first);
  };
}

/** Largest first; every row and every hour is in one share. `squareFeet`: whole, above zero. */
export function shareOut(
  costs: readonly CostRow[],
  hours: readonly HoursRow[],
  belonging: (row: Placed) => Belonging,
  squareFeet: number | undefined,
): Share[] {
  const byCost = groupBy(costs, (row) => belonging(row).id);
  const byHours = groupBy(hours, (row) => belonging(row).id);
  const labels = new Map([...costs, ...hours].map((row) => [belonging(row).id, belonging(row).label]));
  return [...labels]
    .map(([id, label]) => {
      const { cents, rows } = sumRows(byCost.get(id) ?? []);
      return {
        id,
        label,
        cents,
        rows,
        hundredths: (byHours.get(id) ?? []).reduce((sum, { hundredths }) => sum + hundredths, 0),
        perSquareFoot:
          squareFeet === undefined ? undefined : divideRounded(BigInt(cents), BigInt(squareFeet)),
      };
    })
    .sort((a, b) => b.cents - a.cents || b.hundredths - a.hundredths || (a.id < b.id ? -1 : 1));
}
