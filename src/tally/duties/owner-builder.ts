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
import type { DutyFact, Span } from './duty-fact.js';

type Placed = Permit & { readonly path: FactPath };

/** Permits that there are, since the purchase; one that was asked for and not found is none. */
function permitsOf(house: House): Placed[] {
  const bought = house.house.bought?.earliest;
  const earlier = ({ issued, final }: Permit): boolean => {
    const last = (final ?? issued)?.latest;
    return bought !== undefined && last !== undefined && last < bought;
  };
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

/** Of the owner’s own permit that weighs most: months from its completion to the first offer, 0 where it isn’t complete. */
export function ownerBuildFact(house: House, asOf: string): DutyFact {
  const own = permitsOf(house).filter((permit) => permit['taken-by'] === 'owner');
  const about = { asks: 'when the work under the owner’s permit was complete', hint: 'final: 2026-05-19' };
  const measured = own
    .map((permit) => measure(permit, offers(house), asOf))
    .sort((a, b) => Number(a.is.low) - Number(b.is.low));
  const [worst] = measured;
  // Without one, what is missing is whether there is one.
  return worst === undefined ? { ...ownerPermitFact(house), is: undefined } : { ...about, ...worst };
}

interface Offer {
  readonly what: string;
  /** Its first day. */
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
    date?.earliest === undefined ? [] : [{ what, from: date.earliest, date }],
  );
}

function measure(
  permit: Placed,
  offered: readonly Offer[],
  asOf: string,
): Pick<DutyFact, 'path' | 'words'> & { readonly is: Span } {
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
  const to = first?.from ?? asOf;
  return {
    is: {
      low: monthsUpTo(from, to),
      high:
        first?.date.latest === undefined
          ? undefined
          : monthsUpTo(complete.earliest ?? from, first.date.latest),
    },
    path,
    words: `${nameOf(permit)} complete ${printDate(complete)}; ${first === undefined ? `not offered by ${dayWords(asOf)}` : when}`,
  };
}

/** The smallest number of months after `from` on whose day `to` has come or passed: 12 on the anniversary, 13 a day later. */
export function monthsUpTo(from: string, to: string): number {
  return to <= from ? 0 : monthsBetween(from, addDays(to, -1)) + 1;
}
