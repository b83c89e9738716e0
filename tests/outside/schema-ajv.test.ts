/**
 * Independent check: Ajv 8 (MIT) with JSON Schema 2020-12 takes the demo houses' files and refuses the shapes that
 * the program refuses. Where the two differ is listed below, one case a difference: editors complete and check by
 * the schema, and the program has the last word.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { checkHouse } from '../../src/facts/check-house.js';
import { fileJsonSchema, houseJsonSchema } from '../../src/facts/json-schema.js';
import { readYaml } from '../../src/intake/yaml.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

const ajv = new Ajv2020({ strict: true, allErrors: true, strictTypes: false, strictTuples: false });
// What the schema says for people and for the field table.
ajv.addVocabulary(['kind', 'example', 'fact']);
const ofFile = ajv.compile({ ...fileJsonSchema(), $id: 'urn:test:file' });
const ofHouse = ajv.compile({ ...houseJsonSchema(), $id: 'urn:test:house' });

const yamlFiles = ['content', 'tests/houses'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.ya?ml$/u.test(file))
    .map((file) => path.posix.join(folder, file.split(path.sep).join('/'))),
);

const dataOf = (file: string): Record<string, unknown> =>
  readYaml(readFileSync(path.join(root, file), 'utf8'), file).data as Record<string, unknown>;

describe('the schema', () => {
  it('takes every file of the demo and golden houses', () => {
    expect(yamlFiles.length).toBeGreaterThanOrEqual(5);
    for (const file of yamlFiles) {
      ofFile(dataOf(file));
      expect(ofFile.errors ?? [], file).toEqual([]);
    }
  });

  it('takes a whole folder only with its house', () => {
    const house = dataOf('tests/houses/tiny-cottage/input/house.yaml');
    expect(ofHouse(house)).toBe(true);
    const { house: _house, ...rest } = house;
    expect(ofHouse(rest)).toBe(false);
    expect(ofFile(rest)).toBe(true);
  });
});

/** Where in the house, and what is put there; undefined takes it away. */
type Change = readonly [what: string, at: readonly (string | number)[], value: unknown];

const BOTH: readonly Change[] = [
  ['a word that is not known', ['house', 'colour'], 'red'],
  ['a top-level word that is not known', ['windows'], []],
  ['a needed word that is not there', ['house', 'name'], undefined],
  ['a needed word of a list’s item that is not there', ['rooms', 0, 'level'], undefined],
  ['a choice that is none', ['house', 'kind'], 'castle'],
  ['one thing where a list is needed', ['rooms'], { id: 'hall' }],
  ['a list where one thing is needed', ['house'], []],
  ['a number where words are needed', ['house', 'name'], 7],
  ['a state written out', ['house', 'address', 'state'], 'Ohio'],
  ['a postal code without quotes', ['house', 'address', 'zip'], 44999],
  ['a count that is no whole number', ['rooms', 0, 'doors'], 1.5],
  ['a rectangle of three numbers', ['photos'], { a: { shows: 'x', hide: [[0, 0, 1]] } }],
  ['a rectangle beyond the picture', ['photos'], { a: { shows: 'x', hide: [[0, 0, 2, 1]] } }],
  ['an interval in other words', ['care', 0, 'every'], 'now and then'],
  ['an unknown word in the long form of a fact', ['house', 'built'], { is: 1948, why: 'x' }],
  ['a long form without its value', ['house', 'built'], { from: 'seller' }],
  ['nothing at all where a fact is needed', ['house', 'built'], null],
  ['words where yes or no is needed', ['work', 0, 'safety'], 'perhaps'],
];

/** Refused by the program alone: a schema knows shapes, not what a text means. */
const PROGRAM_ALONE: readonly [...Change, code: string][] = [
  ['a month 13', ['house', 'bought'], '2026-13-01', 'facts.date'],
  ['a length without a unit', ['rooms', 0, 'ceiling'], '8', 'facts.length'],
  ['a size that is one length', ['rooms', 0, 'size'], `8'`, 'facts.length'],
  ['an area without a unit', ['record'], { area: '1,500' }, 'facts.area'],
  ['a sum of money in words', ['dues'], [{ to: 'x', amount: 'much', per: 'month' }], 'facts.money'],
  ['an id with a blank', ['rooms', 0, 'id'], 'living room', 'facts.id'],
  ['words of nothing but blanks', ['house', 'name'], '   ', 'facts.kind'],
];

function changed(at: readonly (string | number)[], value: unknown): unknown {
  const house = structuredClone(dataOf('tests/houses/tiny-cottage/input/house.yaml'));
  let holder: Record<string | number, unknown> = house;
  for (const part of at.slice(0, -1)) holder = holder[part] as Record<string | number, unknown>;
  const last = at.at(-1) ?? '';
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return house;
}

const codesOf = (house: unknown): string[] => checkHouse(house).diagnostics.map((one) => one.code);

describe('schema and program', () => {
  it('take the house that the changes below start from', () => {
    const house = dataOf('tests/houses/tiny-cottage/input/house.yaml');
    expect(codesOf(house)).toEqual([]);
    expect(ofHouse(house)).toBe(true);
  });

  it.each(BOTH)('both refuse %s', (_what, at, value) => {
    const house = changed(at, value);
    expect(codesOf(house).length).toBeGreaterThan(0);
    expect(ofHouse(house)).toBe(false);
  });

  it.each(PROGRAM_ALONE)('differ: the program alone refuses %s', (_what, at, value, code) => {
    const house = changed(at, value);
    expect(codesOf(house)).toEqual([code]);
    expect(ofHouse(house)).toBe(true);
  });
});
