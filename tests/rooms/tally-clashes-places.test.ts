/** Each kind of clash at its smallest: where the message stands, and beside which other fact. */
import { describe, expect, it } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;
const WINDOW = { 'clear-width': '32"', 'clear-height': '30"', sill: '28"' } as const;

const clashes = (spec: PartialSpec): string[] =>
  deriveTally(houseFrom(spec), '2026-11-20')
    .diagnostics.filter(({ code }) => code === 'tally.clash')
    .map(
      ({ severity, path = [], beside = [] }) =>
        `${severity} ${printFactPath(path)} × ${printFactPath(beside)}`,
    );

const hall = (
  finish: NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number],
): PartialSpec => ({
  house: { bought: '2026-02-17' },
  levels: [LEVEL],
  rooms: [{ id: 'hall', level: 'main', use: 'hall', finishes: [finish] }],
});

describe('kept as found', () => {
  it.each<readonly [string, PartialSpec, readonly string[]]>([
    [
      'and replaced',
      { systems: [{ id: 'r', is: 'range', did: 'replaced', kept: true }] },
      ['error systems[0].kept × systems[0].did'],
    ],
    [
      'and removed',
      { systems: [{ id: 'r', is: 'range', did: 'removed', kept: true }] },
      ['error systems[0].kept × systems[0].did'],
    ],
    ['and cleaned', { systems: [{ id: 'r', is: 'range', did: 'cleaned', kept: true }] }, []],
    [
      'and painted after the purchase',
      hall({ on: 'walls', what: 'paint', kept: true, done: '2026-05' }),
      ['warning rooms[0].finishes[0].kept × rooms[0].finishes[0].done'],
    ],
    [
      'under new work',
      {
        ...hall({ on: 'floor', what: 'oak', kept: true, work: 'floor' }),
        work: [{ id: 'floor', what: 'floor', did: 'new', done: '2026-05' }],
      },
      ['warning rooms[0].finishes[0].kept × work[0].did'],
    ],
    [
      'under work that made nothing new',
      {
        ...hall({ on: 'floor', what: 'oak', kept: true, work: 'floor' }),
        work: [{ id: 'floor', what: 'floor', did: 'refinished', done: '2026-05' }],
      },
      [],
    ],
  ])('%s', (_, spec, expected) => {
    expect(clashes(spec)).toEqual(expected);
  });
});

describe('permits', () => {
  const rail = (done: string): PartialSpec['work'] => [
    { id: 'a', what: 'rail', did: 'new', done, by: 'not-known', permit: 'p' },
  ];
  it.each<readonly [string, PartialSpec, readonly string[]]>([
    [
      'open, with a final inspection',
      { permits: [{ id: 'p', what: 'rail', state: 'open', final: '2026-05-19' }] },
      ['error permits[0].state × permits[0].final'],
    ],
    [
      'not found, with a number',
      { permits: [{ id: 'p', what: 'rail', state: 'none-found', number: 'B-1' }] },
      ['error permits[0].state × permits[0].number'],
    ],
    ['not found, with nothing', { permits: [{ id: 'p', what: 'rail', state: 'none-found' }] }, []],
    [
      'closed before the work',
      { permits: [{ id: 'p', what: 'rail', state: 'final', final: '2026-05-19' }], work: rail('2026-05-20') },
      ['warning work[0].done × permits[0].final'],
    ],
    [
      'issued after the work',
      { permits: [{ id: 'p', what: 'rail', state: 'open', issued: '2026-05-19' }], work: rail('2026-05-18') },
      ['warning work[0].done × permits[0].issued'],
    ],
    [
      'issued on its day and closed on its day',
      {
        permits: [{ id: 'p', what: 'rail', state: 'final', issued: '2026-05-19', final: '2026-05-19' }],
        work: rail('2026-05-19'),
      },
      [],
    ],
    [
      'of another trade',
      {
        permits: [{ id: 'p', what: 'three kitchen circuits', state: 'open' }],
        work: [{ id: 'a', what: 'roof shingles', did: 'replaced', permit: 'p' }],
      },
      ['note work[0].permit × permits[0].what'],
    ],
    [
      'with a copy that is older than the permit',
      {
        permits: [{ id: 'p', what: 'rail', state: 'open', issued: '2026-05-19', evidence: ['copy'] }],
        documents: [{ id: 'copy', what: 'copy', kind: 'permit', date: '2026-05-18' }],
      },
      ['warning permits[0].issued × documents[0].date'],
    ],
  ])('%s', (_, spec, expected) => {
    expect(clashes(spec)).toEqual(expected);
  });
});

