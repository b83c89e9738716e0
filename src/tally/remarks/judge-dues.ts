/** What an association asks and allows. */
import { printMoney } from '../../facts/money.js';
import type { FactSaid, Judgement, Known } from './known.js';

/** Holds dues and their absence against what the folder lists. */
export function judgeDues(
  known: Known,
  amount: number | undefined,
  denied: boolean,
  per?: string,
): Judgement {
  const rule = 'dues';
  const { dues, answers } = known.house;
  const facts: FactSaid[] = dues.map((one, index) => ({
    path: ['dues', index],
    words: `${one.to}: ${printMoney(one.amount)} a ${one.per}`,
    evidence: one.evidence,
  }));
  const asked = answers.findIndex(({ ask }) => /\bhoa\b|association|\bdues\b/i.test(ask));
  if (denied) {
    if (dues.length > 0)
      return {
        verdict: 'contradicted',
        rule,
        because: 'the folder lists dues',
        facts,
        instead: facts[0]?.words,
      };
    const answer = answers[asked]?.answer.value;
    if (answer !== undefined && /^(no|none)\b/i.test(answer))
      return {
        verdict: 'backed',
        rule,
        because: 'an answer in the folder says so',
        facts: [{ path: ['answers', asked], words: answer, evidence: answers[asked]?.answer.evidence ?? [] }],
      };
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder lists no dues, and does not say that there are none',
      facts: [],
    };
  }
  if (dues.length === 0) return { verdict: 'no-fact', rule, because: 'the folder lists no dues', facts: [] };
  if (amount === undefined) return { verdict: 'backed', rule, because: 'the folder lists dues', facts };
  const fits = dues.some(
    (one) => Math.round(one.amount / 100) === Math.round(amount) && (per === undefined || one.per === per),
  );
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule,
    because: fits ? 'the folder lists that sum' : 'the folder lists another sum',
    facts,
    instead: fits ? undefined : facts[0]?.words,
  };
}

/** Short lets: an answer that names a shortest stay or forbids them. */
export function judgeLets(known: Known): Judgement {
  const rule = 'lets';
  const index = known.house.answers.findIndex(({ ask, answer }) =>
    /\b(let|rent)|by the night|short.?term/i.test(`${ask} ${answer.value ?? ''}`),
  );
  const answer = known.house.answers[index]?.answer;
  if (answer?.value === undefined)
    return { verdict: 'no-fact', rule, because: 'the folder says nothing of letting', facts: [] };
  const facts: FactSaid[] = [{ path: ['answers', index], words: answer.value, evidence: answer.evidence }];
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
