/** Under which words and figures a caution is printed where somebody can be hurt, and under which it is not. */
import { describe, expect, it } from 'vitest';
import { deriveAlarms } from '../../src/tally/alarms.js';
import { asbestosCautions } from '../../src/tally/asbestos-cautions.js';
import { askCarbonMonoxide, burns } from '../../src/tally/carbon-monoxide.js';
import { leadAsbestosRules } from '../../src/tally/tables/lead-asbestos.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type Finish = NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number];
const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;
const system = (is: string, more: object = {}) =>
  houseFrom({ systems: [{ id: 'one', is, ...more }] }).systems[0] as NonNullable<
    ReturnType<typeof houseFrom>['systems'][number]
  >;

describe('asbestos', () => {
  const materials = (spec: PartialSpec): string[] =>
    asbestosCautions(houseFrom(spec), leadAsbestosRules()).map(({ words }) => words);
  const finish = (one: Finish): PartialSpec => ({
    levels: [LEVEL],
    rooms: [{ id: 'den', level: 'main', use: 'family', finishes: [one] }],
  });
  const floor = (what: string, more: object = {}): string[] =>
    materials(finish({ on: 'floor', what, kept: true, ...more }));

  it.each([
    ['vinyl tile', 'Vinyl or asphalt floor tile'],
    ['vinyl composition tile', 'Vinyl or asphalt floor tile'],
    ['vinyl-asbestos floor tiles', 'Vinyl or asphalt floor tile'],
    ['tile, asphalt', 'Vinyl or asphalt floor tile'],
    ['vinyl, sheet', 'Sheet vinyl'],
    ['sheet vinyl', 'Sheet vinyl'],
    ['texture paint', 'Textured ceiling or wall'],
    ['textured wall', 'Textured ceiling or wall'],
    ['ceiling texture', 'Textured ceiling or wall'],
    ['pipes, wrapped', 'Pipe or furnace wrap'],
    ['duct insulation', 'Pipe or furnace wrap'],
    ['cement shingle', 'Cement siding or roofing'],
    ['cement roof', 'Cement siding or roofing'],
    ['asbestos board', 'Asbestos'],
  ])('“%s” asks of: %s', (what, material) => {
    expect(floor(what)).toEqual([`${material} left in place: no test on file`]);
  });
  it.each(['oak strip', 'ceramic tile', 'asphalt shingle', 'vinyl siding', 'cement', 'textile'])(
    '“%s” asks of none',
    (what) => {
      expect(floor(what)).toEqual([]);
    },
  );

  const through = leadAsbestosRules().asbestosPresumed.figures.installedThroughYear;
  it.each([
    ['kept', { kept: true }, 'left in place'],
    ['with no verb and no day', { kept: false }, 'left in place'],
    ['removed last year', { kept: false, did: 'removed', done: '2025' }, 'removed'],
    ['repaired last year', { kept: false, did: 'repaired', done: '2025' }, 'worked on'],
    ['with a verb and no day', { kept: false, did: 'repaired' }, 'worked on'],
    [
      'put in on the last day of the presumed years',
      { kept: true, done: `${through}-12-31` },
      'left in place',
    ],
    ['put in by some later day', { kept: true, done: '../2001' }, 'left in place'],
    ['put in on the first day after them', { kept: true, done: `${through + 1}-01-01` }, undefined],
    ['new last year', { kept: false, done: '2025' }, undefined],
    ['replaced last year', { kept: false, did: 'replaced', done: '2025' }, undefined],
  ] as const)('sheet vinyl, %s', (_, more, state) => {
    expect(floor('sheet vinyl', more)).toEqual(
      state === undefined ? [] : [`Sheet vinyl ${state}: no test on file`],
    );
  });
  it('what was put in by some day of a house too late for it is not asked of', () => {
    expect(
      materials({
        house: { built: through + 1 },
        ...finish({ on: 'floor', what: 'sheet vinyl', done: '../2001' }),
      }),
    ).toEqual([]);
  });

  it.each([
    ['ceiling', 'sprayed texture', 1],
    ['ceiling', 'plaster, textured', 1],
    ['ceiling', 'plaster', 0],
    ['floor', 'textured plank', 0],
  ] as const)('on a %s, %s', (on, what, count) => {
    expect(materials(finish({ on, what, kept: true }))).toHaveLength(count);
  });

  it.each([
    ['new', '2025', 0],
    ['added', '2025', 0],
    ['replaced', '2025', 1],
    ['cleaned', '2025', 1],
  ] as const)('work on a popcorn ceiling: %s', (did, done, count) => {
    expect(materials({ work: [{ id: 'c', what: 'popcorn ceiling', did, done }] })).toHaveLength(count);
  });

  it('says whether the folder holds a report on asbestos, and takes no other paper for one', () => {
    const words = (kind: 'report' | 'receipt', what: string) =>
      materials({ house: { exterior: 'asbestos siding' }, documents: [{ id: 'paper', kind, what }] });
    expect(words('report', 'Asbestos sample')).toEqual(['Asbestos left in place: a test report is on file']);
    expect(words('receipt', 'Asbestos sample')).toEqual(['Asbestos left in place: no test on file']);
    expect(words('report', 'Radon')).toEqual(['Asbestos left in place: no test on file']);
  });
});

