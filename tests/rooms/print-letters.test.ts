/** Shaping: kerning, figures, ligatures, fallback, stand-ins. The faces are the ones that are embedded. */
import { describe, expect, it } from 'vitest';
import { loadFaces } from '../../src/print/faces.js';
import type { ShapedWord } from '../../src/print/letters.js';
import { lettersOf, normaliseText } from '../../src/print/letters.js';
import type { FaceName, Figures } from '../../src/print/type-styles.js';

const letters = lettersOf(loadFaces());
const FACES: readonly FaceName[] = [
  'serif',
  'serif-italic',
  'serif-semibold',
  'sans',
  'sans-italic',
  'sans-semibold',
];

const textOf = (word: ShapedWord): string =>
  word.parts.map((part) => part.glyphs.map((glyph) => glyph.text).join('')).join('');
const idsOf = (word: ShapedWord): number[] =>
  word.parts.flatMap((part) => part.glyphs.map((glyph) => glyph.id));

function range(from: number, to: number): string {
  return String.fromCodePoint(...Array.from({ length: to - from + 1 }, (_, i) => from + i));
}

/** Latin letters of Europe's languages, and the signs that packets use. */
const EUROPEAN = `${range(0x21, 0x7e)}${range(0xa1, 0xac)}${range(0xae, 0x148)}${range(0x14a, 0x17e)}ȘșȚțẞẀẁẂẃẄẅỲỳǪǫ`;
const SIGNS = '½⅓⅔¼¾′″×–—≥≤✓“”‘’‚„…²³·→€№°±µ';

describe('characters', () => {
  it.each(FACES)('%s has, itself or through the sans, all European letters and the signs in use', (face) => {
    const lacking = [...EUROPEAN, ...SIGNS].filter((character) => {
      const word = letters.shape(face, 'lining', character);
      return word.missing.length > 0 || idsOf(word).includes(0) || textOf(word) !== character;
    });
    expect(lacking).toEqual([]);
  });

  it('that no face has are drawn as the stand-in and keep their meaning', () => {
    const word = letters.shape('serif', 'lining', 'a漢b⚠');
    expect(word.missing).toEqual(['漢', '⚠']);
    expect(textOf(word)).toBe('a漢b⚠');
    const box = idsOf(letters.shape('sans', 'lining', '□'))[0];
    expect(idsOf(word).filter((id) => id === box)).toHaveLength(2);
    expect(idsOf(word)).not.toContain(0);
  });
});

describe('spelling', () => {
  it.each([
    ['composed accents', 'Zu\u0308rich', 'Zürich'],
    ['no soft hyphen', 'water\u00ADproof', 'waterproof'],
    ['no joiners or variation signs', '✓\uFE0F\u200B', '✓'],
    ['one hyphen', 'well\u2010known', 'well-known'],
    ['a no-break blank waits for the line breaker', '7\u202Fft', '7\u00A0ft'],
    ['controls are blanks', 'a\tb\nc', 'a b c'],
  ])('%s', (_, from, into) => {
    expect(normaliseText(from)).toBe(into);
  });
});

describe('shaping', () => {
  const natural = (word: ShapedWord): number =>
    word.parts.reduce((sum, part) => part.glyphs.reduce((s, glyph) => s + glyph.width, sum), 0);

  it('kerns', () => {
    const word = letters.shape('serif', 'lining', 'Tovar');
    expect(word.width).toBeLessThan(natural(word));
  });

  it('has figures of one width in tables and of several in text', () => {
    const widths = (figures: Figures): Set<number> =>
      new Set([...'0123456789'].map((digit) => letters.shape('serif', figures, digit).width));
    expect(widths('tabular').size).toBe(1);
    expect(widths('old-style').size).toBeGreaterThan(1);
  });

  it('does not kern tabular figures out of their columns', () => {
    for (const face of ['sans', 'sans-semibold'] as const) {
      expect(letters.shape(face, 'tabular', '1710').width).toBeCloseTo(
        4 * letters.shape(face, 'tabular', '0').width,
        6,
      );
    }
  });

  it('draws ligatures that still stand for their letters', () => {
    const word = letters.shape('serif', 'lining', 'finish');
    expect(idsOf(word).length).toBeLessThan('finish'.length);
    expect(textOf(word)).toBe('finish');
  });
});
