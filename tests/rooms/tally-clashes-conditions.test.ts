/** What a clash hangs on besides its words: days, places and states, each where it holds and where it does not. */
import { describe, expect, it } from 'vitest';
import { placesOf } from './clashes-as-text.js';
import type { PartialSpec } from './house-from.js';

const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;
const HALL = { id: 'hall', level: 'main', use: 'hall' } as const;
const found = (spec: PartialSpec): string[] => placesOf({ spec });

type Case = readonly [what: string, spec: PartialSpec, places: readonly string[]];
const old = (done: string | undefined, installed = '1990'): PartialSpec => ({
  house: { built: 2001 },
  systems: [{ id: 'f', is: 'chimney', installed }],
  work: [
    { id: 'a', what: 'rail', did: 'new' },
    { id: 'b', what: 'chimney', did: 'new', systems: ['f'], ...(done === undefined ? {} : { done }) },
  ],
});
const finish = (done: string | undefined): PartialSpec => ({
  house: { built: 2001 },
  levels: [LEVEL],
  rooms: [{ ...HALL, finishes: [{ on: 'floor', what: 'oak', done: '1990', work: 'a' }] }],
  work: [
    { id: 'a', what: 'floor', did: 'new', ...(done === undefined ? {} : { done }) },
    { id: 'b', what: 'rail', did: 'new', done: '2002' },
  ],
});
const made = (year: string, more: object = {}): PartialSpec => ({
  house: { built: '2001' },
  systems: [{ id: 'f', is: 'furnace', made: year, ...more }],
});

describe('a day', () => {
  it.each<Case>([
    ['is told at the work alone where its system has the same', old('1990'), ['work[1].done']],
    ['is told at both where they differ', old('1991'), ['work[1].done', 'systems[0].installed']],
    ['is told at the system where the work has none', old(undefined), ['systems[0].installed']],
    ['of a finish is told beside its work', finish('1990'), ['work[0].done']],
    ['of a finish is told where its work has none', finish(undefined), ['rooms[0].finishes[0].done']],
    ['two years before the house is of the maker’s stock', made('1999-01-01'), []],
    ['of the day before that is not', made('1998-12-31'), ['systems[0].made']],
    ['is of no furnace but of what belongs to one', made('1990', { is: 'filter, furnace' }), []],
    ...[
      'second hand',
      'used',
      'salvaged',
      'reclaimed',
      'moved here',
      'from another house',
      'from an older house',
    ].map((note): Case => [`is explained by “${note}”`, made('1990', { note }), []]),
  ])('%s', (_, spec, places) => {
    expect(found(spec)).toEqual(places);
  });

  const early = (note: string): PartialSpec => ({
    house: { bought: '2026-02-17' },
    work: [{ id: 'a', what: 'rail', did: 'new', done: '2026-01', by: 'owner', note }],
  });
  it.each([
    ...['seller', 'an earlier owner', 'the previous owner', 'a former owner', 'before us'],
    ...['before closing', 'before the closing', 'before purchase', 'before the purchase'],
  ])('before the purchase is explained by “%s”', (note) => {
    expect(found(early(note))).toEqual([]);
    expect(found(early('soon'))).toEqual(['work[0].done']);
  });
  const late = (note: string): PartialSpec => ({
    money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } },
    work: [{ id: 'a', what: 'rail', did: 'new', done: '2026-09', by: 'owner', note }],
  });
  it.each(['after closing', 'after the closing', 'after sale', 'after the sale', 'for the buyer'])(
    'after the sale is explained by “%s”',
    (note) => {
      expect(found(late(note))).toEqual([]);
      expect(found(late('soon'))).toEqual(['work[0].done']);
    },
  );
});

