import { describe, expect, test } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { SQUARE_FOOT, SQUARE_INCH } from '../../src/facts/floor-area.js';
import { FOOT, INCH, readLength } from '../../src/facts/length.js';
import { readStep } from '../../src/facts/step.js';
import { rectanglesOf } from '../../src/tally/area-rectangles.js';
import { groupFloors } from '../../src/tally/area-split.js';
import { readWall } from '../../src/tally/area-walls.js';
import { areaWords, lengthToType } from '../../src/tally/area-words.js';
import type { Point } from '../../src/tally/corners.js';
import { main, measure, type Plain } from './measured-house.js';

const square = { size: "30' x 40'" };
const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'other', ...more });
const feet = (area: bigint | undefined): number => Number(((area ?? -1n) * 100n) / SQUARE_FOOT) / 100;
const codes = (list: readonly Diagnostic[]): string[] => list.map((d) => `${d.severity} ${d.code}`);

describe('outlines', () => {
  const open = (last: string) =>
    measure({ levels: [main({ outline: ["east 34'", `north 26'6"`, "west 34'", last] })] });

  test('a gap is named with its length, its side and what to type', () => {
    const { diagnostics, areas } = open("south 26'");
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({
      code: 'tally.outline',
      severity: 'error',
      path: ['levels', 0, 'outline'],
      message:
        'the walls of Main level don’t come back to their first corner: they end 6″ short to the south',
    });
    expect(diagnostics[0]?.hints[0]).toContain('add  south 6"');
    expect(diagnostics[0]?.hints[1]).toBe(`if the last wall is at fault, write  south 26'6"  for  south 26'`);
    expect(areas.levels[0]).toMatchObject({ basis: 'none', gross: undefined, lines: [] });
  });

  test('a wall walked the wrong way is suspected', () => {
    const { diagnostics } = measure({
      levels: [main({ outline: ["east 34'", "north 26'", "east 34'", "south 26'"] })],
    });
    expect(diagnostics[0]?.hints.join('\n')).toContain(`should  east 34'  be  west 34' ?`);
  });

  test('a gap both ways is typed as one slanted step', () => {
    const { diagnostics } = measure({
      levels: [main({ outline: ["east 34'", "north 26'", "west 33'", "south 24'"] })],
    });
    expect(diagnostics[0]?.message).toContain('1′ 0″ short to the west and 2′ 0″ short to the south');
    expect(diagnostics[0]?.hints[0]).toContain("west 1' south 2'");
    const typed = readStep("west 1' south 2'");
    expect(typed.ok).toBe(true);
  });

  test('two tapes in one outline are named', () => {
    const { diagnostics } = measure({
      levels: [main({ outline: ['east 10.3 ft', "north 20'", `west 10'4"`, "south 20'"] })],
    });
    expect(diagnostics[0]?.hints.join()).toContain('read in different units');
  });

  test('walls that cross are both named', () => {
    const { diagnostics } = measure({
      levels: [
        main({ outline: ["east 30'", "north 20'", "west 10'", "south 30'", "west 20'", "north 10'"] }),
      ],
    });
    expect(diagnostics[0]).toMatchObject({ code: 'tally.outline', path: ['levels', 0, 'outline', 3] });
    expect(diagnostics[0]?.message).toContain("wall 1 (east 30') and wall 4 (south 30')");
  });

  test('a slanted outline is one exact line with its walls', () => {
    const { areas, diagnostics } = measure({
      levels: [main({ outline: ["east 30'", "north 20'", "west 27'", "west 3' south 4'", "south 16'"] })],
    });
    expect(diagnostics).toEqual([]);
    expect(feet(areas.levels[0]?.gross)).toBe(594);
    expect(areas.levels[0]?.lines).toHaveLength(1);
  });
});

