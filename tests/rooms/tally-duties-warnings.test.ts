/** Each thing that the owner is told of duties, as a whole: when, where, in which words, and what to type. */
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { deriveDuties } from '../../src/tally/duties/derive-duties.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const told = (spec: PartialSpec, asOf = AS_OF): readonly Diagnostic[] =>
  deriveDuties(houseFrom(spec), asOf, []).diagnostics;
const inState = (state: string, more: PartialSpec = {}): PartialSpec => ({
  ...more,
  house: { built: 1991, ...more.house, address: { city: 'Fallow Mills', state } },
});

const warning = (path: Diagnostic['path'], message: string, ...hints: string[]): Diagnostic => ({
  code: 'tally.duty',
  severity: 'warning',
  path,
  message,
  hints,
});
const note = (path: Diagnostic['path'], message: string, hint: string): Diagnostic => ({
  ...warning(path, message, `add  ${hint}  or what is so`),
  severity: 'note',
});
const SEE = 'see what each asks under “What a law asks of this sale” in the edition  file';

describe('what is due and not recorded', () => {
  const listed = { built: 1985, listed: '2026-06-20' };
  const one = (message: string, hint: string): Diagnostic[] => [
    warning(['duties', 'given'], message, hint, SEE),
  ];
  const OFFERED =
    'the house is offered (listed 20 June 2026), and nothing is recorded of what is due before a contract: oh-disclosure-form';
  const ITEM = '{ duty: oh-disclosure-form, on: 2026-11-20 }';
  const other = { duty: 'oh-town-inspection', on: '2026-06-01' };

  it.each<readonly [string, PartialSpec, readonly Diagnostic[]]>([
    [
      'with the line that begins the duties',
      { house: listed },
      one(OFFERED, `if it was done, add  duties: { given: [${ITEM}] }  with its day`),
    ],
    [
      'with the word that is lacking under them',
      { house: listed, duties: { units: 1 } },
      one(OFFERED, `if it was done, add under duties:  given: [${ITEM}]  with its day`),
    ],
    [
      'with one more line, where there are some',
      { house: listed, duties: { given: [other] } },
      one(OFFERED, `if it was done, add under duties: given:  - ${ITEM}  with its day`),
    ],
    [
      'after the contract',
      { house: listed, duties: { contract: '2026-07-09' } },
      one(
        'the contract was signed 9 July 2026, and nothing is recorded of oh-disclosure-form',
        `if it was done, add under duties:  given: [${ITEM}]  with its day`,
      ),
    ],
    [
      'after a closing, where no contract is written',
      { house: listed, duties: { closing: '2026-08-14' } },
      one(
        'the sale closed 14 August 2026, and nothing is recorded of oh-disclosure-form',
        `if it was done, add under duties:  given: [${ITEM}]  with its day`,
      ),
    ],
    [
      'before a contract that lies ahead',
      { house: { built: 1985 }, duties: { contract: '2026-11-01/2026-12-01' } },
      one(
        'the house is offered, and nothing is recorded of what is due before a contract: oh-disclosure-form',
        `if it was done, add under duties:  given: [${ITEM}]  with its day`,
      ),
    ],
    [
      'unless it is recorded',
      { house: listed, duties: { given: [{ ...other, duty: 'oh-disclosure-form' }] } },
      [],
    ],
    ['unless it does not apply', { house: listed, duties: { units: 5 } }, []],
    ['unless the house is not offered', { house: { built: 1985 } }, []],
    ['unless its contract lies ahead', { house: { built: 1985 }, duties: { contract: '2026-11-21' } }, []],
  ])('%s', (_, spec, diagnostics) => {
    expect(told(spec)).toEqual(diagnostics);
  });

  it('of several in one line, and what stands under lead: is no telling', () => {
    const old: PartialSpec = {
      house: { built: 1948, listed: '2026-06-20' },
      lead: { known: 'none known', 'pamphlet-given': '2026-06-20' },
      duties: { 'for-resale': 'no', given: [other] },
      work: [{ id: 'a', what: 'shelf', did: 'new', by: 'owner', done: '2026-04' }],
    };
    expect(told(old)).toEqual([
      warning(
        ['duties', 'given'],
        'the house is offered (listed 20 June 2026), and nothing is recorded of what is due before a contract: us-lead-known, us-lead-reports, us-lead-agents, us-lead-ten-days, us-lead-attachment and oh-disclosure-form',
        'if it was done, add under duties: given:  - { duty: us-lead-known, on: 2026-11-20 }  with its day, and a line for each of the others',
        'what stands under lead: is there to be told; that the buyer was told is recorded under given:',
        SEE,
      ),
    ]);
  });

  // North Carolina’s statements are due no later than the buyer’s offer (47E-5).
  it('also what is due by the buyer’s offer', () => {
    const spec = inState('NC', {
      house: { listed: '2026-06-20' },
      permits: [{ id: 'p', what: 'circuits', state: 'open', 'taken-by': 'contractor' }],
    });
    expect(told(spec).map(({ message }) => message)).toEqual([
      'the house is offered (listed 20 June 2026), and nothing is recorded of what is due before a contract: nc-property-statement and nc-mineral-statement',
    ]);
  });

  // A.R.S. 33-422: the affidavit at least seven days before the transfer.
  it.each([
    [{ closing: '2026-11-25' }, '2026-11-18', []],
    [
      { closing: '2026-11-25' },
      '2026-11-19',
      ['the day has passed, and nothing is recorded of az-affidavit'],
    ],
    [{ closing: '2026-11' }, '2026-11-25', ['the day has passed, and nothing is recorded of az-affidavit']],
    [
      { closing: '2026-11-25' },
      '2026-11-25',
      ['the sale closed 25 November 2026, and nothing is recorded of az-affidavit'],
    ],
    [
      { closing: '2026-11-25', contract: '2026-11-19' },
      '2026-11-19',
      ['the contract was signed 19 November 2026, and nothing is recorded of az-affidavit'],
    ],
    [
      { closing: '2026-11-25', contract: '2026-11-20' },
      '2026-11-19',
      ['the day has passed, and nothing is recorded of az-affidavit'],
    ],
  ] as const)('what is due days before a closing may be late before it: %j on %s', (days, asOf, messages) => {
    const spec = inState('AZ', {
      house: { listed: '2026-06-20' },
      duties: { unincorporated: 'yes', subdivided: 'no', pool: 'no', association: 'no', ...days },
    });
    expect(
      told(spec, asOf)
        .map(({ message }) => message)
        .filter((message) => message.endsWith('az-affidavit')),
    ).toEqual(messages);
  });

  it('what is asked from a contract on, from its own day on, and nothing that nobody knows to apply', () => {
    const asked = (duties: PartialSpec['duties']) =>
      told(inState('AZ', { house: { listed: '2026-06-20' }, duties }))
        .filter(({ severity }) => severity === 'warning')
        .map(({ message }) => message);
    const before =
      'the house is offered (listed 20 June 2026), and nothing is recorded of what is due before a contract: az-known-facts';
    expect(asked({ association: 'yes', contract: '2026-11-21' })).toEqual([before]);
    expect(asked({ association: 'yes', contract: '2026-11-20' })).toEqual([
      before,
      'the contract was signed 20 November 2026, and nothing is recorded of what is asked from then on, before the closing: az-association-papers',
    ]);
    expect(asked({ contract: '2026-11-20' })).toEqual([before]);
  });
});

