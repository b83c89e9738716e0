/** "The stove is newer than the fridge", "as old as the house": the dates of two things, held against each other. */
import { printDate } from '../../../facts/date.js';
import { type ClaimCase, nextPhrase } from '../claims/claim-case.js';
import { factsOf } from '../items/item-words.js';
import { type Item, putsIn } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import { literal } from '../items/narrow-items.js';
import { itemsAt, placesOf } from '../items/pick-items.js';
import { roomsCalled } from '../items/rooms-called.js';
import type { Phrase } from '../sentence/phrase.js';
import { thing } from '../words/taxonomy.js';

type Order = 'newer' | 'older' | 'same';

/** A thing of the comparison, from its earliest possible day to its latest. */
interface Span {
  readonly first: string;
  readonly last: string;
  readonly item: Item | undefined;
}

const LATER = 'newer|younger|more recent|more modern|fresher|later';
const EARLIER = 'older|earlier|more aged';
/** Between the two things stand the comparison and little else. */
const COMPARED = new RegExp(
  `^[^,;.!?]{0,40}?\\b(?:(${LATER}) than|(${EARLIER}) than|(predates?|pre-dates?|came before|went in before|(?:been|there|here|in|around|standing|installed|on the house) (?:in |there |around |here )?longer than|has seen more years than|goes back further than)|(post-?dates?|came after|went in after))\\b([^,;.!?]{0,28})$`,
  'i',
);
const ALIKE =
  /^[^,;.!?]{0,40}?\b(?:same (?:age|year|vintage|era|time) as|as (?:old|new|recent|young|fresh) as|match(?:es)? the age of|dates? from the same year as|contemporary with|of an age with)\b([^,;.!?]{0,28})$/i;
const DENIED = /\b(not|isn't|aren't|wasn't|never|no)\b/i;

/** The comparison of age that a phrase makes with what stands behind it. */
export function comparedAge(one: ClaimCase): Judgement | undefined {
  const { known, phrase, sentence, items } = one;
  const { text } = sentence;
  const other = nextPhrase(sentence, phrase.to);
  const end = other === undefined ? Math.min(text.length, phrase.to + 70) : other.from;
  if (end - phrase.to > 80) return undefined;
  const words = text.slice(phrase.to, end).replace(/[.;!?\n].*/s, '');
  const said = comparisonIn(words);
  if (said === undefined || DENIED.test(words)) return undefined;
  const { order, rest } = said;
  const theirs =
    other === undefined
      ? elliptical(known, phrase, rest)
      : spansOf(known, other, undefined, text.slice(other.from, other.to));
  const mine = spansOf(known, phrase, byName(items, text.slice(phrase.from, phrase.to)), '');
  const [my] = mine;
  const [their] = theirs;
  if (my === undefined || their === undefined) return undefined;
  const pairs = mine.flatMap((a) => theirs.map((b) => holds(order, a, b)));
  const verdict = pairs.some((fits) => fits === true)
    ? 'backed'
    : pairs.every((fits) => fits === false)
      ? 'contradicted'
      : undefined;
  if (verdict === undefined) return undefined;
  const shown = [my.item, their.item].filter((item) => item !== undefined);
  return {
    verdict,
    rule: order === 'same' ? 'date.same' : 'date.order',
    because: verdict === 'backed' ? 'their dates are so' : `the folder says ${dayOf(my)} and ${dayOf(their)}`,
    facts: factsOf(shown),
  };
}

/** How the words between compare, and what stands behind the comparison. */
function comparisonIn(
  words: string,
): { readonly order: Order; readonly rest: string | undefined } | undefined {
  const compared = COMPARED.exec(words);
  if (compared !== null) {
    const [, later, , , after, rest] = compared;
    return { order: (later ?? after) === undefined ? 'older' : 'newer', rest };
  }
  const alike = ALIKE.exec(words);
  return alike === null ? undefined : { order: 'same', rest: alike[1] };
}

/** Undefined where the days of the two overlap. */
function holds(order: Order, a: Span, b: Span): boolean | undefined {
  if (order === 'same') return yearsBetween(a, b) <= 1;
  const [late, early] = order === 'newer' ? [a, b] : [b, a];
  if (late.first > early.last) return true;
  // Of one month: neither is newer.
  if (
    late.first === early.first &&
    late.last === early.last &&
    late.first.slice(0, 7) === late.last.slice(0, 7)
  )
    return false;
  return late.last <= early.first ? false : undefined;
}

const yearsBetween = (a: Span, b: Span): number =>
  Math.max(
    0,
    Number(b.first.slice(0, 4)) - Number(a.last.slice(0, 4)),
    Number(a.first.slice(0, 4)) - Number(b.last.slice(0, 4)),
  );

/** When a thing was made or put in; of a room, when the last of it was. */
function spansOf(
  known: Known,
  phrase: Phrase,
  found: readonly Item[] | undefined,
  /** The phrase as the text has it. */
  words: string,
): Span[] {
  const built = known.house.house.built.value;
  if (phrase.thing === 'house')
    return built?.earliest === undefined || built.latest === undefined
      ? []
      : [{ first: built.earliest, last: built.latest, item: undefined }];
  const items = found ?? byName(literal(itemsAt(known, phrase, placesOf(known, phrase)), words), words);
  const things = items.filter(({ kind }) => kind !== 'work' && kind !== 'structure' && kind !== 'identity');
  const own = things.length > 0 ? things : items.filter(({ deed }) => putsIn(deed));
  return thing(phrase.thing).room === undefined
    ? own.flatMap((item) => spanOf(item))
    : roomSpan(known, things);
}

/** "The cooktop" beside a wall oven: of several, those that the folder calls so. */
function byName(items: readonly Item[], words: string): readonly Item[] {
  const last = words.toLowerCase().trim().replace(/s$/, '');
  const named = items.filter(({ label, what }) => `${label} ${what}`.toLowerCase().includes(last));
  return named.length > 0 ? named : items;
}

function spanOf(item: Item): Span[] {
  const date =
    item.made ?? (item.kept || item.deed === undefined || putsIn(item.deed) ? item.done : undefined);
  return date?.earliest === undefined || date.latest === undefined
    ? []
    : [{ first: date.earliest, last: date.latest, item }];
}

/** A room is as new as what was put in last; one that was only painted, as old as the house. */
function roomSpan(known: Known, items: readonly Item[]): Span[] {
  const put = items
    .filter(({ kind, deed, kept }) => kind === 'finish' && putsIn(deed) && !kept)
    .flatMap((item) => spanOf(item))
    .sort((a, b) => (a.last < b.last ? 1 : -1));
  if (put.length > 0) return put.slice(0, 1);
  const built = known.house.house.built.value;
  const bought = known.house.house.bought?.latest ?? known.offered;
  const kept = items.find((item) => item.kept);
  return kept === undefined || built?.earliest === undefined
    ? []
    : [{ first: built.earliest, last: bought, item: kept }];
}

/** "Newer than the primary": the room is not said twice. */
function elliptical(known: Known, phrase: Phrase, rest = ''): Span[] {
  const use = thing(phrase.thing).room;
  const ids = use === undefined ? [] : roomsCalled(known.house, use, rest);
  return ids.length === 0
    ? []
    : roomSpan(
        known,
        known.items.filter(({ kind, where }) => kind !== 'work' && where.some((id) => ids.includes(id))),
      );
}

const dayOf = ({ item, first }: Span): string => {
  const date = item?.made ?? item?.done;
  return date === undefined ? first.slice(0, 4) : printDate(date);
};
