/** Which facts a phrase is held against. */

import type { Phrase } from '../sentence/phrase.js';
import { belongsTo, isKindOf, thing } from '../words/taxonomy.js';
import type { Item } from './items.js';
import type { Known } from './known.js';
import { inOnePlace, isLevelWord, levelMeant, type PlaceMeant, placeMeant } from './places.js';

/** Where a phrase says its thing is, each place by itself. */
export function placesOf({ house }: Known, phrase: Phrase): PlaceMeant[] {
  const levels = phrase.attributes.flatMap((one) =>
    one.kind === 'place' && isLevelWord(one.id) ? [levelMeant(house, one.id)] : [],
  );
  const rooms = phrase.rooms
    .filter(
      ({ thing: id }) =>
        isPlaceThing(id) &&
        !(
          /^(hall|closet|entry|storage)$/.test(id) &&
          (isPlaceThing(phrase.thing) || belongsTo(phrase.thing, 'appliance'))
        ),
    )
    .map(({ thing: id, ordinal, qualifiers, level }) =>
      onLevel(house, placeMeant(house, id, ordinal, qualifiers), level),
    );
  // "both bedrooms upstairs": the room, on that level.
  if (levels.length === 1 && rooms.length > 0)
    return rooms.map((room) => {
      const both = room.ids.filter((id) => levels[0]?.ids.includes(id));
      return both.length > 0 ? { ...room, ids: both } : room;
    });
  return [...rooms, ...levels].filter(({ label }) => label !== 'house');
}

/** "The upstairs bedroom": of the rooms, those on that level. */
function onLevel(house: Known['house'], place: PlaceMeant, level: string | undefined): PlaceMeant {
  if (level === undefined || !isLevelWord(level)) return place;
  const there = levelMeant(house, level).ids;
  const ids = place.ids.filter((id) => there.includes(id));
  return ids.length > 0 ? { ...place, ids } : place;
}

const isPlaceThing = (id: string): boolean => {
  const { room, level, structure } = thing(id);
  return room !== undefined || level !== undefined || structure !== undefined || id === 'pantry';
};

/** All facts of the thing, wherever they are. */
export function itemsFor(known: Known, id: string): readonly Item[] {
  const cached = known.byThing.get(id);
  if (cached !== undefined) return cached;
  const found = collect(known, id);
  known.byThing.set(id, found);
  return found;
}

function collect(known: Known, id: string): readonly Item[] {
  const { items, house } = known;
  if (id === 'house' || id === 'work') return items.filter(({ kind }) => kind !== 'identity');
  if (id === 'system') return items.filter(({ kind }) => kind === 'system');
  const meant = thing(id);
  if (
    meant.structure !== undefined ||
    meant.room !== undefined ||
    meant.level !== undefined ||
    id === 'pantry'
  ) {
    const place = placeMeant(house, id);
    // What is in a room, and what names it: "new kitchen" is told by both.
    const own = items.filter(
      (item) =>
        item.things.some((one) => belongsTo(one, id)) && item.kind !== 'system' && item.kind !== 'alarm',
    );
    const inside = items.filter(
      (item) =>
        item.where.length > 0 &&
        item.where.some((one) => place.ids.includes(one)) &&
        item.kind !== 'structure',
    );
    return [
      ...new Set([
        ...own.filter(
          ({ where, kind }) =>
            kind === 'structure' || where.length === 0 || where.some((one) => place.ids.includes(one)),
        ),
        ...inside,
      ]),
    ];
  }
  if (id === 'tile')
    return items.filter(
      (item) =>
        item.kind !== 'identity' &&
        (/\btil(e|ed|es)\b/i.test(item.what) ||
          item.classes.some((one) => isKindOf(one.group, one.id, 'tile-floor'))),
    );
  return items.filter(
    (item) =>
      item.things.some((one) => belongsTo(one, id)) ||
      // What was painted has paint.
      (id === 'paint' && item.kind === 'work' && item.deed === 'painted'),
  );
}

/** Facts of the thing in one place; of parts of the house, those of a garage or shed only where it is named. */
export function itemsAt(known: Known, phrase: Phrase, places: readonly PlaceMeant[]): readonly Item[] {
  const all = itemsFor(known, phrase.thing);
  if (places.length > 0) return all.filter(({ where }) => places.some((place) => inOnePlace(where, place)));
  // "Totally reroofed": with the roofs of all that stands there.
  if (/^(roof|gutter)$/.test(phrase.thing) && phrase.attributes.some(({ kind }) => kind === 'all'))
    return all;
  const before = known.inHouse.get(phrase.thing);
  if (before !== undefined) return before;
  const found = inHouse(known, phrase.thing, all);
  known.inHouse.set(phrase.thing, found);
  return found;
}

function inHouse(known: Known, id: string, all: readonly Item[]): readonly Item[] {
  const outbuildings = known.house.structures
    .filter(({ is }) => /garage|carport|shed|barn/.test(is))
    .map(({ id }) => id);
  // A porch's boards are no floor of the house, nor a garage's walls.
  const beyond = /^(floor|wall|ceiling|counter|cabinet|light|trim|tile|roof|gutter)$/.test(id)
    ? known.house.structures.map(({ id }) => id)
    : outbuildings;
  // Soffits are no baseboards.
  const inside =
    id === 'trim' ? all.filter(({ label }) => !/\b(soffit|fascia|eave|outside|exterior)/i.test(label)) : all;
  if (id === 'trim' && inside.length < all.length) return inside;
  const ofHouse = all.filter(
    ({ where, kind }) =>
      kind === 'structure' || where.length === 0 || !where.every((one) => beyond.includes(one)),
  );
  return ofHouse.length > 0 ? ofHouse : all;
}