describe('the unit that a level and its rooms are printed in', () => {
  const readings = (level: Plain, size: string, at?: string[]) => {
    const [one] = measure({ levels: [main(level)], rooms: [room('den', { size, at })] }).areas.levels;
    return [one?.reading, one?.rooms[0]?.reading];
  };

  test('is the one that each was read in', () => {
    const at = ['east 0.2 m', 'north 0.2 m'];
    expect(readings({ size: '12.2 m x 8 m' }, '3.1 m x 4 m', at)).toEqual(['metric', 'metric']);
    expect(readings({ size: `40' x 26'` }, `10'6" x 12'`, [`east 6"`, `north 6"`])).toEqual([
      'inches',
      'inches',
    ]);
    expect(readings({ size: `40' x 26'` }, '3.1 m x 4 m', at)).toEqual(['inches', 'metric']);
    expect(readings({ size: '40.5 ft x 26.2 ft' }, '10.5 ft x 12 ft')).toEqual(['tenths', undefined]);
    expect(readings({}, '3.1 m x 4 m')).toEqual(['metric', undefined]);
  });
});

describe('the level above', () => {
  const stair = { openings: [{ what: 'stair', size: "3' x 10'", treads: "3' x 10'" }] };
  const cellar = main({ id: 'cellar', name: 'Cellar', grade: 'below', ceiling: '6\'6"', ...square });
  const low = main({ id: 'low', name: 'Low level', ceiling: '6\'6"', ...square });
  const upper = main({ id: 'upper', name: 'Upper level', ...square });
  const under = (levels: Plain[], id: string) =>
    measure({ levels })
      .areas.levels.find((one) => one.id === id)
      ?.lines.map((line) => line.what)
      .filter((what) => what.startsWith('Under the stairs'));

  test('a cellar has the main level over it, even if it is listed last', () => {
    const level = main({ ...square, ...stair });
    for (const levels of [
      [cellar, level, upper],
      [level, upper, cellar],
      [level, cellar, upper],
    ])
      expect(under(levels, 'cellar')).toHaveLength(1);
    // The upper level’s stairs come down to the main one.
    expect(under([main({ ...square }), main({ ...upper, ...stair }), cellar], 'cellar')).toEqual([]);
  });

  test('stated heights go before the order of the list', () => {
    const high = main({ ...upper, ...stair, floor: "9'" });
    expect(under([high, low], 'low')).toHaveLength(1);
    expect(under([low, high], 'low')).toHaveLength(1);
    expect(under([low, main({ ...upper, floor: "18'" }), high], 'low')).toHaveLength(1);
    expect(
      under([low, main({ ...upper, ...stair, floor: "18'" }), main({ ...high, openings: [] })], 'low'),
    ).toEqual([]);
  });
});

