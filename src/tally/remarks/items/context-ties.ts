/** Whether what is named belongs to the room that was spoken of last. */
import type { SentenceWords } from '../claims/claim-case.js';
import type { Phrase } from '../sentence/phrase.js';
import { sinceLast } from '../words/cut-at.js';

/** What ties a thing to the room before it: "bath with", "kitchen: ", "the kitchen got". */
const TIE =
  /\b(with|w|has|have|had|featur\w*|boast\w*|offer\w*|includ\w*|gets?|got|sports?|shows?|wears?|receiv\w*|in|is|are|was|were|given|there|its|enjoys?|holds?|hosts?|where|both|each|all|finished|dressed|clad|in)\b|[:–—(?/]| - /i;

/** "Primary bath, kitchen fronts, LVP": the members of a bare list are each of their own. */
export function isOfContext(phrase: Phrase, { context, text }: SentenceWords): boolean {
  if (context?.to === undefined) return true;
  const between = text.slice(context.to, phrase.from);
  return !between.includes(',') || TIE.test(between);
}

const BELOW = /\b(basement|cellar|lower level|lower lvl|bsmt|bsmnt|downstairs)\b/i;
const OTHER_LEVEL = /\b(upstairs|upper|main|first|1st|second|2nd|ground)\b/i;
const HAS =
  /\b(with|w\/|has|have|includ\w*|featur\w*|offer\w*|boast\w*|adds?|holds?|hosts?|provid\w*|there (is|are)|complete with|plus)(\b|\s)[^.;!?]*$/i;
const JOINED =
  /\b(with|w\/|has|have|and|&|plus|includes?|including|offers?|features?|also|a|an)\s+([\w'-]+\s+){0,4}$/i;

/** "The lower level has a rec room and a full bath": the bath is said to be there. */
export function isSaidBelow(phrase: Phrase, text: string): boolean {
  const ahead = sinceLast(text.slice(Math.max(0, phrase.from - FARTHEST), phrase.from), /[.;!?\n]/);
  const below = BELOW.exec(ahead);
  if (below === null) return false;
  const since = ahead.slice(below.index + below[0].length);
  if (OTHER_LEVEL.test(since)) return false;
  if (phrase.negated) return true;
  return HAS.test(since) && JOINED.test(sinceLast(since, /,/));
}

const FARTHEST = 140;
