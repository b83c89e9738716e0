/** Fewer facts for a phrase: without storm windows, without works of elsewhere, without the rooms that it excepts. */

import type { Phrase } from '../sentence/phrase.js';
import type { Item } from './items.js';
import type { Known } from './known.js';
import { itemsAt, placesOf } from './pick-items.js';
import type { PlaceMeant } from './places.js';

/** Storm windows are told of apart from the windows. */
export function withoutStorms(
  { thing: id, from, to }: Phrase,
  text: string,
  items: readonly Item[],
): readonly Item[] {
  if (id !== 'window' || /storm/i.test(text.slice(Math.max(0, from - 8), to))) return items;
  const plain = items.filter(({ label, what }) => !/storm/i.test(`${label} ${what}`));
  return plain.length > 0 ? plain : items;
}

/** A work that reaches into other places says less of this one than the thing that is there. */
export function withoutWider(items: readonly Item[], places: readonly PlaceMeant[]): readonly Item[] {
  const ids = places.flatMap((place) => place.ids);
  if (!items.some(({ kind }) => kind === 'system')) return items;
  return items.filter(({ kind, where }) => kind !== 'work' || where.every((id) => ids.includes(id)));
}

/** What a bath has for a basin or for cabinets, by the other name. */
const KIN: Readonly<Record<string, string>> = { vanity: 'sink', sink: 'vanity', cabinet: 'vanity' };

/** What the room has; of windows, else, those of its level; of a basin, the sink or the vanity. */
export function inRoomSpokenOf(known: Known, phrase: Phrase, there: readonly PlaceMeant[]): readonly Item[] {
  const own = itemsAt(known, phrase, there);
  if (own.length > 0) return own;
  const kin = KIN[phrase.thing];
  if (kin !== undefined) return itemsAt(known, { ...phrase, thing: kin }, there);
  if (phrase.thing !== 'window') return own;
  const ids = there.flatMap((place) => place.ids);
  const levels = known.house.rooms.filter(({ id }) => ids.includes(id)).map(({ level }) => level);
  return itemsAt(known, phrase, []).filter(
    ({ kind, where }) => kind === 'system' && where.some((id) => levels.includes(id)),
  );
}

/** "drain stack", "pool pump": facts whose own name holds these words are meant, and no others. */
export function literal(items: readonly Item[], words: string): readonly Item[] {
  const plain = words
    .toLowerCase()
    .replace(/s\b/g, '')
    .replace(/^(kitchen|bath|bathroom|house|interior|exterior) /, '');
  if (!/\w[\s-]\w/.test(plain)) return items;
  const parts = plain.split(/[\s-]+/);
  const named = items.filter(({ label, what }) => {
    const own = `${label} ${what}`.toLowerCase().replace(/s\b/g, '');
    // "Plank floors" of a floor that is vinyl plank.
    return own.includes(plain) || parts.every((word) => word.length > 3 && own.split(/\W+/).includes(word));
  });
  // What was only mended or added beside it is not all there is of the thing.
  const part = named.every(({ kind, deed }) => kind === 'work' && deed === 'added');
  return named.length > 0 && !(part && items.some(({ kind }) => kind === 'system')) ? named : items;
}

/** "apron sink", "pedestal basin": of several, those that the folder describes by the same word. */
export function byOwnWords({ attributes }: Phrase, items: readonly Item[]): readonly Item[] {
  const words = attributes.flatMap((one) =>
    one.kind === 'word' && one.before && one.word.length > 4 && !TOO_PLAIN.test(one.word) ? [one.word] : [],
  );
  const named = items.filter((item) =>
    words.some((word) =>
      [word, ...(SAME_ROW[word] ?? [])].some((name) =>
        `${item.label} ${item.what}`.toLowerCase().includes(name),
      ),
    ),
  );
  return named.length > 0 ? named : items;
}

/** The rows of a kitchen's cabinets go by two names each. */
const SAME_ROW: Readonly<Record<string, readonly string[]>> = {
  lower: ['base cabinet', 'bottom cabinet'],
  bottom: ['base cabinet', 'lower cabinet'],
  upper: ['wall cabinet', 'top cabinet'],
};

const TOO_PLAIN = /^(their|every|other|whole|great|large|small|about|which|there|these|those)$/;

const EXCEPT = /\b(except|but|other than|apart from|save|outside|excluding)( for)?( (in|of))?( the)?\W*$/i;

/** "Original except in the kitchen": the rooms that a phrase leaves out. */
export const roomsExcepted = ({ rooms }: Phrase, text: string): Phrase['rooms'] =>
  rooms.filter(({ from }) => EXCEPT.test(text.slice(Math.max(0, from - 24), from)));

export function withoutRooms(
  known: Known,
  phrase: Phrase,
  rooms: Phrase['rooms'],
  items: readonly Item[],
): readonly Item[] {
  const there = placesOf(known, { ...phrase, attributes: [], rooms });
  const rest = items.filter(({ where }) => !there.some(({ ids }) => where.some((id) => ids.includes(id))));
  return rest.length > 0 ? rest : items;
}
