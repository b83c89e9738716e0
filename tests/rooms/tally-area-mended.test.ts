/** What is said of outlines that stay open and of rooms out of place, to mend them; and which level lies over which. */
import { describe, expect, it, test } from 'vitest';
import type { Level } from '../../src/facts/house.js';
import { FOOT } from '../../src/facts/length.js';
import { levelsAbove } from '../../src/tally/level-order.js';
import { main, measure, type Plain } from './measured-house.js';

const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });

describe('an outline that stays open', () => {
  const hints = (...outline: readonly string[]) =>
    measure({ levels: [main({ outline })] }).diagnostics[0]?.hints;
  const TENTHS = (by: string) =>
    `readings to a tenth of a foot can miss by this much: change the longest wall on the way by ${by} ft, or write the walls in feet and inches`;

  it.each<readonly [string, readonly string[], readonly string[]]>([
    [
      'by as much as four tapes can miss',
      ['east 30.2 ft', 'north 20.5 ft', 'west 30 ft', 'south 20.5 ft'],
      [
        'add  west 0.2 ft  as the last wall, if it was left out',
        'if wall 3 is at fault, write  west 30.2 ft  for  west 30 ft',
        TENTHS('0.2'),
      ],
    ],
    [
      'by more',
      ['east 30.3 ft', 'north 20.5 ft', 'west 30 ft', 'south 20.5 ft'],
      [
        'add  west 0.3 ft  as the last wall, if it was left out',
        'if wall 3 is at fault, write  west 30.3 ft  for  west 30 ft',
      ],
    ],
    [
      'both ways',
      ['east 30.1 ft', 'north 20.5 ft', 'west 30 ft', 'south 20.3 ft'],
      ['add  west 0.1 ft south 0.2 ft  as the last wall, if it was left out', TENTHS('0.2')],
    ],
    [
      'in inches',
      [`east 30'1"`, `north 20'`, `west 30'`, `south 20'`],
      [
        `add  west 1"  as the last wall, if it was left out`,
        `if wall 3 is at fault, write  west 30'1"  for  west 30'`,
      ],
    ],
    [
      'by its last wall',
      [`east 30'`, `north 20'`, `west 30'`, `south 19'`],
      [
        `add  south 1'  as the last wall, if it was left out`,
        `if the last wall is at fault, write  south 20'  for  south 19'`,
      ],
    ],
    [
      'by more than the last wall that way is long',
      [`east 20'`, `north 10'`, `west 19'`, `south 5'`, `east 2'`, `south 5'`],
      [
        `add  west 3'  as the last wall, if it was left out`,
        `if wall 3 is at fault, write  west 22'  for  west 19'`,
      ],
    ],
    [
      'beside a slanted wall',
      [`east 20'`, `north 10'`, `west 15'`, `west 2' south 10'`],
      [
        `add  west 3'  as the last wall, if it was left out`,
        `if wall 3 is at fault, write  west 18'  for  west 15'`,
      ],
    ],
    [
      'by a wall that was walked the wrong way',
      [`east 20'`, `north 10'`, `west 20'`, `north 10'`],
      [
        `add  south 20'  as the last wall, if it was left out`,
        `check wall 2: should  north 10'  be  south 10' ?`,
        `check the last wall: should  north 10'  be  south 10' ?`,
      ],
    ],
  ])('%s', (_, outline, said) => {
    expect(hints(...outline)).toEqual(said);
  });
});

