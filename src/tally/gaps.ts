/**
 * What each edition needs and the folder lacks, most asked-for first.
 *
 * A gap is no mistake: the packet prints "not known" and stays true. The list tells the writer which answer
 * is worth an evening, and what to type. Start reading at `ORDER` in `gap.ts`.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Gap, GapSources } from './gap.js';
import { answerGaps } from './gaps-in-answers.js';
import { finishGaps } from './gaps-in-finishes.js';
import { permitGaps } from './gaps-in-permits.js';
import { safetyGaps } from './gaps-in-safety.js';
import { sizeGaps } from './gaps-in-size.js';
import { systemGaps } from './gaps-in-systems.js';
import { workGaps } from './gaps-in-work.js';

export type { Gap } from './gap.js';

export function listGaps(sources: GapSources): Gap[] {
  return [
    ...sizeGaps(sources),
    ...systemGaps(sources),
    ...safetyGaps(sources),
    ...workGaps(sources),
    ...permitGaps(sources),
    ...finishGaps(sources),
    ...answerGaps(sources),
  ].sort((a, b) => a.rank - b.rank);
}

export function gapDiagnostics(gaps: readonly Gap[]): Diagnostic[] {
  return gaps.map((gap) => ({
    code: 'tally.gap',
    severity: 'note',
    path: gap.path,
    rank: gap.rank,
    message: `${gap.lacks} (${gap.audiences.join(', ')})`,
    hints: [gap.hint],
  }));
}