describe('a level’s size', () => {
  test('given twice is an error, and the area is unknown', () => {
    const { areas, diagnostics } = measure({
      levels: [main({ ...square, outline: ["east 30'", "north 40'", "west 30'", "south 40'"] })],
    });
    expect(diagnostics).toMatchObject([
      { code: 'tally.level-size', severity: 'error', path: ['levels', 0, 'size'] },
    ]);
    expect(areas.levels[0]?.basis).toBe('none');
  });

  test('given nowhere leaves the area unknown and says so', () => {
    const { areas, diagnostics } = measure({ levels: [main()] });
    expect(codes(diagnostics)).toEqual(['note tally.level-size']);
    expect(areas.byClass['above-finished'].area).toBe(0n);
    expect(areas.declaration.join(' ')).toContain('The area of Main level is not known');
  });

  test('from rooms alone is an estimate that says what it lacks', () => {
    const { areas, diagnostics } = measure({
      levels: [main({ openings: [{ what: 'well', size: "3' x 10'" }] })],
      rooms: [room('den', { size: "10' x 12'" }), room('hall', { size: "4' x 12'" }), room('nook', {})],
    });
    expect(areas.levels[0]).toMatchObject({ basis: 'rooms-only', estimate: true, corners: undefined });
    expect(feet(areas.levels[0]?.gross)).toBe(168);
    expect(areas.estimate).toBe(true);
    expect(areas.declaration.join(' ')).toMatch(/walls not included.*Nook: not measured and not included/);
    expect(codes(diagnostics)).toEqual(['warning tally.level-size']);
  });

  test('taken inside without walls is an estimate; with walls on some sides too', () => {
    const bare = measure({ levels: [main({ ...square, measured: 'inside' })] }).areas;
    expect(bare.levels[0]).toMatchObject({ basis: 'rooms-only', estimate: true });
    expect(feet(bare.levels[0]?.gross)).toBe(1200);
    const some = measure({
      levels: [main({ ...square, measured: 'inside', walls: { north: '12"' } })],
    }).areas;
    expect(feet(some.levels[0]?.gross)).toBe(1230);
    expect(some.levels[0]?.estimate).toBe(true);
    expect(some.declaration.join(' ')).toContain(
      'the thickness of the east, south and west wall is not known',
    );
  });

  test('grows around a corner, thick on one side only', () => {
    const { areas } = measure({
      levels: [
        main({
          measured: 'inside',
          outline: ["east 20'", "north 10'", "west 10'", "north 10'", "west 10'", "south 20'"],
          walls: { all: 'none', north: '12"' },
        }),
      ],
    });
    expect(feet(areas.levels[0]?.gross)).toBe(320);
    expect(areas.estimate).toBe(false);
  });

  test('a wall that can’t be read is an error at its word', () => {
    const { diagnostics } = measure({
      levels: [main({ ...square, measured: 'inside', walls: { north: 'thick' } })],
    });
    expect(diagnostics[0]).toMatchObject({
      code: 'facts.length',
      severity: 'error',
      path: ['levels', 0, 'walls', 'north'],
    });
  });

  test('walls that add nothing, and slanted walls that can’t be grown, are said', () => {
    expect(codes(measure({ levels: [main({ ...square, walls: { all: '6"' } })] }).diagnostics)).toEqual([
      'warning tally.level-size',
    ]);
    const slanted = measure({
      levels: [
        main({
          measured: 'inside',
          outline: ["east 30'", "north 20'", "west 27'", "west 3' south 4'", "south 16'"],
          walls: { all: '6"' },
        }),
      ],
    });
    expect(codes(slanted.diagnostics)).toEqual(['warning tally.outline']);
    expect(slanted.areas.levels[0]).toMatchObject({ basis: 'rooms-only', estimate: true });
  });

  test('wall texts', () => {
    expect(readWall('6"')).toEqual({
      ok: true,
      value: { thickness: 6 * INCH, party: false, reading: 'inches' },
    });
    expect(readWall('party 8 in')).toEqual({
      ok: true,
      value: { thickness: 4 * INCH, party: true, reading: 'inches' },
    });
    expect(readWall('none')).toEqual({ ok: true, value: { thickness: 0, party: false, reading: undefined } });
    expect(readWall('party').ok).toBe(false);
  });
});

