/** Words in place of a wrong figure, year or age: as the draft writes them, and as they go into its sentence. */
import { describe, expect, it } from 'vitest';
import { asStands } from '../../src/tally/remarks/mend/as-stands.js';
import { dateWords } from '../../src/tally/remarks/mend/mend-dates.js';
import { figureWords } from '../../src/tally/remarks/mend/mend-figures.js';
import { itemOf, type SystemWords, stretchIn } from './tally-remarks-mend-case.js';

/** [rule, draft, what is so, best words]; undefined: none. */
type FigureRow = readonly [rule: string, draft: string, truth: string, words: string | undefined];

const COUNTS: readonly FigureRow[] = [
  ['count.bedrooms', '[4 bedrooms]', '3 bedrooms', '3 bedrooms'],
  ['count.bedrooms', '[four beds]', '3 bedrooms', 'three beds'],
  ['count.bedrooms', '[4 BR]', 'three bedrooms', '3 BR'],
  ['count.bedrooms', '[over four bedrooms]', '3 bedrooms', 'three bedrooms'],
  ['count.bedrooms', '[4+ bedrooms]', '1 bedroom', '1 bedroom'],
  ['count.bedrooms', '[some bedrooms]', 'bedrooms', 'bedrooms'],
  ['count.bedrooms', '[bedrooms]', 'bedrooms', undefined],
  ['count.things', '[fireplaces]', '2 fireplaces', undefined],
  ['count.things', '[two fireplaces]', 'no fireplaces', 'no fireplaces'],
  ['count.things', '[a pair of fireplaces]', '2 fireplaces', '2 fireplaces'],
  ['count.cars', '[two-car garage]', '1 car', 'one-car garage'],
  ['count.cars', '[2 cars]', '1 car', '1 car'],
  ['count.cars', '[2 cars]', '3 cars', '3 cars'],
  ['size.living-area', '[Over 1,500 square feet]', '1,436 sq ft', '1,436 square feet'],
  ['size.living-area', '[1500+ sf]', '1,436 sq ft', '1,436 sf'],
  ['size.living-area', '[fifteen hundred square feet]', '1,436 sq ft', '1,436 sq ft'],
  ['size.rating', '[two hundred amp]', '100 amps', '100 amps'],
  ['size.rating', '[two amps]', '100 amps', '100 amps'],
  ['date.built', '[built in 1931]', 'built 1948', 'built in 1948'],
  ['date.built', '[century-old]', 'built 1948', undefined],
];

const BATHS: readonly FigureRow[] = [
  ['count.baths', '[2 BA]', '1 full bath and 1 half bath', '1 full and 1 half bath'],
  ['count.baths', '[two baths]', '1 full bath and 1 half bath', 'one full and one half bath'],
  ['count.baths', '[3F]/1H baths', '1 half bath and 2 full baths', '2F'],
  ['count.baths', '[1F]/1H baths', '1 half bath', '0F'],
  ['count.baths', '[two bathrooms]', '1 half bath and 2 full baths', 'one half and two full bathrooms'],
  ['count.baths', '[2 bathrooms]', '1 full bath', '1 full bathroom'],
  ['count.baths', '[twelve baths]', '11 full baths', '11 full baths'],
  [
    'count.baths',
    '[3 baths]',
    '1 full bath and 1 three-quarter bath and 1 half bath',
    '1 full, 1 three-quarter and 1 half bath',
  ],
  ['count.baths', '[two full baths] and a half bath', '1 full bath and 1 half bath', 'one full bath'],
  ['count.baths', 'full and [two half baths]', '1 full bath and 1 half bath', 'one half bath'],
  ['count.baths', '[two full baths]', '1 full bath and 1 half bath', 'one full and one half bath'],
  ['count.baths', 'two full baths and [a half bath]', '1 full bath', undefined],
  [
    'count.baths',
    '[2 baths]',
    '1 full bath and 2 baths of no stated kind',
    '1 full bath and 2 baths of no stated kind',
  ],
];

const STOREYS: readonly FigureRow[] = [
  ['count.storeys', '[two-story] home', 'single-storey', 'single-story'],
  ['count.storeys', '[two-storey] home', 'single-storey', 'single-storey'],
  ['count.storeys', '[two stories]', 'single-storey', 'one story'],
  ['count.storeys', '[storeys]', 'single-storey', 'single-storey'],
  ['count.storeys', '[two levels]', 'single-storey', 'one level'],
  ['count.storeys', '[one level]', 'two storeys', 'two levels'],
  ['count.storeys', '[one level] living', 'two storeys', 'two-level'],
  ['count.storeys', '[one storey] house', 'two storeys', 'two-storey'],
  ['count.storeys', '[One storey].', 'two storeys', 'two storeys'],
  ['count.storeys', '[one story].', 'two storeys', 'two stories'],
  ['count.storeys', '[Stories: two]', 'single-storey', 'Stories: one'],
  ['count.storeys', '[stories 2]', 'one and a half storeys', 'stories one and a half'],
  ['count.storeys', '[two floors]', 'split level', 'split level'],
  ['count.storeys', '[ranch]', 'two storeys', undefined],
];

