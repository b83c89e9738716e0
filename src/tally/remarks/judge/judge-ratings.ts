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
    if (said.length > 0) return judged(true, rule, 'the folder says so', factsOf(said));
    // Of one unit, a lone rating in the folder's words is the thing's own.
    const [own, ...others] = ratingsOf(items, unit);
    if (own === undefined || others.length > 0) return unknown(rule, 'the folder does not give that rating');
    const words = `${groupThousands(own)} ${unit}`;
    return judged(false, rule, `the folder says ${words}`, factsOf(items, 2), words);
  }
  const capacity = rated[0]?.item.capacity;
  return judged(
    fits.length > 0,
    rule,
    `the folder says ${capacity}`,
    factsOf((fits.length > 0 ? fits : rated).map(({ item }) => item)),
    capacity,
  );
}

/** Ratings of one unit that the folder's words give, each once. */
const ratingsOf = (items: readonly Item[], unit: string): number[] => [
  ...new Set(
    items
      .flatMap(({ what, words }) => ratingsIn(`${what}; ${words}`))
      .filter((one) => one.unit === unit)
      .map((one) => one.value),
  ),
];

function ratingsIn(text: string): { value: number; unit: string }[] {
  const tokens = tokenize(text.replace(/(\d)\s*A\b/g, '$1 amp'));
  return tokens.flatMap((token, index) => {
    if (token.value === undefined) return [];
    const number = numberAt(tokens, index, tokens.length)?.sense;
    return number?.kind === 'rating' ? [{ value: number.value, unit: number.unit }] : [];
  });
}
