import type { Head } from './phrase.js';
import { canBeSaidOf, thing } from './taxonomy.js';
import { has, isBoundary, senseOf, type Unit } from './units.js';
import { walkBack } from './walk-back.js';
import { GLUE, isPlainWord } from './word-kinds.js';

export function findHeads(units: readonly Unit[]): Head[] {
  const heads: Head[] = [];
  for (const at of units.keys()) {
    const named = headThing(units, at);
    if (named === undefined) continue;
    // "the roof is metal": said of what came before, and no thing of its own.
    if (isPredicate(units, at, heads.at(-1))) continue;
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
  const things = unit?.senses.filter((sense) => sense.tag === 'thing') ?? [];
  // Words such as "hardwoods" or "granite" are things where none follows.
  const meant = things[0]?.id ?? unit?.senses.find((sense) => sense.head !== undefined)?.head;
  return meant;
}

function isPredicate(units: readonly Unit[], at: number, last: Head | undefined): boolean {
  const unit = units[at];
  if (last === undefined || unit === undefined || (has(unit, 'thing') && !has(unit, 'class'))) return false;
  const between = units.slice(last.at + 1, at);
  if (
    between.some(
      (one, index) =>
        (isBoundary(one) && !(index === 0 && /^[:?=]$/.test(one.sign ?? ''))) ||
        (has(one, 'thing') && !has(one, 'class')),
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

/** Nothing stands before it in its sentence or clause. */
const opens = (units: readonly Unit[], at: number): boolean => at === 0 || isBoundary(units[at - 1]);

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

function isPlace(units: readonly Unit[], at: number, named: string): boolean {
  const { room, level, structure } = thing(named);
  if (
    room === undefined &&
    level === undefined &&
    structure === undefined &&
    !/^(house|pantry|closet)$/.test(named)
  )
    return false;
  // "slate (house), asphalt (garage)"
  if (units[at - 1]?.sign === '(' && units[at + 1]?.sign === ')') return true;
  let counted = false;
  for (let before = at - 1; before >= Math.max(0, at - 6); before--) {
    const unit = units[before];
    if (unit === undefined || isBoundary(unit)) return false;
    if (has(unit, 'preposition')) return PLACING.test(unit.word);
    // "new carpet 2 bdrms"
    if (counted && has(unit, 'class') && unit.senses.some(({ head }) => head !== undefined)) return true;
    if (unit.number?.kind === 'count') counted = true;
    if (has(unit, 'thing') && before === at - 1) continue;
    if (
      has(unit, 'determiner') ||
      has(unit, 'all') ||
      has(unit, 'both') ||
      has(unit, 'place') ||
      has(unit, 'class') ||
      has(unit, 'newness') ||
      isPlainWord(unit) ||
      unit.number !== undefined
    )
      continue;
    return false;
  }
  return false;
}

const PLACING =
  /^(in|at|to|into|inside|on|of|through|for|off|off of|near|beside|behind|by|next to|across from|above|below|over|under|beneath)$/;

/** Beside a place, and not in it: "off the kitchen". */
const BESIDE = /^(off|off of|near|beside|behind|by|next to|across from|above|below|over|under|beneath)$/;

export function standsBeside(units: readonly Unit[], head: Head): boolean {
  for (let at = head.at - 1; at >= Math.max(0, head.start - 2); at--) {
    const unit = units[at];
    if (isBoundary(unit)) return false;
    if (has(unit, 'preposition')) return BESIDE.test(unit?.word ?? '');
  }
  return false;
}
