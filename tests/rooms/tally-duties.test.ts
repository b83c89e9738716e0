/** Three-valued conditions, what is recorded of a duty, and what the owner is told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answerQuestion } from '../../src/tally/duties/answer-question.js';
import { deriveDuties, lastReadOf } from '../../src/tally/duties/derive-duties.js';
import type { Duties, Duty } from '../../src/tally/duties/duty.js';
import { type DutyFacts, readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { judgeCondition } from '../../src/tally/duties/judge-condition.js';
import { monthsUpTo } from '../../src/tally/duties/owner-builder.js';
import { allOf, anyOf, notOf, type Truth } from '../../src/tally/duties/truth.js';
import { type Condition, DUTY_FACTS, type DutyFactName } from '../../src/tally/tables/duties.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const ALL: readonly Truth[] = ['yes', 'no', 'not known'];

describe('yes, no and not known', () => {
  // Kleene’s strong three-valued logic, written out.
  test.each([
    ['yes', 'yes', 'yes', 'yes'],
    ['yes', 'no', 'no', 'yes'],
    ['yes', 'not known', 'not known', 'yes'],
    ['no', 'yes', 'no', 'yes'],
    ['no', 'no', 'no', 'no'],
    ['no', 'not known', 'no', 'not known'],
    ['not known', 'yes', 'not known', 'yes'],
    ['not known', 'no', 'no', 'not known'],
    ['not known', 'not known', 'not known', 'not known'],
  ] as const)('%s with %s: all %s, any %s', (a, b, all, any) => {
    expect(allOf([a, b])).toBe(all);
    expect(anyOf([a, b])).toBe(any);
  });

  test('not: yes and no change places, and what isn’t known stays so', () => {
    expect(ALL.map(notOf)).toEqual(['no', 'yes', 'not known']);
    // De Morgan’s law holds for all three values.
    for (const a of ALL) for (const b of ALL) expect(notOf(allOf([a, b]))).toBe(anyOf([notOf(a), notOf(b)]));
  });
});

describe('a question about a span', () => {
  type Case = readonly [low: number | undefined, high: number | undefined, truth: Truth];
  const span = (low: number | undefined, high: number | undefined) => ({ is: { low, high } });
  const open = undefined;
  const CASES: readonly (readonly ['lt' | 'lte' | 'gt' | 'gte' | 'eq' | 'ne', number, readonly Case[]])[] = [
    [
      'lt',
      1978,
      [
        [1948, 1948, 'yes'],
        [1978, 1978, 'no'],
        [1970, 1985, 'not known'],
        [open, 1960, 'yes'],
      ],
    ],
    [
      'lte',
      4,
      [
        [4, 4, 'yes'],
        [5, 5, 'no'],
        [3, 6, 'not known'],
        [open, open, 'not known'],
      ],
    ],
    [
      'gt',
      4,
      [
        [4, 4, 'no'],
        [5, open, 'yes'],
        [3, 6, 'not known'],
        [open, 4, 'no'],
      ],
    ],
    [
      'gte',
      4,
      [
        [4, 9, 'yes'],
        [1, 3, 'no'],
        [3, 6, 'not known'],
        [4, open, 'yes'],
      ],
    ],
    [
      'eq',
      4,
      [
        [4, 4, 'yes'],
        [5, 6, 'no'],
        [3, 6, 'not known'],
        [4, open, 'not known'],
      ],
    ],
    [
      'ne',
      4,
      [
        [4, 4, 'no'],
        [5, 6, 'yes'],
        [3, 6, 'not known'],
        [4, open, 'not known'],
      ],
    ],
  ];
  test.each(CASES)('%s %s', (op, value, cases) => {
    for (const [low, high, truth] of cases)
      expect(answerQuestion({ fact: 'units', op, value }, span(low, high)), `${low} to ${high}`).toBe(truth);
    expect(answerQuestion({ fact: 'units', op, value }, { is: undefined })).toBe('not known');
  });

  test('in: one of several', () => {
    const states = { fact: 'state', op: 'in', value: ['CA', 'NC'] } as const;
    expect(answerQuestion({ ...states, value: [...states.value] }, { is: 'NC' })).toBe('yes');
    expect(answerQuestion({ ...states, value: [...states.value] }, { is: 'OH' })).toBe('no');
  });

  test('agrees with every number that the span may stand for', () => {
    const ends = fc
      .tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }))
      .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
    fc.assert(
      fc.property(
        ends,
        fc.integer({ min: 0, max: 9 }),
        fc.constantFrom('lt', 'lte', 'gt', 'gte', 'eq', 'ne'),
        ([low, high], value, op) => {
          const says = {
            lt: (n: number) => n < value,
            lte: (n: number) => n <= value,
            gt: (n: number) => n > value,
            gte: (n: number) => n >= value,
            eq: (n: number) => n === value,
            ne: (n: number) => n !== value,
          }[op];
          const each = Array.from({ length: high - low + 1 }, (_, at) => says(low + at));
          const truth = each.every(Boolean) ? 'yes' : each.some(Boolean) ? 'not known' : 'no';
          expect(answerQuestion({ fact: 'units', op, value }, span(low, high))).toBe(truth);
        },
      ),
      { seed: 619 },
    );
  });
});

const FACTS = readDutyFacts(houseFrom(), '2026-11-20');
const YES_NO: readonly DutyFactName[] = ['foreclosure', 'condominium', 'association', 'pool', 'district'];

/** Facts of which some are known. */
const someFacts = fc.tuple(...YES_NO.map(() => fc.constantFrom('yes', 'no', undefined))).map(
  (values): DutyFacts => ({
    ...FACTS,
    ...Object.fromEntries(YES_NO.map((fact, at) => [fact, { ...FACTS[fact], is: values[at] }])),
  }),
);

