/** What laws ask of one house’s sale and renovation, as far as the program’s rules and the folder’s facts tell. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { HouseDate } from '../../facts/date.js';
import type { DutyFactName, DutyRule } from '../tables/duties.js';
import type { HiredWork } from './contractor-work.js';
import type { DutyFact } from './duty-fact.js';

export type DutyResult = 'applies' | 'does not apply' | 'not known';

/** A fact of a condition, with its name. */
export type NamedFact = DutyFact & { readonly fact: DutyFactName };

export interface Duty {
  readonly rule: DutyRule;
  readonly result: DutyResult;
  /** What decided it: "built 1948; no sale at foreclosure". */
  readonly because: readonly NamedFact[];
  /** What is not known and would decide it; only where the result is not known. */
  readonly missing: readonly NamedFact[];
  /** What is not known and was taken as making it apply, as the rule asks. */
  readonly assumed: readonly NamedFact[];
  /** Dated readings that may hold for this contract; empty where the rule has none. */
  readonly versions: NonNullable<DutyRule['versions']>;
  /** In words, with the day where one is known. */
  readonly due: DutyDue | undefined;
  readonly record: DutyRecord;
  /** Until when its papers are kept; undefined where no rule names a time. */
  readonly keep: DutyKeep | undefined;
}

export interface DutyDue {
  readonly words: string;
  /**
   * Last good day, YYYY-MM-DD: after it the thing is surely late; undefined while no date fixes it. The day of a contract
   * or closing counts in, since nothing finer than days is written; of a month, its last day.
   */
  readonly day: string | undefined;
}

/**
 * recorded: the folder says that it was done. late: it was, after its day. missing: it applies, its day has passed and
 * nothing is recorded. not recorded: nothing is, and its day isn’t known to have passed. none: nothing to record. What
 * the folder merely has, without saying that the buyer got it, records nothing and stands in the words.
 */
export interface DutyRecord {
  readonly state: 'recorded' | 'late' | 'missing' | 'not recorded' | 'none';
  /** "22 June 2026", "not recorded; one report is on file"; empty for none. */
  readonly words: string;
  readonly evidence: readonly string[];
  /** The earliest telling, where one is recorded. */
  readonly told: DutyTelling | undefined;
}

/** Once that something was told or handed over. */
export interface DutyTelling {
  readonly on: HouseDate;
  /** Where its day stands. */
  readonly path: FactPath;
  /** By when it was due, in words, where it was told after that. */
  readonly after: string | undefined;
}

export interface DutyKeep {
  /** Last day, YYYY-MM-DD; undefined where the day it is counted from isn’t known. */
  readonly through: string | undefined;
  /** What it is counted from. */
  readonly from: string;
  readonly years: number;
}

export interface Duties {
  /** Two letters. */
  readonly state: string;
  /** Name of the state whose rules were used; undefined: the program has none for it. */
  readonly pack: string | undefined;
  /** The earliest of the days on which the rules were last read, YYYY-MM-DD. Rules from memory were read on none. */
  readonly lastRead: string;
  /** Federal first, then the state’s, each in the order of its file. */
  readonly duties: readonly Duty[];
  /** What hired people did, and may have done, since the purchase. */
  readonly hired: readonly HiredWork[];
  readonly diagnostics: readonly Diagnostic[];
}
