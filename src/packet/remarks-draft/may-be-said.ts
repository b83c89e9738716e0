/**
 * What may not stand in an advertisement, wherever it comes from: the draft takes some words from what the owner
 * wrote, and those may name a person, a sum, the withheld street, or praise.
 */
import { checkAdvertising } from '../../tally/advertising.js';
import type { Context } from '../context.js';

/** Words of praise: a draft states, and leaves the adjectives to the agent. */
const PRAISE =
  /\b(amazing|beautiful(ly)?|breathtaking|bright|charming|cute|dream|elegant|exquisite|fabulous|gorgeous|gleaming|immaculate|impressive|inviting|lovely|luxur\w*|magnificent|move-in|must[- ]see|perfect(ly)?|pristine|prime|spacious|sparkling|spectacular|splendid|stunning|superb|wonderful|turn-?key)\b/i;

/** A figure with two decimals is a sum, but for the acres of a lot. */
const SUM = /[$€£]|\bUSD\b|\b\d[\d,]*\.\d\d\b(?!-acre)/;

/** Longer than this it is a story, and no phrase of a listing. Characters. */
const LONGEST = 160;

/** Whether some words may stand in a draft. */
export function mayBeSaid(context: Context, text: string): boolean {
  if (text.length > LONGEST || SUM.test(text) || PRAISE.test(text)) return false;
  if (/[\r\n]/.test(text)) return false;
  const lower = text.toLowerCase();
  if (namesIn(context).some((name) => lower.includes(name))) return false;
  return checkAdvertising(text).length === 0;
}

const known = new WeakMap<Context, readonly string[]>();

/** Names of those who were hired or paid, and the street where it is withheld, in small letters. */
function namesIn(context: Context): readonly string[] {
  const earlier = known.get(context);
  if (earlier !== undefined) return earlier;
  const { people, money, house } = context.whole;
  const { show, street } = house.address;
  const names = [
    ...people.map(({ name }) => name),
    ...(money?.payees ?? []).map(({ name }) => name),
    ...(show === 'full' || street === undefined ? [] : [street, street.replace(/^\d+\S*\s+/u, '')]),
  ]
    .map((name) => name.trim().toLowerCase())
    // A name of one or two letters stands in every other word, and a part someone plays is no name.
    .filter((name) => name.length > 2 && !/^(the )?(seller|buyer|owner|county|city|town|family)$/.test(name));
  known.set(context, names);
  return names;
}
