/** Systems, rooms and work of which something is only half known: open dates, names left out, ids of nobody. */
import { describe, expect, it, test } from 'vitest';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { mayBeOneDay } from '../../src/facts/date.js';
import { deriveAges } from '../../src/tally/ages.js';
import { deriveAlarms } from '../../src/tally/alarms.js';
import { deriveUpdates } from '../../src/tally/appraiser-updates.js';
import { askCarbonMonoxide } from '../../src/tally/carbon-monoxide.js';
import { deriveQuantities } from '../../src/tally/finish-quantities.js';
import { listImprovements } from '../../src/tally/improvements.js';
import { readLabel } from '../../src/tally/label.js';
import { stopWithin } from '../../src/tally/remarks-length.js';
import { deriveTally } from '../../src/tally/tally.js';
import { whoDid } from '../../src/tally/who.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';
const LEVEL = { id: 'main', name: 'Main level', grade: 'above' } as const;

describe('two dates of one thing', () => {
  const from = (earliest?: string, latest?: string) => ({ earliest, latest });
  it.each([
    ['meet on one day', from('1994-01-01', '1994-12-31'), from('1994-12-31', '1995-12-31'), true],
    ['miss by one day', from('1994-01-01', '1994-12-31'), from('1995-01-01', '1995-12-31'), false],
    [
      'with an open beginning meet what is earlier',
      from(undefined, '1994-12-31'),
      from('1990-01-01', '1990-12-31'),
      true,
    ],
    [
      'with an open beginning miss what is later',
      from(undefined, '1994-12-31'),
      from('1995-01-01', '1995-12-31'),
      false,
    ],
    ['with an open end meet what is later', from('1994-01-01'), from('2020-01-01', '2020-12-31'), true],
    ['with an open end miss what is earlier', from('1994-01-01'), from('1990-01-01', '1990-12-31'), false],
    ['both open, apart', from(undefined, '1990-12-31'), from('1994-01-01'), false],
  ])('%s', (_, one, other, meet) => {
    expect([mayBeOneDay(one, other), mayBeOneDay(other, one)]).toEqual([meet, meet]);
  });

  const label = (made: string, serial = '9412X') =>
    deriveAges(
      houseFrom({ systems: [{ id: 'f', is: 'furnace, gas', made, label: { serial, reads: 'YYWW at 1' } }] }),
      AS_OF,
    ).diagnostics.map(({ code, path = [], message }) => `${code} ${printFactPath(path)}: ${message}`);

  test('a label that can’t be of the day that is written says so', () => {
    const otherwise =
      'tally.label systems[0].made: the label of the same system says between 21 March 1994 and 27 March 1994';
    expect([label('../1990'), label('1995/..')]).toEqual([[otherwise], [otherwise]]);
    expect([label('../1994'), label('1990/..'), label('1994')]).toEqual([[], [], []]);
  });
});

describe('a label', () => {
  test('of a year beyond all houses is refused as a year', () => {
    const read = readLabel('990112', 'YYYY at 1, WW at 5', AS_OF);
    expect(read.ok ? '' : read.problem).toMatch(/year/);
    expect(readLabel('990112', 'YYYY at 1', AS_OF).ok).toBe(false);
  });

  test('of a week to come is an error, and tells which day to build for', () => {
    const { ages, diagnostics } = deriveAges(
      houseFrom({
        systems: [{ id: 'f', is: 'furnace, gas', label: { serial: '2650', reads: 'YYWW at 1' } }],
      }),
      AS_OF,
    );
    expect(
      diagnostics.map(({ code, path = [], hints }) => [code, printFactPath(path), hints.at(-1)]),
    ).toEqual([['tally.future', 'systems[0].label', 'build for that day:  --as-of 2026-12-07']]);
    expect(ages[0]).toMatchObject({ basis: 'label', age: undefined });
  });
});

test('bedrooms in several groups are told apart by the name of their group, unless that is the level’s', () => {
  const bed = (id: string, area?: string) => ({
    id,
    level: 'main',
    use: 'bedroom' as const,
    ...(area === undefined ? {} : { 'sleeping-area': area }),
  });
  const rooms = [
    bed('a', 'East wing'),
    bed('b', 'East wing'),
    bed('c', 'main level'),
    bed('d', 'main level'),
    bed('e'),
  ];
  expect(
    deriveAlarms(houseFrom({ levels: [LEVEL], rooms }), AS_OF)
      .places.filter(({ warns, why }) => warns === 'smoke' && why === 'outside bedrooms')
      .map(({ where }) => where),
  ).toEqual([
    'outside the bedrooms “East wing”, Main level',
    'outside the bedrooms, Main level',
    'outside E, Main level',
  ]);
});

test('a finish with no last day may be of today, and one with no first day of any time', () => {
  const frames = (done: string) => {
    const house = houseFrom({
      levels: [LEVEL],
      rooms: [
        {
          id: 'kitchen',
          level: 'main',
          use: 'kitchen',
          finishes: [{ on: 'floor', what: 'tile', done, did: 'new' }],
        },
      ],
    });
    const [kitchen] = deriveUpdates(house, listImprovements(house).done, AS_OF);
    return [...(kitchen?.timeFrames ?? []), ...(kitchen?.alsoPossible ?? [])];
  };
  expect(frames('2021/..')).toEqual(frames('2021-11-21/2026-11-20'));
  expect(frames('../2021')).toEqual(frames('1700/2021'));
  expect(frames('2021/..')).not.toEqual(frames('../2021'));
});

