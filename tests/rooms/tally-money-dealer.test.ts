/** A dealer's sheet as a whole: every year, line, rule and fact of a house that was bought in one year and sold in the next. */
import { describe, expect, it } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { type CostWords, costRows, lineOf, sheetOf, workOut } from './tally-money-case.js';

type Money = NonNullable<PartialSpec['money']>;

const BOUGHT = { date: '2025-11-10', bucket: 'purchase', cents: 10_000_000 } as const;
const ROWS: readonly CostWords[] = [
  BOUGHT,
  { date: '2025-11-10', bucket: 'purchase-closing-out', cents: 30_000 },
  { date: '2026-03-01', bucket: 'improvement', payee: 'Plumber', cents: 300_000 },
  { date: '2026-03-04', bucket: 'repair', payee: 'Shop', cents: 50_000 },
  { date: '2026-04-01', bucket: 'insurance-payment', cents: -200_000 },
  { date: '2026-03-07', bucket: 'tool', cents: 25_000 },
  { date: '2026-04-06', bucket: 'utilities', cents: 7_000 },
  { date: '2026-08-14', bucket: 'selling', cents: 600_000 },
  { date: '2027-01-09', bucket: 'repair', payee: 'Shop', cents: 1_000 },
];

// Ten dollars a day: 313 days are the seller's, from January 1 to November 9, and the buyer paid for them.
const BILL: Money['property-tax'] = [
  { from: '2025-01-01', amount: '3,650.00', 'paid-by': 'buyer', reimbursed: 'no' },
];
const SOLD: Money['sale'] = { closed: '2026-08-14', price: '150,000.00' };

const work = (rows: readonly CostWords[], money: Money, asOf = '2027-02-01', bought = '2025-11-10') =>
  workOut(
    {
      house: { bought },
      money: {
        role: 'dealer',
        payees: [
          { name: 'Plumber', sells: 'services' },
          { name: 'Shop', sells: 'goods' },
        ],
        ...money,
      },
    },
    { costs: costRows(rows) },
    asOf,
  ).money;

/** Its lines by part: what each comes to. */
const sums = (money: ReturnType<typeof work>) =>
  Object.fromEntries(
    sheetOf(money, 'dealer').parts.map(({ id, lines }) => [
      id,
      Object.fromEntries(lines.map((line) => [line.id.replace(/^y\d+-/, ''), line.cents])),
    ]),
  );

