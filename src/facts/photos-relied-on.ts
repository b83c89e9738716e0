/** The photos that a fact rests on: named as its evidence. */
import type { House } from './house.js';

/** Their ids. */
export function photosReliedOn(house: House): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [word, inner] of Object.entries(value)) {
      if (word === 'evidence' && Array.isArray(inner)) for (const id of inner) found.add(String(id));
      else visit(inner);
    }
  };
  visit(house);
  return new Set([...found].filter((id) => Object.hasOwn(house.photos, id)));
}
