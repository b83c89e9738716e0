/** Payees of several houses, how long papers are kept, what held the work up, and shares of the spending: the borders. */
import { describe, expect, test } from 'vitest';
import { EMPTY_LEDGER } from '../../src/facts/ledger.js';
import { payeesOverHouses } from '../../src/tally/money/payees-over-houses.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { type CostWords, costRows, hoursRows, workOut } from './tally-money-case.js';

type Money = NonNullable<PartialSpec['money']>;
type Payee = NonNullable<Money['payees']>[number];

const PLUMBER: Payee = { name: 'Plumber', sells: 'services', 'tax-class': 'individual' };

describe('payees of several houses', () => {
  interface Part {
    readonly payee?: Partial<Payee>;
    readonly people?: PartialSpec['people'];
    /** Who was paid 3,000.00; by itself the plumber. */
    readonly paid?: readonly string[];
  }
  const over = (...parts: readonly Part[]) =>
    payeesOverHouses(
      parts.map(({ payee, people = [], paid = ['Plumber'] }) => ({
        house: houseFrom({
          money: { 'in-business': true, payees: payee === undefined ? [] : [{ ...PLUMBER, ...payee }] },
          people,
        }),
        ledger: {
          ...EMPTY_LEDGER,
          costs: costRows(paid.map((name) => ({ payee: name, cents: 300_000, bucket: 'improvement' }))),
        },
      })),
      '2026-11-20',
    ).map(({ payee, paid, verdict, why }) => ({ payee, paid, verdict, why }));

  const CORPORATION = { 'tax-class': 'c-corporation' } as const;
  test.each<[string, Part, Part, string]>([
    [
      'lawyers by the word of one are lawyers',
      { payee: CORPORATION },
      { payee: { ...CORPORATION, attorney: true } },
      'report',
    ],
    [
      'no lawyers by the word of one are none',
      { payee: CORPORATION },
      { payee: { ...CORPORATION, attorney: false } },
      'not-reported',
    ],
    [
      'a corporation of which nobody says it is lawyers is left out',
      { payee: CORPORATION },
      { payee: CORPORATION },
      'not-reported',
    ],
    [
      'not known whether lawyers stays open',
      { payee: CORPORATION },
      { payee: { ...CORPORATION, attorney: 'not known' } },
      'undecided',
    ],
    [
      'lawyers here and none there stays open',
      { payee: { ...CORPORATION, attorney: true } },
      { payee: { ...CORPORATION, attorney: false } },
      'undecided',
    ],
    [
      'an LLC here and there stays open',
      { payee: { 'tax-class': 'llc' } },
      { payee: { 'tax-class': 'llc' } },
      'undecided',
    ],
    [
      'an LLC here and not known there stays open',
      { payee: { 'tax-class': 'llc' } },
      { payee: { 'tax-class': 'not-known' } },
      'undecided',
    ],
    [
      'known by neither stays open',
      { payee: { sells: 'not-known' } },
      { payee: { sells: 'not-known' } },
      'undecided',
    ],
  ])('%s', (_what, one, other, verdict) => {
    expect(over(one, other)).toMatchObject([{ payee: 'Plumber', paid: 600_000, verdict }]);
  });

  test('an LLC that nobody knows more of is still called one', () => {
    const [found] = over({ payee: { 'tax-class': 'llc' } }, { payee: { 'tax-class': 'not-known' } });
    expect(found?.why).toContain('an LLC: line 3 of their form tells how it is taxed');
    const [unknown] = over({ payee: { 'tax-class': 'not-known' } }, { payee: { 'tax-class': 'not-known' } });
    expect(unknown?.why).toContain('their tax class is not known');
  });

  test('how they are family is told by each house that says so, once', () => {
    const wages = (relation: string): Part => ({ payee: { sells: 'wages', relation } });
    const [found] = over(wages('son, 17'), wages('our son'), wages('son, 17'));
    expect(found?.why).toContain('Family: our son; son, 17.');
    expect(over({ payee: { sells: 'wages' } })[0]?.why).not.toContain('Family');
  });

  test('whoever is named and was not paid is not in the list', () => {
    expect(over({ payee: {}, people: [{ id: 'bea', name: 'Bea South' }], paid: ['Plumber'] })).toHaveLength(
      1,
    );
  });

  test('a person without an entry is one payee in every house', () => {
    const house: Part = { people: [{ id: 'ann', name: 'Ann North' }], paid: ['Ann North', 'ANN NORTH'] };
    expect(over(house, house)).toMatchObject([{ payee: 'Ann North', paid: 1_200_000 }]);
  });

  test.each(['Aardvark Plumbing', 'Zebra Plumbing'])(
    'the entry “%s” and the person behind it are one, whichever name comes first',
    (name) => {
      const people = [{ id: 'moe', name: 'Moe Middle' }];
      const found = over(
        { payee: { name, person: 'moe' }, people, paid: [name, 'Moe Middle'] },
        { paid: ['Moe Middle'] },
      );
      expect(found).toMatchObject([{ payee: name, paid: 900_000 }]);
    },
  );

  test.each([
    ['Plumber, Inc.', 'PLUMBER INC'],
    ['PLUMBER INC', 'Plumber, Inc.'],
  ])('two spellings in one are told by the one that sorts first', (one, other) => {
    expect(over({ paid: [one] }, { paid: [other] })).toMatchObject([{ payee: 'PLUMBER INC', paid: 600_000 }]);
  });

  test('one name given to two entries of a house is the first one’s', () => {
    const { money } = workOut(
      { money: { 'in-business': true, payees: [PLUMBER, { ...PLUMBER, name: 'plumber', sells: 'goods' }] } },
      { costs: costRows([{ payee: 'PLUMBER', cents: 300_000, bucket: 'improvement' }]) },
    );
    expect(money.payees).toMatchObject([{ payee: 'Plumber', counted: 300_000 }]);
  });
});

