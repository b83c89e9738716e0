/** Judgements of a figure: right, wrong, or not to be told. */
import type { FactSaid, Judgement } from '../items/known.js';

export const judged = (
  ok: boolean,
  rule: string,
  because: string,
  facts: readonly FactSaid[],
  instead?: string,
): Judgement => ({
  verdict: ok ? 'backed' : 'contradicted',
  rule,
  because,
  facts,
  instead: ok ? undefined : instead,
});

export const unknown = (rule: string, because: string): Judgement => ({
  verdict: 'no-fact',
  rule,
  because,
  facts: [],
});

export const plural = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** Words of an entry as a draft has them: its tokens stand apart, "wall - to - wall". */
export const asTyped = (word: string): string => word.replace(/ ([-/]) /g, '$1').replace(/ '(?=s\b)/g, "'");
