/** Tables of words that name each other’s entries: every name is there, none is there twice, and nothing shadows another. */
import { describe, expect, it } from 'vitest';
import { askedQuestions, isAskedBy, questionGroups, whatToType } from '../../src/tally/tables/questions.js';
import { remarkClasses, remarkThings, remarkWords } from '../../src/tally/tables/remarks.js';
import { resoTable } from '../../src/tally/tables/reso.js';
import { searchWords } from '../../src/tally/tables/search-words.js';
import { timeFrameOf } from '../../src/tally/tables/updates.js';

const twice = (names: readonly string[]): string[] => names.filter((name, at) => names.indexOf(name) !== at);
const missing = (names: readonly string[], from: readonly string[]): string[] =>
  names.filter((name) => !from.includes(name));

describe('the words of listing texts', () => {
  const things = remarkThings().map(({ id }) => id);
  const { groups, mixes } = remarkClasses();
  const members = Object.values(groups).flatMap((group) => Object.entries(group.members));

  it('name things that there are, each once', () => {
    expect(twice(things)).toEqual([]);
    expect(
      missing(
        remarkThings().flatMap(({ is }) => is),
        things,
      ),
    ).toEqual([]);
    expect(
      missing(
        Object.values(groups).flatMap((group) => group.of),
        things,
      ),
    ).toEqual([]);
    expect(
      missing(
        members.flatMap(([, { head }]) => head ?? []),
        things,
      ),
    ).toEqual([]);
  });

  it('name kinds of their own group, and pairs of kinds that there are', () => {
    for (const [id, group] of Object.entries(groups))
      for (const { is } of Object.values(group.members))
        expect(missing(is, Object.keys(group.members)), id).toEqual([]);
    expect(
      missing(
        mixes.flat(),
        members.map(([id]) => id),
      ),
    ).toEqual([]);
    expect(mixes.filter(([one, other]) => one === other)).toEqual([]);
  });

  it('leave out what is not so: a roof is no part of another thing, stands for no room and is no claim by itself', () => {
    const roof = remarkThings().find(({ id }) => id === 'roof');
    expect(roof).toEqual({ id: 'roof', label: 'roof', is: [], feature: false, words: expect.any(Array) });
    expect(groups['floor-covering']?.members.hickory).toEqual({
      words: ['hickory'],
      is: ['hardwood'],
      marked: false,
      head: 'floor',
    });
    expect(groups['floor-covering']?.members.wood?.is).toEqual([]);
  });

  it('hold each condition against a topic that there is, and no topic against none', () => {
    const { conditions, topics } = remarkWords();
    expect([...new Set(conditions.map(({ topic }) => topic))].sort()).toEqual(Object.keys(topics).sort());
    expect(twice(conditions.map(({ id }) => id))).toEqual([]);
    for (const pattern of Object.values(topics)) expect(() => new RegExp(pattern, 'iu')).not.toThrow();
  });
});

describe('the words of a search', () => {
  const { phrases, same, also, ignored, weak, turns } = searchWords();

  it('stand in one row each, and what says nothing is no other word', () => {
    expect(twice(same.flat())).toEqual([]);
    expect(twice(ignored)).toEqual([]);
    expect(twice(weak)).toEqual([]);
    expect(
      ignored.filter((word) => [...weak, ...same.flat(), ...Object.values(phrases)].includes(word)),
    ).toEqual([]);
    for (const [word, others] of Object.entries(also)) expect(others, word).not.toContain(word);
  });

  it('turn to questions that the table has', () => {
    const ids = askedQuestions().map(({ id }) => id);
    const meant = turns.flatMap(({ means }) => means ?? []);
    expect(meant.length).toBeGreaterThan(2);
    expect(missing(meant, ids)).toEqual([]);
  });
});

describe('the questions', () => {
  it('stand each under a heading that there is, and no heading is empty', () => {
    expect([...new Set(askedQuestions().map(({ group }) => group))].sort()).toEqual(
      Object.keys(questionGroups()).sort(),
    );
    expect(twice(askedQuestions().map(({ id }) => id))).toEqual([]);
  });

  it('are asked where all of their patterns are met, in any case', () => {
    const question = { owner: ['\\bcellar', '\\bdry\\b'] };
    expect(isAskedBy(question, 'Is the CELLAR dry?')).toBe(true);
    expect(isAskedBy(question, 'Is the cellar wet?')).toBe(false);
    expect(isAskedBy(question, 'Is the attic dry?')).toBe(false);
  });

  it('say what to type: their own line, else an answer', () => {
    expect(whatToType({ ask: 'Is it dry?', type: 'under house:  built: 1948' })).toBe(
      'under house:  built: 1948',
    );
    expect(whatToType({ ask: 'Is it dry?' })).toBe('under answers:  - { ask: "Is it dry?", answer: "…" }');
  });
});

// RESO Data Dictionary 2.0: a field of a list has a lookup, and its values are the lookup’s.
describe('the listing fields', () => {
  const { fields, lookups, words } = resoTable();
  const lookupOf = (name: string): string | undefined => {
    const field = fields[name];
    return field !== undefined && 'lookup' in field ? field.lookup : undefined;
  };

  it('name lookups that there are, and no lookup is there for none', () => {
    const named = Object.keys(fields).flatMap((name) => lookupOf(name) ?? []);
    expect([...new Set(named)].sort()).toEqual(Object.keys(lookups).sort());
    for (const [name, values] of Object.entries(lookups)) expect(twice(values), name).toEqual([]);
  });

  it('are settled by words to values of their own lookup', () => {
    for (const [name, rows] of Object.entries(words)) {
      const lookup = lookupOf(name);
      // `Source` settles the sources of figures, which are the values of several fields.
      if (name === 'Source') continue;
      const said = rows.flatMap(({ values, imitates = [] }) => [...values, ...imitates]);
      expect(missing(said, lookups[lookup ?? ''] ?? []), name).toEqual([]);
    }
  });

  it.each([
    ['YearBuilt', { type: 'number', decimals: 0, length: 4 }],
    ['PoolPrivateYN', { type: 'boolean' }],
    ['PublicRemarks', { type: 'text', length: 4000 }],
  ])('%s is as the standard has it', (name, field) => {
    expect(fields[name]).toEqual(field);
  });
});

it('work that ended after the day of a report has no time frame', () => {
  expect(timeFrameOf(-1)).toBeUndefined();
});
