/** “All new …”: in which words it is said, of which things, and of which part of the house. */
import { describe, expect, it } from 'vitest';
import { clashesOf } from './clashes-as-text.js';
import type { PartialSpec } from './house-from.js';

type System = NonNullable<PartialSpec['systems']>[number];
type Finish = NonNullable<NonNullable<PartialSpec['rooms']>[number]['finishes']>[number];

const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;

/** What is said to be new, as the messages quote it. */
const said = (
  answer: string,
  systems: readonly System[],
  finishes: readonly Finish[] = [],
  use: 'kitchen' | 'bath' | 'hall' = 'hall',
): (string | undefined)[] =>
  clashesOf({
    spec: {
      levels: [LEVEL],
      rooms: [
        { id: 'room', level: 'main', use, finishes: [...finishes] },
        { id: 'other', level: 'main', use: 'living' },
      ],
      systems: [...systems],
      answers: [{ ask: 'What is new?', answer }],
    },
  })
    .filter(({ message }) => message.includes('is said here'))
    .map(({ message }) => /“(.*?)”/.exec(message)?.[1]);

const kept = (is: string, more: Partial<System> = {}): System => ({ id: 'old', is, kept: true, ...more });
const WINDOW = [kept('window, wood')];

describe('the things', () => {
  it.each([
    ['window, wood', ['window', 'windows']],
    ['wiring, copper', ['wiring', 'electrical']],
    ['supply pipes', ['plumbing', 'pipe', 'pipes', 'piping']],
    ['roof, slate', ['roof', 'roofs', 'roofing']],
    ['dishwasher', ['appliance', 'appliances']],
    ['toilet', ['toilet', 'toilets']],
    ['faucet, kitchen', ['faucet', 'faucets']],
    ['light, porch', ['light', 'lights', 'lighting']],
  ] as const)('a kept %s', (is, words) => {
    for (const word of words) expect(said(`All new ${word}.`, [kept(is)])).toEqual([`All new ${word}`]);
  });
  it.each([
    ['floor', ['floor', 'floors', 'flooring']],
    ['doors', ['door', 'doors']],
    ['cabinets', ['cabinet', 'cabinets', 'cabinetry']],
    ['counter', ['counter', 'counters', 'countertop', 'countertops']],
    ['walls', ['walls', 'paint']],
  ] as const)('a kept finish on: %s', (on, words) => {
    for (const word of words)
      expect(said(`All new ${word}.`, [], [{ on, what: 'old', kept: true }])).toEqual([`All new ${word}`]);
  });
  it.each([
    ['kitchen', ['kitchen', 'kitchens']],
    ['bath', ['bath', 'baths', 'bathroom', 'bathrooms']],
  ] as const)('whatever is kept in a %s', (use, words) => {
    const old: Finish = { on: 'hardware', what: 'knobs', kept: true };
    for (const word of words) {
      const claim = `All new ${word}`;
      expect(said(claim, [], [old], use)).toEqual([claim]);
      expect(said(claim, [], [old])).toEqual([]);
      expect(said(claim, [kept('range', { where: 'room' })], [], use)).toEqual([claim]);
      expect(said(claim, [kept('range', { where: 'other' })], [], use)).toEqual([]);
      expect(said(claim, [kept('range')], [], use)).toEqual([]);
    }
  });
  it.each([
    ['windows', 'air conditioner, window'],
    ['wiring', 'box for wiring'],
    ['pipes', 'hangers, supply pipes'],
    ['toilets', 'seat, toilet'],
    ['faucets', 'garden faucet'],
    ['lights', 'pole, light'],
    ['shingles', 'roof, slate'],
    ['skylights', 'light, porch'],
  ])('“all new %s” is not said of: %s', (words, is) => {
    expect(said(`All new ${words}.`, [kept(is)])).toEqual([]);
  });
  it('that two words name are of both', () => {
    const cabinets: Finish = { on: 'cabinets', what: 'old', kept: true };
    const floor: Finish = { on: 'floor', what: 'old', kept: true };
    const words = 'All new kitchen cabinets';
    expect(said(`${words} here.`, [], [cabinets], 'kitchen')).toEqual([words]);
    expect(said(`${words} here.`, [], [cabinets], 'bath')).toEqual([]);
    expect(said(`${words} here.`, [], [floor], 'kitchen')).toEqual([]);
    expect(said('All new cabinets and flooring.', [], [floor], 'kitchen')).toEqual([]);
  });
  it('everything is said of whatever is kept and still there', () => {
    expect(said('Everything is new.', [kept('chimney')])).toEqual(['Everything is new']);
    expect(said('Everything is new.', [{ id: 'c', is: 'chimney' }])).toEqual([]);
    expect(said('Everything is new.', [kept('chimney', { did: 'removed' })])).toEqual([]);
  });
});

describe('the words', () => {
  it.each([
    'All new windows',
    'all-new windows',
    'All of the new windows',
    'all the brand new windows',
    'Entirely new windows',
    'Completely new wood windows',
    'fully new double-hung wood windows',
    'All windows are new',
    'All of the windows were replaced',
    'all the windows have been renewed',
    'All windows new',
    'All windows are brand new',
    'Every window was renewed',
    'Every single old window is new',
    'Every window has been replaced',
    'New windows throughout',
    'new double-hung wood windows everywhere',
    'New windows in every room',
    'new windows in all rooms',
    'Everything is new',
    'everything was replaced',
    'Everything has been renewed',
    'everything is brand new',
  ])('“%s” leaves nothing out', (words) => {
    expect(said(`So: ${words}.`, WINDOW)).toEqual([words]);
  });
  it.each([
    'Not all new windows',
    'Not all windows are new',
    'Not every window was replaced',
    'Not everything is new',
    'New windows',
    'All windows are old',
    'Overall new windows',
    'All new things',
    'New frames, old windows throughout',
  ])('“%s” leaves something out, or says nothing of it', (words) => {
    expect(said(`${words}.`, WINDOW)).toEqual([]);
  });
});

describe('the part of the house', () => {
  it.each([
    'All new windows in the hall.',
    'All new windows on two sides.',
    'All new windows at the back.',
    'All new windows of the hall.',
    'All of the windows of the hall are new.',
    'All windows in the hall are new.',
    'In the hall, all new windows.',
    'It is good. On one side all new windows.',
    'All new windows in mayor’s hall.',
  ])('“%s” is said of a part', (words) => {
    expect(said(words, WINDOW)).toEqual([]);
  });
  it.each([
    ...[
      '2025',
      'May 2026',
      'early spring',
      'late 2025',
      'about 2025',
      'the house',
      'the whole house',
      'every room',
    ],
  ])('“all new windows in %s” is said of all', (where) => {
    expect(said(`All new windows in ${where}.`, WINDOW)).toEqual(['All new windows']);
    expect(said(`In ${where}, all new windows.`, WINDOW)).toEqual(['all new windows']);
  });
  it.each([
    'All new windows, and a stove in the hall.',
    'All new windows; a stove in the hall.',
    'A stove stands in the hall; all new windows.',
    'We have put a stove in the hall and all new windows.',
    'All new windows that we have been able to buy from one maker in town.',
    'All of windows are new.',
  ])('“%s” is said of all, whatever else is in a part', (words) => {
    expect(said(words, WINDOW)).toHaveLength(1);
  });
});
