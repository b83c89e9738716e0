/**
 * Permits that the owner took out as his own contractor, and how soon after their completion the house was offered.
 *
 * Several states presume from an offer within a year that the work was done to sell. The day of the listing counts as
 * well as contract and closing, and the anniversary itself counts in, which is the careful reading.
 */
import type { FactPath } from '../../diagnostics/fact-path.js';
import { addDays, monthsBetween } from '../../facts/age.js';
import { compareText } from '../../facts/compare-text.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { dayWords } from '../../facts/date-moment.js';
import type { House, Permit } from '../../facts/house.js';
import { closingOf } from './contract-day.js';
import { isSince } from './contractor-work.js';
import type { DutyFact, Span } from './duty-fact.js';

type Placed = Permit & { readonly path: FactPath };

/** Permits that there are, since the purchase; one that was asked for and not found is none. */
function permitsOf(house: House): Placed[] {
  const earlier = ({ issued, final }: Permit): boolean => isSince(house, final ?? issued) === 'no';
  return house.permits.flatMap((permit, index) =>
    permit.state === 'none-found' || earlier(permit) ? [] : [{ ...permit, path: ['permits', index] }],
  );
}

const nameOf = ({ number, what }: Permit): string =>
  number === undefined ? `permit for ${what}` : `permit ${number}`;

export function ownerPermitFact(house: House): DutyFact {
  const permits = permitsOf(house);
  const own = permits.find((permit) => permit['taken-by'] === 'owner');
  const open = permits.find((permit) => permit['taken-by'] !== 'contractor');
  const about = { asks: 'who took out the permits', hint: 'taken-by: contractor' };
  if (own !== undefined)
    return {
      ...about,
      is: 'yes',
      path: [...own.path, 'taken-by'],
      words: `${nameOf(own)} was taken out by the owner`,
    };
  if (permits.length === 0)
    return {
      is: undefined,
      path: ['permits'],
      words: 'no permit since the purchase is recorded',
      asks: 'whether there was a permit, and who took it out',
      hint: 'permits: [{ id: permit-1, what: kitchen circuits, state: final, taken-by: contractor }]',
    };
  if (open !== undefined)
    return { ...about, is: undefined, path: open.path, words: `who took out ${nameOf(open)} is not written` };
  return { ...about, is: 'no', path: ['permits'], words: 'contractors took out the recorded permits' };
}

/** Months from the completion of an owner’s own permit to the first offer, 0 where it isn’t complete; of several, the fewest. */
export function ownerBuildFact(house: House, asOf: string): DutyFact {
  const own = permitsOf(house).filter((permit) => permit['taken-by'] === 'owner');
  const measured = own.map((permit) => measure(permit, offers(house), asOf));
  const [worst] = measured.toSorted((a, b) => a.is.low - b.is.low);
  // Without one, what is missing is whether there is one.
  if (worst === undefined) return { ...ownerPermitFact(house), is: undefined };
  // Of two that are known as spans, another may be surely within the time where the first only may be.
  const sure = measured.reduce((least, one) => (highOf(one) < highOf(least) ? one : least), worst);
  return {
    is: { low: worst.is.low, high: sure.is.high },
    path: worst.path,
    words: sure === worst ? worst.words : `${worst.words}; ${sure.words}`,
    asks: 'when the work under the owner’s permit was complete',
    hint: 'final: 2026-05-19',
  };
}

/** Months from a completion to the first offer. */
interface Measured extends Pick<DutyFact, 'path' | 'words'> {
  readonly is: Span & { readonly low: number; readonly high: number | undefined };
}

const highOf = ({ is }: Measured): number => is.high ?? Number.MAX_SAFE_INTEGER;

interface Offer {
  readonly what: string;
  /** Its first day; empty where it may be any. */
  readonly from: string;
  readonly date: HouseDate;
}

/** The days on which the house was offered or sold or ready to be let, as far as they are written. */
function offers(house: House): Offer[] {
  const days: readonly (readonly [string, HouseDate | undefined])[] = [
    ['listed', house.house.listed],
    ['contract', house.duties?.contract],
    ['closing', closingOf(house)],
    ['ready to be let', house.money?.rental?.['in-service']],
  ];
  return days.flatMap(([what, date]) =>
    date === undefined ? [] : [{ what, from: date.earliest ?? '', date }],
  );
}

function measure(permit: Placed, offered: readonly Offer[], asOf: string): Measured {
  const complete = permit.final;
  const [first] = offered.toSorted((a, b) => compareText(a.from, b.from));
  const when = first === undefined ? 'not offered yet' : `${first.what} ${printDate(first.date)}`;
  const path = [...permit.path, 'final'];
  if (complete?.latest === undefined)
    return {
      is: { low: 0, high: first === undefined ? undefined : 0 },
      path,
      words: `no final inspection of ${nameOf(permit)} is written, so it counts as not complete; ${when}`,
    };
  const from = complete.latest;
  // The first offer is no later than the last day of any.
  const [until] = offered.flatMap(({ date }) => date.latest ?? []).toSorted();
  return {
    is: {
      low: monthsUpTo(from, first?.from ?? asOf),
      high: until === undefined ? undefined : monthsUpTo(complete.earliest ?? from, until),
    },
    path,
    words: `${nameOf(permit)} complete ${printDate(complete)}; ${first === undefined ? `not offered by ${dayWords(asOf)}` : when}`,
  };
}

/** The smallest number of months after `from` on whose day `to` has come or passed: 12 on the anniversary, 13 a day later. */
export function monthsUpTo(from: string, to: string): number {
  return to <= from ? 0 : monthsBetween(from, addDays(to, -1)) + 1;
}
