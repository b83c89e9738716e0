/** What an answer of the folder denies outright: gas at the house, and that a thing was looked at, swept or tested. */
import { remarkWords } from '../../tables/remarks.js';
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from '../judge/told-answers.js';
import { belongsTo } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

const GAS =
  /\b(?:natural gas(?! nearby)|gas (?:line|service|main|meter|hook-?up|connection|logs?|fireplace|grill|stub|heat|heating|furnace|range|stove|cooktop|cooking|water heater|dryer|available|at the (?:house|street|road|curb))|propane|piped gas|city gas|(?:heat|cook|cooking|heating)(?:s|ed)? (?:is |by |with |on )?gas|(?:utilities|fuel|services)\b[^.;]{0,60}?\bgas)\b/gi;

/** Words ahead by which no gas is claimed. */
const NOT_CLAIMED =
  /\b(no|not|never|without|zero|nor|any|non|isn't|instead of|former|old|was|were|could|ready for|converted from|nearby|station|free of|rather than)\b[^,.;:]{0,16}$/i;

/** Deeds of keeping a thing, by their stems. */
const KEPT_UP =
  'look(?:ed|s)?[ -](?:at|over)|swept|sweep|clean(?:ed|ing|s)?|inspect(?:ed|ion|ions|s)?|pump(?:ed|ing)?|test(?:ed|s|ing)?|servic(?:ed|ing|e)|treat(?:ed|ment|s)?|check(?:ed|s)?|tuned|examined|scoped|camera(?:ed|[ -]scoped)?|certified|surveyed';
const DEED = new RegExp(`\\b(?:${KEPT_UP})\\b`, 'gi');

const WHETHER = /^\W*(?:has|have|had|was|were|did|is|are|any|when)\b/i;

const DENIAL =
  /\b(no|not|never|n['’]t|without|nor|neither|none|nobody|before|buyer|should|could|to be|recommend|welcome|once|will)\b/i;

export const deniedRead = (known: Known, sentence: string): SetPhrase[] => [
  ...gasDenied(known, sentence),
  ...deedsDenied(known, sentence),
];

const no = (rule: string, because: string, fact: FactSaid): Judgement => ({
  verdict: 'contradicted',
  rule,
  because,
  facts: [fact],
});

/** "Utilities: natural gas", where the folder answers that there is none and tells of nothing that burns it. */
function gasDenied(known: Known, sentence: string): SetPhrase[] {
  if (!/gas|propane/i.test(sentence)) return [];
  const burns = known.items.some(({ classes }) =>
    classes.some(({ group, id }) => group === 'fuel' && /gas|propane/.test(id)),
  );
  const one = toldAnswers(known).find(({ ask, value }) => /\bgas\b/i.test(ask) && NO_GAS.test(value));
  if (one === undefined || burns) return [];
  return matches(GAS, sentence).flatMap((found) => {
    if (NOT_CLAIMED.test(sentence.slice(0, found.index)) || NO_WORD.test(found[0])) return [];
    // "Utilities: public water, gas": from where gas is named.
    const before = found[0].search(/\b(?:natural gas|gas[\w -]*|propane)$/i);
    return [
      {
        from: found.index + Math.max(0, before),
        to: found.index + found[0].length,
        judgement: no('answer', 'an answer in the folder says that there is no gas', one.fact),
      },
    ];
  });
}

const NO_GAS = /^(?:no\b|none\b)|\b(?:no gas|not? (?:piped|connected)|all[- ]electric)\b/i;
const NO_WORD = /\b(no|not|without)\b/i;

/** "Chimney swept last winter", where the folder answers that nobody looked at it. */
function deedsDenied(known: Known, sentence: string): SetPhrase[] {
  const deeds = matches(DEED, sentence);
  if (deeds.length === 0) return [];
  const denial = new RegExp(remarkWords().denials, 'i');
  const spoken = thingsIn(sentence);
  return toldAnswers(known).flatMap(({ ask, value, fact }) => {
    const asked = matches(DEED, ask).map(([word]) => word);
    if (asked.length === 0 || !denial.test(value) || !WHETHER.test(ask)) return [];
    const about = thingsIn(ask).filter((id) => !/^(house|work)$/.test(id));
    const isSpokenOf =
      about.some((id) => spoken.some((other) => belongsTo(other, id) || belongsTo(id, other))) ||
      namesOf(ask).some((word) => new RegExp(`\\b${word}s?\\b`, 'i').test(sentence));
    if (!isSpokenOf) return [];
    // Where nobody looked at all, no deed of the kind was done; else only the one that was asked after.
    const any = asked.some((word) => /look|inspect|check/i.test(word));
    return deeds
      .filter(
        ({ index: at, 0: word }) =>
          (any || asked.some((one) => one.slice(0, 4).toLowerCase() === word.slice(0, 4).toLowerCase())) &&
          !DENIAL.test(clause(sentence, at, word.length)),
      )
      .map(({ index: at, 0: word }) => ({
        from: at,
        to: at + word.length,
        judgement: no('answer', 'an answer in the folder says that this was not done', fact),
      }));
  });
}

const thingsIn = (words: string): string[] =>
  sensesIn(words).flatMap((sense) => (sense.tag === 'thing' ? [sense.id] : []));

const PLAIN = /^(have|been|they|there|that|this|ever|house|home|with|from|your|since|anyone|anybody|system)$/;

/** Nouns of a question by which a clause is known to speak of the same. */
const namesOf = (ask: string): string[] =>
  ask
    .toLowerCase()
    .replace(DEED, ' ')
    .split(/[^a-z]+/)
    .filter((word) => word.length > 3 && !PLAIN.test(word))
    .map((word) => word.replace(/s$/, ''));

function clause(sentence: string, at: number, length: number): string {
  const before = Math.max(...[',', ';', ':', '(', '.'].map((sign) => sentence.lastIndexOf(sign, at)));
  return sentence.slice(before + 1, at + length) + sentence.slice(at + length).replace(/[,;:()—.].*/s, '');
}
