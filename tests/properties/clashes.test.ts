/** A house whose facts agree has no clash; one date moved to where it can't be gives that clash, and no other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { addDays } from '../../src/facts/age.js';
import type { HouseSpec } from '../../src/facts/house.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseOf, MADE_AS_OF, madeSpec } from './made-house.js';

const SEED = 20260630;

type Work = NonNullable<HouseSpec['work']>[number];
type System = NonNullable<HouseSpec['systems']>[number];
type Room = NonNullable<HouseSpec['rooms']>[number];

/** Bought in January 2026, permit issued in March and closed in May, offered in June; all work lies between. */
const BOUGHT = '2026-01-15';
const ISSUED = '2026-03-02';
const FINAL = '2026-05-29';
const LISTED = '2026-06-20';

/** Days that fit all of them. */
const fittingDay = fc.integer({ min: 0, max: 85 }).map((days) => addDays(ISSUED, days));

/** A made house with its rooms, finishes, systems and papers as they came, and its dates brought into order. */
const consistentSpec: fc.Arbitrary<HouseSpec> = fc
  .tuple(madeSpec, fc.array(fittingDay, { minLength: 12, maxLength: 12 }))
  .map(([spec, days]): HouseSpec => {
    const day = (at: number): string => days[at % days.length] ?? ISSUED;
    const work = [...(spec.work ?? []), { id: 'work-9', what: 'a made-up rail', did: 'new' as const }].map(
      (item, at): Work => ({
        ...item,
        done: day(at),
        by: 'owner',
        evidence: ['photo-1'],
        permit: 'permit-1',
      }),
    );
    const rooms = (spec.rooms ?? []).map(
      (room): Room => ({
        ...room,
        size: `10' x 11'`,
        windows: [{ 'clear-width': '32"', 'clear-height': '30"', sill: '28"' }],
        finishes: (room.finishes ?? []).map(({ done, ...finish }) =>
          finish.kept === true ? finish : { ...finish, did: 'new', done: day(3), by: 'owner' },
        ),
      }),
    );
    const systems = [
      ...(spec.systems ?? []),
      { id: 'system-9', is: 'boiler, gas', installed: day(5), by: 'owner', made: '2025' },
    ].map(
      (system): System =>
        system.kept === true ? { ...system, installed: '1995' } : { ...system, by: 'not-known' },
    );
    return {
      ...spec,
      house: { ...spec.house, built: '1948', bought: BOUGHT, listed: LISTED },
      levels: (spec.levels ?? []).map((level) => ({ ...level, size: `40' x 30'` })),
      rooms,
      systems,
      work,
      permits: [
        { id: 'permit-1', number: 'P-1', what: 'made-up work', state: 'final', issued: ISSUED, final: FINAL },
      ],
      photos: { 'photo-1': { shows: 'a made-up wall', when: 'after', taken: '2026-06-10' } },
      money: { role: 'dealer' },
    };
  });

/** Clashes, and what is said of the order of two dates. */
const clashesIn = (spec: HouseSpec): Diagnostic[] =>
  deriveTally(houseOf(spec), MADE_AS_OF).diagnostics.filter(
    ({ code, message }) =>
      code === 'tally.clash' || (code === 'tally.date-order' && !/warranty/.test(message)),
  );

const told = (found: readonly Diagnostic[]): string[] =>
  found.map(
    ({ path, beside, severity }) =>
      `${severity} ${printFactPath(path ?? [])}${beside === undefined ? '' : ` × ${printFactPath(beside)}`}`,
  );

/** Of the last piece of work and the last system alone, so that one date is moved and one finding follows. */
interface Shift {
  readonly name: string;
  readonly moved: (spec: HouseSpec) => HouseSpec;
  readonly expected: (at: { readonly work: number; readonly system: number }) => string[];
}

