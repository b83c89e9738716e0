/** What kind a thing is said to be: its material, fuel, colour, how it stands. */
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import type { Judgement } from './known.js';
import type { Sense } from './lexicon.js';
import { inOnePlace, type PlaceMeant } from './places.js';
import { exclude, isKindOf } from './taxonomy.js';
import { joined } from './true-words.js';

export interface ClassClaim {
  readonly senses: readonly Sense[];
  readonly word: string;
  readonly all: boolean;
  readonly places: readonly PlaceMeant[];
}

/** Facts that are of the kind, and those that can't be. */
export function sortByClass(
  items: readonly Item[],
  given: readonly Sense[],
): { fits: Item[]; others: Item[] } {
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
    if (
      relevant.some(({ group, id }) =>
        item.classes.some((one) => one.group === group && isKindOf(group ?? '', one.id, id)),
      )
    )
      fits.push(item);
    else if (
      relevant.length > 0 &&
      relevant.every(({ group, id }) =>
        item.classes.filter((one) => one.group === group).every((one) => exclude(group ?? '', one.id, id)),
      )
    )
      others.push(item);
  }
  return { fits, others };
}

export function judgeClass(items: readonly Item[], claim: ClassClaim): Judgement | undefined {
  const group = claim.senses[0]?.group ?? '';
  const rule = `kind.${group}`;
  const { fits, others } = sortByClass(items, claim.senses);
  if (fits.length === 0 && others.length === 0) {
    const said = items.filter((item) =>
      (item.kind === 'system' ? item.words : item.what).toLowerCase().includes(claim.word),
    );
    if (said.length > 0)
      return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(said) };
    return { verdict: 'no-fact', rule, because: `the folder does not say “${claim.word}” of it`, facts: [] };
  }
  const perhaps = items.some(
    (item) =>
      !others.includes(item) &&
      item.classes.some(({ group: own }) => claim.senses.some((sense) => sense.group === own)),
  );
  if (fits.length === 0 && perhaps)
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder’s words leave it open',
      facts: factsOf(items, 3),
    };
  if (fits.length === 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says otherwise than “${claim.word}”`,
      facts: factsOf(others),
      instead: joined(others),
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
      instead: joined(fits),
    };
  return { verdict: 'backed', rule, because: 'the folder says so', facts: factsOf(fits) };
}
