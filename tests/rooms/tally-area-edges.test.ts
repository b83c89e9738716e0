/** Areas where a rule just reaches, or just doesn’t: slopes, walls, parts, openings, rooms that take more than there is. */
import { describe, expect, it, test } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import type { AreaLine } from '../../src/tally/area-answer.js';
import { main, measure, type Plain } from './measured-house.js';

const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });
const feet = (area: bigint | undefined): number | undefined =>
  area === undefined ? undefined : Number((area * 100n) / SQUARE_FOOT) / 100;
const told = (list: readonly Diagnostic[]): string[] =>
  list.map(
    ({ severity, code, path = [], message }) => `${severity} ${code} ${printFactPath(path)}: ${message}`,
  );
const lines = (list: readonly AreaLine[] = []): [string, number | undefined, string | undefined][] =>
  list.map(({ what, area, into }) => [what, feet(area), into]);

describe('a ceiling that slopes', () => {
  const sloped = (ceiling: Plain, more: Plain = { size: `17' x 30'` }) =>
    measure({ levels: [main({ size: `20' x 40'` })], rooms: [room('loft', { ceiling, ...more })] });
  const SECTION = { highest: `8'`, flat: `3'`, pitch: '12 in 12', sides: 2, length: `30'` };

  it.each<readonly [string, Plain, string]>([
    ['without any height', {}, 'the ceiling of Loft gives no heights'],
    [
      'with the floor at 7 ft alone',
      { 'at-7-ft': `9' x 30'` },
      'the ceiling of Loft gives the floor at 7 ft but not the floor at 5 ft',
    ],
    [
      'given twice',
      { 'at-5-ft': `9' x 30'`, ...SECTION },
      'the ceiling of Loft is given twice, as taped areas and as a section',
    ],
    [
      'with more floor at 7 ft than at 5 ft',
      { 'at-7-ft': `9' x 30'`, 'at-5-ft': `8' x 30'` },
      'Loft has more floor at 7 ft than at 5 ft',
    ],
    [
      'with more floor at 5 ft than there is',
      { 'at-7-ft': `9' x 30'`, 'at-5-ft': `18' x 30'` },
      'Loft has more floor at 5 ft or higher than it has floor',
    ],
    [
      'with a section that lacks its pitch',
      { highest: `8'`, sides: 2, length: `30'` },
      'the section of Loft lacks pitch',
    ],
    [
      'with a section that has nothing but its pitch',
      { pitch: '12 in 12' },
      'the section of Loft lacks highest, sides and length',
    ],
    ['with a pitch that rises nowhere', { ...SECTION, pitch: '0 in 12' }, 'a pitch of 0 in 12 is no slope'],
    ['with a pitch that is a wall', { ...SECTION, pitch: '12:0' }, 'a pitch of 12:0 is no slope'],
    ['on three sides', { ...SECTION, sides: 3 }, 'a ceiling slopes on 1 or 2 sides, not on 3'],
    [
      'that ends where it begins',
      { ...SECTION, lowest: `8'` },
      'the lowest height of Loft is not below its highest',
    ],
    [
      'whose flat part is larger than the room',
      { ...SECTION, flat: `18'` },
      'by its section Loft has more floor than by its size',
    ],
  ])('%s is refused, and the room counts as a whole', (_, ceiling, message) => {
    const { areas, diagnostics } = sloped(ceiling);
    expect(diagnostics.map((one) => [one.code, one.severity, one.message])).toEqual([
      ['tally.ceiling', 'error', message],
    ]);
    expect(feet(areas.byClass['above-finished'].area)).toBe(800);
  });

  test('with no floor at 7 ft counts nothing, and asks', () => {
    const { areas, diagnostics } = sloped({ 'at-5-ft': `13' x 30'` });
    expect(told(diagnostics)).toEqual([
      'warning tally.ceiling rooms[0].ceiling: Loft gives no floor at 7 ft, so none of it counts as that high',
    ]);
    expect(lines(areas.levels[0]?.lines).slice(1)).toEqual([
      ['Loft, floor under 5 ft', -120, undefined],
      ['Loft', -390, 'non-standard'],
    ]);
  });

  test('whose highest height is under 7 ft, or under 5 ft, has that much floor and no more', () => {
    const rule = (ceiling: Plain, more?: Plain) => {
      const { areas } = sloped(ceiling, more);
      return areas.levels[0]?.lines.at(-1)?.rule;
    };
    // 45°, 30 ft long: 6 ft down to 5 ft is 1 ft on each side, and 2 ft flat are 4 ft by 30 ft.
    expect(rule({ ...SECTION, highest: `6'`, flat: `2'` })).toMatch(
      /^7 ft high or more: 0 sq in, which is 0 % of its part at 5 ft or higher \(120 sq ft\) and 0 % of its whole floor \(510 sq ft\)\./,
    );
    const { areas } = sloped({ ...SECTION, highest: `4'`, flat: `2'` });
    expect(lines(areas.levels[0]?.lines).slice(1)).toEqual([['Loft, floor under 5 ft', -510, undefined]]);
  });

  test('ends at the wall where the section would go on', () => {
    // 9 ft down to 5 ft at 45° is 4 ft on both sides of 12 ft: 20 ft across, in a room of 17 ft.
    const { areas, diagnostics } = sloped({ ...SECTION, highest: `9'`, flat: `12'` });
    expect(told(diagnostics)).toEqual([]);
    expect(lines(areas.levels[0]?.lines)).toEqual([
      [`Main level, outside faces, 20′ 0″ × 40′ 0″`, 800, undefined],
    ]);
  });

  test('gives the floor of a room without a size', () => {
    const { areas } = measure({
      levels: [main()],
      rooms: [room('loft', { ceiling: SECTION })],
    });
    // 3 ft flat and 8 ft of slope on each side, 30 ft long.
    expect(lines(areas.levels[0]?.lines).slice(0, 1)).toEqual([['Loft, inside faces', 570, undefined]]);
  });
});

