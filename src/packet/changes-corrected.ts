/**
 * Whether a statement follows from a correction: it is of the corrected thing, said the earlier value and says the new one.
 *
 * A value alone proves nothing: two things can be of one year, and of one of them it can have changed without having been
 * wrong.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House } from '../facts/house.js';
import { wordsIn } from './changes-pairs.js';
import { factPathOf } from './changes-path.js';
import type { CollectedFact } from './collect-facts.js';
import type { SaidFact } from './facts-file.js';

/** `was` and `is` are one statement of two packets; `house` is that of the later one. */
export function follows(was: SaidFact, is: SaidFact, correction: CollectedFact, house: House): boolean {
  const { printed, before, fact } = correction;
  if (fact.value === undefined) return false;
  // Ids that only count may have been another thing's in the earlier packet.
  const own = factPathOf(is.id, house);
  const [earlier, later] = [was, is].map((said) => passagesOn(said, own, correction, house));
  return (
    later?.some((text) => holds(text, printed)) === true &&
    earlier?.some((text) => holds(text, printed)) !== true &&
    // Corrected twice, it may have told a value in between.
    (before === undefined || earlier?.some((text) => holds(text, before)) === true)
  );
}

/** Whether a statement told the earlier value of what was corrected. */
export const toldBefore = (said: SaidFact, correction: CollectedFact, house: House): boolean =>
  passagesOn(said, factPathOf(said.id, house), correction, house).some((text) =>
    holds(text, correction.before ?? ''),
  );

/** What of a statement is about the corrected thing: all, nothing, or those sentences and cells that name it. */
function passagesOn(
  { about = '', says }: SaidFact,
  own: FactPath | undefined,
  correction: CollectedFact,
  house: House,
): string[] {
  const texts = typeof says === 'string' ? says.split(/\n|(?<=[.!?])\s+/u) : says.map(({ cell }) => cell);
  if (own !== undefined) return own.every((step, n) => correction.path[n] === step) ? [about, ...texts] : [];
  const names = namesOf(correction, house);
  const isNamed = (text: string): boolean => names.some((name) => holds(text, name));
  return isNamed(about) ? [about, ...texts] : texts.filter(isNamed);
}

/** How a statement that is drawn from many facts names the thing. */
function namesOf({ path: [list, at], words }: CollectedFact, house: House): readonly string[] {
  if (list === 'house') return OF_THE_HOUSE[String(at)] ?? [words];
  // "roof, house, date of installation": the thing is what stands before the first comma.
  const named = words.split(',')[0] ?? words;
  const is = list === 'systems' ? house.systems[Number(at)]?.is : undefined;
  if (is === undefined) return [named];
  return [named, is.split(',')[0] ?? is, ...KINDS.flatMap(([kind, name]) => (kind.test(is) ? [name] : []))];
}

const OF_THE_HOUSE: Readonly<Record<string, readonly string[]>> = {
  built: ['built', 'house of'],
  lot: ['lot'],
  water: ['water'],
  sewer: ['sewer', 'septic'],
};

/** Answers on several systems name them by what they do. */
const KINDS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:furnace|boiler|heat pump)\b/iu, 'heating'],
  [/\bpanel\b/iu, 'electrical'],
  [/\bpipes?\b/iu, 'plumbing'],
];

/** Whole words, in their order. */
const holds = (text: string, value: string): boolean =>
  wordsIn(value).length > 0 && ` ${wordsIn(text).join(' ')} `.includes(` ${wordsIn(value).join(' ')} `);
