/** Small houses for tests, through the same door as a written one. */
import { checkHouse } from '../../src/facts/check-house.js';
import { checkReferences } from '../../src/facts/check-references.js';
import type { House, HouseSpec } from '../../src/facts/house.js';

/** A house's words with only what the test is about; `house` may lack what the stand-in below has. */
export type PartialSpec = Omit<Partial<HouseSpec>, 'house'> & {
  readonly house?: Partial<HouseSpec['house']>;
};

const HOUSE = {
  name: 'Test House',
  address: { city: 'Fallow Mills', state: 'OH' },
  kind: 'detached',
  built: 1948,
} as const satisfies HouseSpec['house'];

/** The checked house. Throws, and so fails the test, if the words don't check clean or name what isn't there. */
export function houseFrom(spec: PartialSpec = {}): House {
  const { house, diagnostics } = checkHouse({ ...spec, house: { ...HOUSE, ...spec.house } });
  const wrong = [...diagnostics, ...(house === undefined ? [] : checkReferences(house))];
  if (house === undefined || wrong.length > 0)
    throw new Error(`the test's house does not check clean:\n${JSON.stringify(wrong, null, 2)}`);
  return house;
}
