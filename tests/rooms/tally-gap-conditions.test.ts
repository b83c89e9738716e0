/** Which words and dates make a gap, an error of order or an error of the future, and which make none. */
import { describe, expect, it } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { checkDateOrder } from '../../src/tally/date-order.js';
import { checkFutureDates } from '../../src/tally/future-dates.js';
import { freeId } from '../../src/tally/gap.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;
const lacking = (spec: PartialSpec, words: RegExp): string[] =>
  deriveTally(houseFrom(spec), AS_OF)
    .tally.gaps.map(({ lacks }) => lacks)
    .filter((lacks) => words.test(lacks));

describe('gaps', () => {
  it.each([
    ['panel of the garage', {}, 1],
    ['gas line', {}, 1],
    ['reroofing', {}, 1],
    ['addition to the back', {}, 1],
    ['bath', { trade: 'plumbing' }, 1],
    ['wood paneling', {}, 0],
    ['panelling of the hall', {}, 0],
    ['waterproofing of the cellar', {}, 0],
    ['gasket of the door', {}, 0],
    ['additional shelves', {}, 0],
    ['furnace', { did: 'serviced' }, 0],
    ['pipes', { did: 'cleaned' }, 0],
    ['pipes', { permit: 'p' }, 0],
  ] as const)('work “%s” %j lacks a permit: %s', (what, more, count) => {
    const spec: PartialSpec = {
      work: [{ id: 'w', what, did: 'repaired', ...more }],
      permits: [{ id: 'p', what: 'pipes', state: 'final' }],
    };
    expect(lacking(spec, /no permit is named/)).toHaveLength(count);
  });

  it.each([
    ['roofer', 1],
    ['pool builder', 1],
    ['waterproofing', 0],
    ['carpool driver', 0],
    ['painter', 0],
  ])('a hired %s lacks a licence number: %s', (trade, count) => {
    const people = [{ id: 'firm', name: 'Firm', trade }];
    const work = [{ id: 'w', what: 'thing', did: 'new', done: '2025', by: 'firm' }] as const;
    expect(lacking({ people, work: [...work] }, /licence number/)).toHaveLength(count);
  });

  it.each([
    ['window, vinyl', 'windows', 0],
    ['air conditioner, window', 'windows', 1],
    ['window fan', 'windows', 1],
    ['electrical panel', 'electrical panel', 0],
    ['wall paneling', 'electrical panel', 1],
    ['solar panel', 'electrical panel', 1],
    ['water heater, heat pump', 'heating', 1],
    ['pipes, copper', 'supply pipes', 0],
    ['pipe, pex', 'supply pipes', 0],
  ] as const)('“%s” leaves nothing written about the %s: %s', (is, name, count) => {
    expect(lacking({ systems: [{ id: 's', is }] }, new RegExp(`written about the ${name}$`))).toHaveLength(
      count,
    );
    expect(
      lacking({ systems: [{ id: 's', is, did: 'removed' }] }, new RegExp(`about the ${name}$`)),
    ).toHaveLength(1);
  });

  it.each([
    [{ until: '2030' }, {}, 1],
    [{ until: AS_OF }, {}, 1],
    [{ until: '2026-11-19' }, {}, 0],
    [{ years: 2 }, { installed: '2020' }, 0],
    [{ years: 9 }, { installed: '2020' }, 1],
    [{}, {}, 1],
    [{ until: '2030' }, { did: 'removed' }, 0],
  ] as const)('a warranty %j on a furnace %j is asked whether it moves: %s', (warranty, more, count) => {
    const own = { ...warranty, 'moves-to-buyer': 'not known' } as const;
    const systems = [{ id: 'f', is: 'furnace, gas', warranty: own, ...more }];
    expect(lacking({ systems }, /moves to the next owner/)).toHaveLength(count);
  });

  const finish = (more: object, use: 'bedroom' | 'closet' = 'bedroom', level: object = {}): PartialSpec => ({
    levels: [
      { ...LEVEL, ...level },
      { id: 'other', name: 'Other', grade: 'above', finish: 'unfinished' },
    ],
    rooms: [
      { id: 'r', name: 'Den', level: 'main', use, finishes: [{ on: 'walls', what: 'paint', ...more }] },
    ],
  });
  it.each([
    ['painted', finish({}), /lacks its/, 1],
    ['unpainted', finish({ what: 'unpainted plaster' }), /lacks its/, 0],
    ['repainted', finish({ what: 'repainted plaster' }), /lacks its/, 1],
    [
      'with all of the lid',
      finish({ colour: 'oat', code: 'X', base: 'white', sheen: 'flat' }),
      /lacks its/,
      0,
    ],
    ['kept paint', finish({ kept: true }), /lacks its|when the walls/, 0],
    ['paint that was removed', finish({ did: 'removed' }), /lacks its|when the walls/, 0],
    ['paint with its day', finish({ done: '2025' }), /when the walls/, 0],
    ['tile without its lot', finish({ what: 'tile' }), /the lot of/, 1],
    ['tile with it', finish({ what: 'tile', lot: 'A1' }), /the lot of/, 0],
    ['a room without a floor', finish({}), /the floor of Den is not/, 1],
    ['a closet without one', finish({}, 'closet'), /the floor of Den is not/, 0],
    [
      'a room on an unfinished level',
      finish({}, 'bedroom', { finish: 'unfinished' }),
      /the floor of Den is not/,
      0,
    ],
    ['a room with one', finish({ on: 'floor' }), /the floor of Den is not/, 0],
  ])('of finishes: %s', (_, spec, words, count) => {
    expect(lacking(spec, words)).toHaveLength(count);
  });

  it.each([
    ['a pool pump', { systems: [{ id: 'p', is: 'pool pump' }] }, 1],
    ['one that was taken out', { systems: [{ id: 'p', is: 'pool pump', did: 'removed' }] }, 0],
    ['a whirlpool', { systems: [{ id: 'p', is: 'whirlpool tub' }] }, 0],
    ['something else', { systems: [{ id: 'p', is: 'sump pump' }] }, 0],
  ] as const)('what stands around a pool is asked of %s: %s', (_, { systems }, count) => {
    expect(lacking({ systems: [...systems] }, /stands around it/)).toHaveLength(count);
  });

  it.each([
    ['detached', 0],
    ['attached', 1],
    ['apartment-style', 1],
  ] as const)('dues are asked of a house that is %s: %s', (kind, count) => {
    expect(lacking({ house: { kind } }, /dues/)).toHaveLength(count);
  });

  it('a proposed id is one that nothing has', () => {
    const house = houseFrom({
      levels: [{ ...LEVEL, id: 'a' }],
      rooms: [{ id: 'a-2', level: 'a', use: 'hall' }],
      stairs: [{ id: 'a-3', risers: 3, handrail: 'no' }],
      structures: [{ id: 'a-4', is: 'deck' }],
      systems: [{ id: 'a-5', is: 'roof' }],
    });
    expect([freeId(house, 'a'), freeId(house, 'b')]).toEqual(['a-6', 'b']);
  });
});

