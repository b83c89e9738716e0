/** Whether a fact may be told in a draft, and what is behind it. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { Fact } from '../../facts/fact.js';
import type { Context } from '../context.js';
import { evidenceOf, type Known, markOf } from '../marks.js';
import type { Backing } from './draft-unit.js';

/** Which facts a draft may rest on. */
export interface DraftRules {
  readonly context: Context;
  /** The owner's statements may be told as well as what has a paper or photo behind it. */
  readonly owner: boolean;
}

/** Something known by its papers; undefined where the draft may not tell it. */
export function backed(
  { context, owner }: DraftRules,
  known: Known,
  fact: string,
  path: FactPath,
): Backing | undefined {
  const mark = markOf(context, known);
  if (mark.standing === 'documented') return { fact, mark, evidence: known.evidence, path };
  return owner && mark.standing === 'owner' ? { fact, mark, evidence: [], path } : undefined;
}

/** A thing that was done: a permit beside it is a paper as well. */
export const backedDeed = (
  rules: DraftRules,
  item: Known & { readonly permit?: string | undefined },
  fact: string,
  path: FactPath,
): Backing | undefined => backed(rules, evidenceOf(rules.context, item), fact, path);

/** A fact in its long form, with its value. What is said to be not known is never told. */
export function backedFact<T>(
  rules: DraftRules,
  fact: Fact<T> | undefined,
  words: string,
  path: FactPath,
): { readonly value: T; readonly backing: Backing } | undefined {
  if (fact?.value === undefined) return undefined;
  const backing = backed(rules, fact, words, path);
  return backing === undefined ? undefined : { value: fact.value, backing };
}

/** Papers that show a level: its own, else those of the measuring, which has every level's readings. */
export function evidenceOfLevel({ context }: DraftRules, id: string): readonly string[] {
  const level = context.house.levels.find((one) => one.id === id);
  if (level === undefined) return [];
  return level.evidence.length > 0 ? level.evidence : (context.house.measured?.evidence ?? []);
}
