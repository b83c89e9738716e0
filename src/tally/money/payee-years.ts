/**
 * Who was paid how much in a calendar year, what of it counts towards an information return, and whether one may be
 * due. Sources: tables/payees.yaml. A fact that is missing leaves the answer undecided where it matters.
 */

import type { Bucket } from '../../facts/bucket.js';
import { yearOf } from '../../facts/day-number.js';
import type { Payee } from '../../facts/house.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { rowsInWords } from '../../facts/row-runs.js';
import { payeeRules } from '../tables/payees.js';
import { type Books, sumRows } from './books.js';
import { informationReturnDue } from './business-day.js';
import { divideRounded } from './divide.js';
import { groupBy } from './group-by.js';
import type { RuleId } from './money-rules.js';
import type { PayeeYear } from './money-tally.js';
import { type KnownPayee, sellsOf } from './payee-names.js';

/** Of a house's books, what tells who was paid. */
export type PayerBooks = Pick<Books, 'costs' | 'findPayee' | 'money'>;

export type Reach = 'one house' | 'all houses';

/** A payee's year, with where its facts stand. */
export interface PayeeFinding {
  readonly year: PayeeYear;
  readonly known: KnownPayee;
  /** What is to be written, where the verdict is undecided. */
  readonly lacking: readonly Lack[];
  /** Rows of which the sheet doesn't tell how they were paid, where that matters. */
  readonly untold: readonly number[];
}

export type Lack = 'in-business' | 'sells' | 'tax-class' | 'attorney' | 'way' | 'threshold';

/**
 * Years in order, in each the largest sum first. Every row is in one of them.
 *
 * `reach`: whose rows these are. Of one house it is said that the threshold counts all houses of one payer.
 */
export function payeeYears(books: PayerBooks, reach: Reach = 'one house'): PayeeFinding[] {
  const byYear = groupBy(books.costs, ({ date }) => yearOf(date));
  return [...byYear]
    .sort(([a], [b]) => a - b)
    .flatMap(([year, rows]) => {
      const groups = groupBy(rows, ({ payee }) => books.findPayee(payee));
      return [...groups]
        .map(([known, own]) => payeeYear(books, known, year, own, reach))
        .sort((a, b) => b.year.paid - a.year.paid || (a.year.payee < b.year.payee ? -1 : 1));
    });
}

interface Reason {
  readonly why: string;
  readonly rule: RuleId;
}

const UNTOLD: Reason = { why: 'how it was paid is not told', rule: 'cards-left-out' };

function payeeYear(
  books: PayerBooks,
  known: KnownPayee,
  year: number,
  rows: readonly CostRow[],
  reach: Reach,
): PayeeFinding {
  const { facts } = known;
  const groups = groupBy(rows, (row) => reasonOf(row, known));
  const counted = sumRows(groups.get(undefined) ?? []).cents;
  const untold = groups.get(UNTOLD) ?? [];
  const left = [...groups].flatMap(([reason, own]) =>
    reason === undefined ? [] : [{ ...sumRows(own), why: reason.why }],
  );
  const judged = judge({
    books,
    known,
    year,
    counted,
    // Untold payments may all count, or none of them; refunds pull the other way.
    least: counted + sumRows(untold.filter(({ cents }) => cents < 0)).cents,
    most: counted + sumRows(untold.filter(({ cents }) => cents > 0)).cents,
    nothing: groups.get(undefined) === undefined && untold.length === 0,
    reasons: left.map(({ why }) => why),
    reach,
  });
  const form = sellsOf(known) === 'rent' ? '1099-MISC' : '1099-NEC';
  const mayBeDue = judged.verdict === 'report' || judged.verdict === 'undecided';
  return {
    known,
    lacking: judged.lacking,
    untold: sumRows(untold).rows,
    year: {
      payee: known.label,
      year,
      paid: sumRows(rows).cents,
      counted,
      leftOut: left,
      threshold: thresholdOf(year),
      verdict: judged.verdict,
      why: [judged.why, ...otherTaxYear(rows, reach)].join(' '),
      form: mayBeDue ? form : undefined,
      taxpayerForm: facts?.['taxpayer-form'] ?? 'not-known',
      due: mayBeDue ? informationReturnDue(year) : undefined,
      rows: rows.map(({ row }) => row),
      rules: rulesOf(known, [...groups.keys()], mayBeDue),
    },
  };
}

