/** The day of a contract, and the day of an offer that is counted, as far as other days of a sale bound them. */
import { describe, expect, it } from 'vitest';
import type { DutyFact } from '../../src/tally/duties/duty-fact.js';
import { readDutyFacts } from '../../src/tally/duties/duty-facts.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const about = { path: ['duties', 'contract'], asks: 'when the contract was signed' };
const contract = (spec: PartialSpec): DutyFact => readDutyFacts(houseFrom(spec), AS_OF).contract;

describe('a contract', () => {
  const hint = 'contract: 2026-07-03';
  it.each<readonly [string, PartialSpec, DutyFact['is'], string]>([
    [
      'as written',
      { duties: { contract: '2026-07' } },
      { low: '2026-07-01', high: '2026-07-31' },
      'contract of July 2026',
    ],
    [
      'as written, whatever the closing is',
      { duties: { contract: '2026-07-09', closing: '2026-08-14' } },
      { low: '2026-07-09', high: '2026-07-09' },
      'contract of 9 July 2026',
    ],
    [
      'from the listing to a closing',
      { house: { bought: '2026-02-17', listed: '2026-06-20' }, duties: { closing: '2026-08-14' } },
      { low: '2026-06-20', high: '2026-08-14' },
      'no contract date is written; before the closing of 14 August 2026',
    ],
    [
      'from a listing on the day of the closing',
      { house: { bought: '2026-02-17', listed: '2026-08-14' }, duties: { closing: '2026-08-14' } },
      { low: '2026-08-14', high: '2026-08-14' },
      'no contract date is written; before the closing of 14 August 2026',
    ],
    [
      'from the purchase, where the listing is of a later sale',
      { house: { bought: '2026-02-17', listed: '2026-10-01' }, duties: { closing: '2026-08-14' } },
      { low: '2026-02-17', high: '2026-08-14' },
      'no contract date is written; before the closing of 14 August 2026',
    ],
    [
      'from any day, where the purchase is a later one too',
      { house: { bought: '2026-09-01', listed: '2026-10-01' }, duties: { closing: '2026-08-14' } },
      { low: undefined, high: '2026-08-14' },
      'no contract date is written; before the closing of 14 August 2026',
    ],
    [
      'up to a closing today',
      { house: { listed: '2026-06-20' }, duties: { closing: AS_OF } },
      { low: '2026-06-20', high: AS_OF },
      'no contract date is written; before the closing of 20 November 2026',
    ],
    [
      'from today, where the closing lies ahead',
      { house: { listed: '2026-06-20' }, duties: { closing: '2026-11-21' } },
      { low: AS_OF, high: undefined },
      'no contract date is written; a contract from 20 November 2026 on',
    ],
  ])('%s', (_, spec, is, words) => {
    expect(contract(spec)).toEqual({ ...about, hint, is, words });
  });

  it('without any word under duties: the line that begins them is what to type', () => {
    expect(contract({})).toEqual({
      ...about,
      hint: 'duties: { contract: 2026-07-03 }',
      is: { low: AS_OF, high: undefined },
      words: 'no contract date is written; a contract from 20 November 2026 on',
    });
  });
});

describe('months owned go to', () => {
  const TODAY = '20 November 2026, since no contract date is written';
  it.each<readonly [string, PartialSpec['house'], PartialSpec['duties'], number, number, string]>([
    ['today, after a listing', { listed: '2026-06-20' }, {}, 9, 9, TODAY],
    ['today, where it is listed today', { listed: AS_OF }, {}, 9, 9, TODAY],
    [
      'a listing tomorrow',
      { listed: '2026-11-21' },
      {},
      9,
      9,
      'the listing of 21 November 2026, since no contract date is written',
    ],
    ['today, where the closing lies ahead', { listed: '2026-06-20' }, { closing: '2026-11-21' }, 9, 9, TODAY],
    [
      'between listing and closing, where that is today',
      { listed: '2026-06-20' },
      { closing: AS_OF },
      4,
      9,
      'a contract before the closing of 20 November 2026',
    ],
    [
      'the day of listing and closing alike',
      { listed: '2026-08-14' },
      { closing: '2026-08-14' },
      5,
      5,
      'a contract before the closing of 14 August 2026',
    ],
  ])('%s', (_, house, duties, low, high, to) => {
    const { is, words } = readDutyFacts(
      houseFrom({ house: { bought: '2026-02-17', ...house }, duties }),
      AS_OF,
    )['months-owned'];
    const count = low === high ? `${low}` : `${low} to ${high}`;
    expect([is, words]).toEqual([
      { low, high },
      `${count} months from the purchase, 17 February 2026, to ${to}`,
    ]);
  });
});
