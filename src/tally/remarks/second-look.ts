/**
 * A second look at what was told against a phrase: no contradiction where a fact that the words name more closely backs it.
 *
 * A phrase is first held against the facts of its thing, as far as the reading tells thing and place apart. "The roof
 * over the carport is new" may so meet the roof of the house. Before anything is held against the text, the folder's own
 * words are asked: where an entry holds more of the clause's words than those that speak against it, it is the one meant.
 */
import { nameOfPlace } from '../../facts/place-name.js';
import type { SentenceWords, Told } from './claims/claim-case.js';
import { claimsOf } from './claims/claims.js';
import { isOfContext } from './items/context-ties.js';
import type { Item } from './items/items.js';
import type { Judgement, Known } from './items/known.js';
import { meant } from './items/meant-items.js';
import { itemsFor } from './items/pick-items.js';
import { inOnePlace } from './items/places.js';
import { onSide } from './items/sides.js';
import { sortByClass } from './judge/judge-class.js';
import type { Attribute, Phrase } from './sentence/phrase.js';
import { sinceLast, untilFirst } from './words/cut-at.js';

/** Everything that a phrase claims, after a second look at what speaks against it. */
export function sureClaimsOf(
  known: Known,
  phrase: Phrase,
  done: ReadonlySet<Attribute>,
  sentence: SentenceWords,
): Told[] {
  const told = claimsOf(known, phrase, done, sentence);
  // "All" is wider than the fact that the words name, and so is a room that was torn out.
  const isOfAll = phrase.attributes.some(
    (one) => one.kind === 'all' || (one.kind === 'newness' && one.id === 'remade'),
  );
  if (isOfAll || phrase.negated || !told.some(({ judgement }) => isOpenToDoubt(judgement))) return told;
  // What stands on another side of the house is not meant, however many words it shares.
  const closer = onSide(
    phrase,
    sentence.text,
    inPlace(known, phrase, sentence, closerItems(known, phrase, sentence, told)),
  );
  if (closer.length === 0 || isOfOtherKind(phrase, told, closer)) return told;
  const again = claimsOf(known, phrase, done, sentence, closer);
  return told.map((one) => {
    if (!isOpenToDoubt(one.judgement)) return one;
    const other = again.find(
      ({ judgement, attributes }) =>
        judgement.verdict === 'backed' &&
        judgement.rule.split('.')[0] === one.judgement.rule.split('.')[0] &&
        one.attributes.every((attribute) => attributes.includes(attribute)),
    );
    return other === undefined ? one : { ...one, judgement: other.judgement };
  });
}

/** "New terrazzo floors": what is known to be of another kind is no floor that is meant. */
const isOfOtherKind = (phrase: Phrase, told: readonly Told[], items: readonly Item[]): boolean =>
  !phrase.bare &&
  told.some(({ judgement }) => judgement.verdict === 'backed' && judgement.rule.startsWith('kind.')) &&
  phrase.attributes.some(
    (one) => one.kind === 'class' && one.before && sortByClass(items, one.senses).fits.length === 0,
  );

/** Of a phrase that says where, only what is there or stands in no room. */
function inPlace(
  known: Known,
  phrase: Phrase,
  sentence: SentenceWords,
  items: readonly Item[],
): readonly Item[] {
  const { places } = meant(known, phrase, sentence);
  const near = places.some(({ ids }) => ids.length > 0)
    ? places
    : sentence.context === undefined || !isOfContext(phrase, sentence)
      ? []
      : [sentence.context.place];
  if (near.length === 0) return items;
  return items.filter(({ where }) => where.length === 0 || near.some((place) => inOnePlace(where, place)));
}

/** Rules that rest on which facts are meant, and not on a count of all. */
const RESTS_ON_FACTS = /^(newness|date|kind|who)\./;

const isOpenToDoubt = ({ verdict, rule }: Judgement): boolean =>
  (verdict === 'contradicted' || verdict === 'wider') && RESTS_ON_FACTS.test(rule);

/** Entries that hold more of the clause's words than those that speak against it; none where these hold as many. */
function closerItems(
  known: Known,
  phrase: Phrase,
  sentence: SentenceWords,
  told: readonly Told[],
): readonly Item[] {
  const { text } = sentence;
  const words = clauseWords(sentence, phrase);
  const head = stemOf(sinceLast(text.slice(phrase.from, phrase.to).replace(/\W+$/, ''), /\W/));
  if (words.size < 2) return [];
  const kin = new Set(itemsFor(known, phrase.thing));
  const against = new Set(
    told.flatMap(({ judgement }) =>
      isOpenToDoubt(judgement) ? judgement.facts.map(({ path }) => path.join('/')) : [],
    ),
  );
  const isOfNew = phrase.attributes.some(
    (one) => one.kind === 'newness' && /^(new|newer|replaced)$/.test(one.id),
  );
  const standing = known.items.filter(
    ({ kind, path, things }) =>
      (kind === 'finish' || kind === 'system') &&
      things.includes(phrase.thing) &&
      against.has(path.join('/')),
  );
  let most = 0;
  // "So of some": the ones that the words name are among those that were held against it.
  if (told.some(({ judgement }) => isOpenToDoubt(judgement) && judgement.verdict === 'contradicted'))
    for (const item of known.items)
      if (against.has(item.path.join('/'))) most = Math.max(most, shared(known, item, words));
  let best: Item[] = [];
  for (const item of known.items) {
    const isKin = kin.has(item) && !phrase.bare;
    // Where a new one is claimed, a mended part of it is no closer.
    if (isOfNew && item.kind === 'work' && (item.deed === 'repaired' || isBeside(item, standing))) continue;
    if (!isKin && !(phrase.bare ? wordsOf(known, item) : stemsIn(item.label)).has(head)) continue;
    const count = shared(known, item, words);
    if (count < 2 || count <= most) continue;
    if (count > shared(known, best[0], words)) best = [item];
    else if (count === shared(known, best[0], words)) best.push(item);
  }
  return best;
}

