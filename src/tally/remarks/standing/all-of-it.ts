/** "Everything is brand new", "new everything in the kitchen", "nothing here is original": of all that the folder tells of. */
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import { withoutPaint } from '../items/meant-items.js';
import { itemsAt, itemsFor, placesOf } from '../items/pick-items.js';
import { judgeNewness } from '../judge/judge-newness.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';

const EVERYTHING_BEFORE =
  /\beverything(?: (?:in|inside) (?:the |this )?\w+)?(?:'s| is| was| has been| looks)?(?: all| totally| completely)?\W*$/i;
const EVERYTHING_BEHIND = /^\W*everything\b/i;
const NOTHING_BEFORE = /\b(nothing|none of it|not a thing|little|hardly anything)\b[^.,;!?]{0,24}$/i;
const LITTLE = /\b(little|hardly anything)\b/i;

/** A word about newness that is said of everything, or denied of it; undefined where it is said of less. */
export function ofEverything(
  known: Known,
  phrases: readonly Phrase[],
  one: Extract<Attribute, { kind: 'newness' }>,
  text: string,
): Judgement | undefined {
  const before = text.slice(Math.max(0, one.from - 50), one.from);
  const nothing = NOTHING_BEFORE.exec(before);
  if (nothing !== null && one.id === 'original' && !LITTLE.test(nothing[0])) return noneOriginal(known);
  const behind = text.slice(one.to, one.to + 14);
  if (one.id !== 'new' || !(EVERYTHING_BEFORE.test(before) || EVERYTHING_BEHIND.test(behind)))
    return undefined;
  const place = phrases.find(
    (phrase) => phrase.place && Math.min(Math.abs(phrase.from - one.to), Math.abs(one.from - phrase.to)) < 24,
  );
  const items =
    place === undefined ? itemsFor(known, 'house') : itemsAt(known, place, placesOf(known, place));
  return judgeNewness(known, withoutPaint(items), { word: 'new', all: true, many: true, whole: true });
}

/** Whether nothing stands as it was found. */
function noneOriginal(known: Known): Judgement {
  const built = Number(known.house.house.built.value?.latest?.slice(0, 4) ?? 0);
  const kept = itemsFor(known, 'house').filter((item) => item.kept && isOfTheHouse(item, built));
  return {
    verdict: kept.length > 0 ? 'contradicted' : 'no-fact',
    rule: 'newness.original',
    because:
      kept.length > 0
        ? 'the folder tells of what was left as found'
        : 'the folder does not say what was left',
    facts: factsOf(kept, 3),
  };
}

const isOfTheHouse = ({ done, made }: Item, built: number): boolean => {
  const year = Number((done ?? made)?.earliest?.slice(0, 4) ?? built);
  return year <= built + 3;
};
