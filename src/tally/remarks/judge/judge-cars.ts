/** For how many cars a garage or carport is. */
import { nameOf } from '../../../facts/place-name.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { hasShelter, lacksShelter, type Shelter } from '../items/shelters.js';
import { judged, unknown } from './judged.js';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

export function judgeCars(known: Known, claimed: number, structure: Exclude<Shelter, 'driveway'>): Judgement {
  const rule = 'count.cars';
  const parking = known.house.house.parking;
  const words = [
    parking?.value ?? '',
    ...known.house.structures
      .filter(({ is }) => is === structure)
      .map((one) => `${nameOf(one)} ${one.note ?? ''}`),
  ]
    .join('; ')
    .toLowerCase();
  const kinds = words.split(/[;,]|\band\b/);
  const near = kinds.findIndex((part) => part.includes(structure));
  const stated = [...kinds.slice(Math.max(0, near)), ...kinds]
    .map(carsIn)
    .find((count) => count !== undefined);
  const fact: FactSaid = {
    path: ['house', 'parking'],
    words: `parking: ${parking?.value ?? 'not said'}`,
    evidence: parking?.evidence ?? [],
  };
  if (!hasShelter(known.house, structure)) {
    const other = structure === 'garage' ? 'carport' : 'garage';
    if (hasShelter(known.house, other))
      return judged(false, rule, `the folder tells of a ${other}, not of a ${structure}`, [fact], other);
    return lacksShelter(known.house, structure)
      ? judged(false, rule, `the folder tells of no ${structure}`, [fact], parking?.value)
      : unknown(rule, `the folder tells of no ${structure}`);
  }
  if (stated === undefined) return unknown(rule, 'the folder does not say for how many cars');
  return judged(
    stated === claimed,
    rule,
    `the folder says ${NUMBERS[stated] ?? stated} ${stated === 1 ? 'car' : 'cars'}`,
    [fact],
    `${NUMBERS[stated] ?? stated}-car ${structure}`,
  );
}

function carsIn(words: string): number | undefined {
  const match =
    /(\d|one|two|three|four|single|double)[- ]?(car|cars|vehicle|vehicles|bay|bays)\b/.exec(words) ??
    /\b(\d|one|two|three|four) (?:stalls?|places?|spaces?)/.exec(words);
  const word = match?.[1];
  if (word === undefined) return undefined;
  return /\d/.test(word) ? Number(word) : ({ single: 1, double: 2 }[word] ?? NUMBERS.indexOf(word));
}
