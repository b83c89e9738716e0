import { describe, expect, test } from 'vitest';
import { printAge } from '../../src/facts/age.js';
import { deriveAges } from '../../src/tally/ages.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type Spec = NonNullable<PartialSpec['systems']>[number];
const AS_OF = '2026-06-20';

function agesOf(system: Omit<Spec, 'id'>, asOf = AS_OF) {
  const { ages, diagnostics } = deriveAges(houseFrom({ systems: [{ id: 'one', ...system } as Spec] }), asOf);
  const age = ages[0];
  if (age === undefined || ages.length !== 1) throw new Error('one system gives one age');
  return { ...age, diagnostics };
}

describe('the age of a system', () => {
  test('counts from when it was made if that is known, else from the label, else from its installation', () => {
    const label = { serial: 'X1814', reads: 'YYWW at 2' };
    const is = 'furnace, gas';
    const made = agesOf({ is, made: '2017-05', label, installed: 2019 });
    expect([made.basis, made.date?.written]).toEqual(['made', '2017-05']);
    const read = agesOf({ is, label, installed: 2019 });
    expect([read.basis, read.date?.written, read.fact]).toEqual(['label', 'week 14 of 2018', undefined]);
    const installed = agesOf({ is, made: 'not known', installed: 2019 });
    expect([installed.basis, installed.date?.written]).toEqual(['installed', '2019']);
    const unread = agesOf({ is, label: { serial: 'X1814' } });
    expect([unread.basis, unread.age, unread.comparison.words]).toEqual([
      'not known',
      undefined,
      'not known',
    ]);
    expect(unread.diagnostics).toEqual([]);
  });

  test('is a span where the date is one, set against the lives of every source', () => {
    const heater = agesOf({ is: 'water heater, tank, electric', made: '2021~' });
    expect(heater.age && printAge(heater.age)).toBe('3 to 6 years');
    // Published rows run from 10 years (NAHB 2007: 11; inspectors: 10) up.
    expect(heater.comparison.words).toBe('younger than every published life');
    const old = agesOf({ is: 'water heater, tank, electric', made: '../1995' });
    expect(old.comparison.words).toBe('older than every published life');
  });

  test('is not told of what was taken out, whose dates are still checked', () => {
    const { ages, diagnostics } = deriveAges(
      houseFrom({
        systems: [
          { id: 'old', is: 'gravity coal hopper', made: 2015, installed: 2010, did: 'removed' },
          { id: 'new', is: 'furnace, gas', installed: 2019 },
        ],
      }),
      AS_OF,
    );
    expect(ages.map((one) => [one.system.id, one.path])).toEqual([['new', ['systems', 1]]]);
    expect(diagnostics.map((one) => one.code)).toEqual(['tally.date-order']);
  });

  test('not known stays not known, with the fact that says so', () => {
    const { basis, fact, age } = agesOf({
      is: 'furnace, gas',
      made: { is: 'not known', note: 'plate gone' },
    });
    expect(basis).toBe('not known');
    expect(fact?.note).toBe('plate gone');
    expect(age).toBeUndefined();
  });

  test('a label that doesn’t fit is an error at its pattern, and the next date is used', () => {
    const { diagnostics, basis } = agesOf({
      is: 'furnace, gas',
      label: { serial: 'XX14', reads: 'YYWW at 1' },
      installed: 2019,
    });
    expect(basis).toBe('installed');
    expect(diagnostics).toMatchObject([
      { code: 'tally.label', severity: 'error', path: ['systems', 0, 'label', 'reads'] },
    ]);
  });

  test('what is from the future has no age', () => {
    const { age, comparison } = agesOf({ is: 'furnace, gas', installed: '2026-06-21' });
    expect(age).toBeUndefined();
    expect(comparison.words).toBe('not known');
    const label = agesOf({ is: 'furnace, gas', label: { serial: '2630', reads: 'YYWW at 1' } });
    expect(label.diagnostics).toMatchObject([{ code: 'tally.future', path: ['systems', 0, 'label'] }]);
    expect(agesOf({ is: 'furnace, gas', installed: '2026-06-20' }).diagnostics).toEqual([]);
  });

  test('nothing is installed before it was made, by its date or its label', () => {
    const order = { code: 'tally.date-order', severity: 'error', path: ['systems', 0, 'installed'] };
    expect(agesOf({ is: 'furnace, gas', made: 2020, installed: '2019-12' }).diagnostics).toMatchObject([
      order,
    ]);
    expect(
      agesOf({ is: 'furnace, gas', label: { serial: '25', reads: 'YY at 1' }, installed: 1998 }).diagnostics,
    ).toMatchObject([order]);
    // The same year, or a span that reaches over it, may be right.
    expect(agesOf({ is: 'furnace, gas', made: 2020, installed: '2020-03' }).diagnostics).toEqual([]);
    expect(agesOf({ is: 'furnace, gas', made: '2019~', installed: 2018 }).diagnostics).toEqual([]);
    const day = '2020-03-01';
    expect(agesOf({ is: 'furnace, gas', made: day, installed: day }).diagnostics).toEqual([]);
  });

  test('a name no table knows is a note with the names that are like it', () => {
    const { component, comparison, diagnostics } = agesOf({ is: 'heater, mystery', installed: 2019 });
    expect(component).toBeUndefined();
    expect(comparison.words).toBe('not known');
    expect(diagnostics).toMatchObject([
      { code: 'tally.no-life', severity: 'note', path: ['systems', 0, 'is'] },
    ]);
    expect(diagnostics[0]?.hints[0]).toMatch(/water heater/);
  });
});
