/** How far before a thing its own words begin. */

import { canBeSaidOf } from '../words/taxonomy.js';
import { has, isBoundary, type Unit } from '../words/units.js';
import { GLUE, isAttributive, isPlainWord } from '../words/word-kinds.js';
import type { Head } from './phrase.js';

/** No thing is described by more words than this; a text of one word over and over stays quick. */
const FARTHEST = 16;

export function walkBack(units: readonly Unit[], head: Head): void {
  let seen = has(units[head.at], 'newness');
  for (let at = head.at - 1; at >= Math.max(0, head.at - FARTHEST); at--) {
    const unit = units[at];
    if (unit === undefined || (has(unit, 'convey') && !has(unit, 'copula'))) return;
    const before = units[at - 1];
    if (unit.sign !== undefined) {
      if (/^["“”*#]$/.test(unit.sign)) continue;
      // "2019: roof", "2021 – furnace"
      if (/^[:—]$/.test(unit.sign) && units[at - 1]?.number?.kind === 'year' && isBoundary(units[at - 2])) {
        head.start = at - 1;
        return;
      }
      if (
        unit.sign === '&' &&
        before !== undefined &&
        before.number === undefined &&
        isAttributive(before) &&
        seen
      ) {
        head.start = at;
        continue;
      }
      if (unit.sign === ',' && seen && joinsAdjectives(units, at)) continue;
      return;
    }
    if (has(unit, 'determiner')) {
      if (
        before !== undefined &&
        (has(before, 'all') ||
          has(before, 'both') ||
          (has(before, 'negation') && /^(without|w \/ o|minus|lacks|sans|never)$/.test(before.word)) ||
          (has(before, 'newness') && DEED_FIRST.test(before.word)))
      ) {
        head.start = at;
        continue;
      }
      head.start = at;
      return;
    }
    if (
      unit.word === 'and' &&
      // "porcelain tile and two-basin vanity": what can stand alone is a thing of its own.
      before !== undefined &&
      !STANDS_ALONE.test(before.word) &&
      before.senses.every(({ head: own }) => own === undefined) &&
      seen &&
      isAttributive(before) &&
      !has(before, 'thing')
    ) {
      head.start = at;
      continue;
    }
    // "four large and sunny bedrooms"
    if (unit.word === 'and' && isPlainWord(before) && units[at - 2]?.number?.kind === 'count') {
      head.start = at;
      continue;
    }
    if (has(unit, 'negation')) {
      head.start = at;
      continue;
    }
    if (has(unit, 'thing') && !has(unit, 'newness') && !isAdjunctClass(unit, head.thing)) {
      if (at !== head.at - 1 && !allDescribe(units, at + 1, head.at)) return;
      head.adjuncts.push(at);
      head.start = at;
      continue;
    }
    // "Roof '22 HVAC '23": a year directly behind a thing is of that one.
    if (unit.number?.kind === 'year' && has(before, 'thing') && !yearsFirst(units, at)) return;
    if (isAttributive(unit)) {
      seen = true;
      head.start = at;
      continue;
    }
    if (
      has(unit, 'preposition') ||
      has(unit, 'copula') ||
      has(unit, 'verb') ||
      has(unit, 'convey') ||
      GLUE.test(unit.word)
    )
      return;
    if (has(unit, 'elsewhere-noun') || has(unit, 'maybe-ahead') || has(unit, 'elsewhere')) return;
    head.start = at;
  }
}

/** "2022 roof 2023 furnace": its clause begins with a year. */
function yearsFirst(units: readonly Unit[], at: number): boolean {
  let first = at;
  while (first > Math.max(0, at - FARTHEST) && !isBoundary(units[first - 1])) first--;
  return units[first]?.number?.kind === 'year';
}

const STANDS_ALONE = / (tile|stone|board|plank|slab)s?$/;

const DEED_FIRST =
  /^(re|up|inst|add|paint|put|swap|sand|serv|rewir|remod|renov|laid|lay|built|fix|clean|gut|moderni|never|threw|got rid|tore|ripp|pull|toss|junk|scrap)/;

const hasThing = (units: readonly Unit[], at: number): boolean => has(units[at], 'thing');

const isAdjunctClass = (unit: Unit, id: string): boolean =>
  unit.senses.some((sense) => sense.tag === 'class' && canBeSaidOf(sense.group, id));

const allDescribe = (units: readonly Unit[], first: number, end: number): boolean =>
  units.slice(first, end).every((unit) => has(unit, 'class'));

/** "new, energy-efficient windows": before the comma stands nothing but description. */
function joinsAdjectives(units: readonly Unit[], comma: number): boolean {
  const before = units[comma - 1];
  if (before === undefined || !isAttributive(before) || has(before, 'thing')) return false;
  for (let at = comma - 1; at >= 0; at--) {
    const unit = units[at];
    if (unit === undefined || isBoundary(unit) || has(unit, 'preposition') || has(unit, 'verb')) return false;
    if (has(unit, 'determiner')) return at === 0 || !has(units[at - 1], 'preposition');
    if (hasThing(units, at) || has(unit, 'copula') || has(unit, 'convey')) return false;
    if (at === 0) return true;
  }
  return false;
}
