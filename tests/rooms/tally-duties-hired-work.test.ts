/** What hired people did since the purchase: which pieces count, and what is said where that is open. */
import { describe, expect, it } from 'vitest';
import { type HiredWork, hiredWork } from '../../src/tally/duties/contractor-work.js';
import type { DutyFact } from '../../src/tally/duties/duty-fact.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type Work = NonNullable<PartialSpec['work']>[number];
type System = NonNullable<PartialSpec['systems']>[number];
type Finish = NonNullable<NonNullable<PartialSpec['structures']>[number]['finishes']>[number];

const BOUGHT: PartialSpec = {
  house: { bought: '2026-01-10' },
  people: [{ id: 'firm', name: 'Some Heating' }],
};
const used = (spec: PartialSpec): DutyFact => readDutyFacts(houseFrom(spec), '2026-11-20')['contractor-used'];
const hired = (spec: PartialSpec): Partial<HiredWork>[] =>
  hiredWork(houseFrom(spec)).map(({ what, since, path, dated, permit }) => ({
    what,
    since,
    path,
    dated,
    permit,
  }));

const item = (more: Partial<Work>): Work => ({ id: 'a', what: 'roof', did: 'new', ...more });
const system = (more: Partial<System>): System => ({ id: 'f', is: 'furnace', ...more });
const finish = (more: Partial<Finish>): Finish => ({ on: 'floor', what: 'tile', ...more });
const porch = (...finishes: readonly Finish[]): PartialSpec['structures'] => [
  { id: 'back-porch', is: 'porch', finishes: [...finishes] },
];

describe('the pieces of hired work', () => {
  it('are work items, systems and finishes, in the order of the folder, each with its place, date word and permit', () => {
    const spec: PartialSpec = {
      ...BOUGHT,
      permits: [{ id: 'p', what: 'all of it', state: 'open' }],
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [
        {
          id: 'bath',
          level: 'main',
          use: 'bath',
          finishes: [finish({}), finish({ on: 'walls', by: 'firm', permit: 'p', done: '2026-04' })],
        },
      ],
      structures: porch(finish({ on: 'siding', what: 'metal', by: 'firm' })),
      systems: [
        system({ id: 'w', is: 'water heater', by: 'owner', installed: '2026-03' }),
        system({ name: 'Big furnace', by: 'firm', installed: '2026-02', permit: 'p' }),
      ],
      work: [
        item({ by: 'owner', done: '2026-05' }),
        item({ id: 'b', what: 'gutters', by: 'firm', done: '2026-05', permit: 'p' }),
      ],
    };
    expect(hired(spec)).toEqual([
      { what: 'gutters', since: 'yes', path: ['work', 1], dated: 'done', permit: 'p' },
      { what: 'Big furnace', since: 'yes', path: ['systems', 1], dated: 'installed', permit: 'p' },
      {
        what: 'Bath, walls: tile',
        since: 'yes',
        path: ['rooms', 0, 'finishes', 1],
        dated: 'done',
        permit: 'p',
      },
      {
        what: 'Back porch, siding: metal',
        since: 'not known',
        path: ['structures', 0, 'finishes', 0],
        dated: 'done',
        permit: undefined,
      },
    ]);
  });

  const own = item({ by: 'owner', done: '2026-05' });
  const furnace = system({ by: 'firm', installed: '2026-02' });
  it.each<readonly [string, System, Work, 'counts' | 'does not count']>([
    ['a system since the purchase', furnace, own, 'counts'],
    ['one on the day of the purchase', { ...furnace, installed: '2026-01-10' }, own, 'counts'],
    ['one that is older', { ...furnace, installed: '2026-01-09' }, own, 'does not count'],
    ['one that came with the house', { ...furnace, kept: true }, own, 'does not count'],
    ['one that a work item tells of', furnace, { ...own, systems: ['f'] }, 'does not count'],
    ['one that says who, and not when', system({ by: 'firm' }), own, 'counts'],
    ['one that says neither', system({}), own, 'does not count'],
    ['one since the purchase by nobody knows whom', system({ installed: '2026-02' }), own, 'does not count'],
  ])('%s %s', (_, one, work, result) => {
    const found = hired({ ...BOUGHT, systems: [one], work: [work] });
    expect(found.map(({ path }) => path)).toEqual(result === 'counts' ? [['systems', 0]] : []);
  });
});