const lastWork = (spec: HouseSpec, change: Partial<Work>): HouseSpec => ({
  ...spec,
  work: (spec.work ?? []).map((item, at, all) => (at === all.length - 1 ? { ...item, ...change } : item)),
});
const lastSystem = (spec: HouseSpec, change: Partial<System>): HouseSpec => ({
  ...spec,
  systems: (spec.systems ?? []).map((one, at, all) => (at === all.length - 1 ? { ...one, ...change } : one)),
});

const SHIFTS: readonly Shift[] = [
  {
    name: 'work to before the purchase',
    moved: (spec) => lastWork(spec, { done: '2025-11', permit: undefined }),
    expected: ({ work }) => [`warning work[${work}].done × house.bought`],
  },
  {
    name: 'work to before the permit',
    moved: (spec) => lastWork(spec, { done: '2026-02-20' }),
    expected: ({ work }) => [`warning work[${work}].done × permits[0].issued`],
  },
  {
    name: 'work to after the final inspection',
    moved: (spec) => lastWork(spec, { done: '2026-06-05' }),
    expected: ({ work }) => [`warning work[${work}].done × permits[0].final`],
  },
  {
    name: 'work to after the offer',
    moved: (spec) => lastWork(spec, { done: '2026-06-25', permit: undefined, evidence: [] }),
    expected: ({ work }) => [`note work[${work}].done × house.listed`],
  },
  {
    name: 'work to after its photo',
    moved: (spec) => lastWork(spec, { done: '2026-06-15', permit: undefined }),
    expected: ({ work }) => [`warning work[${work}].done × photos.photo-1.taken`],
  },
  {
    name: 'a system to before the house',
    moved: (spec) => lastSystem(spec, { installed: '1931', made: undefined }),
    expected: ({ system }) => [`error systems[${system}].installed × house.built`],
  },
  {
    name: 'a maker’s date to long before the house',
    moved: (spec) => lastSystem(spec, { made: '1931' }),
    expected: ({ system }) => [`warning systems[${system}].made × house.built`],
  },
  {
    name: 'a kept system to after the purchase',
    moved: (spec) => lastSystem(spec, { kept: true }),
    expected: ({ system }) => [`warning systems[${system}].kept × systems[${system}].installed`],
  },
  {
    name: 'the sale to before the offer',
    moved: (spec) => ({
      ...spec,
      money: { role: 'dealer', sale: { closed: '2026-06-19', price: '246,000.00' } },
    }),
    expected: () => ['error money.sale.closed'],
  },
  {
    name: 'the final inspection to before the permit',
    moved: (spec) =>
      lastSystem(
        {
          ...spec,
          work: (spec.work ?? []).map((item) => ({ ...item, permit: undefined })),
          permits: [
            { id: 'permit-1', what: 'made-up work', state: 'final', issued: ISSUED, final: '2026-02' },
          ],
        },
        {},
      ),
    expected: () => ['error permits[0].final'],
  },
];

describe('two facts that can’t both be true', () => {
  it('are in no house whose facts agree', () => {
    fc.assert(
      fc.property(consistentSpec, (spec) => {
        expect(told(clashesIn(spec))).toEqual([]);
      }),
      { seed: SEED, numRuns: 120 },
    );
  });

  it.each(SHIFTS)('are found, and no other, where one moves $name', ({ moved, expected }) => {
    fc.assert(
      fc.property(consistentSpec, (spec) => {
        const at = { work: (spec.work?.length ?? 0) - 1, system: (spec.systems?.length ?? 0) - 1 };
        expect(told(clashesIn(moved(spec)))).toEqual(expected(at));
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('are none while the dates leave room for both', () => {
    const loose = ['2026', '2025/2026', '../2026-02', '2025-11?', '2026~'];
    fc.assert(
      fc.property(consistentSpec, fc.constantFrom(...loose), (spec, done) => {
        expect(told(clashesIn(lastWork(spec, { done, permit: undefined, evidence: [] })))).toEqual([]);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