/** Rows that the worksheets count in another year than that of their date. Row numbers of several houses lead nowhere. */
function otherTaxYear(rows: readonly CostRow[], reach: Reach): string[] {
  if (reach === 'all houses') return [];
  const moved = rows.filter(({ date, taxYear }) => taxYear !== undefined && taxYear !== yearOf(date));
  return [...groupBy(moved, ({ taxYear }) => taxYear)].map(([taxYear, own]) => {
    const words = rowsInWords(own.map(({ row }) => row));
    return `${words.charAt(0).toUpperCase()}${words.slice(1)} ${own.length === 1 ? 'counts' : 'count'} in tax year ${taxYear} on the worksheets.`;
  });
}

/** Cents that a calendar year's payments must reach; undefined: no figure is known. */
function thresholdOf(year: number): number | undefined {
  const { spans } = payeeRules()['threshold-by-payment-date'].figures;
  const dollars = spans.find(({ from, to }) => from <= year && year <= to)?.dollars;
  return dollars === undefined ? undefined : dollars * 100;
}

/** What would be kept back, in cents, of payments to somebody who gave no taxpayer number. */
export const backupWithholding = (cents: number): number =>
  divideRounded(BigInt(cents) * BigInt(payeeRules()['taxpayer-form-first'].figures.percent), 100n);

const CLOSING: readonly Bucket[] = ['purchase-closing-in-basis', 'purchase-closing-out'];

const notService = (why: string): Reason => ({ why, rule: 'not-for-services' });

// One reason for two buckets is one object, so that what it leaves out is one sum.
const CLOSING_COST = notService('a cost of closing');
const PROPERTY_TAX = notService('property tax');

/** Buckets that are no services to the payer's business, with why. */
const BY_BUCKET: Partial<Record<Bucket, Reason>> = {
  purchase: notService('the price of the house'),
  'purchase-closing-in-basis': CLOSING_COST,
  'purchase-closing-out': CLOSING_COST,
  'property-tax-taken-over': PROPERTY_TAX,
  'property-tax': PROPERTY_TAX,
  assessment: notService('a public charge'),
  interest: notService('interest'),
  insurance: notService('an insurance premium'),
  'insurance-payment': notService('paid by an insurer'),
  utilities: notService('a utility'),
  dues: notService('dues'),
  rebate: notService('a rebate'),
};

const TOOLS: Reason = { why: 'tools, which are goods', rule: 'goods-or-services' };
const GOODS: Reason = { why: 'goods alone', rule: 'goods-or-services' };
const PARTY: Reason = {
  why: 'money between the parties to a sale of the house, and for no work',
  rule: 'not-for-services',
};
const WAGES: Reason = { why: 'wages, which go through payroll', rule: 'paid-family' };
const CORPORATION: Reason = { why: 'a corporation', rule: 'corporations-left-out' };
const PUBLIC: Reason = { why: 'a government or tax-exempt body', rule: 'public-bodies-left-out' };
const CARD: Reason = { why: 'paid by card', rule: 'cards-left-out' };
const NETWORK: Reason = { why: 'paid through a payment network', rule: 'cards-left-out' };
const LOAN: Reason = { why: 'paid by a lender, or debt taken over', rule: 'not-for-services' };

const BY_WAY: Partial<Record<NonNullable<CostRow['paid']>, Reason>> = {
  card: CARD,
  network: NETWORK,
  loan: LOAN,
};

/** Why a row does not count; undefined: it counts. */
function reasonOf(row: CostRow, known: KnownPayee): Reason | undefined {
  const sells = sellsOf(known);
  const lawyer = known.facts?.attorney === 'yes';
  const byBucket = BY_BUCKET[row.bucket];
  if (byBucket !== undefined && !(lawyer && CLOSING.includes(row.bucket))) return byBucket;
  if (row.bucket === 'tool' && sells !== 'rent' && sells !== 'services') return TOOLS;
  if (sells === 'goods') return GOODS;
  if (sells === 'nothing') return PARTY;
  if (sells === 'wages') return WAGES;
  const body = bodyReason(known.facts);
  if (body !== undefined) return body;
  return row.paid === undefined ? UNTOLD : BY_WAY[row.paid];
}

const isCorporation = (facts: Payee | undefined): boolean =>
  facts?.['tax-class'] === 'c-corporation' || facts?.['tax-class'] === 's-corporation';

function bodyReason(facts: Payee | undefined): Reason | undefined {
  // A corporation of which it is not known whether it is a law firm stays in, and is left undecided.
  if (isCorporation(facts) && facts?.attorney !== 'yes' && facts?.attorney !== 'not known')
    return CORPORATION;
  const taxClass = facts?.['tax-class'];
  return taxClass === 'government' || taxClass === 'tax-exempt' ? PUBLIC : undefined;
}

