/** Which facts a phrase means: by its place, by the room spoken of last, by words of their own name. */
import type { SentenceWords } from '../claims/claim-case.js';
import type { Phrase } from '../sentence/phrase.js';
import { thing } from '../words/taxonomy.js';
import { isOfContext, isSaidBelow } from './context-ties.js';
import { type Item, putsIn } from './items.js';
import type { Known } from './known.js';
import { roomInName } from './named-room.js';
import {
  byOwnWords,
  inRoomSpokenOf,
  literal,
  roomsExcepted,
  withoutRooms,
  withoutStorms,
  withoutWider,
} from './narrow-items.js';
import { byName, narrowed, roomCalled } from './narrow-places.js';
import { itemsAt, itemsFor, placesOf } from './pick-items.js';
import { levelMeant, type PlaceMeant, placeMeant } from './places.js';
import { restOf } from './rest-of-it.js';
import { onSide } from './sides.js';

export const isRoomThing = (id: string): boolean =>
  thing(id).room !== undefined ||
  thing(id).level !== undefined ||
  thing(id).structure !== undefined ||
  id === 'pantry';

/** The facts of a phrase, and where they are: as it says, else in the room spoken of last, else anywhere. */
export function meant(
  known: Known,
  phrase: Phrase,
  sentence: SentenceWords,
): { places: readonly PlaceMeant[]; found: readonly Item[] } {
  const { context, text } = sentence;
  const excepted = roomsExcepted(phrase, text);
  if (excepted.length > 0) {
    const rest = { ...phrase, rooms: phrase.rooms.filter((room) => !excepted.includes(room)) };
    const { places, found } = meant(known, rest, sentence);
    return { places, found: withoutRooms(known, phrase, excepted, found) };
  }
  const said = placesOf(known, phrase);
  const near = narrowed(
    known,
    phrase,
    said.length > 0 ? said : roomInName(known, phrase, text),
    text,
    context?.thing,
  );
  const own = byName(known.house, phrase, near, text);
  // "finished basement with a full bath": the bath is said to be there.
  const below =
    own.length === 0 &&
    /^(bath|half-bath|bedroom|family|laundry|office)$/.test(phrase.thing) &&
    isSaidBelow(phrase, text);
  const places = below ? [levelMeant(known.house, 'below')] : own;
  const found = restOf(
    phrase,
    text,
    withoutStorms(
      phrase,
      text,
      onSide(
        phrase,
        text,
        byOwnWords(
          phrase,
          // "All supply lines" are more than those that the folder calls so.
          phrase.attributes.some(({ kind }) => kind === 'all')
            ? itemsAt(known, phrase, places)
            : literal(itemsAt(known, phrase, places), text.slice(phrase.from, phrase.to)),
        ),
      ),
    ),
  );
  // "New panel, new carpet on the top floor": the place is that of the last member, where the others are elsewhere.
  if (found.length === 0 && phrase.rooms.length === 0 && phrase.attributes.some(isPlaceOfList)) {
    const attributes = phrase.attributes.filter((one) => !isPlaceOfList(one));
    return meant(known, { ...phrase, attributes }, sentence);
  }
  const coated = phrase.thing === 'paint' ? coatedThings(found, phrase) : [];
  if (coated.length > 0) return { places, found: coated };
  if (places.length > 0) return { places, found: withoutWider(found, places) };
  if (
    places.length > 0 ||
    context === undefined ||
    context.thing === phrase.thing ||
    isRoomThing(phrase.thing) ||
    !isOfContext(phrase, sentence) ||
    // "The carport got a metal roof": its own, where the folder tells of one.
    (!(thing(context.thing).structure !== undefined && OUTSIDE_HAS.test(phrase.thing)) &&
      !/^(floor|counter|cabinet|cabinet-front|backsplash|tile|sink|faucet|toilet|tub|shower|vanity|hardware|light|wall|ceiling|trim|door|window|stair|rail|porch-steps|appliance|range|refrigerator|dishwasher|exhaust-fan|paint|garage-opener|ceiling-fan)$/.test(
        phrase.thing,
      ))
  )
    return { places, found };
  const there = [context.place];
  const inContext = byOwnWords(phrase, inRoomSpokenOf(known, phrase, there));
  return inContext.length > 0 && context.thing !== 'fireplace' && there[0]?.label !== 'house'
    ? { places: [], found: inContext }
    : { places, found };
}

/** "Exterior trim paint": of all that was painted, what the word before names. */
const coatedThings = (items: readonly Item[], { rooms }: Phrase): readonly Item[] => {
  const named = rooms.filter((room) => !isRoomThing(room.thing)).map((room) => room.thing);
  return items.filter(({ things }) => things.some((id) => named.includes(id)));
};

