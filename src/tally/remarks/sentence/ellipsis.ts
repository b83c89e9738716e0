/** What is left out since it was just said: "so does the washer", "the freezer does not", "its underlayment is". */

import { has, isBoundary, type Unit, wordOf } from '../words/units.js';
import type { Attribute, Phrase } from './phrase.js';

const AUX = /^(is|are|was|were|does|do|did|has|have|will|can)$/;
const NOT_AUX =
  /^(isn't|aren't|wasn't|weren't|doesn't|don't|didn't|hasn't|haven't|won't|(is|are|was|were|does|do|did|has|have|will) not)$/;
const LIKE_IT = /^(so|as|nor|neither)$/;
const JUST_SO = /^(too|as well|likewise|also|ditto|the same)$/;
const NOTHING_MORE = /^(too|also|as well|likewise|the same|now|well|and|but|while|though|with|on)$/;

/** Whether all that is said of a thing is that it is as what was spoken of before, or that it isn't. */
function leftOut(units: readonly Unit[], head: number): 'same' | 'not' | undefined {
  let at = head - 1;
  while (at > head - 5 && units[at] !== undefined && !isBoundary(units[at]) && !isAux(units[at])) at--;
  if (isAux(units[at]) && LIKE_IT.test(wordOf(units[at - 1])) && clauseEnds(units[head + 1])) return 'same';
  const verb = units[head + 1];
  if (verb === undefined) return undefined;
  const next = units[head + 2];
  // "Blinds convey; curtains too."
  if (JUST_SO.test(verb.word) && (next === undefined || isBoundary(next))) return 'same';
  if (NOT_AUX.test(verb.word) && clauseEnds(next)) return 'not';
  if (!isAux(verb)) return undefined;
  if (next?.word === 'not' && clauseEnds(units[head + 3])) return 'not';
  return clauseEnds(next) || /^(too|also|as well|likewise|as)$/.test(wordOf(next)) ? 'same' : undefined;
}

const isAux = (unit: Unit | undefined): boolean => unit !== undefined && AUX.test(unit.word);

const clauseEnds = (unit: Unit | undefined): boolean =>
  isBoundary(unit) || NOTHING_MORE.test(wordOf(unit)) || has(unit, 'elsewhere');

/** Of what is said of a thing, what can be said of another one without saying it again. */
const predicateOf = ({ attributes }: Phrase): readonly Attribute[] =>
  attributes.filter(
    (one) =>
      one.kind === 'newness' ||
      one.kind === 'convey' ||
      one.kind === 'permit' ||
      one.kind === 'who' ||
      one.kind === 'condition' ||
      (one.kind === 'number' && /^(year|age|ago|within)$/.test(one.number.kind)),
  );

/** What isn't said to stay is said to go, and the other way round. */
const otherWay = (id: string): string => (id === 'stays' ? 'goes' : 'stays');

/** The same said of `phrase`, or its denial. */
function filledIn(phrase: Phrase, said: readonly Attribute[], how: 'same' | 'not'): Phrase {
  const copies = said.map((one): Attribute => {
    const shared = { ...one, before: true, shared: true, negated: how === 'not' };
    return how === 'not' && shared.kind === 'convey'
      ? { ...shared, id: otherWay(shared.id), negated: false }
      : shared;
  });
  return { ...phrase, attributes: [...phrase.attributes, ...copies] };
}

/** Fills in what the phrases of a sentence leave out, from those before it or from the sentence before; and what was said last. */
export function withLeftOut(
  units: readonly Unit[],
  phrases: readonly Phrase[],
  before: readonly Attribute[],
): { readonly phrases: readonly Phrase[]; readonly said: readonly Attribute[] } {
  let said = before;
  let subject: Phrase | undefined;
  let object: Phrase | undefined;
  const filledPhrases = phrases.map((phrase) => {
    const own = predicateOf(phrase);
    const how = phrase.place || own.length > 0 ? undefined : leftOut(units, phrase.at);
    let filled = phrase;
    // "The baths have tile floors, and so does the kitchen": the kitchen has them too.
    if (
      how === 'same' &&
      object !== undefined &&
      said.length === 0 &&
      LIKE_IT.test(wordBefore(units, phrase.at))
    )
      filled = {
        ...object,
        from: phrase.from,
        to: phrase.to,
        at: phrase.at,
        rooms: [{ thing: phrase.thing, from: phrase.from, to: phrase.to }],
        attributes: object.attributes.map((one) => ({ ...one, shared: true, before: true })),
      };
    else if (how !== undefined && said.length > 0) filled = filledIn(phrase, said, how);
    if (own.length > 0) said = own;
    else if (!phrase.place && how === undefined) {
      if (subject !== undefined && /^(have|has)$/.test(wordOf(units[subject.at + 1]))) object = phrase;
      said = [];
      subject = phrase;
    }
    return filled;
  });
  return { phrases: filledPhrases, said };
}

/** The word before the verb before a thing: "so" of "so does the kitchen". */
function wordBefore(units: readonly Unit[], head: number): string {
  let at = head - 1;
  while (at > head - 5 && at >= 0 && !isAux(units[at])) at--;
  return wordOf(units[at - 1]);
}
