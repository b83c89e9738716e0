/** Scales of plans: what fits is found from above, and nothing is said to fit that was not tried. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyScale, largestScale } from '../../src/packet/draw-scale.js';

describe('a usual scale', () => {
  it('is the largest that fits, and none that is larger than needed', () => {
    expect(largestScale((perFoot) => perFoot <= 10)).toMatchObject({ perFoot: 9 });
    expect(largestScale(() => true, 6.75)).toMatchObject({ perFoot: 6.75 });
    // As where a smaller plan has more notes below it, and is too high for them.
    expect(largestScale((perFoot) => perFoot === 6.75)).toMatchObject({ perFoot: 6.75 });
  });

  it('gives way to another where none fits, and to nothing where that does not either', () => {
    const other = largestScale((perFoot) => perFoot <= 3);
    expect(other?.name).toBeUndefined();
    expect(other?.perFoot).toBeCloseTo(3, 2);
    expect(largestScale(() => false)).toBeUndefined();
  });
});

describe('any scale', () => {
  it('is the largest that fits, to a thousandth of a point or two, where all smaller ones fit too', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 12, noNaN: true }), (limit) => {
        const found = anyScale((perFoot) => perFoot <= limit, 9) as number;
        expect(found).toBeLessThanOrEqual(limit);
        expect(found).toBeGreaterThan(Math.min(9, limit) - 0.0025);
      }),
    );
  });

  it('was tried, and nothing a step above it fits, whatever fits', () => {
    const bands = fc.uniqueArray(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 2, maxLength: 8 });
    let [found, none] = [0, 0];
    fc.assert(
      fc.property(bands, (edges) => {
        const sorted = [...edges].sort((one, other) => one - other);
        // In and out of fitting at each edge.
        const fits = (perFoot: number) => sorted.filter((edge) => edge <= perFoot).length % 2 === 1;
        const scale = anyScale(fits, 9);
        const steps = Array.from({ length: 65 }, (_, step) => 9 - (8.95 * step) / 64);
        if (scale === undefined) {
          none++;
          expect(steps.filter((perFoot) => fits(perFoot + 1e-9) && fits(perFoot - 1e-9))).toEqual([]);
          return;
        }
        found++;
        expect(fits(scale)).toBe(true);
        const above = steps.filter((perFoot) => perFoot > scale + 8.95 / 64);
        expect(above.filter((perFoot) => fits(perFoot + 1e-9) && fits(perFoot - 1e-9))).toEqual([]);
      }),
      { seed: 20261120, numRuns: 300 },
    );
    expect(found).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(0);
  });

  it('is the least one only if that fits', () => {
    expect(anyScale((perFoot) => perFoot < 0.051, 9)).toBeCloseTo(0.05, 2);
    expect(anyScale((perFoot) => perFoot < 0.049, 9)).toBeUndefined();
  });

  it('asks seldom', () => {
    let asked = 0;
    anyScale((perFoot) => {
      asked++;
      return perFoot < 4;
    }, 4.5);
    expect(asked).toBeLessThan(20);
  });
});
