import { describe, expect, it } from 'vitest';
import { nameKey } from '../../src/facts/name-key.js';

describe('nameKey', () => {
  it.each([
    ['Smith, Co', 'Smith Co'],
    ['Smith, Co.', 'SMITH  CO'],
    ['Smith-Co', 'smith co'],
    ['O’Brien', "O'BRIEN"],
    ['O’Brien', 'OBrien'],
    ['J.R. Hale', 'JR Hale'],
    ['Ａｌｄｅｒ Tile', 'Alder Tile'],
    ['Al\u00ADder Tile\u200B', 'Alder Tile'],
    ['Café', 'Cafe\u0301'],
    ['A-1 Plumbing', 'A 1 Plumbing'],
    ['***', ' *** '],
  ])('takes %j and %j for one', (one, other) => {
    expect(nameKey(one)).toBe(nameKey(other));
    expect(nameKey(one)).not.toBe('');
  });

  it.each([
    ['Smith', 'Smyth'],
    ['Unit 1 23', 'Unit 12 3'],
    ['Unit 1.5', 'Unit 15'],
    ['Some Body', 'Somebody'],
    ['Café', 'Cafe'],
    ['***', '---'],
    ['***', '???'],
    // Only the vowel signs differ, which are marks and no letters.
    ['की', 'के'],
    ['東', '西'],
    ['Иванов', 'Петров'],
  ])('takes %j and %j for two', (one, other) => {
    expect(nameKey(one)).not.toBe(nameKey(other));
  });

  it('is its own key, and empty only for a name of nothing', () => {
    for (const name of ['Smith, Co.', 'Unit 1 23', '***', 'İstanbul Tile', 'ﬁne & Co', '½ Price'])
      expect(nameKey(nameKey(name))).toBe(nameKey(name));
    expect(nameKey(' \u200B\t')).toBe('');
  });
});
