import { describe, expect, test } from 'vitest';
import type { HouseSpec } from '../../src/facts/house.js';
import { deriveAlarms } from '../../src/tally/alarms.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-06-20';
const level = (id: string, grade: 'above' | 'below', extra: object = {}) => ({
  id,
  name: id,
  grade,
  ...extra,
});
const room = (
  id: string,
  on: string,
  use: NonNullable<HouseSpec['rooms']>[number]['use'],
  extra: object = {},
) => ({
  id,
  level: on,
  use,
  ...extra,
});
const plan = (spec: PartialSpec, asOf = AS_OF) => deriveAlarms(houseFrom(spec), asOf);

/** Cellar, main and upper level, with three bedrooms upstairs in one group. */
const THREE_STOREYS: PartialSpec = {
  levels: [
    level('cellar', 'below', { finish: 'unfinished' }),
    level('main', 'above'),
    level('upper', 'above'),
  ],
  rooms: [
    room('living', 'main', 'living'),
    room('kitchen', 'main', 'kitchen'),
    room('hall', 'upper', 'hall'),
    room('bed-1', 'upper', 'bedroom'),
    room('bed-2', 'upper', 'bedroom'),
    room('bed-3', 'upper', 'bedroom', { name: 'Back bedroom' }),
  ],
};

describe('smoke alarm places', () => {
  test('bedrooms, one outside their group, and the storeys without one: 6 as 3, 1 and 2', () => {
    // Constructed example to the counting rule of the International Residential Code R314.3, as paraphrased by inspectors.
    const smoke = plan(THREE_STOREYS).places.filter((place) => place.warns === 'smoke');
    expect(smoke).toHaveLength(6);
    const of = (why: string) => smoke.filter((place) => place.why === why).map((place) => place.where);
    expect(of('bedroom')).toEqual(['Bed 1', 'Bed 2', 'Back bedroom']);
    expect(of('outside bedrooms')).toEqual(['outside the bedrooms, upper']);
    expect(of('storey')).toEqual(['cellar', 'main']);
  });

  test('an attic nobody uses is no storey; one with a bedroom is', () => {
    const attic = level('attic', 'above', { finish: 'unfinished' });
    const levels = [...(THREE_STOREYS.levels ?? []), attic];
    const rooms = THREE_STOREYS.rooms ?? [];
    expect(plan({ levels, rooms: [...rooms, room('loft', 'attic', 'attic')] }).places).toHaveLength(6);
    const lived = plan({ levels, rooms: [...rooms, room('loft', 'attic', 'bedroom')] }).places;
    expect(lived).toHaveLength(8);
    expect(lived.map((place) => place.where)).toContain('outside Loft, attic');
  });

  test('an alarm counts where it hangs: not one in the kitchen for the bedrooms', () => {
    const spec: PartialSpec = {
      levels: [level('main', 'above')],
      rooms: [
        room('bed', 'main', 'bedroom'),
        room('hall', 'main', 'hall'),
        room('kitchen', 'main', 'kitchen'),
      ],
    };
    const recorded = (where: string, is: 'smoke' | 'carbon-monoxide' | 'both' = 'smoke') =>
      plan({ ...spec, alarms: [{ id: 'a', is, where }] }).places.map((place) => [
        place.why,
        place.recorded.length,
      ]);
    expect(recorded('hall')).toEqual([
      ['bedroom', 0],
      ['outside bedrooms', 1],
    ]);
    expect(recorded('bed')).toEqual([
      ['bedroom', 1],
      ['outside bedrooms', 0],
    ]);
    expect(recorded('kitchen')).toEqual([
      ['bedroom', 0],
      ['outside bedrooms', 0],
    ]);
    expect(recorded('main')).toEqual([
      ['bedroom', 0],
      ['outside bedrooms', 1],
    ]);
    expect(recorded('hall', 'both')).toEqual([
      ['bedroom', 0],
      ['outside bedrooms', 1],
    ]);
    expect(recorded('hall', 'carbon-monoxide')).toEqual([
      ['bedroom', 0],
      ['outside bedrooms', 0],
    ]);
  });

  test('of two groups on a level, a hall counts only for the one it names', () => {
    const spec = (hall: object, where: string): PartialSpec => ({
      levels: [level('main', 'above')],
      rooms: [
        room('east-bed', 'main', 'bedroom', { 'sleeping-area': 'east' }),
        room('west-bed', 'main', 'bedroom', { 'sleeping-area': 'west' }),
        room('hall', 'main', 'hall', hall),
      ],
      alarms: [{ is: 'smoke', where }],
    });
    const outside = (hall: object, where = 'hall') =>
      plan(spec(hall, where))
        .places.filter((place) => place.why === 'outside bedrooms')
        .map((place) => [place.where, place.recorded.length]);
    expect(outside({})).toEqual([
      ['outside East bed, main', 0],
      ['outside West bed, main', 0],
    ]);
    // On the level, nobody says near which.
    expect(outside({}, 'main').map(([, recorded]) => recorded)).toEqual([0, 0]);
    expect(outside({ 'sleeping-area': 'west' })).toEqual([
      ['outside East bed, main', 0],
      ['outside West bed, main', 1],
    ]);
  });
});

