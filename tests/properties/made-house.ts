/**
 * Houses made up by fast-check: whole specs that check clean, with every short and long form, gaps, unknowns
 * and uncertain dates. Nothing in them is meant to make sense to a buyer.
 */
import fc from 'fast-check';
import { checkHouse } from '../../src/facts/check-house.js';
import { checkReferences } from '../../src/facts/check-references.js';
import type { House, HouseSpec } from '../../src/facts/house.js';
import { nameKey } from '../../src/facts/name-key.js';

/** Every date that is made lies before it. */
export const MADE_AS_OF = '2026-06-30';

const WORDS = 'oak plaster tin north grey old cast loose square second-hand “wide” deep 1½″ & <thin>'.split(
  ' ',
);

const words = (most: number) =>
  fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: most }).map((list) => list.join(' '));

const two = (n: number): string => String(n).padStart(2, '0');

const FORMS = ['year', 'month', 'day', 'about', 'before', 'span'] as const;

const dateBetween = (min: number, max: number, forms: readonly (typeof FORMS)[number][] = FORMS) =>
  fc
    .tuple(
      fc.integer({ min, max }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 28 }),
      fc.constantFrom(...forms),
    )
    .map(([year, month, day, form]): string => {
      switch (form) {
        case 'month':
          return `${year}-${two(month)}`;
        case 'day':
          return `${year}-${two(month)}-${two(day)}`;
        case 'about':
          return `${Math.min(year, 2024)}~`;
        case 'before':
          return `../${year}`;
        case 'span':
          return `${year - 3}/${year}`;
        default:
          return String(year);
      }
    });

const date = dateBetween(1960, 2025);
// The house stands before anything is done in it: `tally.clash` would refuse it.
const builtDate = dateBetween(1900, 1957);
// Nothing is put in before it was made: `tally.date-order` would refuse the house.
const madeDate = dateBetween(1950, 1980);
const installedDate = dateBetween(1990, 2025, ['year', 'month', 'day', 'about', 'span']);

const length = (least: number, most: number) =>
  fc
    .tuple(fc.integer({ min: least, max: most }), fc.integer({ min: 0, max: 11 }))
    .map(([feet, inches]) => `${feet}'${inches}"`);

const size = fc.tuple(length(6, 14), length(6, 14)).map(([a, b]) => `${a} x ${b}`);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const papers = fc.subarray(['paper-1', 'permit-1', 'photo-1']);
const yesNo = fc.constantFrom('yes' as const, 'no' as const, 'not known' as const, true, false);

/** A fact: short, long, or said to be not known. */
const fact = <T extends string>(value: fc.Arbitrary<T>) =>
  fc.oneof(
    value,
    fc.constant('not known'),
    fc.record(
      {
        is: fc.oneof(value, fc.constant('not known')),
        from: fc.constantFrom('seller', 'owner', 'county record'),
        evidence: papers,
        note: words(4),
      },
      { requiredKeys: ['is'] },
    ),
  );

const DEEDS = [
  'new',
  'replaced',
  'repaired',
  'refinished',
  'painted',
  'moved',
  'removed',
  'serviced',
] as const;
const SYSTEMS = [
  'water heater, tank, electric',
  'furnace, gas',
  'roof, asphalt shingle',
  'dishwasher',
  'panel',
  'thing of no name',
];

const finishWords = fc.record(
  {
    on: fc.constantFrom('floor' as const, 'walls' as const, 'counter' as const, 'trim' as const),
    what: words(3),
    colour: words(2),
    sheen: fc.constantFrom('flat', 'eggshell'),
    did: fc.constantFrom(...DEEDS),
    done: date,
    by: fc.constantFrom('owner', 'family', 'person-1', 'not-known'),
    kept: fc.boolean(),
    evidence: papers,
    note: words(5),
  },
  { requiredKeys: ['on', 'what'] },
);

// What is kept as found was not also replaced.
const finish = finishWords.map(({ did, ...rest }) =>
  did === undefined || rest.kept === true ? rest : { ...rest, did },
);

const numbered = <T extends object>(prefix: string, list: readonly T[]): (T & { id: string })[] =>
  list.map((one, i) => ({ ...one, id: `${prefix}-${i + 1}` }));

const room = fc.record(
  {
    name: words(2),
    use: fc.constantFrom('kitchen' as const, 'living' as const, 'bedroom' as const, 'hall' as const),
    size,
    finishes: fc.array(finish, { maxLength: 3 }),
  },
  { requiredKeys: ['use', 'size'] },
);

