/** Turns of wording that a draft may take, read against the first demo house: numbers, questions, lists, what is denied. */
import { beforeAll, expect, it } from 'vitest';
import { checkOf, linesFound } from './remarks-of.js';

/** A draft, and all that is found in it: verdict, rule, the characters underlined. Judged by reading the files of content/. */
const CASES: readonly (readonly [draft: string, ...found: string[]])[] = [
  [
    '989 sq ft unimproved whitewashed concrete-walled cellar',
    'contradicted size.living-area: 989 sq ft',
    'wider newness.untouched: unimproved',
    'contradicted newness.painted: whitewashed concrete-walled cellar',
  ],
  ['The range heads to the new owner', 'backed conveys.stays: range heads'],
  ['All bedrooms are upstairs', 'contradicted place: bedrooms'],
  [
    'Neither range nor refrigerator stays',
    'contradicted conveys.goes: range',
    'contradicted conveys.goes: refrigerator stays',
  ],
  ['The roof was put on Jun. 3, 2019.', 'backed date.year: put on Jun. 3, 2019'],
  ['How old would you say it is, the roof? 3 years', 'contradicted date.age: 3 years'],
  ['1,436 s.f. of living space', 'backed size.living-area: 1,436 s.f'],
  ['A:'],
  [
    'Any leaks in the cellar? Yes.',
    'backed condition.dry: leaks in the cellar? Yes',
    'backed there: cellar? Yes',
  ],
  ['Does the furnace work? No.', 'no-fact condition.works: work? No'],
  [
    'Clay tile inside',
    'contradicted kind.roof-covering: Clay',
    'contradicted kind.roof-covering: tile',
    'contradicted place: tile',
  ],
  ['Carpet except in the den', 'backed kind.floor-covering: Carpet'],
  ['A second primary bedroom'],
  ['Built in the 1950´s', 'contradicted date.built: Built in the 1950´s'],
  [
    'Roof replaced with all work permitted',
    'backed newness.replaced: Roof replaced',
    'contradicted permit: all work permitted',
  ],
  ['A year-old furnace.', 'contradicted date.age: A year-old', 'backed kind.heating-kind: furnace'],
  ['The roof was replaced a year ago.', 'contradicted date.ago: replaced a year ago'],
  ['1,436 sq-ft house', 'backed size.living-area: 1,436 sq-ft'],
  ['PNL. NEW', 'contradicted newness.new: PNL. NEW'],
  ['Quad garage', 'contradicted count.cars: Quad', 'backed there: garage'],
  ['A 2019 sq ft house', 'contradicted size.living-area: 2019 sq ft'],
  ['100 % of the windows are new', 'contradicted newness.new: windows are new'],
  ['Sq ft: 12'],
  ['The lot is two and x / 2 acres', 'contradicted size.lot: 2 acres'],
  ['1 / 2 bath'],
  ['What stays? vinyl', 'backed kind.floor-covering: vinyl', 'backed conveys.stays: What stays? vinyl'],
  ['How many bedrooms? Shop.'],
  ['Kitchen.\nThat in oak', 'contradicted kind.floor-covering: oak'],
  ['No garage or shed', 'contradicted not-there: garage', 'no-fact not-there: shed'],
  ['All new except the range'],
  ['1F/1H baths', 'backed count.baths: 1F', 'backed count.baths: 1H baths'],
  ['2F/1H baths', 'contradicted count.baths: 2F', 'backed count.baths: 1H baths'],
  ['1F/2H baths', 'backed count.baths: 1F', 'contradicted count.baths: 2H baths'],
  [
    'Opportunity to own this lovely home with a chance to add a pool',
    'opinion praise: lovely',
    'opinion aside: chance to add a pool',
  ],
  ['The front door was not painted by the owner'],
  ['It was not painted'],
  ['A newer bath', 'backed newness.newer: newer bath'],
  ['The hall bath floor'],
  ['Two of the three baths were remodeled', 'backed newness.updated: baths were remodeled'],
  ['A pedestal sink in the bath', 'contradicted kind.sink-mount: pedestal sink'],
  ['No pool? No.', 'backed not-there: pool? No'],
  ['A second half washroom', 'contradicted count.baths: second half washroom'],
  ['Painted cabinets from 2010', 'contradicted date.year: Painted cabinets from 2010'],
  ['The water heater is a few years old', 'backed newness.young: water heater is a few years old'],
  ['Was the entire house rewired? No.', 'no-fact newness.replaced: entire house rewired? No'],
  [
    '1,436 s.f., three bedrooms',
    'backed size.living-area: 1,436 s.f.',
    'backed count.bedrooms: three bedrooms',
  ],
  ['The range leaves us', 'contradicted conveys.goes: range leaves'],
  ['A dwelling of 20 x 20', 'contradicted size.room: 20 x 20'],
  [
    'New carpet in three of the bedrooms',
    'contradicted newness.new: New',
    'contradicted kind.floor-covering: carpet',
  ],
  [
    'The hot tub by the front steps passed inspection',
    'no-fact not-told: hot tub',
    'contradicted permit: front steps passed inspection',
  ],
  [
    'Blinds are excluded, and the shades are not',
    'contradicted conveys.goes: Blinds are excluded',
    'backed conveys.stays: shades',
  ],
  [
    'How many baths? Two approx. and a dry basement',
    'contradicted count.baths: baths? Two',
    'contradicted condition.dry: dry basement',
  ],
];

let check: Awaited<ReturnType<typeof checkOf>>;
beforeAll(async () => {
  check = await checkOf('quarry-road');
});

it.each(CASES.map(([draft, ...found]) => [draft, found] as const))('%s', (draft, found) => {
  expect(linesFound(check(draft))).toEqual(found);
});

it('a clause about a room of the folder whose use the tables have no word for', () => {
  // The utility room of this folder has a condition of its own, and "master" names another room.
  expect(
    linesFound(
      check('A list of work master is on the counter, and the stucco has been repaired on every side.'),
    ),
  ).not.toContain('contradicted condition.listed: stucco has been repaired');
});
