import { describe, expect, test } from 'vitest';
import { ROLES } from '../../src/facts/bucket.js';
import { moneyRules } from '../../src/tally/money/money-rules.js';
import { basisRules } from '../../src/tally/tables/basis.js';
import { mileageRules } from '../../src/tally/tables/mileage.js';
import { payeeRules } from '../../src/tally/tables/payees.js';
import { retentionRules } from '../../src/tally/tables/retention.js';
import type { PartialSpec } from './house-from.js';
import { type CostWords, centsOf, costRows, lineOf, sheetOf, workOut } from './tally-money-case.js';

type Money = NonNullable<PartialSpec['money']>;

const ROWS: readonly CostWords[] = [
  { date: '2025-12-01', bucket: 'purchase-closing-in-basis', cents: 40_000 },
  { date: '2026-02-17', bucket: 'purchase', cents: 10_000_000 },
  { date: '2026-03-01', bucket: 'improvement', payee: 'Plumber', cents: 300_000 },
  { date: '2026-03-02', bucket: 'improvement', payee: 'Shop', cents: 120_000 },
  { date: '2026-03-03', bucket: 'improvement', payee: 'Shop', cents: -20_000 },
  { date: '2026-03-04', bucket: 'repair', payee: 'Whoever', cents: 50_000 },
  { date: '2026-03-05', bucket: 'rebate', payee: 'Maker', cents: -30_000 },
  { date: '2026-03-06', bucket: 'insurance', cents: 70_000 },
  { date: '2026-03-07', bucket: 'tool', cents: 25_000 },
  { date: '2026-08-01', bucket: 'selling', cents: 600_000 },
];

const work = (money: Money = {}, rows = ROWS, spec: PartialSpec = {}) =>
  workOut(
    {
      house: { bought: '2026-02-17' },
      ...spec,
      money: {
        payees: [
          { name: 'Plumber', sells: 'services' },
          { name: 'Shop', sells: 'goods' },
        ],
        ...money,
      },
    },
    { costs: costRows(rows) },
  ).money;

const SOLD = { sale: { closed: '2026-08-14', price: '150,000.00' } } as const;

describe('totals', () => {
  test('by bucket, in their order, refunds and sales tax apart', () => {
    const rows: readonly CostWords[] = [
      { bucket: 'rebate', cents: -3000 },
      { bucket: 'repair', cents: 5000, salesTax: 325 },
      { bucket: 'repair', cents: -1000, salesTax: -65 },
    ];
    expect(work({}, rows).totals).toEqual([
      { bucket: 'repair', cents: 4000, refunds: -1000, salesTax: 260, rows: [3, 4] },
      { bucket: 'rebate', cents: -3000, refunds: 0, salesTax: 0, rows: [2] },
    ]);
  });
});

describe('the sheets', () => {
  test('the stated role stands first, and without one all four stand in their order', () => {
    expect(work({ role: 'rental' }).worksheets.map(({ role }) => role)).toEqual([
      'rental',
      'dealer',
      'investor',
      'main-home',
    ]);
    expect(work().worksheets.map(({ role }) => role)).toEqual([...ROLES]);
    const stated = (role: (typeof ROLES)[number]) =>
      sheetOf(work({ role: 'rental' }), role).notes.find(({ id }) => id === 'stated')?.text;
    expect(stated('rental')).toContain('The owner states this role');
    expect(stated('dealer')).toContain('Not the role the owner states');
  });

  test('no note gives advice, and each says who decides or that it is no advice', () => {
    for (const { notes } of work(SOLD).worksheets)
      for (const { id, text } of notes) {
        expect(text, id).not.toMatch(/\b(should|you can save|we recommend|must)\b/i);
        if (id !== 'own-labour') expect(text, id).toMatch(/The preparer decides\.$|Not tax advice\.$/);
      }
  });
});