describe('walls added to inside sizes', () => {
  const inside = (more: Plain) => measure({ levels: [main({ measured: 'inside', ...more })] });

  test('close a recess that is narrower than they are, which is an error', () => {
    const { areas, diagnostics } = inside({
      outline: [
        `east 20'`,
        `north 20'`,
        `west 9'6"`,
        `south 5'`,
        `west 6"`,
        `north 5'`,
        `west 10'`,
        `south 20'`,
      ],
      walls: { all: '6"' },
    });
    expect(told(diagnostics)).toEqual([
      'error tally.outline levels[0].walls: with its walls added, the outline of Main level crosses itself: a recess is narrower than its walls',
    ]);
    expect(areas.levels[0]).toMatchObject({ basis: 'none', gross: undefined });
  });

  test('can’t be added where every wall is slanted, so the size is an estimate', () => {
    const { areas } = inside({
      outline: [`east 10' north 10'`, `west 10' north 10'`, `west 10' south 10'`, `east 10' south 10'`],
    });
    expect(areas.levels[0]).toMatchObject({ basis: 'rooms-only', estimate: true });
    expect(feet(areas.levels[0]?.gross)).toBe(200);
    expect(areas.levels[0]?.lines[0]?.what).toBe(
      `Main level, inside faces, within its walls: east 10' north 10', west 10' north 10', west 10' south 10', east 10' south 10'`,
    );
    expect(areas.declaration).toContain(
      'Main level: inside sizes only, walls not included; an estimate, and low.',
    );
  });

  test('one that can’t be read is named with its side', () => {
    const { diagnostics } = inside({ size: `20' x 30'`, walls: { all: '6"', east: 'thick' } });
    expect(diagnostics.map(({ path }) => path)).toEqual([['levels', 0, 'walls', 'east']]);
  });
});

describe('what belongs to a level that is the sum of its rooms', () => {
  test('adds no bay and takes off no hole, and says so', () => {
    const { areas } = measure({
      levels: [
        main({
          parts: [{ what: 'bay', size: `6' x 2'`, floor: true }],
          openings: [{ what: 'stair', size: `3' x 10'` }],
        }),
      ],
      rooms: [room('hall', { size: `10' x 10'` }), room('den', {})],
    });
    expect(lines(areas.levels[0]?.lines)).toEqual([
      ['Hall, inside faces, 10′ 0″ × 10′ 0″', 100, undefined],
      ['Bay, 6′ 0″ × 2′ 0″', 0, undefined],
      ['Stair, opening 3′ 0″ × 10′ 0″', 0, undefined],
    ]);
    expect(areas.levels[0]?.lines[1]?.rule).toBe(
      'Not added: this level is the sum of its rooms, which may hold it already.',
    );
    expect(areas.declaration).toContain(
      'Main level: inside sizes only, walls not included; an estimate, and low. Den: not measured and not included.',
    );
  });

  test('of a level too low to count, a bay with a ceiling of its own counts as the house does', () => {
    const { areas } = measure({
      levels: [
        main({
          size: `20' x 30'`,
          ceiling: `6'6"`,
          parts: [
            { what: 'bay', size: `6' x 2'`, ceiling: `8'` },
            { what: 'nook', size: `5' x 2'`, ceiling: `6'` },
          ],
        }),
      ],
    });
    expect(areas.levels[0]?.lines.slice(1).map(({ what, area, rule }) => [what, feet(area), rule])).toEqual([
      ['Bay, 6′ 0″ × 2′ 0″', 12, 'It has a floor on this level, so it belongs to it.'],
      ['Bay, 6′ 0″ × 2′ 0″', -12, 'Its own ceiling is high enough to count.'],
      ['Nook, 5′ 0″ × 2′ 0″', 10, 'It has a floor on this level, so it belongs to it.'],
    ]);
    expect(areas.byClass['above-finished'].squareFeet).toBe(12);
  });

  test('is printed in feet and inches where its rooms were read with two tapes', () => {
    const reading = (...sizes: readonly string[]) =>
      measure({
        levels: [main()],
        rooms: sizes.map((size, at) => room(`room-${at}`, { size })),
      }).areas.levels[0]?.reading;
    expect(reading('3 m x 4 m')).toBe('metric');
    expect(reading('3 m x 4 m', `10' x 11'6"`)).toBe('inches');
    expect(measure({ levels: [main({ size: `3 m x 10'` })] }).areas.levels[0]?.reading).toBe('inches');
  });
});

