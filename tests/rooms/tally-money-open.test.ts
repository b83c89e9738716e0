/** What a sheet says where a fact is missing, odd or on a border. */
import { describe, expect, test } from 'vitest';
import { addUp } from '../../src/tally/money/books.js';
import { citedRules } from '../../src/tally/money/money-rules.js';
import type { PartialSpec } from './house-from.js';
import {
  type CostWords,
  centsOf,
  costRows,
  lineOf,
  sheetOf,
  told,
  trips,
  workOut,
} from './tally-money-case.js';

type Money = NonNullable<PartialSpec['money']>;

const BOUGHT: CostWords = { date: '2026-02-17', bucket: 'purchase', cents: 10_000_000 };

const work = (
  money: Money,
  rows: readonly CostWords[] = [BOUGHT],
  house: PartialSpec['house'] = { bought: '2026-02-17' },
) => workOut({ house, money }, { costs: costRows(rows) }).money;

describe('work after the sale', () => {
  const late = (...days: string[]) =>
    lineOf(
      work({ sale: { closed: '2026-08-14', price: '150,000.00' } }, [
        BOUGHT,
        ...days.map((date): CostWords => ({ date, bucket: 'improvement', cents: 100 })),
      ]),
      'investor',
      'improvement',
    ).note;

  test('is counted, and its rows are named, one or several', () => {
    expect(late('2026-08-14')).toBeUndefined();
    expect(late('2026-08-15')).toBe('row 3 is dated after the sale and counted all the same');
    expect(late('2026-08-15', '2026-08-13', '2026-09-01')).toBe(
      'rows 3 and 5 are dated after the sale and counted all the same',
    );
  });
});

describe('how long it was held', () => {
  const held = (bought: string | undefined, closed: string | undefined) => {
    const sale: Money = closed === undefined ? {} : { sale: { closed, price: '1.00' } };
    const { dates } = sheetOf(work(sale, [BOUGHT], bought === undefined ? {} : { bought }), 'investor');
    return Object.fromEntries((dates ?? []).map(({ id, says }) => [id, says]));
  };

  test.each([
    ['2026-08-13', '2026-08-14', '1 day'],
    ['2026-08-12', '2026-08-14', '2 days'],
    ['2026-08-14', '2026-08-14', '0 days'],
    ['2026-08-15', '2026-08-14', 'not known: the days stand the wrong way round'],
    ['2026-08', '2026-08-14', 'not known to the day'],
    ['2026-02-17', '2026-08', 'not known to the day'],
    ['2026-11-19', undefined, '1 day so far'],
    [undefined, '2026-08-14', 'not known to the day'],
  ])('bought %s, sold %s: %s', (bought, closed, says) => {
    expect(held(bought, closed)).toMatchObject({ held: says });
  });

  test('a day that is not written is said to be so', () => {
    expect(held(undefined, undefined)).toMatchObject({
      acquired: 'not written under house: bought:',
      sold: 'not sold on 20 November 2026',
    });
    expect(held('2026-02', '2026-08')).toMatchObject({ acquired: 'February 2026', sold: 'August 2026' });
  });
});

describe('a sale of which only the end is known', () => {
  const asked = (closed: string) =>
    told(
      workOut({ money: { sale: { closed, price: '10.00' } } }, { costs: costRows([BOUGHT]) }).diagnostics,
      'tally.future',
    );

  test('may have closed, where nothing says that it had not begun', () => {
    expect(asked('../2027-03-01')).toHaveLength(1);
    expect(asked('2026-11-20/2027-03-01')).toHaveLength(1);
    expect(asked('2026-11-21/2027-03-01')).toEqual([]);
  });
});

