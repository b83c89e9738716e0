/** Whether a rule’s condition holds, and which facts decided that or are missing for it. */
import type { Condition, DutyFactName } from '../tables/duties.js';
import { answerQuestion } from './answer-question.js';
import type { DutyFacts } from './duty-facts.js';
import { allOf, anyOf, type Truth } from './truth.js';

export interface Judged {
  readonly truth: Truth;
  /** Facts that decided it, in the rule’s order. */
  readonly because: readonly DutyFactName[];
  /** Facts that are not known and would decide it. Empty unless `truth` is `not known`. */
  readonly missing: readonly DutyFactName[];
  /** Facts that are not known and were taken as fulfilling it, as the rule says. */
  readonly assumed: readonly DutyFactName[];
}

export function judgeCondition(condition: Condition, facts: DutyFacts): Judged {
  if ('always' in condition) return { truth: 'yes', because: [], missing: [], assumed: [] };
  if ('all' in condition) return several(condition.all, facts, allOf);
  if ('any' in condition) return several(condition.any, facts, anyOf);
  const { fact } = condition;
  const truth = answerQuestion(condition, facts[fact]);
  if (truth === 'not known' && condition['unknown-as'] === 'applies')
    return { truth: 'yes', because: [], missing: [], assumed: [fact] };
  return truth === 'not known'
    ? { truth, because: [], missing: [fact], assumed: [] }
    : { truth, because: [fact], missing: [], assumed: [] };
}

/** What decided the parts that came out as the whole did; a part that came out otherwise decided nothing. */
function several(
  parts: readonly Condition[],
  facts: DutyFacts,
  combine: (truths: readonly Truth[]) => Truth,
): Judged {
  const judged = parts.map((part) => judgeCondition(part, facts));
  const truth = combine(judged.map((part) => part.truth));
  const deciding = judged.filter((part) => part.truth === truth);
  const gather = (of: (part: Judged) => readonly DutyFactName[]): DutyFactName[] => [
    ...new Set(deciding.flatMap(of)),
  ];
  return {
    truth,
    because: gather((part) => part.because),
    missing: gather((part) => part.missing),
    assumed: gather((part) => part.assumed),
  };
}