/** What a garage, shed or porch has as well as the house. */
const OUTSIDE_HAS = /^(roof|siding|gutter|foundation|wiring|trim-outside)$/;

/** A place that stands behind another member of the list. */
const isPlaceOfList = (one: Phrase['attributes'][number]): boolean =>
  one.kind === 'place' && one.shared && !one.before;

/** The rooms that a phrase about a room means, for what is said behind it. */
export function contextOf(
  known: Known,
  phrase: Phrase,
  sentence: SentenceWords,
): NonNullable<SentenceWords['context']> {
  const ordinal = phrase.attributes.flatMap((one) =>
    one.kind === 'number' &&
    ((one.number.kind === 'ordinal' && one.before) || (one.number.kind === 'count' && !one.before))
      ? [one.number.value]
      : [],
  )[0];
  const narrowedTo = narrowed(
    known,
    phrase,
    placesOf(known, phrase),
    sentence.text,
    sentence.context?.thing,
  )[0];
  const own = placeMeant(known.house, phrase.thing, ordinal);
  const both = narrowedTo === undefined ? own.ids : own.ids.filter((id) => narrowedTo.ids.includes(id));
  const ids = both.length > 0 ? both : own.ids;
  const called = roomCalled(known.house, sentence.text.slice(phrase.from, phrase.to)).filter((id) =>
    ids.includes(id),
  );
  return { thing: phrase.thing, place: { label: own.label, ids: called.length > 0 ? called : ids } };
}

/** Paint inside or outside, where the draft says which. */
export function paintItems(known: Known, phrase: Phrase, found: readonly Item[]): readonly Item[] {
  const all = itemsFor(known, 'paint');
  const structures = known.house.structures.map(({ id }) => id);
  const isOutside = (item: Item): boolean =>
    /exterior|outside|siding|stucco|garage|porch|front door/i.test(`${item.label} ${item.what}`) ||
    item.where.some((id) => structures.includes(id));
  const outside =
    phrase.thing === 'siding' ||
    phrase.rooms.some((room) => room.thing === 'siding') ||
    phrase.attributes.some((one) => one.kind === 'place' && one.id === 'outside');
  const inside = phrase.attributes.some((one) => one.kind === 'place' && one.id === 'inside');
  const own = found.length > 0 && phrase.thing === 'paint' ? found : all;
  const wanted = outside
    ? [...own, ...itemsFor(known, 'siding')].filter(isOutside)
    : inside
      ? own.filter((item) => !isOutside(item))
      : own;
  const painted = wanted.filter(
    (item) => item.deed === 'painted' || item.things.includes('paint') || item.things.includes('siding'),
  );
  return painted.length > 0 ? [...new Set(painted)] : found;
}

/** Who put it in says more than who painted it. */
export function whoItems(deeds: readonly Item[], items: readonly Item[]): readonly Item[] {
  const put = deeds.filter(({ deed }) => putsIn(deed));
  return put.length > 0 ? put : deeds.length > 0 ? deeds : items;
}

/** Paint alone makes no room new or renovated. */
export function withoutPaint(items: readonly Item[]): readonly Item[] {
  const rest = items.filter(
    ({ things, deed, kind, where }) =>
      kind !== 'system' &&
      kind !== 'alarm' &&
      !(kind === 'finish' && things.some((one) => one === 'wall' || one === 'ceiling' || one === 'trim')) &&
      deed !== 'painted' &&
      deed !== 'cleaned' &&
      !(kind === 'work' && where.length > 2),
  );
  return rest.length > 0 ? rest : items;
}

/** Boxes and basins that were only coated: a room that has them is not new. */
export const coatedParts = (items: readonly Item[]): readonly Item[] =>
  items.filter(
    ({ kind, deed, things }) =>
      kind === 'finish' &&
      deed === 'painted' &&
      things.some((one) => /^(cabinet|vanity|counter|tub)$/.test(one)),
  );

export const isWhole = (id: string): boolean =>
  id === 'house' || thing(id).room !== undefined || thing(id).level !== undefined;

export const MANY =
  /^(window|appliance|plumbing|electrical|wiring|hvac|heating|cooling|floor|light|fixture|bath-fixture|system|supply-pipe|drain-pipe|counter|cabinet|door|wall|ceiling|tile|alarm|receptacle|siding|duct|paint|work|house|mechanical|laundry-pair|trim|hardware|toilet|faucet|sink|pool-equipment|bath-fixture)$/;

export const isMany = (phrase: Phrase, text: string): boolean =>
  MANY.test(phrase.thing) &&
  (!/^(toilet|faucet|sink|door|light|counter|tile|floor|wall|ceiling)$/.test(phrase.thing) ||
    /s\b/i.test(text.slice(phrase.from, phrase.to)));
