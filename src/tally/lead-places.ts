/** Where painted surface is added up: room by room, and all that is outside as one place. */
import type { House, WorkItem } from '../facts/house.js';
import { nameOfPlace } from '../facts/place-name.js';

/** Where the limit of one job is counted: a room, or all that is outside. */
export interface LeadPlace {
  readonly at: string | undefined;
  readonly outside: boolean;
}

/** Structures without rooms in them. Anything else has the smaller limit of a room. */
const OUTSIDE = ['porch', 'deck', 'patio', 'balcony', 'carport'];

/** Places with the same key are one place. */
export const placeKey = (place: LeadPlace): string => (place.outside ? 'outside' : `at ${place.at ?? ''}`);

/** The places that a piece of work names; one without an id where it names none. */
export function leadPlaces(house: House, item: WorkItem): LeadPlace[] {
  if (item.where.length === 0) return [{ at: undefined, outside: false }];
  return item.where.map((at) =>
    isOutside(house, item, at) ? { at: undefined, outside: true } : { at, outside: false },
  );
}

/** A stair is outside if the same work names a porch or the like: porch and porch steps. */
function isOutside(house: House, item: WorkItem, at: string): boolean {
  const open = (id: string): boolean =>
    house.structures.some((one) => one.id === id && OUTSIDE.includes(one.is));
  return open(at) || (house.stairs.some((stair) => stair.id === at) && item.where.some(open));
}

/** "Back bedroom", "Outside: Porch, Porch steps" or "Place not recorded". */
export function placeWords(house: House, place: LeadPlace, items: readonly WorkItem[]): string {
  if (place.at !== undefined) return nameOfPlace(house, place.at);
  if (!place.outside) return 'Place not recorded';
  const ids = items.flatMap((item) => item.where.filter((at) => isOutside(house, item, at)));
  return `Outside: ${[...new Set(ids)].map((at) => nameOfPlace(house, at)).join(', ')}`;
}
