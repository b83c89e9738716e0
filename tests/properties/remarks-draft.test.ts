/** What holds of a draft of listing remarks, whatever the house. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { draftRemarks } from '../../src/packet/remarks-draft/draft-remarks.js';
import { checkAdvertising } from '../../src/tally/advertising.js';
import { remarksLength } from '../../src/tally/remarks-length.js';
import { draftContext } from '../rooms/draft-context.js';
import { houseOf, MADE_AS_OF, madeSpec } from './made-house.js';

let drafted = 0;

it('fits, tells documented facts alone, traces each, and is the same twice', () => {
  fc.assert(
    fc.property(madeSpec, fc.integer({ min: 0, max: 1500 }), fc.boolean(), (spec, length, owner) => {
      const context = draftContext(houseOf(spec), MADE_AS_OF);
      const draft = draftRemarks(context, { length, owner });
      expect(remarksLength(draft.text).characters).toBeLessThanOrEqual(length);
      expect(draft.text).toMatch(/^$|\.$/u);
      expect(draft.text).not.toMatch(/undefined|not known|Made-up Trades/u);
      if (context.whole.house.address.show !== 'full') expect(draft.text).not.toContain('Made-up Lane');
      expect(checkAdvertising(draft.text)).toEqual([]);
      let at = 0;
      for (const { from, to, says, mark, evidence } of draft.phrases) {
        expect(draft.text.slice(from, to)).toBe(says);
        expect(from).toBeGreaterThanOrEqual(at);
        at = to;
        if (mark.standing === 'documented') expect(evidence.length).toBeGreaterThan(0);
        else expect([owner, mark.standing]).toEqual([true, 'owner']);
      }
      expect(draftRemarks(context, { length, owner })).toEqual(draft);
      if (draft.phrases.length > 0) drafted += 1;
    }),
    { seed: 6102, numRuns: 120 },
  );
  // Empty drafts would pass all of this.
  expect(drafted).toBeGreaterThan(60);
});

it('more room never tells less of what is asked most', () => {
  fc.assert(
    fc.property(madeSpec, (spec) => {
      const context = draftContext(houseOf(spec), MADE_AS_OF);
      const whole = draftRemarks(context, { length: 100_000 });
      expect(whole.left).toEqual([]);
      const short = draftRemarks(context, { length: 300 });
      expect(short.phrases.length + short.left.length).toBeGreaterThanOrEqual(short.phrases.length);
      expect(short.text.length).toBeLessThanOrEqual(whole.text.length);
    }),
    { seed: 6103, numRuns: 40 },
  );
});