describe('rooms', () => {
  test('unfinished, garage and low rooms move out, each to its own class', () => {
    const { areas, diagnostics } = measure({
      levels: [main(square)],
      rooms: [
        room('boiler', { size: "10' x 10'", finish: 'unfinished' }),
        room('car', { size: "20' x 20'", use: 'garage' }),
        room('nook', { size: "5' x 8'", ceiling: `6'11"` }),
      ],
    });
    expect(diagnostics).toEqual([]);
    const { byClass } = areas;
    expect(byClass['above-finished'].squareFeet).toBe(660);
    expect(byClass.unfinished.squareFeet).toBe(100);
    expect(byClass['garage-and-open'].squareFeet).toBe(400);
    expect(byClass['non-standard'].squareFeet).toBe(40);
    expect(areas.structures.garage).toMatchObject([{ id: 'car', squareFeet: 400 }]);
  });

  test('an unfinished level keeps only its finished rooms, at their inside size, as an estimate', () => {
    const { areas } = measure({
      levels: [main({ ...square, finish: 'unfinished' })],
      rooms: [room('den', { size: "10' x 12'", finish: 'finished' })],
    });
    expect(areas.byClass['above-finished'].squareFeet).toBe(120);
    expect(areas.byClass.unfinished.squareFeet).toBe(1080);
    expect(areas.estimate).toBe(true);
  });

  test('a level with a low ceiling keeps only rooms that are high enough', () => {
    const { areas } = measure({
      levels: [main({ ...square, ceiling: `6'10"` })],
      rooms: [room('den', { size: "10' x 12'", ceiling: "7'" }), room('hall', { size: "4' x 10'" })],
    });
    expect(areas.byClass['above-finished'].squareFeet).toBe(120);
    expect(areas.byClass['non-standard'].squareFeet).toBe(1080);
  });

  test('a room that has to come off but has no size is an error', () => {
    const { diagnostics } = measure({
      levels: [main(square)],
      rooms: [room('boiler-room', { finish: 'unfinished' })],
    });
    expect(diagnostics).toMatchObject([{ code: 'tally.gap', severity: 'error', path: ['rooms', 0, 'size'] }]);
    expect(diagnostics[0]?.message).toContain('Boiler room');
  });

  test('more off than there is leaves the area unknown; more rooms than floor is worth a look', () => {
    const off = measure({
      levels: [main({ size: "10' x 10'" })],
      rooms: [room('big', { size: "20' x 20'", finish: 'unfinished' })],
    });
    expect(codes(off.diagnostics)).toEqual(['error tally.outside-level']);
    expect(off.areas.levels[0]?.gross).toBeUndefined();
    expect(off.areas.byClass.unfinished.area).toBe(0n);
    const look = measure({
      levels: [main({ size: "10' x 10'" })],
      rooms: [room('big', { size: "20' x 20'" })],
    });
    expect(codes(look.diagnostics)).toEqual(['warning tally.outside-level']);
  });

  test('a sunroom counts with heat, has its own line without, and asks where nobody said', () => {
    const of = (heated: Plain) =>
      measure({
        levels: [main(square)],
        rooms: [room('sun', { use: 'sunroom', size: "10' x 12'", ...heated })],
      });
    expect(of({ heated: 'yes' }).areas.byClass['above-finished'].squareFeet).toBe(1200);
    const cold = of({ heated: 'no' });
    expect(cold.areas.byClass['above-finished'].squareFeet).toBe(1080);
    expect(cold.areas.structures['not-all-year']).toMatchObject([{ id: 'sun', squareFeet: 120 }]);
    expect(cold.diagnostics).toEqual([]);
    expect(codes(of({}).diagnostics)).toEqual(['warning tally.gap']);
  });

  test('no heat elsewhere is a sentence, not a change', () => {
    const { areas } = measure({
      levels: [main(square)],
      rooms: [room('bonus', { size: "10' x 30'", heated: 'no' })],
    });
    expect(areas.byClass['above-finished'].squareFeet).toBe(1200);
    expect(areas.declaration.join(' ')).toMatch(
      /Bonus \(300 sq ft inside\) has no permanent heat.*North Carolina/,
    );
  });

  test('floors, walls and heights of rooms are handed on', () => {
    const { areas } = measure({
      levels: [main(square)],
      rooms: [
        room('den', { size: "10' x 12'" }),
        room('bay', { outline: ["east 6'", "north 8'", "west 6'", "south 8'"], ceiling: "9'" }),
        room('attic', { size: "10' x 10'", ceiling: { 'at-7-ft': "8' x 10'", 'at-5-ft': "10' x 10'" } }),
        room('nook', {}),
      ],
    });
    expect(feet(areas.roomFloors.get('den'))).toBe(120);
    expect(areas.roomWalls.get('den')).toEqual({ perimeter: 44 * FOOT, height: 8 * FOOT });
    expect(areas.roomWalls.get('bay')).toEqual({ perimeter: 28 * FOOT, height: 9 * FOOT });
    expect(areas.roomWalls.get('attic')).toEqual({ perimeter: 40 * FOOT, height: undefined });
    expect(areas.roomFloors.has('nook')).toBe(false);
  });
});

