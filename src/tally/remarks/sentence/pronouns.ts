/** "It was replaced in 2016", "the one in the hall", "Replaced in 2021.": words that stand for what was spoken of. */
import type { Spoken } from '../read-sentence.js';
import { has, senseOf, type Unit, wordOf } from '../words/units.js';

const IT = /^(it|they|both|these|those|it's|they're)$/;
const ONE = /^(one|ones|those|that)$/;
const WHERE = /^(in|at|off|on|of|upstairs|downstairs|below|above|over|by|next)$/;
/** Deeds to a thing that a sentence of its own can tell: "Replaced in 2021." */
const DEED_OF_IT = /^(replaced|repaired|serviced)$/;
const ADVERB = /ly$|^(just|also|then|both|all|was|were|since|last)$/;

export const opensWithPronoun = (units: readonly Unit[]): boolean => IT.test(wordOf(units[0]));

/** The units with a thing for each such word. */
export function withPronoun(units: Unit[], before: Spoken | undefined): Unit[] {
  const named = withOnes(units, before);
  const [first, second] = named;
  if (before === undefined || first === undefined) return named;
  if (opensWithPronoun(named)) {
    const said = has(second, 'copula') || has(second, 'newness') || /'/.test(first.word);
    return said ? [standFor(first, before.thing), ...named.slice(1)] : named;
  }
  return before.alone && tellsDeed(named)
    ? [standFor({ ...first, to: first.from }, before.thing), ...named]
    : named;
}

const standFor = (unit: Unit, id: string): Unit => ({
  ...unit,
  senses: [{ tag: 'thing', id }],
  number: undefined,
  sign: undefined,
  word: 'it',
});

/** Nothing is named in it, and it begins with a deed. */
function tellsDeed(units: readonly Unit[]): boolean {
  const at = units.findIndex(({ word }) => !ADVERB.test(word));
  const deed = senseOf(units[at], 'newness');
  return (
    deed !== undefined &&
    at < 3 &&
    DEED_OF_IT.test(deed.id) &&
    !units.some((unit) => has(unit, 'thing') || unit.senses.some(({ head }) => head !== undefined)) &&
    !units.slice(0, at + 2).some(({ sign }) => sign === ':')
  );
}

/** "the hall bath was redone, and the one upstairs too": the last thing that was named before. */
function withOnes(units: Unit[], before: Spoken | undefined): Unit[] {
  return units.some(({ word }) => ONE.test(word))
    ? units.map((unit, at) => {
        if (!ONE.test(unit.word) || !WHERE.test(wordOf(units[at + 1]))) return unit;
        const joint = /^(one|ones)$/.test(unit.word);
        if (joint && !/^(the|that|this|other|second)$/.test(wordOf(units[at - 1]))) return unit;
        if (!joint && !isClauseStart(units[at - 1])) return unit;
        const id = lastThing(units, at) ?? (at <= 2 ? before?.thing : undefined);
        return id === undefined ? unit : standFor(unit, id);
      })
    : units;
}

const isClauseStart = (unit: Unit | undefined): boolean =>
  unit === undefined || unit.sign !== undefined || /^(and|but|while|unlike)$/.test(unit.word);

/** The nearest thing before it that doesn't say where another one is. */
function lastThing(units: readonly Unit[], at: number): string | undefined {
  for (let back = at - 1; back >= 0; back--) {
    const id = senseOf(units[back], 'thing')?.id;
    if (id === undefined) continue;
    let first = back;
    while (
      first > back - 4 &&
      (has(units[first - 1], 'determiner') ||
        has(units[first - 1], 'place') ||
        has(units[first - 1], 'thing'))
    )
      first--;
    if (!has(units[first - 1], 'preposition') && !/^off/.test(wordOf(units[first - 1]))) return id;
  }
  return undefined;
}
