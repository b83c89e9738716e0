/**
 * What is worked out about a house's money: the shapes. `derive-money.ts` fills them.
 *
 * All money is whole cents. Nothing here is advice: the owner states the role, and every line says which rule put it
 * where, how closely that rule was read, and which rows of the sheet it adds up.
 */
import type { Bucket, Role } from '../../facts/bucket.js';
import type { Ledger } from '../../facts/ledger.js';

/** A rule behind a figure. `id` is unique; a page prints each rule once and the figures lead to it. */
export interface MoneyRule {
  readonly id: string;
  /** The rule in our own words. */
  readonly rule: string;
  readonly source: { readonly title: string; readonly section: string; readonly publisher: string };
  /** How closely it was read; `from memory` is said wherever the rule is printed. */
  readonly read: 'publisher' | 'quoted' | 'paraphrased' | 'from memory';
  /** Where and how it was read, in a sentence; names what was not read although the rest was. */
  readonly how?: string | undefined;
  readonly caution?: string | undefined;
}

/** A fact behind a figure, for a reader of the folder and for one of paper. */
export interface SheetFact {
  /** Words of the fact: `money.sale.price`. */
  readonly path: string;
  /** In plain words with its value: "sale price $246,000.00". */
  readonly says: string;
}

/** A line of a worksheet: a figure, and where it comes from. */
export interface SheetLine {
  /** Unique within its worksheet; `[a-z0-9-]+`. */
  readonly id: string;
  readonly label: string;
  /** Line of the form, where one has a number: "36". */
  readonly formLine?: string;
  /** Signed: what is taken away is below zero. Undefined: can't be told; `note` says why. */
  readonly cents: number | undefined;
  /** Numbers of the rows of the cost sheet that it adds up, ascending. */
  readonly rows: readonly number[];
  /** Facts that it rests on beside rows. */
  readonly facts: readonly SheetFact[];
  /** Ids of rules. */
  readonly rules: readonly string[];
  readonly weight: 'normal' | 'total';
  /** A remark for the preparer; open readings are named here, both figures told. */
  readonly note?: string;
}

export interface WorksheetPart {
  readonly id: string;
  readonly title: string;
  /** Tax year, where the part is one of a year's. */
  readonly year?: number;
  readonly lines: readonly SheetLine[];
}

export interface Worksheet {
  readonly role: Role;
  readonly title: string;
  /** Which forms it feeds, in words. */
  readonly form: string;
  /** Days that a form asks for: acquired, sold, ready to be let, how long it was held. `says` may be "not sold". */
  readonly dates?: readonly { readonly id: string; readonly label: string; readonly says: string }[];
  readonly parts: readonly WorksheetPart[];
  /** What applies to the role, with rules: safe harbours, exclusions, what is open. */
  readonly notes: readonly {
    readonly id: string;
    readonly text: string;
    readonly rules: readonly string[];
  }[];
}

export interface BucketTotal {
  readonly bucket: Bucket;
  readonly cents: number;
  /** Of which refunds, below zero. */
  readonly refunds: number;
  readonly salesTax: number;
  readonly rows: readonly number[];
}

/** One thing that the roles treat differently, side by side. */
export interface RoleContrast {
  readonly id: string;
  readonly label: string;
  /** In words or money, already printed. */
  readonly by: Readonly<Record<Role, string>>;
  readonly rules: readonly string[];
}

/** One payee in one calendar year. */
export interface PayeeYear {
  readonly payee: string;
  readonly year: number;
  /** All that was paid, refunds taken off. */
  readonly paid: number;
  /** What counts towards a return: services, not by card or network. */
  readonly counted: number;
  readonly leftOut: readonly {
    readonly cents: number;
    readonly why: string;
    readonly rows: readonly number[];
  }[];
  /** In force on the payments' dates; undefined: no figure is known for the year. */
  readonly threshold: number | undefined;
  readonly verdict: 'report' | 'below' | 'not-reported' | 'undecided';
  /** What the verdict rests on, in one sentence. */
  readonly why: string;
  /** Form it would go on: "1099-NEC", "1099-MISC". */
  readonly form: string | undefined;
  readonly taxpayerForm: 'on-file' | 'asked' | 'none' | 'not-known';
  /** YYYY-MM-DD on which the return is due. */
  readonly due: string | undefined;
  readonly rows: readonly number[];
  readonly rules: readonly string[];
}

