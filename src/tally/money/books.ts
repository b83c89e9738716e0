/** A house's rows and money facts, put in order once for everything that adds them up. */

import type { Bucket } from '../../facts/bucket.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { yearOf } from '../../facts/day-number.js';
import { money as moneyWords } from '../../facts/fields/money.js';
import type { House, Money } from '../../facts/house.js';
import type { CostRow, Ledger } from '../../facts/ledger.js';
import { groupBy } from './group-by.js';
import type { Sale } from './money-tally.js';
import { type FindPayee, payeeFinder } from './payee-names.js';

export interface Books {
  readonly house: House;
  /** The words under `money:`, with their defaults where there are none. */
  readonly money: Money;
  readonly ledger: Ledger;
  /** In order of their numbers. */
  readonly costs: readonly CostRow[];
  readonly byBucket: ReadonlyMap<Bucket, readonly CostRow[]>;
  readonly findPayee: FindPayee;
  readonly asOf: string;
  /** YYYY-MM-DD, if the folder names the very day. */
  readonly bought: string | undefined;
  readonly sale: Sale | undefined;
}

export function openBooks(house: House, ledger: Ledger, asOf: string): Books {
  const costs = ledger.costs.toSorted((a, b) => a.row - b.row);
  const money = house.money ?? moneyWords.parse({});
  return {
    house,
    money,
    ledger,
    costs,
    byBucket: groupBy(costs, (row) => row.bucket),
    findPayee: payeeFinder(house),
    asOf,
    bought: sureDay(house.house.bought),
    sale: saleBy(money, asOf),
  };
}

/** The sale, once no day on which it may have closed lies after `asOf` (YYYY-MM-DD). */
function saleBy({ sale }: Money, asOf: string): Sale | undefined {
  const day = sale?.closed.latest;
  if (sale === undefined || day === undefined || day > asOf) return undefined;
  const { price, closed } = sale;
  return {
    price,
    day,
    year: yearOf(day),
    sure: sureDay(closed) !== undefined,
    written: closed.written,
    words: printDate(closed),
  };
}

/** The day of a date that can be one day only. */
export const sureDay = (date: HouseDate | undefined): string | undefined =>
  date?.earliest !== undefined && date.earliest === date.latest ? date.earliest : undefined;

/** The tax year a row counts in. */
export const taxYearOf = (row: CostRow): number => row.taxYear ?? yearOf(row.date);

/** Rows of these buckets, in order of their numbers. */
export function rowsIn({ costs, byBucket }: Books, ...buckets: readonly Bucket[]): readonly CostRow[] {
  const [only, ...more] = buckets;
  if (only !== undefined && more.length === 0) return byBucket.get(only) ?? [];
  const wanted = new Set(buckets);
  return costs.filter(({ bucket }) => wanted.has(bucket));
}

export interface RowSum {
  readonly cents: number;
  readonly rows: readonly number[];
}

/** @throws RangeError if the sum can't be held exactly, which takes more than 90 trillion dollars. */
export function sumRows(rows: readonly CostRow[]): RowSum {
  let sum = 0;
  for (const { cents } of rows) sum += cents;
  return { cents: exact(sum), rows: rows.map(({ row }) => row) };
}

/** The sum of whole cents. */
export function addUp(cents: readonly number[]): number {
  return exact(cents.reduce((total, one) => total + one, 0));
}

function exact(sum: number): number {
  if (!Number.isSafeInteger(sum)) throw new RangeError('a sum of money is too large to be exact');
  return sum;
}