describe('sloped ceilings', () => {
  const attic = (ceiling: Plain, size: Plain = { size: "15' x 30'" }) =>
    measure({
      levels: [main({ size: "15' x 30'", ceiling: undefined })],
      rooms: [room('attic', { ...size, ceiling })],
    });
  const section = { highest: "8'", flat: "6'", pitch: '12 in 12', sides: 2, length: "30'" };

  test('a section gives the same areas as taped ones', () => {
    // 6 ft flat and 1 ft of slope each side down to 7 ft: 8 ft; 3 ft each side down to 5 ft: 12 ft.
    const { areas } = attic(section);
    expect(areas.byClass['above-finished'].squareFeet).toBe(360);
    const taped = attic({ 'at-7-ft': "8' x 30'", 'at-5-ft': "12' x 30'" }).areas;
    expect(taped.byClass['above-finished'].area).toBe(areas.byClass['above-finished'].area);
  });

  test('a wall at 6 ft ends the slope, so that nothing lies under 5 ft', () => {
    const { areas } = attic({ ...section, lowest: "6'" }, { size: "10' x 30'" });
    expect(areas.levels[0]?.lines.some((line) => line.into === undefined && line.area < 0n)).toBe(false);
  });

  test('a pitch that leaves fractions is judged exactly at the half', () => {
    // At 7 ft the flat part, at 5 ft 32/7 ft more, at the floor 16 ft more: the part at 5 ft passes from a flat part
    // of 32/7 ft on (4′ 6.857″), the whole floor only from 16 ft on.
    const of = (flat: string) =>
      measure({
        levels: [main({ size: "40' x 30'" })],
        rooms: [
          room('attic', { ceiling: { highest: "7'", flat, pitch: '7 in 8', sides: 2, length: "30'" } }),
        ],
      }).areas.readings.length;
    expect(of(`4'6 13/16"`)).toBe(0);
    expect(of(`4'6 7/8"`)).toBe(1);
    expect(of("16'")).toBe(0);
    expect(of(`15'11 15/16"`)).toBe(1);
  });

  test.each([
    ['given twice', { ...section, 'at-5-ft': "9' x 30'" }],
    ['without its length', { highest: "8'", pitch: '12 in 12', sides: 2 }],
    ['with more at 7 ft than at 5 ft', { 'at-7-ft': "9' x 30'", 'at-5-ft': "8' x 30'" }],
    ['with more at 5 ft than floor', { 'at-7-ft': "9' x 30'", 'at-5-ft': "16' x 30'" }],
    ['with a lowest above its highest', { ...section, lowest: "9'" }],
    ['with three sides', { ...section, sides: 3 }],
    ['with no rise', { ...section, pitch: '0 in 12' }],
    ['flat and wider than its room', { ...section, flat: "20'" }],
  ])('%s is an error', (_, ceiling) => {
    const { diagnostics } = attic(ceiling);
    expect(codes(diagnostics)).toEqual(['error tally.ceiling']);
    expect(diagnostics[0]?.path?.slice(0, 3)).toEqual(['rooms', 0, 'ceiling']);
  });

  const shelled = (ceiling: Plain) =>
    measure({
      levels: [main({ size: "16' x 31'", ceiling: undefined })],
      rooms: [room('attic', { size: "15' x 30'", ceiling })],
    }).areas;

  test('walls around a room that doesn’t count don’t count either', () => {
    const areas = shelled({ 'at-7-ft': "3' x 30'", 'at-5-ft': "9' x 30'" });
    expect(areas.byClass['above-finished'].squareFeet).toBe(0);
    expect(areas.byClass['non-standard'].squareFeet).toBe(270);
    expect(feet(areas.levels[0]?.gross)).toBe(496);
  });

  test('below one slope the full-height wall counts, the low one does not', () => {
    // 3 ft flat; 7 ft of slope from 12 ft down to 5 ft; the half-foot wall at the high side: 10.5 ft on 31 ft.
    const one = { highest: "12'", flat: "3'", pitch: '12 in 12', sides: 1, length: "30'" };
    const areas = shelled(one);
    expect(feet(areas.byClass['above-finished'].area)).toBe(325.5);
    expect(areas.readings).toEqual([]);
  });

  test('a duct below the slope loses its strip once', () => {
    const { areas } = measure({
      levels: [main({ size: "16' x 30'", ceiling: undefined })],
      rooms: [
        room('attic', {
          size: "15' x 29'",
          ceiling: { 'at-7-ft': "9' x 29'", 'at-5-ft': "13' x 29'" },
          low: [{ what: 'duct', size: "2' x 10'", clear: "6'" }],
        }),
      ],
    });
    expect(feet(areas.byClass['above-finished'].area)).toBe(370);
    expect(areas.byClass['non-standard'].squareFeet).toBe(20);
  });

  test('taped areas ask for the size of the room', () => {
    expect(codes(attic({ 'at-7-ft': "8' x 30'", 'at-5-ft': "12' x 30'" }, {}).diagnostics)).toEqual([
      'error tally.gap',
    ]);
  });
});

