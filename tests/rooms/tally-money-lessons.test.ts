import { describe, expect, test } from 'vitest';
import { BUCKET_NAMES } from '../../src/facts/bucket.js';
import { leastMs } from '../tools/least-ms.js';
import type { PartialSpec } from './house-from.js';
import { type CostWords, costRows, hoursRows, told, trips, workOut } from './tally-money-case.js';

const SPEC: PartialSpec = {
  house: { bought: '2026-02-17', listed: '2026-06-20' },
  people: [{ id: 'ridge', name: 'Ridge Plumbing', trade: 'plumber' }],
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "30' x 40'" }],
  rooms: [
    { id: 'kitchen', level: 'main', use: 'kitchen' },
    { id: 'bath', level: 'main', use: 'bath' },
  ],
  systems: [{ id: 'panel', is: 'electrical panel', where: 'kitchen' }],
  work: [
    { id: 'wiring', what: 'kitchen circuits', did: 'new', where: ['kitchen'], done: '2026-04-01' },
    { id: 'tiles', what: 'floor tile', did: 'new', where: ['kitchen', 'bath'], done: '2026-04' },
    { id: 'anywhere', what: 'cleaning out', did: 'removed' },
  ],
};

const ROWS: readonly CostWords[] = [
  { bucket: 'improvement', cents: 10_000, place: 'wiring' },
  { bucket: 'improvement', cents: 20_000, place: 'tiles' },
  { bucket: 'repair', cents: 30_000, place: 'kitchen', payee: 'RIDGE plumbing' },
  { bucket: 'improvement', cents: 40_000, place: 'panel' },
  { bucket: 'restoration', cents: 50_000, place: 'main' },
  { bucket: 'improvement', cents: 60_000 },
  { bucket: 'improvement', cents: 1_000, place: 'anywhere' },
  { bucket: 'rebate', cents: -5_000, place: 'panel' },
  { bucket: 'tool', cents: 9_999, place: 'kitchen' },
  { bucket: 'utilities', cents: 24_600 },
  { bucket: 'purchase', cents: 100_000 },
];

const learn = (money: PartialSpec['money'] = {}, rows = ROWS, more: Parameters<typeof workOut>[1] = {}) =>
  workOut({ ...SPEC, money }, { costs: costRows(rows), ...more });

describe('what was spent', () => {
  const { lessons } = learn().money;

  test('work on the house, rebates taken off, by the square foot', () => {
    expect(lessons.spent).toBe(206_000);
    expect(lessons.area).toEqual({ squareFeet: 1200, words: 'finished, above grade' });
    // 171.67 cents.
    expect(lessons.perSquareFoot).toBe(172);
    expect(workOut({}, {}).money.lessons).toMatchObject({ area: undefined, perSquareFoot: undefined });
  });

  test('by trade: of the work, of the system, else of whoever was paid', () => {
    expect(lessons.byTrade.map(({ label, cents }) => [label, cents])).toEqual([
      ['Not named', 110_000],
      ['Electrical', 45_000],
      ['Plumbing', 30_000],
      ['Tile', 20_000],
      ['Other', 1_000],
    ]);
  });

  test('hours by trade: of the work item, else by their own words', () => {
    const { byTrade } = learn({}, [], {
      hours: hoursRows([
        { hundredths: 100, place: 'tiles', what: 'painted the trim' },
        { hundredths: 200, place: 'kitchen', what: 'plank floor laid' },
        { hundredths: 400, place: 'kitchen', what: 'looked about' },
      ]),
    }).money.lessons;
    expect(byTrade.map(({ label, hundredths }) => [label, hundredths])).toEqual([
      ['Not named', 400],
      ['Flooring', 200],
      ['Tile', 100],
    ]);
  });

  test('a share by the square foot too, the half away from zero', () => {
    expect(lessons.byTrade.map(({ perSquareFoot }) => perSquareFoot)).toEqual([92, 38, 25, 17, 1]);
    const half = (cents: number) =>
      learn({}, [{ bucket: 'improvement', cents }]).money.lessons.byRoom[0]?.perSquareFoot;
    expect([half(600), half(599), half(-600), half(-599)]).toEqual([1, 0, -1, 0]);
    const without = workOut({}, { costs: costRows([{ bucket: 'repair', cents: 1 }]) }).money.lessons;
    expect(without.byTrade).toMatchObject([{ cents: 1, perSquareFoot: undefined }]);
  });

  test('by room: through systems and work, several rooms and the whole house apart', () => {
    expect(lessons.byRoom.map(({ id, label, cents, rows }) => [id, label, cents, rows])).toEqual([
      ['place-kitchen', 'Kitchen', 75_000, [2, 4, 5, 9]],
      ['whole-house', 'Whole house', 61_000, [7, 8]],
      ['place-main', 'Main level', 50_000, [6]],
      ['several-rooms', 'Several rooms (whole-house rows apart)', 20_000, [3]],
    ]);
  });
});

