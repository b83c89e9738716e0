/** Printed names of the places of a house: levels, rooms, stairs and structures. */
import type { House } from './house.js';

/** The name as printed; left out, it is made from the id: `boiler-room` becomes "Boiler room". */
export function nameOf(thing: { readonly id: string; readonly name?: string | undefined }): string {
  if (thing.name !== undefined) return thing.name;
  const words = thing.id.replaceAll(/[-_]+/g, ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The printed name of the place with this id. An id that nothing has is turned into words like any other. */
export function nameOfPlace(
  { levels, rooms, stairs, structures }: Pick<House, 'levels' | 'rooms' | 'stairs' | 'structures'>,
  id: string,
): string {
  return nameOf([...levels, ...rooms, ...stairs, ...structures].find((one) => one.id === id) ?? { id });
}
