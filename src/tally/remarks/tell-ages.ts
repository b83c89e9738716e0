/** How new a phrase says its thing is, and which deed it tells: held against dates and deeds. */
import { printDate } from '../../facts/date.js';
import { answerOf, NEWER_MONTHS } from './answer-of.js';
import {
  type AttributeOf,
  attributesOfKind,
  type ClaimCase,
  isDate,
  type Moment,
  nextPhrase,
  tell,
  wordsBehind,
} from './claim-case.js';
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import { judgeDate } from './judge-dates.js';
import { judgeNewness } from './judge-newness.js';
import type { Judgement } from './known.js';
import { stillListed } from './listed-conditions.js';
import { isMany, isWhole, withoutPaint } from './meant-items.js';
import { monthsBefore } from './months.js';
import type { Attribute } from './phrase.js';
import { itemsAt } from './pick-items.js';
import { thing } from './taxonomy.js';
import { truth } from './true-words.js';

type Word = AttributeOf<'newness'>;
type Figure = AttributeOf<'number'>;

export function tellAges(one: ClaimCase): void {
  const dates = attributesOfKind(one, 'number').filter(({ number }) => isDate(number));
  const used = new Set<Figure>();
  for (const word of attributesOfKind(one, 'newness')) {
    if (!word.unlike && !word.negated) tellWord(one, word, dates, used);
  }
  for (const date of dates) if (!used.has(date)) tellDate(one, date);
  tell(one, sameAge(one));
}

/** Entries that hold the word for all themselves: "all new". */
const SAYS_ALL = /\b(all|fully|completely|totally|gut\w*)\b/i;
const RECENT = /\b(recently|newly|just|freshly|lately)[\s-]+$/i;
/** Words that already say how new, so that "just" before them adds nothing. */
const SAYS_AGE = /^(new|newer|original|old)$/;

function tellWord(one: ClaimCase, word: Word, dates: readonly Figure[], used: Set<Figure>): void {
  const { known, phrase, items, sentence } = one;
  const { text } = sentence;
  const all = attributesOfKind(one, 'all');
  const late = RECENT.test(text.slice(Math.max(0, word.from - 12), word.from)) && !SAYS_AGE.test(word.id);
  const older = late ? notRecent(one, word) : undefined;
  if (older !== undefined) {
    tell(one, older, word);
    return;
  }
  const mended = word.id === 'repaired' ? stillListed(known, phrase) : undefined;
  if (mended !== undefined) {
    tell(one, mended, word);
    return;
  }
  const sense = phrase.thing === 'paint' && word.id === 'new' ? 'painted' : word.id;
  const whole = isWhole(phrase.thing);
  const judgement = judgeNewness(known, whole ? withoutPaint(items) : items, {
    word: sense,
    all: all.length > 0 || SAYS_ALL.test(word.word),
    many: isMany(phrase, text),
    whole,
    thing: phrase.thing,
  });
  const beside = dates.filter((figure) => !used.has(figure) && isBeside(text, word, figure));
  const each =
    judgement.verdict === 'backed' || judgement.verdict === 'wider' ? eachRoom(one, word) : undefined;
  if (each !== undefined) {
    tell(one, each, word);
    return;
  }
  const date = beside.find((figure) => figure.from >= word.to) ?? beside.at(-1);
  if (date === undefined || judgement.verdict === 'contradicted') {
    tell(one, judgement, word, ...(word.shared ? [] : all.filter(({ shared }) => !shared)));
    return;
  }
  used.add(date);
  const dated = dateOf(one, date, word.id);
  if (dated.verdict !== 'contradicted' && judgement.verdict === 'wider')
    tell(one, judgement, word, date, ...all);
  else tell(one, dated.verdict === 'no-fact' ? judgement : dated, word, date);
}

/** "Both baths remodeled": one of them in which nothing was done. */
function eachRoom(one: ClaimCase, word: Word): Judgement | undefined {
  const { known, phrase, items } = one;
  const { room } = thing(phrase.thing);
  const both = one.attributes.some(
    (other) =>
      other.kind === 'both' ||
      (other.kind === 'all' && other.before) ||
      (other.kind === 'number' && other.before && other.number.kind === 'count' && other.number.value > 1),
  );
  if (room === undefined || !both || (word.id !== 'updated' && word.id !== 'new')) return undefined;
  const whole = known.house.rooms.filter(
    ({ use, bath }) => use === room && !(phrase.thing === 'bath' && bath === 'half'),
  );
  // "Both" of one whole bath and one half bath means the half one too.
  const rooms = whole.length > 1 ? whole : known.house.rooms.filter(({ use }) => use === room);
  const judged = rooms.map(({ id }) => {
    const own = withoutPaint(items.filter(({ where }) => where.includes(id)));
    return (
      own.filter((item) => answerOf(known, item, word.id) === 'yes' && item.deed !== 'painted').length > 0
    );
  });
  const left = rooms.filter((_, index) => judged[index] === false);
  if (left.length === 0 || left.length === rooms.length) return undefined;
  const facts = left.slice(0, 3).flatMap(({ id }) =>
    factsOf(
      items.filter(({ where }) => where.includes(id)),
      2,
    ),
  );
  return {
    verdict: 'contradicted',
    rule: `newness.${word.id}`,
    because: 'not in all of them',
    facts,
    instead: truth(
      items.filter((item) => answerOf(known, item, word.id) === 'yes'),
      [],
    ),
  };
}

