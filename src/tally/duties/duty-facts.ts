/**
 * The facts that conditions of rules ask about, read from a house. What the folder doesn’t say is not known; where it
 * is read from something else than its own word, the words say from what.
 */
import { monthsBetween } from '../../facts/age.js';
import { printDate } from '../../facts/date.js';
import type { YesNo } from '../../facts/field-kinds.js';
import type { DutyWords, House } from '../../facts/house.js';
import { bedroomAt } from '../bedroom-at.js';
import { isThere } from '../still-there.js';
import type { DutyFactName } from '../tables/duties.js';
import { contractDay, offerDay } from './contract-day.js';
import { contractorFact } from './contractor-work.js';
import { type DutyFact, exactly, type Span } from './duty-fact.js';
import { renovatedForResale } from './for-resale.js';
import { ownerBuildFact, ownerPermitFact } from './owner-builder.js';

export type DutyFacts = Readonly<Record<DutyFactName, DutyFact>> & {
  readonly contract: { readonly is: Span };
};

/** `asOf`: YYYY-MM-DD; a contract that isn’t written is signed on that day at the earliest. */
export function readDutyFacts(house: House, asOf: string): DutyFacts {
  const { address } = house.house;
  return {
    state: {
      is: address.state,
      path: ['house', 'address', 'state'],
      words: `in ${address.state}`,
      asks: 'the state',
      hint: 'state: OH',
    },
    'year-built': yearBuilt(house),
    units: units(house),
    studio: studio(house),
    foreclosure: asked(house, 'foreclosure', 'whether it is a sale at foreclosure', [
      'a sale at foreclosure',
      'no sale at foreclosure',
    ]),
    condominium: condominium(house),
    association: asked(house, 'association', 'whether membership in an owners’ association is mandatory', [
      'membership in an association is mandatory',
      'no association with mandatory membership',
    ]),
    district: asked(house, 'district', 'whether it lies in a community development district', [
      'in a community development district',
      'in no community development district',
    ]),
    'seaward-of-line': asked(
      house,
      'seaward-of-line',
      'whether any of it is seaward of the coastal construction control line',
      [
        'seaward of the coastal construction control line',
        'not seaward of the coastal construction control line',
      ],
    ),
    'sinkhole-claim-paid': asked(house, 'sinkhole-claim-paid', 'whether an insurer paid you for a sinkhole', [
      'a sinkhole claim was paid',
      'no sinkhole claim was paid',
    ]),
    'sewer-lateral-defect': asked(
      house,
      'sewer-lateral-defect',
      'whether you know of a defect in the pipe to the sewer',
      ['a defect of the sewer lateral is known', 'no defect of the sewer lateral is known'],
    ),
    'declared-disaster': asked(
      house,
      'declared-disaster',
      'whether a roof was repaired after a declared disaster',
      ['roof work after a declared disaster', 'no roof work after a declared disaster'],
    ),
    unincorporated: asked(house, 'unincorporated', 'whether it lies outside every city and town', [
      'outside the limits of any city or town',
      'within a city or town',
    ]),
    subdivided: asked(house, 'subdivided', 'whether it lies in a recorded subdivision', [
      'in a recorded subdivision',
      'in no recorded subdivision',
    ]),
    pool: pool(house),
    'for-resale': renovatedForResale(house),
    'contractor-used': contractorFact(house),
    contract: contractDay(house, asOf),
    'months-owned': monthsOwned(house, asOf),
    'owner-builder-permit': ownerPermitFact(house),
    'months-from-owner-build-to-offer': ownerBuildFact(house, asOf),
  };
}

/** Words under `duties:` that are yes, no or not known. */
type YesNoWord = {
  [Word in keyof DutyWords]-?: Exclude<DutyWords[Word], undefined> extends YesNo ? Word : never;
}[keyof DutyWords];

/** A yes or no that is written under `duties:`, or not known. */
function asked(
  house: House,
  word: YesNoWord,
  asks: string,
  [yes, no]: readonly [yes: string, no: string],
): DutyFact {
  const written = house.duties?.[word];
  const known = written === 'yes' || written === 'no' ? written : undefined;
  return {
    is: known,
    path: ['duties', word],
    words:
      known === 'yes'
        ? yes
        : known === 'no'
          ? no
          : `${asks} is ${written === undefined ? 'not written' : 'not known'}`,
    asks,
    hint: house.duties === undefined ? `duties: { ${word}: no }` : `${word}: no`,
  };
}