/** Trips of one year at one rate. */
export interface MileSpan {
  readonly from: string;
  readonly to: string;
  /** Tenths of a cent a mile; undefined: no rate in the table. */
  readonly rate: number | undefined;
  readonly thousandths: number;
  /** Rounded once, half up. */
  readonly cents: number | undefined;
  readonly tolls: number;
  readonly rows: readonly number[];
  readonly rule: string;
}

export interface Retention {
  readonly id: string;
  readonly what: string;
  /** `through`: up to the day of that name. `not begun`: the day it is counted from is not there yet. `for good`: there is no end. */
  readonly kept: 'through' | 'not begun' | 'for good';
  /** YYYY-MM-DD up to and including which it is kept; undefined unless `kept` is `through`. */
  readonly through: string | undefined;
  /** What the date is counted from, in words. */
  readonly from: string;
  readonly years: number | undefined;
  readonly rules: readonly string[];
}

/** A share of the spending: a trade, a room. */
export interface Share {
  readonly id: string;
  readonly label: string;
  readonly cents: number;
  readonly rows: readonly number[];
  /** Unpaid hours spent there, hundredths. */
  readonly hundredths: number;
  /** Cents for each square foot of `Lessons.area`, rounded once; undefined where no size is known. */
  readonly perSquareFoot: number | undefined;
}

export interface Lessons {
  /** Improvements, restorations and repairs, refunds and rebates taken off. */
  readonly spent: number;
  readonly area: { readonly squareFeet: number; readonly words: string } | undefined;
  readonly perSquareFoot: number | undefined;
  readonly byTrade: readonly Share[];
  readonly byRoom: readonly Share[];
  readonly budget: readonly {
    readonly label: string;
    readonly planned: number;
    readonly actual: number;
    readonly rows: readonly number[];
  }[];
  readonly days: {
    readonly bought: string | undefined;
    readonly listed: string | undefined;
    readonly sold: string | undefined;
    readonly toListing: number | undefined;
    readonly toSale: number | undefined;
  };
  /** Written by the owner, or read from permits that stood open; longest first. */
  readonly heldUp: readonly {
    readonly from: string;
    readonly to: string;
    readonly days: number;
    readonly by: string;
  }[];
  /** All of it, whatever `holdingDays` ends with. */
  readonly holding: number;
  /** Days over which `holdingPerDay` is taken: from the purchase to the end of the holding. */
  readonly holdingDays: number | undefined;
  /** With what those days end. A house that is let is no longer held for nothing. */
  readonly holdingEnd: 'sold' | 'ready to be let' | 'as-of day';
  /** Holding cost paid within those days; the same as `holding` unless it was let. */
  readonly holdingWithin: number;
  readonly holdingPerDay: number | undefined;
  /** Sale price less selling costs and all that was paid. Undefined until it is sold, and without a row of the purchase. */
  readonly profit: number | undefined;
  /** Why there is no profit: "not sold yet". Undefined where there is one. */
  readonly profitNote: string | undefined;
  readonly hours: { readonly owner: number; readonly others: number };
  readonly hourRate: number | undefined;
  /** For information only: profit less the owner's hours at that rate. */
  readonly profitAfterHours: number | undefined;
}

/** A sale that has been closed by the as-of day. */
export interface Sale {
  /** Contract price. */
  readonly price: number;
  /** YYYY-MM-DD; the last day it can be, where the owner named a span. */
  readonly day: string;
  readonly year: number;
  /** The owner named the very day. */
  readonly sure: boolean;
  /** When it closed, as the owner wrote it. */
  readonly written: string;
  /** The same in words: "August 2026". */
  readonly words: string;
}

export interface MoneyTally {
  readonly ledger: Ledger;
  readonly role: Role | undefined;
  /** Undefined: not sold on the as-of day, as far as the facts tell. */
  readonly sale: Sale | undefined;
  readonly totals: readonly BucketTotal[];
  /** Everything paid, refunds taken off. */
  readonly allPaid: number;
  readonly worksheets: readonly Worksheet[];
  readonly contrasts: readonly RoleContrast[];
  readonly payees: readonly PayeeYear[];
  readonly miles: readonly MileSpan[];
  readonly retention: readonly Retention[];
  readonly lessons: Lessons;
  /** Every rule that is cited above, in order of id. */
  readonly rules: readonly MoneyRule[];
}
