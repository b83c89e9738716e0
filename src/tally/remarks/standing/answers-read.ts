/** What the answers of the folder settle by a year, by "nobody was asked", or by what the association does. */

import type { FactSaid, Judgement, Known } from '../items/known.js';
import { judgeDues } from '../judge/judge-dues.js';
import { toldAnswers } from '../judge/told-answers.js';
import { matches, type SetPhrase } from './set-phrases.js';

export function answersRead(known: Known, sentence: string): SetPhrase[] {
  return [
    ...duesFree(known, sentence),
    ...assessments(known, sentence),
    ...neverAsked(known, sentence),
    ...yearsOfAnswers(known, sentence),
  ];
}

const span = ({ index, 0: words }: RegExpExecArray, judgement: Judgement): SetPhrase => ({
  from: index,
  to: index + words.length,
  judgement,
});

const FREE =
  /\b(?:hoa|association|dues)\b(?: (?:is|are|fees?|dues|membership)){0,3}[^.;,\d]{0,12}\b(?:optional|voluntary|free|waived|no (?:fees?|dues|cost|charge))\b(?: and (?:optional|voluntary|free))?/gi;

/** "HOA is optional": as good as none. */
const duesFree = (known: Known, sentence: string): SetPhrase[] =>
  matches(FREE, sentence).map((found) => span(found, judgeDues(known, undefined, true)));

const ASSESSMENT =
  /\b(?:no|zero|never any|without) (?:pending |planned |known |upcoming |special ){0,3}assessments?\b(?: (?:is|are|planned|pending|due)){0,3}/gi;

function assessments({ house }: Known, sentence: string): SetPhrase[] {
  if (!/assessment/i.test(sentence)) return [];
  const index = house.answers.findIndex(({ ask }) => /assessment/i.test(ask));
  const one = house.answers[index];
  const value = one?.answer.value;
  const facts: FactSaid[] =
    one === undefined
      ? []
      : [
          {
            path: ['answers', index],
            words: `${one.ask} ${value ?? 'not known'}`,
            evidence: one.answer.evidence,
          },
        ];
  const verdict =
    value === undefined ? 'no-fact' : /^(no|none|not)\b/i.test(value) ? 'backed' : 'contradicted';
  return matches(ASSESSMENT, sentence).map((found) =>
    span(found, {
      verdict,
      rule: 'answer',
      because:
        value === undefined ? 'the folder does not know it' : 'an answer in the folder says what is so',
      facts,
    }),
  );
}

/** "No engineer was asked": a sentence of the folder that nobody did a thing. */
const NOBODY =
  /\b(?:no|never any?|not any?)\s+([a-z]{5,})\s+(?:was|were|has been|have been|had been)\s+(?:ever\s+)?(?:asked|hired|called|sent|consulted|engaged|made|done|bought|tested|drawn|sought)\b/gi;

const DENIED = /\b(no|not|never|without|nobody|none|nor|yet|if|should|could|would|ask|any)\b/i;

function neverAsked(known: Known, sentence: string): SetPhrase[] {
  return toldAnswers(known).flatMap(({ ask, value, fact }) =>
    matches(NOBODY, value.toLowerCase()).flatMap(([, noun = '']) => {
      // What was asked narrows it: "an engineer approved the slab".
      const topic = significant(ask).filter((word) => word !== noun);
      const lower = sentence.toLowerCase();
      const at = lower.search(new RegExp(`\\b${noun}(s|'s|’s|ed)?\\b`));
      if (at < 0 || DENIED.test(clauseAround(sentence, at)) || !topic.some((word) => lower.includes(word)))
        return [];
      const [from, to] = clauseBounds(sentence, at);
      return [
        {
          from,
          to,
          judgement: {
            verdict: 'contradicted' as const,
            rule: 'answer',
            because: 'an answer in the folder says that this was not done',
            facts: [fact],
          },
        },
      ];
    }),
  );
}

const YEAR = /\b(?:19|20)\d\d\b/g;

/** Deeds that only an answer tells of: treated, tested, pumped, inspected. */
const TOLD_BY_ANSWERS =
  /\b(?:treat(?:ed|ment)|test(?:ed)?|survey(?:ed)?|inspect(?:ed|ion)|fumigat(?:ed|ion)|mitigat(?:ed|ion)|apprais(?:ed|al))\b/i;

/** "Termite treated in 2022" where the answer says 2019. */
function yearsOfAnswers(known: Known, sentence: string): SetPhrase[] {
  const deed = TOLD_BY_ANSWERS.exec(sentence);
  if (deed === null) return [];
  const [from, to] = clauseBounds(sentence, deed.index);
  const clause = sentence.slice(from, to);
  const [year] = yearsIn(clause);
  if (year === undefined) return [];
  const stem = deed[0].slice(0, 5).toLowerCase();
  const one = toldAnswers(known).find(
    ({ ask, value, fact }) =>
      fact.words.toLowerCase().includes(stem) &&
      yearsIn(value).length > 0 &&
      significant(ask).some((word) => !word.startsWith(stem) && clause.toLowerCase().includes(word)),
  );
  if (one === undefined) return [];
  const fits = yearsIn(one.value).includes(year);
  return [
    {
      from,
      to,
      judgement: {
        verdict: fits ? 'backed' : 'contradicted',
        rule: 'answer',
        because: fits ? 'an answer in the folder says so' : 'an answer in the folder gives another year',
        facts: [one.fact],
      },
    },
  ];
}

const yearsIn = (words: string): string[] => matches(YEAR, words).map(([year]) => year);

const COMMON = new Set(
  'house there their which under about would could other since been have does they this that with what when where'.split(
    ' ',
  ),
);

/** Words of a question by which a clause is known to speak of the same. */
const significant = (ask: string): string[] =>
  ask
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 3 && !COMMON.has(word));

function clauseBounds(sentence: string, at: number): [number, number] {
  const before = Math.max(...[',', ';', ':', '(', '—'].map((sign) => sentence.lastIndexOf(sign, at))) + 1;
  const joined = Math.max(sentence.lastIndexOf(' and ', at), sentence.lastIndexOf(' but ', at));
  if (joined > before) return [joined + 5, clauseEnd(sentence, at)];
  const words = sentence.slice(before).replace(/^\s*(and |but )?/, '');
  return [sentence.length - words.length, clauseEnd(sentence, at)];
}

function clauseEnd(sentence: string, at: number): number {
  const behind = sentence.slice(at).search(/[,;:()—]/);
  return behind < 0 ? sentence.length : at + behind;
}

function clauseAround(sentence: string, at: number): string {
  return sentence.slice(...clauseBounds(sentence, at));
}