describe('a dealer’s sheet', () => {
  const at = (id: string, money: Money = SOLD, rows = ROWS) => centsOf(work(money, rows), 'dealer', id);

  test('divides 37 to 39 by what payees sell, refunds and rebates taken off', () => {
    expect(at('y2026-36')).toBe(10_000_000);
    expect(at('y2026-37')).toBe(300_000);
    expect(at('y2026-38')).toBe(100_000);
    expect(at('y2026-39')).toBe(50_000 - 30_000);
    expect(lineOf(work(SOLD), 'dealer', 'y2026-39').note).toBe(
      'rebates −$300.00, payees of whom it isn’t written $500.00',
    );
    expect(lineOf(work(SOLD), 'dealer', 'y2026-37').note).toContain('the preparer may divide it otherwise');
  });

  test('offices and rebates are no labor, whatever their entry sells', () => {
    const payees: Money['payees'] = [
      { name: 'Landfill', sells: 'services', 'tax-class': 'government' },
      { name: 'Hauler', sells: 'services', 'tax-class': 'individual' },
    ];
    const rows: readonly CostWords[] = [
      { bucket: 'improvement', payee: 'Landfill', cents: 3_800 },
      { bucket: 'improvement', payee: 'Hauler', cents: 46_500 },
      { bucket: 'rebate', payee: 'Hauler', cents: -30_000 },
    ];
    expect(at('y2026-37', { ...SOLD, payees }, rows)).toBe(46_500);
    expect(at('y2026-39', { ...SOLD, payees }, rows)).toBe(3_800 - 30_000);
    expect(lineOf(work({ ...SOLD, payees }, rows), 'dealer', 'y2026-39').note).toBe(
      'offices and other public bodies $38.00, rebates −$300.00',
    );
  });

  test('a cost before the purchase waits as stock', () => {
    expect([at('y2025-39'), at('y2025-41'), at('y2025-42')]).toEqual([40_000, 40_000, 0]);
    expect(at('y2026-35')).toBe(40_000);
    expect(at('y2026-42')).toBe(10_460_000);
    expect(at('y2026-5')).toBe(15_000_000 - 10_460_000);
  });

  test('a row in another tax year counts there, and after the sale it says so', () => {
    const rows = [...ROWS, { date: '2026-09-01', taxYear: 2027, bucket: 'repair' as const, cents: 1000 }];
    expect(at('y2027-42', SOLD, rows)).toBe(1000);
    expect(lineOf(work(SOLD, rows), 'dealer', 'y2027-42').note).toContain('after the year of sale');
    expect(at('gross-profit', SOLD, rows)).toBe(15_000_000 - 10_461_000);
  });

  test('holding, tools and selling stand apart', () => {
    const apart = sheetOf(work(SOLD), 'dealer').parts.find(({ id }) => id === 'apart-2026');
    expect(apart?.lines.map(({ label, cents }) => [label, cents])).toEqual([
      ['Selling costs', 600_000],
      ['Holding: insurance', 70_000],
      ['Tools', 25_000],
    ]);
  });

  test('insurance payments are open: both figures', () => {
    const rows = [...ROWS, { bucket: 'insurance-payment' as const, cents: -200_000 }];
    const line = lineOf(work(SOLD, rows), 'dealer', 'cost');
    expect(line.cents).toBe(10_460_000);
    expect(line.note).toContain('$104,600.00');
    expect(line.note).toContain('$102,600.00');
    expect(work(SOLD, rows).contrasts.find(({ id }) => id === 'basis')?.by.dealer).toContain(
      'or $102,600.00',
    );
  });

  test('unsold it says until when it was counted', () => {
    expect(lineOf(work({}), 'dealer', 'y2026-41').note).toContain(
      'if it is still unsold on December 31, 2026',
    );
    expect(at('waiting', {})).toBe(10_460_000);
  });

  test('a sale after the as-of day has not happened', () => {
    expect(work({ sale: { closed: '2026-11-21', price: '1.00' } }).lessons.profit).toBeUndefined();
    expect(work({ sale: { closed: '2026-11-20', price: '1.00' } }).lessons.profit).toBeDefined();
  });
});

