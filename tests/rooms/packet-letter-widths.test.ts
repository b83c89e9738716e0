/** The packet's own table of letters, against the faces that print draws them with; and how lettering is broken and cut. */
import { describe, expect, it } from 'vitest';
import { CHARACTERS } from '../../src/packet/face-widths.js';
import { breakAnyhow, LETTER_SIZES, letteringWidth, lineBreaker } from '../../src/packet/letter-widths.js';
import type { LetterStyle } from '../../src/packet/packet.js';
import { shortly } from '../../src/packet/shortly.js';
import { LETTER_STYLES } from '../../src/print/drawing-styles.js';
import { loadFaces } from '../../src/print/faces.js';
import { printedWidth } from './drawn-boxes.js';

const STYLES = Object.keys(LETTER_SIZES) as LetterStyle[];
const LAST_CODE_POINT = 0x10ffff;

describe('the packet’s table of letters', () => {
  const faces = loadFaces();

  it.each(STYLES)('is exact for every character of the face of %s, and has no other', (style) => {
    const face = faces[LETTER_STYLES[style].face];
    const wrong: string[] = [];
    let characters = 0;
    for (let codePoint = 0; codePoint <= LAST_CODE_POINT; codePoint++) {
      if (!face.has(codePoint)) continue;
      characters++;
      const text = String.fromCodePoint(codePoint);
      if (Math.abs(letteringWidth(text, style) - printedWidth(text, style)) > 1e-9)
        wrong.push(`U+${codePoint.toString(16)}`);
    }
    expect(wrong).toEqual([]);
    const listed = CHARACTERS.trim()
      .split(/\s+/)
      .map((one) => one.split('-').map((n) => Number.parseInt(n, 16)));
    expect(listed.reduce((sum, [from = 0, to = from]) => sum + to - from + 1, 0)).toBe(characters);
    expect(characters).toBeGreaterThan(1500);
  });

  it('knows the widths that were once wrong: italics, signs, Czech, Polish, Cyrillic', () => {
    const units = (text: string, style: LetterStyle) =>
      Math.round((letteringWidth(text, style) * 1000) / LETTER_SIZES[style]);
    // Advances in the font files, Source Sans 3.052.
    expect([units('a', 'unknown'), units('g', 'unknown'), units('a', 'tick')]).toEqual([537, 531, 504]);
    expect(units('č', 'small')).toBe(456);
    for (const text of ['Dětský pokoj', 'Łazienka główna', 'Прихожая', '«_»'])
      expect(letteringWidth(text, 'small')).toBeLessThan(printedWidth(text, 'small') * 1.03);
  });

  it('says no less than print’s typeface, but for the few pairs that kerning draws apart, and little more', () => {
    const texts = [
      'Living room',
      'Closet of bedroom 1',
      '11′ 6″ × 12′ 0″ at its widest',
      'Refinished: floor, walls & “Wändé” (½), 100 % – done…',
      'AVATAR @ Wool, fjord; jazzy quick VEXED $#!?',
      'past date, none',
    ];
    for (const text of texts)
      for (const style of STYLES) {
        expect(letteringWidth(text, style)).toBeGreaterThanOrEqual(printedWidth(text, style) - 0.3);
        expect(letteringWidth(text, style)).toBeLessThan(printedWidth(text, style) * 1.06);
      }
  });

  it('is passed by kerning at most by a tenth of the type size, whatever two characters stand side by side', () => {
    const shown = Array.from({ length: 0x17f }, (_, codePoint) => codePoint).filter(
      (codePoint) => codePoint >= 0x20 && faces.sans.has(codePoint),
    );
    for (const style of ['tick', 'unknown'] as const) {
      let apart = 0;
      for (const a of shown)
        for (const b of shown) {
          const pair = String.fromCodePoint(a, b);
          apart = Math.max(apart, printedWidth(pair, style) - letteringWidth(pair, style));
        }
      expect(apart / LETTER_SIZES[style]).toBeLessThanOrEqual(0.1 + 1e-9);
      expect(apart).toBeGreaterThan(0);
    }
  });
});

describe('lines of lettering', () => {
  it('are broken at blanks, and inside a word only where they must', () => {
    expect(lineBreaker('one two three', 'tick')(30)?.lines).toEqual(['one two', 'three']);
    expect(lineBreaker('incomprehensible', 'tick')(20)).toBeUndefined();
    const lines = breakAnyhow('an incomprehensible word', 'tick', 20);
    expect(lines.join('').replaceAll(' ', '')).toBe('anincomprehensibleword');
    expect(lines.every((line) => letteringWidth(line, 'tick') <= 20)).toBe(true);
  });

  it('are as wide as the widest of them', () => {
    const broken = lineBreaker('one two\nthree\t four', 'small')(30);
    expect(broken?.lines).toEqual(['one two', 'three', 'four']);
    expect(broken?.width).toBe(letteringWidth('one two', 'small'));
    expect(lineBreaker('', 'small')(30)).toEqual({ lines: [], width: 0 });
  });

  it('never part a letter from its accents', () => {
    const written = 'e\u0301'.repeat(12);
    const lines = breakAnyhow(written, 'tick', 12);
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(line).toMatch(/^(e\u0301)+$/);
  });
});

describe('a long name', () => {
  it('is cut at a blank, without a comma left hanging', () => {
    const words = 'Floor boards lifted, turned, planed and sanded, the worst of them let in, and oiled twice';
    expect(shortly(words)).toBe('Floor boards lifted, turned, planed and sanded, the worst of them let …');
    expect(shortly(words.replace('let in', 'anew'))).toBe(
      'Floor boards lifted, turned, planed and sanded, the worst of them …',
    );
    expect(shortly('Living room')).toBe('Living room');
  });

  it('without a blank is cut after seventy characters, and one of seventy is not', () => {
    expect(shortly('w'.repeat(71))).toBe(`${'w'.repeat(70)} …`);
    expect(shortly('w'.repeat(70))).toBe('w'.repeat(70));
    // A blank near the beginning would leave next to nothing.
    expect(shortly(`a ${'w'.repeat(80)}`)).toBe(`a ${'w'.repeat(68)} …`);
  });

  it('is counted and cut by what a reader sees: emoji, families of them, letters with accents', () => {
    expect(shortly('🏠'.repeat(60))).toBe('🏠'.repeat(60));
    expect(shortly('🏠'.repeat(80))).toBe(`${'🏠'.repeat(70)} …`);
    const family = '👩\u200d👧';
    expect(shortly(family.repeat(80))).toBe(`${family.repeat(70)} …`);
    expect(shortly('e\u0301'.repeat(71))).toBe(`${'e\u0301'.repeat(70)} …`);
  });
});