const { condition } = fc.letrec<{ condition: Condition }>((tie) => ({
  condition: fc.oneof(
    { depthSize: 'small' },
    fc.record({
      fact: fc.constantFrom(...YES_NO),
      op: fc.constantFrom('eq' as const, 'ne' as const),
      value: fc.constantFrom('yes', 'no'),
    }),
    fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((all) => ({ all })),
    fc.array(tie('condition'), { minLength: 1, maxLength: 3 }).map((any) => ({ any })),
  ),
}));

describe('a condition', () => {
  test('a missing fact never decides: whatever it turns out to be, a decided result stays', () => {
    fc.assert(
      fc.property(
        condition,
        someFacts,
        fc.constantFrom(...YES_NO),
        fc.constantFrom('yes', 'no'),
        (when, facts, fact, value) => {
          const before = judgeCondition(when, facts);
          if (before.truth === 'not known' || facts[fact].is !== undefined) return;
          expect(judgeCondition(when, { ...facts, [fact]: { ...facts[fact], is: value } }).truth).toBe(
            before.truth,
          );
        },
      ),
      { seed: 1871, numRuns: 500 },
    );
  });

  test('says which facts decided it, known ones alone; and where it is open, which are missing', () => {
    fc.assert(
      fc.property(condition, someFacts, (when, facts) => {
        const { truth, because, missing } = judgeCondition(when, facts);
        for (const fact of because) expect(facts[fact].is).toBeDefined();
        for (const fact of missing) expect(facts[fact].is).toBeUndefined();
        expect(missing.length > 0).toBe(truth === 'not known');
        expect(because.length > 0 || truth === 'not known').toBe(true);
      }),
      { seed: 1872, numRuns: 500 },
    );
  });

  test('an unknown that counts as fulfilled is told as assumed', () => {
    const when = { all: [{ fact: 'pool', op: 'eq', value: 'yes', 'unknown-as': 'applies' }] } as const;
    expect(judgeCondition(when, FACTS)).toEqual({
      truth: 'yes',
      because: [],
      missing: [],
      assumed: ['pool'],
    });
  });
});

