import { load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { type CostWords, costRows, hoursRows, told, trips, workOut } from './tally-money-case.js';

const HOUSE: PartialSpec = {
  house: { bought: '2026-02-17' },
  money: { role: 'dealer', 'in-business': false },
};

const check = (rows: readonly Partial<CostWords>[], spec: PartialSpec = {}) =>
  workOut(
    { ...HOUSE, ...spec },
    { costs: costRows(rows.map((row) => ({ cents: 1000, bucket: 'improvement', receipt: 'r', ...row }))) },
  ).diagnostics;

describe('dates', () => {
  test('after the as-of day is an error, in any sheet', () => {
    const { diagnostics } = workOut(HOUSE, {
      costs: costRows([{ date: '2026-11-21', cents: 1, bucket: 'repair', receipt: 'r' }]),
      trips: trips([{ date: '2026-12-01', thousandths: 1 }]),
      hours: hoursRows([{ date: '2027-01-01', hundredths: 100 }]),
    });
    expect(told(diagnostics, 'tally.row-date').map((line) => line.slice(0, 22))).toEqual([
      'error costs.2.date thi',
      'error miles.2.date thi',
      'error hours.2.date thi',
    ]);
    expect(diagnostics.find(({ code }) => code === 'tally.row-date')?.hints).toContain(
      'build for that day:  --as-of 2026-11-21',
    );
  });

  test('before the purchase is odd for work, and a year before for anything', () => {
    const lines = (date: string, bucket: CostWords['bucket']) =>
      told(check([{ date, bucket }]), 'tally.row-date');
    expect(lines('2026-02-17', 'repair')).toEqual([]);
    expect(lines('2026-02-16', 'repair')).toEqual([
      'warning costs.2.date this row is earlier than the purchase (2026-02-17)',
    ]);
    expect(lines('2026-01-05', 'purchase-closing-in-basis')).toEqual([]);
    expect(lines('2025-02-17', 'purchase')).toEqual([]);
    expect(lines('2025-02-16', 'purchase')[0]).toContain('by more than 365 days');
    expect(told(check([{ date: '2020-01-01' }], { house: {} }), 'tally.row-date')).toEqual([]);
  });

  test('work after the sale is odd; the last bills are not', () => {
    const sold = { money: { sale: { closed: '2026-08-14', price: '1.00' } } };
    const lines = (date: string, bucket: CostWords['bucket']) =>
      told(check([{ date, bucket }], sold), 'tally.row-date');
    expect(lines('2026-08-14', 'improvement')).toEqual([]);
    for (const bucket of ['improvement', 'repair', 'restoration'] as const)
      expect(lines('2026-08-15', bucket)).toEqual([
        'warning costs.2.date this row is dated after the sale (2026-08-14), and is counted all the same',
      ]);
    for (const bucket of ['selling', 'utilities', 'rebate', 'tool'] as const)
      expect(lines('2026-09-30', bucket)).toEqual([]);
    expect(told(check([{ date: '2026-09-30' }]), 'tally.row-date')).toEqual([]);
  });
});

describe('rows', () => {
  test('the same one twice', () => {
    const same = { date: '2026-03-03', payee: 'Shop', what: 'nails', cents: 450 };
    const lines = told(
      check([
        same,
        { ...same, payee: 'SHOP ' },
        { ...same, what: 'screws' },
        { ...same, cents: 451 },
        { ...same, receipt: 'other' },
        same,
      ]),
      'tally.row-twice',
    );
    expect(lines).toEqual([
      'warning costs.3.date this row says the same as row 2',
      'warning costs.7.date this row says the same as row 2',
    ]);
  });

  test('trips and hours too', () => {
    const trip = { date: '2026-03-03', thousandths: 12_000 };
    const hour = { hundredths: 100, what: 'sanding' };
    const { diagnostics } = workOut(HOUSE, { trips: trips([trip, trip]), hours: hoursRows([hour, hour]) });
    expect(told(diagnostics, 'tally.row-twice').map((line) => line.split(' ')[1])).toEqual([
      'miles.3.date',
      'hours.3.date',
    ]);
  });

  test('without a receipt, all in the same words', () => {
    const lines = told(check([{ receipt: undefined }, {}, { receipt: undefined }]), 'tally.no-receipt');
    expect(lines.map((line) => line.split(' ')[1])).toEqual(['costs.2.receipt', 'costs.4.receipt']);
    expect(new Set(lines.map((line) => line.replace(/costs\.\d/, ''))).size).toBe(1);
  });

  test('more back than was paid', () => {
    const lines = told(
      check([
        { payee: 'Shop', cents: -500 },
        { payee: 'Shop', cents: 200 },
        { payee: 'Maker', bucket: 'rebate', cents: -900 },
        { payee: 'Other', bucket: 'repair', cents: 700 },
      ]),
      'tally.negative',
    );
    // One payee alone took its bucket below zero, which is told once.
    expect(lines).toEqual(['warning costs.2.amount “Shop” stands at −$3.00: more came back than was paid']);
    const two = told(
      check([
        { payee: 'Shop', cents: 100 },
        { payee: 'Shop', cents: -500 },
        { payee: 'Other', cents: 200 },
      ]),
      'tally.negative',
    );
    expect(two).toEqual([
      'warning costs.3.amount the bucket “Improvements” stands at −$2.00: more came back than was paid',
      'warning costs.3.amount “Shop” stands at −$4.00: more came back than was paid',
    ]);
  });

  test('no role, once there are costs', () => {
    expect(told(check([{}], { money: {} }), 'tally.role')).toHaveLength(1);
    expect(told(check([{}]), 'tally.role')).toEqual([]);
    expect(told(workOut({}, {}).diagnostics, 'tally.role')).toEqual([]);
  });
});

describe('receipts', () => {
  const paper = (total: string | undefined, kind: 'receipt' | 'invoice' | 'letter' = 'receipt') => ({
    documents: [{ id: 'r1', what: 'a paper', kind, ...(total === undefined ? {} : { total }) }],
  });
  const onPaper = (total: string, ...cents: readonly number[]) =>
    told(
      check(
        cents.map((one) => ({ cents: one, receipt: 'r1' })),
        paper(total),
      ),
      'tally.receipt-total',
    );

  test('that no row names, where there is a cost sheet', () => {
    expect(told(check([{}], paper('10.00')), 'tally.unused-receipt')).toEqual([
      'warning documents.0 no row of the cost sheet names this paper',
    ]);
    expect(told(check([{}], paper(undefined, 'invoice')), 'tally.unused-receipt')).toHaveLength(1);
    expect(told(check([{}], paper('10.00', 'letter')), 'tally.unused-receipt')).toEqual([]);
    expect(told(workOut(paper('10.00'), {}).diagnostics, 'tally.unused-receipt')).toEqual([]);
  });

  test('split over rows, paid in parts, and with a refund, agree', () => {
    expect(onPaper('10.00', 1000)).toEqual([]);
    expect(onPaper('10.00', 400, 600)).toEqual([]);
    expect(onPaper('10.00', 1000, -250)).toEqual([]);
    expect(onPaper('7.50', 1000, -250)).toEqual([]);
    expect(onPaper('2.50', -250)).toEqual([]);
  });

  test('above the total is an error, below it something is missing', () => {
    const [above, below] = [onPaper('10.00', 400, 601), onPaper('10.00', 999)];
    expect([above.length, below.length]).toEqual([1, 1]);
    expect(above[0]).toMatch(/^error documents\.0\.total rows 2 and 3 .*\$10\.01 .* only comes to \$10\.00$/);
    const many = onPaper('10.00', ...Array.from({ length: 30 }, () => 40));
    expect(many[0]).toContain('rows 2 to 31 of costs.csv');
    expect(below[0]).toMatch(
      /^warning documents\.0\.total \$0\.01 of .* has no row.*\$10\.00.*row 2 .*\$9\.99/,
    );
  });
});

describe('a receipt’s total', () => {
  test('is to be typed as plain digits, with a hyphen for a minus', () => {
    const hints = (total: string, cents: number) =>
      check([{ cents, receipt: 'r1' }], {
        documents: [{ id: 'r1', what: 'a paper', kind: 'receipt', total }],
      }).find(({ code }) => code === 'tally.receipt-total')?.hints ?? [];
    expect(hints('1,000.00', 123_450)[0]).toBe('if the paper says so, write  total: 1234.50');
    expect(hints('-10.00', -123_405)[0]).toBe('if the paper says so, write  total: -1234.05');
  });
});

describe('a sale', () => {
  const sold = (
    closed: string,
    asOf: string,
    rows: readonly CostWords[] = [{ bucket: 'purchase', cents: 100 }],
  ) =>
    workOut({ money: { ...HOUSE.money, sale: { closed, price: '10.00' } } }, { costs: costRows(rows) }, asOf);

  test('of a month is closed when that month is over, and not before', () => {
    const early = sold('2026-08', '2026-08-10');
    expect(early.money.sale).toBeUndefined();
    expect(early.money.lessons).toMatchObject({ profit: undefined, profitNote: 'not sold yet' });
    expect(told(early.diagnostics, 'tally.future')).toEqual([
      'note money.sale.closed this may lie after the day the packet is made for (2026-08-10), so the sheets take the house as unsold',
    ]);
    const late = sold('2026-08', '2026-08-31');
    expect(late.money.sale).toEqual({
      price: 1000,
      day: '2026-08-31',
      year: 2026,
      sure: false,
      written: '2026-08',
      words: 'August 2026',
    });
    expect(told(late.diagnostics, 'tally.future')).toEqual([]);
  });

  test('of a day is closed on that day, and one to come needs no remark', () => {
    expect(sold('2026-08-14', '2026-08-14').money.sale).toMatchObject({ day: '2026-08-14', sure: true });
    const planned = sold('2026-08-14', '2026-08-13');
    expect(planned.money.sale).toBeUndefined();
    expect(told(planned.diagnostics, 'tally.future')).toEqual([]);
  });

  test('without a row of the purchase leaves no profit', () => {
    const { money, diagnostics } = sold('2026-08-14', '2026-08-20', [{ bucket: 'repair', cents: 300 }]);
    expect(money.lessons).toMatchObject({
      profit: undefined,
      profitNote: 'not known: the cost sheet has no row of the purchase',
      profitAfterHours: undefined,
    });
    expect(told(diagnostics, 'tally.gap')[0]).toMatch(/^warning money\.sale .*bucket {2}purchase/);
    const known = sold('2026-08-14', '2026-08-20');
    expect(known.money.lessons).toMatchObject({ profit: 900, profitNote: undefined });
    expect(told(known.diagnostics, 'tally.gap')).toEqual([]);
  });
});

describe('miles', () => {
  const log = (words: Parameters<typeof trips>[0], spec: PartialSpec = {}) =>
    told(workOut({ ...HOUSE, ...spec }, { trips: trips(words) }).diagnostics, 'tally.miles');
  const odometer = (end: number, vehicle?: string) => ({
    money: { odometer: [{ year: 2026, start: 1000, end, ...(vehicle === undefined ? {} : { vehicle }) }] },
  });

  test('no rate before 2020 or after 2026, told once a year', () => {
    const worked = workOut(HOUSE, {
      trips: trips([
        { date: '2019-05-01', thousandths: 5000 },
        { date: '2019-06-01', thousandths: 5000 },
      ]),
    });
    expect(worked.money.miles).toMatchObject([{ rate: undefined, cents: undefined, thousandths: 10_000 }]);
    expect(told(worked.diagnostics, 'tally.miles').filter((line) => line.includes('no rate'))).toHaveLength(
      1,
    );
    expect(
      workOut(HOUSE, { trips: trips([{ date: '2027-01-01', thousandths: 5000 }]) }, '2027-02-01').money
        .miles[0]?.rate,
    ).toBeUndefined();
  });

  test('odometer readings, by year and vehicle', () => {
    const trip = { date: '2026-05-01', thousandths: 12_000 };
    expect(log([trip, trip])).toEqual([
      'warning miles.2.date there is no odometer reading for 2026, which a mileage log should have',
    ]);
    expect(log([trip], odometer(2000))).toEqual([]);
    expect(log([{ ...trip, vehicle: 'Van' }], odometer(2000, 'van'))).toEqual([]);
    expect(log([{ ...trip, vehicle: 'truck' }], odometer(2000, 'van'))[0]).toContain('of “truck”');
    expect(log([trip], odometer(1011))[0]).toContain('more miles (12) than the odometer ran (11)');
    expect(log([trip], odometer(900))[0]).toContain('stands lower');
    // Signs and blanks make no other vehicle.
    expect(log([{ ...trip, vehicle: 'F-150' }], odometer(2000, 'f 150'))).toEqual([]);
  });

  test('a reading before the end of the year is named, and later trips are not held against it', () => {
    const read = (end: number) => ({
      money: { odometer: [{ year: 2026, start: 1000, end, read: '2026-06-01' }] },
    });
    const rows = [
      { date: '2026-05-01', thousandths: 12_000 },
      { date: '2026-06-02', thousandths: 90_000 },
    ];
    expect(log(rows, read(1012))).toEqual([]);
    expect(log(rows, read(1011))[0]).toContain(
      'the trips of 2026, to the reading of 1 June 2026, add up to more miles (12)',
    );
    expect(log(rows, read(900))[0]).toContain('lower at its reading of 1 June 2026 than at the beginning');
  });

  test('trips before the purchase are told once, in one note', () => {
    const at = (date: string) => ({ date, thousandths: 1000 });
    const trips = [at('2026-03-01'), at('2026-02-16'), at('2026-01-02'), at('2026-02-17')];
    expect(log(trips, odometer(2000))).toEqual([
      'note miles.3.date 2 trips before the purchase (2026-02-17) are in the miles',
    ]);
    expect(log([at('2026-02-17')], odometer(2000))).toEqual([]);
  });

  test.each(['Van, white', 'van: white', 'true', '[van]', 'the "van"'])(
    'the vehicle %j stands in the hint as YAML reads it back',
    (vehicle) => {
      const { diagnostics } = workOut(HOUSE, {
        trips: trips([{ date: '2026-05-01', thousandths: 12_000, vehicle }]),
      });
      const hint = diagnostics.find(({ code }) => code === 'tally.miles')?.hints[0] ?? '';
      expect(load(/\{.*\}/.exec(hint)?.[0] ?? '')).toEqual({ year: 2026, vehicle, start: 48210, end: 60114 });
    },
  );
});