/** The same, with what the rest of the folder shows where the word itself is left out. */
function askedOrShown(
  house: House,
  word: YesNoWord,
  asks: string,
  words: readonly [yes: string, no: string],
  shown: { readonly is: 'yes' | 'no'; readonly words: string; readonly path: DutyFact['path'] } | undefined,
): DutyFact {
  const written = asked(house, word, asks, words);
  return house.duties?.[word] !== undefined ? written : { ...written, ...shown };
}

function yearBuilt(house: House): DutyFact {
  const built = house.house.built.value;
  const year = (iso: string | undefined): number | undefined =>
    iso === undefined ? undefined : Number(iso.slice(0, 4));
  return {
    is: built && { low: year(built.earliest), high: year(built.latest) },
    path: ['house', 'built'],
    words: built === undefined ? 'the year built is not known' : `built ${printDate(built)}`,
    asks: 'when it was built',
    hint: 'built: 1948',
  };
}

function units(house: House): DutyFact {
  const written = house.duties?.units;
  const { kind } = house.house;
  const one = kind !== 'apartment-style' && written === undefined;
  return {
    is: written !== undefined ? exactly(written) : one ? exactly(1) : undefined,
    path: one ? ['house', 'kind'] : ['duties', 'units'],
    words:
      written !== undefined
        ? written === 1
          ? 'one dwelling'
          : `${written} dwellings`
        : one
          ? `one dwelling, as the house is ${kind}`
          : 'the number of dwellings is not written',
    asks: 'how many dwellings there are',
    hint: house.duties === undefined ? 'duties: { units: 1 }' : 'units: 1',
  };
}

/** A bedroom among the rooms wins over the word: one slip would else put the lead rules out of sight. */
function studio(house: House): DutyFact {
  const written = asked(house, 'studio', 'whether it is a dwelling without a bedroom', [
    'a dwelling without a bedroom',
    'a dwelling with a bedroom',
  ]);
  const bedroom = bedroomAt(house);
  return bedroom < 0
    ? written
    : { ...written, is: 'no', words: 'it has a bedroom', path: ['rooms', bedroom] };
}

/** A house that stands alone is taken to be none; rowhouses often are. */
function condominium(house: House): DutyFact {
  const { kind } = house.house;
  return askedOrShown(
    house,
    'condominium',
    'whether it is a condominium or cooperative',
    ['a condominium or cooperative', 'no condominium or cooperative'],
    kind === 'detached' || kind === 'manufactured'
      ? { is: 'no', words: `no condominium, as the house is ${kind}`, path: ['house', 'kind'] }
      : undefined,
  );
}

function pool(house: House): DutyFact {
  const system = house.systems.findIndex((one) => isThere(one) && /\bpool\b/i.test(one.is));
  const path = house.pool !== undefined ? ['pool'] : system >= 0 ? ['systems', system] : undefined;
  return askedOrShown(
    house,
    'pool',
    'whether there is a pool',
    ['the house has a pool', 'the house has no pool'],
    path && { is: 'yes', words: 'the folder names a pool', path },
  );
}

/** Completed months from the purchase to the day an offer is accepted: the contract, else the first day it can be. */
function monthsOwned(house: House, asOf: string): DutyFact {
  const { bought } = house.house;
  const path = ['house', 'bought'];
  const asks = 'when you bought it';
  const hint = 'bought: 2026-02-17';
  if (bought === undefined)
    return { is: undefined, path, words: 'when it was bought is not written', asks, hint };
  const offer = offerDay(house, asOf);
  const is = {
    low: bought.latest && offer.low ? monthsBetween(bought.latest, offer.low) : 0,
    high: bought.earliest && offer.high ? monthsBetween(bought.earliest, offer.high) : undefined,
  };
  const count =
    is.low === is.high
      ? `${is.low}`
      : is.high === undefined
        ? `at least ${is.low}`
        : `${is.low} to ${is.high}`;
  return {
    is,
    path,
    words: `${count} months from the purchase, ${printDate(bought)}, to ${offer.words}`,
    asks,
    hint,
  };
}
