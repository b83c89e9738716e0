import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../../src/facts/length.js';
import { readStep } from '../../src/facts/step.js';

describe('readStep', () => {
  it.each([
    [`east 34'`, 34 * FOOT, 0, 'inches'],
    [`south 12'6"`, 0, -(12 * FOOT + 6 * INCH), 'inches'],
    ['West 3.5 m', -35_000_000, 0, 'metric'],
    [`north 4.5'`, 0, 4.5 * FOOT, 'tenths'],
    [`e 34'`, 34 * FOOT, 0, 'inches'],
    [`N34'`, 0, 34 * FOOT, 'inches'],
    ['w 6 in', -6 * INCH, 0, 'inches'],
    [`east 3' north 4'`, 3 * FOOT, 4 * FOOT, 'inches'],
    [`south 4', west 3'`, -3 * FOOT, -4 * FOOT, 'inches'],
    ['n 4 in e 3 in', 3 * INCH, 4 * INCH, 'inches'],
    [`east 3' north 4.5'`, 3 * FOOT, 4.5 * FOOT, 'tenths'],
  ] as const)('reads %s', (text, east, north, reading) => {
    expect(readStep(text)).toEqual({ ok: true, value: { east, north, reading, written: text } });
  });

  it.each([
    [
      `north-east 5'`,
      '“north-east” does not say how far each way',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    [
      `northeast 5'`,
      '“northeast” does not say how far each way',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    [
      `SW 5'`,
      '“SW” does not say how far each way',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    [
      `left 5'`,
      'a step needs a compass word: north, south, east or west',
      `write a compass word and a length, for example east 34'`,
    ],
    [
      `34' east`,
      'a step begins with its compass word',
      `write a compass word and a length, for example east 34'`,
    ],
    ['east 34', 'east: a length needs its unit', `write feet and inches, for example 11'6"`],
    ['east', 'east: there is no length', `write feet and inches, for example 11'6"`],
    [
      `east -3'`,
      'east: a length has no sign and is never negative',
      `write feet and inches, for example 11'6"`,
    ],
    [`east 3' west 1'`, 'both parts of this step lie along the same line', 'write one step for each wall'],
    [
      `east 3' north 4' west 2'`,
      'a step has one compass word, or two along a slanted wall',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    [
      `east 3' north 1 m`,
      'the two parts of this step are read in different units',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    [
      `east 3'6" north 4.5'`,
      'the two parts of this step are read in different units',
      `write both parts of the slanted wall, for example east 3' north 4'`,
    ],
    ['', 'there is no step', `write a compass word and a length, for example east 34'`],
  ])('refuses %s', (text, problem, hint) => {
    expect(readStep(text)).toEqual({ ok: false, problem, hint });
  });

  it('closes an L-shaped outline exactly', () => {
    const outline = [`east 34'`, `north 26'6"`, `west 12'`, `north 4'`, `west 22'`, `south 30'6"`].map(
      readStep,
    );
    const sum = outline.reduce(
      (at, step) => (step.ok ? { east: at.east + step.value.east, north: at.north + step.value.north } : at),
      { east: 0, north: 0 },
    );
    expect(outline.every((step) => step.ok)).toBe(true);
    expect(sum).toEqual({ east: 0, north: 0 });
  });
});
