/** How long a listing text is, and where it could stop. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import { remarksLength, stopWithin } from '../../src/tally/remarks-length.js';

describe('a text’s length', () => {
  test.each([
    ['', 0, 0],
    ['  \n ', 0, 0],
    ['Three bedrooms.', 15, 2],
    ['  Three bedrooms.\n', 15, 2],
    ['one\ntwo', 7, 2],
    ['one\r\ntwo', 7, 2],
    ['one\rtwo', 7, 2],
    ['one\r\n\r\ntwo', 8, 2],
    ['a  b', 4, 2],
    ['🏡 home', 6, 2],
    ['12′ × 9′', 8, 3],
  ])('of %j is %i characters and %i words', (text, characters, words) => {
    expect(remarksLength(text)).toEqual({ characters, words });
  });
});

describe('where to stop', () => {
  const stopAt = (text: string, limit: number): string | undefined => {
    const stop = stopWithin(text, limit);
    if (stop === undefined) return undefined;
    const kept = text.slice(0, stop.to);
    expect(remarksLength(kept).characters).toBe(stop.characters);
    expect(stop.characters).toBeLessThanOrEqual(limit);
    return kept;
  };
  test('behind the last whole sentence that fits', () => {
    const text = 'One bath. Two doors! Three windows?';
    expect(stopAt(text, 35)).toBe(text);
    expect(stopAt(text, 34)).toBe('One bath. Two doors!');
    expect(stopAt(text, 20)).toBe('One bath. Two doors!');
    expect(stopAt(text, 19)).toBe('One bath.');
    expect(stopAt(text, 8)).toBeUndefined();
    expect(stopAt('', 8)).toBeUndefined();
  });
  test('not behind a shortened word, nor within a number', () => {
    expect(stopAt('It has 1,436 sq. ft. on St. Mark Street. And 2.5 baths.', 45)).toBe(
      'It has 1,436 sq. ft. on St. Mark Street.',
    );
    expect(stopAt('Room of 12.5 ft by 9. Yard.', 12)).toBeUndefined();
  });
  test('quotes belong to their sentence; a line break is one character', () => {
    expect(stopAt('He said “new.” Really.\r\nMore.', 16)).toBe('He said “new.”');
    expect(stopAt('One.\r\nTwo.\r\nThree.', 9)).toBe('One.\r\nTwo.');
    expect(stopAt('🏡. 🏡.', 2)).toBe('🏡.');
  });
});
