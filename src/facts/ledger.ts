/**
 * The rows of a house's sheets: what was paid, driven and worked.
 *
 * Read by intake, never changed. Money is whole cents, miles are whole thousandths, hours whole hundredths; all
 * are safe integers. Every row knows its number in the sheet, so that each figure can be led back to it.
 */
import type { Bucket } from './bucket.js';

/** How a payment was made. `transfer`: bank to bank, wire. `network`: a third-party payment network. `loan`: a lender paid, or debt was taken over. */
export const PAYMENT_WAYS = ['cash', 'check', 'transfer', 'card', 'network', 'loan'] as const;
/** What a bank or card knows of: a loan is no payment of theirs. */
export const BANK_WAYS = PAYMENT_WAYS.filter((way) => way !== 'loan');
export type PaymentWay = (typeof PAYMENT_WAYS)[number];

/** The columns of a cost sheet, in the order in which it is written. */
export const COST_COLUMNS = [
  'date',
  'payee',
  'what',
  'amount',
  'bucket',
  'place',
  'paid',
  'receipt',
  'tax year',
  'sales tax',
  'note',
] as const;
export type CostColumn = (typeof COST_COLUMNS)[number];

export interface CostRow {
  /** Number of the row as a spreadsheet counts it: the headings are row 1. */
  readonly row: number;
  /** YYYY-MM-DD; always a real day. */
  readonly date: string;
  readonly payee: string;
  readonly what: string;
  /** Paid, sales tax included; below zero for a refund. */
  readonly cents: number;
  /** Of which sales tax, where the sheet tells it. */
  readonly salesTax: number | undefined;
  readonly bucket: Bucket;
  /** Id of the room, level, structure, system or work item it was for; undefined: the whole house. */
  readonly place: string | undefined;
  /** Undefined: the sheet does not tell. */
  readonly paid: PaymentWay | undefined;
  /** Id of the document; undefined: there is none, or it is lost. */
  readonly receipt: string | undefined;
  /** The tax year it counts in where that is not the date's. */
  readonly taxYear: number | undefined;
  readonly note: string | undefined;
}

export interface Trip {
  readonly row: number;
  readonly date: string;
  readonly from: string | undefined;
  readonly to: string;
  readonly purpose: string;
  /** Thousandths of a mile. */
  readonly thousandths: number;
  /** Tolls and parking in cents. */
  readonly tolls: number;
  readonly vehicle: string | undefined;
  readonly note?: string | undefined;
}

export interface HoursRow {
  readonly row: number;
  readonly date: string;
  /** `owner`, `family`, or a name. Unpaid; whoever was paid stands in the costs. */
  readonly who: string;
  readonly what: string;
  /** Id as in `CostRow.place`. */
  readonly place: string | undefined;
  /** Hundredths of an hour. */
  readonly hundredths: number;
  readonly note?: string | undefined;
}

/** A document's file as it lies in the folder. */
export interface PaperFile {
  /** Below documents/. */
  readonly file: string;
  /** Where the bytes lie. */
  readonly path: string;
  readonly bytes: number;
  /** SHA-256 in hexadecimal. */
  readonly sha256: string;
}

export interface Ledger {
  readonly costs: readonly CostRow[];
  readonly trips: readonly Trip[];
  readonly hours: readonly HoursRow[];
  /** Name of the sheet each list was read from (`costs.csv`), undefined where there is none. */
  readonly sheets: {
    readonly costs: string | undefined;
    readonly miles: string | undefined;
    readonly hours: string | undefined;
  };
  /** Files of receipts and other papers by the document's id. */
  readonly papers: ReadonlyMap<string, PaperFile>;
}

/** What a house without sheets has. The program reads it from a folder like any other; tests begin with it. */
export const EMPTY_LEDGER: Ledger = {
  costs: [],
  trips: [],
  hours: [],
  sheets: { costs: undefined, miles: undefined, hours: undefined },
  papers: new Map(),
};
