/** "Two fireplaces", "dual basins", "two heat pumps": how many of a thing the folder tells of. */
import type { ClaimCase } from './claim-case.js';
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import type { Judgement } from './known.js';
import { thing } from './taxonomy.js';

const RULE = 'count.things';
/** Systems of which a house has so few that the folder lists each. */
const COUNTED =
  /^(furnace|boiler|heat-pump|air-conditioner|mini-split|water-heater|wood-stove|fireplace|generator|panel|water-softener|evaporative-cooler|sump-pump|range|refrigerator|dishwasher|microwave)$/;

export function judgeCount(one: ClaimCase, claimed: number): Judgement | undefined {
  const { phrase, found } = one;
  if (phrase.thing === 'fireplace') return ofPlaces(found, claimed);
  if (phrase.thing === 'sink' || phrase.thing === 'vanity') return ofBasins(one, claimed);
  if (!COUNTED.test(phrase.thing)) return undefined;
  const systems = found.filter(({ kind }) => kind === 'system');
  if (systems.length === 0 || claimed === 1) return undefined;
  return counted(systems.length, claimed, systems, thing(phrase.thing).label);
}

/** A fireplace is told by its face and by its system: what counts is where. */
function ofPlaces(found: readonly Item[], claimed: number): Judgement | undefined {
  const own = found.filter(({ kind }) => kind !== 'work');
  const places = new Set(own.map(({ where }) => where.join()));
  return places.size === 0 ? undefined : counted(places.size, claimed, own, 'fireplace');
}

const BASINS =
  /\b(one|two|three|single|double|dual|twin|1|2|3)[\s-]+(?:[a-z]+[\s-]+)?(?:basin|sink|bowl|vanit)/i;
const HOW_MANY: Readonly<Record<string, number>> = {
  one: 1,
  single: 1,
  two: 2,
  double: 2,
  dual: 2,
  twin: 2,
  three: 3,
};

/** Basins of a bath, where the folder gives their number. */
function ofBasins({ known, found, places, sentence }: ClaimCase, claimed: number): Judgement | undefined {
  const ids = places.length > 0 ? places.flatMap((place) => place.ids) : sentence.context?.place.ids;
  const baths = known.house.rooms.filter(
    ({ id, use }) => use === 'bath' && (ids === undefined || ids.includes(id)),
  );
  const given = known.items.flatMap((item) => {
    if (item.kind !== 'finish' || !item.where.some((id) => baths.some((room) => room.id === id))) return [];
    const word = BASINS.exec(item.words)?.[1]?.toLowerCase();
    const count = word === undefined ? undefined : (HOW_MANY[word] ?? Number(word));
    return count === undefined ? [] : [{ item, count }];
  });
  if (given.length === 0 || found.length === 0) return undefined;
  const fits = given.filter(({ count }) => count === claimed);
  return counted(
    fits[0]?.count ?? given[0]?.count ?? 0,
    claimed,
    given.map(({ item }) => item),
    'basin',
  );
}

function counted(actual: number, claimed: number, items: readonly Item[], label: string): Judgement {
  const words = `${actual === 1 ? 'one' : actual} ${label}${actual === 1 || label.endsWith('s') ? '' : 's'}`;
  return {
    verdict: actual === claimed ? 'backed' : 'contradicted',
    rule: RULE,
    because: `the folder tells of ${words}`,
    facts: factsOf(items, 3),
    instead: actual === claimed ? undefined : words,
  };
}
