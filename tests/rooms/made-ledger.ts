/** Ledgers for tests: random rows by fast-check, texts that other programs could trip over, and the money around them. */
import fc from 'fast-check';
import { BUCKET_NAMES } from '../../src/facts/bucket.js';
import type { House } from '../../src/facts/house.js';
import {
  type CostRow,
  EMPTY_LEDGER,
  type HoursRow,
  PAYMENT_WAYS,
  type Trip,
} from '../../src/facts/ledger.js';
import { openBooks } from '../../src/tally/money/books.js';
import { bucketTotals } from '../../src/tally/money/bucket-totals.js';
import type { MoneyTally } from '../../src/tally/money/money-tally.js';

/** What a journal, a CSV file, a spreadsheet or XML could read as something else than words. */
const NASTY_TEXTS: readonly string[] = [
  '; a remark',
  'Miller; Sons',
  'Miller | Sons',
  '* cleared',
  '! pending',
  '(1234) number',
  '=HYPERLINK("x")',
  '+1 555 0100',
  '-5 and less',
  '@handle',
  '＝1+1',
  'two  blanks  house:repair  5.00 USD',
  'a\ttab\tin it',
  'line\none',
  'line\r\ntwo',
  'line\rthree',
  '\n2026-01-01 forged\n    house:repair  999.00 USD\n    paid:cash',
  'nul\u0000 and bell\u0007',
  'next\u0085line, separators \u2028 and \u2029',
  '\u202Eturned about\u202C',
  'a comma, "quotes", \'apostrophes\'',
  '"',
  '\\ backslash \\n',
  'Zahnbürste · 水道 · 🔧',
  '& <b> ]]> &amp;',
  '{braces} [2026/01/01] [=2026-02-02]',
  ':tag: key: value, date:2020-01-01',
  '~ monthly',
  '= /expr/',
  '% # * comment',
  'end comment',
  'P 2026-01-01 USD 3.00 EUR',
  'include other.journal',
  '$100.00 @ 3 USD',
  '0012',
  '1e3',
  '2026-03-04',
  'TRUE',
  '_x0041_',
  '\uFEFFmark',
  ' blank before and behind ',
  'x'.repeat(300),
];

const text = fc.oneof(
  fc.constantFrom(...NASTY_TEXTS),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 24 }),
  fc.constantFrom('Tollgate Building Supply', 'Ridge Street Plumbing', 'Fallow County'),
);