const system = fc.record(
  {
    is: fc.constantFrom(...SYSTEMS),
    made: fact(madeDate),
    installed: fact(installedDate),
    by: fc.constantFrom('owner', 'person-1', 'not-known'),
    kept: fc.boolean(),
    conveys: yesNo,
    warranty: fc.record({ years: fc.integer({ min: 1, max: 20 }), 'moves-to-buyer': yesNo }),
    evidence: papers,
    note: words(6),
  },
  { requiredKeys: ['is'] },
);

const work = fc.record(
  {
    what: words(4),
    did: fc.constantFrom(...DEEDS),
    how: words(20),
    why: words(6),
    safety: fc.boolean(),
    done: date,
    by: fc.constantFrom('owner', 'family', 'person-1', 'not-known'),
    permit: fc.constant('permit-1'),
    evidence: papers,
  },
  { requiredKeys: ['what', 'did'] },
);

/** Specs that check clean. The tests that use it say so first. */
export const madeSpec: fc.Arbitrary<HouseSpec> = fc
  .record({
    name: words(3),
    show: fc.constantFrom('full' as const, 'street-withheld' as const, 'city-only' as const),
    built: fact(builtDate),
    lot: maybe(fact(fc.integer({ min: 10, max: 90 }).map((n) => `0.${two(n)} acre`))),
    foundation: maybe(fact(words(4))),
    levels: fc.array(fc.tuple(length(20, 50), length(20, 40)), { minLength: 1, maxLength: 3 }),
    rooms: fc.array(room, { maxLength: 5 }),
    systems: fc.array(system, { maxLength: 5 }),
    work: fc.array(work, { maxLength: 4 }),
    conditions: fc.array(words(6), { maxLength: 3 }),
    answers: fc.array(fc.tuple(words(6), fact(words(9))), { maxLength: 3 }),
    conveys: fc.uniqueArray(fc.tuple(words(3), yesNo), { maxLength: 3, selector: ([what]) => nameKey(what) }),
    care: fc.array(fc.tuple(words(4), fc.constantFrom('month', '3 months', '2 years')), { maxLength: 3 }),
  })
  .map((made): HouseSpec => {
    const levels = made.levels.map(([a, b], i) => ({
      id: `level-${i + 1}`,
      name: `Level ${i + 1}`,
      grade: i === 0 && made.levels.length > 1 ? ('below' as const) : ('above' as const),
      size: `${a} x ${b}`,
      ceiling: `8'`,
    }));
    return withoutUndefined({
      house: {
        name: made.name,
        address: {
          street: '9 Made-up Lane',
          city: 'Fallow Mills',
          state: 'OH',
          zip: '44999',
          show: made.show,
        },
        kind: 'detached',
        built: made.built,
        lot: made.lot,
        foundation: made.foundation,
      },
      people: [{ id: 'person-1', name: 'Made-up Trades', trade: 'plumber' }],
      levels,
      rooms: numbered('room', made.rooms).map((one, i) => ({
        ...one,
        level: levels[i % levels.length]?.id ?? 'level-1',
      })),
      systems: numbered('system', made.systems),
      work: numbered('work', made.work),
      conditions: made.conditions.map((what) => ({ what })),
      permits: [
        { id: 'permit-1', number: 'P-1', what: 'made-up work', state: 'final' as const, final: '2025-05' },
      ],
      documents: [{ id: 'paper-1', what: 'a made-up paper', kind: 'record' as const, date: '2024' }],
      photos: {
        'photo-1': { shows: 'a made-up wall', alt: 'A wall that was made up.', when: 'after' as const },
      },
      answers: made.answers.map(([ask, answer]) => ({ ask, answer })),
      conveys: made.conveys.map(([what, stays]) => ({ what, stays })),
      care: made.care.map(([what, every]) => ({ what, every })),
    } as HouseSpec);
  });

function withoutUndefined<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

/** The checked house. Throws, and so fails the test, if the generator made one that is at fault. */
export function houseOf(spec: HouseSpec): House {
  const { house, diagnostics } = checkHouse(spec);
  const wrong = [...diagnostics, ...(house === undefined ? [] : checkReferences(house))];
  if (house === undefined || wrong.length > 0)
    throw new Error(`the made house does not check clean:\n${JSON.stringify(wrong, null, 2)}`);
  return house;
}