const LOTS: readonly FigureRow[] = [
  ['size.lot', 'on a [quarter acre]', '0.21-acre lot', '0.21-acre lot'],
  ['size.lot', 'The lot is [over a quarter acre]', '0.21-acre lot', '0.21 acre'],
  ['size.lot', 'with [half an acre]', '0.21-acre lot', 'a 0.21-acre lot'],
  ['size.lot', '[half acre] lot', '0.21-acre lot', '0.21-acre'],
  ['size.lot', '[half-acre parcel]', '0.21-acre lot', '0.21-acre parcel'],
  ['size.lot', '[Lot: half acre]', '0.21-acre lot', 'Lot: 0.21 acre'],
  ['size.lot', '[lot half acre]', '0.21-acre lot', 'lot 0.21 acre'],
  ['size.lot', 'with [0.5 acres]', '0.21-acre lot', '0.21 acre'],
];

const HILL = 'Hill Association: $64.00 a month';
const DUES: readonly FigureRow[] = [
  ['dues', '[NO association fees]', HILL, 'association fees $64 a month'],
  ['dues', '[no]', HILL, 'dues $64 a month'],
  ['dues', '[HOA $50/mo]', HILL, 'HOA $64 a month'],
  ['dues', 'dues [$50] a month', HILL, '$64'],
  ['dues', '[dues of $50 a year]', 'Hill Association: $64.50 once', 'dues of $64.50 once'],
  ['dues', '[HOA $50]', 'no association dues', undefined],
];

describe('a figure', () => {
  it.each([...COUNTS, ...BATHS, ...STOREYS, ...LOTS, ...DUES])(
    '%s “%s”, where it is %s',
    (rule, draft, truth, words) => {
      expect(figureWords(stretchIn(draft), rule, truth)[0]).toBe(words);
    },
  );

  it('is offered in the folder’s words as well', () => {
    expect(figureWords(stretchIn('[4 BR]'), 'count.bedrooms', '3 bedrooms')).toEqual(['3 BR', '3 bedrooms']);
    expect(figureWords(stretchIn('[two baths]'), 'count.baths', '1 full bath')).toEqual([
      'one full bath',
      '1 full bath',
    ]);
    expect(figureWords(stretchIn('[half acre] lot'), 'size.lot', '0.21-acre lot')).toEqual([
      '0.21-acre',
      '0.21 acre',
    ]);
  });
});

/** [of a roof of this day, draft, words]. */
type DateRow = readonly [installed: string, draft: string, words: readonly string[]];

describe('a year or an age', () => {
  it.each<DateRow>([
    ['2019', '[2016 roof]', ['2019 roof']],
    ['2019', '[2016-17 roof]', ['2019 roof']],
    ['2019', '[5-year-old roof]', ['2019 roof']],
    ['2013/2014', '[5-year-old roof]', ['roof from 2013 or 2014']],
    ['2013/2014', 'roof [from 2016]', ['from 2013 or 2014']],
    ['2013/2014', 'roof [under ten years old]', ['from 2013 or 2014']],
    ['1991~', 'roof is [5 years old]', ['from about 1991']],
    ['2019', "roof ['16]", ['2019']],
    ['2013/2014', "roof ['16]", ['2013 or 2014']],
    ['2019', '[2016 install]', ['2019 install']],
    ['2019', 'roof [replaced in 2016]', ['replaced in 2019']],
    ['2019', 'roof [replaced 5 years ago by us]', ['replaced in 2019 by us']],
    ['2019', 'roof [replaced in about 5 years]', ['replaced in 2019']],
    ['2019', '[roof just 5 yrs old]', ['roof from 2019']],
    ['2019', '[roof is 5 yrs old]', ['roof is from 2019']],
    ['2019', '[Roof (3 yrs], gutters', ['Roof (from 2019']],
    ['2019', '[roof5 yrs old]', ['roof from 2019']],
    ['2019', '[Roof/3 yrs]', ['Roof/from 2019']],
    ['2019', '[roof–3 yrs]', ['roof–from 2019']],
    ['2019', '[new roof]', []],
  ])('of a roof of %s: “%s”', (installed, draft, words) => {
    expect(dateWords(stretchIn(draft), [itemOf({ is: 'roof', installed })])).toEqual(words);
  });

  it.each([
    [
      'when it was put in, then when it was made',
      { installed: '2026-04-09', made: '2024' },
      ['2026 roof', '2024 roof'],
    ],
    ['none without a date', {}, []],
  ] as const)('%s', (_what, words: Partial<SystemWords>, expected) => {
    expect(dateWords(stretchIn('[2020 roof]'), [itemOf({ is: 'roof', ...words })])).toEqual(expected);
  });

  it('names the deed that it was, where the draft’s is before the year', () => {
    const painted = [itemOf({ is: 'roof', did: 'painted', installed: '2019' })];
    expect(dateWords(stretchIn('[replaced in 2016]'), painted)).toEqual([
      'replaced in 2019',
      'painted in 2019',
    ]);
    expect(dateWords(stretchIn('[2016] replaced roof'), painted)).toEqual(['2019']);
    expect(dateWords(stretchIn('[in 2016, replaced]'), painted)).toEqual(['in 2019, replaced']);
  });
});

