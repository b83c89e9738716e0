/** Planned against actual. */

import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { BUCKET_NAMES, BUCKETS } from '../../facts/bucket.js';
import type { House } from '../../facts/house.js';
import type { CostRow } from '../../facts/ledger.js';
import { nameOfPlace } from '../../facts/place-name.js';
import { TRADES, type Trade, tradeOf } from '../trades.js';
import { type Books, rowsIn, sumRows } from './books.js';
import type { Lessons } from './money-tally.js';
import { type Belonging, belongingOfTrade } from './spending-shares.js';

interface Finders {
  readonly spent: readonly CostRow[];
  readonly tradeOfRow: (row: CostRow) => Belonging;
  readonly roomOfRow: (row: CostRow) => Belonging;
}

export function compareBudget(
  books: Books,
  finders: Finders,
): { lines: Lessons['budget']; diagnostics: readonly Diagnostic[] } {
  const found = books.money.budget.map(({ for: word, amount }) => ({
    word,
    amount,
    what: budgetRows(books, word, finders),
  }));
  return {
    lines: found.flatMap(({ what, amount }) => {
      if (what === undefined) return [];
      const { cents, rows } = sumRows(what.rows);
      return [{ label: what.label, planned: amount, actual: cents, rows }];
    }),
    diagnostics: found.flatMap(({ word, what }, at) =>
      what === undefined
        ? [
            {
              code: 'facts.id-unknown' as const,
              severity: 'warning' as const,
              path: ['money', 'budget', at, 'for'],
              message: `nothing in the folder is called “${word}”, so its budget can’t be held against anything`,
              hints: [
                'write the id of a room, level, structure, system or work item, a trade, a bucket, or  all',
              ],
            },
          ]
        : [],
    ),
  };
}

/** `all` is the work on the house; a level takes its rooms along. Buckets are looked up first, then places, then trades. */
function budgetRows(
  books: Books,
  word: string,
  { spent, tradeOfRow, roomOfRow }: Finders,
): { readonly label: string; readonly rows: readonly CostRow[] } | undefined {
  const { house } = books;
  const plain = word.trim().toLowerCase();
  if (plain === 'all') return { label: 'All work on the house', rows: spent };
  const bucket = BUCKET_NAMES.find((name) => name === plain || BUCKETS[name].title.toLowerCase() === plain);
  if (bucket !== undefined) return { label: BUCKETS[bucket].title, rows: rowsIn(books, bucket) };
  const place = [...house.levels, ...house.structures, ...house.rooms, ...house.stairs].find(
    ({ id }) => id === word,
  );
  if (place !== undefined) {
    const inside = house.rooms.filter(({ level }) => level === word).map(({ id }) => `place-${id}`);
    const ids = new Set([`place-${word}`, ...inside]);
    return { label: nameOfPlace(house, word), rows: spent.filter((row) => ids.has(roomOfRow(row).id)) };
  }
  const system = house.systems.find(({ id }) => id === word);
  const item = house.work.find(({ id }) => id === word);
  const thing = system === undefined ? item?.what : (system.name ?? system.is);
  if (thing !== undefined) return { label: thing, rows: spent.filter((row) => row.place === word) };
  const trade =
    TRADES.find((one) => one === plain || one.replaceAll(' ', '-') === plain) ?? tradeOfPeople(house, plain);
  if (trade === undefined) return undefined;
  const { id, label } = belongingOfTrade(trade);
  return { label, rows: spent.filter((row) => tradeOfRow(row).id === id) };
}

/** "electrician" is a trade where somebody under `people:` has it. */
const tradeOfPeople = ({ people }: House, word: string): Trade | undefined =>
  people.some(({ trade }) => trade?.toLowerCase() === word) ? tradeOf(word) : undefined;
