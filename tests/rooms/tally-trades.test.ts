/** The trade that a finish or a piece of work is put under, and who did it. */
import { expect, it } from 'vitest';
import { listImprovements } from '../../src/tally/improvements.js';
import { TRADES, tradeOf, tradeOfFinish } from '../../src/tally/trades.js';
import { whoDid } from '../../src/tally/who.js';
import { houseFrom } from './house-from.js';

it.each(TRADES)('the name of a trade is that trade: %s', (trade) => {
  expect(tradeOf('anything', trade)).toBe(trade);
});

it.each([
  ['wall paneling', 'other'],
  ['electrical panel', 'electrical'],
  ['door with a garage opener', 'appliances'],
  ['screen door', 'windows and doors'],
  ['range, electric', 'appliances'],
  ['electric service', 'electrical'],
] as const)('“%s” is %s', (words, trade) => {
  expect(tradeOf(words)).toBe(trade);
});

it.each([
  ['floor', 'Quarry Tile', 'tile'],
  ['counter', 'tile', 'kitchen and bath'],
  ['floor', 'oak strip', 'flooring'],
  ['walls', 'paint', 'painting'],
  ['other', 'shelf', 'carpentry'],
] as const)('a finish on %s of %s is %s', (on, what, trade) => {
  const { rooms } = houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'den', level: 'main', use: 'family', finishes: [{ on, what }] }],
  });
  const [finish] = rooms[0]?.finishes ?? [];
  expect(finish && tradeOfFinish(finish)).toBe(trade);
});

it.each([
  ['owner', 'owner'],
  ['family', 'family'],
  ['not-known', 'not-known'],
  [undefined, 'not-known'],
  ['nobody-here', 'not-known'],
  ['mason', 'hired'],
])('by %s: %s', (by, kind) => {
  const house = houseFrom({ people: [{ id: 'mason', name: 'Mason' }] });
  expect(whoDid(house, by).kind).toBe(kind);
});

it('of one trade the newest comes first, then what has no day, then by name', () => {
  const work = (id: string, done?: string) =>
    ({ id, what: 'paint', did: 'painted', ...(done !== undefined && { done }) }) as const;
  const { done } = listImprovements(
    houseFrom({ work: [work('d'), work('c', '2024'), work('b'), work('a', '2025'), work('e', '2024')] }),
  );
  expect(done.map(({ id }) => id)).toEqual(['work-a', 'work-c', 'work-e', 'work-b', 'work-d']);
});