describe('facts', () => {
  const fact = (name: DutyFactName, spec: PartialSpec = {}) =>
    readDutyFacts(houseFrom(spec), '2026-11-20')[name];

  test('that the folder doesn’t have are not known, and say what to type', () => {
    const silent = readDutyFacts(houseFrom({ house: { kind: 'attached' } }), '2026-11-20');
    const derived = ['state', 'year-built', 'units', 'contract'];
    for (const name of DUTY_FACTS) {
      if (!derived.includes(name)) expect(silent[name].is, name).toBeUndefined();
      expect(silent[name].hint, name).not.toBe('');
    }
  });

  test('read from another word say so', () => {
    expect(fact('units')).toMatchObject({
      is: { low: 1, high: 1 },
      words: 'one dwelling, as the house is detached',
      path: ['house', 'kind'],
    });
    expect(fact('units', { duties: { units: 3 } })).toMatchObject({ is: { low: 3, high: 3 } });
    expect(fact('pool', { pool: {} })).toMatchObject({ is: 'yes', words: 'the folder names a pool' });
    expect(fact('pool', { pool: {}, duties: { pool: 'not known' } }).is).toBeUndefined();
    const work: PartialSpec['work'] = [{ id: 'a', what: 'floor', did: 'new', by: 'owner', done: '2026-04' }];
    const resale = { house: { bought: '2026-01-10', listed: '2026-06-20' }, work };
    expect(fact('for-resale', resale)).toMatchObject({ is: 'yes', path: ['work', 0] });
    expect(fact('for-resale', resale).words).toMatch(/listed 20 June 2026/);
    expect(fact('for-resale', { ...resale, money: { role: 'main-home' } }).is).toBeUndefined();
    expect(fact('for-resale', { ...resale, duties: { 'for-resale': 'no' } }).is).toBe('no');
  });

  test('of hired work leave out what was done before the purchase', () => {
    const spec = (done: string, by: string): PartialSpec => ({
      house: { bought: '2026-01-10' },
      people: [{ id: 'firm', name: 'Some Roofing' }],
      work: [{ id: 'a', what: 'roof', did: 'new', by, done }],
    });
    expect(fact('contractor-used', spec('2026-03', 'firm')).is).toBe('yes');
    expect(fact('contractor-used', spec('2019', 'firm')).is).toBeUndefined();
    expect(fact('contractor-used', spec('2026-03', 'family')).is).toBe('no');
    expect(fact('contractor-used', spec('2026-03', 'not-known')).is).toBeUndefined();
  });

  test('of hired work count finishes of rooms and structures that no work item tells of', () => {
    const own = { id: 'a', what: 'shelf', did: 'new', by: 'owner', done: '2026-04' } as const;
    const floor = { on: 'floor', what: 'tile', by: 'tiler', done: '2026-05' } as const;
    type Finish = NonNullable<NonNullable<PartialSpec['structures']>[number]['finishes']>[number];
    const used = (finish: Finish, place: 'bath' | 'porch' = 'bath') =>
      fact('contractor-used', {
        house: { bought: '2026-01-10' },
        people: [{ id: 'tiler', name: 'Some Tiles' }],
        levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
        rooms: [{ id: 'bath', level: 'main', use: 'bath', finishes: place === 'bath' ? [finish] : [] }],
        structures: [{ id: 'porch', is: 'porch', finishes: place === 'porch' ? [finish] : [] }],
        work: [own],
      });
    expect(used(floor)).toMatchObject({ is: 'yes', path: ['rooms', 0, 'finishes', 0] });
    expect(used(floor, 'porch')).toMatchObject({ is: 'yes', path: ['structures', 0, 'finishes', 0] });
    expect(used({ ...floor, by: 'family' }).is).toBe('no');
    expect(used({ ...floor, done: '2019' }).is).toBe('no');
    expect(used({ ...floor, work: 'a' }).is).toBe('no');
    expect(used({ ...floor, kept: true }).is).toBe('no');
    // Put in since, and nobody says by whom; but a mere description of the house is no work.
    expect(used({ on: 'floor', what: 'tile', done: '2026-05' }).is).toBeUndefined();
    expect(used({ on: 'floor', what: 'tile' }).is).toBe('no');
  });

  test('of hired work leave open what may be older than the purchase', () => {
    const used = (bought: string | undefined, done: string | undefined) =>
      fact('contractor-used', {
        house: bought === undefined ? {} : { bought },
        people: [{ id: 'firm', name: 'Some Roofing' }],
        work: [{ id: 'a', what: 'roof', did: 'new', by: 'firm', ...(done === undefined ? {} : { done }) }],
      });
    expect(used('2026-01-10', undefined)).toMatchObject({
      is: undefined,
      path: ['work', 0, 'done'],
      asks: 'whether hired work, “roof”, was done since the purchase',
    });
    expect(used('2026-01-10', '2026-01').is).toBeUndefined();
    expect(used('2026-01', '2026-01-20').is).toBeUndefined();
    expect(used('2026-01-10', '2026-01-10').is).toBe('yes');
    expect(used('2026-01-10', '2026-01-09').is).toBeUndefined();
    expect(used(undefined, '2026-05')).toMatchObject({ is: undefined, path: ['house', 'bought'] });
  });

  test('a contract that isn’t written lies ahead, or before a closing that has passed', () => {
    expect(fact('contract').is).toEqual({ low: '2026-11-20', high: undefined });
    const sold: PartialSpec = { house: { listed: '2026-06-20' }, duties: { closing: '2026-08-14' } };
    expect(fact('contract', sold).is).toEqual({ low: '2026-06-20', high: '2026-08-14' });
    expect(fact('contract', { duties: { contract: '2026-07' } }).is).toEqual({
      low: '2026-07-01',
      high: '2026-07-31',
    });
  });

  test.each([
    ['2026-01-15', '2026-01-15', 0],
    ['2026-01-15', '2026-01-16', 1],
    ['2026-01-15', '2026-02-15', 1],
    ['2026-01-15', '2026-02-16', 2],
    ['2026-01-31', '2026-03-01', 1],
    ['2026-01-31', '2026-03-02', 2],
  ])('months from %s up to %s: %i', (from, to, months) => {
    expect(monthsUpTo(from, to)).toBe(months);
  });
});

