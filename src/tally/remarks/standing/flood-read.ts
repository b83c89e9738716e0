/** Flood zone and flood insurance, where an answer of the folder tells of them. */
import { remarkWords } from '../../tables/remarks.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from '../judge/told-answers.js';
import { matches, type SetPhrase } from './set-phrases.js';

const ZONE_SAID =
  /\b(?:(?:flood|fema|insurance)[ -]+)?zone[ -]+["'“]?(AE|AO|AH|AR|A99|A|VE|V|X500|X|B|C|D)\b/gi;

const OUTSIDE_IT =
  /\b(?:(?:is|are|sits?|lies|stands|located|situated) )?(?:not (?:located |situated |sitting |lying )?(?:in|within|inside)|outside(?: of)?|out of|nowhere near|beyond|well above|never in|no part in|isn['’]t (?:in|within))\s+(?:a |an |the |any |all |of )*(?:(?:high[- ]risk|special|designated|fema|mapped|known|\d+[- ]year) ){0,3}(?:flood ?(?:zones?|plain|hazard area|area)|floodplain)\b|\bno flood ?(?:zone|plain)\b(?! (?:data|map))/gi;

const NOT_NEEDED =
  /\b(?:no flood ins(?:urance|\.)?(?: (?:is )?(?:req(?:uired|['’]?d|\.)?|need(?:ed)?|necessary))?|flood ins(?:urance|\.)?(?: is|:)? (?:not (?:req(?:uired|['’]?d|\.)?|needed|necessary)|optional|unnecessary))\b/gi;

/** What stands behind the letter of an answer: high risk, or little. */
const IN_IT = /\b[Zz]one\s+["'“]?(A\d*|AE|AO|AH|AR|VE?)\b/;
const OUT_OF_IT = /\b[Zz]one\s+["'“]?(X500|X|B|C)\b/;

/** Without an answer of the folder "no flood" is no word on water that came in. */
const NO_ZONE = /\bno flood ?(?:zone|plain)s?\b(?! (?:data|map))/gi;

/** What is said of flood zones where the folder says nothing of them. */
export const FLOOD_NOT_TOLD: Judgement = {
  verdict: 'no-fact',
  rule: 'flood-zone',
  because: 'the folder says nothing of it; the federal flood map does',
  facts: [],
};

interface Told {
  readonly fact: FactSaid;
  readonly value: string;
  readonly zone: string | undefined;
  readonly risk: 'high' | 'low' | undefined;
}

export function floodRead(known: Known, sentence: string): SetPhrase[] {
  if (!/flood|zone/i.test(sentence)) return [];
  const zone = answerAfter(known, /\bflood ?(?:zone|plain|map|hazard)/i);
  const cover = answerAfter(known, /\bflood insurance\b/i);
  const found: SetPhrase[] = [];
  if (zone?.risk !== undefined) {
    for (const one of matches(ZONE_SAID, sentence)) {
      const [, letter = ''] = one;
      // "zone a" of a thermostat is written small.
      if (letter !== letter.toUpperCase() || !/flood|fema|insurance|map/i.test(sentence)) continue;
      const low = /^(X|X500|B|C)$/.test(letter);
      const fits = zone.zone === undefined ? (zone.risk === 'low') === low : zone.zone === letter;
      found.push(span(one, judgement(fits, zone)));
    }
    for (const one of matches(OUTSIDE_IT, sentence))
      found.push(span(one, judgement(zone.risk === 'low', zone)));
  }
  if (zone === undefined) for (const one of matches(NO_ZONE, sentence)) found.push(span(one, FLOOD_NOT_TOLD));
  const asked = cover === undefined ? undefined : asksForCover(cover.value);
  if (cover !== undefined && asked !== undefined)
    for (const one of matches(NOT_NEEDED, sentence)) found.push(span(one, judgement(!asked, cover)));
  return found;
}

/** Whether an answer says that somebody asks for the insurance; undefined where it leaves that open. */
const asksForCover = (value: string): boolean | undefined =>
  /\b(?:not|n['’]t|no one|nobody)\b[^.;]{0,20}\b(?:require|ask|need|necessary)/i.test(value)
    ? false
    : /\b(?:require[sd]?|asks? for|needed|necessary|must|insists?|wants)\b/i.test(value)
      ? true
      : undefined;

function answerAfter(known: Known, topic: RegExp): Told | undefined {
  const denial = new RegExp(remarkWords().denials, 'i');
  const one = toldAnswers(known).find(({ ask }) => topic.test(ask));
  if (one === undefined) return undefined;
  const { value, fact } = one;
  const zone = (IN_IT.exec(value) ?? OUT_OF_IT.exec(value))?.[1];
  const risk = IN_IT.test(value)
    ? 'high'
    : OUT_OF_IT.test(value) || denial.test(value)
      ? 'low'
      : /^yes\b/i.test(value)
        ? 'high'
        : undefined;
  return { fact, value, zone, risk };
}

const judgement = (fits: boolean, { fact }: Told): Judgement => ({
  verdict: fits ? 'backed' : 'contradicted',
  rule: 'answer',
  because: fits ? 'an answer in the folder says so' : 'an answer in the folder says what is so',
  facts: [fact],
});

const span = ({ index, 0: words }: RegExpExecArray, told: Judgement): SetPhrase => ({
  from: index,
  to: index + words.length,
  judgement: told,
});
