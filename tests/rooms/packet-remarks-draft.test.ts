/** Listing remarks written from the facts: the demo houses' at three lengths, and what may never stand in them. */
import path from 'node:path';
import { beforeAll, describe, expect, it, test } from 'vitest';
import type { Context } from '../../src/packet/context.js';
import { draftRemarks } from '../../src/packet/remarks-draft/draft-remarks.js';
import { numberedDraft } from '../../src/packet/remarks-draft/numbered-draft.js';
import { checkAdvertising } from '../../src/tally/advertising.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { remarksLength } from '../../src/tally/remarks-length.js';
import { goldenHouses, HOUSES_FOLDER } from '../tools/golden-houses.js';
import { demoContext, draftContext, folderContext } from './draft-context.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const EXPECTED: Readonly<Record<string, Readonly<Record<number, readonly string[]>>>> = {
  'quarry-road': {
    250: [
      'Story-and-a-half house built in 1948 on a 0.21-acre lot, with 3 bedrooms, 1 full bath and 1 half bath (no permit found for it).',
      '1,436 sq ft finished above grade, measured by the owner in 2026.',
      '2019 roof (permit closed June 2019); 2009 furnace.',
    ],
    500: [
      'Story-and-a-half house built in 1948 on a 0.21-acre lot, with 3 bedrooms, 1 full bath and 1 half bath (no permit found for it).',
      '1,436 sq ft finished above grade, measured by the owner in 2026.',
      '2019 roof (permit closed June 2019); 2009 furnace; 2026 electric water heater (permit closed April 2026).',
      'Kitchen: quartz counters, vinyl plank floor and refrigerator new in 2026; cabinets refinished in 2026.',
      'Oak strip floors in the living room, entry, hall, bedroom 1 and bedroom 2 refinished in 2026.',
    ],
    1000: [
      'Story-and-a-half house built in 1948 on a 0.21-acre lot, with 3 bedrooms, 1 full bath and 1 half bath (no permit found for it), plus a detached garage (no permit found for it).',
      '1,436 sq ft finished above grade, measured by the owner in 2026.',
      '2019 roof (permit closed June 2019); 2009 furnace; 2026 electric water heater (permit closed April 2026).',
      'Kitchen: quartz counters, vinyl plank floor, glazed tile backsplash, refrigerator and stainless steel sink new in 2026; cabinets refinished in 2026.',
      'Bath: hexagon mosaic tile floor, tile tub surround and porcelain-top vanity new in 2026.',
      'Oak strip floors in the living room, entry, hall, bedroom 1 and bedroom 2 refinished in 2026; pine board floor in bedroom 3 refinished in 2026; carpet in the landing and sewing alcove new in 2026.',
      'Kitchen circuits added in 2026 (electrical permit closed May 2026); kitchen and bath water lines replaced in 2026 (plumbing permit closed April 2026); bath fan new in 2026 (electrical permit closed May 2026).',
    ],
  },
  'larkspur-court': {
    250: [
      'One-story house built in 1991 on an 8,712 sq ft lot, with 3 bedrooms, 1 full bath and 1 three-quarter bath.',
      '2,162 sq ft finished above grade, measured by the owner in 2025.',
      'Electric heat pump made in 2013.',
      'Kitchen: quartz counters new in 2025.',
    ],
    500: [
      'One-story house built in 1991 on an 8,712 sq ft lot, with 3 bedrooms, 1 full bath and 1 three-quarter bath, plus an attached garage and a pool.',
      '2,162 sq ft finished above grade, measured by the owner in 2025.',
      'Electric heat pump made in 2013.',
      'Kitchen: quartz counters, vinyl plank floor and dishwasher new in 2025; cabinets refinished in 2025.',
      'Vinyl plank floors in the living room, dining room, hall and bedroom 2 new in 2025; carpet in bedroom 3, primary bedroom and walk-in closet new in 2025.',
    ],
    1000: [
      'One-story house built in 1991 on an 8,712 sq ft lot, with 3 bedrooms, 1 full bath and 1 three-quarter bath, plus an attached garage and a pool.',
      '2,162 sq ft finished above grade, measured by the owner in 2025.',
      'Electric heat pump made in 2013.',
      'Kitchen: quartz counters, vinyl plank floor, glazed tile backsplash, dishwasher and stainless steel sink new in 2025; cabinets refinished in 2025.',
      'Primary bath: porcelain tile floor and walk-in shower with porcelain tile new in 2025 (plumbing permit closed May 2025).',
      'Vinyl plank floors in the living room, dining room, hall and bedroom 2 new in 2025; carpet in bedroom 3, primary bedroom and walk-in closet new in 2025; porcelain plank floor in the family room new in 2025 (no permit found for the room).',
      'Roof underlayment on the garage and west slope repaired in 2025 (permit closed March 2025).',
      'Pool fence and gate on the east side replaced in 2025 (pool barrier permit open, not final); pool light replaced in 2025 (electrical permit closed March 2025).',
    ],
  },
};

