/** Which facts a phrase means: by its place, by the room spoken of last, by words of their own name. */
import { nameOf } from '../../facts/place-name.js';
import type { SentenceWords } from './claim-case.js';
import { type Item, putsIn } from './items.js';
import type { Known } from './known.js';
import type { Phrase } from './phrase.js';
import { itemsAt, itemsFor, placesOf } from './pick-items.js';
import { levelMeant, type PlaceMeant, placeMeant } from './places.js';
import { thing } from './taxonomy.js';

export const isRoomThing = (id: string): boolean =>
  thing(id).room !== undefined || thing(id).level !== undefined || thing(id).structure !== undefined;

/** The facts of a phrase, and where they are: as it says, else in the room spoken of last, else anywhere. */
export function meant(
  known: Known,
  phrase: Phrase,
  { context, text }: SentenceWords,
): { places: readonly PlaceMeant[]; found: readonly Item[] } {
  const own = narrowed(known, phrase, placesOf(known, phrase), text);
  // "finished basement with a full bath": the bath is said to be there.
  const below =
    context?.thing === 'basement' &&
    own.length === 0 &&
    /^(bath|half-bath|bedroom|family|laundry|office)$/.test(phrase.thing) &&
    /basement|cellar|lower level/i.test(text) &&
    /\b(with|has|includ\w*|featur\w*|offer\w*)\b[^.;]{0,60}$/i.test(text.slice(0, phrase.from));
  const places = below ? [levelMeant(known.house, 'below')] : own;
  const found = byOwnWords(
    phrase,
    literal(itemsAt(known, phrase, places), text.slice(phrase.from, phrase.to)),
  );
  if (
    places.length > 0 ||
    context === undefined ||
    context.thing === phrase.thing ||
    isRoomThing(phrase.thing) ||
    !/^(floor|counter|cabinet|cabinet-front|backsplash|tile|sink|faucet|toilet|tub|shower|vanity|hardware|light|wall|ceiling|trim|door|window|stair|rail|porch-steps|appliance|range|refrigerator|dishwasher|exhaust-fan|paint|garage-opener|ceiling-fan)$/.test(
      phrase.thing,
    )
  )
    return { places, found };
  const there = [context.place];
  const inContext = itemsAt(known, phrase, there);
  return inContext.length > 0 && context.thing !== 'fireplace' && there[0]?.label !== 'house'
    ? { places: [], found: inContext }
    : { places, found };
}

/** "drain stack", "pool pump": facts whose own name holds these words are meant, and no others. */
function literal(items: readonly Item[], words: string): readonly Item[] {
  const plain = words
    .toLowerCase()
    .replace(/s\b/g, '')
    .replace(/^(kitchen|bath|bathroom|house|interior|exterior) /, '');
  if (!/\w[\s-]\w/.test(plain)) return items;
  const named = items.filter(({ label, what }) =>
    `${label} ${what}`.toLowerCase().replace(/s\b/g, '').includes(plain),
  );
  return named.length > 0 ? named : items;
}

/** "apron sink", "pedestal basin": of several, those that the folder describes by the same word. */
function byOwnWords({ attributes }: Phrase, items: readonly Item[]): readonly Item[] {
  const words = attributes.flatMap((one) =>
    one.kind === 'word' && one.before && one.word.length > 4 && !TOO_PLAIN.test(one.word) ? [one.word] : [],
  );
  const named = items.filter((item) =>
    words.some((word) => `${item.label} ${item.what}`.toLowerCase().includes(word)),
  );
  return named.length > 0 ? named : items;
}

const TOO_PLAIN = /^(their|every|other|whole|great|large|small|about|which|there|these|those)$/;

const FIXTURES =
  /^(tub|shower|toilet|faucet|sink|vanity|tile|mirror|exhaust-fan|bath-fixture|floor|counter|bath)$/;

/** "hall bath", "guest bath tub": among several rooms of a kind, those whose name holds the word before. */
function narrowed(
  { house }: Known,
  phrase: Phrase,
  places: readonly PlaceMeant[],
  text: string,
): readonly PlaceMeant[] {
  const before = (
    text
      .slice(Math.max(0, phrase.from - 24), phrase.from)
      .split(/[.!?;,\n]/)
      .at(-1) ?? ''
  ).toLowerCase();
  const qualifier =
    /(hall|primary|master|guest|main|upstairs|upper|lower|owner|front|rear|back|kids|second|third)\S*[\s-]+(?:\S+[\s-]+)?$/.exec(
      before,
    )?.[1];
  const hall = phrase.rooms.find(
    ({ thing: id, to }) =>
      (id === 'primary-bedroom' || to <= phrase.from) &&
      (id === 'hall' || id === 'primary-bedroom' || id === 'bath' || id === 'primary-bath'),
  );
  if (FIXTURES.test(phrase.thing) && hall !== undefined) {
    const word =
      hall.thing === 'hall' ||
      /hall\S*\s+$/.test(text.slice(Math.max(0, hall.from - 6), hall.from).toLowerCase())
        ? /hall/i
        : hall.thing === 'primary-bedroom' || hall.thing === 'primary-bath'
          ? /primary|master|owner/i
          : undefined;
    if (word === undefined) return places;
    const baths = house.rooms.filter((room) => room.use === 'bath' && word.test(nameOf(room)));
    if (baths.length > 0)
      return [
        { label: `${nameOf(baths[0] as { id: string }).toLowerCase()}`, ids: baths.map(({ id }) => id) },
      ];
    // A house with one whole bath: that is the one off the hall.
    const whole = house.rooms.filter((room) => room.use === 'bath' && room.bath !== 'half');
    return hall.thing === 'hall' && whole.length === 1
      ? [{ label: 'bath', ids: whole.map(({ id }) => id) }]
      : places.filter(({ label }) => label !== 'hall');
  }
  if (qualifier === undefined || thing(phrase.thing).room === undefined) return places;
  const rooms = house.rooms.filter(
    (room) => room.use === thing(phrase.thing).room && nameOf(room).toLowerCase().includes(qualifier),
  );
  return rooms.length > 0
    ? [{ label: nameOf(rooms[0] as { id: string }).toLowerCase(), ids: rooms.map(({ id }) => id) }]
    : places;
}

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
  const narrowedTo = narrowed(known, phrase, placesOf(known, phrase), sentence.text)[0];
  const own = placeMeant(known.house, phrase.thing, ordinal);
  const both = narrowedTo === undefined ? own.ids : own.ids.filter((id) => narrowedTo.ids.includes(id));
  return { thing: phrase.thing, place: { label: own.label, ids: both.length > 0 ? both : own.ids } };
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

export const isWhole = (id: string): boolean =>
  id === 'house' || thing(id).room !== undefined || thing(id).level !== undefined;

export const MANY =
  /^(window|appliance|plumbing|electrical|wiring|hvac|heating|cooling|floor|light|fixture|bath-fixture|system|supply-pipe|drain-pipe|counter|cabinet|door|wall|ceiling|tile|alarm|receptacle|siding|duct|paint|work|house|mechanical|laundry-pair|trim|hardware|toilet|faucet|sink|pool-equipment|bath-fixture)$/;

export const isMany = (phrase: Phrase, text: string): boolean =>
  MANY.test(phrase.thing) &&
  (!/^(toilet|faucet|sink|door|light|counter|tile|floor|wall|ceiling)$/.test(phrase.thing) ||
    /s\b/i.test(text.slice(phrase.from, phrase.to)));