/** "Recently replaced", of what was done more than five years ago. */
function notRecent({ known, items }: ClaimCase, word: Word): Judgement | undefined {
  const done = items.filter(
    (item) => answerOf(known, item, word.id) === 'yes' && item.done?.latest !== undefined,
  );
  const old = (item: Item): boolean =>
    monthsBefore(known.asOf, item.done?.latest ?? known.asOf) > NEWER_MONTHS;
  if (done.length === 0 || !done.every(old)) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'newness.recently',
    because: 'the folder gives an older date',
    facts: factsOf(done),
    instead: truth([], done),
  };
}

const WARRANTED = /\b(to|through|until|till|warrant\w*|guarante\w*)\W+$/i;
/** Small words that may stand between a thing and its date. */
const SMALL_WORDS =
  /^(is|are|was|were|set|under|over|less|than|not|even|more|about|again|new|all|roughly|nearly|almost|some|at|least|now|still|age|aged|this|last|past|within|installed|replaced|from|of|in|since|circa|dates?|dating|back|to|done|made|went|on|that|and|has|been|the|a|an|only|just|approx|around|put|year|late|early|mid|spring|summer|fall|winter|barely|a|model)$/i;

function tellDate(one: ClaimCase, date: Figure): void {
  const { phrase, sentence } = one;
  const { text } = sentence;
  // "warranty to 2053" is no date of the thing.
  const ahead = text.slice(Math.max(0, date.from - 12), date.from);
  if (WARRANTED.test(ahead) || /warrant/i.test(text.slice(phrase.from, date.from))) return;
  if (date.number.kind === 'year' && /^(lot|house|living-area)$/.test(phrase.thing)) return;
  const dated = dateOf(one, date, undefined);
  // "septic seen to in 2025": what was done no table knows, so only a date that fits is told.
  if (dated.verdict !== 'contradicted' || !hasUnknownDeed(one, date)) tell(one, dated, date);
}

function hasUnknownDeed({ phrase, sentence }: ClaimCase, date: Figure): boolean {
  if (
    phrase.attributes.some(
      (other) =>
        other.kind === 'word' && !other.before && other.from < date.from && !SMALL_WORDS.test(other.word),
    )
  )
    return true;
  if (date.before) return false;
  const text = sentence.text.slice(phrase.to, date.from).replace(/[,;(].*$/s, '');
  // What the tables know as a deed or a doer is no unknown deed.
  const known = phrase.attributes.filter(
    ({ kind, from, to }) => kind !== 'word' && from >= phrase.to && to <= date.from,
  );
  const left = known.reduce(
    (rest, { from, to }) =>
      rest.slice(0, from - phrase.to) +
      ' '.repeat(Math.max(0, Math.min(to - from, rest.length - from + phrase.to))) +
      rest.slice(to - phrase.to),
    text,
  );
  return (left.match(/[a-z]{3,}/gi) ?? []).some((word) => !SMALL_WORDS.test(word));
}

const dateOf = (
  { known, items }: ClaimCase,
  { number, hedge }: Figure,
  deed: string | undefined,
): Judgement => judgeDate(known, items, { moment: number as Moment, hedge, deed });

/** "replaced in 2019", "2019 remodeled": nothing but small words between. */
function isBeside(text: string, word: Attribute, date: Attribute): boolean {
  const between = word.to <= date.from ? text.slice(word.to, date.from) : text.slice(date.to, word.from);
  return between.length < 18 && !/[,;—–(]|\band\b/.test(between);
}

const SAME_AGE =
  /\b(same (age|year|vintage) as|as old as|matches? the age of|dates? from the same year as)\b/i;

/** "The fridge is the same age as the range": the dates of both. */
function sameAge(one: ClaimCase): Judgement | undefined {
  const { known, phrase, items, sentence } = one;
  if (!SAME_AGE.test(wordsBehind(one))) return undefined;
  const other = nextPhrase(sentence, phrase.to);
  if (other === undefined) return undefined;
  const dated = (list: readonly Item[]) =>
    list.flatMap((item) => {
      const date = item.made ?? item.done;
      return date?.latest === undefined || item.kind === 'work'
        ? []
        : [{ item, date, year: Number(date.latest.slice(0, 4)) }];
    });
  const [mine, theirs] = [dated(items), dated(itemsAt(known, other, []))];
  if (mine.length === 0 || theirs.length === 0) return undefined;
  const fits = mine.some((a) => theirs.some((b) => Math.abs(a.year - b.year) <= 1));
  const [a, b] = [mine[0], theirs[0]];
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule: 'date.same',
    because: fits
      ? 'their dates are alike'
      : `the folder says ${a === undefined ? '' : printDate(a.date)} and ${b === undefined ? '' : printDate(b.date)}`,
    facts: factsOf([...mine.slice(0, 1), ...theirs.slice(0, 1)].map(({ item }) => item)),
    instead: fits
      ? undefined
      : truth(
          [],
          mine.map(({ item }) => item),
        ),
  };
}