interface Judged {
  readonly verdict: PayeeYear['verdict'];
  readonly why: string;
  readonly lacking: readonly Lack[];
}

interface Case {
  readonly books: PayerBooks;
  readonly known: KnownPayee;
  readonly year: number;
  readonly counted: number;
  readonly least: number;
  readonly most: number;
  /** No row counts or may count. */
  readonly nothing: boolean;
  readonly reasons: readonly string[];
  readonly reach: Reach;
}

function judge({ books, known, year, counted, least, most, nothing, reasons, reach }: Case): Judged {
  const done = (verdict: Judged['verdict'], why: string, lacking: readonly Lack[] = []): Judged => ({
    verdict,
    why,
    lacking,
  });
  const family = known.facts?.relation;
  if (nothing)
    return done(
      'not-reported',
      `Nothing of it counts: ${reasons.join('; ')}.${family === undefined ? '' : ` Family: ${family}.`}`,
    );
  const business = books.money['in-business'];
  if (business === 'no')
    return done(
      'not-reported',
      'By the owner’s word these bills are not paid in the course of a trade or business.',
    );
  const threshold = thresholdOf(year);
  if (threshold === undefined)
    return done('undecided', `No threshold is known for payments in ${year}.`, ['threshold']);
  const limit = `the threshold of ${printMoney(threshold)} for payments in ${year}`;
  if (most < threshold)
    return done(
      'below',
      // That other houses count too is said once, above the list.
      reach === 'one house' && most === counted
        ? 'Below by this house alone.'
        : `${printMoney(most)}${most === counted ? '' : ' at most'} is below ${limit}${reach === 'one house' ? ' by this house alone' : ''}.`,
    );
  const lacking = lackingFacts(books, known, least < threshold);
  if (lacking.length > 0)
    return done(
      'undecided',
      `${printMoney(most)} may count, which reaches ${limit}; ${lacking.map((lack) => lackWords(lack, known)).join(', ')}. The preparer decides.`,
      lacking,
    );
  const kept =
    known.facts?.['taxpayer-form'] === 'none'
      ? ` Without a taxpayer number, ${payeeRules()['taxpayer-form-first'].figures.percent} % of that, ${printMoney(backupWithholding(counted))}, would be kept back.`
      : '';
  return done(
    'report',
    `${printMoney(counted)} counts, which reaches ${limit}.${kept} The preparer decides.`,
  );
}

function lackingFacts({ money }: PayerBooks, known: KnownPayee, wayMatters: boolean): Lack[] {
  const { facts } = known;
  const taxClass = facts?.['tax-class'] ?? 'not-known';
  return [
    ...(money['in-business'] === 'yes' ? [] : ['in-business' as const]),
    ...(sellsOf(known) === 'not-known' ? ['sells' as const] : []),
    ...(taxClass === 'not-known' || taxClass === 'llc' ? ['tax-class' as const] : []),
    ...(isCorporation(facts) && facts?.attorney === 'not known' ? ['attorney' as const] : []),
    ...(wayMatters ? ['way' as const] : []),
  ];
}

const LACK_WORDS: Record<Lack, string> = {
  'in-business': 'whether these bills are paid in the course of a business is not known',
  sells: 'what they sell is not known',
  'tax-class': 'their tax class is not known',
  attorney: 'whether they are lawyers is not known',
  way: 'how some of it was paid is not told',
  threshold: 'no threshold is known',
};

/** An LLC may be taxed as any of the others; what it is taxed as stands on its form. */
const lackWords = (lack: Lack, { facts }: KnownPayee): string =>
  lack === 'tax-class' && facts?.['tax-class'] === 'llc'
    ? 'an LLC: line 3 of their form tells how it is taxed'
    : LACK_WORDS[lack];

function rulesOf(known: KnownPayee, reasons: readonly (Reason | undefined)[], mayBeDue: boolean): RuleId[] {
  const family = known.facts?.relation === undefined ? [] : (['paid-family'] as const);
  const rules: RuleId[] = [
    'threshold-by-payment-date',
    'four-conditions',
    ...reasons.flatMap((reason) => (reason === undefined ? [] : [reason.rule])),
    ...(sellsOf(known) === 'rent' ? (['rent-on-another-form'] as const) : []),
    ...(sellsOf(known) === 'services' ? (['goods-or-services'] as const) : []),
    ...(mayBeDue ? (['return-due', 'taxpayer-form-first'] as const) : []),
    ...family,
  ];
  return [...new Set(rules)];
}
