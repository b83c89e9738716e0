/** What a condition may ask about, as the folder knows it. */
import type { FactPath } from '../../diagnostics/fact-path.js';

/** Somewhere between two ends, both counted in; an end that is left out is open. Days are YYYY-MM-DD, and years numbers. */
export interface Span {
  readonly low: number | string | undefined;
  readonly high: number | string | undefined;
}

export interface DutyFact {
  /** A word, a number or day between two ends, or undefined: not known. */
  readonly is: string | Span | undefined;
  /** Where it stands, or would stand. */
  readonly path: FactPath;
  /** What it says, as part of a list of reasons: "built 1948", "the house has a pool". */
  readonly words: string;
  /** What is not known, after "whether" or as a noun: "whether membership in an association is mandatory". */
  readonly asks: string;
  /** What to type, between double blanks. */
  readonly hint: string;
}

/** One point. */
export const exactly = (value: number | string): Span => ({ low: value, high: value });
