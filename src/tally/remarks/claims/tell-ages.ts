/** How new a phrase says its thing is, and which deed it tells: held against dates and deeds. */
import { answerOf, NEWER_MONTHS } from '../items/answer-of.js';
import { factsOf } from '../items/item-words.js';
import { putsIn } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { coatedParts, isMany, isWhole, withoutPaint } from '../items/meant-items.js';
import { monthsBefore } from '../items/months.js';
import { OPEN_SPAN } from '../judge/judge-dates.js';
import { judgeNewness, STRETCHED } from '../judge/judge-newness.js';
import { comparedAge } from '../standing/compare-ages.js';
import { type AttributeOf, attributesOfKind, type ClaimCase, isDate, tell } from './claim-case.js';
import { withoutPairs } from './date-pairs.js';
import { allInRoom, itemsOfDeed, namesMendedPart, ofOneRoom, onlyParts, saysWhere } from './deed-scope.js';
import { deniedDeed } from './denied-deeds.js';
import { eachPlace, eachRoom, halfLeft, inCountedRooms } from './each-room.js';
import { stillListed } from './listed-conditions.js';
import { dateOf, isBeside, tellDate } from './tell-dates.js';

type Word = AttributeOf<'newness'>;
type Figure = AttributeOf<'number'>;

export function tellAges(one: ClaimCase): void {
  const dates = attributesOfKind(one, 'number').filter(({ number }) => isDate(number));
  const used = new Set<Figure>();
  for (const word of attributesOfKind(one, 'newness')) {
    if (word.negated && !word.unlike) tell(one, deniedDeed(one, word), word);
    if (!word.unlike && !word.negated) tellWord(one, word, dates, used);
  }
  for (const date of dates) if (!used.has(date)) tellDate(one, date);
  withoutPairs(one);
  tell(one, comparedAge(one));
}

/** Entries that hold the word for all themselves: "all new". */
const SAYS_ALL = /\b(all|fully|completely|totally|gut\w*)\b/i;
const FROM_THEN = /\b(from|of|dating|dated|circa|made in|built in)\b/i;
/** "was repainted recently" */
const RECENT_BEHIND = /^\s+(?:(?:very|quite|rather|just)\s+)?(?:recently|lately|of late|not long ago)\b/i;
/** "Plumbing redone": a deed on the whole of a system. */
const DONE_OVER = /^(?:totally |completely |fully |all )?(?:re-?\s?done|redid|overhauled)$/i;
const RUNS_THROUGH = /^(plumbing|electrical|wiring|hvac|supply-pipe|drain-pipe|duct|mechanical|system)$/;
const RECENT = /\b(recently|newly|just|freshly|lately)[\s-]+$/i;
/** Entries that hold the word themselves: "freshly painted". */
const SAYS_RECENT = /^(recently|newly|just|freshly|fresh|new)\b/i;
const JUST = /\b(newly|just|freshly)[\s-]+$/i;
/** "Some new pipes", "partly rewired": one that is so is enough. */
const SAYS_SOME =
  /^(some|several|partly|partially|in part|part of|portions? of|a few|a couple( of)?|one of)$/i;
/** Words that already say how new, so that "just" before them adds nothing. */
const SAYS_AGE = /^(new|newer|original|old)$/;

