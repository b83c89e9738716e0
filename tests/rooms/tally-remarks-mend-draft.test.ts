/** A whole draft that is mended: which stretch gives way to which words, in which order, and what is left alone. */
import { describe, expect, it } from 'vitest';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import type { Finding, Known } from '../../src/tally/remarks/items/known.js';
import { mendFindings } from '../../src/tally/remarks/mend/mend-findings.js';
import { isWrong } from '../../src/tally/remarks/mend/trial.js';
import type { PartialSpec } from './house-from.js';
import { findingOf, knownFrom } from './tally-remarks-mend-case.js';

const SPEC: PartialSpec = {
  house: { built: '1948', lot: '0.21 acres', storeys: 'one' },
  levels: [
    { id: 'main', name: 'Main level', grade: 'above', size: "30' x 40'" },
    { id: 'cellar', name: 'Cellar', grade: 'below' },
  ],
  rooms: [
    { id: 'bed', level: 'main', use: 'bedroom' },
    { id: 'bath', level: 'main', use: 'bath' },
    { id: 'laundry', level: 'cellar', use: 'laundry' },
  ],
  systems: [
    { id: 'roof', is: 'roof', name: 'Roof', installed: '2019', did: 'replaced' },
    { id: 'furnace', is: 'furnace, gas', name: 'Furnace', installed: '2009', did: 'replaced' },
    {
      id: 'heater',
      is: 'water heater, tank, electric',
      name: 'Water heater',
      fuel: 'electric',
      installed: '2026-04',
      by: 'owner',
      did: 'replaced',
    },
    { id: 'tub', is: 'tub', name: 'Tub', installed: '2025', did: 'refinished' },
  ],
};
type Room = NonNullable<PartialSpec['rooms']>[number];

const known = knownFrom(SPEC);

/** What the draft says → what is put in its place; "left out" where nothing is. */
function mended(text: string, { house, tally }: Known = known): string[] {
  return mendFindings(text, checkRemarks(text, house, tally), house, tally)
    .filter(isWrong)
    .map(({ says, instead }) => `${says} → ${instead ?? 'left out'}`);
}

describe('a draft', () => {
  it.each<[string, readonly string[]]>([
    ['The roof is of 2019.', []],
    ['Enjoy the 2016 roof.', ['2016 roof → 2019 roof']],
    [
      'A new furnace and a gas water heater.',
      ['new furnace → 2009 furnace', 'a gas water heater → an electric water heater'],
    ],
    [
      'It has a brand new roof. BRAND NEW FURNACE!',
      ['brand new roof → 2019 roof', 'BRAND NEW FURNACE → 2009 FURNACE'],
    ],
    ['Two-story home.', ['Two-story → Single-story']],
    ['It is on half an acre.', ['half an acre → a 0.21-acre lot']],
    ['Built in 1931.', ['Built in 1931 → Built in 1948']],
    [
      'Water heater by a licensed plumber.',
      ['Water heater by a licensed plumber → Water heater by the owner'],
    ],
    ['Laundry on main level.', ['Laundry on main level → Laundry in the cellar']],
    ['A boiler keeps it warm.', ['boiler → gas furnace']],
  ])('%s', (text, expected) => {
    expect(mended(text)).toEqual(expected);
  });

  it('is mended sentence by sentence, however far it goes without a stop', () => {
    const filler = 'bright and cosy with a view and '.repeat(40);
    expect(mended(`${filler}a new furnace and ${filler}calm`)).toEqual(['new furnace → 2009 furnace']);
    // No blank to cut at.
    const solid = 'x'.repeat(600);
    expect(mended(`${solid} a new furnace ${solid}`)).toEqual(['new furnace → 2009 furnace']);
    expect(mended(`${'x'.repeat(495)} a new furnace ${'y'.repeat(495)}`)).toEqual([
      'new furnace → 2009 furnace',
    ]);
  });

  it('words that are no truer than those of the draft give way to the next', () => {
    const floor = (what: string): Pick<Room, 'finishes'> => ({ finishes: [{ on: 'floor', what }] });
    const rooms: PartialSpec['rooms'] = [
      { id: 'kitchen', level: 'main', use: 'kitchen', ...floor('sheet vinyl') },
      { id: 'bath', level: 'main', use: 'bath', ...floor('ceramic tile') },
    ];
    // Neither vinyl nor tile is throughout.
    expect(mended('Hardwood floors throughout.', knownFrom({ ...SPEC, rooms }))).toEqual([
      'Hardwood floors → Floors',
    ]);
    expect(mended('Hardwood floors.', knownFrom({ ...SPEC, rooms }))).toEqual([
      'Hardwood floors → Vinyl floors',
    ]);
    expect(mended('Tub replaced in 2021.')).toEqual(['Tub replaced → Tub refinished', '2021 → 2025']);
  });

  it('all permits are told in a sentence of their own, also over the end of a line', () => {
    const permits: PartialSpec['permits'] = [
      { id: 'pl', what: 'water heater', state: 'final' },
      { id: 'st', what: 'front steps', state: 'open' },
    ];
    const systems = SPEC.systems?.map((one) => (one.id === 'heater' ? { ...one, permit: 'pl' } : one)) ?? [];
    const work: PartialSpec['work'] = [
      { id: 'steps', what: 'front steps', did: 'replaced', permit: 'st', done: '2026-05' },
    ];
    expect(
      mended('Nice. All work\r\npermitted. Come.', knownFrom({ ...SPEC, permits, systems, work })),
    ).toEqual(['All work\r\npermitted → Plumbing permit closed; porch steps permit open']);
  });

  it('a sentence about “it” is read with the one before', () => {
    expect(mended('The furnace is big. It is new.')).toEqual(['It is new → It is from 2009']);
  });

  it('what was mended behind a stretch is read with it', () => {
    expect(mended('New furnace, new roof, gas water heater')).toEqual([
      'New furnace → 2009 furnace',
      'new roof → 2019 roof',
      'gas water heater → electric water heater',
    ]);
  });
});

