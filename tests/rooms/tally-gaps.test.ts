import { CORE_SCHEMA, load } from 'js-yaml';
import { describe, expect, test } from 'vitest';
import type { FactPath } from '../../src/diagnostics/fact-path.js';
import { checkHouse } from '../../src/facts/check-house.js';
import { checkReferences } from '../../src/facts/check-references.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-06-20';
type Gap = Tally['gaps'][number];

const gapsOf = (spec: PartialSpec, asOf = AS_OF): readonly Gap[] =>
  deriveTally(houseFrom(spec), asOf).tally.gaps;
const lacking = (spec: PartialSpec, words: RegExp): readonly Gap[] =>
  gapsOf(spec).filter((gap) => words.test(gap.lacks));

const HOUSE = {
  name: 'Thin House',
  address: { city: 'Fallow Mills', state: 'OH' },
  kind: 'attached',
  built: 'not known',
} as const;
const LEVEL = { id: 'main', name: 'Main level', grade: 'above' as const };

/** Houses that lack as much as they can, so that between them every kind of gap is met. */
const THIN: readonly PartialSpec[] = [
  { house: HOUSE },
  {
    house: HOUSE,
    measured: { by: 'owner', method: 'other' },
    pool: {},
    levels: [
      { ...LEVEL, openings: [{ what: 'stair to the attic', size: `3' x 10'` }] },
      { id: 'upper', name: 'Upper level', grade: 'above' },
    ],
    rooms: [
      {
        id: 'bed',
        level: 'main',
        use: 'bedroom',
        finishes: [{ on: 'walls', what: 'paint', did: 'painted' }],
      },
      { id: 'bed-2', level: 'upper', use: 'bedroom', 'sleeping-area': 'east' },
      { id: 'bed-3', level: 'upper', use: 'bedroom', 'sleeping-area': 'west' },
      { id: 'hall-west', level: 'upper', use: 'hall', 'sleeping-area': 'west' },
      { id: 'hall-east', level: 'upper', use: 'hall', 'sleeping-area': 'east' },
    ],
    structures: [
      { id: 'porch', is: 'porch', finishes: [{ on: 'floor', what: 'quarry tile', did: 'new', done: 2026 }] },
    ],
    systems: [
      { id: 'furnace', is: 'furnace', warranty: [{ years: 5 }, { of: 'coil', years: 10 }] },
      { id: 'heater', is: 'water heater, tank, gas', warranty: { years: 6 } },
      { id: 'stove', is: 'range', kept: true, name: 'Kitchen range' },
      // A thing that has the id which a hint would propose.
      { id: 'roof', is: 'attic fan' },
    ],
    work: [{ id: 'pipe', what: 'pipe to the sink', did: 'repaired', warranty: { years: 1 } }],
    stairs: [{ id: 'front', risers: 4, handrail: 'not known' }],
    photos: { A1: { shows: 'stair: "old" side', when: 'before' } },
  },
];