describe.each(Object.keys(EXPECTED))('the draft of %s', (name) => {
  let context: Context;
  beforeAll(async () => {
    context = await demoContext(name);
  });

  it.each(Object.keys(EXPECTED[name] ?? {}).map(Number))('in %i characters', (length) => {
    const draft = draftRemarks(context, { length });
    expect(draft.text.split(/(?<=\.) /u)).toEqual(EXPECTED[name]?.[length]);
    expect(remarksLength(draft.text).characters).toBeLessThanOrEqual(length);
    expect(draft.left.length).toBeGreaterThan(0);
  });

  it('traces every phrase to a documented fact of the folder', () => {
    const { text, phrases } = draftRemarks(context, { length: 2000 });
    expect(phrases.length).toBeGreaterThan(30);
    for (const phrase of phrases) {
      expect(text.slice(phrase.from, phrase.to)).toBe(phrase.says);
      expect(phrase.mark.standing).toBe('documented');
      expect(phrase.evidence.length).toBeGreaterThan(0);
      expect(valueAt(context.house, phrase.path), phrase.says).toBeDefined();
    }
  });

  it('tells the owner’s statements where they are asked for, and nothing that is not known', () => {
    const documented = draftRemarks(context, { length: 9000 });
    const owner = draftRemarks(context, { length: 9000, owner: true });
    expect(documented.left).toEqual([]);
    expect(documented.text).not.toContain('Included:');
    expect(owner.text).toContain('Included:');
    expect(owner.phrases.some(({ mark }) => mark.standing === 'owner')).toBe(true);
    expect(owner.phrases.every(({ mark }) => mark.standing !== 'not-known')).toBe(true);
    expect(checkAdvertising(owner.text)).toEqual([]);
  });

  it('names nobody, no sum and no withheld street at any length', () => {
    const { people, money, house } = context.whole;
    const names = [...people, ...(money?.payees ?? [])]
      .map((one) => one.name)
      .filter((one) => one.includes(' '));
    expect(names.length).toBeGreaterThan(5);
    for (let length = 0; length <= 2400; length += 60) {
      const { text, phrases, left } = draftRemarks(context, { length });
      const said = [text, ...phrases.map(({ fact }) => fact), ...left.map(({ says }) => says)].join('\n');
      for (const one of names) expect(said).not.toContain(one);
      expect(text).not.toMatch(/\$|\d\.\d\d\b(?!-acre)|not known|undefined|\s\s|\(\)/u);
      expect(text).toMatch(/^$|\.$/u);
      expect(checkAdvertising(text)).toEqual([]);
      if (house.address.show !== 'full') expect(said).not.toContain('Tannery');
    }
  });
});

describe.each([...Object.keys(EXPECTED), ...goldenHouses()])('what is said of %s', (name) => {
  test.each([false, true])(
    'is accused by no rule of `remarks` at any length; owner’s word: %s',
    async (owner) => {
      const demo = EXPECTED[name] !== undefined;
      const context = await (demo
        ? demoContext(name)
        : folderContext(path.join(HOUSES_FOLDER, name, 'input')));
      for (const length of LENGTHS) {
        const { text } = draftRemarks(context, { length, owner });
        const accused = checkRemarks(text, context.whole, context.tally).filter(({ verdict }) =>
          ['contradicted', 'wider'].includes(verdict),
        );
        expect(
          accused.map(({ from, to, because }) => `${text.slice(from, to)}: ${because}`),
          `${length}: ${text}`,
        ).toEqual([]);
      }
    },
  );
});

