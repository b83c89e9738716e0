/**
 * What a buyer’s inspector asks of the work and the folder leaves open: a permit without its final inspection, a hired
 * trade of a licensed kind without a licence number. Work without any permit is told by `gaps-in-work.ts`.
 *
 * Common practice, no source: which trades are licensed and what needs a permit is for the state and the office to say.
 */
import { hiredWork } from './duties/contractor-work.js';
import { addLine, BUYER, type Gap, type GapSources, rankOf } from './gap.js';

export function permitGaps({ house }: GapSources): Gap[] {
  return [...permitsWithoutFinal(house), ...tradesWithoutLicence(house)];
}

function permitsWithoutFinal(house: GapSources['house']): Gap[] {
  return house.permits.flatMap((permit, index): Gap[] =>
    permit.state === 'open' || permit.state === 'expired'
      ? [
          {
            path: ['permits', index, 'state'],
            audiences: BUYER,
            lacks: `${permit.number === undefined ? 'the permit' : `permit ${permit.number}`} for ${permit.what} is ${permit.state}: no final inspection is recorded`,
            hint: 'when it has passed, write  state: final  and  final:  with its day',
            rank: rankOf('permit'),
          },
        ]
      : [],
  );
}

const LICENSED_TRADES = /electric|plumb|\bgas\b|heating|cooling|\bair\b|\broof|structur|\bpool/i;

/** A licence that is said to be not known was asked for; only silence is named. */
function tradesWithoutLicence(house: GapSources['house']): Gap[] {
  const hired = new Set(hiredWork(house).map(({ person }) => person.id));
  return house.people.flatMap((person, index): Gap[] =>
    person.licence === undefined && hired.has(person.id) && LICENSED_TRADES.test(person.trade ?? '')
      ? [
          {
            path: ['people', index],
            audiences: BUYER,
            lacks: `${person.name} worked here as ${person.trade}, and no licence number is recorded`,
            hint: `${addLine('licence:')}  as they state it, or  licence: not known`,
            rank: rankOf('permit', 1),
          },
        ]
      : [],
  );
}