/** "Tub surround": a work names what stands in the same room, and that says more of itself. */
const isBeside = ({ where }: Item, standing: readonly Item[]): boolean =>
  standing.some((one) => one.where.some((id) => where.includes(id)));

const shared = (known: Known, item: Item | undefined, words: ReadonlySet<string>): number => {
  if (item === undefined) return 0;
  const own = wordsOf(known, item);
  let count = 0;
  for (const word of words) if (own.has(word)) count++;
  return count;
};

/** Characters of the clause that are read before and behind the phrase. */
const NEAR = 60;

/** The words around a phrase that may name a fact, as far as its clause goes. */
function clauseWords({ text, phrases }: SentenceWords, phrase: Phrase): ReadonlySet<string> {
  const ends = [phrase, ...phrase.rooms, ...phrase.attributes.filter(({ shared }) => !shared)];
  const from = Math.min(...ends.map((one) => one.from));
  const to = Math.max(...ends.map((one) => one.to));
  const before = sinceLast(text.slice(Math.max(0, from - NEAR), from), CLAUSE_END);
  const behind = untilFirst(text.slice(to, to + NEAR), CLAUSE_END);
  const own = stemsIn([phrase, ...phrase.rooms].map((one) => text.slice(one.from, one.to)).join(' '));
  const words = stemsIn(`${before}${text.slice(from, to)}${behind}`);
  // "New tub and surround": the other members of a list name themselves.
  for (const other of phrasesWithin(phrases, from - NEAR, to + NEAR))
    if (other !== phrase && !other.place && other.from < to + NEAR && other.to > from - NEAR)
      for (const word of stemsIn(text.slice(other.from, other.to))) if (!own.has(word)) words.delete(word);
  // "By the owner" is no owner's bath.
  for (const one of phrase.attributes)
    if (one.kind === 'who') for (const word of stemsIn(text.slice(one.from, one.to))) words.delete(word);
  // What is claimed names nothing: any vinyl of the folder has the word of "the kitchen floor is vinyl".
  if (!phrase.bare)
    for (const one of phrase.attributes)
      if (one.kind === 'class' || one.kind === 'newness')
        for (const word of stemsIn(text.slice(one.from, one.to))) words.delete(word);
  return words;
}

const pieces = new WeakMap<readonly Phrase[], ReadonlyMap<number, readonly Phrase[]>>();
const pieceOf = (at: number): number => Math.floor(at / NEAR);

/** Those with words between two places, and a few more: a sentence may have thousands, and each asks who stands near it. */
function phrasesWithin(phrases: readonly Phrase[], from: number, to: number): ReadonlySet<Phrase> {
  const byPiece = pieces.get(phrases) ?? inPieces(phrases);
  pieces.set(phrases, byPiece);
  const found = new Set<Phrase>();
  for (let piece = pieceOf(from); piece <= pieceOf(to); piece++)
    for (const one of byPiece.get(piece) ?? []) found.add(one);
  return found;
}

function inPieces(phrases: readonly Phrase[]): Map<number, Phrase[]> {
  const byPiece = new Map<number, Phrase[]>();
  for (const one of phrases)
    for (let piece = pieceOf(one.from); piece <= pieceOf(one.to); piece++) {
      const those = byPiece.get(piece);
      if (those === undefined) byPiece.set(piece, [one]);
      else those.push(one);
    }
  return byPiece;
}

const CLAUSE_END = /[.;:!?\n,•*]/;

const stemsOfItems = new WeakMap<Item, ReadonlySet<string>>();

function wordsOf({ house }: Known, item: Item): ReadonlySet<string> {
  const before = stemsOfItems.get(item);
  if (before !== undefined) return before;
  const places = item.where.length > 3 ? [] : item.where.map((id) => nameOfPlace(house, id));
  const found = stemsIn([item.label, item.what, item.words, ...places].join(' '));
  stemsOfItems.set(item, found);
  return found;
}

/** Words that name no thing, and those of deeds, which are judged by themselves. */
const NO_NAME =
  /^(with|from|that|this|have|were|been|their|they|them|into|over|under|which|also|only|some|just|very|more|most|than|then|when|here|there|about|after|before|every|each|both|done|new|newe|original|replace|replac|paint|repair|updat|install|refinish|year|kept)$/;

const stemsIn = (text: string): Set<string> =>
  new Set(
    (text.toLowerCase().match(/[a-z]{3,}/g) ?? [])
      .map(stemOf)
      .filter((word) => word.length > 2 && !NO_NAME.test(word)),
  );

const SAME: Readonly<Record<string, string>> = { master: 'primar', owner: 'primar', primary: 'primar' };

/** "panelling", "panels": as one word. */
const stemOf = (word: string): string => {
  const plain = word.toLowerCase().replace(/(?<=[a-z]{4})(ing|ed|es|s)$|(?<=[a-z]{2})s$/, '');
  return SAME[plain] ?? plain.slice(0, 6);
};