describe('a permit', () => {
  const issued = (more: { note?: string; from?: string }): string[] =>
    found({
      permits: [{ id: 'p', what: 'rail', state: 'open', issued: '2026-05-11', ...more }],
      work: [{ id: 'a', what: 'rail', did: 'new', done: '2026-03', permit: 'p' }],
    });
  it.each(['got after the fact', 'got afterwards', 'a later one', 'retroactive'])(
    'is explained by “%s”',
    (said) => {
      expect(issued({ note: said })).toEqual([]);
      expect(issued({ from: said })).toEqual([]);
      expect(issued({ note: 'in the binder' })).toEqual(['work[0].done']);
    },
  );

  const other = (permit: string, work: string, systems: PartialSpec['systems'] = []): string[] =>
    found({
      permits: [{ id: 'p', what: permit, state: 'open' }],
      systems,
      work: [{ id: 'a', what: work, did: 'new', permit: 'p' }],
    });
  it.each([
    ['roof', 'roofing', 'shingle', 'shingles', 'underlayment'],
    ['electric', 'electrical', 'circuit', 'circuits', 'wiring', 'receptacle', 'receptacles', 'panel'],
    ['alarm', 'alarms', 'light', 'lights'],
    [
      'plumbing',
      'plumb',
      'pipe',
      'pipes',
      'drain',
      'drains',
      'water heater',
      'water line',
      'water lines',
      'sewer',
    ],
    ['pool', 'spa'],
    ['furnace', 'boiler', 'heat pump', 'air condition', 'air conditioner', 'duct', 'ducts'],
  ])('is of one trade by its words: %s, %s …', (...words) => {
    const [far, own] = words.includes('pool') ? ['roof', 'pool'] : ['pool', words[0] ?? ''];
    for (const word of words) {
      expect(other(far, word), word).toEqual(['work[0].permit']);
      expect(other(word, far), word).toEqual(['work[0].permit']);
      expect(other(own, word), word).toEqual([]);
    }
  });
  it.each([
    'house',
    'home',
    'whole',
    'remodel',
    'remodeling',
    'renovation',
    'alteration',
    'alterations',
    'addition',
  ])('for more than one trade may be for the %s', (word) => {
    expect(other(`electrical, ${word}`, 'roof')).toEqual([]);
  });
  it('is of a trade by neither half a word nor another system', () => {
    expect(other('electrical', 'proofing')).toEqual([]);
    expect(other('electrical', 'roof', [{ id: 'f', is: 'furnace' }])).toEqual(['work[0].permit']);
  });
});

describe('one thing', () => {
  const fuel = (is: string, burns: 'gas' | 'oil' | 'propane' | 'electric'): string[] =>
    found({ systems: [{ id: 'a', is, fuel: burns }] });
  it.each([
    ...['water heater', 'furnace', 'boiler', 'stove', 'range', 'oven', 'cooktop', 'dryer', 'fireplace'],
    'generator',
  ])('that burns is a %s', (is) => {
    expect(fuel(`${is}, gas`, 'oil')).toEqual(['systems[0].fuel']);
    expect(fuel(`${is}, gas`, 'propane')).toEqual([]);
    expect(fuel(`${is}, wood`, 'propane')).toEqual(['systems[0].fuel']);
    expect(fuel(`${is}, oil`, 'oil')).toEqual([]);
    expect(fuel(`${is}, gaslight`, 'oil')).toEqual([]);
  });
  it('has a serial number by its letters too', () => {
    const two = (serial: string): string[] =>
      found({
        systems: [
          { id: 'a', is: 'range', label: { serial: 'AB-12' } },
          { id: 'b', is: 'washer', label: { serial } },
        ],
      });
    expect(two('CD-12')).toEqual([]);
    expect(two('a.b.1.2')).toEqual(['systems[1].label.serial']);
  });
  const heated = (...states: readonly ('yes' | 'no')[]): PartialSpec['rooms'] =>
    states.map((state, at) => ({ ...HALL, id: `room-${at}`, heated: state }));
  const gone = { id: 'f', is: 'furnace', did: 'removed' } as const;
  it.each<Case>([
    [
      'heats where one of two is there',
      { systems: [gone, { id: 'b', is: 'boiler' }], rooms: heated('yes') },
      [],
    ],
    [
      'heats the first room that is heated',
      { systems: [gone], rooms: heated('no', 'yes') },
      ['rooms[1].heated'],
    ],
    ['heats no room', { systems: [gone], rooms: heated('no') }, []],
  ])('%s', (_, spec, places) => {
    expect(found({ levels: [LEVEL], ...spec })).toEqual(places);
  });
  it('is no other thing that is for it', () => {
    const list = (what: string): string[] =>
      found({
        conveys: [
          { what: 'chair for bench', stays: 'yes' },
          { what, stays: 'no' },
        ],
      });
    expect(list('chair for the bench')).toEqual([]);
    expect(list('A chair for bench')).toEqual(['conveys[1].stays']);
    expect(list('an chair for bench')).toEqual(['conveys[1].stays']);
  });
});