test.each([
  ['asked', 'has been asked for and isn’t there yet', /^once you have it, keep it elsewhere/],
  ['none', 'is missing', /^ask them for a signed Form W-9, keep it elsewhere/],
  ['not-known', 'may be missing', /^ask them for a signed Form W-9/],
] as const)('a taxpayer form that is “%s” %s', (form, words, hint) => {
  const { diagnostics } = workOut(
    { money: { 'in-business': true, payees: [{ ...PLUMBER, 'taxpayer-form': form }] } },
    { costs: costRows([{ payee: 'Plumber', cents: 300_000, bucket: 'improvement' }]) },
  );
  const found = diagnostics.find(({ code }) => code === 'tally.payee');
  expect(found?.message).toBe(
    `$3,000.00 paid to “Plumber” in 2026 may have to go on a Form 1099-NEC, due 1 February 2027, and their signed taxpayer form (W-9) ${words}`,
  );
  expect(found?.hints[0]).toMatch(hint);
});

describe('how long papers are kept', () => {
  const kept = (spec: PartialSpec, id: string) =>
    workOut(spec, {}).money.retention.find((one) => one.id === id);
  const filed = (day: string) =>
    kept(
      { money: { sale: { closed: '2026-08-14', price: '1.00' }, 'return-filed': day } },
      'property-papers',
    );

  test('a return filed late counts from its filing, one filed early from the day it was due', () => {
    expect(filed('2027-10-01')).toMatchObject({
      through: '2030-10-01',
      from: 'the filing of the return for 2026, 1 October 2027',
    });
    expect(filed('2027-03-01')).toMatchObject({
      through: '2030-04-15',
      from: 'the due date of the return for 2026, 15 April 2027',
    });
    // Of a month the last day, the safe side.
    expect(filed('2027-05')?.through).toBe('2030-05-31');
  });

  test('of lead-safe work the last one counts, in whatever order it is written', () => {
    const from = (...jobs: readonly (readonly [what: string, done: string, where?: string])[]) =>
      kept(
        {
          levels: [
            { id: 'main', name: 'Main level', grade: 'above' },
            { id: 'upper', name: 'Upper level', grade: 'above' },
          ],
          work: jobs.map(([what, done, where = 'main'], at) => ({
            id: `job-${at}`,
            what,
            did: 'replaced',
            where: [where],
            'paint-disturbed': '40 sq ft',
            done,
          })),
        },
        'lead-renovation',
      )?.from;
    expect(from(['trim', '2025-05-10'], ['doors', '2024-01-01'], ['sash', '2024-06-01'])).toMatch(
      /: trim, 10 May 2025$/,
    );
    expect(from(['trim', '2025-05-10'], ['doors', '2024-01-01', 'upper'])).toMatch(/: trim, 10 May 2025$/);
    expect(from(['trim', '2024-01-01'], ['doors', '2025-05-10', 'upper'])).toMatch(/: doors, 10 May 2025$/);
    expect(from(['trim', '2025-05-10'], ['doors', '2025-05-10'])).toMatch(/: doors, 10 May 2025$/);
  });
});

