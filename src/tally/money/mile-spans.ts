/** Trips by the rate in force on their day. Source: `business-mile-rate` in tables/mileage.yaml. */
import { yearOf } from '../../facts/day-number.js';
import type { Trip } from '../../facts/ledger.js';
import { mileageRules } from '../tables/mileage.js';
import { divideRounded } from './divide.js';
import { groupBy } from './group-by.js';
import type { MileSpan } from './money-tally.js';

interface RateSpan {
  readonly from: string;
  readonly to: string;
  readonly rate: number | undefined;
}

/** In order of time; a year without a rate is a span of its own. Every trip is in one of them. */
export function mileSpans(trips: readonly Trip[]): MileSpan[] {
  const spans: readonly RateSpan[] = mileageRules()['business-mile-rate'].figures.spans.map(
    ({ from, to, tenthsOfCent }) => ({ from, to, rate: tenthsOfCent }),
  );
  const bare = new Map<number, RateSpan>();
  const spanOf = (date: string): RateSpan => {
    const known = spans.find(({ from, to }) => from <= date && date <= to);
    if (known !== undefined) return known;
    const year = yearOf(date);
    const without = bare.get(year) ?? {
      from: `${date.slice(0, 4)}-01-01`,
      to: `${date.slice(0, 4)}-12-31`,
      rate: undefined,
    };
    bare.set(year, without);
    return without;
  };
  return [...groupBy(trips, ({ date }) => spanOf(date))]
    .sort(([a], [b]) => (a.from < b.from ? -1 : 1))
    .map(([{ from, to, rate }, own]) => {
      const thousandths = own.reduce((sum, trip) => sum + trip.thousandths, 0);
      return {
        from,
        to,
        rate,
        thousandths,
        cents: rate === undefined ? undefined : mileCents(thousandths, rate),
        tolls: own.reduce((sum, trip) => sum + trip.tolls, 0),
        rows: own.map(({ row }) => row).sort((a, b) => a - b),
        rule: 'business-mile-rate',
      };
    });
}

/** Thousandths of a mile at tenths of a cent a mile: cents, rounded once, half up. */
export const mileCents = (thousandths: number, tenthsOfCent: number): number =>
  divideRounded(BigInt(thousandths) * BigInt(tenthsOfCent), 10_000n);
