/**
 * Duties at a sale against examples and texts from outside.
 *
 * Boundary examples: worked from the cited laws by hand (lead 42 USC 4852d; Florida Statutes 689.302 and 489.103(7)(a)1;
 * California Civil Code 1102.6h; 40 CFR 745.113(c)). Texts: length and digest of the words as they were read, so that a
 * slip in a table shows; how closely each was read stands beside its check.
 */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { deriveDuties } from '../../src/tally/duties/derive-duties.js';
import type { Duty } from '../../src/tally/duties/duty.js';
import { disclosureKeptThrough } from '../../src/tally/lead-notes.js';
import { stateDuties } from '../../src/tally/tables/duties.js';
import { leadAsbestosRules } from '../../src/tally/tables/lead-asbestos.js';
import { houseFrom, type PartialSpec } from '../rooms/house-from.js';

const inState = (state: string, house: Partial<PartialSpec['house']> = {}): PartialSpec['house'] => ({
  ...house,
  address: { city: 'Fallow Mills', state },
});

function duty(id: string, spec: PartialSpec, asOf = '2026-11-20'): Duty {
  const found = deriveDuties(houseFrom(spec), asOf, []).duties.find(({ rule }) => rule.id === id);
  if (found === undefined) throw new Error(`no duty ${id}`);
  return found;
}

describe('the federal lead disclosure reaches (42 USC 4852d; an unknown year counts as before 1978)', () => {
  const IDS = ['pamphlet', 'known', 'reports', 'agents', 'ten-days', 'attachment'].map(
    (id) => `us-lead-${id}`,
  );
  test.each([
    [{ house: { built: 1977 } }, 'applies'],
    [{ house: { built: 1978 } }, 'does not apply'],
    [{ house: { built: 'not known' } }, 'applies'],
    [{ house: { built: 1950 }, duties: { studio: 'yes' } }, 'does not apply'],
    [{ house: { built: 1950 }, duties: { foreclosure: 'yes' } }, 'does not apply'],
    [{ house: { built: '1970/1985' } }, 'applies'],
  ] as const)('%j: %s', (spec, result) => {
    for (const id of IDS) expect(duty(id, spec as PartialSpec).result, id).toBe(result);
  });

  test('and what was assumed is told', () => {
    expect(
      duty('us-lead-pamphlet', { house: { built: 'not known' } }).assumed.map(({ fact }) => fact),
    ).toEqual(['year-built', 'studio', 'foreclosure']);
    expect(duty('us-lead-pamphlet', { house: { built: 1978 } }).because.map(({ words }) => words)).toEqual([
      'built 1978',
    ]);
  });

  test('lead-safe work is a duty of its own: it asks whether the work was for pay or to sell', () => {
    const old = { house: { built: 1950 } };
    const id = 'us-lead-safe-work';
    expect(duty(id, { ...old, duties: { 'for-resale': 'yes' } }).result).toBe('applies');
    expect(duty(id, old).result).toBe('not known');
    const own: PartialSpec = {
      ...old,
      work: [{ id: 'a', what: 'shelf', did: 'new', by: 'owner', done: '2026-04' }],
    };
    expect(duty(id, { ...own, duties: { 'for-resale': 'no' } }).result).toBe('does not apply');
    expect(duty(id, { house: { built: 1985 }, duties: { 'for-resale': 'yes' } }).result).toBe(
      'does not apply',
    );
    expect(duty('us-lead-pamphlet', { ...own, duties: { 'for-resale': 'no' } }).result).toBe('applies');
  });
});

describe('the Florida flood disclosure goes by the day of the contract (s. 689.302; ch. 2024, HB 1049; 2025, SB 948)', () => {
  const flood = (contract: string | undefined, asOf?: string): Duty =>
    duty('fl-flood', { house: inState('FL'), duties: contract === undefined ? {} : { contract } }, asOf);
  test.each([
    ['2024-09-30', []],
    ['2024-10-01', [2]],
    ['2025-09-30', [2]],
    ['2025-10-01', [3]],
    // A month in which the form changed: either may hold.
    ['2025-09/2025-10', [2, 3]],
  ])('contract %s: forms of %j questions', (contract, questions) => {
    const found = flood(contract);
    expect(found.versions.map(({ asks }) => asks.length)).toEqual(questions);
    expect(found.result).toBe(questions.length === 0 ? 'does not apply' : 'applies');
  });

  test('the day of the run picks nothing; without a contract every form from that day on may hold', () => {
    expect(flood('2024-10-01', '2026-11-20').versions).toEqual(flood('2024-10-01', '2024-10-02').versions);
    expect(flood(undefined, '2026-11-20').versions.map(({ asks }) => asks.length)).toEqual([3]);
    expect(flood(undefined, '2025-06-01').versions.map(({ asks }) => asks.length)).toEqual([2, 3]);
  });

  test('New York’s credit ended 2024-03-20 (Real Property Law sec. 462)', () => {
    const credit = (contract: string): string[] =>
      duty('ny-condition-statement', { house: inState('NY'), duties: { contract } }).versions.map(
        ({ says }) => says,
      );
    expect(credit('2024-03-19').join()).toMatch(/credit of 500 USD/);
    expect(credit('2024-03-20').join()).toMatch(/no credit/);
  });
});