describe('what held the work up', () => {
  const held = (...words: readonly (readonly [from: string, to: string, by: string])[]) =>
    workOut(
      {
        house: { bought: '2026-03-01', listed: '2026-03-02' },
        money: { 'held-up': words.map(([from, to, by]) => ({ from, to, 'waiting-for': by })) },
      },
      {},
    ).money.lessons.heldUp.map(({ by, days }) => `${by} ${days}`);

  test('the longest first, then the first one, then by name', () => {
    expect(
      held(
        ['2026-05-01', '2026-05-02', 'paint'],
        ['2026-04-01', '2026-04-02', 'tile'],
        ['2026-04-01', '2026-04-02', 'sand'],
        ['2026-04-01', '2026-04-02', 'wood'],
        ['2026-06-01', '2026-06-03', 'rain'],
      ),
    ).toEqual(['rain 3', 'sand 2', 'tile 2', 'wood 2', 'paint 2']);
  });

  test.each([
    ['issued on the last day of it', { issued: '2026-04-30' }, true],
    ['issued after it', { issued: '2026-05-01' }, false],
    ['closed on its first day', { issued: '2026-03-02', final: '2026-03-11' }, false],
    ['closed the day after', { issued: '2026-03-02', final: '2026-03-12' }, true],
    ['never issued', {}, false],
  ])('of a quiet stretch from 11 March to 30 April, a permit %s is named or not', (_when, days, named) => {
    const [found] = workOut(
      {
        house: { bought: '2026-03-01', listed: '2026-05-01' },
        permits: [{ id: 'p', what: 'three circuits', state: 'final', ...days }],
      },
      { costs: costRows([{ date: '2026-03-10', bucket: 'repair', cents: 1 }]) },
    ).money.lessons.heldUp;
    expect(found).toMatchObject({ from: '2026-03-11', to: '2026-04-30' });
    expect(found?.by.includes('three circuits')).toBe(named);
  });

  test('a stretch the wrong way round, or without an end, is none', () => {
    expect(held(['2026-05-02', '2026-05-01', 'paint'])).toEqual([]);
    expect(held(['../2026-05-02', '2026-05-03', 'paint'])).toEqual([]);
    expect(held(['2026-05-02', '2026-05-03/..', 'paint'])).toEqual([]);
    expect(held(['2026-05-02', '2026-05-02', 'paint'])).toEqual(['paint 1']);
  });
});

describe('what was spent', () => {
  const SPEC: PartialSpec = {
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "30' x 40'" }],
    rooms: [
      {
        id: 'bath',
        level: 'main',
        use: 'bath',
        finishes: [{ on: 'floor', what: 'tile', done: '2026-04-01' }],
      },
      { id: 'hall', level: 'main', use: 'hall' },
    ],
    systems: [{ id: 'wiring', is: 'electrical wiring' }],
  };
  const learn = (
    rows: readonly CostWords[],
    spec: PartialSpec = {},
    hours: Parameters<typeof hoursRows>[0] = [],
  ) => workOut({ ...SPEC, ...spec }, { costs: costRows(rows), hours: hoursRows(hours) }).money.lessons;
  const rooms = (...args: Parameters<typeof learn>) => learn(...args).byRoom.map(({ label }) => label);

  test('on a system that is in no room belongs to the whole house, and has its trade', () => {
    const rows: readonly CostWords[] = [{ bucket: 'improvement', cents: 100, place: 'wiring' }];
    expect(rooms(rows)).toEqual(['Whole house']);
    expect(learn(rows).byTrade.map(({ label }) => label)).toEqual(['Electrical']);
  });

  test('shares of one size stand by their hours, then by their names', () => {
    const at = (place: string): CostWords => ({ bucket: 'repair', cents: 100, place });
    expect(rooms([at('main'), at('hall'), at('bath')])).toEqual(['Bath', 'Hall', 'Main level']);
    expect(rooms([at('bath'), at('main'), at('hall')])).toEqual(['Bath', 'Hall', 'Main level']);
    expect(rooms([at('bath'), at('hall'), at('main')], {}, [{ hundredths: 5, place: 'main' }])[0]).toBe(
      'Main level',
    );
  });

  test('an area that is in part an estimate is called so', () => {
    const sure = learn([]).area;
    expect(sure?.words).toBe('finished, above grade');
    // From the rooms' inside sizes alone.
    const guessed = learn([], {
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [{ id: 'hall', level: 'main', use: 'hall', size: "10' x 10'" }],
    });
    expect(guessed.area?.words).toBe('finished, above grade, in part an estimate');
  });
});