describe('storeys', () => {
  type Level = NonNullable<PartialSpec['levels']>[number];
  const one = (...levels: readonly Level[]): string[] =>
    found({ house: { storeys: 'one' }, levels: [...levels] });
  const over = (name: string, more: Partial<Level> = {}): Level => ({ ...LEVEL, id: 'over', name, ...more });
  it.each([
    ...['Upper level', 'Upstairs', 'Second floor', '2nd floor', 'Third floor', '3rd floor'],
    ...['Half storey', 'Half-storey', 'Half story', 'Half-story'],
  ])('are two where one is called “%s”', (name) => {
    expect(one(LEVEL, over(name))).toEqual(['house.storeys']);
    expect(one(over(name, { grade: 'below' }), LEVEL, { ...LEVEL, id: 'wing', name: 'Wing' })).toEqual([]);
    expect(one(over(name), { ...LEVEL, id: 'cellar', name: 'Cellar', grade: 'below' })).toEqual([]);
  });
  it.each([
    ['stair down to the main level', true],
    ['stair down to main level', true],
    ['stair down to the first floor', true],
    ['stair down to the ground', true],
    ['well down to the living room', true],
    ['stair down to the cellar', false],
  ])('are two where an opening is a %s: %s', (what, two) => {
    const wing = over('Wing', { openings: [{ what, size: `3' x 10'` }] });
    expect(one(LEVEL, wing)).toEqual(two ? ['house.storeys'] : []);
  });
});

describe('parking, pool, dues and lot', () => {
  it.each<Case>([
    ...['detached', 'freestanding', 'free-standing', 'separate'].map(
      (word): Case => [
        `a ${word} garage is not attached`,
        {
          house: { parking: `${word} garage` },
          structures: [{ id: 'g', is: 'garage', attached: true }],
        },
        ['house.parking'],
      ],
    ),
    ...['attached', 'built-in', 'integral'].map(
      (word): Case => [
        `a ${word} garage does not stand apart`,
        {
          house: { parking: `${word} garage` },
          structures: [{ id: 'g', is: 'garage', attached: false }],
        },
        ['house.parking'],
      ],
    ),
    ['a hall is no garage', { house: { parking: 'detached garage' }, levels: [LEVEL], rooms: [HALL] }, []],
    [
      'a pool may be told of in work',
      { duties: { pool: 'yes' }, work: [{ id: 'a', what: 'deck at the pool', did: 'new' }] },
      [],
    ],
    ['a pump may tell of a pool', { duties: { pool: 'yes' }, systems: [{ id: 'p', is: 'pool pump' }] }, []],
    [
      'no pool is left where its pump was taken out',
      { duties: { pool: 'no' }, systems: [{ id: 'p', is: 'pool pump', did: 'removed' }] },
      [],
    ],
    ...['owners', 'owners’ club', 'HOA', 'homeowners', 'condominium', 'cooperative'].map(
      (to): Case => [
        `dues to ${to} are an association’s`,
        { duties: { association: 'no' }, dues: [{ to, amount: '1.00', per: 'year' }] },
        ['duties.association'],
      ],
    ),
    [
      'dues may be voluntary by what they cover',
      {
        duties: { association: 'no' },
        dues: [{ to: 'HOA', amount: '1.00', per: 'year', covers: 'voluntary, garden' }],
      },
      [],
    ],
    [
      'an apartment lies on no lot of its own',
      { house: { kind: 'apartment-style', lot: '100 sq ft' }, levels: [LEVEL] },
      [],
    ],
    [
      'a lot of the size of the house is large enough',
      { house: { lot: '1,040 sq ft' }, levels: [LEVEL] },
      [],
    ],
  ])('%s', (_, spec, places) => {
    expect(found(spec)).toEqual(places);
  });
});