it('what was told too late is told of where its day stands', () => {
  const spec = inState('CA', {
    house: { listed: '2026-06-20' },
    duties: { closing: '2026-09-01', given: [{ duty: 'ca-transfer-statement', on: '2026-09-02' }] },
  });
  expect(told(spec).filter(({ message }) => message.startsWith('ca-transfer-statement'))).toEqual([
    warning(
      ['duties', 'given', 0, 'on'],
      'ca-transfer-statement is recorded for 2 September 2026, and it was due as soon as practicable before the transfer (closing 1 September 2026)',
      'correct the day, if it is wrong',
    ),
  ]);
});

describe('an owner’s own permit', () => {
  const year = (listed: string, state = 'AZ'): readonly Diagnostic[] =>
    told(
      inState(state, {
        house: { listed },
        permits: [
          {
            id: 'p',
            number: 'EL-1',
            what: 'circuits',
            state: 'final',
            final: '2025-05-19',
            'taken-by': 'owner',
          },
        ],
      }),
    ).filter(({ path }) => path?.[0] === 'permits');
  const presumed = (id: string) =>
    warning(
      ['permits', 0, 'final'],
      `${id}: an owner’s own permit, and the house offered within a year of its completion: permit EL-1 complete 19 May 2025; listed 19 May 2026`,
      'ask a lawyer or the licensing board what that means here; it is presumed, not decided',
      'correct  final:  or  taken-by:  if one is wrong',
    );
  // A.R.S. 32-1121(A)(5) and s. 489.103(7)(a)1: within 1 year after completion; the anniversary counts in.
  it('is warned of within the year, and no longer after it', () => {
    expect(year('2026-05-19')).toEqual([presumed('az-owner-builder-year')]);
    expect(year('2026-05-19', 'FL')).toEqual([presumed('fl-owner-builder-year')]);
    expect(year('2026-05-20')).toEqual([]);
    expect(year('2026-05-20', 'FL')).toEqual([]);
  });
});

