/** A draft with a stretch of it in brackets, and things of a small house: what the tests of mending look at. */
import type { Item } from '../../src/tally/remarks/items/items.js';
import { type Finding, type Known, knownOf } from '../../src/tally/remarks/items/known.js';
import { type Stretch, stretchOf } from '../../src/tally/remarks/mend/stretch.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

/** "on a [quarter acre] of trees": the text without brackets, and where they stood. */
export function bracketed(draft: string): {
  readonly text: string;
  readonly from: number;
  readonly to: number;
} {
  const [from, to] = [draft.indexOf('['), draft.indexOf(']') - 1];
  if (from < 0 || to < from) throw new Error(`no stretch in brackets: ${draft}`);
  return { text: draft.replace('[', '').replace(']', ''), from, to };
}

export function stretchIn(draft: string): Stretch {
  const { text, from, to } = bracketed(draft);
  return stretchOf(text, from, to);
}

/** A house that was bought in 2010, and what was worked out of it for 20 November 2026. */
export function knownFrom(spec: PartialSpec): Known {
  const house = houseFrom({ ...spec, house: { bought: '2010-05-01', ...spec.house } });
  return knownOf(house, deriveTally(house, '2026-11-20').tally);
}

export type SystemWords = NonNullable<PartialSpec['systems']>[number];

/** The item of a house's one system; a furnace, where nothing else is said. */
export function itemOf(system: Partial<SystemWords>, more: PartialSpec = {}): Item {
  const { items } = knownFrom({ ...more, systems: [{ id: 'it', is: 'furnace', ...system }] });
  const found = items.find(({ kind }) => kind === 'system');
  if (found === undefined) throw new Error('the house has no such thing');
  return found;
}

/** Things, each named for how it stands. */
export const THINGS = {
  'of 2009': { is: 'furnace', installed: '2009' },
  'of 2026': { is: 'furnace', installed: '2026-04', did: 'replaced' },
  'of 2009 or 2010': { is: 'furnace', installed: '2009/2010' },
  'of 2012 to 2016': { is: 'furnace', installed: '2012/2016' },
  'of about 1991': { is: 'furnace', installed: '1991~' },
  'of 1990 or before': { is: 'furnace', installed: '../1990' },
  'of 1990 or after': { is: 'furnace', installed: '1990/..' },
  'of March 2019 or before': { is: 'furnace', installed: '../2019-03-04' },
  'of 2008': { is: 'furnace', made: '2008', installed: '2026', did: 'new' },
  'second-hand': { is: 'range', installed: '2026-04', did: 'new', note: 'second-hand' },
  'refinished in 2026': { is: 'tub', installed: '2026', did: 'refinished' },
  moved: { is: 'furnace', did: 'moved' },
  'only serviced': { is: 'furnace', did: 'serviced', kept: true },
  'only cleaned': { is: 'furnace', did: 'cleaned' },
  'left as found': { is: 'furnace', kept: true },
  'no date': { is: 'furnace' },
} as const satisfies Record<string, Partial<SystemWords>>;
export type Thing = keyof typeof THINGS;

/** A kitchen with two new finishes and old cabinets. */
export const KITCHEN: PartialSpec = {
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  rooms: [
    {
      id: 'kitchen',
      name: 'Kitchen',
      level: 'main',
      use: 'kitchen',
      finishes: [
        { on: 'floor', what: 'oak strip', did: 'new', done: '2026-04' },
        { on: 'counter', what: 'quartz', did: 'new', done: '2026-04' },
        { on: 'cabinets', what: 'plywood boxes', kept: true },
      ],
    },
  ],
};

export const houseOf = (...things: readonly Thing[]) =>
  knownFrom({ systems: things.map((thing, at) => ({ id: `it-${at}`, ...THINGS[thing] })) });

/** A claim that does not hold, of which the test tells only what it is about. */
export const findingOf = (words: Partial<Finding>): Finding => ({
  from: 0,
  to: 0,
  says: '',
  verdict: 'contradicted',
  rule: 'test',
  because: 'the judge’s words',
  facts: [],
  ...words,
});