describe('alarms that belong to no place', () => {
  const others = (is: 'smoke' | 'carbon-monoxide' | 'both', where: string, spec: PartialSpec = {}) =>
    plan({ ...THREE_STOREYS, ...spec, alarms: [{ id: 'a', is, where }] }).others.map((alarm) => alarm.id);

  test('are a carbon monoxide alarm of an all-electric house, and one at a stair', () => {
    expect(others('carbon-monoxide', 'hall')).toEqual(['a']);
    expect(others('carbon-monoxide', 'hall', { systems: [{ id: 'b', is: 'boiler', fuel: 'oil' }] })).toEqual(
      [],
    );
    const stairs = [{ id: 'stair', risers: 12, handrail: 'yes' as const }];
    expect(others('smoke', 'stair', { stairs })).toEqual(['a']);
  });

  test('one that counts for smoke alone is none, nor one with its place', () => {
    expect(others('both', 'hall')).toEqual([]);
    expect(others('smoke', 'bed-1')).toEqual([]);
    expect(others('smoke', 'kitchen')).toEqual([]);
  });
});

describe('carbon monoxide alarm places', () => {
  const TWO_AREAS: PartialSpec = {
    levels: [level('main', 'above'), level('upper', 'above')],
    rooms: [room('bed-1', 'main', 'bedroom'), room('bed-2', 'upper', 'bedroom')],
  };
  const asked = (spec: PartialSpec) => {
    const { places, carbonMonoxide } = plan({ ...TWO_AREAS, ...spec });
    return [carbonMonoxide.asked, places.filter((place) => place.warns === 'carbon-monoxide').length];
  };
  const garage = (extra: object) => ({ structures: [{ id: 'garage', is: 'garage' as const, ...extra }] });

  test('a garage that opens into the house and two sleeping areas make two', () => {
    // Constructed example to the International Residential Code R315, as paraphrased by an inspector and the agency.
    expect(asked(garage({ attached: true, 'opens-into-house': true }))).toEqual(['yes', 2]);
    expect(asked(garage({ attached: true, 'opens-into-house': false }))).toEqual(['no', 0]);
    expect(asked(garage({ attached: false }))).toEqual(['no', 0]);
    // What isn't recorded is looked for, and said.
    expect(asked(garage({ attached: true }))).toEqual(['not known', 2]);
  });

  test('anything that burns asks for them, by its fuel or by its name', () => {
    const system = (is: string, extra: object = {}) => asked({ systems: [{ id: 'one', is, ...extra }] });
    expect(system('boiler', { fuel: 'oil' })).toEqual(['yes', 2]);
    expect(system('furnace, gas')).toEqual(['yes', 2]);
    expect(system('furnace')).toEqual(['not known', 2]);
    expect(system('furnace, gas', { fuel: 'electric' })).toEqual(['no', 0]);
    expect(system('water heater, tank, electric')).toEqual(['no', 0]);
    expect(system('siding, wood')).toEqual(['no', 0]);
    expect(system('range hood')).toEqual(['no', 0]);
    expect(system('furnace', { fuel: 'gas', did: 'removed' })).toEqual(['no', 0]);
    expect(system('fireplace insert', { fuel: 'wood', where: 'bed-1' })).toEqual(['yes', 3]);
  });

  test('a garage under the same roof or a fireplace is not passed over', () => {
    const rooms = TWO_AREAS.rooms ?? [];
    expect(asked({ rooms: [...rooms, room('car', 'main', 'garage')] })).toEqual(['not known', 2]);
    const living = (finish: object) =>
      asked({
        rooms: [...rooms, room('den', 'main', 'living', { finishes: [{ on: 'fireplace', ...finish }] })],
      });
    expect(living({ what: 'brick' })).toEqual(['not known', 2]);
    expect(living({ what: 'electric insert' })).toEqual(['no', 0]);
    expect(living({ what: 'brick', did: 'removed' })).toEqual(['no', 0]);
  });

  test('the reason is said', () => {
    const { because } = plan({ systems: [{ id: 'one', is: 'boiler', fuel: 'oil' }] }).carbonMonoxide;
    expect(because).toEqual(['the boiler burns oil']);
    expect(plan({}).carbonMonoxide.because[0]).toMatch(/nothing that burns fuel is recorded/);
  });
});

