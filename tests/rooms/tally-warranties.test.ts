import { describe, expect, test } from 'vitest';
import type { HouseSpec } from '../../src/facts/house.js';
import { deriveWarranties } from '../../src/tally/warranties.js';
import { houseFrom } from './house-from.js';

type Warranties = NonNullable<NonNullable<HouseSpec['systems']>[number]['warranty']>;

function ends(warranty: Warranties, installed: string | undefined, asOf = '2026-06-20') {
  const system = { id: 'heater', is: 'water heater, tank, electric', warranty };
  return deriveWarranties(
    houseFrom({ systems: [installed === undefined ? system : { ...system, installed }] }),
    asOf,
  );
}
const end = (...args: Parameters<typeof ends>) => ends(...args)[0];

describe('a warranty', () => {
  test('still runs on its last day and no longer on the next', () => {
    // A choice of this project, in its list of readings.
    expect(end({ until: '2026-06-20' }, undefined)).toMatchObject({ lastDay: '2026-06-20', running: true });
    expect(end({ until: '2026-06-19' }, undefined)?.running).toBe(false);
    expect(end({ until: '2026-06' }, undefined, '2026-06-30')).toMatchObject({
      lastDay: '2026-06-30',
      running: true,
      basis: 'as stated',
    });
    expect(end({ until: '2026-06' }, undefined, '2026-07-01')?.running).toBe(false);
  });

  test('goes by what the writer says, else it is counted from the earliest day of the installation', () => {
    expect(end({ until: '2030-01-01', years: 6 }, '2026-04-11')).toMatchObject({ lastDay: '2030-01-01' });
    expect(end({ years: 6 }, '2026-04-11')).toMatchObject({
      lastDay: '2032-04-11',
      basis: 'counted from installation',
    });
    expect(end({ years: 6 }, '2026')?.lastDay).toBe('2032-01-01');
    expect(end({ years: 1 }, '2024-02-29')?.lastDay).toBe('2025-02-28');
    expect(end({ years: 4 }, '2024-02-29')?.lastDay).toBe('2028-02-29');
  });

  test('may run for half or quarter years', () => {
    expect(end({ years: 2.5 }, '2026-04-11')?.lastDay).toBe('2028-10-11');
    expect(end({ years: 0.25 }, '2026-01-31')?.lastDay).toBe('2026-04-30');
  });

  test('without an end or a beginning is not known, which is neither running nor over', () => {
    const unknown = { lastDay: undefined, running: undefined, basis: 'not known' };
    expect(end({ years: 6 }, undefined)).toMatchObject(unknown);
    expect(end({ years: 6 }, '../2020')).toMatchObject(unknown);
    expect(end({ of: 'tank' }, '2026-04-11')).toMatchObject(unknown);
  });

  test('that is about, a span or a decade keeps its words, and is open where the day lies within it', () => {
    const about = (asOf: string) => end({ until: '2030~' }, undefined, asOf);
    expect(about('2026-06-20')).toMatchObject({ basis: 'as stated', lastDay: undefined, running: true });
    expect(about('2026-06-20')?.stated?.written).toBe('2030~');
    expect(
      [about('2029-01-01'), about('2030-06-01'), about('2031-12-31'), about('2032-01-01')].map(
        (one) => one?.running,
      ),
    ).toEqual([true, undefined, undefined, false]);
    const span = (asOf: string, until = '2028/2030') => end({ until, years: 1 }, '2026', asOf)?.running;
    expect([span('2028-01-01'), span('2028-01-02'), span('2030-12-31'), span('2031-01-01')]).toEqual([
      true,
      undefined,
      undefined,
      false,
    ]);
    expect([span('2026-06-20', '2028/..'), span('2030-06-20', '2028/..')]).toEqual([true, undefined]);
    expect(span('2025-01-01', '202X')).toBeUndefined();
  });

  test('counted from a start that is not one day is open between its two ends', () => {
    const counted = (asOf: string) => end({ years: 6 }, '2020', asOf);
    expect(
      [counted('2026-01-01'), counted('2026-06-20'), counted('2026-12-31'), counted('2027-01-01')].map(
        (one) => one?.running,
      ),
    ).toEqual([true, undefined, undefined, false]);
    expect(counted('2026-06-20')).toMatchObject({ lastDay: '2026-01-01', stated: undefined });
    expect(end({ years: 6 }, '2015/..', '2026-06-20')?.running).toBeUndefined();
  });

  test('on what was taken out is not told', () => {
    const system = { id: 'heater', is: 'water heater', did: 'removed', warranty: { years: 6 } } as const;
    expect(deriveWarranties(houseFrom({ systems: [system] }), '2026-06-20')).toEqual([]);
  });

  test('each of several has its place, and work has its own', () => {
    const list = ends(
      [
        { of: 'tank', years: 6 },
        { of: 'parts', years: 1 },
      ],
      '2025-01-01',
    );
    expect(list.map((one) => [one.warranty.of, one.running, one.path])).toEqual([
      ['tank', true, ['systems', 0, 'warranty', 0]],
      ['parts', false, ['systems', 0, 'warranty', 1]],
    ]);
    expect(end({ years: 6 }, '2025-01-01')?.path).toEqual(['systems', 0, 'warranty']);
    const [work] = deriveWarranties(
      houseFrom({
        work: [{ id: 'roof', what: 'roof', did: 'replaced', done: '2026-05', warranty: { years: 10 } }],
      }),
      '2026-06-20',
    );
    expect(work).toMatchObject({
      lastDay: '2036-05-01',
      path: ['work', 0, 'warranty'],
      on: { kind: 'work' },
    });
    expect(work?.warranty['moves-to-buyer']).toBe('not known');
  });
});
