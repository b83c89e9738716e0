/** Each fact that a rule may ask of, as a whole: what it is, where it stands, how it is said and what would settle it. */
import { describe, expect, it } from 'vitest';
import type { DutyFact } from '../../src/tally/duties/duty-fact.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import type { DutyFactName } from '../../src/tally/tables/duties.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const fact = (name: DutyFactName, spec: PartialSpec = {}): DutyFact =>
  readDutyFacts(houseFrom(spec), '2026-11-20')[name];

/** A house of which the kind alone says nothing of condominiums. */
const ROW: PartialSpec = { house: { kind: 'attached' } };

describe('a word under duties:', () => {
  it.each([
    ['foreclosure', 'whether it is a sale at foreclosure', 'a sale at foreclosure', 'no sale at foreclosure'],
    [
      'condominium',
      'whether it is a condominium or cooperative',
      'a condominium or cooperative',
      'no condominium or cooperative',
    ],
    [
      'association',
      'whether membership in an owners’ association is mandatory',
      'membership in an association is mandatory',
      'no association with mandatory membership',
    ],
    [
      'district',
      'whether it lies in a community development district',
      'in a community development district',
      'in no community development district',
    ],
    [
      'seaward-of-line',
      'whether any of it is seaward of the coastal construction control line',
      'seaward of the coastal construction control line',
      'not seaward of the coastal construction control line',
    ],
    [
      'sinkhole-claim-paid',
      'whether an insurer paid you for a sinkhole',
      'a sinkhole claim was paid',
      'no sinkhole claim was paid',
    ],
    [
      'sewer-lateral-defect',
      'whether you know of a defect in the pipe to the sewer',
      'a defect of the sewer lateral is known',
      'no defect of the sewer lateral is known',
    ],
    [
      'declared-disaster',
      'whether a roof was repaired after a declared disaster',
      'roof work after a declared disaster',
      'no roof work after a declared disaster',
    ],
    [
      'unincorporated',
      'whether it lies outside every city and town',
      'outside the limits of any city or town',
      'within a city or town',
    ],
    [
      'subdivided',
      'whether it lies in a recorded subdivision',
      'in a recorded subdivision',
      'in no recorded subdivision',
    ],
    ['pool', 'whether there is a pool', 'the house has a pool', 'the house has no pool'],
    [
      'studio',
      'whether it is a dwelling without a bedroom',
      'a dwelling without a bedroom',
      'a dwelling with a bedroom',
    ],
    [
      'for-resale',
      'whether it was renovated to be sold',
      'renovated to be sold, as written',
      'not renovated to be sold, as written',
    ],
  ] as const)('%s says yes or no, and is else asked for', (word, asks, yes, no) => {
    const about = { path: ['duties', word], asks, hint: `${word}: no` };
    const written = (value: string) => fact(word, { ...ROW, duties: { [word]: value } });
    expect(written('yes')).toEqual({ ...about, is: 'yes', words: yes });
    expect(written('no')).toEqual({ ...about, is: 'no', words: no });
    expect(written('not known')).toEqual({ ...about, is: undefined, words: `${asks} is not known` });
    const missing = word === 'for-resale' ? 'not known' : 'not written';
    expect(fact(word, { ...ROW, duties: {} })).toEqual({
      ...about,
      is: undefined,
      words: `${asks} is ${missing}`,
    });
    // Without any word under duties: the line that begins them is what to type.
    expect(fact(word, ROW).hint).toBe(`duties: { ${word}: no }`);
  });
});

