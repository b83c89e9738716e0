import { isOfContext } from '../items/context-ties.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { inOnePlace, type PlaceMeant } from '../items/places.js';
import { sortByClass } from '../judge/judge-class.js';
import { type ClaimCase, tell } from './claim-case.js';
import type { Kind } from './tell-kinds.js';

const OF_THE_HOUSE =
  /^\s*(home|house|exterior|ranch|colonial|beaut|town|facade|two|split|rambler|bungalow|cape)/i;

/**
 * "Painted brick", "slates replaced", "marble in every bath": a kind that stands alone may be said of what no phrase
 * names. True where something there is of it; wrong where a place is named and all there is of another kind.
 */
export function tellElsewhere(one: ClaimCase, kind: Kind): boolean {
  const { known, phrase, places, found } = one;
  const ofFound = kind.senses.find(({ group }) =>
    found.some(({ classes }) => classes.some((own) => own.group === group)),
  );
  const ownRule = `kind.${(ofFound ?? kind.senses[0])?.group}`;
  const own = sortByClass(found, kind.senses);
  if (own.fits.length > 0) return false;
  // "brick home" means its walls, whatever else is of brick.
  if (phrase.thing === 'siding' && OF_THE_HOUSE.test(one.sentence.text.slice(phrase.to, phrase.to + 14)))
    return false;
  // "stone of granite": the word that stands for the thing may mean much, the next one only its own.
  const senses = kind.from === phrase.from ? phrase.bareSenses : kind.senses;
  const near = nearPlaces(one);
  const anywhere = known.standing;
  const candidates =
    near.length === 0
      ? anywhere
      : anywhere.filter(({ where }) => near.some((place) => inOnePlace(where, place)));
  const { fits, others } = sortByClass(candidates, senses);
  // What is there of another kind speaks against it; else it may be meant of what is elsewhere.
  const closed = places.length > 0 || others.length > 0;
  const told = fits.length > 0 ? fits : closed ? [] : sortByClass(anywhere, senses).fits;
  const other =
    told.length > 0 || closed ? told : anywhere.filter(({ what }) => what.toLowerCase().includes(kind.word));
  const lacking = other.length > 0 ? lackingRooms(one, kind, near, other, others) : [];
  if (lacking.length > 0) {
    const judgement: Judgement = {
      verdict: 'contradicted',
      rule: ownRule,
      because: `not in all of them`,
      facts: [...factsOf(lacking, 3), ...factsOf(other, 2)],
    };
    tell(one, judgement, kind);
    return true;
  }
  if (other.length > 0) {
    one.items = mendedInPart(one, kind, other) ? [] : other;
    tell(
      one,
      { verdict: 'backed', rule: ownRule, because: 'the folder says so', facts: factsOf(other, 2) },
      kind,
    );
    return true;
  }
  if (found.length > 0 || near.length === 0 || others.length === 0) return false;
  tell(
    one,
    {
      verdict: 'contradicted',
      rule: ownRule,
      because: `the folder tells of no ${kind.word} there`,
      facts: factsOf(others, 3),
    },
    kind,
  );
  return true;
}

const EACH = /\b(both|all|every|each|throughout|t\/o(ut)?)\b/i;

/** "Quartz in both baths": what is of another kind in a room that has none of it. */
function lackingRooms(
  { phrase, sentence }: ClaimCase,
  kind: Kind,
  near: readonly PlaceMeant[],
  fits: readonly Item[],
  others: readonly Item[],
): readonly Item[] {
  const end = phrase.rooms.at(-1)?.to ?? kind.to;
  if (near.length === 0 || !EACH.test(sentence.text.slice(kind.to, Math.max(kind.to, end)))) return [];
  const having = new Set(fits.flatMap(({ where }) => where));
  const groups = new Set(fits.flatMap(({ things }) => things));
  return others.filter(
    ({ where, things }) => !where.some((id) => having.has(id)) && things.some((id) => groups.has(id)),
  );
}

/** Where a kind that stands alone is said to be: as its phrase says, else in the room spoken of last. */
function nearPlaces({ phrase, places, sentence }: ClaimCase): readonly PlaceMeant[] {
  if (/^(siding|roof|foundation)$/.test(phrase.thing)) return [];
  if (places.length > 0) return places;
  if (sentence.context === undefined || sentence.context.thing === 'house' || !isOfContext(phrase, sentence))
    return [];
  return [sentence.context.place];
}

/** "Forty new slates": a repair tells of them, so the age of the whole says nothing. */
function mendedInPart({ known }: ClaimCase, kind: Kind, items: readonly Item[]): boolean {
  const stem = kind.word.toLowerCase().replace(/s$/, '');
  return known.items.some(
    (item) =>
      item.kind === 'work' &&
      item.deed === 'repaired' &&
      item.words.toLowerCase().includes(stem) &&
      item.things.some((id) => items.some(({ things }) => things.includes(id))),
  );
}