/** "Same vintage", "1989 vintage": of that age, and not original. */
const OF_THAT_AGE = /\b(same|similar|like|recent|late|newer|that|\d{4}|'\d\d)[\s-]+$/i;

const isBuildingYear = ({ known }: ClaimCase, year: number): boolean => {
  const built = known.house.house.built.value?.earliest;
  return built !== undefined && Math.abs(year - Number(built.slice(0, 4))) <= 2;
};

function tellWord(one: ClaimCase, word: Word, dates: readonly Figure[], used: Set<Figure>): void {
  const { known, phrase, sentence } = one;
  const { text } = sentence;
  if (
    /^(vintage|period)$/.test(word.word) &&
    OF_THAT_AGE.test(text.slice(Math.max(0, word.from - 10), word.from))
  )
    return;
  const items = itemsOfDeed(one, word);
  const all = attributesOfKind(one, 'all');
  if (word.id === 'remade' && saysWhere(text, word)) return;
  const late =
    (RECENT.test(text.slice(Math.max(0, word.from - 12), word.from)) ||
      RECENT_BEHIND.test(text.slice(word.to, word.to + 24)) ||
      SAYS_RECENT.test(word.word)) &&
    !SAYS_AGE.test(word.id);
  const older = late ? notRecent(one, word) : undefined;
  if (older !== undefined) {
    tell(one, older, word);
    return;
  }
  const mended = word.id === 'repaired' ? stillListed(known, phrase) : undefined;
  if (mended !== undefined) {
    // The entry that tells of the mending dates it as well.
    const then = dates.find(
      ({ number }) =>
        number.kind === 'year' && mended.facts.some(({ words }) => words.includes(String(number.first))),
    );
    if (then !== undefined && mended.verdict === 'backed') used.add(then);
    tell(one, mended, word, ...(then === undefined ? [] : [then]));
    return;
  }
  const sense =
    phrase.thing === 'paint' && word.id === 'new'
      ? 'painted'
      : // "just-laid" says new; "recently laid" may be years.
        word.id === 'replaced' && JUST.test(text.slice(Math.max(0, word.from - 12), word.from))
        ? 'new'
        : // "New underlayment" of a roof whose repair put new felt in.
          word.id === 'new' && namesMendedPart(one)
          ? 'replaced'
          : word.id;
  // "Freshly tiled bath": all of the tile, and not all of the bath.
  const whole = isWhole(phrase.thing) && items === one.items;
  const ofSome =
    attributesOfKind(one, 'some').some(({ from, to }) => SAYS_SOME.test(text.slice(from, to))) ||
    inCountedRooms(one, word);
  const inRoom = sense === 'new' ? [...withoutPaint(items), ...coatedParts(items)] : withoutPaint(items);
  const of = sense === 'untouched' && whole ? allInRoom(one) : whole ? [...new Set(inRoom)] : items;
  const [first, ...others] = ofOneRoom(one, of).map((items) =>
    judgeNewness(known, items, {
      word: sense,
      all:
        !ofSome &&
        (all.length > 0 ||
          SAYS_ALL.test(word.word) ||
          (DONE_OVER.test(word.word) && RUNS_THROUGH.test(phrase.thing))),
      many: !ofSome && isMany(phrase, text),
      whole: !ofSome && whole,
      thing: phrase.thing,
      undated: dates.length === 0,
    }),
  );
  const told = others.find(({ verdict }) => verdict === 'backed') ?? (first as Judgement);
  const judgement =
    told.verdict === 'wider' &&
    sense === 'replaced' &&
    all.length === 0 &&
    (namesMendedPart(one) || saysWhere(text, word))
      ? { ...told, verdict: 'backed' as const, because: 'new parts were put in', instead: undefined }
      : told;
  // "Eight windows were replaced": how many was told by the count.
  if (judgement.verdict === 'wider' && one.told.some(({ judgement: told }) => told.rule === 'count.things'))
    return;
  const beside = dates.filter((figure) => !used.has(figure) && isBeside(text, word, figure));
  const each =
    judgement.verdict === 'backed' || judgement.verdict === 'wider'
      ? (eachRoom(one, word) ?? eachPlace(one, word) ?? halfLeft(one, word) ?? onlyParts(one, word))
      : undefined;
  if (each !== undefined) {
    tell(one, each, word);
    return;
  }
  const date =
    beside.find((figure) => figure.from >= word.to) ?? beside.at(-1) ?? putInThen(one, word, dates, used);
  if (date !== undefined && word.id === 'original' && date.number.kind === 'year') {
    used.add(date);
    // "Original 1948 tub" tells of the house; "original to 2009" gives a date.
    const ofHouse = isBuildingYear(one, date.number.first);
    tell(one, ofHouse ? judgement : dateOf(one, date, undefined), word, date);
    return;
  }
  // "New A/C in 2022": it was new then.
  const then =
    date !== undefined && sense === 'new' && date.number.kind === 'year'
      ? dateOf(withoutRepairs(one), date, 'replaced')
      : undefined;
  if (date !== undefined && judgement.verdict === 'contradicted' && then?.verdict === 'backed') {
    used.add(date);
    tell(one, then, word, date);
    return;
  }
  if (date === undefined || judgement.verdict === 'contradicted') {
    tell(one, judgement, word, ...(word.shared ? [] : all.filter(({ shared }) => !shared)));
    return;
  }
  used.add(date);
  const ofDeed = dateOf(one, date, sense === 'replaced' ? sense : word.id);
  // "Painted cabinets from 1987": the date behind a thing may be its own, and not that of the deed before it.
  const apart = ofDeed.verdict === 'contradicted' && word.to <= phrase.from && date.from >= phrase.to;
  const ofThing =
    apart && FROM_THEN.test(text.slice(phrase.to, date.from)) ? dateOf(one, date, undefined) : ofDeed;
  const dated = ofThing.verdict === 'backed' ? ofThing : ofDeed;
  const stretched = judgement.verdict === 'wider' && judgement.because === STRETCHED;
  if (
    dated.verdict !== 'contradicted' &&
    judgement.verdict === 'wider' &&
    !(stretched && dated.verdict === 'backed')
  )
    tell(one, judgement, word, date, ...all);
  else tell(one, dated.verdict === 'no-fact' && dated.because !== OPEN_SPAN ? judgement : dated, word, date);
}

/** "A new panel was set in 2023", "new roof put on by a roofer in 2019": the deed between them tells when it was new. */
function putInThen(
  { phrase, sentence }: ClaimCase,
  word: Word,
  dates: readonly Figure[],
  used: ReadonlySet<Figure>,
): Figure | undefined {
  if (word.id !== 'new' || !word.before || word.shared) return undefined;
  return dates.find(
    (figure) =>
      !used.has(figure) &&
      !figure.before &&
      figure.number.kind === 'year' &&
      WAS_PUT_IN.test(sentence.text.slice(phrase.to, figure.from)),
  );
}

const WAS_PUT_IN =
  /^[^.;:!?\n—–,]*\b(?:was|were|went|came|put|set|hung|laid|installed|added|built|poured|placed|fitted|got|done|made|ran|run|dropped|bought|purchased|connected|hooked)\b[^.;:!?\n—–,]*$/i;

const withoutRepairs = (one: ClaimCase): ClaimCase => ({
  ...one,
  items: one.items.filter(({ kind, deed }) => kind !== 'work' || putsIn(deed)),
});

/** "Recently replaced", of what was done more than five years ago. */
function notRecent({ known, items }: ClaimCase, word: Word): Judgement | undefined {
  const done = items.flatMap((item) =>
    answerOf(known, item, word.id) === 'yes' && item.done?.latest !== undefined
      ? [{ item, months: monthsBefore(known.asOf, item.done.latest) }]
      : [],
  );
  if (done.length === 0 || !done.every(({ months }) => months > NEWER_MONTHS)) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'newness.recently',
    because: 'the folder gives an older date',
    facts: factsOf(done.map(({ item }) => item)),
  };
}
