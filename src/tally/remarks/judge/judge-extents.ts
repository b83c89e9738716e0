/** Sides, depths and widths that the folder gives in words: "the pool is 28 by 14 ft inside it, 3 ft to 7 ft deep". */
import type { ClaimCase } from '../claims/claim-case.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { judged } from './judged.js';

const SIDES = /(\d+(?:\.\d+)?)\s*(?:'|ft|feet|foot)?\s*(?:x|×|by)\s*(\d+(?:\.\d+)?)\s*(?:'|ft|feet|foot)?/gi;
const DEPTHS =
  /(?:(\d+(?:\.\d+)?)\s*(?:'|ft|feet|foot)?\s*(?:to|-|–)\s*)?(\d+(?:\.\d+)?)\s*(?:'|ft|feet|foot)\s+deep/gi;
const INCHES = /(\d+(?:\.\d+)?)\s*(?:-\s*)?(?:in\b|inch|")/gi;
/** Things with sides of their own, which the folder tells in the words of what stands around them. */
const HAS_SIDES = /^(pool|spa|shed|patio|deck|porch)$/;
/** Things that are sold by one width. */
const HAS_WIDTH = /^(vanity|range|cooktop|range-hood)$/;

/** The words of a fact, from where the thing is named in them: a pool deck's own size is none of the pool. */
const wordsOf = ({ what, words }: Item, id: string): string => {
  const all = `${what}; ${words}`;
  const at = all.toLowerCase().search(new RegExp(`\\b(the|a) ${id}\\b`));
  return at < 0 ? (HAS_WIDTH.test(id) ? all : '') : all.slice(at);
};

/** A pool is told of by its deck too. */
const around = ({ known, found }: ClaimCase): readonly Item[] => [
  ...new Set([...found, ...known.items.filter(({ kind }) => kind === 'structure')]),
];

export function judgeSides(one: ClaimCase, feet: readonly [number, number]): Judgement | undefined {
  const { phrase } = one;
  if (!HAS_SIDES.test(phrase.thing)) return undefined;
  const given = around(one).flatMap((item) =>
    [...wordsOf(item, phrase.thing).matchAll(SIDES)].map((match) => ({
      item,
      sides: shortAndLong(Number(match[1]), Number(match[2])),
    })),
  );
  const [first] = given;
  if (first === undefined) return undefined;
  const claimed = shortAndLong(...feet);
  const fits = given.find(({ sides }) => isSameSize(sides, claimed));
  const words = `${first.sides.long} by ${first.sides.short} ft`;
  return judged(
    fits !== undefined,
    'size.extent',
    `the folder says ${words}`,
    factsOf([(fits ?? first).item]),
    words,
  );
}

/** The two sides of what is about a rectangle, in feet. */
export interface Sides {
  readonly short: number;
  readonly long: number;
}

export const shortAndLong = (one: number, other: number): Sides => ({
  short: Math.min(one, other),
  long: Math.max(one, other),
});

/** Within half a foot, and what rounding adds. */
export const isSameSize = (one: Sides, other: Sides): boolean =>
  Math.abs(one.short - other.short) <= 0.6 && Math.abs(one.long - other.long) <= 0.6;

/** "Up to 9 feet deep": no deeper than the folder says, nor shallower than its shallow end. */
export function judgeDepth(one: ClaimCase, feet: number): Judgement | undefined {
  const { phrase } = one;
  if (!/^(pool|spa)$/.test(phrase.thing)) return undefined;
  const given = around(one).flatMap((item) =>
    [...wordsOf(item, phrase.thing).matchAll(DEPTHS)].map((match) => ({
      item,
      least: Number(match[1] ?? match[2]),
      most: Number(match[2]),
    })),
  );
  const [first] = given;
  if (first === undefined) return undefined;
  const words =
    first.least === first.most ? `${first.most} ft deep` : `${first.least} to ${first.most} ft deep`;
  return judged(
    given.some(({ least, most }) => feet >= least - 0.5 && feet <= most + 0.5),
    'size.extent',
    `the folder says ${words}`,
    factsOf([first.item]),
    words,
  );
}

/** "48-inch vanity": beside the widths that the folder gives. */
export function judgeWidth(one: ClaimCase, inches: number): Judgement | undefined {
  const { phrase, items } = one;
  if (!HAS_WIDTH.test(phrase.thing)) return undefined;
  const given = items.flatMap((item) =>
    [...wordsOf(item, phrase.thing).matchAll(INCHES)].map((match) => ({ item, width: Number(match[1]) })),
  );
  const [first] = given;
  if (first === undefined) return undefined;
  const fits = given.find(({ width }) => Math.abs(width - inches) <= 1);
  return judged(
    fits !== undefined,
    'size.extent',
    `the folder says ${first.width} in`,
    factsOf([(fits ?? first).item]),
    `${first.width}-inch ${phrase.thing}`,
  );
}