describe('places', () => {
  const laid = (one: Plain, other: Plain) =>
    measure({ levels: [main(square)], rooms: [room('den', one), room('hall', other)] });

  test('rooms over each other are named with the move that parts them', () => {
    const { diagnostics } = laid(
      { size: "10' x 12'", at: [] },
      { size: "10' x 12'", at: ["east 9'", "north 1'"] },
    );
    expect(diagnostics).toMatchObject([
      { code: 'tally.overlap', severity: 'error', path: ['rooms', 1, 'at'] },
    ]);
    expect(diagnostics[0]?.message).toBe('Hall lies over Den by 11 sq ft (1′ 0″ × 11′ 0″)');
    expect(diagnostics[0]?.hints[0]).toBe("move it 1′ 0″ to the east:  at: [east 10', north 1']");
    const mended = laid({ size: "10' x 12'", at: [] }, { size: "10' x 12'", at: ["east 10'", "north 1'"] });
    expect(mended.diagnostics).toEqual([]);
  });

  test('a room that leaves its level is told how far and which way back', () => {
    const { diagnostics } = laid({ size: "10' x 12'", at: ["east 21'"] }, {});
    expect(diagnostics).toMatchObject([{ code: 'tally.outside-level', path: ['rooms', 0, 'at'] }]);
    expect(diagnostics[0]?.message).toBe('Den leaves Main level by 1′ 0″ to the east (12 sq ft)');
    expect(diagnostics[0]?.hints[0]).toBe("move it 1′ 0″ to the west:  at: [east 20']");
  });

  test('a room far away is wholly outside', () => {
    const { diagnostics } = laid({ size: "10' x 12'", at: ["east 100'"] }, {});
    expect(diagnostics[0]?.message).toBe('Den lies wholly outside Main level');
  });

  test('what sticks out into a bay is let be', () => {
    const bayed = measure({
      levels: [main({ ...square, parts: [{ what: 'bay', size: "6' x 2'" }] })],
      rooms: [room('den', { outline: ["east 6'", "north 12'", "west 6'", "south 12'"], at: ["south 2'"] })],
    });
    expect(bayed.diagnostics).toEqual([]);
  });

  test('placed rooms have corners and words for the plan', () => {
    const { areas } = laid({ size: "10' x 12'", at: ["east 2'"] }, { size: "4' x 4'" });
    expect(areas.levels[0]?.rooms).toEqual([
      {
        id: 'den',
        name: 'Den',
        sizeWords: '10′ 0″ × 12′ 0″',
        reading: 'inches',
        corners: [
          [2 * FOOT, 0],
          [12 * FOOT, 0],
          [12 * FOOT, 12 * FOOT],
          [2 * FOOT, 12 * FOOT],
        ],
        // The middle of a rectangle.
        spot: [7 * FOOT, 6 * FOOT],
        areaClass: 'above-finished',
        split: false,
      },
    ]);
  });

  test('a placed room says where its floor belongs, and whether parts of it go elsewhere', () => {
    const { areas } = laid(
      { size: "10' x 12'", at: ["east 2'"], low: [{ what: 'duct', size: "2' x 3'", clear: "6'" }] },
      { size: "4' x 4'", at: ["east 14'"], finish: 'unfinished' },
    );
    expect(areas.levels[0]?.rooms.map((room) => [room.areaClass, room.split])).toEqual([
      ['above-finished', true],
      ['unfinished', false],
    ]);
  });
});

