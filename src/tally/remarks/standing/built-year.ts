/** The year that the house was built, held against the folder's. */
import { printDate } from '../../../facts/date.js';
import type { Judgement, Known } from '../items/known.js';
import { has, isBoundary, senseOf, type Unit } from '../words/units.js';
import { signAt, wordAt } from './beside.js';

export const BUILT = /^(built|blt|constructed|erected|build|born|completed)( in)?$/;
/** Said of a job as well as of a house: "Completed November 2025 by the sellers". */
const OF_A_JOB = /^completed( in)?$/;

export function isBuilt(units: readonly Unit[], at: number): boolean {
  // "Year: 1962" by itself
  if (at === 2 && /^(year|yr|vintage|age)$/.test(wordAt(units, 0)) && /^[:=]$/.test(signAt(units, 1)))
    return true;
  if (isBuiltBy(units, at)) return true;
  const job = units.slice(Math.max(0, at - 3), at).some(({ word }) => OF_A_JOB.test(word));
  if (job && !units.slice(0, at).some((unit) => senseOf(unit, 'thing')?.id === 'house')) return false;
  const back = has(units[at - 1], 'determiner') ? at - 1 : at;
  const [before, beforeIt] = [wordAt(units, back - 1), wordAt(units, back - 2)];
  if (
    /^[:=]$/.test(signAt(units, at - 1)) &&
    (BUILT.test(wordAt(units, at - 2)) || wordAt(units, at - 2) === 'year built')
  )
    return true;
  if (BUILT.test(wordAt(units, back - 3)) && before === 'in' && beforeIt === 'back')
    return !hasThingBefore(units, at);
  if (
    BUILT.test(before) ||
    (BUILT.test(beforeIt) && (CIRCA.test(before) || /^(in|about|around|from|to|back|way)$/.test(before)))
  )
    return !hasThingBefore(units, at);
  // "c. 1955" by itself
  if (CIRCA.test(wordAt(units, at - 1)) && at <= 2 && units.length <= at + 2) return true;
  if (
    DATING.test(wordAt(units, at - 1)) ||
    (DATES.test(wordAt(units, at - 2)) && /^(to|from|back)$/.test(wordAt(units, at - 1)))
  )
    return !hasOwner(units, at);
  const next = units[at + 1];
  if (next === undefined) return false;
  if (
    BEAUTY.test(next.word) &&
    !/^(one|place|dream|built|build)$/.test(next.word) &&
    (at === 0 || has(units[at - 1], 'determiner') || isBoundary(units[at - 1]))
  )
    return true;
  if (/^(built|build|construction|vintage|era)$/.test(next.word)) return true;
  const isWithin = /^(in|since)$/.test(wordAt(units, at - 1));
  if (has(next, 'storeys') || next.senses.some(({ tag, id }) => tag === 'thing' && id === 'house'))
    return !has(units[at - 1], 'newness') && !isWithin;
  const second = units[at + 2];
  return (
    (next.senses.length === 0 || has(next, 'opinion')) &&
    next.sign === undefined &&
    (second?.senses.some(({ tag, id }) => (tag === 'thing' && id === 'house') || tag === 'storeys') ??
      false) &&
    !isWithin
  );
}

/** "Built by the Joneses in 1992": nothing that a table knows stands between. */
const isBuiltBy = (units: readonly Unit[], at: number): boolean =>
  /^(built|constructed|erected)$/.test(wordAt(units, 0)) &&
  units[1]?.word === 'by' &&
  units[at - 1]?.word === 'in' &&
  at < 8 &&
  !units.slice(1, at).some((unit) => has(unit, 'thing') || isBoundary(unit));

/** "c. 1955": the stop is a part of the word. */
const CIRCA = /^(circa|ca|c)( \.)?$/;

const DATES = /^(dates|dating|date|dated)$/;
const DATING = /^(dates|dating) (back )?(to|from)$/;

/** "The furnace dates from 2009". */
const hasOwner = (units: readonly Unit[], at: number): boolean => {
  const before = units.slice(Math.max(0, at - 9), at);
  const subject = before.slice(before.findLastIndex((unit) => isBoundary(unit)) + 1);
  // "A pest clearance dates from 2022": of what no table knows.
  return (
    before.some((unit) => has(unit, 'class') || !['house', undefined].includes(senseOf(unit, 'thing')?.id)) ||
    (subject.some(isUnknownNoun) && !subject.some((unit) => senseOf(unit, 'thing')?.id === 'house'))
  );
};

