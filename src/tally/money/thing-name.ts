/** The name of what a row was for: a work item, a system or a place. */
import type { House } from '../../facts/house.js';
import { nameOfPlace } from '../../facts/place-name.js';

/** `id`: as in `CostRow.place`; undefined: the whole house. */
export function thingName(house: House, id: string | undefined): string {
  if (id === undefined) return 'Whole house';
  const system = house.systems.find((one) => one.id === id);
  const item = house.work.find((one) => one.id === id);
  const name = system === undefined ? item?.what : (system.name ?? system.is);
  if (name === undefined) return nameOfPlace(house, id);
  return name.charAt(0).toUpperCase() + name.slice(1);
}
