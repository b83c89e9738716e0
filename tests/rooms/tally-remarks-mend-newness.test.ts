/** Words in place of a claim about age or a deed. */
import { describe, expect, it } from 'vitest';
import { newnessWords } from '../../src/tally/remarks/mend/mend-newness.js';
import { houseOf, KITCHEN, knownFrom, stretchIn, type Thing } from './tally-remarks-mend-case.js';

function words(draft: string, word: string, known: ReturnType<typeof knownFrom>, isWide = false): string[] {
  return newnessWords(known, stretchIn(draft), `newness.${word}`, known.items, isWide);
}

/** [draft, word, thing, all that is tried]. */
type Row = readonly [draft: string, word: string, thing: Thing, words: readonly string[]];

describe('one thing that is not so', () => {
  it.each<Row>([
    // The word before its thing.
    ['[new furnace]', 'new', 'of 2009', ['2009 furnace', 'furnace']],
    ['[new furnace]', 'new', 'of about 1991', ['furnace from about 1991', 'furnace']],
    ['[new furnace] 2026', 'new', 'of 2009', ['furnace']],
    ['[new furnace] 2026', 'new', 'of about 1991', ['furnace']],
    ['[new range]', 'new', 'second-hand', ['second-hand range', 'range']],
    ['[new tub]', 'new', 'refinished in 2026', ['refinished tub', 'tub']],
    ['[new furnace]', 'new', 'left as found', ['furnace']],
    ['[new furnace]', 'new', 'only serviced', ['furnace']],
    // Alone, before a thing that another claim is about.
    ['[new] gas furnace', 'new', 'of 2009', ['2009']],
    ['[new] gas furnace', 'new', 'of about 1991', []],
    ['[new] gas range', 'new', 'second-hand', ['second-hand']],
    ['[new] white tub', 'new', 'refinished in 2026', ['refinished']],
    ['[new] circa 2016', 'new', 'of 2009', []],
    ['[new] furnace’s', 'new', 'left as found', []],
    // Behind its thing.
    ['[furnace is brand new]', 'new', 'of 2009', ['furnace is from 2009']],
    ['[range is new]', 'new', 'second-hand', ['range is second-hand', 'range is from 2026']],
    ['[tub is new]', 'new', 'refinished in 2026', ['tub was refinished in 2026', 'tub was refinished']],
    [
      '[tubs were replaced]',
      'replaced',
      'refinished in 2026',
      ['tubs were refinished in 2026', 'tubs were refinished'],
    ],
    [
      '[all the tubs have been replaced]',
      'replaced',
      'refinished in 2026',
      ['tubs were refinished in 2026', 'tubs were refinished'],
    ],
    ['[tub replaced] in 2025', 'replaced', 'refinished in 2026', ['tub refinished', 'tub refinished', 'tub']],
    [
      '[tub replaced this year]',
      'replaced',
      'refinished in 2026',
      ['tub refinished in 2026', 'tub refinished', 'tub'],
    ],
    [
      '[tub replaced nicely]',
      'replaced',
      'refinished in 2026',
      ['tub refinished in 2026 nicely', 'tub refinished nicely', 'tub nicely'],
    ],
    ['[tub replaced]', 'replaced', 'left as found', ['tub']],
    ['[tub and range replaced]', 'replaced', 'left as found', ['tub and range']],
    ['[tub and range are replaced]', 'replaced', 'moved', []],
    ['[tub and replaced]', 'replaced', 'left as found', []],
    ['[Furnace: New]', 'new', 'of 2009', ['Furnace: From 2009']],
    ['[Furnace: new]', 'new', 'of 2009', ['Furnace: from 2009']],
    ['[Tub? New]', 'new', 'refinished in 2026', ['Tub? Refinished in 2026', 'Tub? Refinished']],
    ['[new] in 2026', 'new', 'second-hand', ['second-hand']],
    // What goes on is about the deed that was not done.
    ['[furnace replaced] for a better one', 'replaced', 'left as found', []],
    ['[house rewired]', 'replaced', 'left as found', []],
    // Words whose opposite no date tells, and what is so.
    ['[serviced furnace]', 'serviced', 'left as found', []],
    ['[new furnace]', 'new', 'of 2026', []],
  ])('“%s” (%s), of one %s', (draft, word, thing, expected) => {
    expect(words(draft, word, houseOf(thing))).toEqual(expected);
  });
});