const isUnknownNoun = ({ senses, word, number, sign }: Unit): boolean =>
  senses.length === 0 &&
  number === undefined &&
  sign === undefined &&
  word.length > 3 &&
  !MAY_MEAN_THE_HOUSE.test(word);

const MAY_MEAN_THE_HOUSE =
  /^(this|that|which|dates?|dating|back|from|originally|proudly|gracefully|lovingly|beauty|gem|charmer|stunner|classic|jewel|treasure|lady|structure|building|original|part|main|construction)$/;

/** What is built by itself, at another time than the house. */
const OWN_YEAR =
  /^(pool|spa|pool-deck|addition|deck|porch|patio|shed|barn|garage|carport|fence|sunroom|workshop|pergola|gazebo|retaining-wall|dock|basement|kitchen|bath|guest-house|outbuilding)$/;

/** "garage built in 2005", "the pool is heated and was built in 2010": no year of the house. */
function hasThingBefore(units: readonly Unit[], at: number): boolean {
  let built = at - 1;
  while (built > at - 4 && !BUILT.test(wordAt(units, built))) built--;
  const subject = has(units[built - 1], 'copula') ? subjectBefore(units, built - 1) : undefined;
  if (subject !== undefined) return OWN_YEAR.test(subject);
  for (let back = at - 1; back >= Math.max(0, at - 6); back--) {
    const unit = units[back];
    if (unit?.sign === ',') return OWN_YEAR.test(thingAt(units, back - 1) ?? '');
    if (unit?.sign !== undefined) return false;
    const named = senseOf(unit, 'thing')?.id;
    if (named !== undefined) return named !== 'house';
  }
  return false;
}

const thingAt = (units: readonly Unit[], at: number): string | undefined => senseOf(units[at], 'thing')?.id;

/** The first thing of the clause that a verb ends. */
function subjectBefore(units: readonly Unit[], verb: number): string | undefined {
  let first: string | undefined;
  for (let back = verb - 1; back >= 0 && !isBoundary(units[back]); back--)
    if (!/^(in|of|on|at)$/.test(wordAt(units, back - 1))) first = thingAt(units, back) ?? first;
  return first;
}

const BEAUTY =
  /^(beauty|gem|charmer|stunner|build|built|construction|classic|jewel|beaut|cutie|dream|place|one)$/;
const SPOKEN_OF = /^(this|that|a|an|the|our|your|my)$/;

/** "This five-year-young beauty", "the house is only 12 years old": an age of the house. */
export function isHouseAge(units: readonly Unit[], at: number, owner: string | undefined): boolean {
  if (owner !== undefined) return owner === 'house';
  const praised =
    BEAUTY.test(wordAt(units, at + 1)) || (has(units[at + 1], 'opinion') && !has(units[at + 2], 'thing'));
  return praised && SPOKEN_OF.test(wordAt(units, at - 1));
}

/** "Built less than twenty years ago". */
export function isBuiltAgo(units: readonly Unit[], at: number): boolean {
  const back = units.slice(Math.max(0, at - 4), at).findLastIndex(({ word }) => BUILT.test(word));
  return back >= 0 && !hasThingBefore(units, at);
}

/** An age, held against the year that the house was built; a year of tolerance as for other things. */
export function judgeHouseAge(known: Known, years: number, hedge: string | undefined): Judgement {
  const year = Number(known.asOf.slice(0, 4)) - years;
  const open = hedge === 'under' ? Number(known.asOf.slice(0, 4)) : year + 1;
  return judgeBuilt(known, hedge === 'over' ? 0 : year - 1, hedge === 'over' ? year : open, hedge);
}

export function judgeBuilt(known: Known, first: number, last: number, hedge: string | undefined): Judgement {
  const rule = 'date.built';
  const { built } = known.house.house;
  if (built.value === undefined)
    return { verdict: 'no-fact', rule, because: 'when it was built is not known', facts: [] };
  const words = printDate(built.value);
  const fact = {
    path: ['house', 'built'],
    words: `built ${words}${built.from === undefined ? '' : `, from the ${built.from}`}`,
    evidence: built.evidence,
  };
  const slack = hedge === 'about' || built.value.about ? 2 : 0;
  const fits =
    Number(built.value.earliest?.slice(0, 4) ?? 0) - slack <= last &&
    Number(built.value.latest?.slice(0, 4) ?? 9999) + slack >= first;
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule,
    because: `the folder says ${words}`,
    facts: [fact],
    instead: fits ? undefined : `built ${words}`,
  };
}
