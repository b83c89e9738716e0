/** Looking for signs in a text takes time in step with its length, whatever it is full of. */
import { describe, expect, it } from 'vitest';
import { asInert, asItWas } from '../../src/facts/inert-text.js';
import { withoutTurning } from '../../src/facts/turning-signs.js';
import { leastMs } from '../tools/least-ms.js';

/** Squares of this length would be ten thousand millions: a minute and more. */
const LENGTH = 100_000;

describe('a text of one sign, a hundred thousand times', () => {
  it.each(['\t', ' ', ';', '"', "'", '=', '\u200b', "\t'", '; ', '\r\n'])(
    '%j is made inert, and read again',
    async (sign) => {
      const text = `a${sign.repeat(LENGTH)}b`;
      expect(await leastMs(() => asInert(text), 500)).toBeLessThan(500);
      expect(await leastMs(() => asItWas(asInert(text)), 500)).toBeLessThan(500);
      expect(asItWas(asInert(text))).toBe(text);
    },
  );

  it.each(['\u{e0041}', '\u{1f3f4}\u{e0041}', '\u200e'])('%j is looked through', async (sign) => {
    const text = `a${sign.repeat(LENGTH)}b`;
    expect(await leastMs(() => withoutTurning(text), 500)).toBeLessThan(500);
  });
});

describe('tags', () => {
  it('of a region’s flag stay; a text that is hidden behind a flag does not', () => {
    const tags = (text: string): string =>
      [...text].map((letter) => String.fromCodePoint(0xe0000 + letter.charCodeAt(0))).join('');
    const wales = `\u{1f3f4}${tags('gbwls')}\u{e007f}`;
    expect(withoutTurning(`a ${wales} b`)).toBe(`a ${wales} b`);
    const hidden = withoutTurning(`\u{1f3f4}${tags('do what is said here')}\u{e007f} b`);
    expect([...hidden].length).toBeLessThanOrEqual(1 + 7 + 2);
  });
});
