/** What an association asks and allows. */
import { printMoney } from '../../../facts/money.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from './told-answers.js';

/** Holds dues and their absence against what the folder lists. */
export function judgeDues(
  known: Known,
  amount: number | undefined,
  denied: boolean,
  per?: string,
): Judgement {
  const rule = 'dues';
  const { dues, duties } = known.house;
  const facts: FactSaid[] = dues.map((one, index) => ({
    path: ['dues', index],
    words: `${one.to}: ${printMoney(one.amount)} ${one.per === 'once' ? 'once' : `a ${one.per}`}`,
    evidence: one.evidence,
  }));
  const answer = toldAnswers(known).find(({ ask }) => /\bhoa\b|association|\bdues\b/i.test(ask));
  const none: FactSaid | undefined =
    answer !== undefined && /^(no|none)\b/i.test(answer.value)
      ? { ...answer.fact, words: answer.value }
      : duties?.association === 'no'
        ? { path: ['duties', 'association'], words: 'association: no', evidence: [] }
        : undefined;
  if (denied) {
    if (dues.length > 0)
      return {
        verdict: 'contradicted',
        rule,
        because: 'the folder lists dues',
        facts,
        instead: facts[0]?.words,
      };
    if (none !== undefined)
      return { verdict: 'backed', rule, because: 'an answer in the folder says so', facts: [none] };
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder lists no dues, and does not say that there are none',
      facts: [],
    };
  }
  // Dues of an association that is not there.
  if (dues.length === 0 && none !== undefined)
    return {
      verdict: 'contradicted',
      rule,
      because: 'the folder says that there is no association',
      facts: [none],
      instead: 'no association dues',
    };
  if (dues.length === 0) return { verdict: 'no-fact', rule, because: 'the folder lists no dues', facts: [] };
  if (amount === undefined) return { verdict: 'backed', rule, because: 'the folder lists dues', facts };
  const fits = dues.some((one) => {
    // What is asked once is no sum of a month or a year: no number, and so no other sum either.
    const times = per === undefined || per === one.per ? 1 : Number(A_YEAR[one.per]) / Number(A_YEAR[per]);
    return Math.round((one.amount / 100) * times) === Math.round(amount);
  });
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule,
    because: fits ? 'the folder lists that sum' : 'the folder lists another sum',
    facts,
    instead: fits ? undefined : facts[0]?.words,
  };
}

/** How often a due comes in a year: "$768 a year" is twelve times $64 a month. */
const A_YEAR: Readonly<Record<string, number>> = { month: 12, quarter: 4, 'half-year': 2, year: 1 };

/** Short lets: an answer that names a shortest stay or forbids them. */
export function judgeLets(known: Known): Judgement {
  const rule = 'lets';
  const answer = toldAnswers(known).find(({ fact }) =>
    /\b(let|rent)|by the night|short.?term/i.test(fact.words),
  );
  if (answer === undefined)
    return { verdict: 'no-fact', rule, because: 'the folder says nothing of letting', facts: [] };
  const facts: FactSaid[] = [{ ...answer.fact, words: answer.value }];
  const against = /\b(no|not|none|shortest|minimum|at least|thirty|30|forbid|prohibit)/i.test(answer.value);
  return against
    ? {
        verdict: 'contradicted',
        rule,
        because: 'an answer in the folder limits it',
        facts,
        instead: answer.value,
      }
    : { verdict: 'backed', rule, because: 'an answer in the folder allows it', facts };
}
