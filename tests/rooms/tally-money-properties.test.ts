import { differenceInCalendarDays, getISODay, parseISO } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BUCKET_NAMES, type Bucket, ROLES } from '../../src/facts/bucket.js';
import { dayNumber, dayOfNumber, weekday } from '../../src/facts/day-number.js';
import { PAYMENT_WAYS } from '../../src/facts/ledger.js';
import { divideRounded } from '../../src/tally/money/divide.js';
import { moneyRules } from '../../src/tally/money/money-rules.js';
import type { MoneyTally } from '../../src/tally/money/money-tally.js';
import { centsOf, costRows, hoursRows, sheetOf, trips, workOut } from './tally-money-case.js';

const DEALER_COST: readonly Bucket[] = [
  'purchase',
  'purchase-closing-in-basis',
  'property-tax-taken-over',
  'assessment',
  'improvement',
  'restoration',
  'repair',
  'rebate',
];

const day = fc.integer({ min: dayNumber('2023-01-01'), max: dayNumber('2026-11-20') }).map(dayOfNumber);

const PAYEES = ['Ridge Plumbing', 'ridge  plumbing', 'Shop', 'Hire', 'Son', 'Firm', 'Nobody Known'];

const rows = fc
  .array(
    fc.record({
      date: day,
      payee: fc.constantFrom(...PAYEES),
      cents: fc.integer({ min: -50_000, max: 2_000_000 }),
      bucket: fc.constantFrom(...BUCKET_NAMES),
      paid: fc.constantFrom(...PAYMENT_WAYS, undefined),
      place: fc.constantFrom('kitchen', 'main', 'panel', 'wiring', 'both', undefined),
      receipt: fc.constantFrom('r1', 'r2', undefined),
      taxYear: fc.constantFrom(undefined, undefined, 2024, 2025, 2026),
      salesTax: fc.constantFrom(undefined, 0, 125),
    }),
    { maxLength: 40 },
  )
  .map(costRows);

const SPEC = {
  house: { bought: '2024-02-17', listed: '2026-06-20' },
  people: [{ id: 'ridge', name: 'Ridge Plumbing', trade: 'plumber' }],
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "30' x 40'" }],
  rooms: [
    { id: 'kitchen', level: 'main', use: 'kitchen' },
    { id: 'bath', level: 'main', use: 'bath' },
  ],
  systems: [{ id: 'panel', is: 'electrical panel', where: 'kitchen' }],
  work: [
    { id: 'wiring', what: 'kitchen circuits', did: 'new', where: ['kitchen'] },
    { id: 'both', what: 'floor tile', did: 'new', where: ['kitchen', 'bath'] },
  ],
  documents: [
    { id: 'r1', what: 'receipt', kind: 'receipt', total: '10.00' },
    { id: 'r2', what: 'invoice', kind: 'invoice' },
  ],
  money: {
    role: 'dealer',
    'in-business': true,
    sale: { closed: '2026-08-14', price: '246,000.00' },
    land: { 'assessed-land': '19,600', 'assessed-building': '78,400' },
    rental: { 'in-service': '2025-06-01' },
    reductions: [
      { what: 'depreciation', amount: '1,000.00' },
      { what: 'easement', amount: '333.33' },
    ],
    payees: [
      { name: 'Shop', sells: 'goods' },
      { name: 'Hire', sells: 'rent', 'tax-class': 'individual' },
      { name: 'Son', sells: 'wages', relation: 'son, 17' },
      { name: 'Firm', sells: 'services', 'tax-class': 's-corporation' },
    ],
  },
} as const satisfies Parameters<typeof workOut>[0];

const sum = (cents: readonly number[]): number => cents.reduce((total, one) => total + one, 0);
const sorted = (numbers: readonly number[]): number[] => [...numbers].sort((a, b) => a - b);
const parts = (money: MoneyTally, role: (typeof ROLES)[number]) => sheetOf(money, role).parts;

const check = (property: (costs: ReturnType<typeof costRows>) => void): void =>
  fc.assert(fc.property(rows, property), { seed: 551, numRuns: 60 });

