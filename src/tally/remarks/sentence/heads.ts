import { canBeSaidOf, thing } from '../words/taxonomy.js';
import { has, isBoundary, senseOf, type Unit, wordOf } from '../words/units.js';
import { GLUE } from '../words/word-kinds.js';
import { classesIn } from './attributes-of.js';
import { isPlace, opens } from './head-places.js';
import type { Head } from './phrase.js';
import { walkBack } from './walk-back.js';

export function findHeads(units: readonly Unit[]): Head[] {
  const heads: Head[] = [];
  for (const [at, unit] of units.entries()) {
    const named = headThing(units, unit, at);
    if (named === undefined) continue;
    // "the roof is metal": said of what came before, and no thing of its own.
    if (isPredicate(units, unit, at, heads.at(-1)) || isSameAgain(units, at, heads.at(-1), named)) continue;
    const follows = followingThing(units, unit, at);
    // "kitchen cabinets", "pool fence": the later word is what is meant.
    if (follows !== undefined) continue;
    const head: Head = {
      at,
      thing: named === 'tile' && ofRoof(units, at) ? 'roof' : named,
      start: at,
      end: at,
      adjuncts: [],
      place: isPlace(units, at, named),
    };
    walkBack(units, head);
    heads.push(head);
  }
  return heads;
}

/** "Windows are double-hung": the same thing by another name, directly behind a verb of being. */
const isSameAgain = (units: readonly Unit[], at: number, last: Head | undefined, named: string): boolean =>
  last?.thing === named &&
  last.at === at - 2 &&
  PREDICATE.test(wordOf(units[at - 1])) &&
  has(units[at], 'thing');

/** "clay tiles": of a roof. */
const ofRoof = (units: readonly Unit[], at: number): boolean =>
  units
    .slice(Math.max(0, at - 2), at)
    .some((one) => one.senses.some(({ tag, id }) => tag === 'class' && id === 'clay-tile'));

function headThing(units: readonly Unit[], unit: Unit, at: number): string | undefined {
  // "front rooms", "the front brick": where, and no door of a cabinet.
  if (unit.word === 'front') return undefined;
  // "lead paint was found" speaks of lead.
  if (/^paint/.test(unit.word) && units[at - 1]?.word === 'lead') return undefined;
  // "The walls were all repainted": said of the walls.
  if (/^(re-?)?painted$/.test(unit.word) && isAfterCopula(units, at)) return undefined;
  // "the pump on the pool", "pool equip."
  if (
    /^(pump|equipment|equip|filter|heater)$/.test(unit.word) &&
    unit.senses.length === 0 &&
    aboutPool(units)
  )
    return 'pool-equipment';
  // "mature oaks", "under the pines": trees.
  if (TREES.test(unit.word) && !has(units[at + 1], 'thing')) return undefined;
  // "The baths I tiled myself": a deed.
  if (
    /^(tiled|carpeted|paneled|panelled|shingled|bricked|plastered|drywalled|paved)$/.test(unit.word) &&
    BY_ONE.test(wordOf(units[at - 1]))
  )
    return undefined;
  // "well known", "well planned": an adverb.
  if (unit.word === 'well' && isAdverb(units, at)) return undefined;
  // "two units, both 2021": machines, and no dwellings.
  if (/^units?$/.test(unit.word) && isCountedOrMade(units[at - 1])) return undefined;
  // Words such as "hardwoods" or "granite" are things where none follows.
  return senseOf(unit, 'thing')?.id ?? unit.senses.find((sense) => sense.head !== undefined)?.head;
}

const BY_ONE = /^(i|we|he|she|they|have|has|had|who)$/;

const TREES = /^(oaks|pines|maples|cedars|redwoods|walnuts|cherries|hickories|cypresses|firs)$/;

/** "well known", "works well", "as well": how, and no well. */
const isAdverb = (units: readonly Unit[], at: number): boolean =>
  (HOW.test(wordOf(units[at + 1])) && !OF_WELLS.test(wordOf(units[at + 1]))) ||
  /^(as|very|so|works?|lives?|flows?|runs?|treated)$/.test(wordOf(units[at - 1]));

/** Deeds that are done to a well. */
const OF_WELLS =
  /^(tested|inspected|drilled|pumped|capped|treated|serviced|replaced|certified|permitted|sealed|deepened|shared|abandoned|installed)$/;

