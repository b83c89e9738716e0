/** R-values of insulation, and what an answer says has run out: a bond, a policy, a contract. */
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from '../judge/told-answers.js';
import { matches, type SetPhrase } from './set-phrases.js';

export const ratedRead = (known: Known, sentence: string): SetPhrase[] => [
  ...insulationRead(known, sentence),
  ...lapsedRead(known, sentence),
];

const span = ({ index, 0: words }: RegExpExecArray, judgement: Judgement): SetPhrase => ({
  from: index,
  to: index + words.length,
  judgement,
});

const wrong = (rule: string, facts: readonly FactSaid[]): Judgement => ({
  verdict: 'contradicted',
  rule,
  because: `the folder says: ${facts[0]?.words}`,
  facts,
});

const R_VALUE = /\bR[- ]?(\d{1,2})\b(?![-\d])/g;
const PLACES = ['attic', 'wall', 'floor', 'crawl', 'roof', 'garage', 'ceiling'];

/** "Blown to R-49": beside the value that the folder gives the insulation. */
function insulationRead({ items }: Known, sentence: string): SetPhrase[] {
  if (!/insulat|attic|blown|fiberglass|cellulose|batt|foam/i.test(sentence)) return [];
  const rated = items.flatMap((item) => {
    if (!item.things.includes('insulation')) return [];
    const words = `${item.what} ${item.label} ${item.words}`;
    const values = matches(R_VALUE, words).map((one) => Number(one[1]));
    return values.length === 0
      ? []
      : [
          {
            values,
            words: words.toLowerCase(),
            fact: { path: item.path, words: `${item.label}: ${item.what}`, evidence: item.evidence },
          },
        ];
  });
  return matches(R_VALUE, sentence).flatMap((found) => {
    const lower = sentence.toLowerCase();
    const place = PLACES.filter((one) => lower.includes(one));
    const there = rated.filter(({ words }) => place.some((one) => words.includes(one)));
    const of = there.length > 0 ? there : rated;
    if (of.length === 0) return [];
    const fits = of.filter(({ values }) => values.includes(Number(found[1])));
    const rule = 'size.rating';
    const facts = (fits.length > 0 ? fits : of).slice(0, 2).map(({ fact }) => fact);
    return [
      span(
        found,
        fits.length > 0
          ? { verdict: 'backed', rule, because: 'the folder says so', facts }
          : wrong(rule, facts),
      ),
    ];
  });
}

const RUNS =
  /\b(bond|policy|contract|agreement|certificate|certification|plan|subscription|licen[cs]e|lease)\b(?: (?:is|still|remains?|stays|and|it|in)){0,3} (current|active|in force|in effect|renewed|good|valid|up to date|paid up|transfers?|transferr?able|assignable|continues|running)\b/gi;
const RUNS_AHEAD =
  /\b(current|active|transferr?able|valid|renewable|assignable|existing) (?:\w+ ){0,2}(bond|policy|contract|agreement|certificate|certification|subscription)\b/gi;
const RAN_OUT =
  /\b(?:ran out|expired|lapsed|ended|ran until|not renewed|was dropped|cancell?ed|is over|no longer)\b/i;

/** "No current bond". */
const DENIED = /\b(no|not|never|without)\b[^.;,]{0,16}$/i;

/** "Termite bond current", where an answer says that it ran out. */
function lapsedRead(known: Known, sentence: string): SetPhrase[] {
  const said = [
    ...matches(RUNS, sentence).map((found) => ({ found, noun: found[1] })),
    ...matches(RUNS_AHEAD, sentence).map((found) => ({ found, noun: found[2] })),
  ];
  return said.flatMap(({ found, noun = '' }) => {
    if (DENIED.test(sentence.slice(0, found.index))) return [];
    const word = new RegExp(`\\b${noun}s?\\b`, 'i');
    const one = toldAnswers(known).find(({ fact }) => word.test(fact.words));
    const ranOut = one?.value.split(/[.;]/).some((part) => word.test(part) && RAN_OUT.test(part));
    return one !== undefined && ranOut === true ? [span(found, wrong('answer', [one.fact]))] : [];
  });
}