/** [draft, words, what is put; undefined: they don't go in]. */
type PutRow = readonly [draft: string, words: string, put: string | undefined];

describe('words as they stand', () => {
  const put = (draft: string, words: string) => asStands(stretchIn(draft), words, 28);

  it.each<PutRow>([
    ['[BRAND NEW]', 'old', 'OLD'],
    ['[AC]', 'gas', 'Gas'],
    ['[Brand new]', 'old', 'Old'],
    ['[Brand new]', '2009 one', '2009 one'],
    ['[3 Beds]', 'four beds', 'four beds'],
    ['[123]', 'four', 'four'],
    ['[new]', '  much   spaced ', 'much spaced'],
    // What stands beside it is not said twice.
    ['[slate] tile', 'ceramic tile', 'ceramic'],
    ['[tile] floors', 'oak floor', 'oak'],
    ['[tile] floors', 'floor', 'floor'],
    ['[tile] floors', 'oak boards', 'oak boards'],
    ['slate [tile]', 'slate tile', 'tile'],
    ['slate [tile]', 'slate', 'slate'],
    ['the [tile]', 'the tile', 'the tile'],
    ['oak [tile]', 'slate tile', 'slate tile'],
    ['new [floor]', 'oak oak floor', 'oak floor'],
    // What can't stand in a sentence.
    ['[new]', '', undefined],
    ['[new]', '-old', undefined],
    ['[new]', 'roof –old', undefined],
    ['[new]', 'roof and', undefined],
    ['[new]', 'and roof', undefined],
    ['three-[quarters] of an acre', '0.21', undefined],
    ['twenty1[st] floor', 'nd', undefined],
    ['[baths? Two]', 'one', undefined],
    ['[baths? Two]', 'baths? One', 'baths? One'],
    // No more than 28 characters longer.
    ['[new]', 'a'.repeat(31), 'a'.repeat(31)],
    ['[new]', 'a'.repeat(32), undefined],
  ])('%s ← “%s”', (draft, words, expected) => {
    expect(put(draft, words)?.put).toBe(expected);
  });

  it.each<PutRow>([
    ['a [gas range]', 'electric range', 'an electric range'],
    ['an [electric range]', 'gas range', 'a gas range'],
    ['A [gas range]', 'electric range', 'An electric range'],
    ['AN  [OLD RANGE]', 'new range', 'A  NEW RANGE'],
    ['a [new range]', '8-foot range', 'an 8-foot range'],
    ['a [new range]', 'unfinished range', 'an unfinished range'],
    ['a [new range]', 'upper range', 'an upper range'],
    ['a [new range]', 'unique range', 'unique range'],
    ['a [new range]', 'european range', 'european range'],
    ['a [new range]', 'one-car range', 'one-car range'],
    ['a [new range]', '1948 range', '1948 range'],
    ['a [new range]', '3-acre lot', '3-acre lot'],
    ['a [new range]', 'two ranges', undefined],
    ['a [new range]', 'no range', undefined],
    ['a [new range]', '11 ranges', undefined],
  ])('the article goes with them: %s ← “%s”', (draft, words, expected) => {
    expect(put(draft, words)?.put).toBe(expected);
  });

  it('an article that changes is part of the stretch, one that stays is not', () => {
    expect(put('It has a [gas range] too', 'electric range')).toEqual({
      from: 7,
      to: 18,
      put: 'an electric range',
    });
    expect(put('It has a [gas range] too', 'coal range')).toEqual({ from: 9, to: 18, put: 'coal range' });
  });
});
