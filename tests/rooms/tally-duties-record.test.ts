/** What the folder says of a thing that was to be told or handed over, and until when its papers are kept. */
import { describe, expect, it, test } from 'vitest';
import { readDate } from '../../src/facts/date.js';
import type { DutyKeep, DutyRecord, DutyTelling } from '../../src/tally/duties/duty.js';
import { deriveTally } from '../../src/tally/tally.js';
import { AS_OF, dutiesOf, duty, inState } from './duties-of.js';
import { houseFrom, type PartialSpec } from './house-from.js';

describe('what is recorded', () => {
  const none: DutyRecord = { state: 'none', words: '', evidence: [], told: undefined };
  const given = (...list: NonNullable<NonNullable<PartialSpec['duties']>['given']>): PartialSpec => ({
    house: { built: 1991 },
    documents: ['a', 'b'].map((id) => ({ id, what: 'a signed form', kind: 'record' })),
    duties: { contract: '2026-07-09', given: list },
  });
  const id = 'oh-disclosure-form';
  const on = (day: string): DutyTelling['on'] => {
    const read = readDate(day);
    if (!read.ok) throw new Error(day);
    return read.value;
  };

  it('nothing, of what tells the buyer nothing or does not apply', () => {
    const list = ['oh-town-inspection', 'us-lead-safe-work', 'us-lead-pamphlet'].map((name) => ({
      duty: name,
      on: '2026-06-01',
    }));
    const spec = given(...list);
    expect(dutiesOf(spec).flatMap(({ rule, record }) => (record.state === 'none' ? [rule.id] : []))).toEqual([
      'us-lead-pamphlet',
      'us-lead-known',
      'us-lead-reports',
      'us-lead-agents',
      'us-lead-ten-days',
      'us-lead-attachment',
      'us-lead-safe-work',
      'oh-town-inspection',
    ]);
    for (const { duty: name } of list) expect(duty(name, spec).record).toEqual(none);
    // Nor of work that applies.
    const work = duty('us-lead-safe-work', { duties: { 'for-resale': 'yes', given: list } });
    expect([work.result, work.record]).toEqual(['applies', none]);
  });

  it('the first of several of one day, with the papers of all', () => {
    const spec = given(
      { duty: 'oh-disclosure-form', on: '2026-07-02', evidence: ['b'] },
      { duty: 'us-lead-known', on: '2026-06-01' },
      { duty: id, on: '2026-07-01', note: 'by hand', evidence: ['a'] },
      { duty: id, on: '2026-07-01', note: 'by post' },
    );
    expect(duty(id, spec).record).toEqual({
      state: 'recorded',
      words: '1 July 2026, by hand',
      evidence: ['b', 'a'],
      told: { on: on('2026-07-01'), path: ['duties', 'given', 2, 'on'], after: undefined },
    } satisfies DutyRecord);
  });

  it('what stands under lead:, where nothing stands under given:', () => {
    const lead: PartialSpec = { lead: { known: 'none known', 'pamphlet-given': '2026-06-22' } };
    expect(duty('us-lead-pamphlet', lead).record).toEqual({
      state: 'recorded',
      words: '22 June 2026',
      evidence: [],
      told: { on: on('2026-06-22'), path: ['lead', 'pamphlet-given'], after: undefined },
    } satisfies DutyRecord);
  });

  it('a day too late, with what it was due by', () => {
    expect(duty(id, given({ duty: id, on: '2026-07-10' })).record).toEqual({
      state: 'late',
      words: '10 July 2026; after its day',
      evidence: [],
      told: {
        on: on('2026-07-10'),
        path: ['duties', 'given', 0, 'on'],
        after: 'before the purchase agreement (contract 9 July 2026)',
      },
    } satisfies DutyRecord);
  });

  it('is not missed while nobody knows whether it applies', () => {
    const spec = inState('AZ', { duties: { contract: '2026-07-09' } });
    expect(duty('az-pool-notice', spec)).toMatchObject({
      result: 'not known',
      record: { state: 'not recorded', words: 'not recorded', evidence: [], told: undefined },
    });
    expect(duty('az-pool-notice', { ...spec, pool: {} }).record.state).toBe('missing');
  });

  it.each<readonly [string, PartialSpec['lead'], Readonly<Record<string, string>>]>([
    ['nothing said of lead', undefined, {}],
    ['no reports', { known: 'none known' }, { known: '; stated in this folder: none known' }],
    [
      'reports, and nobody knows of lead',
      { known: 'not known', reports: ['a'] },
      { known: '; stated in this folder: not known', reports: '; one report is on file' },
    ],
  ])('what the folder has: %s', (_, lead, added) => {
    const spec: PartialSpec = {
      documents: [{ id: 'a', what: 'lead paint test', kind: 'report' }],
      ...(lead === undefined ? {} : { lead }),
    };
    const words = dutiesOf(spec)
      .filter(({ rule }) => rule.id.startsWith('us-lead-') && rule.kind === 'tell')
      .map(({ rule, record }) => [rule.id.replace('us-lead-', ''), record.words]);
    expect(words).toEqual(
      ['pamphlet', 'known', 'reports', 'agents', 'ten-days', 'attachment'].map((name) => [
        name,
        `not recorded${added[name] ?? ''}`,
      ]),
    );
  });
});

// 40 CFR 745.113(c): three years from the completion of the sale; 745.86(a): three years after completion of a renovation.
test('papers are kept for the two rules that name a time, from the closing and from the last work beyond a little', () => {
  const windows = (at: number, done: string) => ({
    id: `w${at}`,
    what: 'windows',
    did: 'replaced' as const,
    by: 'firm',
    'windows-replaced': true,
    done,
  });
  const keep = (duties: PartialSpec['duties'], built = 1948): Record<string, DutyKeep> => {
    const spec: PartialSpec = {
      house: { built },
      people: [{ id: 'firm', name: 'Ridge Street Painting' }],
      work: [
        ...['2026-03-01', '2026-08-01', '2026-05-01'].map((done, at) => windows(at, done)),
        {
          id: 'small',
          what: 'trim',
          did: 'repaired',
          by: 'firm',
          'paint-disturbed': '1 sq ft',
          done: '2026-10-01',
        },
      ],
      duties,
    };
    return Object.fromEntries(
      deriveTally(houseFrom(spec), AS_OF).tally.duties.duties.flatMap(({ rule, keep: kept }) =>
        kept === undefined ? [] : [[rule.id, kept]],
      ),
    );
  };
  const work = {
    years: 3,
    through: '2029-08-01',
    from: 'the end of the last work that disturbed more than a little paint',
  };
  expect(keep({ closing: '2026-08-14' })).toEqual({
    'us-lead-attachment': { years: 3, through: '2029-08-14', from: 'the closing of 14 August 2026' },
    'us-lead-safe-work': work,
  });
  expect(keep({})).toEqual({
    'us-lead-attachment': { years: 3, through: undefined, from: 'the closing, which is not written' },
    'us-lead-safe-work': work,
  });
  // A later house has neither.
  expect(keep({ closing: '2026-08-14' }, 1991)).toEqual({});
});
