import { describe, expect, test } from 'vitest';
import { checkHouse } from '../../src/facts/check-house.js';

const HOUSE = {
  name: 'Test House',
  address: { city: 'Fallow Mills', state: 'OH' },
  kind: 'detached',
  built: 1948,
};
const told = (house: object, rest: object = {}) => {
  const checked = checkHouse({ house: { ...HOUSE, ...house }, ...rest });
  return { ...checked, paths: checked.diagnostics.map((one) => one.path?.join('.')) };
};

describe('what is wrong in house:', () => {
  test('a fact without its value is cut, and the rest is told in the same go', () => {
    const { house, diagnostics, paths } = told(
      { built: { from: 'county record' }, bought: '2026-13-01' },
      {
        systems: [{ id: 'roof', is: 'roof', installed: '2019-13-01' }],
        stairs: [{ id: 'up', handrail: 'yes' }],
      },
    );
    expect(paths.sort()).toEqual([
      'house.bought',
      'house.built.is',
      'stairs.0.risers',
      'systems.0.installed',
    ]);
    expect(diagnostics.find((one) => one.path?.at(-1) === 'is')?.code).toBe('facts.missing');
    expect(house?.house).toMatchObject({ name: 'Test House', built: { value: undefined } });
    expect(house?.systems.map((one) => one.id)).toEqual(['roof']);
  });

  test('an optional fact without its value is simply not there', () => {
    const { house, paths } = told({ lot: { from: 'survey' } });
    expect(paths).toEqual(['house.lot.is']);
    expect(house?.house.lot).toBeUndefined();
    expect(house?.house.built.value?.written).toBe('1948');
  });

  test('an address that lacks its city keeps the rest', () => {
    const { house, paths } = told({ address: { street: '212 Quarry Road', state: 'OH' } });
    expect(paths).toEqual(['house.address.city']);
    expect(house?.house.address).toMatchObject({ street: '212 Quarry Road', state: 'OH' });
  });
});

test('care comes back after one day at the least', () => {
  const paths = (every: string) => told({}, { care: [{ what: 'change the filter', every }] }).paths;
  for (const every of ['0 days', '00 weeks', '000 months', '0 years'])
    expect(paths(every), every).toEqual(['care.0.every']);
  for (const every of ['1 day', '10 days', '100 weeks', 'month', '3 months'])
    expect(paths(every), every).toEqual([]);
});
