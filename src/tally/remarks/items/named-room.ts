/** "Kitchen counters", "bathroom floor": the room that the thing's own name holds. */

import type { Phrase } from '../sentence/phrase.js';
import type { Known } from './known.js';
import { itemsFor } from './pick-items.js';
import { inOnePlace, type PlaceMeant, placeMeant } from './places.js';

const ROOM_IN_NAME = /^(kitchen|bath|laundry)(?:room)?[\s-]+\w/i;

/** That room, where the folder tells of the thing in it. */
export function roomInName(known: Known, { thing, from, to }: Phrase, text: string): readonly PlaceMeant[] {
  const room = ROOM_IN_NAME.exec(text.slice(from, to))?.[1]?.toLowerCase();
  if (room === undefined || room === thing) return [];
  const place = placeMeant(known.house, room);
  return itemsFor(known, thing).some(({ where }) => inOnePlace(where, place)) ? [place] : [];
}
