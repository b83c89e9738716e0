/** The owner's names for things, as they can stand within a sentence. */
import type { House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';

/**
 * "Handrail, cellar stair" is "handrail (cellar stair)": what stands behind one comma says where. "Porch steps, rail and
 * guard" is a list and stays one, with its "and".
 */
export function asListed(house: House, words: string): string {
  const [head = '', ...rest] = words.split(/,\s*/u);
  const small = /^[A-Z]{2}/.test(head) ? head : head.charAt(0).toLowerCase() + head.slice(1);
  const [where] = rest;
  if (where === undefined) return small;
  if (rest.length === 1 && saysWhere(house, where)) return `${small} (${where})`;
  if (/\band\b/.test(rest.at(-1) ?? '')) return [small, ...rest].join(', ');
  return `${[small, ...rest.slice(0, -1)].join(', ')} and ${rest.at(-1)}`;
}

/** Places of the house, sides, or a single thing: nothing that goes on with a list. */
function saysWhere(house: House, words: string): boolean {
  if (/\b(north|south|east|west)\b/i.test(words) || !/\band\b/.test(words)) return true;
  const places = [...house.rooms, ...house.levels, ...house.structures, ...house.stairs].map((one) =>
    nameOf(one).toLowerCase(),
  );
  return words
    .toLowerCase()
    .split(/\s+and\s+/u)
    .every((word) => places.includes(word.trim()));
}
