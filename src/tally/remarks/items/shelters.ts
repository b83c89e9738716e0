/** Garage, carport and drive, as the folder's line about parking and its list of structures have them. */
import type { House } from '../../../facts/house.js';

export type Shelter = 'garage' | 'carport' | 'driveway';

const WORD: Readonly<Record<Shelter, RegExp>> = {
  garage: /\bgarage/i,
  carport: /\bcarport/i,
  driveway: /\bdrive(way)?\b/i,
};

const DENIED = /\b(no|not an?|nor an?|without( an?)?|neither)\s+(?:[\w-]+\s+){0,2}$/i;

/** "No garage and no driveway": what is named only to deny it is not there. */
function isNamed(words: string, word: RegExp): boolean {
  for (const part of words.split(/[,;.]|\b(?:and|but|or)\b/)) {
    const at = part.search(word);
    if (at >= 0 && !DENIED.test(part.slice(0, at))) return true;
  }
  return false;
}

const partsOf = (house: House): string => house.house.parking?.value ?? '';

export const hasShelter = (house: House, kind: Shelter): boolean =>
  house.structures.some(({ is }) => is === kind) || isNamed(partsOf(house), WORD[kind]);

/** "On the street only": the folder tells where cars stand, and of no place on the lot. */
export function parksOnStreet(house: House): boolean {
  const words = partsOf(house);
  return (
    /\b(street|curb|kerb|permit parking)\b/i.test(words) &&
    !(['garage', 'carport', 'driveway'] as const).some((kind) => hasShelter(house, kind)) &&
    !/\b(pad|lot|court|alley|space|spot|place|stall|off[ -]street)s?\b/i.test(words)
  );
}

/**
 * Whether the folder excludes it: a line about parking names what shelters a car, so a garage or a carport that it does
 * not name is not there. A drive may go without saying, and is excluded by a denial or by parking on the street alone.
 */
export function lacksShelter(house: House, kind: Shelter): boolean {
  const words = partsOf(house);
  if (words === '' || hasShelter(house, kind)) return false;
  return kind !== 'driveway' || WORD.driveway.test(words) || parksOnStreet(house);
}
