/** Things that no table knows, held against the list of what stays. */

import type { Finding, Known } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { judgeConvey } from '../judge/judge-conveys.js';
import type { Find } from '../read-sentence.js';
import type { Sense } from '../words/lexicon.js';
import { has, isBoundary, senseOf, type Unit } from '../words/units.js';
import { boundsOf, signAt } from './beside.js';

/** Units on either side in which the thing is looked for. */
const FAR = 12;

/** "Laundry: machines included." */
const ofLaundry = (units: readonly Unit[], words: string): boolean =>
  /\b(machines?|pair|set|units?)\b/i.test(words) &&
  units.some((unit) => unit.senses.some(({ tag, id }) => tag === 'thing' && id === 'laundry'));

const SMALL =
  /^(with|that|this|from|over|into|the|and|all|will|seller|house|home|room|floor|rooms|floors|window|door|wall|left|photos|photo)$/;

const stem = (word: string): string => word.replace(/(es|s)$/, '');

/** Words of an entry of the list by which a draft may name it. */
const namesIn = (what: string): readonly string[] =>
  what
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 3 && !SMALL.test(word))
    .map(stem);

const GOES =
  /^(goes|go|leaves|leave|comes|come|travels?|moves?|is|are|was|were|will|won't|doesn't|don't|does|do)$/;

/** "Blinds stay, swing set goes": a verb of its own behind it. */
const goesByItself = (units: readonly Unit[], at: number): boolean =>
  [units[at + 1], units[at + 2]].some((unit) => GOES.test(unit?.word.split(' ')[0] ?? '')) &&
  !isBoundary(units[at + 1]);

/** What ends the list that such a verb heads. */
const ends = (unit: Unit): boolean =>
  has(unit, 'copula') || has(unit, 'verb') || has(unit, 'newness') || has(unit, 'negation');

/**
 * "What stays: washer, fridge, the potted citrus": members of a list that no table knows. Of each entry of the
 * folder's list, where its words stand behind such a verb, with nothing but a list between.
 */
export function conveyedInLists(
  known: Known,
  units: readonly Unit[],
  findings: readonly Finding[],
  find: Find,
): void {
  const verbs = units.flatMap((unit, index) => {
    const sense = unit.aside === undefined ? senseOf(unit, 'convey') : undefined;
    return sense === undefined ? [] : [{ index, sense }];
  });
  if (verbs.length === 0) return;
  for (const { what, stays } of known.house.conveys) {
    if (stays === 'not known') continue;
    const names = namesIn(what);
    const at = units.findIndex(
      (unit) =>
        unit.aside === undefined &&
        unit.word.split(' ').some((word) => word.length > 3 && names.includes(stem(word))),
    );
    const unit = units[at];
    const verb = verbs.findLast(({ index }) => index < at);
    if (unit === undefined || verb === undefined || units.slice(verb.index + 1, at).some(ends)) continue;
    // "The pots come with us, the poles are yours": its own verb stands behind it.
    if (units.slice(at + 1).some((one) => has(one, 'convey')) || goesByItself(units, at)) continue;
    const taken = findings.some(
      ({ rule, from, to }) => rule.startsWith('conveys') && from < unit.to && to > unit.from,
    );
    if (taken) continue;
    const id = conveyIdOf(verb.sense, has(units[verb.index - 1], 'negation'));
    find(unit.from, unit.to, judgeConvey(known, [], { id, things: [], words: unit.word, all: false }));
  }
  systemsInLists(known, units, findings, find);
}

/** What does not stay goes. */
const conveyIdOf = ({ id }: Sense, denied: boolean): string => (id === 'stays' && denied ? 'goes' : id);

/** "Sellers are leaving the blinds, the shed and the washer": machines in such a list, by what the folder says of each. */
function systemsInLists(
  known: Known,
  units: readonly Unit[],
  findings: readonly Finding[],
  find: Find,
): void {
  // What the last verb says of each member behind it.
  let said: string | undefined;
  for (const [at, unit] of units.entries()) {
    const sense = senseOf(unit, 'convey');
    if (sense !== undefined) {
      said = unit.aside === undefined ? conveyIdOf(sense, has(units[at - 1], 'negation')) : undefined;
      continue;
    }
    // A sentence of its own, or a place, ends the list.
    if (ends(unit) || has(unit, 'preposition') || /^[.;:!?(]$/.test(signAt(units, at))) said = undefined;
    const id = senseOf(unit, 'thing')?.id;
    if (said === undefined || id === undefined || unit.aside !== undefined) continue;
    if (units.slice(at + 1).some((one) => has(one, 'convey')) || goesByItself(units, at)) continue;
    const systems = itemsFor(known, id).filter(
      ({ kind, conveys }) => kind === 'system' && conveys !== undefined,
    );
    const taken = findings.some(
      ({ rule, from, to }) => rule.startsWith('conveys') && from < unit.to && to > unit.from,
    );
    if (systems.length === 0 || taken) continue;
    find(
      unit.from,
      unit.to,
      judgeConvey(known, systems, { id: said, things: [id], words: unit.word, all: false }),
    );
  }
}

/** "Wine cooler stays", "leave the citrus pots": things that no table knows, held against the list of what stays. */
export function conveyed(
  known: Known,
  units: readonly Unit[],
  text: string,
  findings: readonly Finding[],
  find: Find,
): void {
  for (const [at, unit] of units.entries()) {
    const sense = senseOf(unit, 'convey');
    if (sense === undefined || unit.aside !== undefined) continue;
    if (
      findings.some(
        ({ rule, from, to }) => rule.startsWith('conveys') && from < unit.to + 30 && to > unit.from - 30,
      )
    )
      continue;
    let [low, high] = [at, at];
    // "Everything stays except the bench": two verbs, each with what stands beside it.
    const stops = (beside: Unit | undefined): boolean => isBoundary(beside) || has(beside, 'convey');
    while (low > at - FAR && !stops(units[low - 1])) low--;
    while (high < at + FAR && !stops(units[high + 1])) high++;
    const clause = units.slice(low, high + 1);
    const [from, to] = boundsOf(clause);
    const negated = clause.some((one) => has(one, 'negation'));
    const judgement = judgeConvey(known, [], {
      id: conveyIdOf(sense, negated),
      things: ofLaundry(units, text.slice(from, to)) ? ['laundry-pair'] : [],
      words: text.slice(from, to),
      all: false,
    });
    if (judgement.facts.length > 0) find(from, to, judgement);
  }
}
