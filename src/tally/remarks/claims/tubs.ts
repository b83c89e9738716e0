/** A tub in a bath that the folder tells of as one with a shower or none. */
import { nameOf } from '../../../facts/place-name.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { placeMeant } from '../items/places.js';
import { thing } from '../words/taxonomy.js';
import type { ClaimCase } from './claim-case.js';

/** A tub in a bath that the folder tells of as one with a shower or none. */
export function tubNotThere(one: ClaimCase): Judgement | undefined {
  const { known, phrase, places, found, sentence } = one;
  // What was found to be of the kind that is told is there.
  if (phrase.thing !== 'tub' || one.told.some(({ judgement }) => judgement.verdict === 'backed'))
    return undefined;
  const { context } = sentence;
  const near =
    places.length > 0
      ? places
      : context !== undefined && thing(context.thing).room === 'bath'
        ? [context.place]
        : context?.thing === 'primary-bedroom'
          ? [placeMeant(known.house, 'primary-bath')]
          : [];
  const rooms = known.house.rooms.filter(
    ({ id, use }) => use === 'bath' && near.some(({ ids }) => ids.includes(id)),
  );
  const there = (items: readonly Item[]): boolean =>
    items.some(({ where }) => where.some((id) => rooms.some((room) => room.id === id)));
  if (rooms.length === 0 || there(found) || there(itemsFor(known, 'tub'))) return undefined;
  if (!rooms.every(({ bath }) => bath === 'three-quarter' || bath === 'half')) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'not-there',
    because: 'the folder tells of a shower there, and of no tub',
    facts: rooms.map((room) => ({
      path: ['rooms', known.house.rooms.indexOf(room), 'bath'],
      words: `${nameOf(room)}: ${room.bath} bath`,
      evidence: [],
    })),
  };
}