const OHIO: PartialSpec = { house: { built: 1985, listed: '2026-06-20' } };
const found = (spec: PartialSpec, asOf = '2026-11-20'): Duties => deriveDuties(houseFrom(spec), asOf, []);
const one = (id: string, spec: PartialSpec, asOf?: string): Duty | undefined =>
  found(spec, asOf).duties.find(({ rule }) => rule.id === id);

describe('what is recorded', () => {
  const given = (on: string): PartialSpec => ({
    ...OHIO,
    duties: { contract: '2026-07-09', given: [{ duty: 'oh-disclosure-form', on }] },
  });
  test.each([
    [OHIO, 'not recorded'],
    [{ ...OHIO, duties: { contract: '2026-07-09' } }, 'missing'],
    [{ ...OHIO, duties: { contract: '2026-12-09' } }, 'not recorded'],
    [given('2026-07-09'), 'recorded'],
    [given('2026-07-10'), 'late'],
    // A sale that closed had its contract.
    [{ ...OHIO, duties: { closing: '2026-08-14' } }, 'missing'],
  ] as const)('%#: %s', (spec, state) => {
    expect(one('oh-disclosure-form', spec as PartialSpec)?.record.state).toBe(state);
  });

  test('the day of a contract is a good one: missing only after it', () => {
    const sold: PartialSpec = { ...OHIO, duties: { contract: '2026-07-09' } };
    expect(one('oh-disclosure-form', sold, '2026-07-09')?.record.state).toBe('not recorded');
    expect(one('oh-disclosure-form', sold, '2026-07-10')?.record.state).toBe('missing');
  });

  test('what was given under lead: needs no second word, and a day under given: goes before it', () => {
    const spec: PartialSpec = {
      documents: [{ id: 'test-1', what: 'lead paint test', kind: 'report' }],
      lead: {
        known: { is: 'none known', evidence: ['test-1'] },
        reports: ['test-1'],
        'pamphlet-given': '2026-06-22',
      },
    };
    const words = (id: string, more: PartialSpec = {}): unknown => one(id, { ...spec, ...more })?.record;
    expect(words('us-lead-pamphlet')).toMatchObject({ state: 'recorded', words: '22 June 2026' });
    for (const id of ['us-lead-agents', 'us-lead-ten-days', 'us-lead-attachment'])
      expect(words(id)).toMatchObject({ state: 'not recorded' });
    const again = { duties: { given: [{ duty: 'us-lead-pamphlet', on: '2026-06-24', note: 'by post' }] } };
    expect(words('us-lead-pamphlet', again)).toMatchObject({ words: '24 June 2026, by post' });
    const late: PartialSpec = { ...spec, duties: { contract: '2026-06-21' } };
    expect(one('us-lead-pamphlet', late)?.record).toMatchObject({
      state: 'late',
      told: { path: ['lead', 'pamphlet-given'] },
    });
  });

  test('what the folder merely has of lead was not told to anybody yet', () => {
    const spec = (known: string, more: PartialSpec = {}): PartialSpec => ({
      ...more,
      house: { listed: '2026-06-20' },
      documents: [{ id: 'test-1', what: 'lead paint test', kind: 'report' }],
      lead: { known, reports: ['test-1'] },
    });
    for (const known of ['none known', 'not known']) {
      expect(one('us-lead-known', spec(known))?.record).toMatchObject({
        state: 'not recorded',
        words: `not recorded; stated in this folder: ${known}`,
      });
      const warning = found(spec(known)).diagnostics.find(({ severity }) => severity === 'warning');
      expect(warning?.message).toMatch(/us-lead-known, us-lead-reports/);
      expect(warning?.hints).toContain(
        'what stands under lead: is there to be told; that the buyer was told is recorded under given:',
      );
    }
    const sold = spec('none known', { duties: { contract: '2026-07-09' } });
    expect(one('us-lead-reports', sold)?.record).toMatchObject({
      state: 'missing',
      words: 'its day has passed and nothing is recorded; one report is on file',
      evidence: [],
    });
    const told = { contract: '2026-07-09', given: [{ duty: 'us-lead-known', on: '2026-06-22' }] };
    expect(one('us-lead-known', spec('none known', { duties: told }))?.record.state).toBe('recorded');
  });

  test('seven days before a closing are counted', () => {
    const az: PartialSpec = {
      house: { built: 1991, address: { city: 'Dry Lake Wells', state: 'AZ' } },
      duties: { unincorporated: 'yes', subdivided: 'no', closing: '2026-08-14' },
    };
    expect(one('az-affidavit', az)).toMatchObject({ result: 'applies', due: { day: '2026-08-07' } });
    expect(one('az-affidavit', az)?.due?.words).toMatch(/7 August 2026$/);
    const due = (closing: string) =>
      one('az-affidavit', { ...az, duties: { ...az.duties, closing } }, '2026-07-01')?.due;
    // Of a month the first day is told, and the last decides that it is late.
    expect(due('2026-12')?.words).toMatch(
      /: 24 November 2026 to be sure, as the closing is known as December 2026$/,
    );
    expect(due('2026-12')?.day).toBe('2026-12-24');
    expect(due('../2026-12')).toMatchObject({ day: '2026-12-24' });
    expect(due('../2026-12')?.words).not.toMatch(/24 December/);
  });

  test('last read is the earliest day of any rule, and no day of one from memory', () => {
    const rule = (read: 'quoted' | 'from memory', on: string) => ({ read, on });
    expect(
      lastReadOf([
        rule('quoted', '2026-11-26'),
        rule('from memory', '2026-10-01'),
        rule('quoted', '2026-11-25'),
        rule('from memory', '2026-12-01'),
      ]),
    ).toBe('2026-11-25');
  });
});

