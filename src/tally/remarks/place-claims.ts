/** Where a thing is said to be, held against where the folder has it. */
import { factsOf } from './item-words.js';
import type { Judgement, Known } from './known.js';
import { MANY } from './meant-items.js';
import type { Phrase } from './phrase.js';
import { itemsFor } from './pick-items.js';
import { inOnePlace, type PlaceMeant, placeMeant } from './places.js';
import { thing } from './taxonomy.js';

/** "laundry on the main level", "first-floor bedroom": where a thing is. */
export function placeClaim(
  known: Known,
  phrase: Phrase,
  places: readonly PlaceMeant[],
): Judgement | undefined {
  const inside = phrase.attributes.some((one) => one.kind === 'place' && one.id === 'inside');
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
      : rooms.slice(0, 3).map((id) => ({
          path: ['rooms', known.house.rooms.findIndex((one) => one.id === id)],
          words: `${known.house.rooms.find((one) => one.id === id)?.name ?? id}: on ${levelName(known, id)}`,
          evidence: [] as string[],
        }));
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
  const there = wanted.filter((place) => spots.some((where) => inOnePlace(where, place)));
  if (there.length > 0)
    return { verdict: 'backed', rule: 'place', because: `the folder has the ${label} there`, facts };
  return {
    verdict: 'contradicted',
    rule: 'place',
    because: `the folder has the ${label} elsewhere`,
    facts,
    instead: facts.map(({ words }) => words).join('; '),
  };
}

function levelName({ house }: Known, id: string): string {
  const room = house.rooms.find((one) => one.id === id);
  return (house.levels.find((one) => one.id === room?.level)?.name ?? room?.level ?? 'a level').toLowerCase();
}
