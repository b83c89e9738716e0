/** One fact that an edition needs and the folder lacks, and the words of its hint. */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from '../facts/house.js';
import type { SystemAge } from './ages.js';
import type { AlarmPlan } from './alarms.js';
import type { Areas } from './area.js';

export type Audience = 'agent' | 'visit' | 'buyer' | 'care';

export interface Gap {
  readonly path: FactPath;
  readonly audiences: readonly Audience[];
  /** What is lacking, in a sentence without a full stop. */
  readonly lacks: string;
  /** What to do. Between double blanks stand whole lines of YAML to type. */
  readonly hint: string;
  /** Smaller is asked for more often. */
  readonly rank: number;
}

export interface GapSources {
  readonly house: House;
  readonly ages: readonly SystemAge[];
  readonly areas: Areas;
  readonly alarms: AlarmPlan;
  /** YYYY-MM-DD; the dates in hints are not after it. */
  readonly asOf: string;
}

export const EVERYONE: readonly Audience[] = ['agent', 'buyer', 'care'];
export const SALE: readonly Audience[] = ['agent', 'buyer'];
export const BUYER: readonly Audience[] = ['buyer'];

/**
 * What gaps are about, most asked-for first. Common practice, no source: what a listing can't go without, what can
 * hurt somebody, what buyers, agents and inspectors ask first, and last what only the next owner misses.
 */
const ORDER = [
  'size',
  'year built',
  'lead',
  'who measured',
  'public record',
  'big system',
  'age of a big system',
  'fuel',
  'pool',
  'alarm',
  'stair',
  'range',
  'when work was done',
  'who did it',
  'permit',
  'question',
  'dues',
  'what stays',
  'appliance',
  'other half of a photo pair',
  'hot water',
  'floor',
  'when a finish was done',
  'warranty',
  'age',
  'paint',
  'lot',
  'web address',
  'care',
] as const;

/** The rank of a gap about `topic`; `within` orders gaps of one topic, 0 to 9. */
export const rankOf = (topic: (typeof ORDER)[number], within = 0): number =>
  ORDER.indexOf(topic) * 10 + within;

/** A hint to add one of these lines to the fact, or at the top where it has none. */
export const addLine = (...lines: readonly string[]): string => `add  ${lines.join('  or  ')}`;

/** A hint to add an item to a list. */
export const addItem = (list: string, item: string): string => `add under ${list}:  - ${item}`;

/** An id that nothing in the house has yet, to be used in an item that is proposed. */
export function freeId(house: House, id: string): string {
  const { levels, rooms, stairs, structures, systems } = house;
  const taken = new Set([...levels, ...rooms, ...stairs, ...structures, ...systems].map((one) => one.id));
  let free = id;
  for (let count = 2; taken.has(free); count++) free = `${id}-${count}`;
  return free;
}
