/** Which phrases only say where another thing is. */

import { thing } from '../words/taxonomy.js';
import { has, type Unit } from '../words/units.js';
import { standsBeside } from './head-places.js';
import type { Attribute, Draft, Phrase } from './phrase.js';
import { isBracketed, isList } from './share-lists.js';

/** "oak in the living room, hall and both bedrooms": the rooms behind a thing say where it is. */
export function placeThings(units: readonly Unit[], drafts: readonly Draft[]): void {
  let owner: Draft | undefined;
  let before: Draft | undefined;
  for (const one of drafts) {
    const { phrase, head } = one;
    const listed = before?.phrase.place === true && isList(units, before, one) && isRoom(head.thing);
    if (head.place || listed) {
      phrase.place = true;
      if (owner !== undefined) {
        if (!standsBeside(units, head)) owner.phrase.rooms = [...owner.phrase.rooms, roomOf(phrase)];
        handBack(units, owner, phrase);
        // "laundry off the kitchen on the main floor"
        const level = phrase.attributes.filter((one) => one.kind === 'place' && !one.before);
        if (!owner.phrase.attributes.some(({ kind }) => kind === 'place'))
          owner.phrase.attributes = [
            ...owner.phrase.attributes,
            ...level.map((one) => ({ ...one, shared: true })),
          ];
      }
    } else owner = one;
    before = one;
  }
  roomsMeant(units, drafts);
  // A list that shares its places: "new roof and gutters on the garage".
  for (const [index, one] of drafts.entries()) {
    const next = drafts[index + 1];
    if (
      next !== undefined &&
      !one.phrase.place &&
      !next.phrase.place &&
      one.phrase.rooms.length === 0 &&
      !isRoom(one.head.thing) &&
      isList(units, one, next) &&
      next.head.adjuncts.length === 0 &&
      next.phrase.attributes.every(({ before }) => !before)
    )
      one.phrase.rooms = next.phrase.rooms;
  }
}

/** "carpet in the fourth" bedroom; "carpet-tiled rec room". */
function roomsMeant(units: readonly Unit[], drafts: readonly Draft[]): void {
  let room: string | undefined;
  for (const [index, { phrase, head }] of drafts.entries()) {
    const next = drafts[index + 1];
    const last = phrase.rooms.at(-1)?.thing;
    if (last !== undefined && isRoom(last)) room = last;
    const ordinal = phrase.attributes.find(
      (one) => one.kind === 'number' && one.number.kind === 'ordinal' && !one.before,
    );
    if (
      ordinal?.kind === 'number' &&
      ordinal.number.kind === 'ordinal' &&
      phrase.rooms.length === 0 &&
      room !== undefined
    )
      phrase.rooms = [{ thing: room, from: ordinal.from, to: ordinal.to, ordinal: ordinal.number.value }];
    if (
      phrase.bare &&
      phrase.rooms.length === 0 &&
      next !== undefined &&
      isRoom(next.head.thing) &&
      units.slice(head.at + 1, next.head.at).every((unit) => has(unit, 'class') || unit.joined)
    )
      phrase.rooms = [roomOf(next.phrase)];
  }
}

/** "boards in bedroom 3 were refinished": behind a place it goes on with the thing that is there. */
function handBack(units: readonly Unit[], owner: Draft, place: Draft['phrase']): void {
  const isBack = (one: Attribute): boolean => !isBracketed(units, one) && isSaidBehind(one);
  const isSaidBehind = ({ kind, before, ...rest }: Attribute): boolean =>
    !before && HANDED_BACK.has(kind) && !('number' in rest && /^(count|ordinal)$/.test(rest.number.kind));
  const back = place.attributes.filter(isBack);
  if (back.length === 0) return;
  place.attributes = place.attributes.filter((one) => !isBack(one));
  owner.phrase.attributes = [...owner.phrase.attributes, ...back];
}

const HANDED_BACK = new Set<Attribute['kind']>([
  'newness',
  'number',
  'who',
  'permit',
  'unpermitted',
  'inspected',
  'convey',
  'condition',
]);

const isRoom = (id: string): boolean =>
  thing(id).room !== undefined || thing(id).level !== undefined || thing(id).structure !== undefined;

const roomOf = ({ thing: id, from, to, attributes, rooms }: Phrase): Phrase['rooms'][number] => {
  const ordinal = attributes.flatMap((one) =>
    one.kind === 'number' && one.number.kind === 'ordinal' ? [one.number.value] : [],
  )[0];
  const qualifiers = [
    ...rooms.map((one) => thing(one.thing).label),
    ...attributes.flatMap((one) =>
      one.kind === 'word' && one.before
        ? [one.word]
        : one.kind === 'place' && one.before && one.id === 'upper'
          ? ['upstairs', 'upper']
          : [],
    ),
  ];
  const level = attributes.find((one) => one.kind === 'place' && one.before);
  return {
    thing: id,
    from,
    to,
    ...(level?.kind === 'place' ? { level: level.id } : {}),
    ...(qualifiers.length === 0 ? {} : { qualifiers }),
    ...(ordinal === undefined ? {} : { ordinal }),
  };
};