test('a dated finish of an earlier owner counts as new work of its day, whatever it was called', () => {
  const word = (did?: 'new' | 'cleaned') => {
    const finish = {
      on: 'floor' as const,
      what: 'tile',
      done: '2020',
      kept: true,
      ...(did === undefined ? {} : { did }),
    };
    const house = houseFrom({
      levels: [LEVEL],
      rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen', finishes: [finish] }],
    });
    return deriveUpdates(house, listImprovements(house).done, AS_OF)[0]?.word;
  };
  expect([word(), word('new'), word('cleaned')]).toEqual(['updated', 'updated', 'not updated']);
});

test('stairs that lead from level to level and were not all counted are asked for', () => {
  const gap = (counted: number): string[] => {
    const opening = (what: string) => ({ what, size: `3' x 10'`, treads: `3' x 10'` });
    return deriveTally(
      houseFrom({
        levels: [
          { ...LEVEL, openings: [opening('stair down'), opening('back stair'), opening('cellar stair')] },
        ],
        stairs: Array.from({ length: counted }, (_, at) => ({
          id: `stair-${at}`,
          risers: 13,
          handrail: 'yes' as const,
        })),
      }),
      AS_OF,
    )
      .tally.gaps.map(({ lacks }) => lacks)
      .filter((lacks) => /stairs lead|whether there is a handrail/.test(lacks));
  };
  expect(gap(0)).toEqual(['whether there is a handrail is not said: stair down; back stair; cellar stair']);
  expect(gap(1)).toEqual(['3 stairs lead from level to level, and 1 of them is under stairs:']);
  expect(gap(2)).toEqual(['3 stairs lead from level to level, and 2 of them are under stairs:']);
  expect(gap(3)).toEqual([]);
});

test('an id that is nobody’s did nothing that is known', () => {
  const house = houseFrom({ people: [{ id: 'alder', name: 'Alder Roofing' }] });
  expect(whoDid(house, 'alder')).toMatchObject({ kind: 'hired', person: { name: 'Alder Roofing' } });
  expect(['elder', 'not-known', undefined].map((by) => whoDid(house, by))).toEqual(
    Array(3).fill({ kind: 'not-known' }),
  );
});

test('walls of a structure have no quantity, since nobody measures them room by room', () => {
  const house = houseFrom({
    structures: [
      { id: 'shed', is: 'shed', size: `8' x 10'`, finishes: [{ on: 'walls', what: 'paint', did: 'new' }] },
    ],
  });
  const { areas } = deriveTally(house, AS_OF).tally;
  expect(deriveQuantities(house, areas).map(({ area, how }) => [area, how])).toEqual([
    [undefined, 'Not known: the size of the room isn’t recorded.'],
  ]);
});

test('what burns is called by the first words of its entry', () => {
  const asked = (is: string) => askCarbonMonoxide(houseFrom({ systems: [{ id: 'f', is, fuel: 'gas' }] }));
  expect(asked('water heater, tank, gas')).toEqual({ asked: 'yes', because: ['the water heater burns gas'] });
  expect(asked('boiler')).toEqual({ asked: 'yes', because: ['the boiler burns gas'] });
});

test('lead rules: of one job the replaced windows are named, and jobs of one place in one line', () => {
  const job = (id: string, more: object): NonNullable<PartialSpec['work']>[number] => ({
    id,
    what: id,
    did: 'replaced',
    where: ['hall'],
    done: '2026-05-12',
    by: 'owner',
    ...more,
  });
  const told = (...work: NonNullable<PartialSpec['work']>): [string, string][] =>
    deriveTally(
      houseFrom({ levels: [LEVEL], rooms: [{ id: 'hall', level: 'main', use: 'hall' }], work }),
      AS_OF,
    )
      .diagnostics.filter(({ code }) => code === 'tally.lead')
      .map(({ path = [], message }) => [printFactPath(path), message]);
  expect(
    told(job('walls', { 'paint-disturbed': '7 sq ft' }), job('sashes', { 'windows-replaced': true })),
  ).toEqual([['work[1].windows-replaced', 'lead rules may reach this work: Hall, painted windows replaced']]);
  expect(
    told(
      job('walls', { 'paint-disturbed': '7 sq ft' }),
      job('trim', { 'paint-disturbed': '8 sq ft', done: '2026-09-12' }),
    ),
  ).toEqual([
    [
      'work[0].paint-disturbed',
      'lead rules may reach this work: Hall, 7 and 8 sq ft of paint disturbed (minor repair ends at 6)',
    ],
  ]);
});

test('a listing text stops behind its last whole sentence that fits', () => {
  expect(stopWithin('One. Two.', 9)).toEqual({ to: 9, characters: 9 });
  expect(stopWithin('One. Two.', 8)).toEqual({ to: 4, characters: 4 });
  expect(stopWithin('One.Two.', 7)).toBeUndefined();
});
