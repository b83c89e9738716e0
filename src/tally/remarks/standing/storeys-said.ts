import type { Unit } from '../words/units.js';
import { signAt, wordAt } from './beside.js';

const STOREYS: Readonly<Record<number, string>> = {
  1: 'one',
  1.5: 'one-and-a-half',
  2: 'two',
  2.5: 'two-and-a-half',
  3: 'three',
  3.5: 'three-and-a-half',
  4: 'four',
};

const STOREY = /^(storey|storeys|story|stories|storey count|story count)$/;

/** By itself, or as "living space". */
const LIVING = /^(finished|living|livable|heated)\b/;

/** Storeys by their name in the folder, or so many levels to live on. */
export type StoreysSaid = { readonly from: number; readonly to: number } & (
  | { readonly id: string }
  | { readonly levels: number }
);

/** "Storeys 2½", "story count: two", "three levels of finished space". */
export function storeysAt(units: readonly Unit[], at: number): StoreysSaid | undefined {
  const unit = units[at];
  const number = unit?.number;
  if (unit === undefined || number?.kind !== 'count') return undefined;
  let back = at - 1;
  while (
    units[back] !== undefined &&
    (signAt(units, back) === ':' || /^(count|no|number|of|is)$/.test(wordAt(units, back)))
  )
    back--;
  const before = units[back];
  const id = STOREYS[number.value];
  if (before !== undefined && back >= at - 3 && STOREY.test(before.word) && id !== undefined)
    return { from: before.from, to: unit.to, id };
  const next = units[at + 1];
  if (
    next === undefined ||
    !/^(finished )?(levels|floors|stories|storeys)$/.test(next.word) ||
    number.value < 2 ||
    number.value > 4
  )
    return undefined;
  const living = units.slice(at + 2, at + 6).find((one) => LIVING.test(one.word));
  return living === undefined ? undefined : { from: unit.from, to: living.to, levels: number.value };
}