describe('the owner is told', () => {
  const told = (spec: PartialSpec, asOf?: string): string[] =>
    found(spec, asOf).diagnostics.map(({ severity, message }) => `${severity} ${message}`);

  test('nothing before the house is offered', () => {
    expect(told({})).toEqual([]);
    expect(told({ house: { listed: '2026-12-01' } })).toEqual([]);
    expect(told({ house: { listed: '2026-12-01' } }, '2026-12-01').length).toBeGreaterThan(0);
  });

  test('in one line what is due and not recorded', () => {
    const lines = told({ house: { built: 1948, listed: '2026-06-20' } });
    expect(lines.filter((line) => line.startsWith('warning'))).toEqual([
      'warning the house is offered (listed 20 June 2026), and nothing is recorded of what is due before a contract: us-lead-pamphlet, us-lead-known, us-lead-reports, us-lead-agents, us-lead-ten-days, us-lead-attachment and oh-disclosure-form',
    ]);
    const sold = told({ ...OHIO, duties: { contract: '2026-07-09' } });
    expect(sold).toContain(
      'warning the contract was signed 9 July 2026, and nothing is recorded of oh-disclosure-form',
    );
  });

  test('what has no day of its own, from the offer on or from the contract on', () => {
    const inState = (state: string, duties: PartialSpec['duties'] = {}): PartialSpec => ({
      house: {
        built: 1991,
        bought: '2020-01-10',
        listed: '2026-06-20',
        address: { city: 'Fallow Mills', state },
      },
      duties,
    });
    const asked = (spec: PartialSpec): string[] =>
      told(spec).filter((line) => /asked from then on/.test(line));
    const California = 'ca-transfer-statement and ca-hazard-statement';
    expect(asked(inState('CA'))).toEqual([
      `warning the house is offered (listed 20 June 2026), and nothing is recorded of what is asked from then on, before the closing: ${California}`,
    ]);
    expect(asked(inState('CA', { contract: '2026-07-09' }))).toEqual([
      `warning the contract was signed 9 July 2026, and nothing is recorded of what is asked from then on, before the closing: ${California}`,
    ]);
    const given = [
      { duty: 'ca-transfer-statement', on: '2026-06-20' },
      { duty: 'ca-hazard-statement', on: '2026-06-20' },
    ];
    expect(asked(inState('CA', { given }))).toEqual([]);
    // After the closing they are missing like all others.
    expect(told(inState('CA', { closing: '2026-08-01' })).join()).toContain(
      `the sale closed 1 August 2026, and nothing is recorded of ${California}`,
    );
    // Arizona’s association papers follow the notice of a sale, and an offer is none.
    expect(asked(inState('AZ', { association: 'yes' }))).toEqual([]);
    expect(asked(inState('AZ', { association: 'yes', contract: '2026-07-09' })).join()).toMatch(
      /: az-association-papers$/,
    );
    expect(asked(inState('AZ', { association: 'no', contract: '2026-07-09' }))).toEqual([]);
  });

  test('each missing fact once, with what hangs on it and what to type', () => {
    const az: PartialSpec = {
      house: { built: 1991, listed: '2026-06-20', address: { city: 'Dry Lake Wells', state: 'AZ' } },
    };
    const notes = found(az).diagnostics.filter(({ severity }) => severity === 'note');
    expect(notes.map(({ path }) => path?.join('.'))).toEqual([
      'duties.unincorporated',
      'duties.subdivided',
      'duties.pool',
      'duties.association',
      'permits',
    ]);
    expect(notes[0]).toMatchObject({
      message: 'whether it lies outside every city and town is not known, and az-affidavit depends on it',
      hints: ['add  duties: { unincorporated: no }  or what is so'],
    });
    const said = found({ ...az, duties: { unincorporated: 'no', association: 'no', pool: 'no' } });
    expect(
      said.diagnostics.filter(({ severity }) => severity === 'note').map(({ path }) => path?.[0]),
    ).toEqual(['permits']);
  });

  test('of a name that no rule has, with the nearest', () => {
    const [first] = found({
      duties: { given: [{ duty: 'oh-disclosure-from', on: '2026-06-01' }] },
    }).diagnostics;
    expect(first).toMatchObject({
      path: ['duties', 'given', 0, 'duty'],
      hints: ['perhaps  duty: oh-disclosure-form'],
    });
  });

  test('which day was too late: the earliest that is given', () => {
    const given = ['2026-07-20', '2026-07-12'].map((on) => ({ duty: 'oh-disclosure-form', on }));
    const late = found({ ...OHIO, duties: { contract: '2026-07-09', given } }).diagnostics.find(
      ({ message }) => message.includes('is recorded for'),
    );
    expect(late?.message).toMatch(/recorded for 12 July 2026/);
    expect(late?.path).toEqual(['duties', 'given', 1, 'on']);
  });

  test('of open permits and of a licensed trade without its number as what is lacking, and that no law asks it', () => {
    const spec: PartialSpec = {
      people: [
        { id: 'a', name: 'Some Electric', trade: 'electrician' },
        { id: 'b', name: 'Other Electric', trade: 'electrician', licence: 'not known' },
        { id: 'c', name: 'Some Painting', trade: 'painter' },
      ],
      work: ['a', 'b', 'c'].map((by) => ({ id: `work-${by}`, what: 'circuits', did: 'new' as const, by })),
      permits: [
        { id: 'p', number: 'EL-1', what: 'circuits', state: 'open' },
        { id: 'q', what: 'roof', state: 'final', final: '2026-05-01' },
      ],
    };
    expect(told(spec)).toEqual([]);
    const { tally, diagnostics } = deriveTally(houseFrom(spec), '2026-11-20');
    const lacks = tally.gaps.map((gap) => gap.lacks).filter((words) => /inspection|licence/.test(words));
    expect(lacks).toEqual([
      'permit EL-1 for circuits is open: no final inspection is recorded',
      'Some Electric worked here as electrician, and no licence number is recorded',
    ]);
    expect(
      diagnostics.filter(({ message }) => /EL-1|Some Electric/.test(message)).map(({ code }) => code),
    ).toEqual(['tally.gap', 'tally.gap']);
  });

  test('a state without rules has the federal ones alone', () => {
    const colorado = found({ house: { address: { city: 'Fallow Mills', state: 'CO' } } });
    expect(colorado.pack).toBeUndefined();
    expect(colorado.duties.every(({ rule }) => rule.id.startsWith('us-'))).toBe(true);
    expect(found({}).pack).toBe('Ohio');
  });
});
