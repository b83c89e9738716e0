/** Years and ages, held against the dates of a thing. */
import { type HouseDate, printDate } from '../../../facts/date.js';
import type { Moment } from '../claims/claim-case.js';
import { answerOf } from '../items/answer-of.js';
import { factsOf } from '../items/item-words.js';
import { type Item, putsIn } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import { monthsBefore } from '../items/months.js';

export interface DateClaim {
  readonly moment: Moment;
  readonly hedge: string | undefined;
  /** The word beside it ("replaced in 2019", "refinished 2026"), if any. */
  readonly deed: string | undefined;
  /** The draft says it of every one. */
  readonly all?: boolean;
}

export const OPEN_SPAN = 'the folder gives a span of years that leaves it open';

/** Holds a year or an age against every date that the thing has. */
export function judgeDate(known: Known, items: readonly Item[], claim: DateClaim): Judgement {
  const rule = `date.${claim.moment.kind}`;
  const dated = items.flatMap((item) => datesOf(item, claim.deed).map((date) => ({ item, date })));
  if (dated.length === 0 && isOlderThanPurchase(known, items, claim))
    return {
      verdict: 'contradicted',
      rule,
      because: 'the folder says that it was there when the house was bought',
      facts: factsOf(items, 3),
    };
  if (dated.length === 0)
    return { verdict: 'no-fact', rule, because: 'the folder gives it no date', facts: factsOf(items, 2) };
  const meets = dated.filter(({ date }) => fits(known, date, claim));
  // A deed that was another one: "replaced in 2026" of what was refinished.
  const right = meets.filter(
    ({ item }) => claim.deed === undefined || answerOf(known, item, claim.deed) !== 'no',
  );
  if (right.length > 0 && right.every(({ date }) => mayBeOlder(known, date, claim)))
    return {
      verdict: 'no-fact',
      rule,
      because: OPEN_SPAN,
      facts: factsOf(right.map(({ item }) => item)),
    };
  const late = claim.all === true ? notAll(known, items, claim) : [];
  if (right.length > 0 && late.length > 0)
    return {
      verdict: 'wider',
      rule,
      because: 'so of some, but not of all',
      facts: factsOf(late, 3),
    };
  if (right.length > 0)
    return {
      verdict: 'backed',
      rule,
      because: 'its date is that',
      facts: factsOf(
        right.map(({ item }) => item),
        3,
      ),
    };
  const year = claim.moment.kind === 'year' ? String(claim.moment.first) : undefined;
  // A year in a note on a thing whose own date is known is that of something else.
  const written =
    year === undefined
      ? []
      : items.filter(
          ({ words, what, done, made }) =>
            what.includes(year) || (done === undefined && made === undefined && words.includes(year)),
        );
  if (written.length > 0 && claim.deed === undefined)
    return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(written, 2) };
  const shown = meets.length > 0 ? meets : dated;
  const of = [...new Set(shown.map(({ item }) => item))];
  return {
    verdict: 'contradicted',
    rule,
    because:
      meets.length > 0
        ? 'the folder tells another deed'
        : `the folder says ${printDate((shown[0] as { date: HouseDate }).date)}`,
    facts: factsOf(of),
  };
}

const COATED = /^(serviced|painted|refinished|repaired|updated)$/;

/** "Put down last year", of what has no date and was left as found by owners who bought the house before that. */
function isOlderThanPurchase(known: Known, items: readonly Item[], { moment, deed }: DateClaim): boolean {
  const bought = known.house.house.bought?.earliest;
  const things = items.filter(({ kind }) => kind !== 'structure' && kind !== 'identity');
  if (bought === undefined || things.length === 0 || !things.every(({ kept }) => kept)) return false;
  if (deed !== undefined && COATED.test(deed)) return false;
  const owned = monthsBefore(known.asOf, bought);
  if (moment.kind === 'year') return moment.first > Number(bought.slice(0, 4));
  return (moment.kind === 'age' ? moment.years * MONTHS_OF_A_YEAR : moment.months) < owned - 1;
}

/** "In the last ten years", of what was done in a year of a span of which only the last is so young. */
function mayBeOlder({ asOf }: Known, { earliest, latest }: HouseDate, { moment }: DateClaim): boolean {
  if (moment.kind !== 'within') return false;
  const oldest = earliest === undefined ? Number.POSITIVE_INFINITY : monthsBefore(asOf, earliest);
  return oldest > moment.months + 1 && oldest - monthsBefore(asOf, latest ?? asOf) > MONTHS_OF_A_YEAR;
}

const MONTHS_OF_A_YEAR = 12;

/** Of several, those whose own dates are all others. */
const notAll = (known: Known, items: readonly Item[], claim: DateClaim): Item[] =>
  items.filter((item) => {
    if (item.kind !== 'system' && item.kind !== 'finish') return false;
    const dates = datesOf(item, claim.deed);
    return dates.length > 0 && !dates.some((date) => fits(known, date, claim));
  });

function datesOf(item: Item, deed: string | undefined): HouseDate[] {
  if (deed === undefined && item.kind === 'work' && item.deed !== 'moved' && !putsIn(item.deed)) return [];
  if (deed === 'serviced')
    return [
      item.serviced ?? (item.deed === 'serviced' || item.deed === 'cleaned' ? item.done : undefined),
    ].filter((date) => date !== undefined);
  if (
    deed !== undefined &&
    deed !== 'new' &&
    deed !== 'newer' &&
    deed !== 'original' &&
    item.done !== undefined
  )
    return [item.done];
  return [item.done, item.made].filter((date) => date !== undefined);
}

function fits(known: Known, date: HouseDate, { moment, hedge }: DateClaim): boolean {
  const { earliest, latest } = date;
  if (moment.kind === 'year') {
    const slack = hedge === 'about' || date.about ? 1 : 0;
    const to = Number((latest ?? known.asOf).slice(0, 4));
    // "1990 or before" is no wide field: sixty years.
    const from = earliest === undefined ? to - 60 : Number(earliest.slice(0, 4));
    if (from - slack > moment.last || to + slack < moment.first) return false;
    if (moment.month === undefined || date.precision === 'year') return true;
    if (earliest === undefined || latest === undefined || date.precision === 'span') return true;
    // A month beside the day of the paper: the work and its bill fall into neighbouring months.
    const named = moment.first * 12 + moment.month;
    const at = (day: string): number => Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7));
    return named >= at(earliest) - 1 && named <= at(latest) + 1;
  }
  // "2015 or after" may be of today, and is no contradiction of any age up to that year.
  const youngest = monthsBefore(known.asOf, latest ?? known.asOf);
  const oldest = earliest === undefined ? youngest + 1200 : monthsBefore(known.asOf, earliest);
  if (moment.kind === 'within') return youngest <= moment.months + 1;
  const months = moment.kind === 'age' ? moment.years * 12 : moment.months;
  if (hedge === 'under') return youngest <= months;
  if (hedge === 'over') return oldest >= months;
  const atOffer = monthsBefore(known.offered, latest ?? known.offered);
  const near = moment.kind === 'ago' && months < 12 ? 4 : 12;
  const span = (low: number, high: number): boolean => months >= low - near && months < high + near + 1;
  return span(youngest, oldest) || span(atOffer, Math.max(atOffer, oldest - youngest + atOffer));
}