describe('planned against actual', () => {
  test('rooms, levels with their rooms, trades, buckets, things and all', () => {
    const words = ['all', 'kitchen', 'main', 'electrical', 'utilities', 'tiles', 'panel', 'Tools'];
    const { money } = learn({ budget: words.map((one) => ({ for: one, amount: '100.00' })) });
    expect(money.lessons.budget.map(({ label, planned, actual }) => [label, planned, actual])).toEqual([
      ['All work on the house', 10_000, 206_000],
      ['Kitchen', 10_000, 75_000],
      ['Main level', 10_000, 125_000],
      ['Electrical', 10_000, 45_000],
      ['Holding: utilities', 10_000, 24_600],
      ['floor tile', 10_000, 20_000],
      ['electrical panel', 10_000, 35_000],
      ['Tools', 10_000, 9_999],
    ]);
  });

  test('a word that nothing has is named', () => {
    const { money, diagnostics } = learn({ budget: [{ for: 'ballroom', amount: '1.00' }] });
    expect(money.lessons.budget).toEqual([]);
    expect(told(diagnostics, 'facts.id-unknown')[0]).toContain(
      'money.budget.0.for nothing in the folder is called “ballroom”',
    );
  });
});

describe('days', () => {
  test('to listing and sale, and holding by the day', () => {
    const { lessons } = learn(
      { sale: { closed: '2026-08-14', price: '4,000.00' }, 'hour-rate': '35.00' },
      ROWS,
      {
        hours: hoursRows([{ hundredths: 1050 }, { hundredths: 200, who: 'family' }]),
      },
    ).money;
    expect(lessons.days).toEqual({
      bought: '2026-02-17',
      listed: '2026-06-20',
      sold: '2026-08-14',
      toListing: 123,
      toSale: 178,
    });
    expect(lessons).toMatchObject({ holding: 24_600, holdingDays: 178, holdingPerDay: 138 });
    // 4,000.00 less 3,405.99 paid; then 10.5 hours at 35.00.
    expect(lessons.profit).toBe(400_000 - 340_599);
    expect(lessons.hours).toEqual({ owner: 1050, others: 200 });
    expect(lessons.profitAfterHours).toBe(400_000 - 340_599 - 36_750);
  });

  test('a rental’s holding by the day ends when it is ready to be let', () => {
    const rows: readonly CostWords[] = [
      { bucket: 'interest', date: '2026-02-28', cents: 2_000 },
      { bucket: 'interest', date: '2026-03-19', cents: 5_000 },
    ];
    const at = (service: string) => learn({ rental: { 'in-service': service } }, rows).money.lessons;
    expect(at('2026-03-19')).toMatchObject({
      holding: 7_000,
      holdingWithin: 2_000,
      holdingDays: 30,
      holdingEnd: 'ready to be let',
      holdingPerDay: 67,
    });
    // To come, or no single day: all of it, to the as-of day.
    for (const service of ['2027-01-01', '2026-03'])
      expect(at(service)).toMatchObject({ holdingWithin: 7_000, holdingDays: 276, holdingEnd: 'as-of day' });
  });

  test('a listing to come, a month alone and an unsold house give no false figure', () => {
    const days = (house: PartialSpec['house']) => workOut({ house }, {}).money.lessons;
    expect(days({ bought: '2026-02-17', listed: '2026-12-01' }).days.toListing).toBeUndefined();
    expect(days({ bought: '2026-02', listed: '2026-06-20' }).days).toMatchObject({
      bought: undefined,
      toListing: undefined,
    });
    expect(days({ bought: '2026-11-20' })).toMatchObject({
      holdingDays: 0,
      holdingPerDay: undefined,
      profit: undefined,
    });
  });
});

