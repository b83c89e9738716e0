/** Ratings of a label: amps, gallons, tons. */
import { groupThousands } from '../../../facts/written-number.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { numberAt } from '../words/numbers.js';
import { tokenize } from '../words/token.js';
import { judged, unknown } from './judged.js';

/** "150 amp", "50 gal": a rating beside those of the thing. */
export function judgeRating(items: readonly Item[], value: number, unit: string): Judgement {
  const rule = 'size.rating';
  const rated = items.flatMap((item) =>
    ratingsIn(item.capacity ?? '')
      .filter((one) => one.unit === unit)
      .map((one) => ({ item, value: one.value })),
  );
  const fits = rated.filter((one) => Math.abs(one.value - value) < 0.05 * value);
  if (rated.length === 0) {
    const said = items.filter(({ words }) =>
      ratingsIn(words).some((one) => one.unit === unit && one.value === value),
    );
    if (said.length === 0 && isKnownRating(items, unit))
      return judged(
        false,
        rule,
        `the folder says ${ratingWords(items, unit)}`,
        factsOf(items, 2),
        ratingWords(items, unit),
      );
    return said.length > 0
      ? judged(true, rule, 'the folder says so', factsOf(said))
      : unknown(rule, 'the folder does not give that rating');
  }
  return judged(
    fits.length > 0,
    rule,
    `the folder says ${rated[0]?.item.capacity ?? ''}`,
    factsOf((fits.length > 0 ? fits : rated).map(({ item }) => item)),
    rated[0]?.item.capacity,
  );
}

/** Ratings of one unit that the folder's words give; a lone one is the thing's own. */
const ratingsOf = (items: readonly Item[], unit: string): number[] => [
  ...new Set(
    items.flatMap(({ what, words }) =>
      ratingsIn(`${what}; ${words}`).flatMap((one) => (one.unit === unit ? [one.value] : [])),
    ),
  ),
];

const isKnownRating = (items: readonly Item[], unit: string): boolean => ratingsOf(items, unit).length === 1;

const ratingWords = (items: readonly Item[], unit: string): string =>
  `${groupThousands(ratingsOf(items, unit)[0] ?? 0)} ${unit}`;

function ratingsIn(text: string): { value: number; unit: string }[] {
  const tokens = tokenize(text.replace(/(\d)\s*A\b/g, '$1 amp'));
  return tokens.flatMap((token, index) => {
    if (token.value === undefined) return [];
    const number = numberAt(tokens, index, tokens.length)?.sense;
    return number?.kind === 'rating' ? [{ value: number.value, unit: number.unit }] : [];
  });
}
