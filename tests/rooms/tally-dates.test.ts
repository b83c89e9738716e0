import { describe, expect, test } from 'vitest';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-06-20';
const LATER = '2026-06-21';
const LEVELS = [{ id: 'main', name: 'Main level', grade: 'above' as const, size: `40' x 26'` }];

/** Errors about dates: code, path, and the first hint. */
const found = (spec: PartialSpec) =>
  deriveTally(houseFrom(spec), AS_OF).diagnostics.filter((one) =>
    ['tally.future', 'tally.date-order'].includes(one.code),
  );
const paths = (spec: PartialSpec) => found(spec).map((one) => [one.code, one.path?.join('.')]);

const finish = (date: object) => [{ on: 'floor' as const, what: 'oak strip', ...date }];
const room = (finishes: ReturnType<typeof finish>) => ({
  levels: LEVELS,
  rooms: [{ id: 'den', level: 'main', use: 'living' as const, finishes }],
});
const system = (extra: object) => ({ systems: [{ id: 'one', is: 'furnace, gas', ...extra }] });
const work = (extra: object) => ({
  work: [{ id: 'rail', what: 'handrail', did: 'new' as const, ...extra }],
});
const permit = (extra: object) => ({
  permits: [{ id: 'el-1', what: 'three circuits', state: 'final' as const, ...extra }],
});

describe('what lies after the as-of day', () => {
  test.each<[string, (date: string) => PartialSpec]>([
    ['house.built', (built) => ({ house: { built } })],
    ['measured.date', (date) => ({ measured: { by: 'owner', date, method: 'other' } })],
    ['record.date', (date) => ({ record: { area: '1,410 sq ft', date } })],
    ['lead.pamphlet-given', (date) => ({ lead: { known: 'not known', 'pamphlet-given': date } })],
    ['rooms.0.finishes.0.done', (done) => room(finish({ done }))],
    ['rooms.0.finishes.0.sealed', (sealed) => room(finish({ sealed }))],
    [
      'structures.0.finishes.0.done',
      (done) => ({ structures: [{ id: 'deck', is: 'deck', finishes: finish({ done }) }] }),
    ],
    ['systems.0.made', (made) => system({ made })],
    ['systems.0.installed', (installed) => system({ made: 2015, installed })],
    ['systems.0.serviced', (serviced) => system({ serviced })],
    [
      'alarms.0.installed',
      (installed) => ({ levels: LEVELS, alarms: [{ is: 'smoke', where: 'main', installed }] }),
    ],
    ['work.0.started', (started) => work({ started })],
    ['work.0.done', (done) => work({ done })],
    ['house.bought', (bought) => ({ house: { bought } })],
    [
      'house.lot.corrected',
      (corrected) => ({ house: { lot: { is: '0.21 acre', was: '0.2 acre', corrected } } }),
    ],
    ['systems.0.made.corrected', (corrected) => system({ made: { is: 2015, was: 2014, corrected } })],
    ['documents.0.date', (date) => ({ documents: [{ id: 'r', what: 'receipt', kind: 'receipt', date }] })],
    ['photos.IMG_1.taken', (taken) => ({ photos: { IMG_1: { shows: 'den', taken } } })],
    ['dues.0.since', (since) => ({ dues: [{ to: 'the owners', amount: '45.00', per: 'month', since }] })],
    ['permits.0.issued', (issued) => permit({ issued })],
    ['permits.0.final', (final) => permit({ final })],
  ])('%s: an error there, and none on the day itself', (path, spec) => {
    expect(paths(spec(LATER))).toEqual([['tally.future', path]]);
    expect(paths(spec(AS_OF))).toEqual([]);
    // A month or a year that has begun may lie before the day.
    expect(paths(spec('2026'))).toEqual([]);
  });

  test('the hint builds for that day', () => {
    expect(found(work({ done: '2026-08' }))[0]?.hints[1]).toBe('build for that day:  --as-of 2026-08-01');
  });

  test('what may lie ahead is let', () => {
    const ahead = { ...work({ done: AS_OF, warranty: { until: LATER } }), house: { listed: LATER } };
    expect(
      paths({ ...ahead, care: [{ what: 'change the filter', every: '3 months', next: LATER }] }),
    ).toEqual([]);
  });
});

describe('two dates that can’t both be right', () => {
  const house = (bought: string, listed: string) => ({ house: { bought, listed } });
  test.each<[string, PartialSpec, string]>([
    ['house.listed', house('2026-03-02', '2026-03-01'), 'write  listed: 2026-03-02  or later'],
    [
      'work.0.started',
      work({ started: '2026-06', done: '2026-05-12' }),
      'write  started: 2026-05-12  or earlier',
    ],
    [
      'permits.0.final',
      permit({ issued: '2026-04-20', final: '2026-04-19' }),
      'write  final: 2026-04-20  or later',
    ],
    [
      'systems.0.warranty.until',
      system({ installed: '2026-04-11', warranty: { until: '2025-04' } }),
      'write  until: 2026-04-11  or later',
    ],
    [
      'systems.0.warranty.1.until',
      system({ made: 2024, warranty: [{ years: 5 }, { of: 'parts', until: 2023 }] }),
      'write  until: 2024  or later',
    ],
    [
      'work.0.warranty.until',
      work({ done: '2026-05-12', warranty: { until: '2026-05-11' } }),
      'write  until: 2026-05-12  or later',
    ],
  ])('%s', (path, spec, hint) => {
    const [one, ...others] = found(spec);
    expect(others).toEqual([]);
    expect([one?.code, one?.severity, one?.path?.join('.')]).toEqual(['tally.date-order', 'error', path]);
    expect(one?.hints[0]).toBe(hint);
  });

  test('the same day, and what the dates leave open, may be right', () => {
    const day = '2026-05-12';
    expect(paths(house(day, day))).toEqual([]);
    expect(paths(work({ started: day, done: day }))).toEqual([]);
    expect(paths(work({ started: '2026-05-20', done: '2026-05' }))).toEqual([]);
    expect(paths(work({ started: '2026-05-20' }))).toEqual([]);
    expect(paths(work({ started: '2026-06', done: '2026-01/..' }))).toEqual([]);
    expect(paths(permit({ issued: '2026', final: '2026-01-05' }))).toEqual([]);
    expect(paths(system({ installed: '../2026-05', warranty: { until: 2020 } }))).toEqual([]);
  });

  test('the message names both dates', () => {
    expect(found(work({ started: '2026-06', done: '2026-05-12' }))[0]?.message).toBe(
      '“handrail” can’t have been begun (June 2026) after it was done (12 May 2026)',
    );
    expect(
      found(system({ installed: '2026-04-11', warranty: { of: 'tank', until: '2025-04' } }))[0]?.message,
    ).toBe(
      '“furnace, gas” (tank) can’t have been installed (11 April 2026) after it was out of warranty (April 2025)',
    );
  });
});
