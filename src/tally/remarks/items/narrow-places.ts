/** Among several rooms of a kind, the one that the words around a thing name: "hall bath", "guest bath tub", "the landing". */
import { nameOf } from '../../../facts/place-name.js';
import type { Phrase } from '../sentence/phrase.js';
import { sinceLast } from '../words/cut-at.js';
import { thing } from '../words/taxonomy.js';
import type { Known } from './known.js';
import { type PlaceMeant, placeOfRooms } from './places.js';
import { roomsCalled } from './rooms-called.js';

/** Things that a hall has as well as a bath. */
const HALL_HAS = /^(floor|tile|mirror|counter)$/;

/** "A brand new bath off the hall". */
const OFF_THE_HALL = /^\W*(just )?(off|down|in|at|on|along|from) (the |our )?(main )?hall(way)?\b/i;

const PRIMARY = /primary|master|owner/i;

const FIXTURES =
  /^(tub|shower|toilet|faucet|sink|vanity|tile|mirror|exhaust-fan|bath-fixture|floor|counter|bath)$/;

/** "hall bath", "guest bath tub": among several rooms of a kind, those whose name holds the word before. */
export function narrowed(
  { house }: Known,
  phrase: Phrase,
  places: readonly PlaceMeant[],
  text: string,
  spoken: string | undefined,
): readonly PlaceMeant[] {
  const before = sinceLast(text.slice(Math.max(0, phrase.from - 24), phrase.from), /[.!?;,\n]/).toLowerCase();
  const qualifier =
    /(hall|primary|master|guest|main|upstairs|upper|lower|owner|front|rear|back|kids|second|third)\S*[\s-]+(?:\S+[\s-]+)?$/.exec(
      before,
    )?.[1];
  if (phrase.thing === 'bath' && OFF_THE_HALL.test(text.slice(phrase.to, phrase.to + 24))) {
    const off = placeOfRooms(house.rooms.filter((room) => room.use === 'bath' && /hall/i.test(nameOf(room))));
    if (off !== undefined) return [off];
  }
  const use = thing(phrase.thing).room;
  const ids =
    use === undefined || phrase.thing === 'half-bath'
      ? []
      : roomsCalled(house, use, isItsBath(phrase, before, spoken) ? 'primary' : before);
  const called = placeOfRooms(house.rooms.filter(({ id }) => ids.includes(id)));
  if (called !== undefined) return [called];
  const bathNamed =
    phrase.rooms.some(({ thing: id }) => /bath/.test(id)) || /bath\S*\W+(\S+\W+)?$/.test(before);
  const hall = phrase.rooms.find(
    ({ thing: id, to }) =>
      // "hallway floors": the hall's own, where no bath is named.
      !(id === 'hall' && !bathNamed && HALL_HAS.test(phrase.thing)) &&
      (id === 'primary-bedroom' || to <= phrase.from || (id === 'hall' && phrase.thing === 'bath')) &&
      (id === 'hall' || id === 'primary-bedroom' || id === 'bath' || id === 'primary-bath'),
  );
  // "carpet in the primary": the bedroom's floor, not that of its bath.
  const inBedroom = phrase.thing === 'floor' && hall?.thing === 'primary-bedroom';
  if (FIXTURES.test(phrase.thing) && hall !== undefined && !inBedroom) {
    const word =
      hall.thing === 'hall' ||
      /hall\S*\s+$/.test(text.slice(Math.max(0, hall.from - 6), hall.from).toLowerCase())
        ? /hall/i
        : hall.thing === 'primary-bedroom' || hall.thing === 'primary-bath'
          ? PRIMARY
          : undefined;
    if (word === undefined) return places;
    const baths = placeOfRooms(house.rooms.filter((room) => room.use === 'bath' && word.test(nameOf(room))));
    if (baths !== undefined) return [baths];
    // A house with one whole bath: that is the one off the hall.
    const whole = house.rooms.filter((room) => room.use === 'bath' && room.bath !== 'half');
    return hall.thing === 'hall' && whole.length === 1
      ? [{ label: 'bath', ids: whole.map(({ id }) => id) }]
      : places.filter(({ label }) => label !== 'hall');
  }
  const named =
    qualifier !== undefined
      ? house.rooms.filter((room) => room.use === use && nameOf(room).toLowerCase().includes(qualifier))
      : phrase.thing === 'bath' && isOfSuite(phrase, text)
        ? house.rooms.filter((room) => room.use === 'bath' && PRIMARY.test(nameOf(room)))
        : [];
  const rooms = placeOfRooms(named);
  return rooms === undefined ? places : [rooms];
}

/** "The landing", "the bath": of several rooms of a kind, the one that is called just so. */
export function byName(
  house: Known['house'],
  phrase: Phrase,
  places: readonly PlaceMeant[],
  text: string,
): readonly PlaceMeant[] {
  const called = phrase.rooms.flatMap(({ from, to }) => roomCalled(house, text.slice(from, to)));
  if (called.length === 0) return places;
  return places.map((place) => {
    const ids = place.ids.filter((id) => called.includes(id));
    return ids.length > 0 && ids.length < place.ids.length ? { ...place, ids } : place;
  });
}

export const roomCalled = ({ rooms }: Known['house'], words: string): string[] =>
  rooms.filter((room) => nameOf(room).toLowerCase() === words.toLowerCase()).map(({ id }) => id);

const SUITE =
  /\b(primary|master|owners?'?s?|main|principal)[\s-]+(suite|bedroom|br|bdrm|retreat)\b(?:(?!\b(bedrooms?|guests?|hall|kitchen|upstairs|downstairs)\b)[^.;!?\n])*\b(with|and|has|its|w\/|includes|offers|features|boasts)\W+(an?\s|its\s|own\s)?([\w-]+\s){0,2}$/i;

/** "An owner's suite with a bath redone": the bath of that suite. */
const isOfSuite = (phrase: Phrase, text: string): boolean =>
  !/s$/i.test(text.slice(phrase.from, phrase.to)) &&
  !phrase.attributes.some(({ kind }) => kind === 'number') &&
  SUITE.test(text.slice(Math.max(0, phrase.from - 120), phrase.from));

/** "The primary suite … and its bath": that of the room spoken of. */
const isItsBath = (phrase: Phrase, before: string, spoken: string | undefined): boolean =>
  phrase.thing === 'bath' &&
  spoken === 'primary-bedroom' &&
  /\b(its|own|attached|adjoining|private|en ?suite|connected|and an?|with an?|plus an?)\W+(\w+\W+)?$/.test(
    before,
  );