describe('split floors', () => {
  const groups = (...feetUp: number[]) =>
    groupFloors(feetUp.map((height) => ({ floor: height, height: height * FOOT }))).map((g) => g.kind);

  test('two feet exactly and chains are open', () => {
    expect(groups(0, 1.5)).toEqual(['within']);
    expect(groups(0, 2)).toEqual(['exactly']);
    expect(groups(0, 1.5, 3)).toEqual(['chain']);
    expect(groups(0, 2.01)).toEqual(['within', 'within']);
  });

  test('a level below grade within 2 ft of one above is flagged with both results', () => {
    const { areas, diagnostics } = measure({
      levels: [main({ ...square, id: 'wing', name: 'Wing', grade: 'below', floor: "1'" }), main(square)],
    });
    expect(codes(diagnostics)).toEqual(['warning tally.level-split']);
    expect(areas.readings).toMatchObject([{ room: 'Main level', countedIfPass: 1200, countedIfFail: 0 }]);
  });

  test('one harmless split is a note', () => {
    const { diagnostics } = measure({
      levels: [main(square), main({ ...square, id: 'den', name: 'Den', floor: "1'" })],
    });
    expect(codes(diagnostics)).toEqual(['note tally.level-split']);
  });
});

describe('structures', () => {
  const lines = (more: Plain) =>
    measure({ levels: [main(square)], structures: [{ id: 'it', size: "10' x 10'", ...more }] }).areas;

  test.each([
    ['garage', 'yes', 'garage'],
    ['carport', 'no', 'open'],
    ['porch', 'no', 'open'],
    ['deck', 'yes', 'open'],
    ['sunroom', 'no', 'not-all-year'],
    ['shed', 'no', 'outbuildings'],
    ['workshop', 'no', 'outbuildings'],
  ] as const)('%s (finished: %s) stands on the line %s', (is, finished, line) => {
    const { structures, byClass } = lines({ is, finished });
    for (const name of ['garage', 'open', 'not-all-year', 'outbuildings'] as const)
      expect(structures[name].map((one) => one.squareFeet)).toEqual(name === line ? [100] : []);
    expect(byClass['above-finished'].squareFeet).toBe(1200);
    expect(byClass.disconnected.squareFeet).toBe(0);
  });

  test('finished and detached is disconnected; finished and attached is that with an open reading', () => {
    const apart = lines({ is: 'guest-house', finished: 'yes', attached: 'no' });
    expect(apart.byClass.disconnected.squareFeet).toBe(100);
    expect(apart.readings).toEqual([]);
    const joined = lines({ is: 'sunroom', finished: 'yes' });
    expect(joined.byClass.disconnected.squareFeet).toBe(100);
    expect(joined.readings).toMatchObject([{ room: 'It', countedIfPass: 100, used: 'fail' }]);
  });

  test('one without a size is listed as not measured', () => {
    expect(lines({ is: 'shed', size: undefined }).structures.outbuildings).toMatchObject([
      { id: 'it', area: undefined, squareFeet: undefined },
    ]);
  });
});

describe('method and declaration', () => {
  const said = (measured: Plain | undefined, levels: Plain[] = [main(square)]) => {
    const { areas, diagnostics } = measure({ levels, ...(measured ? { measured } : {}) });
    return { text: areas.declaration.join(' '), toStandard: areas.toStandard, codes: codes(diagnostics) };
  };
  const ansi = { by: 'owner', date: '2026-06-14', method: 'ansi-z765-2021' };

  test('names edition, date and person', () => {
    const { text, toStandard } = said(ansi);
    expect(text).toContain('Measured 14 June 2026 by the owner');
    expect(text).toContain('following ANSI Z765-2021');
    expect(toStandard).toBe(true);
  });

  test('may not claim the standard for a level it lacks, and says why', () => {
    const {
      text,
      toStandard,
      codes: found,
    } = said(ansi, [main(square), main({ id: 'up', name: 'Upper level' })]);
    expect(toStandard).toBe(false);
    expect(text).toContain('Not measured to ANSI Z765-2021: the area of Upper level is not known');
    expect(found).toContain('warning tally.method');
  });

  test('plans, an unseen inside and estimated walls are declared', () => {
    expect(said({ ...ansi, method: 'plans' }).text).toContain('may differ as built');
    expect(said({ ...ansi, 'inside-seen': 'no' }).text).toContain('inside of the house was not seen');
    expect(said({ ...ansi, estimated: ['west wall, behind the hedge'] }).text).toContain(
      'west wall, behind the hedge',
    );
    expect(said(undefined).text).toContain('Who measured the house, when and how is not stated');
  });

  test('an assumed ceiling height is declared', () => {
    expect(said(ansi, [main({ ...square, ceiling: undefined })]).text).toContain('7 ft or more is assumed');
    expect(said(ansi).text).not.toContain('assumed');
  });

  test('metric houses get square metres to a tenth as well', () => {
    const metric = measure({ levels: [main({ size: '10.25 m x 8 m' })] }).areas;
    expect(metric.byClass['above-finished'].squareMetres).toBe(82);
    expect(
      measure({ levels: [main({ size: '10.25 m x 8.01 m' })] }).areas.byClass['above-finished'].squareMetres,
    ).toBe(82.1);
    expect(measure({ levels: [main(square)] }).areas.byClass['above-finished'].squareMetres).toBeUndefined();
  });
});

