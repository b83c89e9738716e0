/**
 * Permits of an owner as his own contractor: which of them count, who took them out, and how soon after their completion the
 * house was offered. The year is that of Florida Statutes 489.103(7)(a)1, “within 1 year after completion”.
 */
import { describe, expect, it } from 'vitest';
import { deriveDuties } from '../../src/tally/duties/derive-duties.js';
import type { DutyFact } from '../../src/tally/duties/duty-fact.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import type { DutyFactName } from '../../src/tally/tables/duties.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
type Permit = NonNullable<PartialSpec['permits']>[number];
const permit = (id: string, more: Partial<Permit> = {}): Permit => ({
  id,
  number: id.toUpperCase(),
  what: 'circuits',
  state: more.final === undefined ? 'open' : 'final',
  ...more,
});
const own = (id: string, more: Partial<Permit> = {}): Permit => permit(id, { 'taken-by': 'owner', ...more });
const hired = (id: string, more: Partial<Permit> = {}): Permit =>
  permit(id, { 'taken-by': 'contractor', ...more });

const fact = (name: DutyFactName, permits: readonly Permit[], more: PartialSpec = {}): DutyFact =>
  readDutyFacts(houseFrom({ ...more, permits: [...permits] }), AS_OF)[name];

const WHO = { asks: 'who took out the permits', hint: 'taken-by: contractor' };
const NONE = {
  is: undefined,
  path: ['permits'],
  words: 'no permit since the purchase is recorded',
  asks: 'whether there was a permit, and who took it out',
  hint: 'permits: [{ id: permit-1, what: kitchen circuits, state: final, taken-by: contractor }]',
};
const CONTRACTORS = {
  ...WHO,
  is: 'no',
  path: ['permits'],
  words: 'contractors took out the recorded permits',
};

describe('who took out the permits', () => {
  it.each<readonly [string, readonly Permit[], DutyFact]>([
    ['there are none', [], NONE],
    [
      'the owner, one of several',
      [hired('a'), permit('b'), own('c')],
      { ...WHO, is: 'yes', path: ['permits', 2, 'taken-by'], words: 'permit C was taken out by the owner' },
    ],
    ['contractors', [hired('a'), hired('b')], CONTRACTORS],
    [
      'one of them is not written',
      [hired('a'), permit('b')],
      { ...WHO, is: undefined, path: ['permits', 1], words: 'who took out permit B is not written' },
    ],
    [
      'a permit without a number is called by what it was for',
      [{ id: 'a', what: 'a new roof', state: 'open' }],
      {
        ...WHO,
        is: undefined,
        path: ['permits', 0],
        words: 'who took out permit for a new roof is not written',
      },
    ],
    ['one that was looked for and not found is none', [own('a', { state: 'none-found' })], NONE],
    [
      'and the others keep their places',
      [permit('a', { state: 'none-found' }), own('b')],
      { ...WHO, is: 'yes', path: ['permits', 1, 'taken-by'], words: 'permit B was taken out by the owner' },
    ],
  ])('%s', (_, permits, expected) => {
    expect(fact('owner-builder-permit', permits)).toEqual(expected);
  });

  const bought = (on: string): PartialSpec => ({ house: { bought: on } });
  it.each<readonly [string, Permit, PartialSpec, 'counts' | 'is of an owner before']>([
    [
      'final the day before the purchase',
      own('a', { final: '2026-01-09' }),
      bought('2026-01-10'),
      'is of an owner before',
    ],
    ['final on its day', own('a', { final: '2026-01-10' }), bought('2026-01-10'), 'counts'],
    [
      'issued before and final after it',
      own('a', { issued: '2025-12-01', final: '2026-02-01' }),
      bought('2026-01-10'),
      'counts',
    ],
    [
      'issued before it and not final',
      own('a', { issued: '2019-05-01' }),
      bought('2026-01-10'),
      'is of an owner before',
    ],
    ['issued after it and not final', own('a', { issued: '2026-05-01' }), bought('2026-01-10'), 'counts'],
    ['of no day', own('a'), bought('2026-01-10'), 'counts'],
    ['final in the month of the purchase', own('a', { final: '2026-01' }), bought('2026-01-10'), 'counts'],
    ['final before a purchase in that month', own('a', { final: '2026-01-09' }), bought('2026-01'), 'counts'],
    ['final long ago, and no day of a purchase', own('a', { final: '1990' }), {}, 'counts'],
  ])('%s: %s', (_, one, spec, result) => {
    expect(fact('owner-builder-permit', [one], spec).is).toBe(result === 'counts' ? 'yes' : undefined);
  });
});

