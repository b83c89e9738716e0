/** The day of the contract, as written or as far as other days bound it. */
import { type HouseDate, printDate } from '../../facts/date.js';
import { dayWords } from '../../facts/date-moment.js';
import type { House } from '../../facts/house.js';
import type { DutyFact, Span } from './duty-fact.js';

/** When the sale closed or is to close: the word for it, else the sale of the money pages. */
export const closingOf = (house: House): HouseDate | undefined =>
  house.duties?.closing ?? house.money?.sale?.closed;

/** Known as a span: without a written contract it lies after the as-of day, or before a closing that has passed. */
export function contractDay(house: House, asOf: string): DutyFact & { readonly is: Span } {
  const written = house.duties?.contract;
  const about = {
    path: ['duties', 'contract'],
    asks: 'when the contract was signed',
    hint: house.duties === undefined ? 'duties: { contract: 2026-07-03 }' : 'contract: 2026-07-03',
  };
  if (written !== undefined)
    return {
      ...about,
      is: { low: written.earliest, high: written.latest },
      words: `contract of ${printDate(written)}`,
    };
  const closed = closingOf(house);
  if (closed?.latest !== undefined && closed.latest <= asOf)
    return {
      ...about,
      is: { low: firstBefore(house, closed.latest), high: closed.latest },
      words: `no contract date is written; before the closing of ${printDate(closed)}`,
    };
  return {
    ...about,
    is: { low: asOf, high: undefined },
    words: `no contract date is written; a contract from ${dayWords(asOf)} on`,
  };
}

/** The first day on which a contract before a closing can have been signed; a listing after the closing is none to count from. */
const firstBefore = ({ house: { listed, bought } }: House, closed: string): string | undefined =>
  [listed, bought].flatMap((date) => date?.earliest ?? []).find((day) => day <= closed);

/** The days on which an offer can have been accepted, and which of them was counted; an end that is left out is open. */
export interface OfferDay {
  readonly low: string | undefined;
  readonly high: string | undefined;
  readonly words: string;
}

/**
 * Without a contract an offer is accepted on the as-of day at the earliest, or on the day of a later listing. That day is
 * counted: what follows from it holds as things stand.
 */
export function offerDay(house: House, asOf: string): OfferDay {
  const { contract } = house.duties ?? {};
  const listed = house.house.listed;
  if (contract !== undefined)
    return { low: contract.earliest, high: contract.latest, words: `the contract of ${printDate(contract)}` };
  const closed = closingOf(house)?.latest;
  if (closed !== undefined && closed <= asOf)
    return {
      low: firstBefore(house, closed) ?? closed,
      high: closed,
      words: `a contract before the closing of ${dayWords(closed)}`,
    };
  if (listed?.earliest === undefined || listed.earliest <= asOf)
    return { low: asOf, high: asOf, words: `${dayWords(asOf)}, since no contract date is written` };
  return {
    low: listed.earliest,
    high: listed.latest ?? listed.earliest,
    words: `the listing of ${printDate(listed)}, since no contract date is written`,
  };
}
