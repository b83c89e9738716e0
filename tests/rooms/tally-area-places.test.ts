/** Rooms over one another and outside their level, walls around a sloped room, and floors near each other. */
import { describe, expect, it, test } from 'vitest';
import { FOOT } from '../../src/facts/length.js';
import { checkSplitFloors, groupFloors } from '../../src/tally/area-split.js';
import { main, measure, type Plain } from './measured-house.js';

const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });

describe('rooms over one another, and outside their level', () => {
  const told = (...rooms: readonly Plain[]): [string | undefined, string | undefined][] =>
    measure({
      levels: [main({ size: `30' x 40'` })],
      rooms: rooms.map((one, at) => room(`room-${at}`, { size: `10' x 12'`, ...one })),
    }).diagnostics.map(({ message, hints }) => [message, hints[0]]);
  const over = (at: readonly string[]) => told({ at: [`east 10'`, `north 12'`] }, { at });

  it.each<readonly [string, string, readonly string[], string]>([
    ['south', '1′ 0″ to the south', [`east 10'`, `north 1'`], `at: [east 10', north 0']`],
    ['north', '1′ 0″ to the north', [`east 10'`, `north 23'`], `at: [east 10', north 24']`],
    ['west', '1′ 0″ to the west', [`east 1'`, `north 12'`], `at: [north 12']`],
    ['east', '1′ 0″ to the east', [`east 19'`, `north 12'`], `at: [east 20', north 12']`],
  ])('one that lies over the %s of another moves out that way', (_, way, at, place) => {
    const shown = place.replace(', north 0', '').replace(`10'']`, `10']`);
    expect(over(at)).toEqual([
      [expect.stringMatching(/^Room 1 lies over Room 0 by 1[02] sq ft \(/), `move it ${way}:  ${shown}`],
    ]);
  });

  it.each<readonly [string, readonly string[], string, string]>([
    [
      'south',
      [`south 1'`],
      'leaves Main level by 1′ 0″ to the south (10 sq ft)',
      `move it 1′ 0″ to the north:  at: []`,
    ],
    [
      'north',
      [`north 29'`],
      'leaves Main level by 1′ 0″ to the north (10 sq ft)',
      `move it 1′ 0″ to the south:  at: [north 28']`,
    ],
    [
      'west',
      [`west 1'`],
      'leaves Main level by 1′ 0″ to the west (12 sq ft)',
      `move it 1′ 0″ to the east:  at: []`,
    ],
  ])('one that leaves its level to the %s moves back', (_, at, message, hint) => {
    expect(told({ at })).toEqual([[`Room 0 ${message}`, hint]]);
  });

  test('of many over each other a hundred pairs are told', () => {
    const rooms = Array.from({ length: 20 }, () => ({ at: [`east 1'`, `north 1'`] }));
    expect(told(...rooms).filter(([message]) => message?.includes(' lies over '))).toHaveLength(100);
  });

  test('with hundreds of corners are held against each other up to a bound, and it is said', () => {
    // A staircase to the north-east, and back along the outside.
    const walls = Array.from({ length: 149 }, () => [`east 1"`, `north 1"`]).flat();
    const outline = [...walls, `west 149"`, `south 149"`];
    const rooms = [`1'`, `2'`, `3'`, `4'`].map((east) => ({
      size: undefined,
      outline,
      at: [`east ${east}`],
    }));
    const messages = told(...rooms).map(([message]) => message);
    expect(messages).toHaveLength(3);
    expect(messages[0]).toMatch(/^Room 1 lies over Room 0 by /);
    expect(messages[1]).toMatch(/^Room 2 lies over Room 0 by /);
    expect(messages[2]).toMatch(/^the rooms of Main level have so many corners that not all/);
  });

  test('less than 10 sq ft is said to a tenth, and a whole foot as one', () => {
    expect(told({ at: [`north 29'`], size: `9' x 12'` })[0]?.[0]).toMatch(/\(9 sq ft\)$/);
    expect(told({ at: [`north 29'`], size: `8'6" x 12'` })[0]?.[0]).toMatch(/\(8\.5 sq ft\)$/);
  });

  // A level with two notches at its north side, and a room that lies over both.
  test.each([
    ['the wider one', 8, 'Den leaves Main level by 1′ 0″ to the north (14 sq ft)'],
    ['the deeper one', 4, 'Den leaves Main level by 2′ 0″ to the north (10 sq ft)'],
  ])('of several pieces outside, the largest says how far: %s', (_, wide, message) => {
    const outline = [
      `east 30'`,
      `north 20'`,
      `west 8'`,
      `south 1'`,
      `west ${wide}'`,
      `north 1'`,
      `west 4'`,
      `south 2'`,
      `west 3'`,
      `north 2'`,
      `west ${15 - wide}'`,
      `south 20'`,
    ];
    const { diagnostics } = measure({
      levels: [main({ outline })],
      rooms: [room('den', { size: `20' x 10'`, at: [`east 5'`, `north 10'`] })],
    });
    expect(diagnostics.map((one) => one.message)).toEqual([message]);
  });

  test('a place without a size can’t be drawn; a broken shape is told as broken alone', () => {
    const place = (more: Plain) =>
      measure({
        levels: [main({ size: `30' x 40'` })],
        rooms: [room('den', { at: [`east 1'`], ...more })],
      }).diagnostics.map(({ code, message }) => `${code} ${message}`);
    expect(place({})).toEqual(['tally.gap Den has a place but no size, so it can’t be drawn']);
    expect(place({ size: `10' x 10'`, outline: [`east 9'`, `north 9'`, `west 9'`, `south 9'`] })).toEqual([
      'tally.level-size Den has both an outline and a size, and only one can be its shape',
    ]);
    expect(place({ outline: [`east 9'`, `north 9'`, `west 9'`, `south 8'`] })).toEqual([
      'tally.outline the walls of Den don’t come back to their first corner: they end 1′ 0″ short to the south',
    ]);
  });
});

describe('walls of a level that is one sloped room', () => {
  const LOW_WALLS = 'Main level, walls beyond the 5 ft line';
  const REMARK =
    'Main level: where a slope comes down to a wall, that wall is counted only as far as the level’s own sizes reach past it; sizes that stop at the inside of low walls leave it out.';
  /** The walls that were taken off, and whether the declaration says that nobody could. */
  const walls = (level: Plain, attic: Plain): readonly [number | undefined, boolean] => {
    const { areas } = measure({
      levels: [main({ ceiling: undefined, ...level })],
      rooms: [room('attic', attic)],
    });
    const line = areas.levels[0]?.lines.find(({ what }) => what === LOW_WALLS);
    return [line && Number(line.area) / FOOT / FOOT, areas.declaration.includes(REMARK)];
  };
  const TAPED = { 'at-7-ft': `30' x 9'`, 'at-5-ft': `30' x 13'` };
  const outline = (...steps: readonly string[]): Plain => ({ outline: [...steps] });

  it.each<readonly [string, Plain, Plain, number | undefined]>([
    // 31 by 16 ft outside are 496; 30 by 13 ft count, with 13 sq ft of gables and 60 sq ft under 5 ft: 33 are low walls.
    ['run along its width', { size: `31' x 16'` }, { size: `30' x 15'`, ceiling: TAPED }, -33],
    [
      'run along its depth',
      { size: `16' x 31'` },
      { size: `15' x 30'`, ceiling: { 'at-7-ft': `9' x 30'`, 'at-5-ft': `13' x 30'` } },
      -33,
    ],
    [
      'can’t be told where the taped floor spans neither side',
      { size: `31' x 16'` },
      { size: `30' x 15'`, ceiling: { 'at-7-ft': `25' x 9'`, 'at-5-ft': `29' x 13'` } },
      undefined,
    ],
    [
      'can’t be told where both sides are as long as the slope',
      { size: `31' x 31'` },
      { size: `30' x 30'`, ceiling: { highest: `16'`, pitch: '12 in 12', sides: 2, length: `30'` } },
      undefined,
    ],
    [
      'can’t be told of a room that was drawn',
      { size: `31' x 16'` },
      { ...outline(`east 30'`, `north 15'`, `west 30'`, `south 15'`), ceiling: TAPED },
      undefined,
    ],
    [
      'can’t be told of a level that is no rectangle',
      outline(`east 31'`, `north 15'`, `west 1'`, `north 1'`, `west 30'`, `south 16'`),
      { size: `30' x 15'`, ceiling: TAPED },
      undefined,
    ],
    [
      'can’t be told of a level with a slanted wall',
      outline(`east 31'`, `north 15'`, `west 1' north 1'`, `west 30'`, `south 16'`),
      { size: `30' x 15'`, ceiling: TAPED },
      undefined,
    ],
  ])('%s', (_, level, attic, area) => {
    expect(walls(level, attic)).toEqual([area, area === undefined]);
  });
});

describe('floors near each other', () => {
  test('one alone is a group of no height', () => {
    expect(groupFloors([{ floor: 'a', height: 5 }])).toEqual([
      { floors: [{ floor: 'a', height: 5 }], span: 0, kind: 'within' },
    ]);
    expect(groupFloors([])).toEqual([]);
  });

  test('of which one is below grade may make all of them so: each finished one above grade is an open reading', () => {
    const { areas, diagnostics } = measure({
      levels: [
        main({ size: `20' x 30'` }),
        main({ id: 'den', name: 'Den level', grade: 'below', size: `20' x 10'`, floor: `1'6"` }),
        main({ id: 'wing', name: 'Wing', finish: 'unfinished', size: `10' x 10'`, floor: `1'` }),
      ],
    });
    expect(diagnostics.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'warning tally.level-split',
    ]);
    expect(areas.readings.map((one) => [one.room, one.countedIfPass])).toEqual([['Main level', 600]]);
    expect(checkSplitFloors([], [])).toEqual({ readings: [], diagnostics: [] });
  });
});
