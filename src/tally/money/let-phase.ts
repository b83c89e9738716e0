/** On which side of the day a house was ready to be let a row stands. */
import type { CostRow } from '../../facts/ledger.js';
import type { Books } from './books.js';

/** `between`: the folder names no single day, and the row falls within the days it may have been. */
export type LetPhase = 'before' | 'between' | 'after';

export const LET_PHASES: readonly LetPhase[] = ['before', 'between', 'after'];

export const PHASE_WORDS: Record<LetPhase, string> = {
  before: 'before it was ready to be let',
  between: 'in the days in which it may have become ready to be let',
  after: 'after it was ready to be let',
};

/** Undefined where the folder doesn't tell when it was ready to be let. The day itself counts as after. */
export function letPhase({ money }: Books, { date }: Pick<CostRow, 'date'>): LetPhase | undefined {
  const service = money.rental?.['in-service'];
  if (service === undefined) return undefined;
  const { earliest = '0000', latest = '9999' } = service;
  if (date < earliest) return 'before';
  return date >= latest ? 'after' : 'between';
}
