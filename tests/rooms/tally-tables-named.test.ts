/** Tables of ours that name their own entries: what a slip in one says, and what their phrases and lives say of themselves. */
import { describe, expect, test } from 'vitest';
import { advertisingRule, checkAdvertising } from '../../src/tally/advertising.js';
import { findPhrases, plantPhrases } from '../../src/tally/advertising-patterns.js';
import { wordsInAdvertisement } from '../../src/tally/advertising-words.js';
import { findComponent, indexNames, livesOf } from '../../src/tally/published-lives.js';
import { entryOf } from '../../src/tally/read-table.js';
import { advertisingTable } from '../../src/tally/tables/advertising.js';

test('an entry that is named and not there is our mistake, and said with both names', () => {
  expect(entryOf({ one: 1 }, 'one', 'lives')).toBe(1);
  expect(() => entryOf({ one: 1 }, 'two', 'lives')).toThrow('tables/lives.yaml names “two”, which it lacks');
  // A name that every object has is no entry.
  expect(() => entryOf({}, 'constructor', 'lives')).toThrow('which it lacks');
});

describe('patterns of phrases', () => {
  const found = (pattern: string, text: string): [number, number][] =>
    findPhrases(
      plantPhrases({ shade: ['red', 'dark blue'] }, [{ row: 0, patterns: [pattern] }]),
      wordsInAdvertisement(text),
    ).map(({ first, last }) => [first, last]);

  test('stand up to the last word of a text and not beyond it', () => {
    expect(found('{shade} doors', 'red doors')).toEqual([[0, 1]]);
    expect(found('{shade} doors', 'dark blue doors')).toEqual([[0, 2]]);
    expect(found('{shade} doors', 'doors in red')).toEqual([]);
    expect(found('{shade} doors', '')).toEqual([]);
  });

  test('with a group that is not there, or without any word, can’t be planted', () => {
    expect(() => found('{shades} doors', 'red doors')).toThrow('tables/advertising.yaml names “shades”');
    expect(() => found('%% doors', 'red doors')).toThrow(
      '“%%” in the table of advertising words has no word',
    );
  });
});

test('a colour that is tied to the word before it is no word about people', () => {
  const levels = (text: string): string[] => checkAdvertising(text).map(({ level }) => level);
  expect(levels('A coloured house.')).toEqual(['block']);
  expect(levels('A pumpkin coloured house.')).toEqual(['block']);
  expect(levels('A pumpkin-coloured house.')).toEqual([]);
});

test('a rule says how it was read, and a phrase how itself was', () => {
  expect(advertisingRule('F06').status).toBe('from memory');
  expect(advertisingRule('F05').status).toMatch(/^read in a reprinted page .*[^.]$/);
  expect(advertisingRule('F05', 'house rule').status).toBe('house rule');
});

test('a phrase of which the table names no exception has none', () => {
  const phrase = advertisingTable().phrases.find(({ say }) => say.includes('master bedroom'));
  expect(phrase).toMatchObject({ 'unless-before': [], 'unless-after': [], 'unless-joined': false });
});

test('each finding says what to say in place of it', () => {
  const [one] = checkAdvertising('no kids');
  expect(one).toMatchObject({ words: 'no kids', because: expect.any(String), instead: expect.any(String) });
});

describe('published lives', () => {
  test('two components with one name are refused, in whatever order its words stand', () => {
    const names = (alias: string) =>
      indexNames({
        a: { name: 'water heater, gas', aliases: [alias] },
        b: { name: 'furnace', aliases: [] },
      });
    expect(names('heater for water').get('for heater water')?.id).toBe('a');
    expect(() => names('Furnace')).toThrow('tables/lives.yaml gives "furnace" to both a and b');
  });

  test('a component that no table has is our mistake', () => {
    expect(findComponent('no such thing')).toBeUndefined();
    expect(() => livesOf({ id: 'no-such-thing' })).toThrow('no-such-thing');
  });
});