describe('what every sheet says beside its figures', () => {
  test('facts are told in words with their values, and by their path', () => {
    const money = work({
      ...SOLD,
      land: { 'assessed-land': '19,600', 'assessed-building': '78,400' },
      'property-tax': [{ from: '2026-01-01', amount: '3,201.00', 'paid-by': 'buyer', reimbursed: 'no' }],
      rental: { 'in-service': '2026-03-01' },
      reductions: [{ what: 'depreciation', amount: '1,000.00', year: 2026 }],
    });
    const facts = (role: 'dealer' | 'investor' | 'rental', id: string) => lineOf(money, role, id).facts;
    expect(facts('dealer', 'y2026-1')).toEqual([
      { path: 'money.sale.price', says: 'sale price $150,000.00' },
      { path: 'money.sale.closed', says: 'sale closed 14 August 2026' },
    ]);
    expect(facts('investor', 'land').map(({ says }) => says)).toEqual([
      'assessor’s values: land $19,600.00',
      'building $78,400.00 (20 and 80 percent)',
    ]);
    expect(facts('investor', 'property-tax-bill-1')).toEqual([
      {
        path: 'money.property-tax[0]',
        says: 'property tax of 2026: $3,201.00, 47 of 365 days the seller’s, not paid back at closing',
      },
      { path: 'house.bought', says: 'bought 17 February 2026' },
    ]);
    expect(facts('rental', 'improvement-groups-sum')[0]?.says).toBe('ready to be let 1 March 2026');
    expect(facts('investor', 'reduction-1')[0]?.says).toBe('depreciation of 2026: $1,000.00');
    for (const { parts } of money.worksheets)
      for (const fact of parts.flatMap(({ lines }) => lines.flatMap((line) => line.facts)))
        expect(fact.says, fact.path).not.toMatch(/money\.|house\.|undefined/);
  });

  test('the days that a form asks for', () => {
    const dates = (money: Money, role: (typeof ROLES)[number]) =>
      Object.fromEntries((sheetOf(work(money), role).dates ?? []).map(({ id, says }) => [id, says]));
    expect(dates(SOLD, 'dealer')).toEqual({
      acquired: '17 February 2026',
      sold: '14 August 2026',
      held: '178 days',
    });
    expect(dates({ rental: { 'in-service': '2026-06-01' } }, 'rental')).toEqual({
      acquired: '17 February 2026',
      'in-service': '1 June 2026',
      sold: 'not sold on 20 November 2026',
      held: '276 days so far',
    });
    expect(dates({}, 'rental')['in-service']).toContain('not written');
    expect(dates({ sale: { closed: '2026-08', price: '1.00' } }, 'investor').held).toBe(
      'not known to the day',
    );
  });

  test('work dated after the sale is counted, and its line says so', () => {
    const rows = [
      ...ROWS,
      { date: '2026-09-01', bucket: 'improvement' as const, payee: 'Shop', cents: 1000 },
    ];
    const note = 'row 12 is dated after the sale';
    expect(lineOf(work(SOLD, rows), 'dealer', 'y2026-38').note).toContain(note);
    expect(lineOf(work(SOLD, rows), 'investor', 'improvement').note).toContain(note);
    expect(lineOf(work(SOLD), 'investor', 'improvement').note).toBeUndefined();
  });
});