describe('of the house, its levels and its owner', () => {
  const above = (id: string, name: string): NonNullable<PartialSpec['levels']>[number] => ({
    ...LEVEL,
    id,
    name,
  });
  it.each<readonly [string, PartialSpec, readonly string[]]>([
    [
      'an acre of which the house covers more, told by its largest level',
      {
        house: { lot: '0.01 acre' },
        levels: [{ ...LEVEL, size: `24' x 20'` }, above('upper', 'Upper level'), above('wing', 'Wing')],
      },
      ['error house.lot × levels[1].size'],
    ],
    [
      'a small lot of a house that nobody measured',
      { house: { lot: '0.01 acre' }, levels: [{ id: 'main', name: 'Main level', grade: 'above' }] },
      [],
    ],
    [
      'no pool, and a pump of one among the systems',
      { duties: { pool: 'no' }, systems: [{ id: 'p', is: 'pool pump' }] },
      ['error duties.pool × systems[0].is'],
    ],
    [
      'a range that was taken out and is to stay',
      { systems: [{ id: 'r', is: 'range', did: 'removed', conveys: true }] },
      ['error systems[0].conveys × systems[0].did'],
    ],
    [
      'a furnace that was made long before the house',
      { house: { built: 2001 }, systems: [{ id: 'f', is: 'furnace', made: 1989 }] },
      ['warning systems[0].made × house.built'],
    ],
    [
      'one storey with an upper level over it',
      { house: { storeys: 'one' }, levels: [LEVEL, above('upper', 'Upper level')] },
      ['warning house.storeys × levels[1].name'],
    ],
    [
      'one storey that is called upper, and nothing above it',
      { house: { storeys: 'one' }, levels: [above('upper', 'Upper level')] },
      [],
    ],
    [
      'a furnace that was taken out of a house with no heated room',
      { systems: [{ id: 'f', is: 'furnace', did: 'removed' }] },
      [],
    ],
    [
      'a bedroom that is too low, as its level is',
      {
        levels: [{ ...LEVEL, ceiling: `6'10"` }],
        rooms: [{ id: 'bed', level: 'main', use: 'bedroom', size: `10' x 11'`, windows: [WINDOW] }],
      },
      ['warning rooms[0].use × levels[0].ceiling'],
    ],
    [
      'work after the sale',
      {
        money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } },
        work: [{ id: 'a', what: 'rail', did: 'new', done: '2026-08-15', by: 'owner' }],
      },
      ['warning work[0].done × money.sale.closed'],
    ],
    [
      'a photo that was taken, by its entry, before what it is to show',
      {
        systems: [{ id: 'hood', is: 'range hood', installed: '2026-05-13', evidence: ['P'] }],
        photos: { P: { shows: 'hood', taken: '2026-03-02' } },
      },
      ['warning systems[0].installed × photos.P.taken'],
    ],
    [
      'a range that stays by both of its entries',
      { systems: [{ id: 'r', is: 'range', conveys: true }], conveys: [{ what: 'range', stays: 'yes' }] },
      [],
    ],
    [
      'an answer of a later year than the first that a roof can be of',
      {
        systems: [{ id: 'r', is: 'roof, slate', installed: '2015/..' }],
        answers: [{ ask: 'How old is the roof?', answer: 'Laid in 2019.' }],
      },
      [],
    ],
  ])('%s', (_, spec, expected) => {
    expect(clashes(spec)).toEqual(expected);
  });

  it('a photo by its entry is corrected there', () => {
    const { diagnostics } = deriveTally(
      houseFrom({
        systems: [{ id: 'hood', is: 'range hood', installed: '2026-05-13', evidence: ['P'] }],
        photos: { P: { shows: 'hood', taken: '2026-03-02' } },
      }),
      '2026-11-20',
    );
    const [photo] = diagnostics.filter(({ code }) => code === 'tally.clash');
    expect(photo?.message).toBe(
      '“range hood” was installed (13 May 2026), and the photo that is to show it, P, was taken before (2 March 2026)',
    );
    expect(photo?.hints.at(-1)).toBe('correct  taken:  of P');
  });
});
