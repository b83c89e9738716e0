/** How far the stretch of a finding goes, and which words its rule has for it. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/tally/remarks/items/known.js';
import { widened } from '../../src/tally/remarks/mend/stretch.js';
import { wordsFor } from '../../src/tally/remarks/mend/words-for.js';
import type { PartialSpec } from './house-from.js';
import { bracketed, findingOf, knownFrom, stretchIn } from './tally-remarks-mend-case.js';

const known = knownFrom({
  levels: [
    { id: 'main', name: 'Main level', grade: 'above' },
    { id: 'cellar', name: 'Cellar', grade: 'below' },
  ],
  rooms: [
    { id: 'bed', level: 'main', use: 'bedroom' },
    { id: 'bath', level: 'main', use: 'bath' },
    { id: 'laundry', level: 'cellar', use: 'laundry' },
  ],
  systems: [
    {
      id: 'heater',
      is: 'water heater',
      name: 'Water heater',
      fuel: 'electric',
      installed: '2026-04',
      by: 'owner',
    },
  ],
});

describe('a stretch', () => {
  const wide = (draft: string, rule: string): string => {
    const { text, from, to } = bracketed(draft);
    const [start, end] = widened(text, from, to, rule);
    return text.slice(start, end);
  };

  it.each([
    // A word with its thing.
    ['a [new] gas water heater here', 'newness.new', 'new gas water heater'],
    ['a [new] white furnace', 'newness.new', 'new white furnace'],
    ['a [new] and furnace', 'newness.new', 'new'],
    ['drywall [new], furnace', 'newness.new', 'new'],
    ['[roof new] furnace', 'newness.new', 'roof new'],
    ['a [2016] roof over it', 'date.year', '2016 roof'],
    ['a [new] 200 amp panel', 'newness.new', 'new 200 amp panel'],
    ['a [new] 2 car garage', 'newness.new', 'new'],
    // With what strengthens it, and what makes it whole.
    ['all brand [new] furnaces throughout.', 'newness.new', 'all brand new furnaces throughout'],
    ['over [1,500 square feet]', 'size.living-area', 'over 1,500 square feet'],
    ['over [1,500 square feet]', 'kind.fuel', '1,500 square feet'],
    ['a lot of over a [quarter acre]', 'size.lot', 'over a quarter acre'],
    ['a lot of a [quarter acre]', 'size.lot', 'quarter acre'],
    // The shelter of a car, the place of a room.
    ['a [two-car] detached garage', 'count.cars', 'two-car detached garage'],
    ['a [two-car] drive', 'count.cars', 'two-car'],
    ['[laundry] is located on the main level', 'place', 'laundry is located on the main level'],
    ['[laundry] for all', 'place', 'laundry'],
    ['All work\r\n[permitted].', 'permit', 'All work\r\npermitted'],
    ['the work [permitted].', 'permit', 'permitted'],
    // Never within a word.
    ['a [quarter-acre]s', 'size.feet', 'quarter-acres'],
    ['a [furnace]', 'kind.fuel', 'furnace'],
    [`a [furnace]${'s'.repeat(30)}`, 'kind.fuel', `furnace${'s'.repeat(20)}`],
  ])('“%s” (%s) is widened to “%s”', (draft, rule, expected) => {
    expect(wide(draft, rule)).toBe(expected);
  });
});

describe('words for a finding', () => {
  const words = (draft: string, more: Partial<Finding>) =>
    wordsFor(
      known,
      stretchIn(draft),
      findingOf(more),
      known.items.filter(({ kind }) => kind === 'system'),
    );

  it.each<[string, Partial<Finding>, readonly string[]]>([
    ['[4 bedrooms]', { rule: 'count.bedrooms', instead: '1 bedroom' }, ['1 bedroom', '1 bedroom']],
    ['[4 bedrooms]', { rule: 'count.bedrooms' }, []],
    ['[built in 1931]', { rule: 'date.built', instead: 'built 1948' }, ['built in 1948', 'built 1948']],
    ['[built in 1931]', { rule: 'date.built' }, []],
    ['[big rooms]', { rule: 'size.compared', instead: 'small rooms' }, []],
    ['[boiler]', { rule: 'other-kind', instead: 'furnace, gas' }, ['gas furnace', 'furnace']],
    ['[boiler]', { rule: 'other-kind' }, []],
    ['[dry cellar]', { rule: 'condition.dry', instead: 'wet cellar' }, []],
    [
      '[laundry in the hall]',
      { rule: 'place', facts: [{ path: ['rooms', 2], words: '', evidence: [] }] },
      ['laundry in the cellar'],
    ],
    // A fact of a finish tells no place.
    [
      '[tile in the hall]',
      { rule: 'place', facts: [{ path: ['rooms', 2, 'finishes', 0], words: '', evidence: [] }] },
      [],
    ],
    ['[washer stays]', { rule: 'conveys.stays' }, ['washer not included']],
    ['[by a licensed plumber]', { rule: 'who.licensed' }, ['by the owner']],
    ['[gas water heater]', { rule: 'kind.fuel' }, ['electric water heater', 'water heater']],
    ['[2020 water heater]', { rule: 'date.year' }, ['2026 water heater']],
  ])('%s by %j', (draft, more, expected) => {
    expect(words(draft, more)).toEqual(expected);
  });

  it('a permit is one of those that the finding names, unless all are meant', () => {
    const permits: PartialSpec['permits'] = [
      { id: 'fence', what: 'fence', state: 'open' },
      { id: 'roof', what: 'roof', state: 'final' },
    ];
    const house = knownFrom({ permits });
    const said = (draft: string, ...at: number[]) =>
      wordsFor(
        house,
        stretchIn(draft),
        findingOf({
          rule: 'permit',
          facts: [
            { path: ['systems', 1], words: '', evidence: [] },
            ...at.map((one) => ({ path: ['permits', one], words: '', evidence: [] })),
          ],
        }),
        [],
      );
    expect(said('[fence is permitted]', 0)).toEqual(['fence permit is open']);
    expect(said('[fence is permitted]', 0, 1)).toEqual([]);
    expect(said('[fence is permitted]')).toEqual([]);
    expect(said('[All work permitted]')[0]).toBe('roof permit closed; fence permit open');
  });
});
