import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PixelBudget } from '../../src/intake/pixel-budget.js';

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

it('never lets more be worked on than it holds, but for one that is larger by itself; and lets all of it be done', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.record({ pixels: fc.integer({ min: 1, max: 150 }), fails: fc.boolean() }), {
        maxLength: 30,
      }),
      async (photos) => {
        const budget = new PixelBudget(100);
        const inHand: number[] = [];
        const began: number[] = [];
        const all = photos.map(({ pixels, fails }, index) =>
          budget.within(pixels, async () => {
            began.push(index);
            inHand.push(pixels);
            const sum = inHand.reduce((total, each) => total + each, 0);
            expect(sum <= 100 || inHand.length === 1).toBe(true);
            await turn();
            inHand.splice(inHand.indexOf(pixels), 1);
            if (fails) throw new Error('not a picture');
            return index;
          }),
        );
        const settled = await Promise.allSettled(all);
        expect(settled.map((one) => one.status === 'rejected')).toEqual(photos.map(({ fails }) => fails));
        expect(began).toEqual(photos.map((_, index) => index));
      },
    ),
    { numRuns: 200, seed: 3 },
  );
});
