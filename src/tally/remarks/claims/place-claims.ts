/** Where a thing is said to be, held against where the folder has it. */
import type { Room } from '../../../facts/house.js';
import { nameOf, nameOfPlace } from '../../../facts/place-name.js';
import { sensesIn } from '../items/item-meaning.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import { MANY } from '../items/meant-items.js';
import { itemsFor } from '../items/pick-items.js';
import { inOnePlace, type PlaceMeant, placeMeant } from '../items/places.js';
import type { Phrase } from '../sentence/phrase.js';
import { belongsTo, thing } from '../words/taxonomy.js';

/** "laundry on the main level", "first-floor bedroom": where a thing is. */
export function placeClaim(
  known: Known,
  phrase: Phrase,
  places: readonly PlaceMeant[],
): Judgement | undefined {
  const none = noSuchPlace(known, phrase);
  if (none !== undefined) return none;
  const inside = phrase.attributes.some((one) => one.kind === 'place' && one.id === 'inside');
  const nowhere = noSuchLevel(known, phrase);
  if (nowhere !== undefined) return nowhere;
  if (/^(closet|pantry|storage)$/.test(phrase.thing)) return undefined;
  const { room } = thing(phrase.thing);
  const wanted = places.filter(({ ids }) => ids.length > 0);
  if (phrase.place || (!inside && wanted.length === 0)) return undefined;
  const rooms = room === undefined ? [] : placeMeant(known.house, phrase.thing).ids;
  const items =
    room === undefined
      ? itemsFor(known, phrase.thing).filter(({ kind, where }) => kind !== 'work' && where.length > 0)
      : [];
  const spots = room === undefined ? items.map(({ where }) => where) : rooms.map((id) => [id]);
  if (
    spots.length === 0 ||
    MANY.test(phrase.thing) ||
    (room === undefined && !items.some(({ kind }) => kind === 'system'))
  )
    return undefined;
  const label = thing(phrase.thing).label;
  const facts =
    room === undefined
      ? factsOf(items, 2)
      : known.house.rooms
          .flatMap((one, index) =>
            rooms.includes(one.id)
              ? [
                  {
                    path: ['rooms', index],
                    words: `${nameOf(one)}: on ${levelName(known, one)}`,
                    evidence: [],
                  },
                ]
              : [],
          )
          .slice(0, 3);
  if (inside) {
    const outside = spots.every((where) =>
      where.some((id) => known.house.structures.some((one) => one.id === id)),
    );
    return {
      verdict: outside ? 'contradicted' : 'backed',
      rule: 'place',
      because: outside ? 'the folder says that it is not in the house' : 'the folder says so',
      facts,
    };
  }
  const every = phrase.attributes.some(({ kind, before }) => kind === 'all' && before);
  const out = spots.filter((where) => !wanted.some((place) => inOnePlace(where, place)));
  if (every && out.length > 0 && out.length < spots.length)
    return {
      verdict: 'contradicted',
      rule: 'place',
      because: `the folder has some of them elsewhere`,
      facts,
    };
  // "The living room opens into the hall": one room is in no other, so no place is claimed.
  if (
    room !== undefined &&
    !SMALL.test(phrase.thing) &&
    wanted.every(({ ids }) => ids.every((id) => isRoomId(known, id)))
  )
    return undefined;
  const there = wanted.filter((place) => spots.some((where) => inOnePlace(where, place)));
  // "Newer heater and carpet on the top floor": the place that ends a list may be that of its last member alone.
  const own = phrase.attributes.some((one) => one.kind === 'place' && !(one.shared && one.from > phrase.to));
  const ofList = phrase.rooms.length === 0 && !own;
  if (there.length === 0 && ofList) return undefined;
  // "The carport roof" of an entry that is called "flat roof of porch and carport".
  const called = items.some((item) => phrase.rooms.some(({ thing: id }) => namesPlace(item, id)));
  if (there.length > 0 || called)
    return { verdict: 'backed', rule: 'place', because: `the folder has the ${label} there`, facts };
  return {
    verdict: 'contradicted',
    rule: 'place',
    because: `the folder has the ${label} elsewhere`,
    facts,
  };
}

const namesPlace = ({ label, words }: Item, id: string): boolean =>
  sensesIn(`${label}. ${words}`).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, id));

/** Places that are no rooms of the folder, so that nothing stands there of which it says where it stands. */
const NO_ROOM = /^(attic|basement|garage|carport|shed)$/;

/** "The water heater in the attic", of one that the folder has in the laundry. */
function noSuchPlace(known: Known, phrase: Phrase): Judgement | undefined {
  const { house } = known;
  const [place] = phrase.rooms;
  if (
    phrase.rooms.length !== 1 ||
    place === undefined ||
    !NO_ROOM.test(place.thing) ||
    place.from < phrase.to
  )
    return undefined;
  if (
    placeMeant(house, place.thing).ids.length > 0 ||
    MANY.test(phrase.thing) ||
    thing(phrase.thing).room !== undefined
  )
    return undefined;
  const items = itemsFor(known, phrase.thing).filter(({ kind }) => kind === 'system');
  const isElsewhere = (item: Item): boolean => item.where.length > 0 && !namesPlace(item, place.thing);
  if (items.length === 0 || !items.every(isElsewhere)) return undefined;
  const facts = items.slice(0, 2).map(({ path, label, where, evidence }) => ({
    path,
    words: `${label}: ${where.map((id) => nameOfPlace(house, id).toLowerCase()).join(', ')}`,
    evidence,
  }));
  return {
    verdict: 'contradicted',
    rule: 'place',
    because: `the folder has the ${thing(phrase.thing).label} elsewhere`,
    facts,
  };
}

/** Rooms that may be said to be in another: "laundry in the kitchen". */
const SMALL = /^(laundry|bath|half-bath|primary-bath|office|closet|storage|workshop)$/;

const isRoomId = ({ house }: Known, id: string): boolean => house.rooms.some((one) => one.id === id);

/** "Upstairs windows" of a house on one level. */
function noSuchLevel({ house }: Known, phrase: Phrase): Judgement | undefined {
  const upper = phrase.attributes.find(
    (one) => one.kind === 'place' && one.id === 'upper' && one.before && !one.shared && !one.negated,
  );
  const above = house.levels.filter(({ grade }) => grade === 'above');
  if (upper === undefined || upper.to - upper.from < SHORT || above.length !== 1) return undefined;
  if (house.house.storeys !== 'one') return undefined;
  return {
    verdict: 'contradicted',
    rule: 'place',
    because: 'the folder tells of one storey, and of nothing above it',
    facts: [{ path: ['house', 'storeys'], words: 'storeys: one', evidence: [] }],
  };
}

/** "up" may be a verb's; "upstairs" is a place. */
const SHORT = 5;

const levelName = ({ house }: Known, { level }: Room): string => nameOfPlace(house, level).toLowerCase();