describe('for any cost sheet', () => {
  test('each row is in one bucket, one payee’s year, and sums agree', () => {
    check((costs) => {
      const { money } = workOut(SPEC, { costs });
      const all = sum(costs.map(({ cents }) => cents));
      const numbers = costs.map(({ row }) => row);
      expect(money.allPaid).toBe(all);
      expect(sum(money.totals.map(({ cents }) => cents))).toBe(all);
      expect(sorted(money.totals.flatMap((total) => total.rows))).toEqual(numbers);
      expect(sum(money.payees.map(({ paid }) => paid))).toBe(all);
      expect(sorted(money.payees.flatMap((payee) => payee.rows))).toEqual(numbers);
      for (const payee of money.payees)
        expect(payee.counted + sum(payee.leftOut.map(({ cents }) => cents))).toBe(payee.paid);
    });
  });

  test('cost of goods sold over all years is the cost of the house', () => {
    check((costs) => {
      const { money } = workOut(SPEC, { costs });
      const cost = sum(costs.filter(({ bucket }) => DEALER_COST.includes(bucket)).map(({ cents }) => cents));
      const lines = parts(money, 'dealer').flatMap((part) => part.lines);
      const at = (formLine: string) =>
        sum(lines.filter((line) => line.formLine === formLine).map((line) => line.cents ?? 0));
      expect(at('42')).toBe(cost);
      expect(at('36') + at('37') + at('38') + at('39')).toBe(cost);
      expect(centsOf(money, 'dealer', 'cost')).toBe(cost);
      expect(centsOf(money, 'dealer', 'gross-profit')).toBe(24_600_000 - cost);
    });
  });

  test('unsold, all of it waits', () => {
    check((costs) => {
      const { sale: _, ...unsold } = SPEC.money;
      const { money } = workOut({ ...SPEC, money: unsold }, { costs });
      const goods = parts(money, 'dealer').filter(({ id }) => id.startsWith('goods-'));
      const last = goods.at(-1)?.lines.find(({ formLine }) => formLine === '41')?.cents;
      expect(last).toBe(centsOf(money, 'dealer', 'cost'));
      for (const [at, part] of goods.entries()) {
        expect(part.lines.find(({ formLine }) => formLine === '42')?.cents).toBe(0);
        // What one year ends with, the next begins with.
        const begins = goods[at + 1]?.lines.find(({ formLine }) => formLine === '35')?.cents;
        if (begins !== undefined)
          expect(begins).toBe(part.lines.find(({ formLine }) => formLine === '41')?.cents);
      }
    });
  });

  test('a holder’s lines add up, and land, building and the rest are the adjusted basis', () => {
    check((costs) => {
      const { money } = workOut(SPEC, { costs });
      for (const role of ['investor', 'main-home', 'rental'] as const) {
        const normal = (id: string): number =>
          sum(
            (parts(money, role).find((part) => part.id === id)?.lines ?? [])
              .filter(({ weight }) => weight === 'normal')
              .map(({ cents }) => cents ?? 0),
          );
        const basis = centsOf(money, role, 'adjusted-basis') ?? Number.NaN;
        expect(normal('first-cost') + normal('raised') + normal('lowered')).toBe(basis);
        const land = parts(money, role).find(({ id }) => id === 'land-and-building')?.lines ?? [];
        const three = land.filter(({ id }) => ['building', 'land', 'undivided'].includes(id));
        expect(sum(three.map(({ cents }) => cents ?? 0))).toBe(basis);
        const selling = sum(costs.filter(({ bucket }) => bucket === 'selling').map(({ cents }) => cents));
        expect(centsOf(money, role, 'gain')).toBe(24_600_000 - selling - basis);
      }
    });
  });

  test('a worksheet names a row at most once among what it adds, and lines never twice', () => {
    check((costs) => {
      const { money } = workOut(SPEC, { costs });
      const rules = moneyRules();
      for (const role of ROLES) {
        const lines = parts(money, role).flatMap((part) => part.lines);
        // Said a second time, by what it was for.
        const again = parts(money, role).find(({ id }) => id === 'improvement-groups')?.lines ?? [];
        expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
        for (const { id } of lines) expect(id).toMatch(/^[a-z0-9-]+$/);
        const told = lines
          .filter((line) => line.id !== 'undivided' && !again.includes(line))
          .flatMap((line) => line.rows);
        expect(sorted(told)).toEqual(costs.map(({ row }) => row));
        for (const line of lines) {
          expect(sorted(line.rows)).toEqual(line.rows);
          expect(line.rules.length).toBeGreaterThan(0);
          for (const id of line.rules) expect(rules.has(id), id).toBe(true);
        }
      }
      const cited = money.rules.map(({ id }) => id);
      expect(cited).toEqual([...new Set(cited)].sort());
    });
  });

  test('a rental’s improvements by place are what the basis has of them, less what came back', () => {
    check((costs) => {
      const { money } = workOut(SPEC, { costs });
      const lines = parts(money, 'rental').find(({ id }) => id === 'improvement-groups')?.lines ?? [];
      const wanted = parts(money, 'rental')
        .filter(({ id }) => id === 'raised' || id === 'lowered')
        .flatMap((part) => part.lines)
        .filter(
          ({ id, weight }) => weight === 'normal' && id !== 'assessment' && !id.startsWith('reduction'),
        );
      expect(sorted(lines.flatMap((line) => line.rows))).toEqual(sorted(wanted.flatMap((line) => line.rows)));
      const normal = lines.filter(({ weight }) => weight === 'normal');
      expect(sum(normal.map(({ cents }) => cents ?? 0))).toBe(sum(wanted.map(({ cents }) => cents ?? 0)));
    });
  });

  test('shares of the spending add up to it', () => {
    check((costs) => {
      const hours = hoursRows(costs.map(({ place }, at) => ({ place, hundredths: at * 25 })));
      const { lessons } = workOut(SPEC, { costs, hours }).money;
      for (const shares of [lessons.byTrade, lessons.byRoom]) {
        expect(sum(shares.map(({ cents }) => cents))).toBe(lessons.spent);
        expect(sum(shares.map(({ hundredths }) => hundredths))).toBe(lessons.hours.owner);
      }
      const bought = costs.some(({ bucket }) => bucket === 'purchase');
      expect(lessons.profit).toBe(bought ? 24_600_000 - sum(costs.map(({ cents }) => cents)) : undefined);
    });
  });

  test('the order of the rows does not matter', () => {
    fc.assert(
      fc.property(
        rows.chain((costs) =>
          fc.tuple(fc.constant(costs), fc.shuffledSubarray(costs, { minLength: costs.length })),
        ),
        ([costs, shuffled]) => {
          const plain = workOut(SPEC, { costs });
          const mixed = workOut(SPEC, { costs: shuffled });
          expect({ ...mixed.money, ledger: undefined }).toEqual({ ...plain.money, ledger: undefined });
          expect(mixed.diagnostics).toEqual(plain.diagnostics);
        },
      ),
      { seed: 523, numRuns: 40 },
    );
  });

  test('miles: every trip is in one span, and no span mixes rates', () => {
    const some = fc.array(
      fc.record({
        date: fc.integer({ min: dayNumber('2018-01-01'), max: dayNumber('2026-11-20') }).map(dayOfNumber),
        thousandths: fc.nat(500_000),
        tolls: fc.nat(900),
      }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(some, (words) => {
        const made = trips(words);
        const { miles } = workOut({}, { trips: made }).money;
        expect(sorted(miles.flatMap((span) => span.rows))).toEqual(made.map(({ row }) => row));
        expect(sum(miles.map(({ thousandths }) => thousandths))).toBe(
          sum(made.map((trip) => trip.thousandths)),
        );
        expect(sum(miles.map(({ tolls }) => tolls))).toBe(sum(made.map((trip) => trip.tolls)));
        for (const span of miles) {
          expect(span.rate === undefined).toBe(span.from < '2020');
          expect(span.from.slice(0, 4)).toBe(span.to.slice(0, 4));
          for (const row of span.rows) {
            const date = made.find((trip) => trip.row === row)?.date ?? '';
            expect(date >= span.from && date <= span.to).toBe(true);
          }
        }
      }),
      { seed: 463, numRuns: 60 },
    );
  });
});

describe('counting', () => {
  test('days agree with date-fns', () => {
    fc.assert(
      fc.property(fc.integer({ min: -134_000, max: 84_000 }), (number) => {
        const iso = dayOfNumber(number);
        expect(dayNumber(iso)).toBe(number);
        expect(differenceInCalendarDays(parseISO(iso), parseISO('1970-01-01'))).toBe(number);
        expect(weekday(number) + 1).toBe(getISODay(parseISO(iso)));
      }),
      { seed: 7503, numRuns: 1000, examples: [[0], [11_016], [-1]] },
    );
  });

  test('division rounds once, the half away from zero', () => {
    expect([5n, -5n, 4n, -4n, 0n, 15n].map((one) => divideRounded(one, 10n))).toEqual([1, -1, 0, 0, 0, 2]);
    expect(() => divideRounded(1n, 0n)).toThrow(RangeError);
    expect(() => divideRounded(2n ** 60n, 1n)).toThrow(RangeError);
  });
});