describe('a holder’s sheet', () => {
  test('what is not in the basis, by tax year, and a rental’s by the day it was ready to be let', () => {
    const rows: readonly CostWords[] = [
      { date: '2025-12-01', bucket: 'purchase-closing-out', cents: 900 },
      { date: '2026-02-20', bucket: 'utilities', cents: 100 },
      { date: '2026-03-01', bucket: 'utilities', cents: 20 },
      { date: '2026-03-02', bucket: 'utilities', taxYear: 2027, cents: 3 },
      { date: '2026-04-01', bucket: 'repair', cents: 7 },
    ];
    const apart = (role: 'investor' | 'rental') =>
      sheetOf(work({ rental: { 'in-service': '2026-03-01' } }, rows), role)
        .parts.filter(({ id }) => id.startsWith('apart'))
        .map(({ id, year, lines }) => [id, year, lines.map(({ cents }) => cents)]);
    expect(apart('investor')).toEqual([
      ['apart-2025', 2025, [900]],
      ['apart-2026', 2026, [120]],
      ['apart-2027', 2027, [3]],
    ]);
    expect(apart('rental')).toEqual([
      ['apart-2025-before', 2025, [900]],
      ['apart-2026-before', 2026, [100]],
      ['apart-2026-after', 2026, [7, 20]],
      ['apart-2027-after', 2027, [3]],
    ]);
  });

  test('costs of selling paid in two tax years are two lines of the sale', () => {
    const rows = [...ROWS, { date: '2026-09-01', bucket: 'selling' as const, taxYear: 2027, cents: 500 }];
    expect(centsOf(work(SOLD, rows), 'investor', 'selling-2026')).toBe(-600_000);
    expect(centsOf(work(SOLD, rows), 'investor', 'selling-2027')).toBe(-500);
    expect(centsOf(work(SOLD, rows), 'investor', 'realised')).toBe(15_000_000 - 600_500);
    expect(centsOf(work(SOLD), 'investor', 'selling')).toBe(-600_000);
  });

  test('a rental’s improvements by what they were for, with the days they were paid', () => {
    const rows: readonly CostWords[] = [
      { date: '2026-02-20', bucket: 'improvement', place: 'roof', cents: 300 },
      { date: '2026-02-25', bucket: 'repair', place: 'roof', cents: 20 },
      { date: '2026-03-10', bucket: 'improvement', place: 'roof', cents: 5 },
      { date: '2026-03-11', bucket: 'repair', place: 'roof', cents: 1000 },
      { date: '2026-02-21', bucket: 'restoration', cents: 40 },
      { date: '2026-02-22', bucket: 'insurance-payment', cents: -30 },
    ];
    const money = work({ rental: { 'in-service': '2026-03-01' } }, rows, {
      work: [{ id: 'roof', what: 'roof underlayment', did: 'new' }],
    });
    const part = sheetOf(money, 'rental').parts.find(({ id }) => id === 'improvement-groups');
    expect(part?.lines.map(({ label, cents, note }) => [label, cents, note])).toEqual([
      ['Roof underlayment', 320, 'paid 20 February 2026 to 25 February 2026'],
      ['Whole house, restoration after damage', 10, 'paid 21 February 2026 to 22 February 2026'],
      ['Roof underlayment', 5, 'paid 10 March 2026, after it was ready to be let'],
      [
        'Improvements, restoration and repairs that count',
        335,
        expect.stringContaining('classes of property'),
      ],
    ]);
    const home = work({ rental: { 'in-service': '2026-03-01', 'from-home': 'yes' } }, rows);
    expect(lineOf(home, 'rental', 'improvement-groups-sum').note).toContain('while it was a home');
    expect(part?.lines.at(-1)?.note).not.toContain('while it was a home');
    expect(sheetOf(money, 'rental').form).toMatch(/Schedule E.*Form 4562.*Form 4797/);
    expect(sheetOf(money, 'rental').notes.find(({ id }) => id === 'rents')?.text).toContain(
      'Rents received are not in this folder',
    );
  });

  test('an investor’s repairs are open: both figures, in basis and gain', () => {
    const money = work(SOLD);
    expect(centsOf(money, 'investor', 'adjusted-basis')).toBe(10_410_000);
    expect(lineOf(money, 'investor', 'repair-open').note).toContain('with them $104,600.00');
    expect(centsOf(money, 'investor', 'gain')).toBe(15_000_000 - 600_000 - 10_410_000);
    expect(lineOf(money, 'investor', 'gain').note).toContain('$39,400.00 with them');
  });

  test('a rental’s repairs count before it is ready to be let', () => {
    const from = (day: string) =>
      centsOf(work({ rental: { 'in-service': day } }), 'rental', 'adjusted-basis');
    expect(from('2026-03-05')).toBe(10_460_000);
    expect(from('2026-03-04')).toBe(10_410_000);
    // The month alone leaves a repair within it open.
    const month = work({ rental: { 'in-service': '2026-03' } });
    expect(lineOf(month, 'rental', 'repair-open').cents).toBe(50_000);
  });

  test('a home that became a rental follows the rule for homes before', () => {
    const home = (remodel: 'yes' | 'no') =>
      centsOf(
        work({ 'extensive-remodel': remodel, rental: { 'in-service': '2026-06-01', 'from-home': 'yes' } }),
        'rental',
        'adjusted-basis',
      );
    expect([home('yes'), home('no')]).toEqual([10_460_000, 10_410_000]);
  });

  test('what a conversion lacks is named', () => {
    const line = (money: Money) =>
      lineOf(
        work({
          rental: { 'from-home': 'yes', ...money.rental },
          ...(money.land ? { land: money.land } : {}),
        }),
        'rental',
        'depreciation-basis',
      );
    expect(line({})).toMatchObject({ cents: undefined });
    expect(line({}).note).toContain('money: land:');
    expect(line({ land: { price: '10,000.00' } }).note).toContain('money: rental:');
  });

  test('property tax of the seller: rows go before the bill, and the difference is told', () => {
    const bill: Money = {
      'property-tax': [{ from: '2026-01-01', amount: '730.00', 'paid-by': 'buyer', reimbursed: 'no' }],
    };
    // The seller's 47 days of 365.
    expect(centsOf(work(bill), 'investor', 'property-tax-bill-1')).toBe(9400);
    expect(centsOf(work(bill), 'investor', 'first-cost')).toBe(10_049_400);
    expect(centsOf(work({ ...bill, ...SOLD }), 'dealer', 'y2026-39')).toBe(29_400);
    const both = work(bill, [...ROWS, { bucket: 'property-tax-taken-over', cents: 9000 }]);
    expect(centsOf(both, 'investor', 'first-cost')).toBe(10_049_000);
    expect(lineOf(both, 'investor', 'property-tax-taken-over').note).toContain(
      'comes to $94.00, which differs by $4.00',
    );
    const open: Money = {
      'property-tax': [{ from: '2026-01-01', amount: '730.00', 'paid-by': 'buyer', reimbursed: 'not known' }],
    };
    expect(lineOf(work(open), 'investor', 'property-tax-bill-1')).toMatchObject({ cents: undefined });
    expect(lineOf(work(open), 'investor', 'property-tax-bill-1').note).toContain('if not, $94.00');
  });

  test('a year of purchase without its day leaves the bill out and says so', () => {
    const bill: Money = {
      'property-tax': [{ from: '2026-01-01', amount: '730.00', 'paid-by': 'buyer', reimbursed: 'no' }],
    };
    const line = lineOf(
      work(bill, ROWS, { house: { bought: '2026-02' } }),
      'investor',
      'property-tax-bill-1',
    );
    expect(line.cents).toBeUndefined();
    expect(line.note).toContain('the very day');
  });
});

