/** "No open permits", "free of permit trouble": said of all the permits at once. */
import type { Permit } from '../../../facts/house.js';
import type { Judgement, Known } from '../items/known.js';
import { permitFact } from '../judge/judge-permits.js';
import { matches, type SetPhrase } from './set-phrases.js';

const NONE_OPEN =
  /\b(?:no|zero|without(?: any)?|not (?:one|a single)|free of|clear of|never any|no known)\s+(?:(?:open|outstanding|expired|unclosed|pending|unresolved|lingering|active|dangling|unfinished|incomplete)(?:(?: or |, |\/)(?:open|outstanding|expired|unclosed|pending|unpermitted))?\s+permits?(?: issues?)?|permit(?:s|ting)?\s+(?:issues?|problems?|trouble|headaches?|surprises?|violations?|left open|outstanding|still open)|permits? (?:(?:is|are|were|remain|remains|was|left|still|now) ){1,2}(?:open|outstanding|pending|expired|unclosed|unresolved)|(?:code|building) violations?|unpermitted (?:work|improvements?|additions?))\b/gi;

/** "Open permits? None", "Any permits open? A: no". */
const ASKED_OPEN =
  /\b(?:any )?(?:(?:open|outstanding|expired|unclosed) permits?|permits?(?: still| left)? (?:open|outstanding|unclosed))\s*[?:–—-]+\s*(?:a(?:nswer)?[:.]\s*)?(?:none|no|nope|zero|0|nothing)\b/gi;

const ALL_CLOSED =
  /\b(?:all|every|each)(?: of)?(?: the| its| our| your)? (?:open |building |city |town |county )?(?:permits?) (?:(?:is|are|was|were|has been|have been|been|now|properly|fully) ){0,3}(?:closed|final(?:ed|led)?|signed off|in order|complete)\b/gi;

export function permitsRead(known: Known, sentence: string): SetPhrase[] {
  if (!/permit|violation/i.test(sentence)) return [];
  return [
    ...matches(NONE_OPEN, sentence).map((found) =>
      span(
        found,
        noneOpen(known, /unpermitted|issue|problem|trouble|headache|violation|surprise/i.test(found[0])),
      ),
    ),
    ...matches(ASKED_OPEN, sentence).map((found) => span(found, noneOpen(known, false))),
    ...matches(ALL_CLOSED, sentence).map((found) => span(found, noneOpen(known, false))),
  ];
}

const span = ({ index, 0: words }: RegExpExecArray, judgement: Judgement): SetPhrase => ({
  from: index,
  to: index + words.length,
  judgement,
});

/** `any`: trouble of any kind, so that work without a permit speaks against it too. */
function noneOpen(known: Known, any: boolean): Judgement {
  const { permits } = known.house;
  const is =
    (state: Permit['state']) =>
    (one: Permit): boolean =>
      one.state === state;
  const against = [
    ...permits.filter(is('open')),
    ...permits.filter(is('expired')),
    ...(any ? permits.filter(is('none-found')) : []),
  ];
  const facts = (of: readonly Permit[]) => of.slice(0, 4).map((one) => permitFact(known, one));
  if (against.length > 0)
    return {
      verdict: 'contradicted',
      rule: 'permit',
      because: 'the folder lists a permit that is not closed, or work without one',
      facts: facts(against),
    };
  if (permits.length === 0 || permits.some(is('not-known')))
    return { verdict: 'no-fact', rule: 'permit', because: 'how all permits stand is not known', facts: [] };
  return {
    verdict: 'backed',
    rule: 'permit',
    because: 'the permits that the folder lists are closed',
    facts: facts(permits),
  };
}
