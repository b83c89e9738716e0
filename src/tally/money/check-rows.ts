/** Rows that can't be right, or that are thin: dates, doubles, sums below zero. */

import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { addDays } from '../../facts/age.js';
import { BUCKET_NAMES, BUCKETS, type Bucket } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { nameKey } from '../../facts/name-key.js';
import { afterSale } from './after-sale.js';
import { type Books, sumRows } from './books.js';
import { BELOW_ZERO } from './bucket-totals.js';
import { groupBy } from './group-by.js';

/** Paid before a purchase as a matter of course. */
const BEFORE_PURCHASE: readonly Bucket[] = ['purchase', 'purchase-closing-in-basis', 'purchase-closing-out'];

/** A row this much earlier than the purchase is a slip in the year, whatever it was for. */
const MOST_DAYS_BEFORE = 365;

type Sheet = 'costs' | 'miles' | 'hours';

export function checkRows(books: Books): Diagnostic[] {
  return [
    ...futureRows(books),
    ...earlyRows(books),
    ...lateRows(books),
    ...doubleRows(books),
    ...withoutReceipt(books),
    ...belowZero(books),
    ...roleNote(books),
  ];
}

function futureRows({ costs, ledger, asOf }: Books): Diagnostic[] {
  const late = (
    sheet: Sheet,
    what: string,
    rows: readonly { readonly row: number; readonly date: string }[],
  ): Diagnostic[] => {
    const after = rows.filter(({ date }) => date > asOf);
    // The report tells them together, so that the day has to do for all of them.
    const last = after.map(({ date }) => date).toSorted();
    return after.map(({ row }) => ({
      code: 'tally.row-date',
      severity: 'error',
      path: [sheet, row, 'date'],
      message: `this row is dated after the day the packet is made for (${asOf})`,
      hints: [
        `check the year; ${what} to come has no row yet`,
        `build for that day:  --as-of ${last.at(-1)}`,
      ],
    }));
  };
  return [
    ...late('costs', 'a payment', costs),
    ...late('miles', 'a trip', ledger.trips),
    ...late('hours', 'work', ledger.hours),
  ];
}

function earlyRows({ costs, house }: Books): Diagnostic[] {
  const bought = house.house.bought?.earliest;
  if (bought === undefined) return [];
  const farBefore = addDays(bought, -MOST_DAYS_BEFORE);
  return costs
    .filter(({ date, bucket }) => date < bought && (date < farBefore || !BEFORE_PURCHASE.includes(bucket)))
    .map(({ row, date }) => ({
      code: 'tally.row-date',
      severity: 'warning',
      path: ['costs', row, 'date'],
      message: `this row is earlier than the purchase (${bought})${date < farBefore ? ` by more than ${MOST_DAYS_BEFORE} days` : ''}`,
      hints: [
        ...(date < farBefore
          ? ['check the year']
          : [
              'check the date',
              'if it belongs to the purchase, write the bucket  purchase-closing-in-basis  or  purchase-closing-out',
            ]),
        'if the purchase was earlier, correct  bought:  under house:',
      ],
    }));
}

function lateRows(books: Books): Diagnostic[] {
  const { sale, costs } = books;
  if (sale === undefined) return [];
  return afterSale(books, costs).map(({ row }) => ({
    code: 'tally.row-date',
    severity: 'warning',
    path: ['costs', row, 'date'],
    message: `this row is dated after the sale (${sale.day}), and is counted all the same`,
    hints: [
      'check the date, and whether it belongs to this house',
      'if it was paid for the sale, write the bucket  selling',
    ],
  }));
}

function doubleRows({ costs, ledger, findPayee }: Books): Diagnostic[] {
  return [
    ...twice(
      'costs',
      costs,
      ({ date, cents }) => `${date} ${cents}`,
      ({ payee, receipt, what }) => [findPayee(payee).key, receipt, what],
    ),
    ...twice(
      'miles',
      ledger.trips,
      ({ date, thousandths }) => `${date} ${thousandths}`,
      ({ from, to, purpose, vehicle, tolls }) => [from, to, purpose, vehicle, tolls],
    ),
    ...twice(
      'hours',
      ledger.hours,
      ({ date, hundredths }) => `${date} ${hundredths}`,
      ({ who, what, place }) => [nameKey(who), what, place],
    ),
  ];
}