describe('what is taken off a level', () => {
  const cellar = (rooms: readonly Plain[], more: Plain = {}) =>
    measure({ levels: [main({ size: `20' x 30'`, finish: 'unfinished', ...more })], rooms: [...rooms] });

  test('is no more than the room: strips below beams that fill it leave nothing over', () => {
    const strip = { what: 'duct', size: `10' x 8'`, clear: `6'` };
    const { areas } = cellar([
      room('den', { size: `10' x 10'`, finish: 'finished', low: [strip, { ...strip, what: 'beam' }] }),
    ]);
    expect(lines(areas.levels[0]?.lines).slice(1)).toEqual([
      ['Den, below the duct, 10′ 0″ × 8′ 0″', -80, 'non-standard'],
      ['Den, below the beam, 10′ 0″ × 8′ 0″', -20, 'non-standard'],
    ]);
    expect(areas.readings.map(({ words }) => words)).toEqual([
      'Something hangs lower than 6 ft 4 in. If only the floor below it is lost, 0 sq ft count; if the whole room is, none. The figures here use 0.',
    ]);
  });

  test('a garage whose outline is broken is told once, as broken', () => {
    const { diagnostics } = cellar([
      room('garage', { use: 'garage', outline: [`east 10'`, `north 10'`, `west 9'`, `south 10'`] }),
    ]);
    expect(diagnostics.map(({ code, path = [] }) => `${code} ${printFactPath(path)}`)).toEqual([
      'tally.outline rooms[0].outline',
    ]);
    expect(told(cellar([room('garage', { use: 'garage' })]).diagnostics)).toEqual([
      'error tally.gap rooms[0].size: Garage can’t be taken off Main level, since it has no size',
    ]);
  });

  test('under the stairs above, the smaller of the treads and the hole, and nothing under a hole without treads', () => {
    const { areas } = measure({
      levels: [
        main({ id: 'low', name: 'Cellar', grade: 'below', size: `20' x 30'`, ceiling: `6'6"` }),
        main({
          size: `20' x 30'`,
          openings: [
            { what: 'stair', size: `3' x 12'`, treads: `3' x 10'` },
            { what: 'well', size: `4' x 4'` },
            { what: 'ladder', size: `2' x 2'`, treads: `2' x 3'` },
          ],
        }),
      ],
    });
    expect(lines(areas.levels[0]?.lines).slice(1)).toEqual([
      ['Under the stairs (stair), 3′ 0″ × 10′ 0″', -30, 'below-finished'],
      ['Under the stairs (ladder), 2′ 0″ × 2′ 0″', -4, 'below-finished'],
    ]);
    expect(areas.readings[0]).toMatchObject({ room: 'Cellar', countedIfPass: 34, countedIfFail: 0 });
  });
});

describe('structures', () => {
  const porch = (more: Plain) =>
    measure({ structures: [{ id: 'porch', is: 'porch', size: `8' x 20'`, ...more }] });

  test('a finished porch that is attached counts only if finished space leads into it, which is told', () => {
    const { areas } = porch({ finished: true, attached: true });
    expect(areas.byClass.disconnected.squareFeet).toBe(160);
    expect(areas.readings.map(({ room: name, countedIfPass }) => [name, countedIfPass])).toEqual([
      ['Porch', 160],
    ]);
    expect(porch({}).areas.structures.open.map(({ squareFeet }) => squareFeet)).toEqual([160]);
  });

  test('one that nobody measured is told with no figure at all', () => {
    const { areas } = measure({ structures: [{ id: 'porch', is: 'porch', finished: true, attached: true }] });
    expect(areas.readings).toEqual([]);
  });
});

test('a room on no level of the house is in none of its figures', () => {
  const { areas } = measure({
    levels: [main({ size: `20' x 30'` })],
    rooms: [room('loft', { level: 'nowhere', size: `10' x 10'` })],
  });
  expect(areas.byClass['above-finished'].squareFeet).toBe(600);
  expect(feet(areas.roomFloors.get('loft'))).toBe(100);
});
