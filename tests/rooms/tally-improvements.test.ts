import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listImprovements } from '../../src/tally/improvements.js';
import { TRADES, tradeOf } from '../../src/tally/trades.js';
import { whoDid } from '../../src/tally/who.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const ROOM = { id: 'kitchen', level: 'main', use: 'kitchen' } as const;
const BASE: PartialSpec = {
  house: { bought: '2026-02-17' },
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  people: [{ id: 'ridge', name: 'Ridge Street Plumbing', trade: 'plumber' }],
};

describe('the list of improvements', () => {
  test('tells a system that a work item names within that item, once', () => {
    const { done, kept } = listImprovements(
      houseFrom({
        ...BASE,
        rooms: [ROOM],
        systems: [
          { id: 'panel', is: 'electrical panel', installed: '2026-04-20', did: 'replaced' },
          { id: 'heater', is: 'water heater, tank, electric', installed: '2026-04-11', by: 'ridge' },
        ],
        work: [
          { id: 'wiring', what: 'kitchen circuits', did: 'new', systems: ['panel'], where: ['kitchen'] },
        ],
      }),
    );
    expect(done.map((one) => one.id).sort()).toEqual(['system-heater', 'work-wiring']);
    expect(kept).toEqual([]);
    const wiring = done.find((one) => one.id === 'work-wiring');
    expect(wiring?.source.kind === 'work' && wiring.source.systems.map((one) => one.id)).toEqual(['panel']);
  });

  test('every finish, system and work item is in exactly one place', () => {
    const house = houseFrom({
      ...BASE,
      rooms: [
        {
          ...ROOM,
          finishes: [
            { on: 'floor', what: 'vinyl plank', done: '2026-04' },
            { on: 'walls', what: 'paint', kept: true, done: '2019' },
            { on: 'cabinets', what: 'birch' },
          ],
        },
      ],
      structures: [{ id: 'porch', is: 'porch', finishes: [{ on: 'floor', what: 'paint', did: 'painted' }] }],
      systems: [
        { id: 'range', is: 'range, electric', kept: true },
        { id: 'furnace', is: 'furnace, gas', installed: 2009 },
      ],
      work: [{ id: 'rail', what: 'handrail', did: 'new', safety: true }],
    });
    const { done, kept } = listImprovements(house);
    expect([...done, ...kept].map((one) => one.id).sort()).toEqual([
      'finish-kitchen-0',
      'finish-kitchen-1',
      'finish-kitchen-2',
      'finish-porch-0',
      'system-furnace',
      'system-range',
      'work-rail',
    ]);
    expect(kept.map((one) => one.id)).toEqual([
      'finish-kitchen-1',
      'finish-kitchen-2',
      'system-range',
      'system-furnace',
    ]);
    // A date without a verb is new; what has neither was found so.
    expect(done.find((one) => one.id === 'finish-kitchen-0')?.did).toBe('new');
    expect(done.find((one) => one.id === 'work-rail')?.safety).toBe(true);
  });

  test('a system counts as this owner’s only if its date shows it', () => {
    const deed = (installed: string | number, extra: object = {}) =>
      listImprovements(
        houseFrom({ ...BASE, systems: [{ id: 'furnace', is: 'furnace, gas', installed, ...extra }] }),
      ).done.map((one) => one.did);
    expect(deed('2026-03-01')).toEqual(['replaced']);
    expect(deed('2026-02-17')).toEqual(['replaced']);
    expect(deed('2026-02-16')).toEqual([]);
    expect(deed('2026-02')).toEqual(['replaced']);
    // The year began before the month of the purchase.
    expect(deed(2026)).toEqual([]);
    expect(deed('2026-01/2026-03')).toEqual([]);
    // About 2025 is 2024 to 2026, and "by May 2026" may be any year.
    expect(deed('2025~')).toEqual([]);
    expect(deed('../2026-05')).toEqual([]);
    expect(deed('not known')).toEqual([]);
    expect(deed('2025~', { did: 'replaced' })).toEqual(['replaced']);
    expect(deed('2026-03-01', { kept: true })).toEqual([]);
  });

  test('servicing is dated by the service, putting in by the installation', () => {
    const when = (extra: object) =>
      listImprovements(houseFrom({ ...BASE, systems: [{ id: 'furnace', is: 'furnace, gas', ...extra }] }))
        .done[0]?.done?.written;
    expect(when({ did: 'serviced', installed: 2015, serviced: '2026-05-02' })).toBe('2026-05-02');
    expect(when({ did: 'serviced', installed: 2015 })).toBeUndefined();
    expect(when({ did: 'replaced', serviced: '2026-05-02' })).toBeUndefined();
    expect(when({ did: 'replaced', installed: '2026-03', serviced: '2026-05-02' })).toBe('2026-03');
  });

  test('goes by trade, newest first, undated last, and never by the order of writing', () => {
    const work = [
      { id: 'a', what: 'shingle roof', did: 'repaired', done: '2026-03-01' },
      { id: 'b', what: 'shingle roof', did: 'replaced', done: '2026-05-01' },
      { id: 'c', what: 'gutter', did: 'cleaned' },
      { id: 'd', what: 'toilet', did: 'replaced', done: '2026-05-02' },
      { id: 'e', what: 'toilet', did: 'replaced', done: '2026-05-02' },
      { id: 'f', what: 'hall walls', did: 'painted', trade: 'painting', done: '2026-06-01' },
    ] as const;
    const order = ['work-b', 'work-a', 'work-c', 'work-d', 'work-e', 'work-f'];
    fc.assert(
      fc.property(fc.shuffledSubarray([...work], { minLength: work.length }), (shuffled) => {
        const { done } = listImprovements(houseFrom({ ...BASE, work: shuffled }));
        expect(done.map((one) => one.id)).toEqual(order);
      }),
      { seed: 11, numRuns: 30 },
    );
  });
});