describe('whether anybody was hired', () => {
  const WHO = { asks: 'who did the work', hint: 'by: owner' };
  it.each<readonly [string, PartialSpec, DutyFact]>([
    [
      'surely, and the first that is sure is told',
      {
        ...BOUGHT,
        work: [
          item({ by: 'firm' }),
          item({ id: 'b', by: 'owner' }),
          item({ id: 'c', by: 'firm', done: '2026-03' }),
        ],
      },
      { ...WHO, is: 'yes', path: ['work', 2], words: 'work by Some Heating' },
    ],
    [
      'perhaps before the purchase',
      { ...BOUGHT, work: [item({ by: 'owner', done: '2026-03' })], systems: [system({ by: 'firm' })] },
      {
        is: undefined,
        path: ['systems', 0, 'installed'],
        words: 'whether hired work, “furnace”, was done since the purchase is not known',
        asks: 'whether hired work, “furnace”, was done since the purchase',
        hint: 'installed: 2026-04-11',
      },
    ],
    [
      'and nobody says when it was bought',
      { people: BOUGHT.people, work: [item({ by: 'firm', done: '2026-03' })] },
      {
        is: undefined,
        path: ['house', 'bought'],
        words: 'when it was bought is not written',
        asks: 'when you bought it',
        hint: 'bought: 2026-02-17',
      },
    ],
    [
      'by nobody knows whom',
      { ...BOUGHT, work: [item({ by: 'owner' }), item({ id: 'b', done: '2026-03' })] },
      { ...WHO, is: undefined, path: ['work', 1], words: 'who did “roof” is not known' },
    ],
    [
      'a system put in since, by nobody knows whom',
      { ...BOUGHT, work: [item({ by: 'owner' })], systems: [system({ installed: '2026-03' })] },
      { ...WHO, is: undefined, path: ['systems', 0], words: 'who did “furnace” is not known' },
    ],
    [
      'nothing at all is recorded',
      BOUGHT,
      {
        is: undefined,
        path: ['work'],
        words: 'no work since the purchase is recorded',
        asks: 'whether there was work since the purchase, and who did it',
        hint: 'work: [{ id: work-1, what: kitchen circuits, did: new, by: owner, done: 2026-04-11 }]',
      },
    ],
    [
      'nothing since the purchase is',
      { ...BOUGHT, work: [item({ by: 'firm', done: '2019' })] },
      {
        is: undefined,
        path: ['work'],
        words: 'no work since the purchase is recorded',
        asks: 'whether there was work since the purchase, and who did it',
        hint: 'work: [{ id: work-1, what: kitchen circuits, did: new, by: owner, done: 2026-04-11 }]',
      },
    ],
    [
      'own hands and the family’s alone',
      {
        ...BOUGHT,
        work: [item({ by: 'owner' }), item({ id: 'b', by: 'family' })],
        structures: porch(finish({ by: 'owner' })),
      },
      {
        ...WHO,
        is: 'no',
        path: ['work'],
        words: 'all work recorded since the purchase was the owner’s and family’s',
      },
    ],
  ])('%s', (_, spec, expected) => {
    expect(used(spec)).toEqual(expected);
  });

  it('is settled by the line that the hint says to type', () => {
    const typed: PartialSpec = {
      ...BOUGHT,
      work: [{ id: 'work-1', what: 'kitchen circuits', did: 'new', by: 'owner', done: '2026-04-11' }],
    };
    expect(used(typed).is).toBe('no');
  });
});