/** What a hint gives to type: whole lines between double blanks, `- ` for an item of the list named before. */
function typed(hint: string): { readonly list: string | undefined; readonly line: string }[] {
  const parts = hint.split(/ {2,}/);
  return parts.flatMap((line, at) => {
    if (!/^(- )?[{a-z-].*: ?\S/.test(line) || line.endsWith(':')) return [];
    const list = /under (?:its )?([a-z-]+):$/.exec(parts[at - 1] ?? '')?.[1];
    return line.startsWith('- ') || list === undefined ? [{ list, line }] : [];
  });
}

type Node = Record<string, unknown> | unknown[];

/** The house with one typed line in it, where the gap says. */
function withLine(spec: PartialSpec, gap: Gap, { list, line }: ReturnType<typeof typed>[number]): unknown {
  const house = structuredClone(spec) as Record<string, unknown>;
  const value = load(line, { schema: CORE_SCHEMA }) as Record<string, unknown> | unknown[];
  if (list !== undefined) {
    const holder = (gap.hint.includes('its finishes') ? at(house, gap.path) : house) as Record<
      string,
      unknown
    >;
    holder[list] = [...((holder[list] as unknown[] | undefined) ?? []), ...(value as unknown[])];
    return house;
  }
  const [word = ''] = Object.keys(value);
  // A word that is the last of the path, or of the whole house, stands where the path ends.
  const target = gap.path.at(-1) === word ? gap.path.slice(0, -1) : gap.path;
  Object.assign(at(house, target) as object, value);
  return house;
}

const at = (root: unknown, path: FactPath): unknown =>
  path.reduce<unknown>((node, part) => (node as Node)?.[part as never], root);

describe('each hint of a thin house, typed where the gap stands', () => {
  const cases = THIN.flatMap((spec) =>
    gapsOf(spec).flatMap((gap) => typed(gap.hint).map((one) => ({ spec, gap, one, line: one.line }))),
  );

  test('hints of nearly every gap are whole lines', () => {
    const all = THIN.flatMap((spec) => gapsOf(spec));
    const without = all.filter((gap) => typed(gap.hint).length === 0).map((gap) => gap.lacks);
    expect(without).toEqual(['no permit is named for “pipe to the sink”, and buyers ask']);
    expect(cases.length).toBeGreaterThan(50);
  });

  test.each(cases)('$gap.lacks → $line', ({ spec, gap, one }) => {
    const written = withLine(spec, gap, one);
    const { house, diagnostics } = checkHouse(written);
    expect(diagnostics).toEqual([]);
    if (house === undefined) throw new Error('nothing was left of the house');
    expect(checkReferences(house)).toEqual([]);
    const { tally, diagnostics: derived } = deriveTally(house, AS_OF);
    expect(derived.filter((other) => other.severity === 'error')).toEqual([]);
    // The gap is closed, and the tables know what was typed.
    expect(tally.gaps.map((other) => other.lacks)).not.toContain(gap.lacks);
    const unknownLife = (list: typeof derived) =>
      list.filter((other) => other.code === 'tally.no-life').length;
    expect(unknownLife(derived)).toBeLessThanOrEqual(
      unknownLife(deriveTally(houseFrom(spec), AS_OF).diagnostics),
    );
  });
});

describe('which gaps there are', () => {
  const systems = (...list: NonNullable<PartialSpec['systems']>) => ({ systems: list });

  test('lead is asked near the top of a house that may be from before 1978, and of no later one', () => {
    const unsaid = (built: string | number) => lacking({ house: { built } }, /lead paint/);
    expect(unsaid(1948)).toMatchObject([{ path: ['lead'], audiences: ['buyer'] }]);
    expect(unsaid('not known')).toHaveLength(1);
    expect(unsaid(1978)).toEqual([]);
    expect(lacking({ lead: { known: 'not known' } }, /lead paint/)).toEqual([]);
    const order = gapsOf({ house: { built: 1948 } }).findIndex((gap) => gap.path[0] === 'lead');
    expect(order).toBeLessThan(3);
  });

  test('fuel, of what may burn and of heating, unless its name tells', () => {
    const asked = (is: string, extra: object = {}) =>
      lacking(systems({ id: 'one', is, ...extra }), /runs on is not said/).length === 1;
    for (const is of ['furnace', 'boiler', 'range', 'radiator', 'water heater, tankless'])
      expect(asked(is), is).toBe(true);
    for (const is of ['furnace, gas', 'electric baseboard heat', 'heat pump, air source', 'range hood'])
      expect(asked(is), is).toBe(false);
    expect(asked('radiator', { fuel: 'none' })).toBe(false);
    expect(asked('furnace', { did: 'removed' })).toBe(false);
  });

  test('a pool, with or without the word for it, until something is said to stand around it', () => {
    const pool = /what stands around it/;
    expect(lacking({ pool: {} }, pool)).toHaveLength(1);
    expect(lacking(systems({ id: 'p', is: 'pool pump' }), pool)[0]?.hint).toMatch(/^add {2}pool: \{/);
    expect(lacking({ pool: { barriers: [{ what: 'fence' }] } }, pool)).toEqual([]);
    expect(lacking({}, pool)).toEqual([]);
  });

  test('stairs that the levels name and nobody counted; handrails said to be not known', () => {
    const stair = { what: 'stair down', size: `3' x 10'` };
    const level = (openings: object[]) =>
      [{ ...LEVEL, size: `40' x 26'`, openings }] as PartialSpec['levels'];
    const counted = { id: 's', risers: 9, handrail: 'yes' as const };
    expect(lacking({ levels: level([stair]) }, /handrail is not said|a handrail/)[0]?.lacks).toBe(
      'whether there is a handrail is not said: stair down',
    );
    expect(lacking({ levels: level([stair, stair]), stairs: [counted] }, /under stairs/)[0]?.lacks).toBe(
      '2 stairs lead from level to level, and 1 of them is under stairs:',
    );
    expect(lacking({ levels: level([stair]), stairs: [counted] }, /stair/)).toEqual([]);
    expect(lacking({ levels: level([{ what: 'open well', size: `3' x 3'` }]) }, /stair/)).toEqual([]);
    expect(
      lacking({ stairs: [{ ...counted, name: 'Cellar stair', handrail: 'not known' }] }, /Cellar stair/)[0]
        ?.path,
    ).toEqual(['stairs', 0, 'handrail']);
  });

  test('the bracket of a range and the setting of a water heater, unless it goes or is gone', () => {
    const asked = (extra: object, words: RegExp) =>
      lacking(
        systems({ id: 'r', is: 'range, gas', ...extra }, { id: 'h', is: 'water heater, tank, gas' }),
        words,
      ).length;
    expect([asked({}, /tipping/), asked({ 'anti-tip': 'not known' }, /tipping/)]).toEqual([1, 1]);
    for (const extra of [{ 'anti-tip': 'no' }, { conveys: 'no' }, { did: 'removed' }])
      expect(asked(extra, /tipping/)).toBe(0);
    expect(asked({}, /how hot “water heater, tank, gas” is set/)).toBe(1);
  });

  test('dues where a wall is shared, until something is said of them', () => {
    const dues = (spec: PartialSpec) => lacking(spec, /dues/).length;
    expect(dues({ house: { kind: 'attached' } })).toBe(1);
    expect(dues({})).toBe(0);
    expect(
      dues({
        house: { kind: 'attached' },
        answers: [{ ask: 'Are there association dues?', answer: 'none' }],
      }),
    ).toBe(0);
  });

  test('half a pair of photos', () => {
    const pair = (photos: object) =>
      lacking(
        {
          photos: { A: { shows: 'stair', alt: 'A stair.' }, B: { shows: 'stair', alt: 'A stair.' } },
          work: [{ id: 'w', what: 'handrail', did: 'new', photos }],
        },
        /has a photo from/,
      ).map((gap) => gap.lacks);
    expect(pair({ before: 'A' })).toEqual(['work has a photo from before it, and none from after it']);
    expect(pair({ after: 'A' })).toEqual(['work has a photo from after it, and none from before it']);
    expect(pair({ before: 'A', after: 'B' })).toEqual([]);
    expect(pair({ during: ['A'] })).toEqual([]);
  });

  test('what was taken out is asked nothing, and a solar panel is no electrical one', () => {
    expect(
      lacking(systems({ id: 'r', is: 'roof, slate or tile', did: 'removed' }), /about the roof/),
    ).toHaveLength(1);
    expect(lacking(systems({ id: 'r', is: 'roof, metal', did: 'removed' }), /age of/)).toEqual([]);
    expect(lacking(systems({ id: 's', is: 'solar panels' }), /electrical panel/)).toHaveLength(1);
    expect(lacking(systems({ id: 'p', is: 'pipes, copper' }), /supply pipes/)).toEqual([]);
    expect(lacking(systems({ id: 'h', is: 'water heater, heat pump' }), /heating|cooling/)).toHaveLength(2);
  });

  test('each says a printed name, and they are told by rank', () => {
    const gaps = THIN.flatMap((spec) => gapsOf(spec));
    expect(gaps.some((gap) => gap.lacks.includes('“Kitchen range”'))).toBe(true);
    for (const gap of gaps) expect(gap.lacks).not.toMatch(/\b(hall|bed|porch|stove|front)-?\d?\b|undefined/);
    for (const spec of THIN) {
      const ranks = gapsOf(spec).map((gap) => gap.rank);
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    }
    // What can't be listed without comes before what hurts, and that before what only the next owner misses.
    const rank = (words: RegExp) => gaps.find((gap) => words.test(gap.lacks))?.rank ?? Number.NaN;
    const order = [
      /no size|size of/,
      /lead paint/,
      /about the roof/,
      /pool/,
      /smoke alarm/,
      /who did/,
      /lot of/,
    ];
    const ranks = order.map(rank);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  test('dates to type are not after the day it is made for', () => {
    for (const spec of THIN)
      for (const gap of gapsOf(spec, '2024-02-29'))
        expect(gap.hint, gap.lacks).not.toMatch(/(date|made|done): 202(5|6|4-(0[3-9]|1))/);
  });
});