describe('who did a thing', () => {
  test('is one of three words or a person, and silence is not known', () => {
    const house = houseFrom(BASE);
    expect(whoDid(house, 'owner')).toEqual({ kind: 'owner' });
    expect(whoDid(house, 'family')).toEqual({ kind: 'family' });
    expect(whoDid(house, 'not-known')).toEqual({ kind: 'not-known' });
    expect(whoDid(house, undefined)).toEqual({ kind: 'not-known' });
    expect(whoDid(house, 'ridge')).toMatchObject({
      kind: 'hired',
      person: { name: 'Ridge Street Plumbing' },
    });
  });
});

describe('the trade of a thing', () => {
  // Common practice, no source: where a reader would look for it.
  test.each([
    ['range, electric', 'appliances'],
    ['electric range', 'appliances'],
    ['water heater, tank, electric', 'plumbing'],
    ['clothes dryer, electric', 'appliances'],
    ['electrical panel, 200 A', 'electrical'],
    ['kitchen circuits and outlets', 'electrical'],
    ['skylight, hall', 'other'],
    ['handrail, cellar flight', 'carpentry'],
    ['wood panelling', 'other'],
    ['window sill, north', 'windows and doors'],
    ['sill plate, west wall', 'structure'],
    ['bathtub', 'plumbing'],
    ['fence towards the street', 'carpentry'],
    ['garage door opener', 'appliances'],
    ['supply ducts', 'heating and cooling'],
    ['woven wool carpet', 'flooring'],
    ['lights, hall', 'electrical'],
    ['pool pump', 'pool'],
    ['maple tree', 'outside'],
  ])('%s: %s', (words, trade) => {
    expect(tradeOf(words)).toBe(trade);
  });

  test('the writer’s own word goes first, and a word nobody knows falls back on the thing', () => {
    expect(tradeOf('hall walls', 'painting')).toBe('painting');
    expect(tradeOf('anything', 'Carpenter')).toBe('carpentry');
    expect(tradeOf('toilet', 'handyman')).toBe('plumbing');
    expect(tradeOf('quite something', 'handyman')).toBe('other');
    expect(TRADES).toContain(tradeOf(''));
  });
});
