/** Conditions of the area rules, each at its edge and on both sides: walls of low levels, slopes, tapes. */
import { describe, expect, it, test } from 'vitest';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import { FOOT } from '../../src/facts/length.js';
import { commonReading, type Reading } from '../../src/tally/area-words.js';
import { main, measure, type Plain } from './measured-house.js';

const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });
const feet = (area: bigint | undefined): number => Number(((area ?? 0n) * 100n) / SQUARE_FOOT) / 100;

describe('walls of a level whose rooms are all too low', () => {
  const LOW = { size: `15' x 30'`, ceiling: { 'at-7-ft': `3' x 30'`, 'at-5-ft': `9' x 30'` } };
  const counted = (level: Plain, ...rooms: readonly Plain[]): number =>
    feet(
      measure({
        levels: [main({ size: `16' x 31'`, ceiling: undefined, ...level })],
        rooms: rooms.map((one, at) => room(`room-${at}`, one)),
      }).areas.byClass['above-finished'].area,
    );
  const half = (more: Plain) => ({ ...LOW, size: `15' x 15'`, ...more });
  const SHORT = { 'at-7-ft': `3' x 15'`, 'at-5-ft': `9' x 15'` };

  it.each<readonly [string, Plain, readonly Plain[], number]>([
    ['don’t count', {}, [LOW], 0],
    ['don’t count around two such rooms', {}, [half({ ceiling: SHORT }), half({ ceiling: SHORT })], 0],
    // 225 sq ft of the high room, and 46 of walls that nobody can tell apart.
    ['stay where one room is high enough', {}, [half({ ceiling: SHORT }), half({ ceiling: `8'` })], 271],
    ['stay beside a bay with a floor', { parts: [{ what: 'bay', size: `6' x 2'` }] }, [LOW], 58],
    [
      'don’t count beside a seat without one',
      { parts: [{ what: 'seat', size: `6' x 2'`, floor: false }] },
      [LOW],
      0,
    ],
    ['stay beside an open well', { openings: [{ what: 'well', size: `2' x 3'` }] }, [LOW], 40],
    [
      'don’t count beside a stair that fills its opening',
      { openings: [{ what: 'stair', size: `2' x 3'`, treads: `2' x 3'` }] },
      [LOW],
      0,
    ],
    ['stay where a room has no size', {}, [LOW, { ceiling: `8'` }], 46],
    ['stay where they would be a fifth of the level', { size: `22'6" x 25'` }, [LOW], 112.5],
    ['don’t count where they are just less', { size: `22'5" x 25'` }, [LOW], 0],
  ])('%s', (_, level, rooms, area) => {
    expect(counted(level, ...rooms)).toBe(area);
  });
});

describe('a slope counts', () => {
  const of = (ceiling: Plain, size: string) => {
    const { areas, diagnostics } = measure({
      levels: [main({ size: `100' x 100'` })],
      rooms: [room('attic', { size, ceiling })],
    });
    const low = (areas.levels[0]?.lines ?? []).slice(1).reduce((sum, line) => sum - Number(line.area), 0);
    return [
      Math.round((low / FOOT / FOOT) * 100) / 100,
      areas.readings.length,
      diagnostics.map(({ severity }) => severity),
    ];
  };
  const metric = (highest: string, flat: string) => ({
    highest,
    flat,
    pitch: '1 in 1',
    sides: 2,
    length: '10 m',
  });

  it.each<readonly [string, Plain, string, number, number]>([
    ['whole where all is 7 ft high', { 'at-7-ft': `10' x 30'`, 'at-5-ft': `10' x 30'` }, `10' x 30'`, 0, 0],
    ['at exactly half of all', { 'at-7-ft': `5' x 30'`, 'at-5-ft': `10' x 30'` }, `10' x 30'`, 0, 0],
    [
      'at exactly half of its part at 5 ft by one reading',
      { 'at-7-ft': `4' x 30'`, 'at-5-ft': `8' x 30'` },
      `10' x 30'`,
      300,
      1,
    ],
    ['not at less than half', { 'at-7-ft': `3'11" x 30'`, 'at-5-ft': `8' x 30'` }, `10' x 30'`, 300, 0],
    // 2.13 m is high enough where metres were taped: 4 m flat of 5.22 m at 1.52 m, of a floor of 5.22 m.
    ['at 2.13 m', metric('2.13 m', '4 m'), '5.22 m x 10 m', 0, 0],
    ['not at 2.12 m: of it, 0.02 m lie under 1.52 m', metric('2.12 m', '4 m'), '5.22 m x 10 m', 561.88, 0],
    // To the far wall and no further: 12 ft flat and 4 ft of each slope are wider than the room.
    [
      'as far as its walls',
      { highest: `9'`, flat: `12'`, pitch: '12 in 12', sides: 2, length: `30'` },
      `17' x 30'`,
      0,
      0,
    ],
  ])('%s', (_, ceiling, size, low, readings) => {
    expect(of(ceiling, size)).toEqual([low, readings, readings === 0 ? [] : ['warning']]);
  });

  it.each([
    [`12'`, ['error']],
    [`13'`, []],
  ])('in a room of %s by 30 ft, or is larger than it by its own lowest height', (width, told) => {
    const section = { highest: `8'`, flat: `9'`, lowest: `6'`, pitch: '12 in 12', sides: 2, length: `30'` };
    expect(of(section, `${width} x 30'`)[2]).toEqual(told);
  });

  it.each([
    ['1.93 m', 0],
    ['1.92 m', 2.69],
    [`6'4"`, 0],
    [`6'3 15/16"`, 2.69],
  ])('and a duct that hangs at %s takes %s sq ft', (clear, lost) => {
    const { areas } = measure({
      levels: [main({ size: `40' x 40'` })],
      rooms: [room('hall', { size: '3 m x 3 m', low: [{ what: 'duct', size: '0.5 m x 0.5 m', clear }] })],
    });
    expect(feet(areas.byClass['non-standard'].area)).toBe(lost);
  });
});

