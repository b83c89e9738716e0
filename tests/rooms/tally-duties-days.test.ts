/** Days of a sale as far as they are known: contract, offer, closing and an owner’s permit; and a form that has changed. */
import { describe, expect, it, test } from 'vitest';
import { answerQuestion } from '../../src/tally/duties/answer-question.js';
import { deriveDuties, lastReadOf } from '../../src/tally/duties/derive-duties.js';
import type { Duty } from '../../src/tally/duties/duty.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import type { DutyFactName } from '../../src/tally/tables/duties.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const fact = (name: DutyFactName, spec: PartialSpec) => {
  const { is, words } = readDutyFacts(houseFrom(spec), AS_OF)[name];
  return { is, words };
};

describe('months owned, up to the day an offer is accepted', () => {
  it.each<readonly [string, PartialSpec, unknown, string]>([
    [
      'a purchase and no sale yet: up to today',
      { house: { bought: '2026-02-17' } },
      { low: 9, high: 9 },
      '9 months from the purchase, 17 February 2026, to 20 November 2026, since no contract date is written',
    ],
    [
      'a purchase of which only the month is known',
      { house: { bought: '2026-01' }, duties: { contract: '2026-06-15' } },
      { low: 4, high: 5 },
      '4 to 5 months from the purchase, January 2026, to the contract of 15 June 2026',
    ],
    [
      'a purchase that may be of any earlier day',
      { house: { bought: '../2020' }, duties: { contract: '2026-06-15' } },
      { low: 65, high: undefined },
      'at least 65 months from the purchase, 2020 or before, to the contract of 15 June 2026',
    ],
    [
      'a purchase that may be of any later day',
      { house: { bought: '2020/..' }, duties: { contract: '2026-06-15' } },
      { low: 0, high: 77 },
      '0 to 77 months from the purchase, 2020 or after, to the contract of 15 June 2026',
    ],
    [
      'a purchase after the contract of its own sale',
      { house: { bought: '2026-07-01' }, duties: { contract: '2026-06-15' } },
      { low: 0, high: 0 },
      '0 months from the purchase, 1 July 2026, to the contract of 15 June 2026',
    ],
    [
      'a listing to come: its first day, up to its last',
      { house: { bought: '2026-02-17', listed: '2026-12' } },
      { low: 9, high: 10 },
      '9 to 10 months from the purchase, 17 February 2026, to the listing of December 2026, since no contract date is written',
    ],
    [
      'a listing to come, nobody knows until when',
      { house: { bought: '2026-02-17', listed: '2026-12-24/..' } },
      { low: 10, high: 10 },
      '10 months from the purchase, 17 February 2026, to the listing of 24 December 2026 or after, since no contract date is written',
    ],
    [
      'a closing that has passed, and a listing that is written after it',
      { house: { bought: '2026-02-17', listed: '2026-10-01' }, duties: { closing: '2026-08-14' } },
      { low: 0, high: 5 },
      '0 to 5 months from the purchase, 17 February 2026, to a contract before the closing of 14 August 2026',
    ],
    [
      'a closing before the purchase that is written',
      { house: { bought: '2026-09-01' }, duties: { closing: '2026-08-14' } },
      { low: 0, high: 0 },
      '0 months from the purchase, 1 September 2026, to a contract before the closing of 14 August 2026',
    ],
  ])('%s', (_, spec, is, words) => {
    expect(fact('months-owned', spec)).toEqual({ is, words });
  });
});