describe('notes by year', () => {
  const note = (money: Money, role: 'dealer' | 'rental', id: string, rows = ROWS) =>
    sheetOf(work(money, rows), role).notes.find((one) => one.id === id)?.text;
  const receipts = [2023, 2024, 2025].map((year) => ({ year, amount: '300,000.00' }));

  test('the small-business test passes, or is undecided and says what is missing', () => {
    expect(note({ ...SOLD, 'gross-receipts': receipts }, 'dealer', 'small-business-2026')).toContain(
      'passed; receipts of 2023 to 2025 average $300,000.00',
    );
    expect(note({ ...SOLD, 'gross-receipts': receipts }, 'dealer', 'small-business-2025')).toContain(
      'undecided, since gross receipts of 2022 are',
    );
  });

  test('the small-building election of a rental, against its cap', () => {
    const rental: Money = { rental: { 'in-service': '2026-03-02' }, land: { price: '20,000.00' } };
    // The building: 80 % of 100,400.00, and 3,000.00 before it was let; 2 % of that is 1,666.40.
    // The year's 3,000.00 and 1,200.00 less a refund of 200.00, a repair of 500.00, less a rebate of 300.00.
    const text = note(rental, 'rental', 'small-building-2026');
    expect(text).toContain('together $4,200.00, are over the cap of $1,666.40');
    expect(text).toContain(
      'Of that $3,000.00 was paid before it was ready to be let; without it the sum is within',
    );
    const more: readonly CostWords[] = [
      ...ROWS,
      { date: '2026-05-01', bucket: 'restoration', cents: 11_100 },
      { date: '2026-05-01', bucket: 'upkeep', cents: 22_200 },
    ];
    expect(note(rental, 'rental', 'small-building-2026', more)).toMatch(
      /improvements \$4,000\.00, repairs \$500\.00, rebates −\$300\.00, restoration \$111\.00, lawn and cleaning \$222\.00, together \$4,533\.00/,
    );
    expect(note({}, 'rental', 'small-building')).toContain('undecided');
  });

  test('stock is outside the election for small things', () => {
    expect(note({}, 'dealer', 'de-minimis')).toContain('A house held for sale is stock and stays outside');
    expect(note({}, 'dealer', 'de-minimis')).toContain('Payments for tools: 1; of these no more than');
  });
});

