/** Feet of a thing: how deep a well is, how high a fence stands. */
import type { ClaimCase } from '../claims/claim-case.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';

const FEET = /(\d[\d,]*(?:\.\d+)?)\s*(?:-\s*)?(?:ft\b|feet\b|foot\b|'(?!\d))/gi;
const INCHES = /(\d+(?:\.\d+)?)\s*(?:in\b|inch|")/gi;
/** Things with one length worth telling; of others a length of something else may stand beside. */
const ONE_LENGTH = /^(well|fence|pool-fence)$/;

export function judgeFeet({ known, found, phrase }: ClaimCase, feet: number): Judgement | undefined {
  const rule = 'size.feet';
  const of = phrase.thing === 'well' ? [...found, ...itemsFor(known, 'water-supply')] : found;
  const given = of.flatMap((item) => {
    const words = `${item.what} ${item.words}`;
    return [
      ...[...words.matchAll(FEET)].map(([, figure = '']) => Number(figure.replaceAll(',', ''))),
      ...[...words.matchAll(INCHES)].map((match) => Number(match[1]) / 12),
    ].map((value) => ({ item, value }));
  });
  const fits = given.filter(({ value }) => Math.abs(value - feet) <= Math.max(0.1, value * 0.03));
  if (fits.length > 0)
    return {
      verdict: 'backed',
      rule,
      because: 'the folder says so',
      facts: factsOf(
        fits.map(({ item }) => item),
        2,
      ),
    };
  const [one] = given;
  if (one === undefined || !ONE_LENGTH.test(phrase.thing)) return undefined;
  const words = `${Math.round(one.value * 10) / 10} ft`;
  return {
    verdict: 'contradicted',
    rule,
    because: `the folder says ${words}`,
    facts: factsOf([one.item]),
    instead: words,
  };
}