describe('the end of an alarm', () => {
  type Spec = Partial<NonNullable<HouseSpec['alarms']>[number]>;
  const endOf = (alarm: Spec, asOf = AS_OF) => {
    const [end] = plan(
      {
        levels: [level('main', 'above')],
        rooms: [room('hall', 'main', 'hall')],
        alarms: [{ is: 'smoke', where: 'hall', ...alarm }],
      },
      asOf,
    ).ends;
    return [end?.replaceBy, end?.due, end?.basis];
  };

  test('a smoke alarm is due ten years after its manufacture, on that day', () => {
    // NFPA 72, as paraphrased by two fire-safety pages; the two dates are a constructed example.
    expect(endOf({ made: '2015-06-15' }, '2025-06-14')).toEqual([
      '2025-06-15',
      false,
      'ten years from manufacture',
    ]);
    expect(endOf({ made: '2015-06-15' }, '2025-06-15')[1]).toBe(true);
  });

  test('a month counts from its first day, a year from its first, a leap day ends early', () => {
    expect(endOf({ made: '2015-06' }, '2025-06-01')).toEqual([
      '2025-06-01',
      true,
      'ten years from manufacture',
    ]);
    expect(endOf({ made: 2015 })[0]).toBe('2025-01-01');
    expect(endOf({ made: '2016-02-29' })[0]).toBe('2026-02-28');
    expect(endOf({ made: '2016~' })[0]).toBe('2025-01-01');
  });

  test('no date means that it is not known whether it is due, and the basis says so', () => {
    expect(endOf({})).toEqual([undefined, undefined, 'no date read']);
    expect(endOf({ made: 'not known' })).toEqual([undefined, undefined, 'no date read']);
    // The day it was put up doesn't count.
    expect(endOf({ installed: '2010-01-01' })).toEqual([undefined, undefined, 'no date read']);
  });

  test('made on or before a day: due ten years from it for sure, before that not known', () => {
    expect(endOf({ made: '../2015' })).toEqual(['2025-12-31', true, 'ten years from manufacture']);
    expect(endOf({ made: '../2020' })).toEqual(['2030-12-31', undefined, 'ten years from manufacture']);
  });

  test('carbon monoxide goes by the printed date alone, a combined alarm by the earlier of the two', () => {
    expect(endOf({ is: 'carbon-monoxide', made: '2010-01-01' })).toEqual([
      undefined,
      undefined,
      'no date read',
    ]);
    expect(endOf({ is: 'carbon-monoxide', 'replace-by': '2027-03' })).toEqual([
      '2027-03-01',
      false,
      'printed on it',
    ]);
    // Constructed: made 2018-03-01, seven years printed: 2025-03-01 comes before the ten years of smoke.
    expect(endOf({ is: 'both', made: '2018-03-01', 'replace-by': '2025-03-01' })).toEqual([
      '2025-03-01',
      true,
      'printed on it',
    ]);
    expect(endOf({ is: 'both', made: '2015-03-01', 'replace-by': '2027-03-01' })).toEqual([
      '2025-03-01',
      true,
      'ten years from manufacture',
    ]);
  });
});