describe('carbon monoxide', () => {
  it.each([
    ['heating, gas', {}, true],
    ['gas heat', {}, true],
    ['heat pump with gas furnace', {}, true],
    ['range, gas, electric ignition', {}, true],
    ['heat pump, oil backup and heater', {}, true],
    ['pellet stove', {}, true],
    ['furnace', { fuel: 'propane' }, true],
    ['heating, hot water', {}, undefined],
    ['dryer', {}, undefined],
    ['generator', {}, undefined],
    ['baseboard heat', {}, undefined],
    ['furnace', { fuel: 'electric' }, false],
    ['heat pump, air source', {}, false],
    ['space heater, electric, oil filled', {}, false],
    ['electric fireplace, wood mantel', {}, false],
    ['heat recovery ventilator', {}, false],
    ['dryer vent', {}, false],
    ['range hood', {}, false],
    ['gas meter', {}, false],
    ['furnace, gas', { did: 'removed' }, false],
  ] as const)('“%s” %j burns: %s', (is, more, answer) => {
    expect(burns(system(is, more))).toBe(answer);
  });

  const garage = (more: object) =>
    askCarbonMonoxide(houseFrom({ structures: [{ id: 'g', is: 'garage', ...more }] }));
  const room = (use: 'garage' | 'family', finishes: Finish[] = []) =>
    askCarbonMonoxide(
      houseFrom({ levels: [LEVEL], rooms: [{ id: 'r', name: 'Den', level: 'main', use, finishes }] }),
    );
  const NONE = 'nothing that burns fuel is recorded, and no garage that opens into the house';
  it.each([
    [
      'a garage that opens in',
      garage({ name: 'Garage', 'opens-into-house': true }),
      'yes',
      'the garage opens into the house',
    ],
    [
      'one with “the” in its name',
      garage({ name: 'The Barn', 'opens-into-house': true }),
      'yes',
      'The Barn opens into the house',
    ],
    [
      'one that does not say',
      garage({}),
      'not known',
      'whether the garage opens into the house is not recorded',
    ],
    ['one that does not', garage({ 'opens-into-house': false }), 'no', NONE],
    ['one apart', garage({ attached: false }), 'no', NONE],
    ['a carport', garage({ is: 'carport', 'opens-into-house': true }), 'no', NONE],
    ['a room for a car', room('garage'), 'not known', 'whether Den opens into the house is not recorded'],
    [
      'a fireplace',
      room('family', [{ on: 'fireplace', what: 'brick' }]),
      'not known',
      'whether the fireplace in Den burns anything is not recorded',
    ],
    ['a floor', room('family', [{ on: 'floor', what: 'brick' }]), 'no', NONE],
  ])('%s', (_, found, asked, because) => {
    expect(found).toEqual({ asked, because: [because] });
  });
});

describe('alarms', () => {
  const plan = (spec: PartialSpec) => deriveAlarms(houseFrom(spec), '2026-11-20');
  const end = (more: object) => {
    const alarm = { is: 'smoke', where: 'den', ...more } as const;
    const [one] = plan({
      levels: [LEVEL],
      rooms: [{ id: 'den', level: 'main', use: 'family' }],
      alarms: [alarm],
    }).ends;
    return [one?.replaceBy, one?.basis, one?.due];
  };
  it.each([
    [{ 'replace-by': '2026-11-20' }, '2026-11-20', 'printed on it', true],
    [{ 'replace-by': '2026-11-21' }, '2026-11-21', 'printed on it', false],
    [{ 'replace-by': '../2024' }, '2024-12-31', 'printed on it', true],
    [{ 'replace-by': '../2030' }, '2030-12-31', 'printed on it', undefined],
    [{ made: '2020', 'replace-by': '../2040' }, '2030-01-01', 'ten years from manufacture', undefined],
    [{ made: '2016-02-29' }, '2026-02-28', 'ten years from manufacture', true],
    [{ is: 'carbon-monoxide', made: '2010' }, undefined, 'no date read', undefined],
    [{ is: 'both', made: '2010' }, '2020-01-01', 'ten years from manufacture', true],
  ])('the end of %j', (more, day, basis, due) => {
    expect(end(more)).toEqual([day, basis, due]);
  });

  const storeys = (name: string, finish: 'finished' | 'unfinished', uses: ('attic' | 'living')[]) =>
    plan({
      levels: [{ ...LEVEL, name, finish }],
      rooms: uses.map((use, at) => ({ id: `r${at}`, level: 'main', use })),
    }).places.length;
  it.each([
    ['Main level', 'unfinished', [], 1],
    ['Attic', 'unfinished', [], 0],
    ['Top', 'unfinished', ['attic'], 0],
    ['Top', 'unfinished', ['attic', 'living'], 1],
    ['Top', 'finished', ['attic'], 1],
  ] as const)('storeys: %s, %s, %j', (name, finish, uses, count) => {
    expect(storeys(name, finish, [...uses])).toBe(count);
  });

  const outside = (use: string, level = 'main') =>
    plan({
      levels: [LEVEL, { id: 'upper', name: 'Upper level', grade: 'above' }],
      rooms: [
        { id: 'bed', level: 'main', use: 'bedroom' },
        { id: 'there', level, use: use as 'hall' },
      ],
      alarms: [{ is: 'smoke', where: 'there' }],
    }).places.find(({ why }) => why === 'outside bedrooms')?.recorded.length;
  it.each(['hall', 'stair', 'entry', 'living', 'family', 'dining', 'office', 'recreation'])(
    'an alarm in a room passed through, %s, counts for the bedrooms of its own level',
    (use) => {
      expect([outside(use), outside(use, 'upper')]).toEqual([1, 0]);
    },
  );
  it.each(['kitchen', 'garage', 'bath', 'bedroom', 'mechanical'])('one in a %s does not', (use) => {
    expect(outside(use)).toBe(0);
  });
});