describe('the public record', () => {
  const record = (area: string, more: Plain = {}, dated: Plain = {}) =>
    measure({ levels: [main(square)], record: { area, source: 'county card', ...dated }, ...more });

  test('agrees, or differs with sign and words', () => {
    expect(record('1,200 sq ft').areas.record).toMatchObject({ difference: 0, causes: [] });
    const { areas, diagnostics } = record('1,150 sq ft');
    expect(areas.record?.difference).toBe(50);
    expect(areas.record?.words).toContain('50 sq ft more than the record');
    expect(diagnostics).toMatchObject([
      { code: 'tally.record-differs', severity: 'note', path: ['record', 'area'] },
    ]);
    expect(record('1,195 sq ft').diagnostics).toEqual([]);
  });

  test('causes come from the facts', () => {
    const cellar = main({ id: 'cellar', name: 'Cellar', grade: 'below', size: "20' x 20'" });
    expect(record('1,600 sq ft', { levels: [cellar, main(square)] }).areas.record?.causes).toEqual([
      'The record may count the finished area below grade (400 sq ft).',
    ]);
    const porch = { structures: [{ id: 'porch', is: 'porch', size: "8' x 20'" }] };
    expect(record('1,360 sq ft', porch).areas.record?.causes).toEqual([
      'The record may count an open structure as enclosed: Porch (160 sq ft).',
    ]);
    const work = { id: 'a', what: 'rear wing', did: 'added', structural: 'yes', done: '2021' };
    expect(record('900 sq ft', { work: [work] }, { date: '2019' }).areas.record?.causes).toEqual([
      'The record (2019) is older than work on the structure: rear wing.',
    ]);
    expect(record('900 sq ft', { work: [work] }, { date: '2022' }).areas.record?.causes).toEqual([]);
    const rooms = [room('all', { size: "29' x 39'" })];
    expect(record('1,131 sq ft', { rooms }).areas.record?.causes[0]).toContain('measured inside');
  });

  test('has nothing to be compared with where nothing is measured', () => {
    expect(record('1,131 sq ft', { levels: [] }).areas.record?.difference).toBeUndefined();
  });
});

describe('words', () => {
  test('lengths to type are read back as the same length', () => {
    for (let sixteenths = 1; sixteenths < 16 * 40; sixteenths++) {
      const units = (sixteenths * INCH) / 16;
      const read = readLength(lengthToType(units));
      expect(read.ok && read.value.units).toBe(units);
    }
    expect(lengthToType(12 * FOOT)).toBe("12'");
    expect(lengthToType(11 * FOOT + 6.5 * INCH)).toBe(`11'6 1/2"`);
  });

  test('small areas keep a tenth or become square inches', () => {
    expect([
      areaWords(1200n * SQUARE_FOOT),
      areaWords(SQUARE_FOOT / 2n),
      areaWords(2n * SQUARE_INCH),
    ]).toEqual(['1,200 sq ft', '0.5 sq ft', '2 sq in']);
  });

  test('rectangles with a court in the middle of a U', () => {
    const u: Point[] = [
      [0, 0],
      [30, 0],
      [30, 20],
      [20, 20],
      [20, 5],
      [10, 5],
      [10, 20],
      [0, 20],
    ];
    const pieces = rectanglesOf(u) ?? [];
    expect(pieces.reduce((sum, p) => sum + (p.east - p.west) * (p.north - p.south), 0)).toBe(450);
    expect(pieces).toHaveLength(3);
  });
});
