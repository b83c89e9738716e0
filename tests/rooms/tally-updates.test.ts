import { describe, expect, test } from 'vitest';
import {
  APPRAISER_DECIDES,
  deriveUpdates,
  type UpdateSuggestion,
} from '../../src/tally/appraiser-updates.js';
import { listImprovements } from '../../src/tally/improvements.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type RoomSpec = NonNullable<PartialSpec['rooms']>[number];
type FinishSpec = NonNullable<RoomSpec['finishes']>[number];
type WorkSpec = NonNullable<PartialSpec['work']>[number];

const AS_OF = '2026-06-20';
const LEVELS = [{ id: 'main', name: 'Main level', grade: 'above' as const }];

function updates(spec: PartialSpec, asOf = AS_OF): UpdateSuggestion[] {
  const house = houseFrom({ levels: LEVELS, ...spec });
  return deriveUpdates(house, listImprovements(house).done, asOf);
}
const get = (list: readonly UpdateSuggestion[], id: string): UpdateSuggestion => {
  const found = list.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no suggestion ${id}`);
  return found;
};
const room = (use: 'kitchen' | 'bath', id: string = use, finishes: FinishSpec[] = []): RoomSpec => ({
  id,
  level: 'main',
  use,
  finishes,
});
const kitchen = (finishes: FinishSpec[], rest: PartialSpec = {}, asOf = AS_OF) =>
  get(updates({ rooms: [room('kitchen', 'kitchen', finishes)], ...rest }, asOf), 'updates-kitchen');
const bath = (finishes: FinishSpec[], rest: PartialSpec = {}) =>
  get(updates({ rooms: [room('bath', 'bath', finishes)], ...rest }), 'updates-bath');
const work = (extra: Partial<WorkSpec>): PartialSpec => ({
  work: [{ id: 'job', what: 'something', did: 'new', where: ['kitchen'], done: '2026-04', ...extra }],
});

describe('the level of work', () => {
  // The words are the form’s; what puts work in each is this project’s reading of short quoted definitions.
  test('nothing recorded is “not updated”, in the form’s words for the time', () => {
    expect(kitchen([])).toMatchObject({
      word: 'not updated',
      timeFrames: ['No updates in the prior 15 years'],
      alsoPossible: [],
      facts: ['No such work of the last 15 years is recorded in the house folder'],
    });
    expect(kitchen([{ on: 'cabinets', what: 'birch', kept: true }]).word).toBe('not updated');
  });

  test.each<[FinishSpec, string]>([
    [{ on: 'cabinets', what: 'birch plywood', done: '2026-04' }, 'remodeled'],
    [{ on: 'cabinets', what: 'painted maple', done: '2026-04', did: 'replaced' }, 'remodeled'],
    [{ on: 'cabinets', what: 'birch', done: '2026-04', did: 'painted' }, 'updated'],
    [{ on: 'cabinets', what: 'paint', done: '2026-04' }, 'updated'],
    [{ on: 'cabinets', what: 'knobs', done: '2026-04' }, 'updated'],
    [{ on: 'counter', what: 'laminate', done: '2026-04' }, 'updated'],
    [{ on: 'backsplash', what: 'tile', done: '2026-04' }, 'updated'],
    [{ on: 'walls', what: 'paint', done: '2026-04' }, 'updated'],
    [{ on: 'sink', what: 'steel', done: '2026-04', did: 'moved' }, 'remodeled'],
    [{ on: 'lights', what: 'pendants', done: '2026-04', did: 'moved' }, 'not updated'],
    [{ on: 'floor', what: 'oak', done: '2026-04', did: 'repaired' }, 'not updated'],
    [{ on: 'floor', what: 'oak', done: '2026-04', did: 'cleaned' }, 'not updated'],
  ])('kitchen %o: %s', (finish, word) => {
    expect(kitchen([finish]).word).toBe(word);
  });

  test.each<[FinishSpec, string]>([
    [{ on: 'tub', what: 'enamelled steel', done: '2026-04' }, 'remodeled'],
    [{ on: 'tub', what: 'cast iron', done: '2026-04', did: 'refinished' }, 'updated'],
    [{ on: 'shower', what: 'acrylic base', done: '2026-04' }, 'remodeled'],
    [{ on: 'shower', what: 'shower head', done: '2026-04' }, 'updated'],
    [{ on: 'shower', what: 'glass door', done: '2026-04' }, 'updated'],
    [{ on: 'faucet', what: 'tub faucet', done: '2026-04' }, 'updated'],
    [{ on: 'floor', what: 'porcelain tile', done: '2026-04' }, 'remodeled'],
    [{ on: 'floor', what: 'vinyl tile', done: '2026-04' }, 'updated'],
    [{ on: 'floor', what: 'tile', done: '2026-04', did: 'repaired' }, 'not updated'],
    [{ on: 'vanity', what: 'oak', done: '2026-04' }, 'updated'],
    [{ on: 'toilet', what: 'low flush', done: '2026-04', did: 'moved' }, 'remodeled'],
  ])('bathroom %o: %s', (finish, word) => {
    expect(bath([finish]).word).toBe(word);
  });

  test.each<[Partial<WorkSpec>, string]>([
    [{ what: 'wall to the dining room', did: 'removed', structural: true }, 'remodeled'],
    [{ what: 'drain and supply', did: 'repaired', 'fixtures-moved': true }, 'remodeled'],
    [{ what: 'cabinets', did: 'replaced' }, 'remodeled'],
    [{ what: 'cabinets', did: 'repaired' }, 'not updated'],
    [{ what: 'range', did: 'moved' }, 'remodeled'],
    [{ what: 'circuits', did: 'new' }, 'updated'],
    [{ what: 'anti-tip bracket', did: 'new', safety: true }, 'not updated'],
    [{ what: 'bearing wall', did: 'repaired', safety: true, structural: true }, 'remodeled'],
    [{ what: 'cabinets', did: 'replaced', where: ['main'] }, 'not updated'],
  ])('work %o: %s', (extra, word) => {
    expect(kitchen([], work(extra)).word).toBe(word);
  });

  test('a new appliance is a part like others', () => {
    const system = {
      id: 'range',
      is: 'range, electric',
      where: 'kitchen',
      installed: '2026-04',
      did: 'replaced',
    } as const;
    expect(kitchen([], { systems: [system] }).word).toBe('updated');
  });

  test('what an earlier owner did and left a date for counts too', () => {
    const suggestion = kitchen([{ on: 'cabinets', what: 'maple', kept: true, done: 2018, did: 'replaced' }]);
    expect(suggestion).toMatchObject({
      word: 'remodeled',
      facts: ['cabinets, maple, replaced, a major part, 2018'],
    });
  });
});

describe('the time frame', () => {
  const frame = (done: string, asOf: string) => {
    const { word, timeFrames } = kitchen([{ on: 'cabinets', what: 'birch', done }], {}, asOf);
    return [word, ...timeFrames];
  };

  // The wordings are the form’s; completed whole years and where they turn are this project’s reading.
  test.each([
    ['2025-06-21', 'less than one year ago'],
    ['2025-06-20', 'one to five years ago'],
    ['2020-06-21', 'one to five years ago'],
    ['2020-06-20', 'six to ten years ago'],
    ['2015-06-21', 'six to ten years ago'],
    ['2015-06-20', 'eleven to fifteen years ago'],
    ['2010-06-21', 'eleven to fifteen years ago'],
  ])('done %s: %s', (done, words) => {
    expect(frame(done, AS_OF)).toEqual(['remodeled', words]);
  });

  test('sixteen completed years are further back than anyone looks', () => {
    expect(frame('2010-06-20', AS_OF)).toEqual(['not updated', 'No updates in the prior 15 years']);
    const { facts } = kitchen([{ on: 'cabinets', what: 'birch', done: '2010-06-20' }]);
    expect(facts).toEqual([
      'No such work of the last 15 years is recorded in the house folder',
      'cabinets, birch, new, a major part, 20 June 2010; more than 15 years back, not counted',
    ]);
  });

  test('a date over a boundary gives every wording it allows', () => {
    expect(frame('2020', AS_OF)).toEqual(['remodeled', 'one to five years ago', 'six to ten years ago']);
    expect(frame('2014/2021', AS_OF)).toEqual([
      'remodeled',
      'one to five years ago',
      'six to ten years ago',
      'eleven to fifteen years ago',
    ]);
    expect(frame('../2012', AS_OF)).toEqual([
      'remodeled',
      'eleven to fifteen years ago',
      'more than 15 years ago',
    ]);
  });

  test('a date that may lie before the look-back leaves the lower level possible', () => {
    const suggestion = kitchen([
      { on: 'cabinets', what: 'birch', done: '2009/2012' },
      { on: 'counter', what: 'laminate', done: 2024 },
    ]);
    expect(suggestion).toMatchObject({ word: 'remodeled', alsoPossible: ['updated'] });
    expect(kitchen([{ on: 'cabinets', what: 'birch', done: '2009/2012' }]).alsoPossible).toEqual([
      'not updated',
    ]);
  });

  test('without a date the level stays, and the time is the form’s “unknown”', () => {
    const suggestion = kitchen([
      { on: 'cabinets', what: 'birch', did: 'replaced' },
      { on: 'counter', what: 'laminate', done: 2024 },
    ]);
    expect(suggestion).toMatchObject({ word: 'remodeled', timeFrames: ['timeframe unknown'] });
    expect(suggestion.facts.slice(0, 2)).toEqual([
      'cabinets, birch, replaced, a major part, date not known',
      'counter, laminate, new, 2024',
    ]);
  });

  test('counts from the latest of the work that made the level, not from lesser work after it', () => {
    const suggestion = kitchen([
      { on: 'cabinets', what: 'birch', done: '2017-05' },
      { on: 'walls', what: 'paint', done: '2026-05' },
    ]);
    expect(suggestion).toMatchObject({ word: 'remodeled', timeFrames: ['six to ten years ago'] });
    const two = [
      { on: 'cabinets', what: 'birch', done: '2012-05' },
      { on: 'sink', what: 'steel', did: 'moved', done: '2023-05' },
    ] as const;
    expect(kitchen([...two]).timeFrames).toEqual(['one to five years ago']);
  });

  test('undated work beside dated work of the level is said to be open', () => {
    const suggestion = kitchen([
      { on: 'cabinets', what: 'birch', done: '2023-05' },
      { on: 'sink', what: 'steel', did: 'moved' },
    ]);
    expect(suggestion.timeFrames).toEqual(['one to five years ago']);
    expect(suggestion.facts.at(-1)).toBe(
      'The time frame counts dated work only; what has no date may be later',
    );
  });

  test('work that isn’t done yet counts for nothing', () => {
    expect(frame('2026-06-21', AS_OF)[0]).toBe('not updated');
    expect(frame('2026-06-20', AS_OF)).toEqual(['remodeled', 'less than one year ago']);
  });
});

describe('rooms', () => {
  const TUB: FinishSpec = { on: 'tub', what: 'steel', done: '2026-04' };

  test('each kitchen and bathroom by itself, and all bathrooms together', () => {
    const list = updates({
      rooms: [room('bath', 'hall-bath', [TUB]), room('kitchen'), room('bath', 'cellar-bath')],
    });
    expect(list.map((one) => [one.id, one.of, one.name, one.word])).toEqual([
      ['updates-kitchen', 'kitchen', 'Kitchen', 'not updated'],
      ['updates-hall-bath', 'bathroom', 'Hall bath', 'remodeled'],
      ['updates-cellar-bath', 'bathroom', 'Cellar bath', 'not updated'],
      ['updates-bathrooms', 'all bathrooms', 'Bathrooms', 'remodeled'],
    ]);
    const all = get(list, 'updates-bathrooms');
    expect(all.rooms).toEqual(['hall-bath', 'cellar-bath']);
    expect(all.alsoPossible).toEqual(['not updated']);
    expect(all.facts.at(-1)).toBe('The bathrooms differ: Hall bath, remodeled; Cellar bath, not updated');
  });

  test('bathrooms that agree need no second word', () => {
    const list = updates({ rooms: [room('bath', 'a', [TUB]), room('bath', 'b', [TUB])] });
    expect(get(list, 'updates-bathrooms')).toMatchObject({ word: 'remodeled', alsoPossible: [] });
    expect(get(list, 'updates-bathrooms').facts).toEqual([
      'A: tub, steel, new, a major part, April 2026',
      'B: tub, steel, new, a major part, April 2026',
    ]);
    expect(updates({ rooms: [] })).toEqual([]);
  });
});

test('the appraiser decides, and nothing here is a rating or a value', () => {
  const list = updates({
    rooms: [
      room('kitchen', 'kitchen', [{ on: 'cabinets', what: 'birch', done: 2024 }]),
      room('bath', 'bath', [{ on: 'walls', what: 'paint', done: 2024 }]),
    ],
  });
  expect(list).toHaveLength(3);
  for (const one of list) {
    expect(one.decides).toBe(APPRAISER_DECIDES);
    expect(one.decides).toMatch(/the appraiser alone decides/);
    expect(JSON.stringify(one)).not.toMatch(/\b[CQ][1-6]\b|\brating|quality|worth|value|\$/i);
  }
});
