/** "Two fireplaces", "dual basins", "two heat pumps": how many of a thing the folder tells of. */
import type { ClaimCase } from '../claims/claim-case.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { thing } from '../words/taxonomy.js';

const RULE = 'count.things';
/** Systems of which a house has so few that the folder lists each. */
const COUNTED =
  /^(furnace|boiler|heat-pump|air-conditioner|mini-split|water-heater|wood-stove|fireplace|generator|panel|water-softener|evaporative-cooler|sump-pump|range|refrigerator|dishwasher|microwave|ceiling-fan)$/;

export function judgeCount(one: ClaimCase, claimed: number): Judgement | undefined {
  const { phrase, found } = one;
  if (phrase.thing === 'fireplace') return ofPlaces(found, claimed);
  if (phrase.thing === 'sink' || phrase.thing === 'vanity') return ofBasins(one, claimed);
  if (/^(hvac|heating|cooling)$/.test(phrase.thing))
    return isZoned(one) ? undefined : ofUnits(found, claimed);
  if (!COUNTED.test(phrase.thing)) return ofWords(one, claimed);
  const systems = found.filter(({ kind }) => kind === 'system');
  if (systems.length === 0 || claimed === 1) return undefined;
  const several = systems.filter(({ label, what }) => IS_PLURAL.test(label) || IS_PLURAL.test(what));
  if (several.length > 0) {
    // "Ductless units", of which a work tells that there are five.
    const stated = new RegExp(`\\b(${claimed}|${inWords(claimed)}) (?:[a-z-]+ ){0,2}[a-z]+s\\b`, 'i');
    const telling = found.filter(({ words, kind }) => kind !== 'identity' && stated.test(words));
    if (telling.length > 0) return counted(claimed, claimed, telling, thing(phrase.thing).label);
    // "Ceiling fans, living room, den": one in each place that is named; else how many is not told.
    const each = systems.reduce((sum, item) => sum + (several.includes(item) ? placesNamed(item) : 1), 0);
    return several.every((item) => placesNamed(item) > 1)
      ? counted(each, claimed, systems, thing(phrase.thing).label)
      : undefined;
  }
  return counted(systems.length, claimed, systems, thing(phrase.thing).label);
}

