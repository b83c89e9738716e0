/** Pets and smoke: "no pets ever", "our dog loved the yard", "smoke-free", held against the answers. */
import { remarkWords } from '../../tables/remarks.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { toldAnswers } from '../judge/told-answers.js';
import { matches, type SetPhrase } from './set-phrases.js';

const TOPICS = [
  {
    name: 'pets',
    asked: /\b(pets?|dogs?|cats?|animals?)\b/i,
    denied:
      /\b(?:(?:pets?|dogs?|cats?|animals?) (?:were |have |has |was |are )?(?:been )?never (?:been )?(?:allowed|kept|permitted|lived(?: here)?|inside|let in|had)|(?:no|zero|never (?:had |any |a )*(?:any )?|not a(?: single)?|without) ?(?:pets?|dogs?|cats?|animals?)(?: or (?:pets?|dogs?|cats?|smok\w+|smoke))?(?: ever| in the (?:home|house)| here)?|pet[- ]free)(?! (?:fee|deposit|restriction|limit|policy|park|run|door|wash))/gi,
    claimed:
      /\b(?:our|my|the sellers?[’']s?|the owners?[’']s?|their|sellers?[’'] |family) ?(?:old |two |three |beloved |little |big )?(?:dogs?|cats?|pups?|puppy|puppies|pooch|kitty|pets)\b/gi,
  },
  {
    name: 'smoke',
    asked: /\bsmok/i,
    denied:
      /\b(?:(?:no|zero|never (?:had |any |a )*(?:any )?|non|without)[ -]?(?:smok(?:e|ing|ers?))(?! (?:alarm|detector|damage|shop))|never (?:been )?smoked in|smoke[- ]free|nobody (?:has )?(?:ever )?smoked)\b(?! (?:alarm|detector)s?)(?:[^.;,]{0,24}? since (?:19|20)\d\d)?/gi,
    claimed: undefined,
  },
] as const;

const NOT_KNOWN = /\bnot known\b/i;

export function petsRead(known: Known, sentence: string): SetPhrase[] {
  if (!/\b(pet|dog|cat|pup|pooch|kitty|animal|smok|non-?smok)/i.test(sentence)) return [];
  return TOPICS.flatMap((topic) => {
    const said = answered(known, topic.asked);
    const [first] = said;
    // An answer on what the association allows is another's to judge.
    if (first === undefined) return [];
    const owned = topic.claimed === undefined ? [] : matches(topic.claimed, sentence);
    return [
      ...matches(topic.denied, sentence).map((found) => span(found, denied(first, said))),
      ...owned.map((found) => span(found, claimed(first, said))),
    ];
  });
}

const span = ({ index, 0: words }: RegExpExecArray, judgement: Judgement): SetPhrase => ({
  from: index,
  to: index + words.length,
  judgement,
});

interface Answered {
  readonly fact: FactSaid;
  /** The sentence of the answer that speaks of it. */
  readonly denies: boolean;
  /** Part of it the folder does not know. */
  readonly inPart: boolean;
}

/** What the answers say of a topic, sentence by sentence: "No smoking since 2019. One dog." */
function answered(known: Known, topic: RegExp): Answered[] {
  const denial = new RegExp(remarkWords().denials, 'i');
  return toldAnswers(known).flatMap(({ value, fact }) => {
    if (!topic.test(fact.words) || /\b(association|rule|allow|HOA)/i.test(fact.words)) return [];
    const parts = value.split(/[.;]\s*/).filter((part) => part !== '');
    const own = parts.filter((part) => topic.test(part));
    const of = own.length > 0 ? own : parts.slice(0, 1);
    return of.map((part) => ({ fact, denies: denial.test(part), inPart: NOT_KNOWN.test(value) }));
  });
}

function denied(first: Answered, said: readonly Answered[]): Judgement {
  const rule = 'condition.no-pets';
  const against = said.filter(({ denies }) => !denies);
  if (against.length > 0)
    return {
      verdict: 'contradicted',
      rule,
      because: 'an answer in the folder says otherwise',
      facts: against.map(({ fact }) => fact),
    };
  return first.inPart
    ? {
        verdict: 'no-fact',
        rule,
        because: 'the folder knows it of the last years only',
        facts: [first.fact],
      }
    : { verdict: 'backed', rule, because: 'an answer in the folder says so', facts: [first.fact] };
}

function claimed(first: Answered, said: readonly Answered[]): Judgement {
  const against = said.every(({ denies }) => denies);
  return {
    verdict: against ? 'contradicted' : 'backed',
    rule: 'condition.no-pets',
    because: against
      ? 'an answer in the folder says that there were none'
      : 'an answer in the folder says so',
    facts: [first.fact],
  };
}
