/** The year that the house was built, held against the folder's. */
import { printDate } from '../../facts/date.js';
import type { Judgement, Known } from './known.js';
import { has, senseOf, type Unit } from './units.js';

export const BUILT = /^(built|constructed|erected|build)( in)?$/;

export function isBuilt(units: readonly Unit[], at: number): boolean {
  const back = has(units[at - 1], 'determiner') ? at - 1 : at;
  const before = [units[back - 1], units[back - 2]].map((unit) => unit?.word ?? '');
  if (
    /^[:=]$/.test(units[at - 1]?.sign ?? '') &&
    (BUILT.test(units[at - 2]?.word ?? '') || /^year built$/.test(units[at - 2]?.word ?? ''))
  )
    return true;
  if (
    BUILT.test(before[0] ?? '') ||
    (BUILT.test(before[1] ?? '') && /^(in|circa|about|around|c|from|to)$/.test(before[0] ?? ''))
  )
    return !hasThingBefore(units, at);
  // "c. 1955" by itself
  if (
    /^(circa|ca|c)$/.test(units[at - 1]?.word ?? units[at - 2]?.word ?? '') &&
    at <= 2 &&
    units.length <= at + 2
  )
    return true;
  const next = units[at + 1];
  if (next === undefined) return false;
  if (/^(built|build|construction|vintage|era)$/.test(next.word)) return true;
  if (has(next, 'storeys') || next.senses.some(({ tag, id }) => tag === 'thing' && id === 'house'))
    return !has(units[at - 1], 'newness') && !/^(in|since)$/.test(units[at - 1]?.word ?? '');
  const second = units[at + 2];
  return (
    (next.senses.length === 0 || has(next, 'opinion')) &&
    next.sign === undefined &&
    (second?.senses.some(({ tag, id }) => (tag === 'thing' && id === 'house') || tag === 'storeys') ??
      false) &&
    !/^(in|since)$/.test(units[at - 1]?.word ?? '')
  );
}

/** "garage built in 2005" is no year of the house. */
function hasThingBefore(units: readonly Unit[], at: number): boolean {
  for (let back = at - 1; back >= Math.max(0, at - 6); back--) {
    const unit = units[back];
    if (unit?.sign !== undefined) return false;
    const named = senseOf(unit, 'thing')?.id;
    if (named !== undefined) return named !== 'house';
  }
  return false;
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
