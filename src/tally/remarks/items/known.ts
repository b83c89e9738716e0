/** What a draft is held against: the checked house, what was worked out of it, and its facts as a flat list. */
import type { FactPath } from '../../../diagnostics/fact-path.js';
import type { House } from '../../../facts/house.js';
import type { Tally } from '../../tally.js';
import { type Item, itemsOf } from './items.js';

export interface Known {
  readonly house: House;
  readonly tally: Pick<Tally, 'areas' | 'ages' | 'asOf'>;
  readonly items: readonly Item[];
  /** YYYY-MM-DD that ages are counted to. */
  readonly asOf: string;
  /** The day it was offered; else the as-of day. "New" is judged at it. */
  readonly offered: string;
  readonly byThing: Map<string, readonly Item[]>;
  /** All but works: what is there. */
  readonly standing: readonly Item[];
  /** Of the facts of a thing, those that a phrase means that names no place. */
  readonly inHouse: Map<string, readonly Item[]>;
}

/** One house is read once, however many drafts are held against it. */
const read = new WeakMap<House, Known>();

export function knownOf(house: House, tally: Known['tally']): Known {
  const before = read.get(house);
  if (before !== undefined && before.tally === tally) return before;
  const items = itemsOf(house);
  const known: Known = {
    house,
    tally,
    items,
    standing: items.filter(({ kind }) => kind !== 'work'),
    asOf: tally.asOf,
    offered: house.house.listed?.earliest ?? tally.asOf,
    byThing: new Map(),
    inHouse: new Map(),
  };
  read.set(house, known);
  return known;
}

/** A fact that a verdict rests on, in words. */
export interface FactSaid {
  readonly path: FactPath;
  readonly words: string;
  /** Ids of the papers and photos behind it. */
  readonly evidence: readonly string[];
}

export type Verdict = 'backed' | 'contradicted' | 'wider' | 'no-fact' | 'opinion';

/** How a claim stands, and why. */
export interface Judgement {
  readonly verdict: Verdict;
  /** Id of the rule that decided it. */
  readonly rule: string;
  readonly because: string;
  readonly facts: readonly FactSaid[];
  /** What is so instead, of a figure or of another kind; words that fit in its place are found by `mend`. */
  readonly instead?: string | undefined;
}

export interface Finding extends Judgement {
  /** UTF-16 offsets in the draft. */
  readonly from: number;
  readonly to: number;
  /** The draft's words. */
  readonly says: string;
}