test('what lies over what follows the heights where each is known, and the list where one isn’t', () => {
  const level = (id: string, grade: 'above' | 'below', floor?: number) =>
    ({
      id,
      grade,
      floor: floor === undefined ? undefined : { units: floor * FOOT, reading: 'inches', written: '' },
    }) as Level;
  const order = (...levels: Level[]) => [...levelsAbove(levels)].map(([low, high]) => `${low.id} ${high.id}`);
  expect(order(level('top', 'above', 17), level('up', 'above', 9), level('main', 'above'))).toEqual([
    'main up',
    'up top',
  ]);
  expect(order(level('up', 'above', 9), level('main', 'above'), level('wing', 'above'))).toEqual([
    'up main',
    'main wing',
  ]);
  expect(order(level('up', 'above', 9), level('main', 'above'), level('low', 'below'))).toEqual([
    'low main',
    'main up',
  ]);
  expect(order(level('main', 'above', 1), level('den', 'below', 3), level('low', 'below', 2))).toEqual([
    'low den',
    'den main',
  ]);
});

describe('the move that mends a place', () => {
  const LEVEL: Plain = {
    outline: [`east 30'`, `north 20'`, `west 10'`, `north 20'`, `west 20'`, `south 40'`],
  };
  const den = room('den', { size: `12' x 12'`, at: [`east 1'`, `north 3'`] });
  const told = (size: string, at: readonly string[]) =>
    measure({ levels: [main(LEVEL)], rooms: [den, room('box', { size, at: [...at] })] }).diagnostics.map(
      ({ message, hints }) => [message, hints[0]] as const,
    );

  it.each<readonly [string, string, readonly string[], string, string]>([
    [
      'a room within another',
      `3' x 4'`,
      [`east 9'`, `north 6'`],
      'Box lies over Den by 12 sq ft (3′ 0″ × 4′ 0″)',
      `move it 4′ 0″ to the east:  at: [east 13', north 6']`,
    ],
    [
      'a room at the inner side of another',
      `3' x 12'`,
      [`east 10'`, `north 3'`],
      'Box lies over Den by 36 sq ft (3′ 0″ × 12′ 0″)',
      `move it 3′ 0″ to the east:  at: [east 13', north 3']`,
    ],
    [
      'a room across another',
      `20' x 2'`,
      [`east 1'`, `north 12'`],
      'Box lies over Den by 24 sq ft (12′ 0″ × 2′ 0″)',
      `move it 3′ 0″ to the north:  at: [east 1', north 15']`,
    ],
    [
      'a room beyond a corner',
      `10' x 5'`,
      [`east 21'`, `south 2'`],
      'Box leaves Main level by 1′ 0″ to the east and 2′ 0″ to the south (23 sq ft)',
      `move it 1′ 0″ to the west and 2′ 0″ to the north:  at: [east 20']`,
    ],
    [
      'a room in the notch',
      `10' x 5'`,
      [`east 11'`, `north 30'`],
      'Box leaves Main level by 1′ 0″ to the east (5 sq ft)',
      `move it 1′ 0″ to the west:  at: [east 10', north 30']`,
    ],
  ])('of %s', (_, size, at, message, hint) => {
    expect(told(size, at)).toEqual([[message, hint]]);
    const typed = /at: \[(.*)\]$/.exec(hint)?.[1]?.split(', ') ?? [];
    expect(told(size, typed)).toEqual([]);
  });

  test('is not given for a room in the corner of another that is bent', () => {
    const outline = [`east 12'`, `north 4'`, `west 6'`, `north 8'`, `west 6'`, `south 12'`];
    const rooms = [
      room('den', { outline, at: [] }),
      room('box', { size: `6' x 8'`, at: [`east 6'`, `north 4'`] }),
    ];
    expect(measure({ levels: [main(LEVEL)], rooms }).diagnostics).toEqual([]);
  });

  it.each([
    [`31' x 5'`, [`north 15'`], 'Box leaves Main level by 1′ 0″ to the east (5 sq ft)'],
    [`5' x 41'`, [`east 14'`], 'Box leaves Main level by 1′ 0″ to the north (5 sq ft)'],
  ])('is not given for a room of %s, which is larger than its level', (size, at, message) => {
    expect(told(size, at)).toEqual([[message, 'check its size, and the outline of Main level']]);
  });
});
