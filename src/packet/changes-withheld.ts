/**
 * Old words that may not be said again.
 *
 * Whoever changes what was told may have changed it because somebody should not read it: a name, a sum, a street. So a
 * published edition repeats old words only where each of them stands in the present packet or in a correction, which its
 * writer made to be read.
 */
import { streetTeller } from '../facts/check-address.js';
import type { House } from '../facts/house.js';
import { plainWords, wordsIn } from './changes-pairs.js';
import type { CollectedFact } from './collect-facts.js';
import type { FactsFile } from './facts-file.js';

/** Whether a text may be said again; `corrections` are those that its statement follows from. */
export type MaySayAgain = (text: string, corrections: readonly CollectedFact[]) => boolean;

/** Shorter ones (`yes`, `OH`, a year) are found in any text by chance. */
const SHORTEST = 5;
/** A choice among the words of the schema, such as `improvement`, tells nothing by itself. */
const CHOICE = /^[a-z]+(?:-[a-z]+)*$/u;
/** The program's own words for choices, and those that join others: alone they tell of nobody. */
const PLAIN: ReadonlySet<string> = new Set(
  wordsIn(`a an and any are as at be been but by for from had has have if in into is it its no none not nothing of off on
    or out so than that the then there this to until up was were when where which with without yes yet
    open final expired inspection record found asked state known stays goes`),
);
/** An age follows from a date: of a date that was corrected the old age is told as well. */
const AGE = /\b\d+ (?:to \d+ )?(?:year|month|day)s?\b/gu;

/** `shown` is the house as the edition may know it, `present` what its packet says now. */
export function maySayAgain(whole: House, shown: House, present: FactsFile): MaySayAgain {
  const known = wordsSaid(present);
  const said = [...textsOf(shown)].map(textOf).join('\n');
  const secret = [...textsOf(whole)]
    .filter((text) => text.length >= SHORTEST && !CHOICE.test(text))
    .map(textOf)
    .filter((text) => !said.includes(text));
  // The words of a street may all stand somewhere in the packet, and tell it only together.
  const tellsStreet = shown === whole ? () => false : streetTeller(whole.house.address);
  return (text, corrections) => {
    const plain = textOf(text);
    if (secret.some((one) => plain.includes(one)) || tellsStreet(plain)) return false;
    const corrected = new Set(
      corrections.flatMap(({ before = '', printed }) => [...wordsIn(before), ...wordsIn(printed)]),
    );
    const words = wordsIn(corrections.length === 0 ? plain : plain.replace(AGE, ' '));
    return words.every((word) => known.has(word) || corrected.has(word) || PLAIN.has(word));
  };
}

/** Every word that a packet says, with its headings. */
function wordsSaid({ house, title, facts }: FactsFile): ReadonlySet<string> {
  const texts = facts.flatMap(({ section, under = [], about = '', says, known = '', by = '' }) => [
    section,
    ...under,
    about,
    ...(typeof says === 'string' ? [says] : says.flatMap(({ column, cell }) => [column, cell])),
    known,
    by,
  ]);
  return new Set([title, house.name, house.place, ...texts].flatMap(wordsIn));
}

/** Every text in it, with the photos' ids, which are the cameras' names. */
function textsOf(house: House): Set<string> {
  const texts = new Set(Object.keys(house.photos));
  const visit = (value: unknown): void => {
    if (typeof value === 'string') texts.add(value);
    else if (typeof value === 'object' && value !== null)
      for (const inner of Object.values(value)) visit(inner);
  };
  visit(house);
  return texts;
}

const textOf = (text: string): string => plainWords(text).toLowerCase();
