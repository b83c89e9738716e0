import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../src/facts/quantity.js';

describe('readQuantity', () => {
  it.each([
    ['50 gallons', ['gallons'], 50, 'gallons'],
    ['50 gal', ['gallons'], 50, 'gallons'],
    ['50-gallon', ['gallons'], 50, 'gallons'],
    ['120 °F', ['°F', '°C'], 120, '°F'],
    ['120F', ['°F', '°C'], 120, '°F'],
    ['-10 degrees F', ['°F'], -10, '°F'],
    ['30 A', ['amps'], 30, 'amps'],
    ['240 V', ['amps', 'volts'], 240, 'volts'],
    ['40,000 Btu/hr', ['BTU/h'], 40_000, 'BTU/h'],
    ['2 1/2 tons', ['tons'], 2.5, 'tons'],
    ['2-1/2 ton', ['tons'], 2.5, 'tons'],
    ['½ hp', ['hp'], 0.5, 'hp'],
    ['1.28 gpf', ['gpf'], 1.28, 'gpf'],
    ['6"', ['in'], 6, 'in'],
    ['3 BULBS', ['bulb'], 3, 'bulb'],
    ['0 %', ['percent'], 0, 'percent'],
  ])('reads %s', (text, allowed, value, unit) => {
    expect(readQuantity(text, allowed)).toStrictEqual({ ok: true, value: { value, unit, written: text } });
  });

  it.each([
    [
      '50',
      ['gallons'],
      'a quantity needs its unit',
      'write the number with its unit, for example 50 gallons',
    ],
    [
      '50 litres',
      ['gallons'],
      '“litres” is not a unit that belongs here',
      'write the number with its unit, for example 50 gallons',
    ],
    [
      '50 litres',
      ['°F', '°C'],
      '“litres” is not a unit that belongs here',
      'write the number with one of these units: °F, °C',
    ],
    [
      'fifty gallons',
      ['gallons'],
      '“fifty gallons” does not begin with a number',
      'write the number with its unit, for example 50 gallons',
    ],
    [
      '-5 gallons',
      ['gallons'],
      'a number of gallons is never negative',
      'write the number with its unit, for example 50 gallons',
    ],
    ['10-20 amps', ['amps'], '“10-20” is not a number', 'write digits, for example 11, 11.5 or 6 1/2'],
    [
      `${'9'.repeat(20)} gallons`,
      ['gallons'],
      'the number is too large',
      'write the number with its unit, for example 50 gallons',
    ],
    ['', [], 'there is no quantity', 'write the number with its unit, for example 50 gallons'],
  ])('refuses %s', (text, allowed, problem, hint) => {
    expect(readQuantity(text, allowed)).toEqual({ ok: false, problem, hint });
  });
});