/** `near`: the day and the amount. `rest`, all else, is looked at only where those meet, which few rows do. */
function twice<T extends { readonly row: number }>(
  sheet: Sheet,
  rows: readonly T[],
  near: (row: T) => string,
  rest: (row: T) => readonly unknown[],
): Diagnostic[] {
  const seen = new Set<string>();
  const met = new Set<string>();
  for (const row of rows) {
    const key = near(row);
    if (seen.has(key)) met.add(key);
    else seen.add(key);
  }
  const close = rows.filter((row) => met.has(near(row))).sort((a, b) => a.row - b.row);
  const same = groupBy(close, (row) => JSON.stringify([near(row), ...rest(row)]));
  return [...same.values()]
    .flatMap(([first, ...more]) => more.map(({ row }) => ({ row, earlier: first?.row })))
    .sort((a, b) => a.row - b.row)
    .map(({ row, earlier }) => ({
      code: 'tally.row-twice',
      severity: 'warning',
      path: [sheet, row, 'date'],
      message: `this row says the same as row ${earlier}`,
      hints: [
        'delete one of them',
        `if both are right, tell them apart in the column  ${sheet === 'miles' ? 'purpose' : 'what'}`,
      ],
    }));
}

const GET_RECEIPT = [
  'put the paper into documents/, name it under documents: and write its id into the column  receipt',
  'if there is none, leave it; the sheets say so',
];

/** One text for all of them, so that the report tells them together. */
function withoutReceipt({ costs }: Books): Diagnostic[] {
  const missing = costs.filter(({ receipt }) => receipt === undefined);
  return missing.map(({ row }) => ({
    code: 'tally.no-receipt',
    severity: 'warning',
    path: ['costs', row, 'receipt'],
    message: 'this payment has no receipt',
    hints: GET_RECEIPT,
  }));
}

function belowZero(books: Books): Diagnostic[] {
  const buckets = BUCKET_NAMES.filter((bucket) => !BELOW_ZERO.includes(bucket)).flatMap((bucket) =>
    below(`the bucket “${BUCKETS[bucket].title}”`, books.byBucket.get(bucket) ?? []),
  );
  // What comes from a maker, an insurer or the seller has no payment it could be held against.
  const paid = books.costs.filter(({ bucket }) => !BELOW_ZERO.includes(bucket));
  const payees = [...groupBy(paid, ({ payee }) => books.findPayee(payee))].flatMap(([known, own]) =>
    below(`“${known.label}”`, own),
  );
  // A bucket that one payee alone took below zero is told with that payee.
  const alone = new Map(payees.map((payee) => [payee.rows.join(), payee]));
  const others = buckets.filter(({ rows }) => !alone.has(rows.join()));
  return [...others, ...payees].map(({ row, what, cents }) => ({
    code: 'tally.negative',
    severity: 'warning',
    path: ['costs', row, 'amount'],
    message: `${what} stands at ${printMoney(cents)}: more came back than was paid`,
    hints: ['check the signs: a payment is written without one, money back with a minus'],
  }));
}

interface Below {
  readonly what: string;
  readonly cents: number;
  readonly rows: readonly number[];
  /** The last row in which money came back. */
  readonly row: number;
}

function below(what: string, own: readonly CostRow[]): Below[] {
  const { cents, rows } = sumRows(own);
  const back = own.findLast((row) => row.cents < 0);
  return cents < 0 && back !== undefined ? [{ what, cents, rows, row: back.row }] : [];
}

function roleNote({ costs, money }: Books): Diagnostic[] {
  if (costs.length === 0 || money.role !== undefined) return [];
  return [
    {
      code: 'tally.role',
      severity: 'note',
      path: ['money', 'role'],
      message:
        'it isn’t written what you hold the house as, so the sheets of all four roles stand side by side',
      hints: ['ask your preparer, then write under money:  role: dealer  (or investor, main-home, rental)'],
    },
  ];
}
