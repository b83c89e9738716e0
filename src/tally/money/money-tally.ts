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

/** Where a figure comes from besides rows. */
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
  /** Words of the facts that it rests on, beside rows: `money.sale.price`. */
  readonly facts: readonly string[];
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
  /** YYYY-MM-DD up to and including which it is kept; undefined: the count has not begun, or has no end. */
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
  readonly holding: number;
  /** Days the holding cost is spread over: from purchase to sale, or to the as-of date. */
  readonly holdingDays: number | undefined;
  readonly holdingPerDay: number | undefined;
  /** Sale price less selling costs and all that was paid. Undefined until it is sold. */
  readonly profit: number | undefined;
  readonly hours: { readonly owner: number; readonly others: number };
  readonly hourRate: number | undefined;
  /** For information only: profit less the owner's hours at that rate. */
  readonly profitAfterHours: number | undefined;
}

export interface MoneyTally {
  readonly ledger: Ledger;
  readonly role: Role | undefined;
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
