/** "Was not painted", "has never been replaced": a deed that is denied, held against what was done. */
import { answerOf } from '../items/answer-of.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { contextOf, isRoomThing, meant } from '../items/meant-items.js';
import { itemsAt } from '../items/pick-items.js';
import { judgeNewness } from '../judge/judge-newness.js';
import type { AttributeOf, ClaimCase } from './claim-case.js';

type Word = AttributeOf<'newness'>;

const WAS_NOT =
  /\b(?:was|were|is|are|has|have|had)(?:n[’']t|\s+not|\s+never)(?:\s+(?:yet|ever))?(?:\s+been)?\s+$/i;
/** "Not replaced since 1990", "not only painted": more is said than that it was not done. */
const SAYS_MORE = /^\s*(since|in\b|for|until|till|by|with|just|only|but|to|as|,\s*(just|only|but))/i;
const DEEDS = /^(painted|replaced|refinished|updated)$/;

/** What the folder says of a deed that the text denies; undefined where the words or the facts leave it open. */
export function deniedDeed({ known, phrase, sentence, items }: ClaimCase, word: Word): Judgement | undefined {
  const { text } = sentence;
  if (!DEEDS.test(word.id) || !WAS_NOT.test(text.slice(Math.max(0, word.from - 24), word.from)))
    return undefined;
  if (SAYS_MORE.test(text.slice(word.to, word.to + 16))) return undefined;
  const subject =
    phrase.thing === 'paint'
      ? sentence.phrases.findLast(({ to, place }) => to <= phrase.from && !place)
      : phrase;
  if (subject === undefined) return undefined;
  const room =
    subject === phrase || !isRoomThing(subject.thing) ? undefined : contextOf(known, subject, sentence).place;
  const pool: readonly Item[] =
    subject === phrase
      ? items
      : room === undefined
        ? meant(known, subject, sentence).found.filter(({ kind }) => kind === 'finish')
        : ((['wall', 'ceiling', 'trim'] as const)
            .map((thing) =>
              itemsAt(known, { ...phrase, thing }, [room]).filter(({ kind }) => kind === 'finish'),
            )
            .find((found) => found.length > 0) ?? []);
  const done = judgeNewness(known, pool, { word: word.id, all: false, many: false, whole: false });
  // What an earlier owner put in is not replaced by these.
  const sure = pool.every((item) => !item.kept && answerOf(known, item, word.id) !== 'no');
  if (done.verdict === 'backed' && sure)
    return { ...done, verdict: 'contradicted', because: 'the folder says that it was done' };
  return done.verdict === 'contradicted'
    ? { ...done, verdict: 'backed', because: 'the folder tells of no such work on it', instead: undefined }
    : undefined;
}
