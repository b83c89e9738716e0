/** Plans to one scale, dimensioned by the tape that measured the house. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FOOT, METRE } from '../../src/facts/length.js';
import { drawPlan, type PlanOrder } from '../../src/packet/draw-plan.js';
import { rectangle } from '../../src/tally/measuring.js';

const box = (feetWide: number, feetDeep: number) => rectangle([0, 0], feetWide * FOOT, feetDeep * FOOT);
const words = (order: PlanOrder, wide: number, deep: number): string[] =>
  drawPlan(rectangle([0, 0], wide, deep), [], 452, 500, order).drawing.shapes.flatMap((shape) =>
    shape.kind === 'text' ? [shape.text] : [],
  );

describe('plans of one house', () => {
  it('are to one scale, whatever the sizes of two levels', () => {
    const feet = fc.integer({ min: 6, max: 150 });
    fc.assert(
      fc.property(feet, feet, feet, feet, (a, b, c, d) => {
        const outlines = [box(a, b), box(c, d)];
        const atMost = Math.min(...outlines.map((outline) => drawPlan(outline, [], 452, 500).perFoot));
        const together = outlines.map((outline) => drawPlan(outline, [], 452, 500, { atMost }));
        for (const plan of together) {
          expect(plan.perFoot).toBeCloseTo(atMost, 9);
          expect(plan.drawing.width).toBeLessThanOrEqual(452.01);
          expect(plan.drawing.height).toBeLessThanOrEqual(500.01);
        }
        expect(new Set(together.map((plan) => plan.scale)).size).toBe(1);
      }),
    );
  });
});

describe('dimensions', () => {
  it.each([
    ['metric', 12.2 * METRE, '12.20 m', '2 m'],
    ['tenths', 40.5 * FOOT, '40.5 ft', '10 ft'],
    ['inches', 40.5 * FOOT, '40′ 6″', '10 ft'],
  ] as const)('and scale bar are by the tape that was used: %s', (reading, wide, dimension, bar) => {
    const shown = words({ reading }, Math.round(wide), 8 * METRE);
    expect(shown).toContain(dimension);
    expect(shown).toContain(bar);
  });

  it('of a slanted metric wall stop at the centimetre', () => {
    const slanted = drawPlan(
      [
        [0, 0],
        [5 * METRE, 0],
        [6 * METRE, 5 * METRE],
        [0, 5 * METRE],
      ],
      [],
      452,
      500,
      { reading: 'metric' },
    );
    const texts = slanted.drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    // √26 = 5.0990…
    expect(texts).toContain('5.10 m');
  });
});