describe('months from the completion to the first offer', () => {
  const TIME = { asks: 'when the work under the owner’s permit was complete', hint: 'final: 2026-05-19' };
  const listed: PartialSpec = { house: { listed: '2026-06-20' } };
  const span = (months: number) => ({ low: months, high: months });

  it.each<readonly [string, readonly Permit[], PartialSpec, DutyFact]>([
    [
      'the owner’s permits alone are measured',
      [hired('a', { final: '2026-06-01' }), permit('b'), own('c', { final: '2026-05-19' })],
      listed,
      {
        ...TIME,
        is: span(2),
        path: ['permits', 2, 'final'],
        words: 'permit C complete 19 May 2026; listed 20 June 2026',
      },
    ],
    [
      'of several the last that was complete',
      [
        own('a', { final: '2025-09-01' }),
        own('b', { final: '2026-05-19' }),
        own('c', { final: '2026-01-05' }),
      ],
      listed,
      {
        ...TIME,
        is: span(2),
        path: ['permits', 1, 'final'],
        words: 'permit B complete 19 May 2026; listed 20 June 2026',
      },
    ],
    [
      'one that is not complete goes before all',
      [own('a', { final: '2026-05-19' }), own('b')],
      listed,
      {
        ...TIME,
        is: span(0),
        path: ['permits', 1, 'final'],
        words:
          'no final inspection of permit B is written, so it counts as not complete; listed 20 June 2026',
      },
    ],
    [
      'one that may be old beside one that surely isn’t: the fewest months are at most those of the second',
      [own('a', { final: '2024-12-10/2026-01-10' }), own('b', { final: '2025-12-20' })],
      listed,
      {
        ...TIME,
        is: span(6),
        path: ['permits', 0, 'final'],
        words:
          'permit A complete between 10 December 2024 and 10 January 2026; listed 20 June 2026; permit B complete 20 December 2025; listed 20 June 2026',
      },
    ],
    [
      'of two that are at most equally old the later one alone is told',
      [own('a', { final: '2025-12-10/2026-01-10' }), own('b', { final: '2025-12-15' })],
      listed,
      {
        ...TIME,
        is: { low: 6, high: 7 },
        path: ['permits', 0, 'final'],
        words: 'permit A complete between 10 December 2025 and 10 January 2026; listed 20 June 2026',
      },
    ],
    [
      'of a listing that nobody knows the end of, at most those to the contract',
      [own('a', { final: '2026-05-19' })],
      { house: { listed: '2026-06-20/..' }, duties: { contract: '2026-08-14', closing: '2026-09-14' } },
      {
        ...TIME,
        is: { low: 2, high: 3 },
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; listed 20 June 2026 or after',
      },
    ],
    [
      'of a listing of any day before another, from none on',
      [own('a', { final: '2026-05-19' })],
      { house: { listed: '../2026-08-14' } },
      {
        ...TIME,
        is: { low: 0, high: 3 },
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; listed 14 August 2026 or before',
      },
    ],
    [
      'a closing under duties:',
      [own('a', { final: '2026-05-19' })],
      { duties: { closing: '2026-08-14' } },
      {
        ...TIME,
        is: span(3),
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; closing 14 August 2026',
      },
    ],
    [
      'the sale of the money pages',
      [own('a', { final: '2026-05-19' })],
      { money: { sale: { closed: '2026-08-20', price: '1.00' } } },
      {
        ...TIME,
        is: span(4),
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; closing 20 August 2026',
      },
    ],
    [
      'letting counts as offering',
      [own('a', { final: '2026-05-19' })],
      { ...listed, money: { role: 'rental', rental: { 'in-service': '2026-06-01' } } },
      {
        ...TIME,
        is: span(1),
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; ready to be let 1 June 2026',
      },
    ],
    [
      'not let yet',
      [own('a', { final: '2026-05-19' })],
      { money: { role: 'rental' } },
      {
        ...TIME,
        is: { low: 7, high: undefined },
        path: ['permits', 0, 'final'],
        words: 'permit A complete 19 May 2026; not offered by 20 November 2026',
      },
    ],
    [
      'without one of the owner’s, that is what is said',
      [hired('a')],
      listed,
      { ...CONTRACTORS, is: undefined },
    ],
    ['without any, that there is none', [], listed, NONE],
  ])('%s', (_, permits, spec, expected) => {
    expect(fact('months-from-owner-build-to-offer', permits, spec)).toEqual(expected);
  });

  it('a permit that may be old does not hide one that surely is within the year', () => {
    const year = (...permits: readonly Permit[]) =>
      deriveDuties(
        houseFrom({
          house: { listed: '2026-06-20', address: { city: 'Fallow Mills', state: 'FL' } },
          permits: [...permits],
        }),
        AS_OF,
        [],
      ).duties.find(({ rule }) => rule.id === 'fl-owner-builder-year')?.result;
    const either = own('a', { final: '2024-12-10/2026-01-10' });
    expect(year(either)).toBe('not known');
    expect(year(either, own('b', { final: '2025-12-20' }))).toBe('applies');
    expect(year(own('b', { final: '2025-12-20' }), either)).toBe('applies');
    expect(year(either, own('b', { final: '2025-01-10' }))).toBe('not known');
    expect(year(own('b', { final: '2025-01-10' }))).toBe('does not apply');
  });
});