/** An entry that stands for several: "Ceiling fans", "window units". */
const IS_PLURAL = /^[^,(]*[a-z]{2,}(?<!s|u|i|ga)s\b(?=\s*(,|\(|$|of |in |at ))/i;

/** How many places its name lists: "Ceiling fans, living room, den, primary bedroom". */
const placesNamed = ({ label }: Item): number =>
  label.split(/,| and /).filter((part) => part.trim() !== '').length - 1;

/** "Two-zone heat", "two-stage cooling": one machine. */
const isZoned = ({ phrase, sentence }: ClaimCase): boolean =>
  /\b(zone|zoned|stage|speed)s?\b/i.test(sentence.text.slice(Math.max(0, phrase.from - 16), phrase.to + 8));

/** "Two HVAC units": no more than the machines that heat or cool. */
function ofUnits(found: readonly Item[], claimed: number): Judgement | undefined {
  const machines = found.filter(
    ({ kind, things }) =>
      kind === 'system' && things.some((id) => MACHINE.test(id)) && !things.includes('water-heater'),
  );
  return machines.length === 0 || claimed <= machines.length
    ? undefined
    : counted(machines.length, claimed, machines, 'heating or cooling unit');
}

const MACHINE = /^(furnace|boiler|heat-pump|air-conditioner|mini-split|evaporative-cooler|heating|cooling)$/;

/** "Twelve"; beyond, the figure. */
const inWords = (count: number): string => NUMBER_WORDS[count] ?? String(count);

const NUMBER_WORDS = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');
const PLURAL_COUNT = new RegExp(
  `\\b(\\d{1,2}|${NUMBER_WORDS.slice(1).join('|')})\\s+(?:new\\s+|[a-z]+\\s+)?(\\w+s)\\b`,
  'gi',
);

/** "Fifteen windows were replaced" beside "eight windows": a count that the folder's words give. */
function ofWords({ phrase, found, sentence }: ClaimCase, claimed: number): Judgement | undefined {
  const word = sentence.text.slice(phrase.from, phrase.to).toLowerCase().replace(/.*\W/s, '');
  if (claimed < 2 || !word.endsWith('s')) return undefined;
  const given = found.flatMap((item) =>
    item.kind === 'identity'
      ? []
      : [...item.words.matchAll(PLURAL_COUNT)].flatMap(([, number = '', noun = '']) => {
          const count = /\d/.test(number) ? Number(number) : NUMBER_WORDS.indexOf(number.toLowerCase());
          return noun.toLowerCase() === word ? [{ item, count }] : [];
        }),
  );
  const fits = given.find(({ count }) => count === claimed);
  if (given.length === 0) return undefined;
  // "Windows of the back, seven": a number that stands apart from its noun.
  const apart = found.filter(({ label, what }) =>
    new RegExp(`\\b(${inWords(claimed)}|${claimed})\\b`, 'i').test(`${label} ${what}`),
  );
  if (fits === undefined && apart.length > 0) return counted(claimed, claimed, apart, word.slice(0, -1));
  const most = given.reduce((sum, { count }) => sum + count, 0);
  if (fits === undefined && claimed < most) return undefined;
  return counted(
    fits?.count ?? most,
    claimed,
    given.map(({ item }) => item),
    word.slice(0, -1),
  );
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

function basinsOf({ words }: Item): number | undefined {
  const word = BASINS.exec(words)?.[1]?.toLowerCase();
  return word === undefined ? undefined : (HOW_MANY[word] ?? Number(word));
}

/** Basins of a bath, where the folder gives their number. */
function ofBasins({ known, found, places, sentence }: ClaimCase, claimed: number): Judgement | undefined {
  const ids = places.length > 0 ? places.flatMap((place) => place.ids) : sentence.context?.place.ids;
  const baths = known.house.rooms.filter(
    ({ id, use }) => use === 'bath' && (ids === undefined || ids.includes(id)),
  );
  // A sink of no room that is named may be that of the kitchen.
  const elsewhere = ids === undefined ? found.filter((item) => basinsOf(item) === claimed) : [];
  if (claimed > 1 && elsewhere.length > 0) return counted(claimed, claimed, elsewhere, 'basin');
  const given = known.items.flatMap((item) => {
    if (item.kind !== 'finish' || !item.where.some((id) => baths.some((room) => room.id === id))) return [];
    const count = basinsOf(item);
    return count === undefined ? [] : [{ item, count }];
  });
  const [one] = given;
  if (one === undefined)
    return claimed > 1
      ? ofNarrow(
          known,
          baths.map(({ id }) => id),
        )
      : undefined;
  if (found.length === 0) return undefined;
  return counted(
    (given.find(({ count }) => count === claimed) ?? one).count,
    claimed,
    given.map(({ item }) => item),
    'basin',
  );
}

const WIDTH = /(\d+)\s*(?:-\s*)?(?:in\b|inch|")/i;
/** Inches that a vanity for two has at least. */
const FOR_TWO = 48;

/** "Double vanity", where every vanity of the folder is too narrow for two basins. */
function ofNarrow(known: ClaimCase['known'], ids: readonly string[]): Judgement | undefined {
  const vanities = known.items.filter(
    ({ kind, things, where }) =>
      kind === 'finish' && things.includes('vanity') && where.some((id) => ids.includes(id)),
  );
  const widths = vanities.map(({ what }) => Number(WIDTH.exec(what)?.[1] ?? FOR_TWO));
  return vanities.length > 0 && widths.every((width) => width < FOR_TWO)
    ? {
        ...counted(1, 2, vanities, 'basin'),
        because: `the folder says ${widths[0]} in wide, which is for one basin`,
      }
    : undefined;
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