describe('a thing that shares the first word of a list', () => {
  it.each<Row>([
    ['new range, [furnace]', 'new', 'of 2009', ['2009 furnace']],
    ['new range, [furnace] 2026', 'new', 'of 2009', []],
    ['new range, [furnace]', 'new', 'left as found', []],
    ['new range, [furnace]', 'new', 'of 2026', []],
    ['new range, [furnace]', 'new', 'only serviced', []],
    ['new range, [the furnace]', 'new', 'of 2009', []],
    ['new range, [furnace 2]', 'new', 'of 2009', []],
  ])('“%s” (%s), of one %s', (draft, word, thing, expected) => {
    expect(words(draft, word, houseOf(thing))).toEqual(expected);
  });

  it('of several of which some are so', () => {
    const two = houseOf('of 2009', 'of 2026');
    expect(words('new range, [furnaces]', 'new', two, true)).toEqual(['some new furnaces']);
    expect(words('updated range, [furnaces]', 'updated', two, true)).toEqual([]);
  });
});

describe('what is so of some', () => {
  it.each<readonly [draft: string, word: string, words: readonly string[]]>([
    ['[all new furnaces]', 'new', ['some new furnaces', 'partly new furnaces', 'furnaces']],
    ['two [new furnaces]', 'new', ['partly new furnaces', 'furnaces']],
    ['[original furnaces]', 'original', ['some original furnaces', 'partly original furnaces', 'furnaces']],
    ['[updated furnaces]', 'updated', ['partly updated furnaces', 'furnaces']],
    ['[new furnaces throughout]', 'new', ['furnaces throughout']],
    ['[recent furnaces]', 'newer', ['furnaces']],
    ['[replaced all the furnaces]', 'replaced', ['replaced part of the furnaces']],
    ['[replaced the furnaces]', 'replaced', []],
    ['[furnaces are new throughout]', 'new', ['furnaces are partly new']],
    ['[all the furnaces are new]', 'new', ['some furnaces are new', 'all the furnaces are partly new']],
    ['[both furnaces are installed]', 'new', ['some furnaces are installed']],
    ['[furnace remodeled top to bottom]', 'updated', ['furnace partly remodeled', 'furnace partly updated']],
    ['[new] throughout', 'new', ['partly new']],
    ['[furnaces replaced in 2026]', 'replaced', ['furnaces partly replaced in 2026']],
  ])('“%s” (%s)', (draft, word, expected) => {
    // One of each, so that every word is true of one of them.
    const known = knownFrom({
      house: { built: '1948' },
      systems: [
        { id: 'old', is: 'furnace', installed: '1948', kept: true },
        { id: 'new', is: 'furnace', installed: '2026-04', did: 'replaced' },
      ],
    });
    expect(words(draft, word, known, true)).toEqual(expected);
  });

  it.each<readonly [draft: string, words: readonly string[]]>([
    ['[new kitchen]', ['kitchen with new floor and counters', 'partly new kitchen', 'kitchen']],
    ['[new kitchen] with a view', ['partly new kitchen', 'kitchen']],
    ['[kitchen is all new]', ['kitchen is partly new']],
    ['[new cabinets]', ['some new cabinets', 'partly new cabinets', 'cabinets']],
    ['[new shed]', ['some new shed', 'partly new shed', 'shed']],
  ])('in a room: “%s”', (draft, expected) => {
    expect(words(draft, 'new', knownFrom(KITCHEN), true)).toEqual(expected);
  });

  it('of a whole, where the facts at hand are not but others of the house are', () => {
    const known = houseOf('of 2009', 'of 2026');
    const [old] = known.items;
    if (old === undefined) throw new Error('no item');
    expect(newnessWords(known, stretchIn('[everything replaced]'), 'newness.new', [old], false)).toEqual([
      'everything partly replaced',
    ]);
    expect(newnessWords(known, stretchIn('[furnace replaced]'), 'newness.new', [old], false)).toEqual([
      'furnace from 2009',
      'furnace',
    ]);
  });
});
