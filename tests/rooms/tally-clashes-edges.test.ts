/** Clashes at their edges: the last day that still fits, and what is open or said in another way. */
import { describe, expect, it } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;

const told = (spec: PartialSpec): string[] =>
  deriveTally(houseFrom(spec), '2026-11-20')
    .diagnostics.filter(({ code }) => code === 'tally.clash')
    .map(({ path = [], message }) => `${printFactPath(path)}: ${message}`);
const places = (spec: PartialSpec): (string | undefined)[] => told(spec).map((line) => line.split(':')[0]);

type Work = NonNullable<PartialSpec['work']>[number];
type Finish = NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number];

describe('a finish beside the work it stands under, 92 days either way', () => {
  const beside = (
    done: string | undefined,
    work: Partial<Work>,
    finish: Partial<Finish> = {},
    bought?: string,
  ): PartialSpec => ({
    house: bought === undefined ? {} : { bought },
    levels: [LEVEL],
    rooms: [
      {
        id: 'hall',
        level: 'main',
        use: 'hall',
        finishes: [
          { on: 'floor', what: 'oak', work: 'job', ...(done === undefined ? {} : { done }), ...finish },
        ],
      },
    ],
    work: [{ id: 'job', what: 'floor', did: 'new', by: 'owner', ...work }],
  });
  it.each<readonly [string, string | undefined, Partial<Work>, boolean]>([
    // From 1 May 2026 to 1 August are 92 days; from 1 May back to 29 January are 92 as well.
    ['92 days later fits', '2026-08-01', { done: '2026-05-01' }, false],
    ['93 days later does not', '2026-08-02', { done: '2026-05-01' }, true],
    ['92 days earlier fits', '2026-01-29', { done: '2026-05-01' }, false],
    ['93 days earlier does not', '2026-01-28', { done: '2026-05-01' }, true],
    ['of a month its nearest day counts', '2026-08', { done: '2026-05-01' }, false],
    [
      'before the end fits where the work had begun',
      '2025-12-01',
      { started: '2026-01-05', done: '2026-05-01' },
      false,
    ],
    ['93 days before it began does not', '2025-10-03', { started: '2026-01-05', done: '2026-05-01' }, true],
    ['open towards the past may be any day before', '../2026-08-02', { done: '2026-05-01' }, false],
    ['open towards the future may be any day after', '2025-01-01/..', { done: '2026-05-01' }, false],
    ['work open towards the future may have gone on', '2026-10-01', { done: '2026-05-01/..' }, false],
    ['work open towards the past may have begun long ago', '2025-01-01', { done: '../2026-05-01' }, false],
    ['a day that nobody is certain of clashes with none', '2025?', { done: '2026-05-01' }, false],
    ['work whose day nobody is certain of clashes with none', '2025', { done: '2026?' }, false],
    [
      'work whose beginning nobody is certain of clashes with none',
      '2024',
      { started: '2025?', done: '2026-05-01' },
      false,
    ],
    ['without a day of its own says nothing', undefined, { done: '2026-05-01' }, false],
    ['of work without a day says nothing', '2025-01-01', {}, false],
  ])('one %s', (_, done, work, far) => {
    expect(places(beside(done, work))).toEqual(far ? ['rooms[0].finishes[0].done'] : []);
  });

  it('before the purchase: by whom, and whether somebody says that the seller had it done', () => {
    const early = (finish: Partial<Finish>, work: Partial<Work> = {}): string[] =>
      told(beside('2026-02-01', { done: '2026-03-01', ...work }, finish, '2026-02-17'));
    const ofYours = (who: string): string[] => [
      `rooms[0].finishes[0].done: “oak” (floor, Hall) was done by ${who} (1 February 2026) before you bought the house (17 February 2026)`,
    ];
    expect(early({ by: 'owner' })).toEqual(ofYours('you'));
    expect(early({ by: 'family' })).toEqual(ofYours('your family'));
    expect(early({})).toEqual(ofYours('you'));
    expect(early({ by: 'not-known' })).toEqual([]);
    for (const said of [{ note: 'by the Seller' }, { from: 'seller' }]) {
      expect(early(said)).toEqual([]);
      expect(early({}, said)).toEqual([]);
    }
  });
});

describe('an answer with a year', () => {
  const answered = (
    answer: string,
    systems: NonNullable<PartialSpec['systems']>,
    ask = 'How old is the furnace?',
  ) => places({ systems, answers: [{ ask, answer }] });
  const furnace = (id: string, installed?: number, more: object = {}) => ({
    id,
    is: 'furnace, gas',
    ...(installed === undefined ? {} : { installed }),
    ...more,
  });
  it.each<readonly [string, readonly (string | undefined)[], boolean]>([
    ['of another year clashes', answered('Installed in 2005.', [furnace('a', 1998)]), true],
    [
      'is read past blanks',
      answered('Installed in 2005.', [furnace('a', 1998)], ' How old is the furnace? '),
      true,
    ],
    [
      'that fits one of two furnaces is of that',
      answered('Installed in 2005.', [furnace('a', 1998), furnace('b', 2005)]),
      false,
    ],
    [
      'is open where one of two has no date',
      answered('Installed in 2005.', [furnace('a', 1998), furnace('b')]),
      false,
    ],
    [
      'is of no furnace that was taken out',
      answered('Installed in 2005.', [furnace('a', 1998, { did: 'removed' })]),
      false,
    ],
    ['in two years says neither', answered('Installed in 2005 and 2009.', [furnace('a', 1998)]), false],
    [
      'that does not begin with what was done says nothing',
      answered('Bought it 2005.', [furnace('a', 1998)]),
      false,
    ],
    [
      'to another question is about something else',
      answered('Installed in 2005.', [furnace('a', 1998)], 'Why is it loud?'),
      false,
    ],
    ['about one year is no one year', answered('Installed about 2005.', [furnace('a', 1998)]), false],
    [
      'beside a date that nobody is certain of',
      answered('Installed in 2005.', [{ id: 'a', is: 'furnace', installed: '1998?' }]),
      false,
    ],
    ['without a year says nothing', answered('Installed lately.', [furnace('a', 1998)]), false],
  ])('%s', (_, found, clash) => {
    expect(found).toEqual(clash ? ['answers[0].answer'] : []);
  });
});

