/** Which ranges, heaters, pool sides, cellars and painted things are cautioned about, and which are not. */
import { describe, expect, it } from 'vitest';
import { deriveLead } from '../../src/tally/lead-notes.js';
import { deriveObservations } from '../../src/tally/observations.js';
import { isRange } from '../../src/tally/observed-range.js';
import { isWaterHeater } from '../../src/tally/observed-water-heater.js';
import { houseFrom } from './house-from.js';

const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;
const system = (is: string, more: object = {}) =>
  houseFrom({ systems: [{ id: 'one', is, ...more }] }).systems[0] as NonNullable<
    ReturnType<typeof houseFrom>['systems'][number]
  >;

describe('what can burn or tip', () => {
  it.each(['range, gas', 'gas stove', 'stove, electric', 'cookstove'])('“%s” can tip', (is) => {
    expect(isRange(system(is))).toBe(true);
  });
  it.each(['wood stove', 'pellet stove', 'stove pipe', 'range hood', 'wall oven', 'heating stove'])(
    '“%s” is none',
    (is) => {
      expect(isRange(system(is))).toBe(false);
    },
  );
  it.each([
    ['water heater', true],
    ['heat pump water heater', true],
    ['water heater pan', false],
    ['water heater expansion tank', false],
  ])('“%s” holds hot water: %s', (is, answer) => {
    expect(isWaterHeater(system(is))).toBe(answer);
  });
});

describe('pools and ways out', () => {
  const whole = { what: 'fence', height: '48"', 'gap-below': '4"', 'widest-gap': '3"' } as const;
  it.each([
    [{ gate: 'no' }, 'at or within the figure'],
    [{}, 'not recorded'],
    [{ gate: 'not known' }, 'not recorded'],
    [{ gate: 'yes' }, 'not recorded'],
    [{ 'closes-itself': 'no' }, 'outside the figure'],
    [{ 'opens-outward': 'no' }, 'outside the figure'],
    [{ gate: 'yes', 'closes-itself': 'yes', 'opens-outward': 'yes' }, 'at or within the figure'],
    [{ gate: 'no', height: '47 15/16"' }, 'outside the figure'],
    [{ gate: 'no', 'gap-below': '4 1/16"' }, 'outside the figure'],
    [{ gate: 'no', 'widest-gap': '4"' }, 'outside the figure'],
  ] as const)('a side with %j', (more, stands) => {
    const house = houseFrom({ pool: { barriers: [{ ...whole, ...more }] } });
    expect(deriveObservations(house).map((one) => one.stands)).toEqual([stands]);
  });

  const cellar = (size: string | undefined, uses: ('mechanical' | 'storage')[]) =>
    deriveObservations(
      houseFrom({
        levels: [{ id: 'cellar', name: 'Cellar', grade: 'below', ...(size && { size }) }, LEVEL],
        rooms: [
          ...uses.map((use, at) => ({ id: `r${at}`, level: 'cellar', use })),
          { id: 'living', level: 'main', use: 'living', windows: [{ name: 'Living room window' }] },
        ],
      }),
    ).map(({ observed }) => observed);
  it.each([
    [undefined, []],
    ["20' x 10'", []],
    ["20' x 10'", ['storage']],
    ["20' x 10'", ['mechanical', 'storage']],
    ["20' x 10' 1\"", ['mechanical']],
    [undefined, ['mechanical']],
  ] as const)('a cellar of %s with %j needs its own way out, and a window upstairs is none', (size, uses) => {
    expect(cellar(size, [...uses])).toEqual(['no window or door to escape by recorded']);
  });
  it('a plant room alone of 200 square feet does not', () => {
    expect(cellar("20' x 10'", ['mechanical'])).toEqual([]);
  });
});

describe('lead', () => {
  const notes = (item: object) =>
    deriveLead(houseFrom({ work: [{ id: 'w', what: 'door', did: 'removed', ...item }] }));
  it.each([
    [{ structural: true, 'paint-disturbed': '4 sq ft' }, 'open'],
    [{ structural: true, did: 'repaired', 'paint-disturbed': '4 sq ft' }, 'minor'],
    [{ 'paint-disturbed': '4 sq ft' }, 'minor'],
    [{ 'paint-disturbed': '6 sq ft' }, 'minor'],
    [{ 'paint-disturbed': '6.01 sq ft' }, 'more than minor'],
    [{ 'windows-replaced': true }, 'more than minor'],
  ])('%j is %s', (item, verdict) => {
    expect(notes(item).jobs.map((job) => job.verdict)).toEqual([verdict]);
  });
  it.each(['replaced', 'repaired', 'refinished', 'painted', 'moved', 'removed'] as const)(
    'work that %s a painted thing without a figure is named',
    (did) => {
      expect(notes({ did, what: 'paint of the trim' }).unrecorded).toHaveLength(1);
    },
  );
  it.each([
    ['plaster of the hall', undefined, 1],
    ['crown molding', undefined, 1],
    ['north wall', 'wainscoting taken down', 1],
    ['counter', undefined, 1],
    ['joists', undefined, 1],
    ['siding', undefined, 1],
    ['baseboard heater', undefined, 0],
    ['wall oven', undefined, 0],
    ['hose bib', undefined, 0],
    ['thing', 'screen door rehung', 1],
    ['thing', undefined, 0],
  ])('“%s”, %s, removed without a figure is named: %s', (what, how, count) => {
    expect(notes({ what, ...(how !== undefined && { how }) }).unrecorded).toHaveLength(count);
  });
  it('not what is new, is of another trade, or has its figure', () => {
    expect(notes({ did: 'new' }).unrecorded).toEqual([]);
    expect(notes({ what: 'circuit breaker' }).unrecorded).toEqual([]);
    expect(notes({ 'windows-replaced': true }).unrecorded).toEqual([]);
  });
});
