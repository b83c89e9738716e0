import { expect, test } from 'vitest';
import { nameOf, nameOfPlace } from '../../src/facts/place-name.js';
import { houseFrom } from './house-from.js';

test('a place without a name is called by its id', () => {
  expect(nameOf({ id: 'hall-bath_2' })).toBe('Hall bath 2');
  expect(nameOf({ id: 'x', name: 'Back room' })).toBe('Back room');
});

test('levels, rooms, stairs and structures are found by their id', () => {
  const house = houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'bed', level: 'main', use: 'bedroom', name: 'Back bedroom' }],
    stairs: [{ id: 'cellar-stair', risers: 9, handrail: 'no' }],
    structures: [{ id: 'shed', is: 'shed', name: 'Garden shed' }],
  });
  expect(['main', 'bed', 'cellar-stair', 'shed', 'no-such'].map((id) => nameOfPlace(house, id))).toEqual([
    'Main level',
    'Back bedroom',
    'Cellar stair',
    'Garden shed',
    'No such',
  ]);
});