/** Short and long ones, so that each fact is the last of some draft. */
const LENGTHS = [150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 1750, 2000, 2500, 3000, 4000];

function valueAt(house: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (value as Record<string | number, unknown> | undefined)?.[key],
    house,
  );
}

const PAPERS: PartialSpec['documents'] = [
  { id: 'slip', what: 'a slip', kind: 'receipt', date: '2026-04-01' },
  { id: 'el-paper', what: 'electrical permit with final', kind: 'permit' },
];
const draft = (spec: PartialSpec, length = 2000): string =>
  draftRemarks(draftContext(houseFrom({ documents: PAPERS, ...spec }), '2026-06-30'), { length }).text;
const KITCHEN = { id: 'main', name: 'Main level', grade: 'above', size: "30' x 20'", ceiling: "8'" } as const;
const kitchenWith = (finish: object, listed = '2026-06-20'): PartialSpec => ({
  house: { listed },
  levels: [KITCHEN],
  rooms: [
    {
      id: 'kitchen',
      level: 'main',
      use: 'kitchen',
      finishes: [{ on: 'counter', what: 'quartz slab', evidence: ['slip'], ...finish }],
    },
  ],
});

describe('“new”', () => {
  test('is for what was put in within the six months before the listing; else the year stands', () => {
    expect(draft(kitchenWith({ done: '2026-04-02' }))).toBe('Kitchen: quartz counters new in 2026.');
    expect(draft(kitchenWith({ done: '2025-12-21' }))).toBe('Kitchen: quartz counters new in 2025.');
    expect(draft(kitchenWith({ done: '2025-12-20' }))).toBe('Kitchen: quartz counters installed in 2025.');
    // Only the year is known, and it may have been January.
    expect(draft(kitchenWith({ done: '2025' }))).toBe('Kitchen: quartz counters installed in 2025.');
    expect(draft(kitchenWith({ done: '2026-04-02' }, '2026-12'))).toBe(
      'Kitchen: quartz counters installed in 2026.',
    );
  });
  test('is never said of what was refinished, nor of anything without a date', () => {
    expect(draft(kitchenWith({ did: 'refinished', done: '2026-04-02' }))).toBe(
      'Kitchen: quartz counters refinished in 2026.',
    );
    expect(draft(kitchenWith({ did: 'new' }))).toBe('');
    expect(draft(kitchenWith({ kept: true }))).toBe('');
  });
});

describe('a permit', () => {
  const porch = (permit: object): PartialSpec => ({
    permits: [{ id: 'p', what: 'porch', state: 'final', ...permit }],
    work: [
      {
        id: 'porch',
        what: 'porch steps, rail and guard',
        did: 'replaced',
        done: '2026-05',
        permit: 'p',
        evidence: ['slip'],
      },
    ],
  });
  test.each([
    [{ state: 'open' }, 'permit open, not final'],
    [{ state: 'expired' }, 'permit expired without a final inspection'],
    [{ state: 'final', final: '2026-05-19', evidence: ['el-paper'] }, 'electrical permit closed May 2026'],
    [{ state: 'none-found', evidence: ['slip'] }, 'no permit found'],
  ])('%j is told with the work', (permit, words) => {
    expect(draft(porch(permit))).toBe(`Porch steps, rail and guard replaced in 2026 (${words}).`);
  });
  test('that is missing by the owner’s word alone keeps the work untold, and never tells it without', () => {
    expect(draft(porch({ state: 'none-found' }))).toBe('');
  });
  test('that is open is told with a system’s year, whether the system or its work names it', () => {
    const house = (where: 'system' | 'work'): PartialSpec => ({
      permits: [{ id: 'p', what: 'heater', state: 'open' }],
      systems: [
        {
          id: 'wh',
          is: 'water heater, tank, electric',
          installed: '2026-05-02',
          ...(where === 'system' ? { permit: 'p' } : {}),
          evidence: ['slip'],
        },
      ],
      work: [
        {
          id: 'w',
          what: 'water heater',
          did: 'replaced',
          done: '2026-05-02',
          systems: ['wh'],
          ...(where === 'work' ? { permit: 'p' } : {}),
          evidence: ['slip'],
        },
      ],
    });
    expect(draft(house('system'))).toBe('2026 water heater (permit open, not final).');
    expect(draft(house('work'))).toBe('2026 water heater (permit open, not final).');
  });
  test('is told with a room that was added without one', () => {
    const text = draft({
      levels: [{ ...KITCHEN, evidence: ['slip'] }],
      rooms: [{ id: 'half', level: 'main', use: 'bath', bath: 'half' }],
      permits: [{ id: 'p', what: 'half bath', state: 'none-found', evidence: ['slip'] }],
      work: [{ id: 'w', what: 'half bath', did: 'added', where: ['half'], permit: 'p' }],
    });
    expect(text).toBe('House with 1 half bath (no permit found for it).');
  });
});