describe('what the rest of the folder shows', () => {
  const pool = (...systems: NonNullable<PartialSpec['systems']>): PartialSpec => ({ systems });
  const named = { is: 'yes', words: 'the folder names a pool' };
  const room = (id: string, use: 'hall' | 'bedroom') => ({ id, level: 'main', use });
  const bedroom: PartialSpec = {
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [room('hall', 'hall'), room('bed', 'bedroom')],
  };
  it.each<readonly [string, DutyFactName, PartialSpec, Partial<DutyFact>]>([
    [
      'a house that stands alone is no condominium',
      'condominium',
      {},
      { is: 'no', words: 'no condominium, as the house is detached', path: ['house', 'kind'] },
    ],
    [
      'nor is one that was brought there',
      'condominium',
      { house: { kind: 'manufactured' } },
      { is: 'no', words: 'no condominium, as the house is manufactured', path: ['house', 'kind'] },
    ],
    [
      'unless it is said to be one',
      'condominium',
      { duties: { condominium: 'yes' } },
      { is: 'yes', words: 'a condominium or cooperative', path: ['duties', 'condominium'] },
    ],
    [
      'or that it isn’t known',
      'condominium',
      { duties: { condominium: 'not known' } },
      { is: undefined, path: ['duties', 'condominium'] },
    ],
    ['a pool under its own word', 'pool', { pool: {} }, { ...named, path: ['pool'] }],
    [
      'equipment of a pool among the systems',
      'pool',
      pool({ id: 'p', is: 'pool pump' }),
      { ...named, path: ['systems', 0] },
    ],
    [
      'also where it isn’t the first',
      'pool',
      pool({ id: 'w', is: 'water heater' }, { id: 'p', is: 'Pool heater' }),
      { ...named, path: ['systems', 1] },
    ],
    [
      'but none that was taken out',
      'pool',
      pool({ id: 'p', is: 'pool pump', did: 'removed' }),
      { is: undefined, path: ['duties', 'pool'] },
    ],
    [
      'and nothing else by its sound',
      'pool',
      pool({ id: 'p', is: 'spooling reel' }),
      { is: undefined, path: ['duties', 'pool'] },
    ],
    [
      'a bedroom, wherever it stands among the rooms',
      'studio',
      bedroom,
      { is: 'no', words: 'it has a bedroom', path: ['rooms', 1] },
    ],
    [
      'the first room, if that is one',
      'studio',
      { ...bedroom, rooms: [room('bed', 'bedroom')] },
      { is: 'no', words: 'it has a bedroom', path: ['rooms', 0] },
    ],
    [
      'and it wins over the word',
      'studio',
      { ...bedroom, duties: { studio: 'yes' } },
      { is: 'no', words: 'it has a bedroom', path: ['rooms', 1] },
    ],
  ])('%s', (_, name, spec, expected) => {
    expect(fact(name, spec)).toMatchObject(expected);
  });
});

describe('facts that are no yes or no', () => {
  it.each<readonly [string, DutyFactName, PartialSpec, DutyFact]>([
    [
      'the state',
      'state',
      {},
      { is: 'OH', path: ['house', 'address', 'state'], words: 'in OH', asks: 'the state', hint: 'state: OH' },
    ],
    [
      'the year built',
      'year-built',
      { house: { built: '1946/1948' } },
      {
        is: { low: 1946, high: 1948 },
        path: ['house', 'built'],
        words: 'built between 1946 and 1948',
        asks: 'when it was built',
        hint: 'built: 1948',
      },
    ],
    [
      'a year built that nobody knows',
      'year-built',
      { house: { built: 'not known' } },
      {
        is: undefined,
        path: ['house', 'built'],
        words: 'the year built is not known',
        asks: 'when it was built',
        hint: 'built: 1948',
      },
    ],
    [
      'dwellings by the kind of house',
      'units',
      {},
      {
        is: { low: 1, high: 1 },
        path: ['house', 'kind'],
        words: 'one dwelling, as the house is detached',
        asks: 'how many dwellings there are',
        hint: 'duties: { units: 1 }',
      },
    ],
    [
      'dwellings as written',
      'units',
      { duties: { units: 2 } },
      {
        is: { low: 2, high: 2 },
        path: ['duties', 'units'],
        words: '2 dwellings',
        asks: 'how many dwellings there are',
        hint: 'units: 1',
      },
    ],
    [
      'dwellings of a house of several',
      'units',
      { house: { kind: 'apartment-style' } },
      {
        is: undefined,
        path: ['duties', 'units'],
        words: 'the number of dwellings is not written',
        asks: 'how many dwellings there are',
        hint: 'duties: { units: 1 }',
      },
    ],
    [
      'months owned, without a purchase',
      'months-owned',
      {},
      {
        is: undefined,
        path: ['house', 'bought'],
        words: 'when it was bought is not written',
        asks: 'when you bought it',
        hint: 'bought: 2026-02-17',
      },
    ],
    [
      'months owned, from a purchase of which the writer is not certain',
      'months-owned',
      { house: { bought: '2026-02-17?' }, duties: { contract: '2026-06-16' } },
      {
        is: { low: 3, high: 3 },
        path: ['house', 'bought'],
        words: '3 months from the purchase, 17 February 2026 (not certain), to the contract of 16 June 2026',
        asks: 'when you bought it',
        hint: 'bought: 2026-02-17',
      },
    ],
  ])('%s', (_, name, spec, expected) => {
    expect(fact(name, spec)).toEqual(expected);
  });
});
