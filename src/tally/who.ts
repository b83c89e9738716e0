import type { House, Person } from '../facts/house.js';

/** Who did a thing. */
export type Who =
  | { readonly kind: 'owner' | 'family' | 'not-known' }
  | { readonly kind: 'hired'; readonly person: Person };

/** `by:` of a fact. Left out means that nobody said, which is not known. */
export function whoDid(house: House, by: string | undefined): Who {
  if (by === undefined || by === 'not-known') return { kind: 'not-known' };
  if (by === 'owner' || by === 'family') return { kind: by };
  const person = house.people.find((one) => one.id === by);
  return person === undefined ? { kind: 'not-known' } : { kind: 'hired', person };
}