describe('an owner’s own permit, and the first offer after it', () => {
  const own = (final: string | undefined, more: PartialSpec = {}): PartialSpec => ({
    ...more,
    permits: [
      {
        id: 'p',
        number: 'EL-1',
        what: 'circuits',
        state: final === undefined ? 'open' : 'final',
        'taken-by': 'owner',
        ...(final === undefined ? {} : { final }),
      },
    ],
  });
  const listed = (on: string, duties: PartialSpec['duties'] = {}): PartialSpec => ({
    house: { listed: on },
    duties,
  });
  it.each<readonly [string, PartialSpec, unknown, string]>([
    [
      'complete, and not offered yet',
      own('2026-05-19'),
      { low: 7, high: undefined },
      'permit EL-1 complete 19 May 2026; not offered by 20 November 2026',
    ],
    [
      'not complete, and not offered yet',
      own(undefined),
      { low: 0, high: undefined },
      'no final inspection of permit EL-1 is written, so it counts as not complete; not offered yet',
    ],
    [
      'not complete, and offered',
      own(undefined, listed('2026-06-20')),
      { low: 0, high: 0 },
      'no final inspection of permit EL-1 is written, so it counts as not complete; listed 20 June 2026',
    ],
    [
      'the first of several offers counts, wherever it is written',
      own('2026-05-19', listed('2026-09-20', { contract: '2026-08-20' })),
      { low: 4, high: 4 },
      'permit EL-1 complete 19 May 2026; contract 20 August 2026',
    ],
    [
      'the listing goes before a contract of the same day',
      own('2026-05-19', listed('2026-08-20', { contract: '2026-08-20' })),
      { low: 4, high: 4 },
      'permit EL-1 complete 19 May 2026; listed 20 August 2026',
    ],
    [
      'offered from a day on, with no last one',
      own('2026-05-19', listed('2026-06-20/..')),
      { low: 2, high: undefined },
      'permit EL-1 complete 19 May 2026; listed 20 June 2026 or after',
    ],
    [
      'complete in a month',
      own('2026-05', listed('2026-06-20')),
      { low: 1, high: 2 },
      'permit EL-1 complete May 2026; listed 20 June 2026',
    ],
    [
      'complete on a last day, with no first one',
      own('../2026-05-19', listed('2026-06-20')),
      { low: 2, high: 2 },
      'permit EL-1 complete 19 May 2026 or before; listed 20 June 2026',
    ],
  ])('%s', (_, spec, is, words) => {
    expect(fact('months-from-owner-build-to-offer', spec)).toEqual({ is, words });
  });
});

test('one dwelling is one, as written or as the house stands', () => {
  const units = (duties: PartialSpec['duties'], kind: 'detached' | 'apartment-style' = 'detached') =>
    fact('units', { house: { kind }, duties });
  expect(units({ units: 1 }).words).toBe('one dwelling');
  expect(units({ units: 3 }).words).toBe('3 dwellings');
  expect(units({}).words).toBe('one dwelling, as the house is detached');
  expect(units({}, 'apartment-style').words).toBe('the number of dwellings is not written');
});

test('a word has no order, so nothing is said of it being more or less', () => {
  for (const op of ['lt', 'lte', 'gt', 'gte'] as const)
    expect(answerQuestion({ fact: 'state', op, value: '2026-01-01' }, { is: 'OH' })).toBe('not known');
});

describe('a form that has changed', () => {
  const florida = (contract: string | undefined, more: PartialSpec = {}): Duty | undefined =>
    deriveDuties(
      houseFrom({
        ...more,
        house: { built: 1991, address: { city: 'Fallow Mills', state: 'FL' } },
        duties: contract === undefined ? {} : { contract },
      }),
      AS_OF,
      [],
    ).duties.find(({ rule }) => rule.id === 'fl-flood');

  it.each<readonly [string, string | undefined, string, readonly (string | undefined)[]]>([
    ['before its first reading does not apply yet', '2024-09-30', 'does not apply', []],
    ['on the first day of a reading has that one', '2024-10-01', 'applies', ['2024-10-01']],
    ['on its last day has it still', '2025-09-30', 'applies', ['2024-10-01']],
    ['a day later has the next', '2025-10-01', 'applies', ['2025-10-01']],
    ['known as a span has each that may hold', '2025', 'applies', ['2024-10-01', '2025-10-01']],
    ['open towards the past has the ones up to its end', '../2025-01', 'applies', ['2024-10-01']],
    ['open towards the future has the last', '2026/..', 'applies', ['2025-10-01']],
    ['not written has the one of today', undefined, 'applies', ['2025-10-01']],
  ])('by a contract %s', (_, contract, result, from) => {
    const duty = florida(contract);
    expect([duty?.result, duty?.versions.map((one) => one.from)]).toEqual([result, from]);
  });

  test('is put down to the day of the contract where that was too early', () => {
    expect(florida('2024-09-30')?.because.map(({ fact: name }) => name)).toEqual(['contract']);
  });
});

test('a year built that is open at one end leaves that end open', () => {
  expect(fact('year-built', { house: { built: '../1950' } }).is).toEqual({ low: undefined, high: 1950 });
  expect(fact('year-built', { house: { built: '1950/..' } }).is).toEqual({ low: 1950, high: undefined });
});

test('rules from memory alone were read on no day', () => {
  expect(lastReadOf([{ read: 'from memory', on: '2026-10-01' }])).toBe('');
});
