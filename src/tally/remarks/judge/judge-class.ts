/** What kind a thing is said to be: its material, fuel, colour, how it stands. */
import { describedWithout } from '../claims/described-otherwise.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { inOnePlace, type PlaceMeant } from '../items/places.js';
import type { ClassSense, Sense } from '../words/lexicon.js';
import { exclude, isKindOf } from '../words/taxonomy.js';
import { asTyped } from './judged.js';

export interface ClassClaim {
  readonly senses: readonly ClassSense[];
  readonly word: string;
  readonly all: boolean;
  readonly places: readonly PlaceMeant[];
}

interface Sorted {
  readonly fits: readonly Item[];
  readonly others: readonly Item[];
}

// The facts of a thing and the kinds of a word are one list each however often they are met, and sorted once.
const sorted = new WeakMap<readonly Item[], WeakMap<readonly Sense[], Sorted>>();

/** Facts that are of the kind, and those that can't be. */
export function sortByClass(items: readonly Item[], given: readonly Sense[]): Sorted {
  let bySenses = sorted.get(items);
  if (bySenses === undefined) {
    bySenses = new WeakMap();
    sorted.set(items, bySenses);
  }
  let found = bySenses.get(given);
  if (found === undefined) {
    found = sortOnce(items, given);
    bySenses.set(given, found);
  }
  return found;
}

function sortOnce(items: readonly Item[], given: readonly Sense[]): Sorted {
  // "slate floors" are no floors of grey: a material is meant before a colour.
  const material = given.filter(
    ({ group }) =>
      group !== 'colour' && items.some(({ classes }) => classes.some((one) => one.group === group)),
  );
  const senses = material.length > 0 ? material : given;
  const fits: Item[] = [];
  const others: Item[] = [];
  for (const item of items) {
    const relevant = senses.filter(({ group }) => item.classes.some((one) => one.group === group));
    const isSo = relevant.some(({ group, id }) =>
      item.classes.some((one) => one.group === group && isKindOf(one.group, one.id, id)),
    );
    const excluding = relevant.filter(({ group, id }) =>
      item.classes.filter((one) => one.group === group).every((one) => exclude(one.group, one.id, id)),
    );
    // "glass tile" where the tile is ceramic, "epoxy floor" where the concrete is bare: so in one way only.
    const isOtherwise = excluding.some(({ group }) => FINER.has(group));
    if (isSo && !isOtherwise) fits.push(item);
    else if (relevant.length > 0 && (isOtherwise || excluding.length === relevant.length)) others.push(item);
  }
  return { fits, others };
}

/** Groups that say more closely what another group says as well. */
const FINER = new Set<string | undefined>(['tile-material', 'floor-coating']);

/** Whether the folder's own words for it hold every word of the claim: "pink tile" of a pink mosaic tile. */
export function saysWords({ kind, words, what }: Item, claimed: string): boolean {
  const own = (kind === 'system' ? words : what).toLowerCase();
  return (
    own.includes(claimed) ||
    claimed.split(/[\s-]+/).every((word) => word.length > 2 && own.split(/\W+/).includes(word))
  );
}

/** Words of an account that tell of what went, or of what is only beside it. */
const GONE = /\b(out|off|gone|removed|taken|old|was|were|had|instead|under|over|before|former|until|from)\b/i;

/** "Twelve pressed piers" of a slab: the account of a work holds the very word, and tells of it as put there. */
function isPutThere({ kind, deed, words }: Item, word: string): boolean {
  if (kind !== 'work' || deed === 'removed' || word.length < 4) return false;
  const stem = word.toLowerCase().replace(/s$/, '');
  return words
    .toLowerCase()
    .split(/[,;.]/)
    .some((part) => part.includes(stem) && !GONE.test(part));
}

export function judgeClass(items: readonly Item[], claim: ClassClaim): Judgement {
  const rule = `kind.${claim.senses[0]?.group}`;
  const { fits, others } = sortByClass(items, claim.senses);
  if (fits.length === 0 && others.length === 0) {
    const said = items.filter((item) => saysWords(item, claim.word));
    if (said.length > 0)
      return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(said) };
    return (
      describedWithout(items, claim.senses, claim.word) ?? {
        verdict: 'no-fact',
        rule,
        because: `the folder does not say “${asTyped(claim.word)}” of it`,
        facts: [],
      }
    );
  }
  const perhaps = items.some(
    (item) =>
      !others.includes(item) &&
      item.classes.some(({ group: own }) => claim.senses.some((sense) => sense.group === own)),
  );
  if (fits.length === 0 && perhaps)
    return (
      describedWithout(items, claim.senses, claim.word) ?? {
        verdict: 'no-fact',
        rule,
        because: 'the folder’s words leave it open',
        facts: factsOf(items, 3),
      }
    );
  // What stands there says what it is; only where none does may the account of a work.
  const standing = others.some(({ kind }) => kind === 'finish' || kind === 'system');
  const written = fits.length === 0 && !standing ? items.filter((item) => isPutThere(item, claim.word)) : [];
  if (written.length > 0)
    return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(written) };
  if (fits.length === 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says otherwise than “${asTyped(claim.word)}”`,
      facts: factsOf(others),
    };
  const lacking = claim.places.filter(
    (place) =>
      !fits.some(({ where }) => inOnePlace(where, place)) &&
      others.some(({ where }) => inOnePlace(where, place)),
  );
  const elsewhere = claim.all
    ? others.filter(
        ({ where, kind }) => kind !== 'finish' || !fits.some((fit) => fit.where.join() === where.join()),
      )
    : others.filter(({ where }) => lacking.some((place) => inOnePlace(where, place)));
  if (elsewhere.length > 0)
    return {
      verdict: 'wider',
      rule,
      because: 'so of some, but not of all',
      facts: [...factsOf(elsewhere, 3), ...factsOf(fits, 2)],
    };
  return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(fits) };
}
