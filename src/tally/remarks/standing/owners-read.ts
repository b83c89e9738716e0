/** Who owned the house and since when: "one owner", "original owners", "lived in since 2017", "we bought in 2025". */
import { type HouseDate, printDate } from '../../../facts/date.js';
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { monthsBefore } from '../items/months.js';
import { matches, type SetPhrase } from './set-phrases.js';

const FIRST_OWNER =
  /\b(?:(?:just |only |ever had )?(?:one|a single|1|the same|same) (?:proud |careful |caring |loving |meticulous |original )?owners?(?= ever| since| from new|[,.;!)]|$| and | home| house)|(?:one|single|1|sole)-(?:owner|family) (?:home|house|property)|(?:one|single|1)-owner\b(?! (?:feel|pride|quality|care|look|condition))|(?:original|first|only|sole) owners?(?! of )(?![’']s? (?:suite|bath|closet|retreat|bedroom))|never (?:been )?(?:sold|changed hands)|(?:first|one) family (?:to live|since)|by the (?:people|family|couple) (?:who|that) built it|(?:the |its |one |same ){0,2}(?:original|first) family\b|(?:the )?same family (?:for|since|ever)\b[^.;,]{0,20}|(?:by )?one family (?:for|since|ever)\b[^.;,]{0,20}|never before (?:on the market|offered|for sale|sold)|first time (?:ever )?(?:on the market|for sale|offered(?! for (?:rent|lease)))(?! in\b| since\b| for (?:\w+ )?(?:years?|decades?)))/gi;

/** "replaced by the original owners": what an owner before did is no claim of the seller. */
const OF_ANOTHER =
  /(?<!\b(?:held|owned|kept|cared for|loved|maintained|lived in|cherished|enjoyed|occupied) )\b(?:by|from|of|to|with) (?:the |its )?$/i;

const SINCE =
  /\b(?:owned|lived(?: in| here)?|living here|occupied|loved|cared for|tended|held|ours|theirs|in the (?:same )?family|(?:same|this|their|our) (?:family|home)|(?:seller|owner)s? (?:here|in place))\b[^.;,]{0,40}?\b(?:since|from)\s+(?:(?:early|late|mid|the (?:spring|summer|fall|autumn|winter) of|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?(?: of)?)[ -]+)?((?:19|20)\d\d)\b/gi;

/** "First time on the market in 20 years": it was not sold since. */
const NOT_OFFERED =
  /\b(?:first time (?:ever )?(?:on the market|for sale|offered)|not (?:been )?(?:sold|offered|on the market)|never (?:been )?(?:sold|offered|on the market)|last (?:sold|changed hands)) (?:in|for)? ?(?:over |more than |nearly |almost |about |some )?(\d{1,3}|a|one|two|three|four|five|six|seven|eight|nine|ten|fifteen|twenty|thirty|forty|fifty|sixty) (years?|decades?|generations?)(?: ago)?\b/gi;

const YEARS: Readonly<Record<string, number>> = {
  a: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
};

/** Within a year, or a fifth, of the years since the house was bought. */
function notOfferedFor(known: Known, [, count = '', unit = '']: RegExpExecArray): Judgement | undefined {
  const { bought } = known.house.house;
  const since = bought?.earliest;
  if (bought === undefined || since === undefined || /generation/i.test(unit)) return undefined;
  const fact = boughtFact(bought);
  const said = (YEARS[count.toLowerCase()] ?? Number(count)) * (/decade/i.test(unit) ? 10 : 1);
  const years = monthsBefore(known.offered, since) / 12;
  const fits = Math.abs(years - said) <= Math.max(1.2, said * 0.2);
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule: 'owners.since',
    because: fits ? 'the folder says so' : `the folder says ${fact.words}`,
    facts: [fact],
  };
}

const BOUGHT =
  /\b(?:bought|purchased|acquired|closed on|moved in(?:to)?|took ownership|came to)\b(?: (?:(?:this|the|our|it|here)(?: [a-z-]+)?(?: (?:home|house|place|property))?|(?:home|house)))?,? (?:(?:in|since|back in)\s+|(?=(?:0?[1-9]|1[0-2])\/))(?:(?:early|late|mid|the (?:spring|summer|fall|autumn|winter) of|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?(?: of)?)[ -]+|(?:0?[1-9]|1[0-2])\/)?((?:19|20)\d\d)\b/gi;

/** "The stove and fridge were purchased in 2025": things, and not the house. */
function isOfThing(ahead: string): boolean {
  const last = sensesIn(ahead).findLast(({ tag }) => tag === 'thing');
  return last !== undefined && !/^(house|lot|living-area)$/.test(last.id) && !BUYER.test(ahead);
}

const BUYER = /\b(sellers?|owners?|we|i|they|family|couple|who|he|she)\b[^.,;]{0,24}$/i;

/** Months between building and buying within which the buyer may be the first. */
const FIRST_MONTHS = 24;

export function ownersRead(known: Known, sentence: string): SetPhrase[] {
  if (
    !/own|famil|live|living|bought|purchas|acqui|moved|came to|closed on|occup|sold|changed|loved|cared|tended|held|ours|theirs|market|offered|first time|built it|seller/i.test(
      sentence,
    )
  )
    return [];
  const first = matches(FIRST_OWNER, sentence)
    .filter(({ index }) => !OF_ANOTHER.test(sentence.slice(0, index)))
    .flatMap((found) => told(found, firstOwner(known)));
  const bought = matches(BOUGHT, sentence).filter(({ index }) => !isOfThing(sentence.slice(0, index)));
  const since = [...matches(SINCE, sentence), ...bought].flatMap((found) =>
    told(found, boughtIn(known, found)),
  );
  const offered = matches(NOT_OFFERED, sentence).flatMap((found) => told(found, notOfferedFor(known, found)));
  return [...first, ...since, ...offered];
}

const told = (found: RegExpExecArray, judgement: Judgement | undefined): SetPhrase[] =>
  judgement === undefined ? [] : [{ from: found.index, to: found.index + found[0].length, judgement }];

const boughtFact = (bought: HouseDate): FactSaid => ({
  path: ['house', 'bought'],
  words: `bought ${printDate(bought)}`,
  evidence: [],
});

function firstOwner(known: Known): Judgement | undefined {
  const { built, bought } = known.house.house;
  const facts = bought === undefined ? [] : [boughtFact(bought)];
  const since = bought?.earliest;
  const until = built.value?.latest;
  if (built.value === undefined || since === undefined || until === undefined)
    return {
      verdict: 'no-fact',
      rule: 'owners.first',
      because: 'the folder does not say who owned it before',
      facts,
    };
  const first = monthsBefore(since, until) <= FIRST_MONTHS;
  return {
    verdict: first ? 'no-fact' : 'contradicted',
    rule: 'owners.first',
    because: first
      ? 'it was bought soon after it was built; the folder does not say that nobody came between'
      : 'the folder says that it was bought long after it was built',
    facts: [
      ...facts,
      { path: ['house', 'built'], words: `built ${printDate(built.value)}`, evidence: built.evidence },
    ],
  };
}

function boughtIn(known: Known, [, year = '']: RegExpExecArray): Judgement | undefined {
  const { bought } = known.house.house;
  if (bought === undefined) return undefined;
  const fact = boughtFact(bought);
  // Open towards the past or the future: before any year, and behind any.
  const { earliest = '0000', latest = '9999' } = bought;
  const fits = earliest.slice(0, 4) <= year && year <= latest.slice(0, 4);
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule: 'owners.since',
    because: fits ? 'the folder says so' : `the folder says ${fact.words}`,
    facts: [fact],
  };
}