describe('contrasts', () => {
  test('every one speaks of all four roles', () => {
    const { contrasts } = work(SOLD);
    expect(contrasts.map(({ id }) => id)).toEqual([
      'form',
      'recovered',
      'repairs',
      'holding',
      'closing-out',
      'selling',
      'basis',
      'gain',
    ]);
    for (const { id, by } of contrasts)
      for (const role of ROLES) expect(by[role], `${id} ${role}`).not.toBe('');
    expect(contrasts.find(({ id }) => id === 'gain')?.by.dealer).toBe(
      '$45,400.00; before costs of selling and holding',
    );
  });
});

describe('the tables', () => {
  const tables = { ...basisRules(), ...payeeRules(), ...mileageRules(), ...retentionRules() };

  test('every rule has an id in plain words, a source, and says what was not read', () => {
    expect(Object.keys(tables).length).toBeGreaterThan(45);
    for (const [id, row] of Object.entries(tables)) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(row.caution, id).toMatch(/[.!]$/);
      if (row.read === 'from memory' || row.remembered.length > 0)
        expect(row.how, id).toMatch(/from memory/i);
    }
    expect(moneyRules().get('lead-disclosure-kept')?.rule).toContain('3 years');
  });

  test('no source says its section a second time', () => {
    for (const { id, source } of moneyRules().values())
      for (const piece of source.section.split(/[;,] /))
        expect(
          source.title.split('; ').some((one) => one === piece || one.endsWith(piece)),
          id,
        ).toBe(false);
  });

  test('thresholds, rates and amounts are those of the published rules', () => {
    expect(payeeRules()['threshold-by-payment-date'].figures.spans).toEqual([
      { from: 2020, to: 2025, dollars: 600 },
      { from: 2026, to: 2026, dollars: 2000 },
    ]);
    const { spans } = mileageRules()['business-mile-rate'].figures;
    expect(spans.map(({ tenthsOfCent }) => tenthsOfCent)).toEqual([575, 560, 585, 625, 655, 670, 700, 725]);
    // No gap, no overlap, and no span over the end of a year.
    for (const [at, { from, to }] of spans.entries()) {
      expect(from.slice(0, 4)).toBe(to.slice(0, 4));
      const next = spans[at + 1];
      if (next !== undefined) expect(Date.parse(next.from) - Date.parse(to)).toBe(86_400_000);
    }
    expect(
      basisRules()['small-business-test'].figures.amounts.map(({ dollars }) => dollars / 1_000_000),
    ).toEqual([25, 26, 26, 26, 27, 29, 30, 31, 32]);
  });
});
