/** Blanks that never end a line. The habits are common practice of typesetting; no source is followed word for word. */
import { describe, expect, it } from 'vitest';
import type { Packet } from '../../src/packet/packet.js';
import { bound } from '../../src/print/bindings.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import { breakWholeParagraph } from '../../src/print/lines.js';
import { setText } from '../../src/print/set-text.js';
import { styleSheet } from '../../src/print/type-styles.js';

const setter = {
  letters: sharedLetters(loadFaces),
  breakLines: breakWholeParagraph,
  hasTarget: () => true,
  reportMissing: () => {},
};

function linesOf(text: Packet['sections'][number]['title'], measurePt: number): string[] {
  const rich = text.split('|').map((part, i) => (i % 2 === 0 ? { text: part } : { text: part, to: 'x' }));
  return setText(setter, rich, styleSheet(false).mark, measurePt).map((line) => line.text);
}

describe('bound blanks', () => {
  it.each([
    ['17', 'February'],
    ['February', '2026,'],
    ['5', 'ft'],
    ['ft', 'line'],
    ['1,436', 'sq'],
    ['sq', 'ft'],
    ['9', 'months;'],
    ['page', '7'],
    ['Bedroom', '2.'],
    ['bath', '1,'],
    ['13′', '9″'],
    ['9″', '×'],
    ['×', '17′'],
    ['10', '%'],
    ['permit', 'PL-26-0182'],
    ['receipt', '·'],
  ])('%s %s', (before, after) => {
    expect(bound(before, after)).toBe(true);
  });

  it.each([
    ['on', '17'],
    ['2026', 'by'],
    ['May', 'be'],
    ['32', 'February'],
    ['kitchen', 'and'],
    ['7', 'kitchens'],
    ['bath', '1994-5'],
    ['wall', '2'],
    ['page', 'of'],
  ])('not %s %s', (before, after) => {
    expect(bound(before, after)).toBe(false);
  });
});

describe('lines', () => {
  const text =
    'Documented · |report, 6 March 2026|, receipt, 27 March 2026, photo, |17 February 2026|, 12 sq ft';

  it('never part a date or a number from its unit, at any measure that holds them', () => {
    let broken = 0;
    for (let measure = 64; measure < 400; measure += 1) {
      const lines = linesOf(text, measure);
      if (lines.length > 1) broken++;
      expect(lines.filter((line) => /(?:\b\d{1,2}|March|February|12|sq) ?$/.test(line.trimEnd()))).toEqual(
        [],
      );
    }
    expect(broken).toBeGreaterThan(200);
  });

  it('keep ordinary blanks, and every word', () => {
    for (const measure of [64, 90, 117, 200]) {
      expect(linesOf(text, measure).join('')).toBe(text.replaceAll('|', ''));
    }
  });

  it('part a bound blank before a word, where the measure is narrower than the date', () => {
    const lines = linesOf('17 February 2026', 40);
    expect(lines).toEqual(['17 February ', '2026']);
  });
});