describe('land and building', () => {
  const land = (words: NonNullable<Money['land']>) => {
    const part = sheetOf(work({ land: words }), 'investor').parts.find(
      ({ id }) => id === 'land-and-building',
    );
    return part?.lines.find(({ id }) => id === 'land');
  };

  test('the assessor’s two values divide the cost, and their shares are told where they are whole', () => {
    const whole = land({ 'assessed-land': '20,000', 'assessed-building': '80,000' });
    expect(whole?.cents).toBe(2_000_000);
    expect(whole?.facts.at(-1)?.says).toBe('building $80,000.00 (20 and 80 percent)');
    const third = land({ 'assessed-land': '10,000', 'assessed-building': '20,000' });
    expect(third?.cents).toBe(3_333_333);
    expect(third?.facts.at(-1)?.says).toBe('building $20,000.00');
  });

  test.each([
    ['nothing', '0', 0],
    ['all of it', '100,000.00', 10_000_000],
  ])('land that the contract says cost %s goes before the assessor’s values', (_what, price, cents) => {
    const line = land({ price, 'assessed-land': '1', 'assessed-building': '1' });
    expect([line?.cents, line?.facts[0]?.path]).toEqual([cents, 'money.land.price']);
  });

  test('land alone, or a building alone, by the assessor takes all', () => {
    expect(land({ 'assessed-land': '0', 'assessed-building': '80,000' })?.cents).toBe(0);
    expect(land({ 'assessed-land': '80,000', 'assessed-building': '0' })?.cents).toBe(10_000_000);
  });

  test.each<[string, NonNullable<Money['land']>]>([
    ['both are nothing', { 'assessed-land': '0', 'assessed-building': '0' }],
    ['one is below nothing', { 'assessed-land': '-1', 'assessed-building': '80,000' }],
    ['the other is', { 'assessed-land': '20,000', 'assessed-building': '-1' }],
    ['one is missing', { 'assessed-land': '20,000' }],
    ['the land costs more than all', { price: '100,000.01' }],
  ])('nothing is divided where %s', (_why, words) => {
    expect(land(words)).toBeUndefined();
  });
});

