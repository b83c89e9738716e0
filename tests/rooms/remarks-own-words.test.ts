/** A packet never says what it would itself object to: what the program writes, and what the owner wrote. */
import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { House } from '../../src/facts/house.js';
import { readHouse } from '../../src/intake/read-house.js';
import { composePacket } from '../../src/packet/compose.js';
import type { EditionName, Packet } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import { objectionsTo, ownWords } from '../../src/remarks-own-words.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { houseOf, MADE_AS_OF, madeSpec } from '../properties/made-house.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const PUBLISHED: readonly EditionName[] = ['agent', 'visit', 'buyer', 'care'];

const packetsOf = (house: House, tally: Tally): Packet[] =>
  PUBLISHED.map((edition) => composePacket({ folder: 'a-house', house, tally, edition, photos: new Map() }));

/** Sentences, each once: a cell of a table repeats a fact. */
const sentencesOf = (packets: readonly Packet[]): string[] => [
  ...new Set(
    packets
      .flatMap(({ sections }) => sections)
      .flatMap(({ blocks }) => blocks)
      .filter(({ kind }) => ['statement', 'paragraph', 'question', 'list', 'notice'].includes(kind))
      .flatMap(wordsOf),
  ),
];

const told = (house: House, tally: Tally): string[] => {
  const sentences = sentencesOf(packetsOf(house, tally));
  return objectionsTo(sentences, house, tally).map(
    ({ text, finding }) => `${'says' in finding ? finding.says : finding.words} | ${sentences[text]}`,
  );
};

describe('what the program writes', () => {
  const folders = [
    ...['quarry-road', 'larkspur-court'].map((name) => `content/${name}`),
    ...readdirSync('tests/houses').map((name) => `tests/houses/${name}/input`),
    ...['seen', 'practice'].flatMap((half) =>
      readdirSync(`tests/remarks/${half}/houses`).map((name) => `tests/remarks/${half}/houses/${name}`),
    ),
  ];

  it.each(folders)('is never objected to: %s', async (folder) => {
    const read = await readHouse(folder, folder, { everyPhoto: false });
    const house = read.found?.house;
    if (house === undefined) throw new Error(`${folder} can’t be read`);
    const { tally } = deriveTally(house, AS_OF);
    expect(told(house, tally)).toEqual([]);
    expect(ownWords(packetsOf(house, tally), house, tally, read)).toEqual([]);
  });

  it('is never objected to, whatever the house', () => {
    let sentences = 0;
    fc.assert(
      fc.property(madeSpec, (spec) => {
        const house = houseOf(spec);
        const { tally } = deriveTally(house, MADE_AS_OF);
        sentences += sentencesOf(packetsOf(house, tally)).length;
        expect(told(house, tally)).toEqual([]);
      }),
      { seed: 6701, numRuns: 25 },
    );
    expect(sentences).toBeGreaterThan(1000);
  });
});

describe('what the owner wrote', () => {
  const SPEC: PartialSpec = {
    house: { parking: 'attached garage, one car', lot: '0.21 acre', water: 'public' },
    systems: [
      { id: 'roof', is: 'roof, architectural shingle', name: 'Roof', installed: '2019-06', kept: true },
    ],
    rooms: [
      { id: 'bed-1', level: 'main', use: 'bedroom', name: 'Bedroom 1' },
      { id: 'bed-2', level: 'main', use: 'bedroom', name: 'Bedroom 2' },
    ],
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 26'" }],
  };
  const objected = (text: string): string[] => {
    const house = houseFrom(SPEC);
    const { tally } = deriveTally(house, AS_OF);
    return objectionsTo([text], house, tally).map(({ finding }) =>
      'says' in finding ? finding.says : finding.words,
    );
  };

  it.each([
    ['The house has three bedrooms.', ['three bedrooms']],
    ['It has a 2016 roof.', ['2016 roof']],
    ['A two-car garage is attached.', ['two-car garage']],
    ['The lot is half an acre.', ['half an acre']],
    ['The house has a new roof.', ['new roof']],
    ['Adults only, please.', ['Adults only']],
  ])('is objected to where it can’t be true, or may not be said: %s', (text, says) => {
    expect(objected(text)).toEqual(says);
  });

  it.each([
    'The house has two bedrooms.',
    'It had three bedrooms before.',
    'It was sold as one with three bedrooms.',
    'The county card says three bedrooms.',
    'The seller spoke of a 2016 roof.',
    'Are there three bedrooms?',
    'Bedrooms: three.',
    'Wires of three bedrooms: replaced.',
    'A 3/4 in pipe feeds it.',
    'The roof of 2019 replaced one of 1990.',
    'Perfect for families.',
    'Nobody knows whether it has a 2016 roof.',
    '',
    ' \n ',
  ])('is left alone where it may be: %s', (text) => {
    expect(objected(text)).toEqual([]);
  });
});
