/** What is said beside the areas, condition by condition: the record’s causes, assumed heights, heat, near floors. */
import { describe, expect, it, test } from 'vitest';
import { main, measure, type Plain } from './measured-house.js';

const SQUARE = { size: `30' x 40'` };
const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });

describe('the public record', () => {
  const ROUNDED = 'The record’s figure may come from rounded lengths.';
  const compared = (area: string, spec: Plain = {}, more: Plain = {}) => {
    const { areas, diagnostics } = measure({ levels: [main(SQUARE)], record: { area, ...more }, ...spec });
    return { ...areas.record, told: diagnostics.filter(({ code }) => code === 'tally.record-differs') };
  };
  const causes = (...args: Parameters<typeof compared>) => compared(...args).causes;

  it.each<readonly [string, string, boolean, readonly string[]]>([
    [`30' x 40'`, '1,200 sq ft', false, []],
    [`30' x 40'`, '1,210 sq ft', false, [ROUNDED]],
    [`30' x 40'`, '1,190 sq ft', false, [ROUNDED]],
    [`30' x 40'`, '1,211 sq ft', true, []],
    [`30' x 40'`, '1,189 sq ft', true, []],
    // Of a small house a hundredth is less than 10 sq ft.
    [`25' x 20'`, '505 sq ft', false, [ROUNDED]],
    [`25' x 20'`, '506 sq ft', true, [ROUNDED]],
  ])('of %s beside %s is told apart: %s', (size, area, told, why) => {
    const found = compared(area, { levels: [main({ size })] });
    expect([found.told.length > 0, found.causes]).toEqual([told, why]);
  });

  test('is told as one sentence, whatever its source is called', () => {
    expect(compared('1,300 sq ft', {}, { source: 'Fallow Co. The card' }).told[0]?.message).toBe(
      'The public record (Fallow Co. The card) says 1,300 sq ft; the finished area above grade given here is 1,200 sq ft, 100 sq ft less than the record',
    );
  });

  it.each<readonly [string, string, boolean]>([
    // Within a tenth of what is missing, and within 10 sq ft of a little.
    [`20' x 20'`, '1,564 sq ft', true],
    [`20' x 20'`, '1,563 sq ft', false],
    [`20' x 20'`, '1,644 sq ft', true],
    [`20' x 20'`, '1,645 sq ft', false],
    [`6' x 10'`, '1,250 sq ft', true],
    [`6' x 10'`, '1,249 sq ft', false],
    [`6' x 10'`, '1,270 sq ft', true],
    [`6' x 10'`, '1,271 sq ft', false],
    [`20' x 20'`, '800 sq ft', false],
  ])('may hold a shed of %s if it says %s: %s', (size, area, may) => {
    const said = causes(area, { structures: [{ id: 'shed', is: 'shed', size }] });
    expect(said?.some((words) => words.startsWith('The record may count an outbuilding: Shed'))).toBe(may);
  });

  it.each<readonly [string, Plain, string]>([
    [
      'a low room',
      { rooms: [room('den', { size: `20' x 20'`, ceiling: `6'` })] },
      'The record may count the finished area with too low a ceiling (400 sq ft).',
    ],
    [
      'unfinished floor',
      { rooms: [room('den', { size: `20' x 20'`, finish: 'unfinished' })] },
      'The record may count the unfinished area (400 sq ft).',
    ],
    [
      'a house apart',
      { structures: [{ id: 'it', is: 'workshop', size: `20' x 20'`, finished: true, attached: false }] },
      'The record may count the finished area that is not joined to the house (400 sq ft).',
    ],
    [
      'a sunroom',
      { structures: [{ id: 'sun', is: 'sunroom', size: `20' x 20'` }] },
      'The record may count a space that is not usable all year: Sun (400 sq ft).',
    ],
  ])('may hold %s', (_, spec, cause) => {
    const moved = spec.rooms === undefined ? 1600 : 1200;
    expect(causes(`${moved} sq ft`, spec)).toEqual([cause]);
  });

  test('may hold a room whose reading is open and that is left out, but no room that the figure holds', () => {
    const slope = { 'at-7-ft': `9' x 20'`, 'at-5-ft': `16' x 20'` };
    const open = { rooms: [room('loft', { size: `20' x 20'`, ceiling: slope })] };
    expect(causes('1,120 sq ft', open)).toEqual([
      'The record may count the finished area with too low a ceiling (320 sq ft).',
      'The record may count Loft, whose reading is open (320 sq ft).',
    ]);
    const duct = { what: 'duct', size: `1' x 10'`, clear: `6'` };
    expect(causes('1,580 sq ft', { rooms: [room('den', { size: `20' x 20'`, low: [duct] })] })).toEqual([]);
  });

  it.each<readonly [string, string, string, boolean]>([
    // The finished rooms add up to 1,131 sq ft: within a fiftieth of the record, or 10 sq ft of a small one.
    [`29' x 39'`, `30' x 40'`, '1,109 sq ft', true],
    [`29' x 39'`, `30' x 40'`, '1,108 sq ft', false],
    [`18' x 18'`, `20' x 20'`, '334 sq ft', true],
    [`18' x 18'`, `20' x 20'`, '335 sq ft', false],
    [`29' x 39'`, `29' x 39'`, '1,131 sq ft', false],
    [`29' x 39'`, `28' x 39'`, '1,131 sq ft', false],
  ])('may have been measured inside: rooms of %s in %s, %s: %s', (inside, outside, area, may) => {
    const spec = { levels: [main({ size: outside })], rooms: [room('all', { size: inside })] };
    expect(causes(area, spec)?.some((words) => words.includes('measured inside'))).toBe(may);
  });

  test('was not measured inside alone where the figure here is the sum of the same rooms', () => {
    const rooms = [room('all', { size: `29' x 39'` })];
    expect(causes('1,110 sq ft', { levels: [main()], rooms })).toEqual([]);
  });

  test.each([
    ['2019', []],
    ['2020', ['The record (2019) is older than work on the structure: wing.']],
    ['2019-12-31/2020-02-01', ['The record (2019) may be older than work on the structure: wing.']],
  ])('beside work that was done %s', (done, said) => {
    const work = [{ id: 'wing', what: 'wing', did: 'added', structural: true, done }];
    expect(causes('1,100 sq ft', { work }, { date: '2019' })).toEqual(said);
    expect(causes('1,100 sq ft', { work })).toEqual([]);
  });

  test('is one and a half times a floor only of a level above the ground', () => {
    const cellar = main({ id: 'cellar', name: 'Cellar', grade: 'below', size: `20' x 40'` });
    expect(causes('1,200 sq ft', { levels: [cellar, main({ size: `25' x 40'` })] })).toEqual([]);
  });

  test('is compared with nothing where a cellar alone is measured, unless the house has nothing else', () => {
    const cellar = main({ id: 'cellar', name: 'Cellar', grade: 'below', size: `20' x 40'` });
    expect(compared('1,200 sq ft', { levels: [cellar, main()] })).toMatchObject({
      difference: undefined,
      words:
        'The public record says 1,200 sq ft. No level above grade is measured, so there is nothing to compare.',
    });
    expect(compared('800 sq ft', { levels: [cellar] })).toMatchObject({
      difference: -800,
      causes: ['The record may count the finished area below grade (800 sq ft).'],
    });
  });
});

