/** However a text is made, looking for words about people takes no time worth waiting for. In a process of its own: it counts milliseconds. */
import { describe, expect, test } from 'vitest';
import { checkAdvertising } from '../../src/tally/advertising.js';
import { leastMs } from '../tools/least-ms.js';

/** A core that is shared with another program does half as much. */
const MOST_MS = 20;

describe('20,000 hostile characters take less than 20 ms', () => {
  const of = (piece: string): string => piece.repeat(Math.ceil(20_000 / piece.length)).slice(0, 20_000);
  test.each([
    ['no no no', 'no '],
    ['near the near the', 'near the '],
    ['perfect for a', 'perfect for a '],
    ['safe, safe,', 'safe, '],
    ['findings only', 'no kids '],
    ['catchwords', 'private '],
    ['overlaps', 'white private family home adult '],
    ['one long word', 'a'],
    ['invisible', '\u200b'],
    ['accents', 'e\u0301\u0302\u0303'],
    ['turned round', '\u202eab '],
    ['no letters', '-'],
    ['blanks', ' '],
  ])('%s', async (_what, piece) => {
    const text = of(piece);
    checkAdvertising(text);
    expect(await leastMs(() => checkAdvertising(text), MOST_MS, 25)).toBeLessThan(MOST_MS);
  });
});
