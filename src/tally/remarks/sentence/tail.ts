/** Which words behind a thing still say something of it. */

import { has, isBoundary, senseOf, type Unit, wordOf } from '../words/units.js';
import { isAttributive, isPlainWord } from '../words/word-kinds.js';
import { isAgent } from './agents.js';
import type { Head } from './phrase.js';

/** Units behind a head that say something of it. */
export function tailOf(units: readonly Unit[], head: Head, next: Head | undefined): number[] {
  const end = next === undefined ? units.length : next.start;
  const found: number[] = [];
  let commas = 0;
  for (let at = head.at + 1; at < end; at++) {
    const unit = units[at];
    if (unit === undefined || (unit.aside !== undefined && units[head.at]?.aside === undefined)) break;
    // "stucco (south walls) repaired": behind the bracket it goes on with what stands before it.
    if (unit.sign === ')' && opensInBracket(units, head)) break;
    // "… and hired out the electrical", "… and an electrician did the panel": said of what follows.
    if (headsNext(units, at)) break;
    if (has(unit, 'class') && UNDER.test(wordOf(units[at - 1]))) continue;
    // "windows upstairs, while the main floor …": another thing is spoken of.
    if (MEANWHILE.test(unit.word)) break;
    // "fireplace with fresh tile": new is what it comes with.
    if (isBare(unit) && WITH.test(wordOf(units[at - 1]))) continue;
    if (unit.sign === ',') {
      commas++;
      // Behind a comma only what plainly goes on with it: a year, a deed, who did it, a permit.
      if (commas > 2 || !goesOn(units, at + 1, end) || namesAnother(units, at + 1, end)) break;
      continue;
    }
    if (unit.sign === '—' || unit.sign === ':' || unit.sign === '?' || unit.sign === '=') {
      if (
        !goesOn(units, at + 1, end) &&
        !(at === head.at + 1 && unit.sign !== '—' && answers(units, at + 1, end)) &&
        !(at === head.at + 1 && isPlaceAlone(units, at + 1))
      )
        break;
      continue;
    }
    // "living room with original mantel": said of a thing that no table knows.
    if (
      isBare(unit) &&
      at > head.at + 1 &&
      isPlainWord(units[at + 1]) &&
      at + 1 < end &&
      !/ly$/.test(wordOf(units[at + 1]))
    )
      continue;
    if (
      isAttributive(unit) ||
      isAgent(units, at) ||
      has(unit, 'convey') ||
      has(unit, 'permit') ||
      has(unit, 'negation') ||
      has(unit, 'elsewhere')
    )
      found.push(at);
  }
  head.end = end;
  return found;
}

const MEANWHILE = /^(while|whereas|whilst|unlike)$/;

const WITH = /^(with|w|w \/|plus|including|incl|featuring)$/;

const HIRES = /^(hired|contracted|farmed|subbed|jobbed) out$/;
const DID =
  /^(did|made|put|laid|set|built|ran|hung|handled|installed|replaced|changed|added|redid|rebuilt|painted|fixed|moved|swapped|wired|plumbed)$/;

/** Who stands there is the subject of a clause of its own. */
function headsNext(units: readonly Unit[], at: number): boolean {
  const unit = units[at];
  const next = units[at + 1];
  if (unit === undefined || next === undefined || !(has(unit, 'who') || has(unit, 'trade'))) return false;
  if (HIRES.test(unit.word)) return !isBoundary(next) && !has(next, 'preposition') && next.word !== 'and';
  return (
    has(units[at - 1], 'determiner') && !/^(by|from)$/.test(wordOf(units[at - 2])) && DID.test(next.word)
  );
}

/** What lies under a thing, or was there before it, is no kind of it: "tile over cement board". */
const UNDER = /^(under|over|beneath|below|than|from|against|rather than|instead of)$/;

/** ", newer tank", ", subway splash": a description with an unknown word right behind it begins another thing. */
function namesAnother(units: readonly Unit[], at: number, end: number): boolean {
  const first = units[at];
  const next = units[at + 1];
  if (first === undefined || next === undefined || at + 1 >= end) return false;
  const describes = isBare(first) || first.number?.kind === 'count' || has(first, 'class');
  if (describes && isPlainWord(next) && !/ly$/.test(next.word) && !isAgent(units, at + 1)) return true;
  // "claw-foot replaced with …": a kind that is no kind of this thing, with a deed of its own.
  return has(first, 'class') && !has(first, 'newness') && has(next, 'newness');
}

const isBare = (unit: Unit): boolean =>
  /^(new|newer|original|old)$/.test(senseOf(unit, 'newness')?.id ?? '') ||
  (has(unit, 'class') && !has(unit, 'newness') && !has(unit, 'thing'));

/** "Bathrooms: both stripped and redone": what answers a heading, behind words of number and plain words. */
function answers(units: readonly Unit[], at: number, end: number): boolean {
  for (let index = at; index < Math.min(end, at + 5); index++) {
    const unit = units[index];
    if (unit === undefined || isBoundary(unit)) return false;
    if (has(unit, 'newness') || has(unit, 'condition') || isMeasure(unit) || unit.word === 'none')
      return true;
    if (
      !has(unit, 'preposition') &&
      !has(unit, 'both') &&
      !has(unit, 'all') &&
      !has(unit, 'copula') &&
      !has(unit, 'negation') &&
      !isPlainWord(unit) &&
      unit.word !== 'and'
    )
      return false;
  }
  return false;
}

/** "Laundry: main level", "Laundry – first floor": where it is, and nothing more. */
const isPlaceAlone = (units: readonly Unit[], at: number): boolean =>
  has(units[at], 'place') && !has(units[at], 'thing') && isBoundary(units[at + 1]);

/** A size or a rating behind plain words: "drilled at 400 ft". */
const isMeasure = (unit: Unit): boolean =>
  unit.number !== undefined && unit.number.kind !== 'count' && unit.number.kind !== 'ordinal';

const SAYS_NOTHING = /^(and|only|just|still|it|it's|which|that|they|they're|yes|barely|now|all|maybe)$/;

function goesOn(units: readonly Unit[], at: number, end: number): boolean {
  let index = at;
  while (
    index < end &&
    (has(units[index], 'hedge') ||
      has(units[index], 'preposition') ||
      has(units[index], 'determiner') ||
      has(units[index], 'copula') ||
      (units[index]?.sign === ',' && units[index - 1]?.word === 'yes') ||
      SAYS_NOTHING.test(wordOf(units[index])))
  )
    index++;
  const unit = units[index];
  if (unit === undefined || index >= end) return false;
  return (
    unit.number !== undefined ||
    has(unit, 'newness') ||
    has(unit, 'who') ||
    has(unit, 'trade') ||
    has(unit, 'permit') ||
    has(unit, 'unpermitted') ||
    has(unit, 'inspected') ||
    has(unit, 'convey') ||
    has(unit, 'class') ||
    has(unit, 'condition')
  );
}

function opensInBracket(units: readonly Unit[], head: Head): boolean {
  for (let at = head.at - 1; at >= Math.max(0, head.at - 8); at--) {
    const sign = units[at]?.sign;
    if (sign === ')') return false;
    // "big-ticket items (roof, windows) have been replaced": what stands before it is the same, in other words.
    if (sign === '(') {
      const own = senseOf(units[at - 1], 'thing');
      return own !== undefined && !/^(system|work)$/.test(own.id);
    }
  }
  return false;
}