describe('what is not known', () => {
  it('is asked once a fact, and names each rule once', () => {
    const spec = inState('AZ', {
      house: { listed: '2026-06-20' },
      duties: { subdivided: 'no', given: [{ duty: 'az-known-facts', on: '2026-06-20' }] },
    });
    expect(told(spec)).toEqual([
      note(
        ['duties', 'unincorporated'],
        'whether it lies outside every city and town is not known, and az-affidavit depends on it',
        'unincorporated: no',
      ),
      note(
        ['duties', 'pool'],
        'whether there is a pool is not known, and az-pool-notice depends on it',
        'pool: no',
      ),
      note(
        ['duties', 'association'],
        'whether membership in an owners’ association is mandatory is not known, and az-association-papers depends on it',
        'association: no',
      ),
      note(
        ['permits'],
        'whether there was a permit, and who took it out is not known, and az-owner-builder-year depends on it',
        'permits: [{ id: permit-1, what: kitchen circuits, state: final, taken-by: contractor }]',
      ),
    ]);
  });
});

describe('two closings', () => {
  const money = { role: 'dealer', sale: { closed: '2026-12-14', price: '1.00' } } as const;
  it.each<readonly [string, PartialSpec, readonly Diagnostic[]]>([
    [
      'that differ',
      { house: { built: 1985 }, duties: { closing: '2026-12-15' }, money },
      [
        warning(
          ['duties', 'closing'],
          'the closing is 15 December 2026 here and 14 December 2026 under money: sale:, and this one is counted',
          'correct one of them, or take this one out: the other is read as well',
        ),
      ],
    ],
    ['that are the same', { house: { built: 1985 }, duties: { closing: '2026-12-14' }, money }, []],
    [
      'one without the other',
      { house: { built: 1985 }, duties: { closing: '2026-12-15' }, money: { role: 'dealer' } },
      [],
    ],
  ])('%s', (_, spec, diagnostics) => {
    expect(told(spec)).toEqual(diagnostics);
  });
});

it('a name that no rule has is told of alone, among others that some have', () => {
  const given = ['oh-town-inspection', 'oh-disclosure-from'].map((duty) => ({ duty, on: '2026-06-01' }));
  expect(told({ house: { built: 1985 }, duties: { given } })).toEqual([
    warning(
      ['duties', 'given', 1, 'duty'],
      'no rule for OH has the name “oh-disclosure-from”, so nothing is recorded by it',
      'perhaps  duty: oh-disclosure-form',
    ),
  ]);
});
