/** What was told of duties and when, and what the owner is told of the rest. */
import { describe, expect, it, test } from 'vitest';
import { deriveDuties } from '../../src/tally/duties/derive-duties.js';
import type { Duty } from '../../src/tally/duties/duty.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';

describe('what was told, and when', () => {
  const one = (id: string, spec: PartialSpec): Duty | undefined =>
    deriveDuties(houseFrom(spec), AS_OF, []).duties.find(({ rule }) => rule.id === id);
  const OHIO: PartialSpec = { house: { built: 1985, listed: '2026-06-20' } };
  const given = (...days: readonly string[]): PartialSpec => ({
    ...OHIO,
    duties: { contract: '2026-07-09', given: days.map((on) => ({ duty: 'oh-disclosure-form', on })) },
  });

  it.each([
    ['the earliest of several', given('2026-07-20', '2026-07-01'), 'recorded', '1 July 2026'],
    ['the earliest, where it stands first', given('2026-07-01', '2026-07-20'), 'recorded', '1 July 2026'],
    [
      'a day that is open towards the past is never late',
      given('../2026-07-20'),
      'recorded',
      '20 July 2026 or before',
    ],
    ['a day too late', given('2026-07-10'), 'late', '10 July 2026; after its day'],
  ])('%s', (_, spec, state, words) => {
    expect(one('oh-disclosure-form', spec)?.record).toMatchObject({ state, words });
  });

  it('a day too late is told with what the law says of that, where it says something', () => {
    const late = (id: string, state: string, more: PartialSpec['duties']): unknown =>
      deriveDuties(
        houseFrom({
          house: { built: 1991, listed: '2026-06-20', address: { city: 'Fallow Mills', state } },
          duties: { ...more, given: [{ duty: id, on: '2026-09-02' }] },
        }),
        AS_OF,
        [],
      ).diagnostics.find(({ message }) => message.includes('is recorded for'));
    expect(late('ca-transfer-statement', 'CA', { closing: '2026-09-01' })).toMatchObject({
      message:
        'ca-transfer-statement is recorded for 2 September 2026, and it was due as soon as practicable before the transfer (closing 1 September 2026)',
      hints: ['correct the day, if it is wrong'],
    });
    expect(late('nc-property-statement', 'NC', { contract: '2026-09-01' })).toMatchObject({
      hints: [
        'correct the day, if it is wrong',
        expect.stringMatching(/^what the law says of that: The buyer may cancel/),
      ],
    });
  });

  it('reports that are on file are counted', () => {
    const reports = ['a', 'b'];
    const spec: PartialSpec = {
      documents: reports.map((id) => ({ id, what: 'lead paint test', kind: 'report' })),
      lead: { known: 'none known', reports },
    };
    expect(one('us-lead-reports', spec)?.record.words).toBe('not recorded; 2 reports are on file');
  });

  it('papers of lead work are kept from its last day on, which is open while one day is', () => {
    const keep = (...done: readonly (string | undefined)[]): unknown =>
      deriveTally(
        houseFrom({
          people: [{ id: 'firm', name: 'Ridge Street Painting' }],
          work: done.map((day, at) => ({
            id: `w${at}`,
            what: 'windows',
            did: 'replaced',
            by: 'firm',
            'windows-replaced': true,
            ...(day === undefined ? {} : { done: day }),
          })),
        }),
        AS_OF,
      ).tally.duties.duties.find(({ rule }) => rule.keep === 'lead-renovation')?.keep;
    expect(keep('2026-03-01', '2026-08-01')).toMatchObject({ years: 3, through: '2029-08-01' });
    expect(keep('2026-03-01', undefined)).toMatchObject({ years: 3, through: undefined });
    expect(keep()).toBeUndefined();
  });
});

test('the owner is told of a name that no rule has, of two closings, and of one fact that several rules hang on', () => {
  const told = (spec: PartialSpec): readonly (readonly [string, string | undefined])[] =>
    deriveDuties(houseFrom(spec), AS_OF, []).diagnostics.map(({ message, hints }) => [message, hints[0]]);
  const [named] = told({ duties: { given: [{ duty: 'zzzz', on: '2026-06-01' }] } });
  expect(named?.[0]).toBe('no rule for OH has the name “zzzz”, so nothing is recorded by it');
  expect(named?.[1]).toMatch(/^use one of: us-lead-pamphlet, .*oh-disclosure-form/);

  const closed = (here: string) =>
    told({
      duties: { closing: here },
      money: { role: 'dealer', sale: { closed: '2026-08-14', price: '1.00' } },
    })
      .map(([message]) => message)
      .filter((message) => message.startsWith('the closing is'));
  expect(closed('2026-08-14')).toEqual([]);
  expect(closed('2026-08-15')).toEqual([
    'the closing is 15 August 2026 here and 14 August 2026 under money: sale:, and this one is counted',
  ]);

  const depend = (state: string, kind: 'detached' | 'apartment-style') =>
    told({
      house: { built: 1991, listed: '2026-06-20', kind, address: { city: 'Fallow Mills', state } },
    })
      .map(([message]) => message)
      .filter((message) => / depends? on it$/.test(message));
  expect(depend('AZ', 'detached')).toContain(
    'whether there is a pool is not known, and az-pool-notice depends on it',
  );
  expect(depend('NC', 'apartment-style').join('\n')).toMatch(
    /^how many dwellings there are is not known, and .* and .* depend on it$/m,
  );
});
