/** What comes of a rule for a house: the facts that decided it, which reading of it holds, and by when it is due. */
import { describe, expect, it } from 'vitest';
import type { Duty, DutyDue } from '../../src/tally/duties/duty.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { type Judged, judgeCondition } from '../../src/tally/duties/judge-condition.js';
import type { Condition } from '../../src/tally/tables/duties.js';
import { AS_OF, duty, inState } from './duties-of.js';
import { houseFrom, type PartialSpec } from './house-from.js';

describe('a condition', () => {
  const facts = readDutyFacts(houseFrom({ duties: { foreclosure: 'no', association: 'yes' } }), AS_OF);
  const is = (fact: 'foreclosure' | 'association' | 'pool' | 'district', value: string) =>
    ({ fact, op: 'eq', value }) as const;
  const nothing = { because: [], missing: [], assumed: [] };
  it.each<readonly [string, Condition, Judged]>([
    ['always', { always: true }, { ...nothing, truth: 'yes' }],
    ['a fact that is so', is('association', 'yes'), { ...nothing, truth: 'yes', because: ['association'] }],
    ['one that isn’t', is('foreclosure', 'yes'), { ...nothing, truth: 'no', because: ['foreclosure'] }],
    ['one that isn’t known', is('pool', 'yes'), { ...nothing, truth: 'not known', missing: ['pool'] }],
    [
      'one that isn’t known, which counts as so',
      { ...is('pool', 'yes'), 'unknown-as': 'applies' },
      { ...nothing, truth: 'yes', assumed: ['pool'] },
    ],
    [
      'a known one goes by what it is, however an unknown one counts',
      { ...is('foreclosure', 'yes'), 'unknown-as': 'applies' },
      { ...nothing, truth: 'no', because: ['foreclosure'] },
    ],
    [
      'all: what isn’t so decides, and each is named once',
      {
        all: [
          is('association', 'yes'),
          is('foreclosure', 'yes'),
          is('pool', 'yes'),
          is('foreclosure', 'yes'),
        ],
      },
      { ...nothing, truth: 'no', because: ['foreclosure'] },
    ],
    [
      'any: what is so decides',
      { any: [is('pool', 'yes'), is('association', 'yes'), is('foreclosure', 'yes')] },
      { ...nothing, truth: 'yes', because: ['association'] },
    ],
    [
      'any: what is open leaves it open',
      { any: [is('pool', 'yes'), is('foreclosure', 'yes'), is('district', 'yes')] },
      { ...nothing, truth: 'not known', missing: ['pool', 'district'] },
    ],
  ])('%s', (_, when, judged) => {
    expect(judgeCondition(when, facts)).toEqual(judged);
  });
});

describe('a form that has changed', () => {
  const about = ({ result, because, missing, assumed, versions }: Duty) => ({
    result,
    because: because.map(({ fact }) => fact),
    missing,
    assumed,
    from: versions.map(({ from }) => from),
  });
  it('that was not there yet lacks nothing and assumes nothing', () => {
    expect(about(duty('fl-flood', inState('FL', { duties: { contract: '2024-09-30' } })))).toEqual({
      result: 'does not apply',
      because: ['contract'],
      missing: [],
      assumed: [],
      from: [],
    });
  });

  it('has no reading for a house that it does not reach', () => {
    const york = inState('NY', { duties: { contract: '2026-06-01', condominium: 'yes' } });
    expect(about(duty('ny-condition-statement', york))).toEqual({
      result: 'does not apply',
      because: ['condominium'],
      missing: [],
      assumed: [],
      from: [],
    });
  });

  it('has none where there is one rule for all days', () => {
    expect(about(duty('az-pool-notice', inState('AZ', { pool: {} })))).toEqual({
      result: 'applies',
      because: ['pool'],
      missing: [],
      assumed: [],
      from: [],
    });
  });

  it('may have both readings, where nobody knows when the contract was', () => {
    const york = (contract: string) =>
      about(duty('ny-condition-statement', inState('NY', { duties: { contract } }))).from;
    expect(york('../2026-06-01')).toEqual([undefined, '2024-03-20']);
    expect(york('2020/..')).toEqual([undefined, '2024-03-20']);
    expect(york('../2024-03-19')).toEqual([undefined]);
    expect(york('2024-03-20/..')).toEqual(['2024-03-20']);
  });

  it.each<readonly [string, PartialSpec['house'], string, readonly string[]]>([
    ['from the listing on', { listed: '2025-10-15', bought: '2024-01-10' }, '2026-08-14', ['2025-10-01']],
    [
      'from the purchase on, where no listing is',
      { bought: '2024-01-10' },
      '2025-11-01',
      ['2024-10-01', '2025-10-01'],
    ],
    [
      'from the purchase on, where the listing is of a later sale',
      { listed: '2026-10-01', bought: '2024-01-10' },
      '2025-03-01',
      ['2024-10-01'],
    ],
    [
      'from any day on, where neither is before the closing',
      { listed: '2026-10-01' },
      '2025-03-01',
      ['2024-10-01'],
    ],
    ['on the day of the listing alone', { listed: '2025-03-01' }, '2025-03-01', ['2024-10-01']],
    ['up to a closing today', { listed: '2025-03-01' }, AS_OF, ['2024-10-01', '2025-10-01']],
    ['from today on, where the closing lies ahead', { listed: '2025-03-01' }, '2026-11-21', ['2025-10-01']],
  ])('a contract before a closing can be %s', (_, house, closing, from) => {
    expect(about(duty('fl-flood', inState('FL', { house, duties: { closing } }))).from).toEqual(from);
  });
});