describe('the declaration', () => {
  const said = (spec: Plain, about: RegExp) =>
    measure(spec).areas.declaration.filter((words) => about.test(words));

  const rooms = (...ids: readonly string[]) => ids.map((id) => room(id, { size: `5' x 5'` }));
  const level = (more: Plain = {}) => [main({ ...SQUARE, ceiling: undefined, ...more })];
  it.each<readonly [string, Plain, string | undefined]>([
    ['of a level without rooms', { levels: level() }, 'Main level'],
    ['of one room', { levels: level(), rooms: rooms('a') }, 'Main level (A)'],
    ['of three', { levels: level(), rooms: rooms('a', 'b', 'c') }, 'Main level (A, B and C)'],
    ['of four', { levels: level(), rooms: rooms('a', 'b', 'c', 'd') }, 'Main level'],
    [
      'not of rooms that say it',
      { levels: level(), rooms: [room('a', { size: `5' x 5'`, ceiling: `8'` })] },
      undefined,
    ],
    [
      'of those that don’t, beside one that does',
      { levels: level(), rooms: [...rooms('a'), room('b', { size: `5' x 5'`, ceiling: `8'` })] },
      'Main level (A)',
    ],
    ['not of an unfinished level', { levels: level({ finish: 'unfinished' }) }, undefined],
    ['not of a level that says it', { levels: level({ ceiling: `8'` }), rooms: rooms('a') }, undefined],
  ])('says that a height is assumed %s', (_, spec, where) => {
    expect(said(spec, /is assumed/)).toEqual(
      where === undefined ? [] : [`${where}: the ceiling height is not stated; 7 ft or more is assumed.`],
    );
  });

  const cold = [room('den', { size: `5' x 5'`, heated: 'no' }), room('hall', { heated: 'no' })];
  it.each<readonly [string, Plain, readonly string[]]>([
    [
      'that the level’s size holds',
      { levels: [main(SQUARE)], rooms: cold },
      ['Den (25 sq ft inside)', 'Hall'],
    ],
    ['that a sum of rooms holds', { levels: [main()], rooms: cold }, ['Den (25 sq ft inside)']],
    [
      'of no level that isn’t known',
      { levels: [main({ ...SQUARE, outline: [`east 1'`, `north 1'`, `west 1'`] })], rooms: cold },
      [],
    ],
    ['below grade too', { levels: [main({ ...SQUARE, grade: 'below' })], rooms: cold.slice(1) }, ['Hall']],
    ['of no level that isn’t joined', { levels: [main({ ...SQUARE, connected: false })], rooms: cold }, []],
  ])('tells of counted rooms without heat %s', (_, spec, names) => {
    expect(said(spec, /permanent heat/).map((words) => words.split(' has no permanent heat')[0])).toEqual(
      names,
    );
  });

  const bare = (more: Plain) => ({
    levels: [main({ ...SQUARE, finish: 'unfinished' })],
    rooms: [room('den', { size: `10' x 10'`, finish: 'finished', ...more })],
  });
  it.each([
    ['a finished room', {}, true],
    ['a low one', { ceiling: `6'` }, true],
    ['a garage', { use: 'garage' }, false],
    ['a sunroom without heat', { use: 'sunroom', heated: 'no' }, false],
  ])('of an unfinished level tells of %s by its inside size: %s', (_, more, told) => {
    expect(said(bare(more), /^Den: inside size only/).length > 0).toBe(told);
    expect(measure(bare(more)).areas.estimate).toBe(told);
  });
});

