/**
 * One thing that was counted or taped where somebody can be hurt, beside the figure of a published rule, and how
 * the two are set against each other. Lengths are compared as whole tenths of a micrometre.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { YesNo } from '../facts/field-kinds.js';
import { INCH, type Length } from '../facts/length.js';
import type { SafetyRules } from './tables/safety.js';

export interface Observation {
  readonly id: string;
  readonly path: FactPath;
  readonly topic:
    | 'escape opening'
    | 'stair'
    | 'guard'
    | 'hot water'
    | 'relief pipe'
    | 'range'
    | 'pool barrier';
  readonly what: string;
  /** What was seen or measured. */
  readonly observed: string;
  /** The published figure it is set against. */
  readonly figure: string;
  /** Where the figure is from. */
  readonly source: string;
  /** How the two stand. `not recorded`: something the figure asks for was not measured. */
  readonly stands: 'at or within the figure' | 'outside the figure' | 'not recorded';
  readonly caution: string;
  /** Photos, and papers of a kind that can show what was seen. */
  readonly evidence: readonly string[];
}

/** What is observed, before anything is said of it. */
export type Observed = Pick<Observation, 'id' | 'path' | 'topic' | 'what' | 'evidence'>;
export type Finding = Pick<Observation, 'observed' | 'figure' | 'stands'>;

export function observe(base: Observed, rule: SafetyRules[keyof SafetyRules], finding: Finding): Observation {
  const { title, section, edition } = rule.source;
  return { ...base, ...finding, source: `${title}, ${section} (${edition})`, caution: rule.caution };
}

/** The parts that are there, as one line: "drop 34″; guard: no". */
export const inOneLine = (...parts: readonly (string | false | undefined)[]): string =>
  parts.filter(Boolean).join('; ');

export const atLeast = (length: Length, inches: number): boolean => length.units >= inches * INCH;
export const atMost = (length: Length, inches: number): boolean => length.units <= inches * INCH;

/** `yes` and `no` as such; what wasn't said, or is not known, stays open. */
export const answered = (value: YesNo | undefined): boolean | undefined =>
  value === undefined || value === 'not known' ? undefined : value === 'yes';

/** Asks only of what was taped; the rest stays open. */
export const taped = (length: Length | undefined, test: (length: Length) => boolean): boolean | undefined =>
  length === undefined ? undefined : test(length);

/** All parts must hold; one that fails decides, one that is unknown leaves it open. */
export const all = (...parts: readonly (boolean | undefined)[]): boolean | undefined =>
  parts.includes(false) ? false : parts.includes(undefined) ? undefined : true;

export const judged = (ok: boolean | undefined): Observation['stands'] =>
  ok === undefined ? 'not recorded' : ok ? 'at or within the figure' : 'outside the figure';
