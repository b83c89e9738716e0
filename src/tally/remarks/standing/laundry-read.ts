/** Where the laundry is said to be, in a house whose machines stand in a structure and whose rooms have none. */
import { nameOf } from '../../../facts/place-name.js';
import type { FactSaid, Known } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { matches, type SetPhrase } from './set-phrases.js';

const INSIDE =
  /\b(?:(?:inside|indoor|in-?house|interior|in-?unit|in-?home) (?:laundry|utility|washer|w\/?d)(?: room| area| closet)?|(?:laundry|washer ?(?:and|&|\/|\+) ?dryer|w\/d)(?: room| area| closet| hook-?ups?)?(?: (?:is|are|sits?|located|conveniently|tucked|just|right|all))* (?:inside(?! (?:the |an? )?(?:garage|shed|carport|utility|barn|shop|workshop))|indoors|in the (?:house|home|kitchen|hall(?:way)?|bath(?:room)?|half bath|basement|cellar)|off (?:of )?the (?:kitchen|hall(?:way)?|bedrooms?|living room|den|bath)|(?:next to|beside|near|by|adjacent to|across from) the (?:kitchen|hall(?:way)?|bedrooms?)|upstairs|downstairs))\b/gi;

const DENIED =
  /\b(no|not|without|never|add|could|room for|space for|future|potential|plumbed for|move|bring)\b[^,;:]{0,24}$/i;

export function laundryRead(known: Known, sentence: string): SetPhrase[] {
  if (!/laundry|washer|w\/?d\b|utility/i.test(sentence)) return [];
  const outside = machinesOutside(known);
  if (outside === undefined) return [];
  return matches(INSIDE, sentence).flatMap((found) =>
    DENIED.test(sentence.slice(0, found.index))
      ? []
      : [
          {
            from: found.index,
            to: found.index + found[0].length,
            judgement: {
              verdict: 'contradicted' as const,
              rule: 'place',
              because: 'the folder says that it is not in the house',
              facts: outside,
            },
          },
        ],
  );
}

/** Washer and dryer that all stand in structures; undefined where a room is the laundry, or where they are is not told. */
function machinesOutside(known: Known): readonly FactSaid[] | undefined {
  const { rooms, structures } = known.house;
  if (
    rooms.some(
      (room) => room.use === 'laundry' || /laundry|utility/i.test(`${nameOf(room)} ${room.note ?? ''}`),
    )
  )
    return undefined;
  const machines = itemsFor(known, 'laundry-pair').filter(({ kind }) => kind === 'system');
  const outside = machines.flatMap(({ path, label, where, evidence }) =>
    structures
      .filter(({ id }) => where.includes(id))
      .slice(0, 1)
      .map((home) => ({ path, words: `${label}: in the ${nameOf(home).toLowerCase()}`, evidence })),
  );
  return outside.length > 0 && outside.length === machines.length ? outside.slice(0, 2) : undefined;
}