test('a sum of rooms leaves one without a size out and asks for none', () => {
  const { areas, diagnostics } = measure({
    levels: [main()],
    rooms: [
      room('hall', { size: `10' x 10'` }),
      room('car', { use: 'garage', size: `10' x 20'` }),
      room('boiler', { finish: 'unfinished', low: [{ what: 'duct', size: `1' x 1'`, clear: `6'` }] }),
      room('den', { low: [{ what: 'duct', size: `2' x 3'`, clear: `6'` }] }),
    ],
  });
  expect(diagnostics.map(({ code }) => code)).toEqual(['tally.level-size']);
  expect(areas.byClass['above-finished'].squareFeet).toBe(100);
  expect(areas.byClass['garage-and-open'].squareFeet).toBe(200);
  expect(areas.byClass['non-standard'].squareFeet).toBe(0);
});

test('of floors in a chain only those near one below grade may be below grade with it', () => {
  const { areas, diagnostics } = measure({
    levels: [
      main({ id: 'den', name: 'Den level', grade: 'below', floor: `3'6"`, ...SQUARE }),
      main({ id: 'step', name: 'Step', floor: `1'6"`, ...SQUARE }),
      main(SQUARE),
    ],
  });
  expect(areas.readings.map((one) => one.room)).toEqual(['Step']);
  expect(diagnostics.map(({ message, path }) => [message, path])).toEqual([
    [
      'the floors of Main level, Step and Den level each lie within 2 ft of the next but span 3′ 6″, and the standard doesn’t say which are one level; one of them is below grade, which may make all of them so',
      ['levels', 1, 'floor'],
    ],
  ]);
});
