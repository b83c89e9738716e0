/** Houses with nothing but their sizes, for tests of the area rules. */
import { expect } from 'vitest';
import { checkHouse } from '../../src/facts/check-house.js';
import { deriveAreas } from '../../src/tally/area.js';

export type Plain = Record<string, unknown>;

/** The areas of a house written so. Fails the test if its words don't check clean. */
export function measure(spec: Plain, kind = 'detached'): ReturnType<typeof deriveAreas> {
  const { house, diagnostics } = checkHouse({
    house: { name: 'Example', address: { city: 'Fallow Mills', state: 'OH' }, kind, built: 1948 },
    ...spec,
  });
  expect(diagnostics).toEqual([]);
  if (house === undefined) throw new Error('the example is no house');
  return deriveAreas(house);
}

/** A level above the ground, 8 ft high, with more or other words. */
export const main = (more: Plain = {}): Plain => ({
  id: 'main',
  name: 'Main level',
  grade: 'above',
  ceiling: "8'",
  ...more,
});