describe('a furnace older than its house', () => {
  const made = (
    year: string,
    more: object = {},
    house: PartialSpec['house'] = { built: '2001' },
  ): unknown[] =>
    places({
      house,
      structures: [
        { id: 'shop', is: 'shed', attached: false },
        { id: 'wing', is: 'sunroom', attached: true },
      ],
      systems: [{ id: 'f', is: 'furnace, gas', made: year, ...more }],
    });
  it.each<readonly [string, unknown[], boolean]>([
    ['by more than the two years of a maker’s stock', made('1998'), true],
    ['by two years and no more', made('1999'), false],
    ['in a building that is attached', made('1990', { where: 'wing' }), true],
    ['in a building that stands apart', made('1990', { where: 'shop' }), false],
    ['by a date that nobody is certain of', made('1990?'), false],
    ['in a house whose year nobody is certain of', made('1990', {}, { built: '2001?' }), false],
    ['in a house that may be of any earlier year', made('1990', {}, { built: '../2001' }), false],
    ['with no last year of its own', made('1990/..'), false],
    [
      'that was bought second-hand, as its date says',
      made('1990', { made: { is: '1990', note: 'second-hand' } }),
      false,
    ],
    [
      'that was salvaged, as its source says',
      made('1990', { made: { is: '1990', from: 'salvage yard' } }),
      false,
    ],
    ['and is no furnace but a door', made('1990', { is: 'door, oak' }), false],
  ])('%s', (_, found, clash) => {
    expect(found).toEqual(clash ? ['systems[0].made'] : []);
  });
});

describe('parking beside garages', () => {
  type Structure = NonNullable<PartialSpec['structures']>[number];
  const garage = (id: string, more: Partial<Structure> = {}): Structure => ({ id, is: 'garage', ...more });
  const parked = (parking: string, ...structures: readonly Structure[]): string[] =>
    told({ house: { parking }, structures: [...structures] });
  it.each<readonly [string, string[]]>([
    ['a carport beside it', parked('two-car garage and carport', garage('g', { name: '3-car garage' }))],
    ['the same number', parked('garage, three cars', garage('g', { name: '3-car garage' }))],
    ['cars of two garages', parked('two-car garage', garage('g', { name: '3-car garage' }), garage('h'))],
    ['cars told twice', parked('one-car garage, two-car garage', garage('g', { name: '3-car garage' }))],
    ['no number at the garage', parked('two-car garage', garage('g'))],
    ['no garage at all', parked('attached two-car garage', { id: 's', is: 'shed', name: '3-car shed' })],
    ['both attached and detached', parked('attached and detached garages', garage('g'))],
    [
      'one of two attached',
      parked('attached garage', garage('g', { attached: true }), garage('h', { attached: false })),
    ],
    ['parking that is on the street', parked('attached to the street', garage('g', { attached: false }))],
    ['a remark that has the number', parked('two-car garage', garage('g', { note: 'for two cars' }))],
  ])('%s is no clash', (_, found) => {
    expect(found).toEqual([]);
  });

  it('the remark of a garage may have its number, and a room may be one', () => {
    expect(parked('two-car garage', garage('g', { note: 'room for one car' }))).toEqual([
      'house.parking: parking is “two-car garage”, and “G” is for one car',
    ]);
    expect(
      told({
        house: { parking: 'detached garage' },
        levels: [LEVEL],
        rooms: [{ id: 'bay', level: 'main', use: 'garage' }],
      }),
    ).toEqual(['house.parking: parking is “detached garage”, and “Bay” is a room of the house']);
  });
});

describe('what stays', () => {
  const list = (...stays: readonly ('yes' | 'no' | 'not known')[]): PartialSpec => ({
    conveys: stays.map((one) => ({ what: 'bench', stays: one })),
  });
  it('is two answers only where both are plain', () => {
    expect(places(list('yes', 'no'))).toEqual(['conveys[1].stays']);
    expect(places(list('yes', 'yes'))).toEqual([]);
    expect(places(list('not known', 'no'))).toEqual([]);
    expect(places(list('yes', 'not known'))).toEqual([]);
  });

  it('is asked of no system that says nothing, or was taken out', () => {
    const system = (more: object): unknown[] =>
      places({ systems: [{ id: 'r', is: 'range', ...more }], conveys: [{ what: 'range', stays: 'yes' }] });
    expect(system({ conveys: false })).toEqual(['conveys[0].stays']);
    expect(system({})).toEqual([]);
    expect(system({ conveys: false, did: 'removed' })).toEqual([]);
  });
});
