import { load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import { EMPTY_LEDGER, type PaymentWay } from '../../src/facts/ledger.js';
import { openBooks } from '../../src/tally/money/books.js';
import type { PayeeYear } from '../../src/tally/money/money-tally.js';
import { payeeYears } from '../../src/tally/money/payee-years.js';
import { payeesOverHouses } from '../../src/tally/money/payees-over-houses.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { type CostWords, costRows, told, workOut } from './tally-money-case.js';

type MoneyWords = NonNullable<PartialSpec['money']>;
type PayeeWords = NonNullable<NonNullable<PartialSpec['money']>['payees']>[number];

const PLUMBER = {
  name: 'Plumber',
  sells: 'services',
  'tax-class': 'individual',
  'taxpayer-form': 'on-file',
} as const satisfies PayeeWords;

interface Case {
  readonly payee?: Partial<PayeeWords>;
  readonly money?: NonNullable<PartialSpec['money']>;
  readonly rows?: readonly Partial<CostWords>[];
}

/** A plumber who was paid 3,000.00 by check in 2026, but for what the case says. */
function plumber({ payee = {}, money = {}, rows = [{}] }: Case) {
  const { money: tally, diagnostics } = workOut(
    { money: { 'in-business': true, payees: [{ ...PLUMBER, ...payee }], ...money } },
    {
      costs: costRows(
        rows.map((row) => ({ payee: 'Plumber', cents: 300_000, bucket: 'improvement', ...row })),
      ),
    },
  );
  const [year] = tally.payees;
  if (year === undefined) throw new Error('nobody was paid');
  return { year, money: tally, diagnostics };
}

const verdict = (one: Case): PayeeYear['verdict'] => plumber(one).year.verdict;

describe('who a return may have to name', () => {
  test('somebody who was paid for work, with the day it is due', () => {
    const { year, diagnostics } = plumber({});
    expect(year).toMatchObject({
      payee: 'Plumber',
      year: 2026,
      paid: 300_000,
      counted: 300_000,
      threshold: 200_000,
      verdict: 'report',
      form: '1099-NEC',
      taxpayerForm: 'on-file',
      due: '2027-02-01',
      leftOut: [],
      rows: [2],
    });
    expect(told(diagnostics, 'tally.payee')).toEqual([
      'note money.payees.0 $3,000.00 paid to “Plumber” in 2026 may have to go on a Form 1099-NEC, due 1 February 2027',
    ]);
  });

  test('a missing taxpayer form is a warning, and what would be kept back is told', () => {
    const { year, diagnostics } = plumber({ payee: { 'taxpayer-form': 'none' } });
    expect(year.why).toContain('24 % of that, $720.00');
    const [line] = told(diagnostics, 'tally.payee');
    expect(line).toMatch(/^warning money\.payees\.0\.taxpayer-form .* \(W-9\) is missing$/);
  });

  test('a day that has passed is told as such', () => {
    const { diagnostics } = plumber({ rows: [{ date: '2025-05-01' }] });
    expect(told(diagnostics, 'tally.payee')[0]).toMatch(/due 2 February 2026, which has passed$/);
  });

  test('wages to family go through payroll, and the rule on children is cited', () => {
    const { year } = plumber({ payee: { sells: 'wages', relation: 'son, 17' } });
    expect(year).toMatchObject({ verdict: 'not-reported', counted: 0 });
    expect(year.why).toBe('Nothing of it counts: wages, which go through payroll. Family: son, 17.');
    expect(year.rules).toContain('paid-family');
  });

  test('nobody, where these bills are not paid in a business', () => {
    const { year, diagnostics } = plumber({ money: { 'in-business': false, payees: [PLUMBER] } });
    expect(year.verdict).toBe('not-reported');
    expect(year.due).toBeUndefined();
    expect(told(diagnostics, 'tally.payee')).toEqual([]);
  });

  test.each<[PayeeYear['verdict'], Partial<PayeeWords>]>([
    ['not-reported', { sells: 'goods' }],
    ['not-reported', { sells: 'wages' }],
    ['not-reported', { 'tax-class': 'c-corporation' }],
    ['not-reported', { 'tax-class': 's-corporation' }],
    ['report', { 'tax-class': 's-corporation', attorney: true }],
    ['undecided', { 'tax-class': 's-corporation', attorney: 'not known' }],
    ['not-reported', { 'tax-class': 'government' }],
    ['not-reported', { 'tax-class': 'tax-exempt' }],
    ['report', { 'tax-class': 'partnership' }],
    ['undecided', { 'tax-class': 'llc' }],
    ['undecided', { 'tax-class': 'not-known' }],
    ['undecided', { sells: 'not-known' }],
  ])('%s: %o', (expected, payee) => {
    expect(verdict({ payee })).toBe(expected);
  });

  test('rent goes on the other form', () => {
    expect(plumber({ payee: { sells: 'rent' } }).year).toMatchObject({
      verdict: 'report',
      form: '1099-MISC',
    });
    expect(plumber({ payee: { sells: 'rent' } }).year.rules).toContain('rent-on-another-form');
  });

  test.each<[PaymentWay | undefined, PayeeYear['verdict']]>([
    ['cash', 'report'],
    ['check', 'report'],
    ['transfer', 'report'],
    ['card', 'not-reported'],
    ['network', 'not-reported'],
    ['loan', 'not-reported'],
    [undefined, 'undecided'],
  ])('paid by %s: %s', (paid, expected) => {
    expect(verdict({ rows: [{ paid }] })).toBe(expected);
  });

  test('an untold way matters only where it decides', () => {
    const rows = (sure: number, untold: number) => [{ cents: sure }, { cents: untold, paid: undefined }];
    expect(verdict({ rows: rows(100_000, 99_999) })).toBe('below');
    expect(verdict({ rows: rows(100_000, 100_000) })).toBe('undecided');
    expect(verdict({ rows: rows(200_000, 100_000) })).toBe('report');
    // A refund whose way is untold may take it under the threshold.
    expect(verdict({ rows: rows(200_000, -1) })).toBe('undecided');
    expect(plumber({ rows: rows(100_000, 100_000) }).year.leftOut).toEqual([
      { cents: 100_000, why: 'how it was paid is not told', rows: [3] },
    ]);
  });

  test('refunds lower what counts', () => {
    expect(verdict({ rows: [{ cents: 210_000 }, { cents: -10_001 }] })).toBe('below');
    expect(plumber({ rows: [{ cents: 210_000 }, { cents: -10_000 }] }).year).toMatchObject({
      verdict: 'report',
      counted: 200_000,
    });
  });

  test('a year without a known threshold is undecided, not the nearest year’s', () => {
    const { year, diagnostics } = plumber({ rows: [{ date: '2019-05-01' }] });
    expect(year).toMatchObject({ verdict: 'undecided', threshold: undefined });
    expect(told(diagnostics, 'tally.payee')[0]).toContain('no threshold is known for that year');
    expect(verdict({ rows: [{ date: '2019-05-01', paid: 'card' }] })).toBe('not-reported');
  });

  test('below the threshold it is said in a word that other houses count too', () => {
    expect(plumber({ rows: [{ cents: 100 }] }).year.why).toBe('Below by this house alone.');
    expect(plumber({ rows: [{ cents: 100, paid: undefined }] }).year.why).toBe(
      '$1.00 at most is below the threshold of $2,000.00 for payments in 2026 by this house alone.',
    );
    const costs = costRows([{ payee: 'Plumber', cents: 100, bucket: 'improvement' }]);
    const books = openBooks(
      houseFrom({ money: { payees: [PLUMBER] } }),
      { ...EMPTY_LEDGER, costs },
      '2026-11-20',
    );
    expect(payeeYears(books, 'all houses')[0]?.year.why).toBe(
      '$1.00 is below the threshold of $2,000.00 for payments in 2026.',
    );
  });

  test('the day of payment decides the year, not the tax year of the row, and the line says so', () => {
    const { year } = plumber({ rows: [{ date: '2025-12-31', taxYear: 2026 }] });
    expect(year.year).toBe(2025);
    expect(year.why).toContain('Row 2 counts in tax year 2026 on the worksheets.');
    expect(plumber({ rows: [{ taxYear: 2026 }] }).year.why).not.toContain('on the worksheets');
  });

  test('an LLC is told apart from a tax class that nobody knows', () => {
    const { year, diagnostics } = plumber({ payee: { 'tax-class': 'llc' } });
    expect(year.why).toContain('an LLC: line 3 of their form tells');
    expect(told(diagnostics, 'tally.payee')[0]).toContain('an LLC: line 3 of their form tells');
    expect(plumber({ payee: { 'tax-class': 'not-known' } }).year.why).toContain(
      'their tax class is not known',
    );
  });

  test('a credit to the buyer is paid for no work', () => {
    const { year } = plumber({ payee: { sells: 'nothing' }, rows: [{ bucket: 'selling' }] });
    expect(year).toMatchObject({ verdict: 'not-reported', counted: 0, form: undefined });
    expect(year.why).toContain('between the parties to a sale');
  });
});

describe('what is no payment for services', () => {
  test.each([
    'purchase',
    'purchase-closing-in-basis',
    'purchase-closing-out',
    'property-tax',
    'interest',
    'insurance',
    'utilities',
    'dues',
    'assessment',
  ] as const)('the bucket %s', (bucket) => {
    expect(plumber({ rows: [{ bucket }] }).year).toMatchObject({ verdict: 'not-reported', counted: 0 });
  });

  test('a lawyer’s fee at closing is one, and tools are goods', () => {
    const rows = [{ bucket: 'purchase-closing-in-basis' as const }];
    expect(verdict({ payee: { attorney: true }, rows })).toBe('report');
    expect(verdict({ payee: { sells: 'not-known' }, rows: [{ bucket: 'tool' }] })).toBe('not-reported');
  });

  test('one reason is told once for two buckets', () => {
    const { year } = plumber({
      rows: [{ bucket: 'purchase-closing-in-basis' }, { bucket: 'purchase-closing-out' }],
    });
    expect(year.leftOut).toEqual([{ cents: 600_000, why: 'a cost of closing', rows: [2, 3] }]);
  });
});

describe('names', () => {
  test('differ not by capitals, blanks, or by the person behind an entry', () => {
    const { money } = workOut(
      {
        people: [
          { id: 'ridge', name: 'Ridge Street Plumbing' },
          { id: 'mill', name: 'Mill Race' },
        ],
        money: { payees: [{ ...PLUMBER, name: 'Ridge St. Plumbing', person: 'ridge' }] },
      },
      {
        costs: costRows(
          [
            'Ridge St. Plumbing',
            'ridge  street PLUMBING',
            'MILL RACE',
            'mill race ',
            'Somebody',
            'some body',
          ].map((payee) => ({
            payee,
            cents: 100,
            bucket: 'improvement' as const,
          })),
        ),
      },
    );
    expect(money.payees.map(({ payee, paid }) => [payee, paid])).toEqual([
      ['Mill Race', 200],
      ['Ridge St. Plumbing', 200],
      ['Somebody', 100],
      ['some body', 100],
    ]);
  });

  test('differ not by signs either, so that one payee has one threshold', () => {
    const { money } = workOut(
      { money: { 'in-business': true, payees: [{ ...PLUMBER, name: 'Smith Co' }] } },
      {
        costs: costRows(
          ['Smith, Co', 'Smith Co', 'Smith, Co.'].map((payee) => ({
            payee,
            cents: 150_000,
            bucket: 'improvement' as const,
          })),
        ),
      },
    );
    expect(money.payees).toMatchObject([{ payee: 'Smith Co', counted: 450_000, verdict: 'report' }]);
  });

  test('whoever stands under people was hired for services', () => {
    const { money } = workOut(
      { people: [{ id: 'mill', name: 'Mill Race' }], money: { role: 'dealer' } },
      { costs: costRows([{ payee: 'Mill Race', cents: 100, bucket: 'improvement' }]) },
    );
    const lines = money.worksheets[0]?.parts[0]?.lines ?? [];
    expect(lines.find(({ formLine }) => formLine === '37')?.cents).toBe(100);
  });
});

describe('over several houses', () => {
  interface Part {
    readonly money?: MoneyWords;
    readonly people?: PartialSpec['people'];
    readonly rows?: readonly (Partial<CostWords> & { readonly payee: string })[];
  }

  /** What is told of some houses; the same in every order of them. */
  function over(...parts: readonly Part[]): PayeeYear[] {
    const houses = parts.map(({ money, people, rows = [{ payee: 'Plumber' }] }) => ({
      house: houseFrom({
        ...(money === undefined ? {} : { money }),
        ...(people === undefined ? {} : { people }),
      }),
      ledger: {
        ...EMPTY_LEDGER,
        costs: costRows(rows.map((row) => ({ cents: 150_000, bucket: 'improvement', ...row }))),
      },
    }));
    const found = payeesOverHouses(houses, '2026-11-20');
    const rest = ({ rows: _rows, ...one }: PayeeYear) => one;
    expect(payeesOverHouses(houses.toReversed(), '2026-11-20').map(rest)).toEqual(found.map(rest));
    return found;
  }
  const business: MoneyWords = { 'in-business': true, payees: [PLUMBER] };

  test('what was paid for all of them counts', () => {
    expect(over({ money: business }, { money: business })).toMatchObject([
      { payee: 'Plumber', counted: 300_000, verdict: 'report' },
    ]);
    expect(over({ money: business })).toMatchObject([{ verdict: 'below' }]);
  });

  test('an id leads to the person of its own house', () => {
    const people = (name: string) => [{ id: 'p1', name }];
    const entry = (name: string) => ({ ...PLUMBER, name, person: 'p1' });
    const found = over(
      {
        money: { 'in-business': true, payees: [entry('North Plumbing')] },
        people: people('Ann North'),
        rows: [{ payee: 'Ann North' }],
      },
      {
        money: { 'in-business': true, payees: [entry('South Plumbing')] },
        people: people('Bea South'),
        rows: [{ payee: 'Bea South' }, { payee: 'South Plumbing' }],
      },
    );
    expect(found.map(({ payee, counted }) => [payee, counted])).toEqual([
      ['South Plumbing', 300_000],
      ['North Plumbing', 150_000],
    ]);
  });

  test('a person’s name in one house is the entry of another', () => {
    const found = over(
      {
        money: { 'in-business': true, payees: [{ ...PLUMBER, person: 'ann' }] },
        people: [{ id: 'ann', name: 'Ann North' }],
      },
      { money: { 'in-business': true }, rows: [{ payee: 'ANN NORTH' }] },
    );
    expect(found).toMatchObject([{ payee: 'Plumber', counted: 300_000, verdict: 'report' }]);
  });

  test('what one house leaves open another fills in', () => {
    const vague: MoneyWords = { 'in-business': true, payees: [{ name: 'Plumber' }] };
    expect(over({ money: vague }, { money: business })).toMatchObject([{ verdict: 'report' }]);
    const llc: MoneyWords = { 'in-business': true, payees: [{ ...PLUMBER, 'tax-class': 'llc' }] };
    const corporation: MoneyWords = {
      'in-business': true,
      payees: [{ ...PLUMBER, 'tax-class': 's-corporation' }],
    };
    expect(over({ money: llc }, { money: corporation })).toMatchObject([{ verdict: 'not-reported' }]);
    expect(over({ money: llc }, { money: vague })).toMatchObject([{ verdict: 'undecided' }]);
  });

  test('what two houses contradict each other in is not known', () => {
    const corporation: MoneyWords = {
      'in-business': true,
      payees: [{ ...PLUMBER, 'tax-class': 'c-corporation' }],
    };
    const [found] = over({ money: business }, { money: corporation });
    expect(found).toMatchObject({ verdict: 'undecided' });
    expect(found?.why).toContain('their tax class is not known');
    const asked: MoneyWords = { 'in-business': true, payees: [{ ...PLUMBER, 'taxpayer-form': 'none' }] };
    expect(over({ money: business }, { money: asked })).toMatchObject([{ taxpayerForm: 'not-known' }]);
  });

  test('whether it is a business is asked of every house that paid, also where money: is missing', () => {
    const [found] = over({ money: business }, {});
    expect(found).toMatchObject({ verdict: 'undecided', counted: 300_000 });
    expect(found?.why).toContain('in the course of a business is not known');
    // A house that paid somebody else says nothing about it.
    const big = [{ payee: 'Plumber', cents: 300_000 }];
    const other: Part = { money: { 'in-business': false }, rows: [{ payee: 'Somebody' }] };
    expect(over({ money: business, rows: big }, other)).toMatchObject([
      { payee: 'Plumber', verdict: 'report' },
      { payee: 'Somebody', verdict: 'not-reported' },
    ]);
  });
});

describe('what is asked', () => {
  test('one question, not one for each payee, where it isn’t said that this is a business', () => {
    const { diagnostics } = workOut(
      { money: { payees: [PLUMBER] } },
      {
        costs: costRows(
          ['Plumber', 'A', 'B', 'C', 'D'].map((payee) => ({
            payee,
            cents: 300_000,
            bucket: 'improvement' as const,
          })),
        ),
      },
    );
    const lines = told(diagnostics, 'tally.payee');
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('“A”, “B”, “C” and 2 more');
    expect(lines[0]).toMatch(/^warning money\.in-business /);
  });

  test('what is missing of a payee, at the row where there is no entry', () => {
    const { diagnostics } = workOut(
      { money: { 'in-business': true } },
      { costs: costRows([{ payee: 'A', cents: 300_000, bucket: 'improvement' }]) },
    );
    const found = diagnostics.find(({ code }) => code === 'tally.payee');
    expect(found).toMatchObject({ severity: 'warning', path: ['costs', 2, 'payee'] });
    expect(found?.hints[0]).toMatch(/name: A\b.*sells: services.*tax-class: individual/);
    expect(found?.message).toContain('what they sell isn’t written, their tax class isn’t known');
  });

  test.each(['A, B', 'A: B', 'Null', "O'Hara #2", '{A}'])(
    'a payee %j is written as YAML reads it back',
    (name) => {
      const { diagnostics } = workOut(
        { money: { 'in-business': true } },
        { costs: costRows([{ payee: name, cents: 300_000, bucket: 'improvement' }]) },
      );
      const hint = diagnostics.find(({ code }) => code === 'tally.payee')?.hints[0] ?? '';
      expect(load(/- (\{.*\}) {2}or/.exec(hint)?.[1] ?? '')).toMatchObject({ name, sells: 'services' });
    },
  );
});
