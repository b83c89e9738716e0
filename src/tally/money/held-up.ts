/** What held the work up: what the owner wrote, and long stretches of which the folder tells nothing. */
import type { HouseDate } from '../../facts/date.js';
import { dayNumber, dayOfNumber } from '../../facts/day-number.js';
import type { Books } from './books.js';
import type { Lessons } from './money-tally.js';

/** Common practice, no source: two weeks without a trace is a stretch worth asking about. */
const LEAST_DAYS = 14;

type HeldUp = Lessons['heldUp'][number];

/** First and last day, both included, as day numbers. */
type Stretch = readonly [first: number, last: number];

/**
 * Longest first. Looked for between the purchase and the listing, else the sale, the day it was let or the as-of day; a stretch that the
 * owner wrote down is not found a second time.
 */
export function heldUp(books: Books): HeldUp[] {
  const order = ({ from, by }: HeldUp): string => `${from} ${by}`;
  return [...written(books), ...found(books)].sort(
    (a, b) => b.days - a.days || (order(a) < order(b) ? -1 : 1),
  );
}

function written({ money }: Books): HeldUp[] {
  return money['held-up'].flatMap(({ from, to, 'waiting-for': by }) => {
    const [first, last] = [from.earliest, to.latest];
    if (first === undefined || last === undefined || last < first) return [];
    return [{ from: first, to: last, days: dayNumber(last) - dayNumber(first) + 1, by }];
  });
}

function found(books: Books): HeldUp[] {
  const { bought, asOf, sale, house, money } = books;
  // Of a month the first day: nobody waits for the work once it may have been listed.
  const listed = house.house.listed?.earliest;
  // Once it is let nobody waits for the work.
  const inUse = money.rental?.['in-service']?.earliest;
  const until = [listed, sale?.day, inUse, asOf].filter((day) => day !== undefined).toSorted()[0];
  if (bought === undefined || until === undefined) return [];
  const [start, end] = [dayNumber(bought), dayNumber(until)];
  const busy = traces(books).toSorted(([a], [b]) => a - b);
  const out: HeldUp[] = [];
  let free = start + 1;
  const close = (next: number): void => {
    const days = Math.min(next, end) - free;
    if (days >= LEAST_DAYS) out.push(quiet(books, free, free + days - 1));
  };
  for (const [first, last] of busy) {
    close(first);
    free = Math.max(free, last + 1);
  }
  close(end);
  return out;
}

function quiet({ house }: Books, first: number, last: number): HeldUp {
  const [from, to] = [dayOfNumber(first), dayOfNumber(last)];
  const open = house.permits.filter(
    ({ issued, final }) =>
      issued?.earliest !== undefined &&
      issued.earliest <= to &&
      (final?.latest === undefined || final.latest > from),
  );
  const permits =
    open.length === 0 ? '' : `; open at the time: the permit for ${open.map(({ what }) => what).join(', ')}`;
  return { from, to, days: last - first + 1, by: `nothing on record${permits}` };
}

/** Days on which something happened, or may have: a month counts whole, since nobody can tell on which of its days. */
function traces({ costs, ledger, house, money }: Books): Stretch[] {
  const days = new Set<string>();
  for (const rows of [costs, ledger.trips, ledger.hours]) for (const { date } of rows) days.add(date);
  const span = (from: HouseDate | undefined, to: HouseDate | undefined = from): Stretch[] =>
    from?.earliest === undefined || to?.latest === undefined
      ? []
      : [[dayNumber(from.earliest), dayNumber(to.latest)]];
  return [
    ...[...days].map((day): Stretch => [dayNumber(day), dayNumber(day)]),
    ...house.work.flatMap(({ started, done }) => [...span(started), ...span(done)]),
    ...money['held-up'].flatMap(({ from, to }) => span(from, to)),
  ];
}
