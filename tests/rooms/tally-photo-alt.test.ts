/** Photos without words, and the sentence that is proposed for each. */
import { describe, expect, test } from 'vitest';
import { locate, printReport } from '../../src/diagnostics/report.js';
import { checkPhotoWords, proposeAlt, workOf } from '../../src/tally/photo-alt.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const SPEC: PartialSpec = {
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  rooms: [
    {
      id: 'bath',
      level: 'main',
      use: 'bath',
      finishes: [
        { on: 'walls', what: 'white tile', work: 'tile', done: 2026 },
        { on: 'floor', what: 'hexagon mosaic', colour: 'white', done: 2026 },
        { on: 'trim', what: 'old pine', kept: true },
      ],
    },
    { id: 'boiler-room', level: 'main', use: 'mechanical' },
  ],
  systems: [{ id: 'wh', is: 'water heater, tank, electric', where: 'boiler-room' }],
  work: [
    {
      id: 'rail',
      what: 'handrail',
      did: 'new',
      how: 'round oak on iron brackets.',
      why: 'nine risers had none',
      photos: { before: 'B', after: 'A', during: ['D'] },
    },
    { id: 'tile', what: 'tub surround', did: 'replaced', where: ['bath'], photos: { after: 'T' } },
  ],
  photos: {
    B: { shows: 'stair', when: 'before' },
    A: { shows: 'stair', when: 'after' },
    D: { shows: 'stair', when: 'during' },
    T: { shows: 'tub surround', when: 'after', where: 'bath' },
    R: { shows: 'bath', when: 'after', where: 'bath' },
    H: { shows: 'tank', where: 'boiler-room' },
    L: { shows: 'label of the tank', when: 'label' },
    P: { shows: 'plate', when: 'label' },
    F: { shows: 'panel', when: 'as-found', where: 'main' },
    HIDDEN: { shows: 'yard', private: true },
    TOLD: { shows: 'yard', alt: 'A yard.' },
  },
};
const house = houseFrom(SPEC);

describe('the sentence that is proposed', () => {
  test.each([
    ['B', 'Stair, before the work: nine risers had none.'],
    ['A', 'Stair, after the work: round oak on iron brackets.'],
    ['D', 'Stair, during the work.'],
    ['T', 'Tub surround, bath, after the work: walls white tile.'],
    ['R', 'Bath, after the work: walls white tile; floor hexagon mosaic, white.'],
    ['H', 'Tank, boiler room: water heater, tank, electric.'],
    ['L', 'Label of the tank; write the lines that can be read.'],
    ['P', 'Label: plate; write the lines that can be read.'],
    ['F', 'Panel, as found.'],
  ])('%s', (id, sentence) => {
    const photo = house.photos[id];
    if (photo === undefined) throw new Error('no such photo');
    expect(proposeAlt(house, photo, workOf(house, id))).toBe(sentence);
  });
});

describe('the warning', () => {
  test('is for each photo that would be shown, on its word, and no gap any more', () => {
    const list = checkPhotoWords(house);
    expect(list.map(({ path }) => path?.[1])).toEqual(['B', 'A', 'D', 'T', 'R', 'H', 'L', 'P', 'F']);
    expect(new Set(list.map(({ severity, code }) => `${severity} ${code}`))).toEqual(
      new Set(['warning tally.no-alt']),
    );
    // Of those that lie in the folder; a photo that is not there needs no words.
    const there = (ids: readonly string[]) =>
      new Map(ids.map((id) => [id, { takenAt: undefined, spot: undefined }]));
    const { tally, diagnostics } = deriveTally(house, '2026-11-20', there(Object.keys(house.photos)));
    expect(diagnostics.filter(({ code }) => code === 'tally.no-alt')).toHaveLength(9);
    const few = deriveTally(house, '2026-11-20', there(['B', 'A'])).diagnostics;
    expect(few.filter(({ code }) => code === 'tally.no-alt')).toHaveLength(2);
    expect(tally.gaps.filter(({ lacks }) => /photo has no words/.test(lacks))).toEqual([]);
  });

  test('is marked as a proposal', () => {
    expect(checkPhotoWords(house)[0]?.hints[0]).toBe(
      'a proposal from the facts; look at the picture and correct it:  alt: "Stair, before the work: nine risers had none."',
    );
  });

  test('of forty photos takes the lines of one', () => {
    const photos = Object.fromEntries(
      Array.from({ length: 40 }, (_, n) => [`P${n}`, { shows: `thing ${n}` }]),
    );
    const places = {
      find: ([, id]: readonly (string | number)[]) => ({
        place: {
          file: 'house.yaml',
          line: Number(String(id).slice(1)) + 10,
          column: 3,
          length: 2,
          source: `  ${id}:`,
        },
        near: false,
      }),
    };
    const text = printReport(locate(checkPhotoWords(houseFrom({ photos })), places), 'text', false);
    expect(text).toContain('also on lines 11, 12, 13, 14, 15, 16 and 33 more');
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(6);
  });
});
