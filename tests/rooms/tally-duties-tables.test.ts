/** The tables of duties: their shape, and that a broken one is refused with the reason. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { parseTable } from '../../src/tally/read-table.js';
import {
  type Condition,
  DUTY_FACTS,
  type DutyPack,
  dutyPackShape,
  federalDuties,
  type Question,
  stateDuties,
} from '../../src/tally/tables/duties.js';
import { leadAsbestosRules } from '../../src/tally/tables/lead-asbestos.js';
import { houseFrom } from './house-from.js';

const FILES = readdirSync(new URL('../../src/tally/tables/duties/', import.meta.url)).sort();
const STATES = FILES.flatMap((file) => /^us-(..)\.yaml$/.exec(file)?.[1]?.toUpperCase() ?? []);

const packs = (): DutyPack[] => [federalDuties(), ...STATES.flatMap((state) => stateDuties(state) ?? [])];

function questions(condition: Condition): Question[] {
  if ('always' in condition) return [];
  if ('all' in condition) return condition.all.flatMap(questions);
  if ('any' in condition) return condition.any.flatMap(questions);
  return [condition];
}

describe('the tables', () => {
  test('are one for the federal rules and one a state, and every file is read', () => {
    expect(FILES.length).toBe(STATES.length + 1);
    expect(STATES).toEqual(expect.arrayContaining(['AZ', 'CA', 'FL', 'NC', 'NY', 'OH', 'TX']));
    expect(packs().map(({ of }) => of)).toEqual(['US', ...STATES]);
    expect(stateDuties('CO')).toBeUndefined();
  });

  test('say of every rule where it is from, how closely it was read and when', () => {
    for (const { rules } of packs())
      for (const rule of rules) {
        expect(rule.source.title.length, rule.id).toBeGreaterThan(3);
        expect(['publisher', 'quoted', 'paraphrased', 'from memory'], rule.id).toContain(rule.read);
        // A day there is, and none before the tables were begun.
        expect(new Date(rule.on).toISOString().slice(0, 10), rule.id).toBe(rule.on);
        expect(rule.on >= '2026-11-25', rule.id).toBe(true);
        // What is told to the buyer has a moment; what is read from memory says so where it says how.
        if (rule.kind === 'tell') expect(rule.due, rule.id).toBeDefined();
        if (rule.read === 'from memory') expect(rule.how, rule.id).toMatch(/^From memory/);
      }
  });

  test('call the publisher’s own text only what was read there, and no copy or brief of it', () => {
    const duties = packs().flatMap(({ rules }) =>
      rules.flatMap(({ id, read, how, notice }) => [
        { id, read, how },
        ...(notice ? [{ ...notice, id }] : []),
      ]),
    );
    const lead = Object.entries(leadAsbestosRules()).map(([id, { read, how }]) => ({ id, read, how }));
    const own = [...duties, ...lead].filter(({ read }) => read === 'publisher');
    expect(own.length).toBeGreaterThan(1);
    for (const { id, how } of own) expect(how, id).not.toMatch(/\b(cop(y|ies)|briefs?|reprints?|memory)\b/i);
  });

  test('ask only for facts that the reader has, and every such fact is read from a house', () => {
    const named = new Set(
      packs().flatMap(({ rules }) => rules.flatMap(({ when }) => questions(when).map(({ fact }) => fact))),
    );
    const facts = readDutyFacts(houseFrom(), '2026-11-20');
    for (const fact of named)
      expect(facts[fact], fact).toMatchObject({ asks: expect.any(String), hint: expect.any(String) });
    expect(Object.keys(facts).sort()).toEqual([...DUTY_FACTS].sort());
  });

  test('ask of a dated reading what it names, and nothing where it names nothing', () => {
    const york = stateDuties('NY')?.rules.flatMap(({ versions }) => versions ?? []);
    expect(york?.map(({ from, to, asks }) => [from, to, asks])).toEqual([
      [undefined, '2024-03-19', []],
      ['2024-03-20', undefined, ['flood history and flood insurance']],
    ]);
  });

  test('have dated versions that neither overlap nor leave a day between them', () => {
    const dated = packs().flatMap(({ rules }) =>
      rules.flatMap(({ versions }) => (versions === undefined ? [] : [versions])),
    );
    expect(dated.length).toBeGreaterThan(1);
    for (const versions of dated)
      for (const [index, { from }] of versions.entries()) {
        const before = versions[index - 1];
        if (before === undefined) continue;
        expect(from).toBe(new Date(Date.parse(before.to ?? '') + 86_400_000).toISOString().slice(0, 10));
      }
  });
});

const RULE = `
of: ZZ
name: Nowhere
rules:
  - id: zz-rule
    title: A rule
    kind: tell
    asked: the seller
    rule: Do a thing.
    when: WHEN
    source: { title: A law, section: one, edition: undated, publisher: Nobody }
    read: from memory
    how: From memory.
    on: 2026-11-25
`;
const parsed = (when: string, change: (text: string) => string = (text) => text): DutyPack =>
  parseTable('zz.yaml', change(RULE.replace('WHEN', when)), dutyPackShape);

describe('a table', () => {
  test('with good words is read', () => {
    expect(
      parsed('{ all: [{ fact: units, op: lte, value: 4 }, { any: [{ fact: pool, op: eq, value: yes }] }] }')
        .rules,
    ).toHaveLength(1);
    expect(parsed('{ fact: contract, op: gte, value: 2024-10-01 }').of).toBe('ZZ');
    for (const when of [
      { fact: 'state', op: 'in', value: ['FL', 'OH'] },
      { fact: 'units', op: 'in', value: [1, 2] },
      { always: true },
      { any: [{ all: [{ always: true }, { fact: 'units', op: 'lt', value: 2 }] }, { always: true }] },
    ])
      expect(parsed(JSON.stringify(when)).rules.map((rule) => rule.when)).toEqual([when]);
  });

  test('with several rules is read in their order', () => {
    const other = (text: string): string =>
      text.slice(text.indexOf('  - id:')).replace('zz-rule', 'zz-other');
    expect(parsed('{ always: true }', (text) => text + other(text)).rules.map(({ id }) => id)).toEqual([
      'zz-rule',
      'zz-other',
    ]);
  });

  test('with a day that hangs on the closing says how many days, and no other does', () => {
    const due = (words: string) => () =>
      parsed('{ always: true }', (text) => text.replace('asked:', `due: ${words}\n    asked:`)).rules[0]?.due;
    expect(due('{ by: days-before-closing, days: 7, words: in time }')()).toEqual({
      by: 'days-before-closing',
      days: 7,
      words: 'in time',
    });
    expect(due('{ by: at-contract, words: in time }')()).toEqual({ by: 'at-contract', words: 'in time' });
    for (const words of [
      '{ by: days-before-closing, words: in time }',
      '{ by: at-contract, days: 7, words: in time }',
    ])
      expect(due(words), words).toThrow(/at rules\[0\]\.due/);
  });

  test.each([
    ['an unknown fact', '{ fact: unit, op: lte, value: 4 }'],
    ['an unknown op', '{ fact: units, op: max, value: 4 }'],
    ...['lt', 'lte', 'gt', 'gte'].map((op) => [
      `an order between words, ${op}`,
      `{ fact: pool, op: ${op}, value: yes }`,
    ]),
    ['a list without in', '{ fact: state, op: eq, value: [FL, OH] }'],
    ['in without a list', '{ fact: state, op: in, value: FL }'],
    ['in and an empty list', '{ fact: state, op: in, value: [] }'],
    ['an empty all', '{ all: [] }'],
    ['an empty any', '{ any: [] }'],
    ['always that is not so', '{ always: false }'],
    ['a second word beside always', '{ always: true, all: [] }'],
    ['an unknown that does not apply', '{ fact: units, op: lte, value: 4, unknown-as: does-not }'],
  ])('with %s is refused', (_what, when) => {
    expect(() => parsed(when)).toThrow(/zz\.yaml does not have its shape/);
  });

  test.each([
    ['an unknown word', (text: string) => text.replace('asked:', 'of-whom: x\n    asked:'), /of-whom/],
    ['an id of another state', (text: string) => text.replace('id: zz-', 'id: fl-'), /two letters/],
    [
      'an id of another state beside a good one',
      (text: string) => text + text.slice(text.indexOf('  - id:')).replace('id: zz-', 'id: fl-'),
      /every id begins with the pack’s two letters/,
    ],
    ['an id twice', (text: string) => text + text.slice(text.indexOf('  - id:')), /an id is given twice/],
    ['an id with a capital', (text: string) => text.replace('id: zz-', 'id: Zz-'), /at rules\[0\]\.id/],
    ['an id of three letters', (text: string) => text.replace('id: zz-', 'id: zzz-'), /at rules\[0\]\.id/],
    [
      'an id with a blank',
      (text: string) => text.replace('id: zz-rule', 'id: zz-rule two'),
      /at rules\[0\]\.id/,
    ],
    ['a state of three letters', (text: string) => text.replace('of: ZZ', 'of: ZZZ'), /at of/],
    ['a state in small letters first', (text: string) => text.replace('of: ZZ', 'of: zZZ'), /at of/],
    ['no source', (text: string) => text.replace(/ {4}source: .*\n/, ''), /source/],
    ['no day', (text: string) => text.replace(/ {4}on: .*\n/, ''), /on/],
  ])('with %s is refused', (_what, change, reason) => {
    expect(() => parsed('{ always: true }', change)).toThrow(reason);
  });
});