const HOW =
  /^(known|built|made|kept|loved|laid|lit|sized|thought|worn|suited|equipped|below|above|within|beyond|worth|(?:[a-z]+(?:ed|tioned)))$/;

const isAfterCopula = (units: readonly Unit[], at: number): boolean => {
  const subject = units.slice(0, at).findLast((one) => {
    const id = senseOf(one, 'thing')?.id;
    return id !== undefined && thing(id).room === undefined && thing(id).level === undefined;
  });
  const about = senseOf(subject ?? units[at], 'thing')?.id;
  if (about !== 'wall' && about !== 'ceiling') return false;
  const before = units[has(units[at - 1], 'all') || /ly$/.test(wordOf(units[at - 1])) ? at - 2 : at - 1];
  return /^(is|are|was|were|been)$/.test(wordOf(before));
};

const aboutPool = (units: readonly Unit[]): boolean =>
  units.some((unit) => /^(pool|spa)$/.test(senseOf(unit, 'thing')?.id ?? ''));

const isCountedOrMade = (unit: Unit | undefined): boolean =>
  unit?.number?.kind === 'count' || has(unit, 'class') || has(unit, 'newness');

function isPredicate(units: readonly Unit[], unit: Unit, at: number, last: Head | undefined): boolean {
  if (last === undefined || (has(unit, 'thing') && !has(unit, 'class'))) return false;
  const between = units.slice(last.at + 1, at);
  if (
    between.some(
      (one, index) =>
        (isBoundary(one) && !(index === 0 && isKeySign(one))) ||
        (has(one, 'thing') && !has(one, 'class') && senseOf(one, 'thing')?.id !== last.thing),
    )
  )
    return false;
  const joins = (one: Unit): boolean =>
    PREDICATE.test(one.word) || one.word === 'of' || (last.thing === 'fireplace' && one.word === 'with');
  const isJoined =
    between.length === 0
      ? // "Roof slate", "Basement stone": a key and its value.
        opens(units, last.start) && !has(units[at + 1], 'thing')
      : (between.length === 1 && isKeySign(between[0])) || between.some(joins);
  return isJoined && classesIn(unit.senses).some(({ group }) => canBeSaidOf(group, last.thing));
}

/** Between a key and its value. */
const isKeySign = (unit: Unit | undefined): boolean => unit?.sign !== undefined && /^[:?=]$/.test(unit.sign);

const PREDICATE = /^(is|are|was|were|in|be|been|has|have)$/;

/** The index of a thing that this one only describes: directly behind it, or behind a few words of description. */
function followingThing(units: readonly Unit[], own: Unit, at: number): number | undefined {
  const soft = !has(own, 'thing') || has(own, 'newness') || has(own, 'class');
  for (let next = at + 1; next <= at + (soft ? 4 : 2); next++) {
    const unit = units[next];
    if (unit === undefined || unit.sign !== undefined || unit.number !== undefined) return undefined;
    if (has(unit, 'thing') || (unit.senses.some(({ head }) => head !== undefined) && !soft)) {
      const id = senseOf(unit, 'thing')?.id;
      if (id === undefined) return undefined;
      if (next > at + 1 && !soft) return undefined;
      // "3 bedroom, 2 bath home": the rooms are counted, and describe nothing.
      if (id === 'house' && isCountedRoom(units, at)) return undefined;
      return fits(own, id) ? next : undefined;
    }
    if (
      has(unit, 'preposition') ||
      has(unit, 'determiner') ||
      has(unit, 'copula') ||
      has(unit, 'verb') ||
      has(unit, 'convey') ||
      has(unit, 'negation')
    )
      return undefined;
    if (GLUE.test(unit.word)) return undefined;
    if (!soft && !has(unit, 'class')) return undefined;
  }
  return undefined;
}

const isCountedRoom = (units: readonly Unit[], at: number): boolean =>
  thing(senseOf(units[at], 'thing')?.id ?? 'house').room !== undefined &&
  units.slice(Math.max(0, at - 3), at).some((unit) => unit.number?.kind === 'count');

/** A material describes only what can be of it; a room or a thing can stand before any other. */
function fits(unit: Unit, id: string): boolean {
  if (classesIn(unit.senses).some(({ group }) => canBeSaidOf(group, id))) return true;
  const own = senseOf(unit, 'thing');
  if (own === undefined) return false;
  return thing(id).room === undefined || thing(own.id).room !== undefined || has(unit, 'newness');
}