describe('an owner’s own permit and an offer within a year (s. 489.103(7)(a)1, quoted: “within 1 year after completion”)', () => {
  const permit = (final: string | undefined) => ({
    id: 'p',
    what: 'kitchen circuits',
    state: final === undefined ? ('open' as const) : ('final' as const),
    ...(final === undefined ? {} : { final }),
    'taken-by': 'owner' as const,
  });
  const year = (final: string | undefined, listed: string, state = 'FL'): string =>
    duty(`${state.toLowerCase()}-owner-builder-year`, {
      house: inState(state, { listed }),
      permits: [permit(final)],
    }).result;
  test.each([
    ['2026-01-15', '2026-06-01', 'applies'],
    // The anniversary counts in: the careful reading.
    ['2026-01-15', '2027-01-15', 'applies'],
    ['2026-01-15', '2027-01-16', 'does not apply'],
    [undefined, '2026-06-01', 'applies'],
    // Offered before it was complete.
    ['2026-07-01', '2026-06-01', 'applies'],
    ['2024-02-29', '2025-03-01', 'applies'],
    ['2024-02-29', '2025-03-02', 'does not apply'],
    // A month in which the year ends.
    ['2026-01-15', '2027-01', 'not known'],
  ])('complete %s, listed %s: %s', (final, listed, result) => {
    for (const state of ['FL', 'CA', 'NC', 'AZ']) expect(year(final, listed, state), state).toBe(result);
  });

  test('contract and closing are looked at as well, and a contractor’s permit is none', () => {
    const sold: PartialSpec = {
      house: inState('FL'),
      permits: [permit('2026-01-15')],
      duties: { contract: '2026-12-01', closing: '2027-03-01' },
    };
    expect(duty('fl-owner-builder-year', sold).result).toBe('applies');
    const hired = { ...sold, permits: [{ ...permit('2026-01-15'), 'taken-by': 'contractor' as const }] };
    expect(duty('fl-owner-builder-year', hired).result).toBe('does not apply');
    expect(duty('fl-owner-builder-year', { house: inState('FL') }).result).toBe('not known');
    const silent = {
      ...sold,
      permits: [{ id: 'p', what: 'circuits', state: 'final' as const, final: '2026-01-15' }],
    };
    expect(duty('fl-owner-builder-year', silent).result).toBe('not known');
  });
});

describe('California’s eighteen months (Civil Code 1102.6h: offers accepted from 2024-07-01)', () => {
  const sold = (bought: string, contract: string, extra: PartialSpec = {}): Duty =>
    duty('ca-eighteen-months', {
      house: inState('CA', { bought }),
      people: [{ id: 'firm', name: 'Some Electric' }],
      work: [{ id: 'a', what: 'circuits', did: 'new', by: 'firm', done: contract.slice(0, 7) }],
      duties: { contract },
      ...extra,
    });
  test.each([
    ['2025-01-15', '2026-07-14', 'applies'],
    ['2025-01-15', '2026-07-15', 'does not apply'],
    ['2023-01-15', '2024-06-30', 'does not apply'],
    ['2023-01-15', '2024-07-01', 'applies'],
  ])('bought %s, contract %s: %s', (bought, contract, result) => {
    expect(sold(bought, contract).result).toBe(result);
  });

  test('own work alone asks for no list, and five dwellings are too many', () => {
    const own = [{ id: 'a', what: 'circuits', did: 'new' as const, by: 'owner', done: '2026-04' }];
    expect(sold('2025-01-15', '2026-05-01', { work: own }).result).toBe('does not apply');
    const five = { duties: { contract: '2026-05-01', units: 5 } };
    expect(sold('2025-01-15', '2026-05-01', five).result).toBe('does not apply');
  });
});

describe('keeping', () => {
  test('the signed attachment: three years from the closing (40 CFR 745.113(c); example by hand)', () => {
    expect(disclosureKeptThrough('2026-06-30')).toBe('2029-06-30');
    const kept = (spec: PartialSpec): unknown => duty('us-lead-attachment', spec).keep?.through;
    expect(kept({ duties: { closing: '2026-06-30' } })).toBe('2029-06-30');
    expect(kept({ money: { sale: { closed: '2026-06-30', price: '1.00' } } })).toBe('2029-06-30');
    expect(kept({})).toBeUndefined();
  });
});

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

describe('texts that a law fixes', () => {
  test('the Lead Warning Statement: 877 characters (typed once from memory, once from the agency’s form, and the same)', () => {
    const { statement } = leadAsbestosRules().leadWarning.figures;
    expect(statement.trim()).toHaveLength(877);
    expect(digest(statement.trim())).toBe('7c0ee679b8b8c4c97ab6839d020d2df9e89f95c81d6f203237b9b9e8027e1520');
  });

  test.each([
    // Read on two pages of the Florida Department of Health.
    ['fl-radon', 'quoted', 403, 'f8cd51238bd2e3ae2d9bd867d3da5a3709f3f68101ece18bf1f427b4c9fab014'],
    // Read in a House staff analysis of 2024.
    ['fl-flood', 'quoted', 221, 'cddef4832c3aecaf4589fd99fdd1a77d307578bc1aa1c87b0fc1a3446a70fb68'],
    // Read in a copy of s. 689.261.
    ['fl-property-tax', 'quoted', 409, 'd49952b2bb7dd21bfea610fb96a570b94ee9f85bdf629f40bedc629492c0c168'],
    // Items 1 to 6, read in a copy of s. 720.401.
    ['fl-association', 'quoted', 1126, '336e290295fba3abc31cb4b5d3e8559081f49378d05b0a2b78ffec730f7ca394'],
    // From memory, and the table says so.
    ['fl-coast', 'from memory', 516, 'a26fb12478196fbaee6971bbc99c528b3b7df30905e5c83d6e0d6fd5c62b12d6'],
  ])('%s (%s): %i characters', (id, read, length, sha256) => {
    const notice = stateDuties('FL')?.rules.find((rule) => rule.id === id)?.notice;
    const text = notice?.text.join('\n') ?? '';
    expect(text).toHaveLength(length);
    expect(digest(text)).toBe(sha256);
    expect(notice).toMatchObject({ read, 'word-for-word': true });
  });
});
