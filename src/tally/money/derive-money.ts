/**
 * What is worked out about a house's money: sums, worksheets for the four roles, payees, miles, how long papers are
 * kept, and what the next house can be priced with.
 *
 * Takes a checked house, the rows of its sheets and what else is tallied. Gives figures in whole cents, each with its
 * rows, facts and rules, and diagnostics beside them. Never decides a role, works out a tax or gives advice. Start
 * reading at `deriveMoney`.
 */

import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Role } from '../../facts/bucket.js';
import type { House } from '../../facts/house.js';
import type { Ledger } from '../../facts/ledger.js';
import type { Areas } from '../area.js';
import type { Improvement } from '../improvements.js';
import { basisSheet } from './basis-sheet.js';
import { openBooks, sumRows } from './books.js';
import { bucketTotals } from './bucket-totals.js';
import { checkReceipts } from './check-receipts.js';
import { checkRows } from './check-rows.js';
import { dealerSheet } from './dealer-sheet.js';
import { drawLessons } from './lessons.js';
import { mileSpans } from './mile-spans.js';
import { mileWarnings } from './mile-warnings.js';
import { citedRules } from './money-rules.js';
import type { MoneyTally } from './money-tally.js';
import { payeeWarnings } from './payee-warnings.js';
import { payeeYears } from './payee-years.js';
import { listRetention } from './retention.js';
import { contrastRoles, rolesFrom } from './role-contrasts.js';
import { type RoleSheet, worksheetOf } from './role-figures.js';
import { roleNotes } from './role-notes.js';
import { saleNotes } from './sale-notes.js';

export interface MoneyInput {
  readonly house: House;
  readonly ledger: Ledger;
  readonly areas: Areas;
  readonly improvements: readonly Improvement[];
  /** YYYY-MM-DD. */
  readonly asOf: string;
}

export function deriveMoney({ house, ledger, areas, improvements, asOf }: MoneyInput): {
  readonly money: MoneyTally;
  readonly diagnostics: readonly Diagnostic[];
} {
  const books = openBooks(house, ledger, asOf);
  const sheets: Record<Role, RoleSheet> = {
    dealer: dealerSheet(books),
    investor: basisSheet(books, 'investor'),
    'main-home': basisSheet(books, 'main-home'),
    rental: basisSheet(books, 'rental'),
  };
  const findings = payeeYears(books);
  const miles = mileSpans(ledger.trips);
  const { lessons, diagnostics } = drawLessons(books, areas, improvements);
  const body = {
    worksheets: rolesFrom(books.money.role).map((role) =>
      worksheetOf(sheets[role], roleNotes(books, sheets[role])),
    ),
    contrasts: contrastRoles(books, sheets),
    payees: findings.map(({ year }) => year),
    miles,
    retention: listRetention(books, findings),
  };
  return {
    money: {
      ledger,
      role: books.money.role,
      sale: books.sale,
      totals: bucketTotals(books),
      allPaid: sumRows(books.costs).cents,
      ...body,
      lessons,
      rules: citedRules(cited(body)),
    },
    diagnostics: [
      ...checkRows(books),
      ...checkReceipts(books),
      ...saleNotes(books),
      ...payeeWarnings(findings, asOf),
      ...mileWarnings(ledger.trips, miles, books.money.odometer, books.bought),
      ...diagnostics,
    ],
  };
}

/** Ids of every rule that something cites. A log that is kept cites what it should hold. */
function* cited({
  worksheets,
  contrasts,
  payees,
  miles,
  retention,
}: Pick<MoneyTally, 'worksheets' | 'contrasts' | 'payees' | 'miles' | 'retention'>): Iterable<string> {
  for (const { parts, notes } of worksheets) {
    for (const { lines } of parts) for (const { rules } of lines) yield* rules;
    for (const { rules } of notes) yield* rules;
  }
  for (const { rules } of [...contrasts, ...payees, ...retention]) yield* rules;
  for (const { rule } of miles) yield rule;
  if (miles.length > 0) yield 'mileage-log';
}
