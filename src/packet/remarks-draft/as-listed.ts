/** The owner's names for things, as they can stand within a sentence. */
import type { House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';

/**
 * "Handrail, cellar stair" is "cellar stair handrail": what stands behind one comma says where. "Porch steps, rail and
 * guard" is a list and stays one, with its "and".
 */
export function asListed(house: House, words: string): string {
  const [head = '', ...rest] = words.split(/,\s*/u);
  const small = /^[A-Z]{2}/.test(head) ? head : head.charAt(0).toLowerCase() + head.slice(1);
  const [where] = rest;
  if (where === undefined) return small;
  if (rest.length === 1 && saysWhere(house, where)) return placed(house, small, where);
  if (/\band\b/.test(rest.at(-1) ?? '')) return [small, ...rest].join(', ');
  return `${[small, ...rest.slice(0, -1)].join(', ')} and ${rest.at(-1)}`;
}

/** "Garage roof", "windows of the main level and half storey", "fence on the east side". */
function placed(house: House, head: string, where: string): string {
  const place = where.toLowerCase();
  const names = placeNames(house);
  if (place === 'as found') return head;
  // Nobody says which roof, where it is the house's.
  if (place === 'house') return head;
  if (names.includes(place)) return `${place} ${head}`;
  if (place.split(/\s+and\s+/u).every((word) => names.includes(word.trim())))
    return `${head} of the ${place}`;
  if (/\b(sides?|slopes?|corners?|gables?)$/.test(place)) return `${head} on the ${place}`;
  return `${head} (${where})`;
}

/** Places of the house, sides, or a single thing: nothing that goes on with a list. */
function saysWhere(house: House, words: string): boolean {
  if (/\b(north|south|east|west)\b/i.test(words) || !/\band\b/.test(words)) return true;
  const places = placeNames(house);
  return words
    .toLowerCase()
    .split(/\s+and\s+/u)
    .every((word) => places.includes(word.trim()));
}

const placeNames = (house: House): string[] =>
  [...house.rooms, ...house.levels, ...house.structures, ...house.stairs].map((one) =>
    nameOf(one).toLowerCase(),
  );

/** "the living room, hall and bedroom 2": the first with its article, unless it bears a number. */
export const withArticle = (name: string): string =>
  /\d$/.test(name) || /^the /.test(name) ? name : `the ${name}`;
