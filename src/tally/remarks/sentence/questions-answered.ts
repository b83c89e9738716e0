/**
 * "Is the tub new? No, recoated." A question claims nothing by itself; its yes or no does. What was read in the
 * question stands with a yes and is turned round by a no, and a question after trouble ("ever been wet?") is held
 * against the folder by its answer.
 */
import { remarkWords } from '../../tables/remarks.js';
import { sensesIn } from '../items/item-meaning.js';
import type { Finding, Judgement, Known } from '../items/known.js';
import { judgeCondition } from '../judge/judge-conditions.js';
import type { Token } from '../words/token.js';

export interface Answered {
  /** Where the question begins, and where its mark stands. */
  readonly from: number;
  readonly mark: number;
  /** The word that answers. */
  readonly word: readonly [number, number];
  readonly yes: boolean;
}

const YES = /^(yes|yep|yup|yeah|absolutely|certainly|definitely|sure)$/;
const NO = /^(no|nope|never|nah|none|not)$/;

/** Signs and a letter that may stand between a question and its answer: "A:", "—". */
const MAY_STAND_BETWEEN = /^(a|ans|answer|:|-|–|—|"|“|\.)$/i;

const ENDS_BEFORE = /^[.!?;•]$/;

/** Every question of a text that a yes or a no follows. */
export function answeredIn(text: string, tokens: readonly Token[]): Answered[] {
  const found: Answered[] = [];
  let start = 0;
  for (const [index, token] of tokens.entries()) {
    const before = tokens[index - 1];
    if (before !== undefined && text.slice(before.to, token.from).includes('\n')) start = index;
    if (token.norm === '?') {
      const answer = answerBehind(tokens, index);
      const first = tokens[start];
      if (answer !== undefined && first !== undefined)
        found.push({
          from: first.from,
          mark: token.from,
          word: [answer.from, answer.to],
          yes: YES.test(answer.raw),
        });
    }
    if (token.kind === 'sign' && ENDS_BEFORE.test(token.norm)) start = index + 1;
  }
  return found;
}

function answerBehind(tokens: readonly Token[], mark: number): Token | undefined {
  const near = tokens.slice(mark + 1, mark + 5);
  const first = near.findIndex(({ raw }, index) => index === 3 || !MAY_STAND_BETWEEN.test(raw));
  const at = mark + 1 + first;
  const word = near[first];
  if (word?.kind !== 'word') return undefined;
  if (YES.test(word.raw)) return word;
  if (!NO.test(word.raw)) return undefined;
  // "No carpet anywhere" is a claim of its own; "No, town sewer" answers.
  const next = tokens[at + 1];
  return next === undefined ||
    next.kind === 'sign' ||
    /^(and|but|never|not|it|they|we|there|since)$/.test(next.raw)
    ? word
    : undefined;
}

/** What was read in the questions, as their answers leave it. */
export function answeredFindings(
  known: Known,
  text: string,
  questions: readonly Answered[],
  findings: readonly Finding[],
): Finding[] {
  if (questions.length === 0) return [...findings];
  const left = findings.flatMap((one) => {
    const question = questions.find(({ from, mark }) => one.from >= from && one.to <= mark);
    if (question === undefined) return [one];
    const [, to] = question.word;
    const asks = ASKS.test(text.slice(question.from, question.mark));
    const turned = question.yes ? one : { ...one, ...turnedRound(one, asks) };
    return turned.verdict === 'opinion' ? [] : [{ ...turned, to, says: text.slice(one.from, to) }];
  });
  const asked = questions.flatMap((question) => {
    const judged = ofTrouble(known, text.slice(question.from, question.mark), question.yes);
    if (judged === undefined) return [];
    const from = question.from + judged.at;
    const to = question.word[1];
    return [{ ...judged.judgement, from, to, says: text.slice(from, to) }];
  });
  return [...left, ...asked].sort((a, b) => a.from - b.from || a.to - b.to);
}

/** A no to what the folder backs, and a no to what it denies. */
function turnedRound(one: Judgement, asks: boolean): Partial<Judgement> {
  // "A: None": the reading has denied it already.
  if (one.rule === 'not-there') return {};
  if (one.rule === 'place' || !asks) return { verdict: 'opinion' };
  if (one.verdict === 'backed') return { verdict: 'contradicted', because: 'the folder says that it is so' };
  if (one.verdict === 'contradicted')
    return { verdict: 'backed', because: 'the folder says so', instead: undefined };
  return one.verdict === 'wider'
    ? { verdict: 'no-fact', because: 'the folder tells of some', instead: undefined }
    : {};
}

/** A question that a verb or "any" opens, or that is a thing and no more: "Septic?" */
const ASKS =
  /^\W*(?:q\W+)?(?:(?:and|so)\W+)?(?:(?:is|are|was|were|does|do|did|has|have|had|will|can|any|ever)\b|(?:\S+\s+){0,2}\S+$)/i;

const ASKS_FOR_WORKING = /\b(works?|working|runs?|running|functions?|functional|operates?|operational)\W*$/i;

/** "Any water in the cellar? No." "Does the opener work? Yes." */
function ofTrouble(
  known: Known,
  question: string,
  yes: boolean,
): { at: number; judgement: Judgement } | undefined {
  const things = sensesIn(question)
    .filter(({ tag, id }) => tag === 'thing' && id !== 'work' && id !== 'water-supply')
    .map(({ id }) => id);
  const working = ASKS_FOR_WORKING.exec(question);
  if (working !== null && things.length > 0) {
    const judgement = judgeCondition(known, 'works', things);
    return { at: working.index, judgement: yes ? judgement : reversedIfListed(judgement) };
  }
  const { conditions, topics } = remarkWords();
  for (const { id, topic } of conditions) {
    const pattern = topics[topic];
    if (topic === 'any' || topic === 'dead' || pattern === undefined || !ASKED_AFTER.has(id)) continue;
    const word = new RegExp(pattern, 'i').exec(question);
    if (word === null || !EVER.test(question)) continue;
    const judgement = judgeCondition(known, id, things);
    return { at: word.index, judgement: yes ? reversedIfListed(judgement) : judgement };
  }
  return undefined;
}

const ASKED_AFTER = new Set(['dry', 'no-pests', 'no-cracks', 'no-claims', 'no-asbestos', 'no-lead']);

/** What makes it a question after trouble, and not after a thing: "Any leaks?", "Has it ever flooded?" */
const EVER = /\b(any|ever|has|have|had|is there|are there|does|do|did|was|were|known)\b/i;

const reversedIfListed = (judgement: Judgement): Judgement =>
  judgement.verdict === 'contradicted'
    ? { ...judgement, verdict: 'backed', because: 'the folder says so', instead: undefined }
    : { ...judgement, verdict: 'no-fact' };