describe('what held the work up', () => {
  const stretches = (money: PartialSpec['money'], rows: readonly string[], more: PartialSpec = {}) =>
    workOut(
      { house: { bought: '2026-03-01', listed: '2026-05-01' }, ...more, money },
      { costs: costRows(rows.map((date) => ({ date, bucket: 'repair', cents: 1 }))) },
    ).money.lessons.heldUp.map(({ from, to, days, by }) => [from, to, days, by]);

  test('fourteen days without a trace, not thirteen', () => {
    // 2 to 14 March are thirteen days, 16 to 29 March fourteen.
    expect(stretches({}, ['2026-03-15', '2026-03-30', '2026-04-10', '2026-04-20'])).toEqual([
      ['2026-03-16', '2026-03-29', 14, 'nothing on record'],
    ]);
  });

  test('up to the listing, and a work date of a month may be any day of it', () => {
    expect(stretches({}, ['2026-03-10'])).toEqual([['2026-03-11', '2026-04-30', 51, 'nothing on record']]);
    const work: PartialSpec['work'] = [{ id: 'a', what: 'tile', did: 'new', done: '2026-04' }];
    expect(stretches({}, ['2026-03-10'], { work })).toEqual([
      ['2026-03-11', '2026-03-31', 21, 'nothing on record'],
    ]);
  });

  test('what the owner wrote is not found again, and a permit that stood open is named', () => {
    const held = { 'held-up': [{ from: '2026-03-11', to: '2026-04-25', 'waiting-for': 'the inspector' }] };
    expect(stretches(held, ['2026-03-10'])).toEqual([['2026-03-11', '2026-04-25', 46, 'the inspector']]);
    const permits: PartialSpec['permits'] = [
      { id: 'p', what: 'three circuits', state: 'final', issued: '2026-03-20', final: '2026-04-20' },
    ];
    expect(stretches({}, ['2026-03-10'], { permits })[0]?.[3]).toBe(
      'nothing on record; open at the time: the permit for three circuits',
    );
  });

  test('a listing of which only the month is known ends it on the first of that month', () => {
    const { lessons } = workOut({ house: { bought: '2026-03-01', listed: '2026-05' } }, {}).money;
    expect(lessons.heldUp.map(({ to }) => to)).toEqual(['2026-04-30']);
  });

  test('nobody waits once the house is let', () => {
    const days = (money: PartialSpec['money']) =>
      workOut({ house: { bought: '2026-03-01' }, money }, {}).money.lessons.heldUp.map(({ to }) => to);
    expect(days({ rental: { 'in-service': '2026-05-01' } })).toEqual(['2026-04-30']);
    expect(days({})).toEqual(['2026-11-19']);
  });

  test('trips and hours are traces', () => {
    const { lessons } = workOut(
      { house: { bought: '2026-03-01', listed: '2026-04-01' } },
      {
        trips: trips([{ date: '2026-03-12', thousandths: 1 }]),
        hours: hoursRows([{ date: '2026-03-22', hundredths: 1 }]),
      },
    ).money;
    expect(lessons.heldUp).toEqual([]);
  });
});