describe('the seller’s property tax', () => {
  type Bill = NonNullable<Money['property-tax']>[number];
  const BILL: Bill = { from: '2026-01-01', amount: '730.00', 'paid-by': 'seller', reimbursed: 'no' };
  const SETTLED: Bill = { ...BILL, reimbursed: 'yes' };
  const line = (bills: Bill[], rows: readonly CostWords[] = [BOUGHT], house?: PartialSpec['house']) =>
    lineOf(
      work({ 'property-tax': bills }, rows, house),
      'investor',
      rows.length > 1 ? 'property-tax-taken-over' : 'property-tax-bill-1',
    );
  const taken = (cents: number): readonly CostWords[] => [
    BOUGHT,
    { bucket: 'property-tax-taken-over', cents },
  ];

  test('that the seller paid lowers the cost by the buyer’s days, 318 of 365', () => {
    expect(line([BILL])).toMatchObject({ cents: -63_600 });
    expect(line([BILL]).facts[0]?.says).toBe(
      'property tax of 2026: $730.00, 47 of 365 days the seller’s, not paid back at closing',
    );
  });

  test('that was settled at closing moves nothing', () => {
    expect(line([SETTLED]).cents).toBe(0);
    expect(line([SETTLED]).note).toMatch(/settled at closing, so nothing moves$/);
    expect(line([SETTLED]).facts[0]?.says).toMatch(/, settled at closing$/);
  });

  test('of which nobody wrote whether it was paid back is told both ways', () => {
    const { cents, note } = line([{ ...BILL, reimbursed: 'not known' }]);
    expect(cents).toBeUndefined();
    expect(note).toMatch(/if not, −\$636\.00$/);
  });

  test('of a year that begins in July is named by its day', () => {
    expect(line([{ ...BILL, from: '2025-07-01' }]).facts[0]?.says).toMatch(
      /^property tax of the year from 1 July 2025: /,
    );
  });

  test('of a house without a day of purchase can’t be divided', () => {
    const { cents, note, facts } = line([BILL], [BOUGHT], {});
    expect([cents, note]).toEqual([
      undefined,
      'not worked out, and not added: the day of the purchase is not written under house: bought:',
    ]);
    expect(facts.map(({ path }) => path)).toEqual(['money.property-tax[0]']);
  });

  test('of a year open towards the past can’t be divided, and has no name but its words', () => {
    const { cents, facts } = line([{ ...BILL, from: '../2026-01-01' }]);
    expect(cents).toBeUndefined();
    expect(facts[0]?.says).toMatch(/^property tax of the year from 1 January 2026 or before: /);
  });

  test('in rows and in a bill: the bill is held against them', () => {
    expect(line([BILL], taken(-63_600)).note).toBe(
      'the bill under money: property-tax: comes to the same by days',
    );
    expect(line([], taken(-63_600)).note).toBeUndefined();
    expect(line([BILL], taken(-60_000)).note).toMatch(/comes to −\$636\.00, which differs by −\$36\.00$/);
  });

  test('in rows and in two bills: the one that is open says why', () => {
    const { note } = line([SETTLED, { ...BILL, reimbursed: 'not known' }], taken(100));
    expect(note).toMatch(/can’t be worked out \(.*isn’t written whether it was paid back at closing/);
  });
});

describe('notes by year', () => {
  const note = (money: Money, id: string, rows: readonly CostWords[] = [BOUGHT]) =>
    sheetOf(work(money, rows), id.startsWith('small-building') ? 'rental' : 'dealer').notes.find(
      (one) => one.id === id,
    )?.text;
  const receipts = (last: number, amount: string): Money => ({
    'gross-receipts': [last - 2, last - 1, last].map((year) => ({ year, amount })),
  });
  const SOLD: Money = { sale: { closed: '2026-08-14', price: '1.00' } };

  test('small business: at the amount it is passed, above it not', () => {
    expect(note({ ...SOLD, ...receipts(2025, '32,000,000') }, 'small-business-2026')).toContain(
      ': passed; receipts of 2023 to 2025 average $32,000,000.00, no more than $32,000,000.00',
    );
    expect(note({ ...SOLD, ...receipts(2025, '32,000,000.01') }, 'small-business-2026')).toContain(
      'not passed; receipts of 2023 to 2025 average $32,000,000.01, more than $32,000,000.00.',
    );
  });

  test('small business: a year of which no amount is known is undecided', () => {
    const early: CostWords = { ...BOUGHT, date: '2016-02-17' };
    const money: Money = { sale: { closed: '2016-12-01', price: '1.00' }, ...receipts(2015, '100') };
    const text = sheetOf(work(money, [early], { bought: '2016-02-17' }), 'dealer').notes.find(
      ({ id }) => id === 'small-business-2016',
    )?.text;
    expect(text).toContain(
      'undecided; receipts of 2013 to 2015 average $100.00, and no amount is known for 2016.',
    );
  });

  test('small business: one missing year is named alone, several with “and”', () => {
    const two = { 'gross-receipts': receipts(2025, '1')['gross-receipts']?.slice(1) ?? [] };
    expect(note({ ...SOLD, ...two }, 'small-business-2026')).toContain('gross receipts of 2023 are not');
    expect(note(SOLD, 'small-business-2026')).toContain('gross receipts of 2023, 2024 and 2025 are not');
  });

  test('small building: one that cost more than a million is outside', () => {
    const money: Money = { rental: { 'in-service': '2026-03-01' }, land: { price: '1.00' } };
    const rows = (cents: number): CostWords[] => [
      { ...BOUGHT, cents },
      { date: '2026-05-01', bucket: 'repair', cents: 1000 },
    ];
    expect(note(money, 'small-building-2026', rows(100_000_101))).toContain(
      'repairs $10.00, together $10.00, are outside, the building having cost too much; the building cost $1,000,000.01',
    );
    expect(note(money, 'small-building-2026', rows(100_000_100))).toContain(
      'are within the cap of $10,000.00;',
    );
  });
});

describe('trips before the purchase', () => {
  test('one alone is one trip', () => {
    const { diagnostics } = workOut(
      { house: { bought: '2026-02-17' }, money: { odometer: [{ year: 2026, start: 0, end: 99 }] } },
      { trips: trips([{ date: '2026-02-16', thousandths: 1000 }]) },
    );
    expect(told(diagnostics, 'tally.miles')).toEqual([
      'note miles.2.date 1 trip before the purchase (2026-02-17) is in the miles',
    ]);
  });
});

describe('mistakes of our own', () => {
  test('a sum that can’t be held exactly is refused, not rounded', () => {
    expect(addUp([Number.MAX_SAFE_INTEGER, -1, 1])).toBe(Number.MAX_SAFE_INTEGER);
    expect(() => addUp([Number.MAX_SAFE_INTEGER, 1])).toThrow(
      new RangeError('a sum of money is too large to be exact'),
    );
  });

  test('a rule that no table has is no rule to cite', () => {
    expect(citedRules(['gain-on-sale', 'adjusted-basis', 'gain-on-sale']).map(({ id }) => id)).toEqual([
      'adjusted-basis',
      'gain-on-sale',
    ]);
    expect(() => citedRules(['gain-on-sail'])).toThrow('no table has the rule gain-on-sail');
  });
});

test('nothing sold: no gain, and no cost of goods sold yet', () => {
  const money = work({});
  expect(money.contrasts.find(({ id }) => id === 'gain')?.by.investor).toBe('not sold');
  expect(centsOf(money, 'dealer', 'waiting')).toBe(10_000_000);
});