describe('months owned, where the contract is open at an end', () => {
  const months = (contract: string) => {
    const spec = { house: { bought: '2025-01-10' }, duties: { contract } };
    const { is, words } = readDutyFacts(houseFrom(spec), AS_OF)['months-owned'];
    return [is, words];
  };
  it('is counted from and to the end that is known', () => {
    expect(months('2026-01-15/..')).toEqual([
      { low: 12, high: undefined },
      'at least 12 months from the purchase, 10 January 2025, to the contract of 15 January 2026 or after',
    ]);
    expect(months('../2026-01-15')).toEqual([
      { low: 0, high: 12 },
      '0 to 12 months from the purchase, 10 January 2025, to the contract of 15 January 2026 or before',
    ]);
  });

  it('so that California’s 18 months are left open, and not taken as over today (Civil Code 1102.6h)', () => {
    const sold = (contract: string): unknown =>
      duty('ca-eighteen-months', {
        ...inState('CA', { house: { bought: '2025-01-10' }, duties: { contract } }),
        people: [{ id: 'firm', name: 'Some Electric' }],
        work: [{ id: 'a', what: 'circuits', did: 'new', by: 'firm', done: '2025-04' }],
      }).result;
    expect(sold('2026-01-15/..')).toBe('not known');
    expect(sold('../2026-01-15')).toBe('not known');
    expect(sold('2026-08-15/..')).toBe('does not apply');
  });
});

describe('by when a thing is due', () => {
  const both = { contract: '2026-07-09', closing: '2026-08-14' };
  const closing = { closing: '2026-08-14' };
  it.each<readonly [string, string, PartialSpec['duties'], string, string | undefined]>([
    ['oh-disclosure-form', 'OH', both, 'before the purchase agreement (contract 9 July 2026)', '2026-07-09'],
    [
      'oh-disclosure-form',
      'OH',
      closing,
      'before the purchase agreement (closing 14 August 2026)',
      '2026-08-14',
    ],
    ['oh-disclosure-form', 'OH', {}, 'before the purchase agreement', undefined],
    [
      'oh-disclosure-form',
      'OH',
      { contract: '2026-07' },
      'before the purchase agreement (contract July 2026)',
      '2026-07-31',
    ],
    ['fl-radon', 'FL', both, 'at or before the contract (contract 9 July 2026)', '2026-07-09'],
    ['fl-coast-line', 'FL', both, 'at or before closing (closing 14 August 2026)', '2026-08-14'],
    ['fl-coast-line', 'FL', { contract: '2026-07-09' }, 'at or before closing', undefined],
    [
      'ca-transfer-statement',
      'CA',
      both,
      'as soon as practicable before the transfer (closing 14 August 2026)',
      '2026-08-14',
    ],
    [
      'az-association-papers',
      'AZ',
      both,
      'within ten days of the written notice of the sale (closing 14 August 2026)',
      '2026-08-14',
    ],
    ['az-affidavit', 'AZ', both, 'at least seven days before the transfer: 7 August 2026', '2026-08-07'],
    [
      'az-affidavit',
      'AZ',
      { closing: '../2026-12' },
      'at least seven days before the transfer (closing December 2026 or before)',
      '2026-12-24',
    ],
    ['az-affidavit', 'AZ', {}, 'at least seven days before the transfer', undefined],
    ['us-lead-safe-work', 'OH', both, 'while the work is done', undefined],
  ])('%s in %s with %j: %s', (id, state, duties, words, day) => {
    expect(duty(id, inState(state, { duties })).due).toEqual({ words, day } satisfies DutyDue);
  });

  it('is not said of what is no more than worth knowing', () => {
    expect(duty('oh-town-inspection', inState('OH', { duties: both })).due).toBeUndefined();
  });
});