describe('dates', () => {
  const order = (spec: PartialSpec): string[] =>
    checkDateOrder(houseFrom(spec)).map(({ message, path = [], hints = [] }) =>
      [printFactPath(path), message, ...hints].join(' | '),
    );
  const sale = { sale: { closed: '2026-02', price: '1.00' } };

  it('a contract after the closing names the word that is in the folder', () => {
    const duties = { contract: '2026-03-01' };
    expect(order({ duties, money: { role: 'dealer', ...sale } })).toEqual([
      'duties.contract | the house can’t have been sold by contract (1 March 2026) after it was handed over at the closing (February 2026) | write  contract: 2026-02  or earlier | if that is right, correct  closed: 2026-03-01',
    ]);
    expect(order({ duties: { ...duties, closing: '2026-02-10' } })).toEqual([
      'duties.contract | the house can’t have been sold by contract (1 March 2026) after it was handed over at the closing (10 February 2026) | write  contract: 2026-02-10  or earlier | if that is right, correct  closing: 2026-03-01',
    ]);
    // The day agreed for the closing goes before the month of the sale.
    expect(
      order({ duties: { ...duties, closing: '2026-03-01' }, money: { role: 'dealer', ...sale } }),
    ).toEqual([]);
  });

  it.each([
    ['2026', '2026-01', 0],
    ['2026-01-02', '2026-01', 0],
    ['2026-02', '2026-01-31', 1],
    ['../2030', '2026', 0],
    ['2030', '2026/..', 0],
  ])('a permit issued %s and closed %s: %s', (issued, final, count) => {
    expect(order({ permits: [{ id: 'p', what: 'roof', state: 'final', issued, final }] })).toHaveLength(
      count,
    );
  });

  it.each([
    [
      'alarms',
      { levels: [LEVEL], alarms: [{ is: 'smoke', where: 'main', made: '2026-12' }] },
      'alarms[0].made',
    ],
    ['duties', { duties: { given: [{ duty: 'us-lead-pamphlet', on: '2026-12-01' }] } }, 'duties.given[0].on'],
    [
      'documents',
      { documents: [{ id: 'd', what: 'deed', kind: 'other', date: '2027' }] },
      'documents[0].date',
    ],
  ])('a day to come in %s', (_, spec, path) => {
    const found = checkFutureDates(houseFrom(spec as PartialSpec), AS_OF);
    expect(found.map((one) => printFactPath(one.path ?? []))).toEqual([path]);
    expect(found[0]?.message).toBe('this date lies after the day the packet is made for (2026-11-20)');
  });
  it.each(['2026-11-20', '2026-11', '2026'])(
    'the day itself, or what may be it, is not to come: %s',
    (date) => {
      const documents = [{ id: 'd', what: 'deed', kind: 'other', date }] as const;
      expect(checkFutureDates(houseFrom({ documents: [...documents] }), AS_OF)).toEqual([]);
    },
  );
});
