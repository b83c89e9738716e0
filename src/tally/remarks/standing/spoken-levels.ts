/** Storeys that are spoken of without a count: "upstairs windows" of a house on one level, "no stairs" of one on two. */
import type { SentenceWords } from '../claims/claim-case.js';
import type { Judgement, Known } from '../items/known.js';
import { levelMeant } from '../items/places.js';
import { judgeStoreys } from '../judge/judge-storeys.js';
import { judged } from '../judge/judged.js';
import type { Find } from '../read-sentence.js';
import type { Unit } from '../words/units.js';
import { boundsOf } from './beside.js';

const LEVELS_WORD =
  /upstair|downstair|up ?stairs|second (floor|level|story|storey)|upper (level|floor|story|storey|hall)|top floor|2nd (floor|level|story)|third (floor|level)|\b(one|two|three|four|1|2|3|4) (up|down)\b|\b(stairs|steps|stair|climb)/i;
const ABOVE = /\b(upstairs|up stairs|(second|upper|2nd|third|top)[\s-]+(floor|level|story|storey)s?)\b/gi;
/** "two up and two down": bedrooms over and under. */
const UP_AND_DOWN =
  /\b(one|two|three|four|[1-4]) (?:are |is )?up(?:stairs)?(?:,| and|,? &| \/) ?(one|two|three|four|[1-4]) (?:are |is )?down/gi;
const NO_STAIRS =
  /\b(no|zero|without|free of|not a single)\s+(interior |inside |indoor )?(stairs?\b|stairways?|staircases?|flights? of stairs|stair climbing|steps (to climb|inside|anywhere|at all)|steps (?=[,.;!]|$))(?!\s+(to|down|into|of|from|or|in the)\b(?!\s+climb\s*(?:[.,;!]|$)))/gi;
const ELSEWHERE = /\b(clubhouse|neighbors?|building|units?|lobby)\b/i;
const IMAGINED = /\b(not|no|without|could|would|potential|attic|door|neighbor|unit)\b[^.;]{0,24}$/i;

/** Tells both, where the folder says how many storeys the house has. */
export function spokenLevels(
  known: Known,
  sentence: SentenceWords,
  units: readonly Unit[],
  find: Find,
): void {
  const { storeys } = known.house.house;
  const [from, to] = boundsOf(units);
  const words = sentence.text.slice(from, to);
  if (storeys === undefined || !LEVELS_WORD.test(words)) return;
  const flat = storeys === 'one' && levelMeant(known.house, 'upper').ids.length === 0;
  const isAside = (at: number): boolean =>
    units.some((unit) => unit.from <= at && at < unit.to && unit.aside !== undefined);
  if (flat)
    for (const pattern of [ABOVE, UP_AND_DOWN])
      for (const match of words.matchAll(pattern)) {
        const start = from + match.index;
        if (isAside(start) || IMAGINED.test(words.slice(0, match.index)) || ELSEWHERE.test(words)) continue;
        const [low, high] = described(sentence, start, start + match[0].length);
        find(low, high, NOT_THERE);
      }
  for (const match of words.matchAll(NO_STAIRS)) {
    const start = from + match.index;
    if (!isAside(start)) find(start, start + match[0].trimEnd().length, judgeStoreys(known, 'one'));
  }
}

const NOT_THERE: Judgement = judged(
  false,
  'count.storeys',
  'the folder says one storey',
  [{ path: ['house', 'storeys'], words: 'storeys: one', evidence: [] }],
  'single-storey',
);

/** The thing that directly follows: "upstairs windows". */
function described({ phrases, text }: SentenceWords, from: number, to: number): readonly [number, number] {
  const next = phrases.find((phrase) => phrase.from >= to);
  return next !== undefined && /^[\s-]*$/.test(text.slice(to, next.from)) ? [from, next.to] : [from, to];
}