describe('square metres are given', () => {
  const SIZE = { size: '10 m x 8 m' };
  const INSIDE = { ...SIZE, measured: 'inside' };
  const metres = (level: Plain, of?: Plain) =>
    measure({
      levels: [main({ ...level, ceiling: '2.5 m' })],
      rooms: of === undefined ? [] : [room('den', of)],
    }).areas.byClass['above-finished'].squareMetres !== undefined;
  const taped = (width: string) => ({
    size: '5 m x 6 m',
    ceiling: { 'at-7-ft': `${width} x 6 m`, 'at-5-ft': '4 m x 6 m' },
  });
  const section = (highest: string) => ({
    size: '5 m x 6 m',
    ceiling: { highest, flat: '2 m', pitch: '1 in 1', sides: 2, length: '6 m' },
  });
  const stair = (treads: string) => ({ ...SIZE, openings: [{ what: 'stair', size: '1 m x 3 m', treads }] });
  const duct = (size: string) => ({ size: '5 m x 6 m', low: [{ what: 'duct', size, clear: '1.8 m' }] });

  it.each<readonly [string, boolean, Plain, Plain | undefined]>([
    ['with a metric size', true, SIZE, undefined],
    ['not without any length', false, {}, undefined],
    ['not with a room in feet', false, SIZE, { size: `10' x 10'` }],
    ['with metric treads', true, stair('1 m x 2 m'), undefined],
    ['not with treads in feet', false, stair(`3' x 6'`), undefined],
    ['with a metric strip', true, SIZE, duct('1 m x 2 m')],
    ['not with a strip in feet', false, SIZE, duct(`3' x 6'`)],
    ['with a metric slope', true, SIZE, taped('3 m')],
    ['not with a slope taped in feet', false, SIZE, taped(`9'`)],
    ['with a metric section', true, SIZE, section('2.6 m')],
    ['not with the height of a section in feet', false, SIZE, section(`8'6"`)],
    [
      'with metric walls, one of them none',
      true,
      { ...INSIDE, walls: { all: '0.3 m', north: 'none' } },
      undefined,
    ],
    ['not with a wall in inches', false, { ...INSIDE, walls: { all: '0.3 m', north: '6"' } }, undefined],
    ['where such a wall adds nothing', true, { ...SIZE, walls: { all: '6"' } }, undefined],
    ['where a wall can’t be read', true, { ...INSIDE, walls: { all: '0.3 m', north: 'thick' } }, undefined],
  ])('%s: %s', (_, given, level, of) => {
    expect(metres(level, of)).toBe(given);
  });
});

it.each<readonly [Reading | undefined, readonly (readonly [Reading, boolean])[]]>([
  [
    'metric',
    [
      ['metric', false],
      ['metric', true],
    ],
  ],
  [
    undefined,
    [
      ['metric', true],
      ['tenths', false],
    ],
  ],
  [
    undefined,
    [
      ['metric', false],
      ['inches', true],
    ],
  ],
  [
    'inches',
    [
      ['inches', true],
      ['inches', false],
    ],
  ],
  [
    'tenths',
    [
      ['tenths', false],
      ['inches', true],
    ],
  ],
  [
    undefined,
    [
      ['tenths', true],
      ['inches', false],
    ],
  ],
])('one tape for all: %s', (tape, list) => {
  expect(commonReading(list.map(([reading, wholeFeet]) => ({ reading, wholeFeet })))).toBe(tape);
});

test.each([
  [['south', 'east'], 'rooms-only', true, ['tally.outline']],
  [['all'], 'grown-from-inside', false, []],
  [['all', 'south'], 'grown-from-inside', false, []],
])('a slanted wall adds nothing only where that is said of all: %s', (sides, basis, estimate, told) => {
  const walls = Object.fromEntries(sides.map((side) => [side, 'none']));
  const outline = [`east 30'`, `north 40'`, `west 30' south 40'`];
  const { areas, diagnostics } = measure({ levels: [main({ outline, measured: 'inside', walls })] });
  expect(areas.levels[0]).toMatchObject({ basis, estimate });
  expect(diagnostics.map(({ code }) => code)).toEqual(told);
});

test('the walls of a room that was drawn are as long as its sides, slanted ones too', () => {
  const outline = [`east 3'`, `north 4'`, `west 3' south 4'`];
  const { areas } = measure({ levels: [main({ size: `20' x 20'` })], rooms: [room('den', { outline })] });
  expect(areas.roomWalls.get('den')).toEqual({ perimeter: 12 * FOOT, height: 8 * FOOT });
});