describe('a dealer’s house, bought in one year and sold in the next', () => {
  const money = work(ROWS, { 'property-tax': BILL, sale: SOLD });
  it('comes to this, year by year', () => {
    expect(sums(money)).toEqual({
      'goods-2025': {
        35: 0,
        36: 10_000_000,
        37: 0,
        38: 0,
        39: 313_000,
        40: 10_313_000,
        41: 10_313_000,
        42: 0,
      },
      'apart-2025': { 'purchase-closing-out': 30_000 },
      'goods-2026': {
        ...{ 35: 10_313_000, 36: 0, 37: 300_000, 38: 50_000, 39: 0, 40: 10_663_000, 41: 0, 42: 10_663_000 },
      },
      'sale-2026': { 1: 15_000_000, 4: -10_663_000, 5: 15_000_000 - 10_663_000 },
      'apart-2026': { selling: 600_000, utilities: 7_000, tool: 25_000, 'insurance-payment': -200_000 },
      'goods-2027': { 35: 0, 36: 0, 37: 0, 38: 1_000, 39: 0, 40: 1_000, 41: 0, 42: 1_000 },
      'all-years': { cost: 10_664_000, receipts: 15_000_000, 'gross-profit': 15_000_000 - 10_664_000 },
    });
  });

  it.each([
    ['y2025-36', ['cost-of-goods-sold', 'cost-when-bought'], [2], []],
    [
      'y2025-39',
      ['cost-of-goods-sold', 'closing-in-basis', 'work-before-use'],
      [],
      ['money.property-tax[0]', 'house.bought'],
    ],
    ['y2025-41', ['cost-of-goods-sold'], [], ['money.sale.closed']],
    ['y2025-purchase-closing-out', ['closing-outside-basis'], [3], []],
    ['y2026-37', ['cost-of-goods-sold', 'own-labour', 'work-before-use'], [4], []],
    ['y2026-38', ['cost-of-goods-sold', 'work-before-use'], [5], []],
    ['y2026-1', ['gross-profit-lines'], [], ['money.sale.price', 'money.sale.closed']],
    ['y2026-selling', ['gross-profit-lines'], [9], []],
    ['y2026-utilities', ['holding-apart'], [8], []],
    ['y2026-tool', ['de-minimis'], [7], []],
    ['y2026-insurance-payment', ['what-moves-basis'], [6], []],
    ['cost', ['cost-of-goods-sold', 'what-moves-basis'], [], []],
    ['receipts', ['gross-profit-lines'], [], ['money.sale.price']],
  ] as const)('rests line %s on rules, rows and facts', (id, rules, rows, facts) => {
    const line = lineOf(money, 'dealer', id);
    expect([line.rules, line.rows, line.facts.map((fact) => fact.path)]).toEqual([rules, rows, facts]);
  });

  it('says beside the lines what is open', () => {
    const lines = sheetOf(money, 'dealer').parts.flatMap((part) => part.lines);
    const notes = lines.flatMap(({ id, note }) =>
      note === undefined || id.endsWith('-37') ? [] : [[id, note]],
    );
    expect(Object.fromEntries(notes)).toEqual({
      'y2025-39':
        'with property tax by days, $3,130.00: $3,650.00 for the 365 days from 1 January 2025, paid by the buyer: 52 days and $520.00 are the buyer’s, $3,130.00 the seller’s',
      'y2025-41': 'unsold on December 31, so the cost waits',
      'y2026-5': 'before costs of selling and holding, which stand apart',
      'y2026-utilities': 'open: inside or outside cost; not in the lines above',
      'y2026-insurance-payment':
        'open: income, or less cost; not in the lines above, and both sums stand under “All years together”',
      'y2027-38': 'row 10 is dated after the sale and counted all the same',
      'y2027-42': 'paid after the year of sale; the preparer decides in which year it counts',
      cost: 'open: $106,640.00 leaves insurance payments out; if they lower the cost, it is $104,640.00. The preparer decides',
      'gross-profit':
        'open: $43,360.00 leaves insurance payments out; if they lower the cost, the profit is $45,360.00. The preparer decides',
    });
  });

  // Basis of a holder: 100,000.00 and 3,130.00 for the purchase, 3,000.00 of work, 2,000.00 of insurance taken off; with 510.00
  // of repairs if they count. Gain: the price less that and 6,000.00 of selling.
  it.each([
    ['repairs', '$510.00, all of it cost of the house', '$510.00 are open', '$510.00 are open'],
    [
      'holding',
      '$70.00, apart; open whether an expense of the year or cost',
      '$70.00, apart; some may be added by election',
      '$70.00, apart; open whether an expense of the year or cost',
    ],
    [
      'closing-out',
      '$300.00, apart; for the preparer to place',
      '$300.00, not in the basis',
      '$300.00, apart; for the preparer to place',
    ],
    [
      'selling',
      '$6,000.00, apart; for the preparer to place',
      '$6,000.00, taken off the price',
      '$6,000.00, taken off the price',
    ],
    [
      'basis',
      '$106,640.00, or $104,640.00: insurance payments are open',
      '$104,130.00, or $104,640.00: repairs are open',
      '$104,130.00, or $104,640.00: repairs are open',
    ],
    [
      'gain',
      '$43,360.00, or $45,360.00: insurance payments are open; before costs of selling and holding',
      '$39,870.00, or $39,360.00: repairs are open; after costs of selling',
      '$39,870.00, or $39,360.00: repairs are open; after costs of selling',
    ],
  ])('stands beside other roles: %s', (id, dealer, investor, rental) => {
    const by = money.contrasts.find((one) => one.id === id)?.by;
    expect([by?.dealer, by?.investor, by?.rental]).toEqual([dealer, investor, rental]);
  });
});

describe('the years of a dealer’s sheet', () => {
  const years = (...given: Parameters<typeof work>) =>
    sheetOf(work(...given), 'dealer').parts.flatMap(({ id }) => /^goods-(\d+)$/.exec(id)?.[1] ?? []);
  it.each([
    ['from the purchase where nothing was paid', [], {}, '2027-02-01', ['2025', '2026', '2027']],
    ['from the first row where there are any', ROWS.slice(2, 4), {}, '2026-05-01', ['2026']],
    [
      'from the purchase with a bill of it',
      ROWS.slice(2, 4),
      { 'property-tax': BILL },
      '2026-05-01',
      ['2025', '2026'],
    ],
    ['to the sale', [BOUGHT], { sale: SOLD }, '2028-01-01', ['2025', '2026']],
    ['with a later row’s', ROWS, { sale: SOLD }, '2028-01-01', ['2025', '2026', '2027']],
  ] as const)('go %s', (_name, rows, money, asOf, expected) => {
    expect(years(rows, money, asOf)).toEqual(expected);
  });

  it('put a bill into the year of the purchase alone', () => {
    const open = sums(work(ROWS.slice(2, 4), { 'property-tax': BILL }, '2026-05-01'));
    expect([open['goods-2025']?.[39], open['goods-2026']?.[39], open['all-years']]).toEqual([
      313_000,
      0,
      { cost: 313_000 + 350_000, waiting: 663_000 },
    ]);
  });

  it('say of the last that it waits, and till when it was looked at', () => {
    const open = work(ROWS.slice(0, 5), {}, '2026-05-01');
    expect(['y2025-41', 'y2026-41'].map((id) => lineOf(open, 'dealer', id).note)).toEqual([
      'unsold on December 31, so the cost waits',
      'if it is still unsold on December 31, 2026; counted to the as-of day',
    ]);
    expect(lineOf(open, 'dealer', 'y2026-41').facts).toEqual([]);
    expect(lineOf(open, 'dealer', 'cost').note).toContain('it is $101,500.00');
  });
});