describe('what the owner wrote', () => {
  const work = (what: string, more: PartialSpec = {}): string =>
    draft({ work: [{ id: 'w', what, did: 'replaced', done: '2026-05', evidence: ['slip'] }], ...more });
  test('is told in American spelling', () => {
    expect(work('aluminium trim, grey')).toBe('Aluminum trim (gray) replaced in 2026.');
  });
  test.each([
    ['a person', 'gate by Mill Race Renovation', { people: [{ id: 'm', name: 'Mill Race Renovation' }] }],
    ['a sum', 'gate for $400', {}],
    ['a sum without a sign', 'gate for 400.00', {}],
    ['praise', 'beautiful gate', {}],
    ['people instead of property', 'gate, perfect for families', {}],
    ['a forbidden preference', 'gate of the adults only building', {}],
    ['a story', `gate ${'and post '.repeat(20)}`, {}],
    [
      'the withheld street',
      'gate to Tannery Lane',
      {
        house: {
          address: { street: '212 Tannery Lane', city: 'Fallow Mills', state: 'OH', show: 'street-withheld' },
        },
      },
    ],
  ] as const)('is left out where it tells %s', (_what, words, more) => {
    expect(work(words, more as PartialSpec)).toBe('');
  });
});

test('a house without papers gives an empty draft, and with the owner’s word a short one', () => {
  const context = draftContext(houseFrom({ levels: [KITCHEN] }), '2026-06-30');
  expect(draftRemarks(context, { length: 500 })).toEqual({ text: '', phrases: [], left: [] });
  expect(draftRemarks(context, { length: 500, owner: true }).text).toBe('House built in 1948.');
});

test('a bath of no stated kind leaves baths uncounted', () => {
  const rooms = [
    { id: 'a', level: 'main', use: 'bath', bath: 'full' },
    { id: 'b', level: 'main', use: 'bath' },
    { id: 'c', level: 'main', use: 'bedroom' },
  ] as const;
  expect(draft({ levels: [{ ...KITCHEN, evidence: ['slip'] }], rooms: [...rooms] })).toBe(
    'House with 1 bedroom.',
  );
});

test('numbers lead from each phrase to its fact and papers', () => {
  const context = draftContext(
    houseFrom({
      documents: PAPERS,
      house: {
        built: { is: 1948, evidence: ['slip'] },
        lot: { is: '0.21 acre', evidence: ['slip'] },
        water: { is: 'public', evidence: ['slip'] },
        sewer: { is: 'public', evidence: ['slip'] },
      },
    }),
    '2026-06-30',
  );
  expect(numberedDraft(draftRemarks(context, { length: 300 }))).toEqual({
    text: 'House built in 1948 [1] on a 0.21-acre lot [2]. Public water [3] and sewer [4].',
    traces: [
      '[1] When it was built. Documented: receipt (slip)',
      '[2] Size of the lot. Documented: receipt (slip)',
      '[3] Water. Documented: receipt (slip)',
      '[4] Waste water. Documented: receipt (slip)',
    ],
  });
});
