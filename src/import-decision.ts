/** What becomes of one row of a bank, and what is decided where nobody is asked. */
import type { Bucket } from './facts/bucket.js';
import type { PaymentWay } from './facts/ledger.js';
import type { LookAlike, SeenTwin } from './import-matching.js';
import type { History, Proposal } from './import-memory.js';
import type { BankRow } from './intake/bank-rows.js';
import type { Became } from './intake/seen-rows.js';

export type NewRow = BankRow & { readonly nth: number };

/** A row of the costs that is to be added. */
export interface NewCost {
  readonly date: string;
  readonly payee: string;
  readonly what: string;
  /** Paid; below zero for a refund. */
  readonly cents: number;
  /** Undefined: `check` asks for it. */
  readonly bucket: Bucket | undefined;
  readonly place: string | undefined;
  readonly paid: PaymentWay | undefined;
  readonly note: string;
}

export interface Decision {
  readonly row: NewRow;
  readonly became: Became;
  /** Chosen for the bank's text; empty where nobody has chosen. */
  readonly payee: string;
  /** If it was added. */
  readonly cost: NewCost | undefined;
  /** Row of the costs that stands for it, or may. */
  readonly alike: LookAlike | undefined;
  /** Row that was imported before and may be the same payment. */
  readonly twin: SeenTwin | undefined;
  /** By what its bucket was taken over, or left open, without a question. */
  readonly history: History | undefined;
}

/** What is open about a row when it is decided. */
export interface Open {
  readonly row: NewRow;
  readonly proposal: Proposal;
  readonly alike: LookAlike | undefined;
  readonly twin: SeenTwin | undefined;
  /** How it is paid from this account. */
  readonly paid: PaymentWay | undefined;
}

/** By history alone. What has none, or has one of several buckets, is added without a bucket; money that comes in from strangers is left out. */
export function decideAlone(open: Open): Decision {
  const { row, proposal, alike, twin } = open;
  const payee = proposal.isKnown ? proposal.payee : '';
  if (alike?.how === 'sure')
    return {
      row,
      became: 'in-costs',
      payee: alike.cost.payee,
      cost: undefined,
      alike,
      twin: undefined,
      history: undefined,
    };
  const without = {
    row,
    payee,
    cost: undefined,
    alike: undefined,
    twin: undefined,
    history: undefined,
  };
  if (proposal.notThisHouse === 'always') return { ...without, became: 'not-this-house' };
  if (row.cents < 0 && proposal.bucket === undefined) return { ...without, became: 'left-out' };
  const cost = newCost(open, {
    payee: proposal.payee,
    bucket: proposal.history?.isMixed === true ? undefined : proposal.bucket,
    what: usualWhat(row),
    place: proposal.place,
  });
  return { row, became: 'added', payee, cost, alike, twin, history: proposal.history };
}

/** The bank's own words for it: its remark, else its text. */
export const usualWhat = ({ memo, text }: BankRow): string => (memo === '' ? text : memo);

/** The bank's text is kept in the note where nothing else of the row tells it. */
export function newCost(
  { row, paid }: Pick<Open, 'row' | 'paid'>,
  chosen: Pick<NewCost, 'payee' | 'bucket' | 'what' | 'place'>,
): NewCost {
  const text = [chosen.payee, chosen.what].includes(row.text) ? '' : row.text;
  const check = row.paid === 'check' && !row.text.includes(row.reference) ? row.reference : '';
  return {
    ...chosen,
    date: row.date,
    cents: row.cents,
    paid: row.paid ?? paid,
    note: [text, check].filter((one) => one !== '').join(', '),
  };
}
