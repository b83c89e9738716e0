/** Which rooms and structures only say where another thing is. */
import type { Head } from '../sentence/phrase.js';
import { thing } from '../words/taxonomy.js';
import { has, isBoundary, type Unit, wordOf } from '../words/units.js';
import { isPlainWord } from '../words/word-kinds.js';

/** Nothing stands before it in its sentence or clause. */
export const opens = (units: readonly Unit[], at: number): boolean => at === 0 || isBoundary(units[at - 1]);

/** Whether a room or structure only says where another thing is: "in the kitchen". */
export function isPlace(units: readonly Unit[], at: number, named: string): boolean {
  const { room, level, structure } = thing(named);
  if (
    room === undefined &&
    level === undefined &&
    structure === undefined &&
    !/^(house|pantry|closet)$/.test(named)
  )
    return false;
  // "Laundry: basement"
  if (
    /^[:—=]$/.test(units[at - 1]?.sign ?? '') &&
    has(units[at - 2], 'thing') &&
    opens(units, at - 2) &&
    isBoundary(units[at + 1])
  )
    return true;
  // "slate (house), asphalt (garage)"
  if (units[at - 1]?.sign === '(' && units[at + 1]?.sign === ')') return true;
  if (isStartOfSpan(units, at) || isDownThe(units, at, named)) return true;
  let counted = false;
  for (let before = at - 1; before >= Math.max(0, at - 6); before--) {
    const unit = units[before];
    if (unit === undefined || isBoundary(unit)) return false;
    // "… and put in a new hall bath floor": what follows a deed is no place of what stands before.
    if (PUT.test(unit.word)) return false;
    // "Walk past the den with its oak floor into the porch": a way, and no place of the floor.
    if (/^(into|to|through|past|toward|towards)$/.test(unit.word) && opensWithWalk(units)) return false;
    if (has(unit, 'preposition')) return PLACING.test(unit.word) && !isWayOn(units, before);
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
  /^(in|at|around|to|into|inside|on|of|through|for|off|off of|near|beside|behind|by|next to|across from|above|below|over|under|beneath)$/;

/** "Floors put in, then on to the den": the text walks on, and says nothing of where. */
const isWayOn = (units: readonly Unit[], at: number): boolean =>
  (/^(to|into)$/.test(wordOf(units[at])) && WALKED.test(wordOf(units[at - 1]))) ||
  units.slice(Math.max(0, at - 3), at).some(({ word }) => WALKER.test(word));

const PUT = /^(put in|put|installed|added|laid|hung|replaced|built|swapped)$/;

const WALKER = /^(you|you'll|guests|visitors|buyers)$/;

const WALKED =
  /^(on|over|out|down|up|back|head|heads|step|walk|move|continue|stroll|leads?|leading|opens?|opening|flows?|comes?|goes?|go|get|takes?|way|through)$/;

/** "The bath down the hall": on the way there. */
const isDownThe = (units: readonly Unit[], at: number, named: string): boolean =>
  named === 'hall' && has(units[at - 1], 'determiner') && units[at - 2]?.word === 'down';

/** "From the living room into the hall": both ends say where. */
function isStartOfSpan(units: readonly Unit[], at: number): boolean {
  const from = has(units[at - 1], 'determiner') ? at - 2 : at - 1;
  const next = units[at + 1];
  return units[from]?.word === 'from' && /^(to|into|through|down|clear|all|right)$/.test(wordOf(next));
}

/** Beside a place, and not in it: "off the kitchen". */
const BESIDE = /^(off|off of|near|beside|behind|by|next to|across from|above|below|over|under|beneath)$/;

export function standsBeside(units: readonly Unit[], head: Head): boolean {
  for (let at = head.at - 1; at >= Math.max(0, head.start - 2); at--) {
    const unit = units[at];
    if (isBoundary(unit)) return false;
    if (has(unit, 'preposition')) return BESIDE.test(wordOf(unit));
  }
  return false;
}

const opensWithWalk = (units: readonly Unit[]): boolean =>
  units.slice(0, 2).some(({ word }) => WALK.test(word));

const WALK = /^(walk|step|stroll|head|wander|continue|proceed|move|come|go|enter|pass|venture|slip|follow)$/;
