import { canBeSaidOf, thing } from '../words/taxonomy.js';
import { has, isBoundary, senseOf, type Unit } from '../words/units.js';
import { GLUE } from '../words/word-kinds.js';
import { isPlace, opens } from './head-places.js';
import type { Head } from './phrase.js';
import { walkBack } from './walk-back.js';

export function findHeads(units: readonly Unit[]): Head[] {
  const heads: Head[] = [];
  for (const at of units.keys()) {
    const named = headThing(units, at);
    if (named === undefined) continue;
    // "the roof is metal": said of what came before, and no thing of its own.
    if (isPredicate(units, at, heads.at(-1)) || isSameAgain(units, at, heads.at(-1), named)) continue;
    const follows = followingThing(units, at);
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
  PREDICATE.test(units[at - 1]?.word ?? '') &&
  has(units[at], 'thing');

/** "clay tiles": of a roof. */
const ofRoof = (units: readonly Unit[], at: number): boolean =>
  units
    .slice(Math.max(0, at - 2), at)
    .some((one) => one.senses.some(({ tag, id }) => tag === 'class' && id === 'clay-tile'));

function headThing(units: readonly Unit[], at: number): string | undefined {
  const unit = units[at];
  // "front rooms", "the front brick": where, and no door of a cabinet.
  if (unit?.word === 'front') return undefined;
  // "lead paint was found" speaks of lead.
  if (/^paint/.test(unit?.word ?? '') && units[at - 1]?.word === 'lead') return undefined;
  // "The walls were all repainted": said of the walls.
  if (/^(re-?)?painted$/.test(unit?.word ?? '') && isAfterCopula(units, at)) return undefined;
  // "the pump on the pool", "pool equip."
  if (
    /^(pump|equipment|equip|filter|heater)$/.test(unit?.word ?? '') &&
    unit?.senses.length === 0 &&
    aboutPool(units)
  )
    return 'pool-equipment';
  // "mature oaks", "under the pines": trees.
  if (TREES.test(unit?.word ?? '') && !has(units[at + 1], 'thing')) return undefined;
  // "The baths I tiled myself": a deed.
  if (
    /^(tiled|carpeted|paneled|panelled|shingled|bricked|plastered|drywalled|paved)$/.test(unit?.word ?? '') &&
    BY_ONE.test(units[at - 1]?.word ?? '')
  )
    return undefined;
  // "well known", "well planned": an adverb.
  if (unit?.word === 'well' && isAdverb(units, at)) return undefined;
  // "two units, both 2021": machines, and no dwellings.
  if (/^units?$/.test(unit?.word ?? '') && isCountedOrMade(units[at - 1])) return undefined;
  const things = unit?.senses.filter((sense) => sense.tag === 'thing') ?? [];
  // Words such as "hardwoods" or "granite" are things where none follows.
  const meant = things[0]?.id ?? unit?.senses.find((sense) => sense.head !== undefined)?.head;
  return meant;
}

const BY_ONE = /^(i|we|he|she|they|have|has|had|who)$/;

const TREES = /^(oaks|pines|maples|cedars|redwoods|walnuts|cherries|hickories|cypresses|firs)$/;

/** "well known", "works well", "as well": how, and no well. */
const isAdverb = (units: readonly Unit[], at: number): boolean =>
  (HOW.test(units[at + 1]?.word ?? '') && !OF_WELLS.test(units[at + 1]?.word ?? '')) ||
  /^(as|very|so|works?|lives?|flows?|runs?|treated)$/.test(units[at - 1]?.word ?? '');

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
  if (!/^(wall|ceiling)$/.test(senseOf(subject ?? units[at], 'thing')?.id ?? '')) return false;
  const before = units[has(units[at - 1], 'all') || /ly$/.test(units[at - 1]?.word ?? '') ? at - 2 : at - 1];
  return /^(is|are|was|were|been)$/.test(before?.word ?? '');
};

const aboutPool = (units: readonly Unit[]): boolean =>
  units.some((unit) => /^(pool|spa)$/.test(senseOf(unit, 'thing')?.id ?? ''));

const isCountedOrMade = (unit: Unit | undefined): boolean =>
  unit?.number?.kind === 'count' || has(unit, 'class') || has(unit, 'newness');

function isPredicate(units: readonly Unit[], at: number, last: Head | undefined): boolean {
  const unit = units[at];
  if (last === undefined || unit === undefined || (has(unit, 'thing') && !has(unit, 'class'))) return false;
  const between = units.slice(last.at + 1, at);
  if (
    between.some(
      (one, index) =>
        (isBoundary(one) && !(index === 0 && /^[:?=]$/.test(one.sign ?? ''))) ||
        (has(one, 'thing') && !has(one, 'class') && senseOf(one, 'thing')?.id !== last.thing),
    )
  )
    return false;
  // "Roof slate", "Basement stone": a key and its value.
  if (between.length === 0 && opens(units, last.start) && !has(units[at + 1], 'thing'))
    return unit.senses.some(
      ({ tag, group }) => tag === 'class' && group !== undefined && canBeSaidOf(group, last.thing),
    );
  if (between.length === 1 && /^[:?=]$/.test(between[0]?.sign ?? ''))
    return unit.senses.some(
      ({ tag, group }) => tag === 'class' && group !== undefined && canBeSaidOf(group, last.thing),
    );
  if (
    !between.some(
      (one) =>
        PREDICATE.test(one.word) || one.word === 'of' || (last.thing === 'fireplace' && one.word === 'with'),
    )
  )
    return false;
  return unit.senses.some(
    ({ tag, group }) => tag === 'class' && group !== undefined && canBeSaidOf(group, last.thing),
  );
}

const PREDICATE = /^(is|are|was|were|in|be|been|has|have)$/;

/** The index of a thing that this one only describes: directly behind it, or behind a few words of description. */
function followingThing(units: readonly Unit[], at: number): number | undefined {
  const soft = !has(units[at], 'thing') || has(units[at], 'newness') || has(units[at], 'class');
  for (let next = at + 1; next <= at + (soft ? 4 : 2); next++) {
    const unit = units[next];
    if (unit === undefined || unit.sign !== undefined || unit.number !== undefined) return undefined;
    if (has(unit, 'thing') || (unit.senses.some(({ head }) => head !== undefined) && !soft)) {
      const id = senseOf(unit, 'thing')?.id;
      if (id === undefined) return undefined;
      if (next > at + 1 && !soft) return undefined;
      // "3 bedroom, 2 bath home": the rooms are counted, and describe nothing.
      if (id === 'house' && isCountedRoom(units, at)) return undefined;
      return fits(units[at], id) ? next : undefined;
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
function fits(unit: Unit | undefined, id: string): boolean {
  const classes = unit?.senses.filter((sense) => sense.tag === 'class') ?? [];
  if (classes.some(({ group }) => group !== undefined && canBeSaidOf(group, id))) return true;
  if (has(unit, 'thing'))
    return (
      !(thing(id).room !== undefined && thing(senseOf(unit, 'thing')?.id ?? id).room === undefined) ||
      has(unit, 'newness')
    );
  return false;
}