describe('the limit of the listing service', () => {
  const limited = (limit: number, text: string) =>
    mended(text, knownFrom({ ...SPEC, listing: { 'remarks-limit': limit } }));
  const TEXT = 'Gas water heater.';

  it.each([
    [100, 'Gas water heater → Electric water heater'],
    [22, 'Gas water heater → Electric water heater'],
    // Too long by one: what is shorter is taken.
    [21, 'Gas water heater → Water heater'],
  ])('of %i characters', (limit, expected) => {
    expect(limited(limit, TEXT)).toEqual([expected]);
  });

  it('what is left out makes it no longer', () => {
    const text = 'One-owner home, gas water heater.';
    expect(limited(text.length + 5, text)).toEqual([
      'One-owner home → left out',
      'gas water heater → electric water heater',
    ]);
    expect(limited(text.length + 4, text)[1]).toBe('gas water heater → water heater');
  });

  it('that is passed already keeps nothing back', () => {
    expect(limited(10, TEXT)).toEqual(['Gas water heater → Electric water heater']);
  });
});

describe('findings of one draft', () => {
  const { house, tally } = known;
  const text = 'A gas water heater and gas furnace.';
  const at = (says: string, more: Partial<Finding>): Finding => {
    const from = text.indexOf(says);
    return findingOf({ from, to: from + says.length, says, ...more });
  };
  const fact = (id: string) => {
    const index = house.systems.findIndex((one) => one.id === id);
    return { path: ['systems', index], words: '', evidence: [] };
  };

  it('come back in order of their places, those that are right as they were', () => {
    const backed = at('gas furnace', { verdict: 'backed', instead: 'kept' });
    const wrong = at('gas water heater', {
      rule: 'kind.fuel',
      facts: [fact('heater')],
      instead: 'the judge’s',
    });
    const found = mendFindings(text, [backed, wrong], house, tally);
    expect(found.map(({ says, instead }) => [says, instead])).toEqual([
      ['A gas water heater', 'An electric water heater'],
      ['gas furnace', 'kept'],
    ]);
    expect(mendFindings(text, [backed], house, tally)).toEqual([backed]);
  });

  it('that begin together are tried from the longer one on, and one that overlaps is mended with the other', () => {
    const heater = (says: string) =>
      findingOf({ from: 0, to: says.length, says, rule: 'kind.fuel', facts: [fact('heater')] });
    const [long, short] = [heater('Gas water heater'), heater('Gas')];
    for (const list of [
      [long, short],
      [short, long],
    ]) {
      const found = mendFindings('Gas water heater.', list, house, tally);
      expect(found.map(({ says, instead }) => [says, instead])).toEqual([
        ['Gas', undefined],
        ['Gas water heater', 'Electric water heater'],
      ]);
    }
  });

  it('is not widened into what another finding has marked', () => {
    const draft = 'It has a brand new furnace.';
    const finding = (says: string, rule: string) => {
      const from = draft.indexOf(says);
      return findingOf({ from, to: from + says.length, says, rule });
    };
    const found = mendFindings(
      draft,
      [finding('brand', 'opinion'), finding('new', 'newness.new'), finding('furnace', 'other')],
      house,
      tally,
    );
    expect(found.map(({ says }) => says)).toEqual(['brand', 'new', 'furnace']);
  });
});
