/** The words of the tables: what is looked up, what no table knows, and what is kept of answers that were worked out. */
import { describe, expect, it } from 'vitest';
import { answerOf } from '../../src/tally/remarks/items/answer-of.js';
import { sensesIn } from '../../src/tally/remarks/items/item-meaning.js';
import { knownOf } from '../../src/tally/remarks/items/known.js';
import { monthsBefore } from '../../src/tally/remarks/items/months.js';
import { fillLexicon } from '../../src/tally/remarks/words/fill-lexicon.js';
import { belongsTo, canBeSaidOf, isKindOf, thing } from '../../src/tally/remarks/words/taxonomy.js';
import { tokenize } from '../../src/tally/remarks/words/token.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom } from './house-from.js';

describe('the words of the tables', () => {
  it('each have something to look up', () => {
    let count = 0;
    fillLexicon((words) => {
      count++;
      expect([words, tokenize(words).filter(({ norm }) => norm !== '-').length]).not.toEqual([words, 0]);
    });
    expect(count).toBeGreaterThan(2000);
  });

  it('leave nothing of a text of signs that nobody sees', () => {
    expect(tokenize('\u200b \u00ad')).toEqual([]);
    expect(tokenize('\u200broof').map(({ norm }) => norm)).toEqual(['roof']);
  });
});

describe('what no table knows', () => {
  it('is no thing, belongs to itself alone and is of no kind', () => {
    expect(() => thing('moat')).toThrow('moat');
    // The use of a room, for which the tables have a thing of another name.
    expect(belongsTo('mechanical', 'mechanical')).toBe(true);
    expect(belongsTo('mechanical', 'bath')).toBe(false);
    expect(canBeSaidOf('no-such-group', 'roof')).toBe(false);
    expect(isKindOf('no-such-group', 'slate', 'stone')).toBe(false);
  });

  it('is answered by no fact', () => {
    const house = houseFrom({ systems: [{ id: 'w', is: 'water heater', kept: true }] });
    const known = knownOf(house, deriveTally(house, '2026-11-20').tally);
    expect(
      known.items.map((item) => [answerOf(known, item, 'old'), answerOf(known, item, 'bewitched')]),
    ).toEqual([['yes', 'unknown']]);
  });
});

describe('answers that are kept', () => {
  it('stay the same, however many others were asked for since', () => {
    const senses = sensesIn('slate roof');
    const months = monthsBefore('2026-11-20', '2019-06-15');
    expect(months).toBe(89);
    for (let n = 0; n < 4100; n++) {
      sensesIn(`slate roof of ${n}`);
      monthsBefore('2026-11-20', `${1000 + (n % 900)}-0${1 + (n % 9)}-${10 + (n % 19)}`);
    }
    expect(sensesIn('slate roof')).toEqual(senses);
    expect(senses.map(({ tag, id }) => `${tag} ${id}`)).toContain('thing roof');
    expect(monthsBefore('2026-11-20', '2019-06-15')).toBe(months);
  });
});