const date = fc
  .tuple(
    fc.integer({ min: 2019, max: 2027 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
  )
  .map(([year, month, day]) => `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);

const id = fc.constantFrom('kitchen', 'bath-2', 'roof', 'closing-statement', 'p-0001');
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** Everyday amounts, single cents, and the largest that a row can have. */
const cents = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -500_000, max: 2_000_000 }) },
  { weight: 2, arbitrary: fc.integer({ min: -101, max: 101 }) },
  { weight: 1, arbitrary: fc.constantFrom(99_999_999_999, -99_999_999_999, 0, 1, -1, 10, -10, 100) },
);

const cost: fc.Arbitrary<Omit<CostRow, 'row'>> = fc.record({
  date,
  payee: text,
  what: text,
  cents,
  salesTax: maybe(fc.integer({ min: 0, max: 9_999 })),
  bucket: fc.constantFrom(...BUCKET_NAMES),
  place: maybe(id),
  paid: maybe(fc.constantFrom(...PAYMENT_WAYS)),
  receipt: maybe(id),
  taxYear: maybe(fc.integer({ min: 2019, max: 2027 })),
  note: maybe(text),
});

/** Cost rows, numbered from 2. */
export const costRows = (most: number): fc.Arbitrary<CostRow[]> =>
  fc
    .array(cost, { maxLength: most, size: 'max' })
    .map((rows) => rows.map((row, at) => ({ row: at + 2, ...row })));

export const trips = (most: number): fc.Arbitrary<Trip[]> =>
  fc
    .array(
      fc.record({
        date,
        from: maybe(text),
        to: text,
        purpose: text,
        thousandths: fc.integer({ min: 1, max: 2_000_000 }),
        tolls: fc.integer({ min: 0, max: 5_000 }),
        vehicle: maybe(text),
      }),
      { maxLength: most, size: 'max' },
    )
    .map((rows) => rows.map((row, at) => ({ row: at + 2, ...row })));

export const hoursRows = (most: number): fc.Arbitrary<HoursRow[]> =>
  fc
    .array(
      fc.record({
        date,
        who: fc.oneof(fc.constantFrom('owner', 'family'), text),
        what: text,
        place: maybe(id),
        hundredths: fc.integer({ min: 1, max: 2_400 }),
      }),
      { maxLength: most, size: 'max' },
    )
    .map((rows) => rows.map((row, at) => ({ row: at + 2, ...row })));

/** One row with every word told; `changes` replaces some. */
export const costRow = (changes: Partial<CostRow> = {}): CostRow => ({
  row: 2,
  date: '2026-02-17',
  payee: 'Seller',
  what: 'price of the house',
  cents: 14_800_000,
  salesTax: undefined,
  bucket: 'purchase',
  place: undefined,
  paid: 'transfer',
  receipt: 'closing-statement',
  taxYear: undefined,
  note: undefined,
  ...changes,
});

/** Each text once as a payee and once as what was bought. */
export const nastyRows = (): CostRow[] =>
  NASTY_TEXTS.map((words, at) =>
    costRow({
      row: at + 2,
      payee: words,
      what: words,
      note: words,
      cents: at * 101 - 1_000,
      bucket: 'repair',
    }),
  );

/** The sale of a house as of a day. */
export const saleOf = (house: House, asOf: string): MoneyTally['sale'] =>
  openBooks(house, EMPTY_LEDGER, asOf).sale;

/** The money around some rows: totals by the tally, and of all else one of each kind. */
export function moneyOf(
  house: House,
  rows: {
    readonly costs?: readonly CostRow[];
    readonly trips?: readonly Trip[];
    readonly hours?: readonly HoursRow[];
  },
): MoneyTally {
  const ledger = {
    ...EMPTY_LEDGER,
    costs: rows.costs ?? [],
    trips: rows.trips ?? [],
    hours: rows.hours ?? [],
    papers: new Map([
      ['p-0001', { file: 'p-0001.pdf', path: '/elsewhere/p-0001.pdf', bytes: 12, sha256: 'ab'.repeat(32) }],
    ]),
  };
  const books = openBooks(house, ledger, '2026-11-20');
  const totals = bucketTotals(books);
  return {
    ledger,
    role: 'dealer',
    sale: books.sale,
    totals,
    allPaid: totals.reduce((sum, one) => sum + one.cents, 0),
    worksheets: (['dealer', 'investor'] as const).map((role) => ({
      role,
      title: `Sheet of a ${role}`,
      form: 'a made-up form',
      dates: [{ id: 'acquired', label: 'Acquired', says: '17 February 2026' }],
      parts: [
        {
          id: 'part',
          title: 'A part',
          year: 2026,
          lines: [
            {
              id: 'line',
              label: '=a line that begins like a formula',
              formLine: '36',
              cents: -5_902,
              rows: [2, 3, 4, 9],
              facts: [{ path: 'money.sale.price', says: 'sale price $2,460.00' }],
              rules: ['made-up'],
              weight: 'total',
              note: 'a remark',
            },
            { id: 'open', label: 'Open', cents: undefined, rows: [], facts: [], rules: [], weight: 'normal' },
          ],
        },
      ],
      notes: [{ id: 'note', text: 'Read this too.', rules: ['made-up'] }],
    })),
    contrasts: [],
    payees: [
      {
        payee: 'Ridge Street Plumbing',
        year: 2026,
        paid: 310_000,
        counted: 210_000,
        leftOut: [{ cents: 100_000, why: 'paid by card', rows: [5] }],
        threshold: 200_000,
        verdict: 'not-reported',
        why: 'made up',
        form: '1099-NEC',
        taxpayerForm: 'on-file',
        due: '2027-02-01',
        rows: [4, 5],
        rules: ['made-up'],
      },
    ],
    miles: [
      {
        from: '2026-01-01',
        to: '2026-12-31',
        rate: 725,
        thousandths: 18_400,
        cents: 1_334,
        tolls: 150,
        rows: ledger.trips.map(({ row }) => row),
        rule: 'made-up',
      },
    ],
    retention: [
      {
        id: 'receipts',
        what: 'Receipts',
        kept: 'through',
        through: '2030-04-15',
        from: 'the return for 2026',
        years: 3,
        rules: ['made-up'],
      },
      {
        id: 'deed',
        what: 'Deed',
        kept: 'for good',
        through: undefined,
        from: 'the sale',
        years: undefined,
        rules: [],
      },
    ],
    lessons: {
      spent: 0,
      area: undefined,
      perSquareFoot: undefined,
      byTrade: [
        { id: 'paint', label: 'Painting', cents: 120, rows: [2], hundredths: 950, perSquareFoot: undefined },
      ],
      byRoom: [],
      budget: [{ label: 'all', planned: 1, actual: 2, rows: [2] }],
      days: {
        bought: '2026-02-17',
        listed: undefined,
        sold: undefined,
        toListing: undefined,
        toSale: undefined,
      },
      heldUp: [{ from: '2026-04-20', to: '2026-05-04', days: 15, by: 'rain' }],
      holding: 0,
      holdingDays: undefined,
      holdingEnd: 'as-of day',
      holdingWithin: 0,
      holdingPerDay: undefined,
      profit: undefined,
      profitNote: 'not sold yet',
      hours: { owner: 950, others: 0 },
      hourRate: undefined,
      profitAfterHours: undefined,
    },
    rules: [
      {
        id: 'made-up',
        rule: 'A rule that was made up.',
        source: { title: 'Nothing', section: '1', publisher: 'Nobody' },
        read: 'from memory',
      },
    ],
  };
}
