/** A year or an age that stands with a thing and beside no word about its newness. */

import { type Item, putsIn } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { isMany, isWhole } from '../items/meant-items.js';
import { judgeDate } from '../judge/judge-dates.js';
import type { Attribute } from '../sentence/phrase.js';
import { type AttributeOf, attributesOfKind, type ClaimCase, type Moment, tell } from './claim-case.js';

type Figure = AttributeOf<'number'>;

const WARRANTED = /\b(to|through|until|till|warrant\w*|guarante\w*)\W+$/i;
const COMPARED_WITH = /\b(against|versus|vs)\b/i;
const DATES_TO = /\b(dates?|dating|dated|back|goes|original) to\W+$/i;
/** Small words that may stand between a thing and its date. */
const SMALL_WORDS =
  /^([a-z]+ly|connected|hooked|tied|joined|approx|around|circa|yet|there|here|well|plus|maybe|is|are|was|were|set|under|over|less|than|not|even|more|about|again|new|all|roughly|nearly|almost|some|at|least|now|still|age|aged|this|last|past|within|installed|replaced|from|of|in|since|circa|dates?|dating|back|to|done|made|went|on|that|and|has|been|the|a|an|only|just|down|approx|around|put|year|late|early|mid|spring|summer|fall|winter|barely|a|model|with|placed|set|made|new|old|young|bought|now|dated|two|three|both|each|units?|yes|it|its|they|spring|old)$/i;

const OF_A_PERMIT = /\bpermits? (was |were |is )?(closed|final\w*|issued|signed off|pulled)( in| on)?\s+$/i;

export function tellDate(one: ClaimCase, date: Figure): void {
  const { phrase, sentence } = one;
  const { text } = sentence;
  // "(2005 against 2019)" tells of two things at once.
  if (
    COMPARED_WITH.test(text.slice(date.to, date.to + 12)) ||
    COMPARED_WITH.test(text.slice(Math.max(0, date.from - 12), date.from))
  )
    return;
  // "warranty to 2053" is no date of the thing.
  const ahead = text.slice(Math.max(0, date.from - 12), date.from);
  if ((WARRANTED.test(ahead) && !DATES_TO.test(ahead)) || /warrant/i.test(text.slice(phrase.from, date.from)))
    return;
  if (date.number.kind === 'year' && /^(lot|house|living-area)$/.test(phrase.thing)) return;
  // "(permit closed March 2025)" is the day of a paper.
  if (OF_A_PERMIT.test(text.slice(Math.max(phrase.to, date.from - 40), date.from))) return;
  const plain = dateOf(one, date, undefined);
  // "Restored by a carpenter in 2025": of the deed, where the thing's own date is another.
  const deed =
    plain.verdict === 'contradicted' || plain.verdict === 'no-fact' ? deedOfDate(one, date) : undefined;
  const ofDeed = deed === undefined ? undefined : dateOf(one, date, deed);
  const dated = ofDeed?.verdict === 'backed' ? ofDeed : plain;
  // "septic seen to in 2025": what was done no table knows, so only a date that fits is told.
  if (dated.verdict !== 'contradicted' || !hasUnknownDeed(one, date)) tell(one, dated, date);
}

/** The word for a deed that a date of the same clause may be of. */
function deedOfDate(one: ClaimCase, date: Figure): string | undefined {
  const { text } = one.sentence;
  return attributesOfKind(one, 'newness').findLast(
    ({ id, from, to, unlike, negated }) =>
      !unlike &&
      !negated &&
      !/^(new|newer|original|old|young|untouched)$/.test(id) &&
      !/[;.!?\n]/.test(to <= date.from ? text.slice(to, date.from) : text.slice(date.to, from)),
  )?.id;
}

function hasUnknownDeed({ phrase, sentence }: ClaimCase, date: Figure): boolean {
  if (date.before) return false;
  const text = sentence.text.slice(phrase.to, date.from).replace(/[,;(].*$/s, '');
  // What the tables know as a deed or a doer is no unknown deed.
  const known = [...phrase.attributes.filter(({ kind }) => kind !== 'word'), ...phrase.rooms].filter(
    ({ from, to }) => from >= phrase.to && to <= date.from,
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

/** "Repainted in November": of any of the paint, where no place is named. */
const datedItems = ({ known, phrase, attributes, places, items }: ClaimCase): readonly Item[] =>
  phrase.thing === 'paint' && places.length === 0 && !attributes.some(({ kind }) => kind === 'place')
    ? known.items.filter(({ deed }) => deed === 'painted')
    : isWhole(phrase.thing) && phrase.thing !== 'house'
      ? ofThisRoom(items)
      : items;

/** Pipes that run to several rooms date none of them. */
function ofThisRoom(items: readonly Item[]): readonly Item[] {
  const own = items.filter(({ kind, where }) => kind !== 'work' || where.length === 1);
  return own.some(({ deed }) => putsIn(deed)) ? own : items;
}

export const dateOf = (one: ClaimCase, { number, hedge }: Figure, deed: string | undefined): Judgement =>
  judgeDate(one.known, datedItems(one), {
    moment: number as Moment,
    hedge,
    deed: deed ?? (one.phrase.thing === 'paint' ? 'painted' : undefined),
    all: attributesOfKind(one, 'all').length > 0 && isMany(one.phrase, one.sentence.text),
  });

/** "replaced in 2019", "2019 remodeled": nothing but small words between. */
export function isBeside(text: string, word: Attribute, date: Attribute): boolean {
  const between = word.to <= date.from ? text.slice(word.to, date.from) : text.slice(date.to, word.from);
  return between.length < 18 && !/[,;—–(]|\band\b/.test(between);
}