describe('how long papers are kept', () => {
  const kept = (spec: PartialSpec, rows: readonly CostWords[] = []) =>
    new Map(workOut(spec, { costs: costRows(rows) }).money.retention.map((one) => [one.id, one]));

  test('unsold, the count has not begun', () => {
    const list = kept({});
    expect([...list.keys()]).toEqual(['property-papers', 'no-return', 'lead-disclosure']);
    for (const { through } of list.values()) expect(through).toBeUndefined();
    expect([...list.values()].map(({ kept }) => kept)).toEqual(['not begun', 'for good', 'not begun']);
    expect(list.get('no-return')?.from).not.toMatch(/not begun|no end/);
  });

  test('sold, one row names the least and the safer days', () => {
    const row = kept({ money: { sale: { closed: '2026-08-14', price: '1.00' } } }).get('property-papers');
    expect(row).toMatchObject({ kept: 'through', through: '2030-04-15', years: 3 });
    expect(row?.what).toContain('6 years, to 15 April 2033, and 7 years, to 15 April 2034');
  });

  test('no lead papers for a house built in 1978 or later', () => {
    expect(kept({ house: { built: '1978' } }).has('lead-disclosure')).toBe(false);
    expect(kept({ house: { built: 'not known' } }).has('lead-disclosure')).toBe(true);
  });

  test('lead renovation records from the last work that disturbed more than a little paint', () => {
    const job = (id: string, done?: string): NonNullable<PartialSpec['work']>[number] => ({
      id,
      what: 'trim',
      did: 'replaced',
      where: ['main'],
      'paint-disturbed': '40 sq ft',
      ...(done === undefined ? {} : { done }),
    });
    const levels: PartialSpec['levels'] = [{ id: 'main', name: 'Main level', grade: 'above' }];
    expect(
      kept({ levels, work: [job('a', '2024-02-29'), job('b', '2025-05-10')] }).get('lead-renovation')
        ?.through,
    ).toBe('2028-05-10');
    expect(kept({ levels, work: [job('a', '2024-02-29')] }).get('lead-renovation')?.through).toBe(
      '2027-03-01',
    );
    expect(
      kept({ levels, work: [job('a', '2025-05-10'), job('b')] }).get('lead-renovation')?.through,
    ).toBeUndefined();
  });

  test('lead renovation records count from the last paint disturbed, however little, or the firm’s last work', () => {
    const levels: PartialSpec['levels'] = [{ id: 'main', name: 'Main level', grade: 'above' }];
    const rooms: PartialSpec['rooms'] = [{ id: 'hall', level: 'main', use: 'hall' }];
    type Work = NonNullable<PartialSpec['work']>[number];
    const big: Work = { id: 'big', what: 'casings', did: 'replaced', where: ['main'], done: '2026-03-20' };
    const little: Work = { id: 'little', what: 'hall door', did: 'painted', where: ['hall'] };
    const list = (work: PartialSpec['work'], lead?: PartialSpec['lead']) =>
      kept({
        levels,
        rooms,
        work,
        people: [{ id: 'firm', name: 'Firm' }],
        ...(lead === undefined ? {} : { lead }),
      }).get('lead-renovation');
    const minor = { ...little, done: '2026-05-31', 'paint-disturbed': '2 sq ft' };
    const found = list([{ ...big, 'paint-disturbed': '40 sq ft' }, minor]);
    expect(found).toMatchObject({ kept: 'through', through: '2029-05-31' });
    expect(found?.from).toContain('hall door, 31 May 2026');
    // Minor repair alone needs none; the certified firm's work has its records whatever it disturbed.
    expect(list([minor])).toBeUndefined();
    expect(list([{ ...big, by: 'firm' }], { known: 'not known', firm: 'firm' })?.through).toBe('2029-03-20');
  });

  test('payer’s copies, a year longer where tax was kept back or nobody wrote whether', () => {
    const row: CostWords = { date: '2025-05-01', payee: 'P', bucket: 'improvement', cents: 100_000 };
    const copies = (withheld: 'yes' | 'no' | undefined) =>
      kept(
        {
          money: {
            'in-business': true,
            payees: [{ name: 'P', sells: 'services', 'tax-class': 'individual' }],
            ...(withheld === undefined ? {} : { 'backup-withheld': withheld }),
          },
        },
        [row],
      ).get('payer-copies-2025');
    expect(copies('no')?.through).toBe('2029-02-02');
    expect(copies('yes')?.through).toBe('2030-02-02');
    expect(copies(undefined)).toMatchObject({ through: '2030-02-02', years: 4 });
    expect(copies(undefined)?.from).toContain('3 years if no tax was kept back');
  });

  test('wages bring employment papers', () => {
    expect(kept({ money: { employees: true } }).get('employment-papers')?.years).toBe(4);
    const son = { name: 'Son', sells: 'wages', relation: 'son, 17' } as const;
    expect(
      kept({ money: { payees: [son] } }, [{ payee: 'Son', bucket: 'improvement', cents: 1 }]).has(
        'employment-papers',
      ),
    ).toBe(true);
  });
});

describe('a very long sheet', () => {
  const made = (count: number) =>
    costRows(
      Array.from({ length: count }, (_, at) => ({
        date: `202${4 + (at % 3)}-0${1 + (at % 7)}-1${at % 10}`,
        payee: `Payee ${at % 2000}`,
        bucket: BUCKET_NAMES[at % BUCKET_NAMES.length] ?? 'repair',
        cents: 1000 + (at % 977),
        receipt: at % 3 === 0 ? undefined : `r${at}`,
      })),
    );
  const house = {
    ...SPEC,
    money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } },
  } as const;
  const ms = (rows: ReturnType<typeof made>, enough: number): Promise<number> =>
    leastMs(() => workOut(house, { costs: rows }), enough);

  test('takes time in step with its rows, not with their square', async () => {
    // Ten times the rows; a square would be a hundred times.
    const most = 40 * Math.max(await ms(made(5000), 0), 10);
    expect(await ms(made(50_000), most)).toBeLessThan(most);
  });
});
