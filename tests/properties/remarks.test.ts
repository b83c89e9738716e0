/** What holds of checking a draft, whatever is written in it. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { House } from '../../src/facts/house.js';
import { markedText } from '../../src/marked-text.js';
import { graphemesOf } from '../../src/packet/graphemes.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { LABELLED_AS_OF, labelledHouses } from '../remarks/corpus.js';
import { demoOrder } from '../rooms/ask-house.js';
import { leastThoughtMs } from '../tools/least-ms.js';

let house: House;
let tally: Tally;
beforeAll(async () => {
  ({ house } = await demoOrder('quarry-road'));
  ({ tally } = deriveTally(house, LABELLED_AS_OF));
});

const texts = labelledHouses(new URL('../../', import.meta.url), 'seen')
  .flatMap(({ remarks }) => remarks)
  .map(({ text }) => text);

/** Words of real drafts, torn out of their order, with signs that break things. */
const ODD = [
  ...[
    '\u200b',
    '\u00ad',
    '\u202e',
    '\u0301',
    '\ufeff',
    '👨‍👩‍👧',
    '½',
    '’',
    '“',
    '…',
    '—',
    '\r\n',
    '\t',
    '(',
    '/',
    '~',
  ],
  ...['$1.5', '1/2', '3+2', '0', '99999999999999999999', '12\'6"', '.', '-', 'ﬁ', 'İ', 'ß', '家族'],
];
const word = fc.oneof(
  fc.constantFrom(...texts.flatMap((text) => text.split(/\s+/))),
  fc.constantFrom(...ODD),
  fc.string({ unit: 'grapheme', maxLength: 6 }),
);
const jumbled = fc
  .array(fc.tuple(word, fc.constantFrom(' ', ' ', ' ', '', '\n', ', ')), { maxLength: 60 })
  .map((pairs) => pairs.map((pair) => pair.join('')).join(''));
/** A real draft with a stretch cut out and put in elsewhere. */
const mutated = fc
  .tuple(fc.constantFrom(...texts), fc.nat(), fc.nat(40), fc.nat(), word)
  .map(([text, cut, long, into, put]) => {
    const at = cut % text.length;
    const rest = text.slice(0, at) + text.slice(at + long);
    const to = into % (rest.length + 1);
    return rest.slice(0, to) + put + text.slice(at, at + long) + rest.slice(to);
  });
const draft = fc.oneof(jumbled, mutated, fc.string({ unit: 'binary', maxLength: 200 }));

let claims = 0;

describe('checking a draft', () => {
  it('never throws; spans lie in the text, say its words, split no character pair, and stand in order', () => {
    fc.assert(
      fc.property(draft, (text) => {
        const found = checkRemarks(text, house, tally);
        let at = 0;
        for (const { from, to, says, because, rule } of found) {
          expect(from).toBeGreaterThanOrEqual(at);
          expect(to).toBeGreaterThan(from);
          expect(to).toBeLessThanOrEqual(text.length);
          expect(says).toBe(text.slice(from, to));
          expect(isBorder(text, from) && isBorder(text, to)).toBe(true);
          expect(because).not.toMatch(/undefined|NaN|\[object/);
          expect(rule).toMatch(/^[a-z]/);
          at = from;
        }
        claims += found.length;
      }),
      { seed: 6601, numRuns: 400 },
    );
    // Drafts without a claim would pass all of this.
    expect(claims).toBeGreaterThan(400);
  });

  it('says the same twice', () => {
    fc.assert(
      fc.property(draft, (text) => {
        expect(checkRemarks(text, house, tally)).toEqual(checkRemarks(text, house, tally));
      }),
      { seed: 6602, numRuns: 60 },
    );
  });

  it('marks below exactly the characters, in as many columns as they take', () => {
    fc.assert(
      fc.property(draft, fc.integer({ min: 20, max: 100 }), (text, width) => {
        const found = checkRemarks(text, house, tally);
        const lines = markedText(
          text,
          found.map(({ from, to }, index) => ({ from, to, sign: '^', number: index + 1 })),
          width,
        );
        const numbers = lines.flatMap(({ kind, text: line }) =>
          kind === 'numbers' ? line.split(/\s+/).filter(Boolean).map(Number) : [],
        );
        expect([...new Set(numbers)].sort((a, b) => a - b)).toEqual(found.map((_, index) => index + 1));
        // biome-ignore lint/suspicious/noControlCharactersInRegex: none may reach a terminal.
        for (const line of lines) expect(line.text).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e]/);
      }),
      { seed: 6603, numRuns: 120 },
    );
  });
});

/** Not between the halves of a character beyond the first plane. */
const isBorder = (text: string, at: number): boolean =>
  !(/[\ud800-\udbff]/.test(text[at - 1] ?? '') && /[\udc00-\udfff]/.test(text[at] ?? ''));

describe('how long it takes', () => {
  const ms = (text: string, enough: number): Promise<number> =>
    leastThoughtMs(() => checkRemarks(text, house, tally), enough);
  const grown = (length: number): string =>
    texts
      .join('\n')
      .repeat(Math.ceil(length / texts.join('\n').length))
      .slice(0, length);

  it('is under a second for 20,000 characters', async () => {
    expect(await ms(grown(20_000), 1000)).toBeLessThan(1000);
  });

  it.each([
    'new ',
    'a/',
    'no ',
    '1 ',
    'and ',
    '(',
    '"',
    'new roof and ',
    'bed ',
    '3 bed ',
    'all ',
    '$',
    'granite ',
    "12' x ",
    'not ',
    ', ',
    'a',
    '\u200b',
  ])('grows with the text alone: %j', async (piece) => {
    const of = (length: number): string => piece.repeat(Math.ceil(length / piece.length));
    await ms(of(400), 0);
    let before = 60;
    // Step by step, so that what grows too fast fails before it takes minutes.
    for (const length of [800, 3_200, 12_800, 25_600]) {
      // Four times the text; squares would take sixteen times as long.
      const most = Math.max(400, before * 11);
      before = await ms(of(length), most);
      expect(before, `${length} characters`).toBeLessThan(most);
    }
  });
});

it('counts characters as readers do, which the marks rest on', () => {
  expect(graphemesOf('e\u0301👨‍👩‍👧')).toHaveLength(2);
});
