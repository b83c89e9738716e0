/** Photos where a date, a place or a word is only half known. */
import { describe, expect, it, test } from 'vitest';
import type { Cameras } from '../../src/facts/camera.js';
import { proposeAlt } from '../../src/tally/photo-alt.js';
import { checkPhotoDates } from '../../src/tally/photo-dates.js';
import { farFrom } from '../../src/tally/photo-distance.js';
import { proposePhotos } from '../../src/tally/photo-proposals.js';
import type { SeenPhoto } from '../../src/tally/photo-seen.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const seen = (name: string, takenAt?: string, id?: string): SeenPhoto => ({
  name: `${name}.jpg`,
  id,
  width: 4000,
  height: 3000,
  takenAt,
  spot: undefined,
});
const RAIL = { id: 'rail', what: 'handrail', did: 'new', done: '2026-05-12' } as const;
const proposed = (spec: PartialSpec, photos: readonly SeenPhoto[]) =>
  proposePhotos(houseFrom(spec), photos, '2026-11-20');

describe('a photo for a pair', () => {
  const halves = (spec: PartialSpec, photos: readonly SeenPhoto[]) =>
    proposed(spec, photos).pairs.flatMap(({ before, after }) => [
      before && `before ${before.photo.name}: ${before.reason}`,
      after && `after ${after.photo.name}: ${after.reason}`,
    ]);

  test('of the very day the work began is one before it, by the hour too', () => {
    const work = [{ ...RAIL, started: '2026-05-10' }];
    expect(halves({ work }, [seen('x', '2026-05-10T08:00:00')])).toEqual([
      'before x.jpg: taken on the day the work began; nothing else fits',
      undefined,
    ]);
    // Of a month nobody can tell on which side of the beginning it was.
    expect(halves({ work: [{ ...RAIL, started: '2026-05' }] }, [seen('x', '2026-05-10T08:00:00')])).toEqual(
      [],
    );
    expect(
      halves({ work, photos: { x: { shows: 'x', when: 'before' } } }, [
        seen('x', '2026-05-10T08:00:00', 'x'),
      ]),
    ).toEqual([
      'before x.jpg: taken on the day the work began; its entry says “before”; nothing else fits',
      undefined,
    ]);
  });

  test('of one day: the last before the work and the first after it; a day without its hour counts as its beginning', () => {
    const photos = { d: { shows: 'rail', taken: '2026-05-01' } };
    const before = [
      seen('a', '2026-05-01T08:00:00'),
      seen('b', '2026-05-01T17:00:00'),
      seen('d', undefined, 'd'),
    ];
    expect(halves({ work: [RAIL], photos }, before)[0]).toMatch(
      /^before b\.jpg: .*; a\.jpg, d\.jpg would fit, too$/,
    );
    const after = { d: { shows: 'rail', taken: '2026-05-20' } };
    expect(
      halves({ work: [RAIL], photos: after }, [
        seen('a', '2026-05-20T17:00:00'),
        seen('b', '2026-05-20T08:00:00'),
        seen('d', undefined, 'd'),
      ])[1],
    ).toMatch(/^after d\.jpg: .*; b\.jpg, a\.jpg would fit, too$/);
  });

  test('a day without its hour stands before those with one, whatever their names', () => {
    const photos = { a: { shows: 'rail', taken: '2026-05-20' } };
    expect(
      halves({ work: [RAIL], photos }, [seen('a', undefined, 'a'), seen('b', '2026-05-20T08:00:00')])[1],
    ).toMatch(/^after a\.jpg: .*; b\.jpg would fit, too$/);
    // Of two works of one day the earlier photo goes to the first, and the other to the second.
    const two = proposed({ work: [RAIL, { ...RAIL, id: 'post', what: 'post' }], photos }, [
      seen('a', undefined, 'a'),
      seen('b', '2026-05-20T08:00:00'),
    ]);
    expect(two.pairs.map(({ item, after }) => [item.id, after?.photo.name])).toEqual([
      ['rail', 'a.jpg'],
      ['post', 'b.jpg'],
    ]);
  });

  test('of one second goes by its name', () => {
    const at = '2026-05-01T08:00:00';
    expect(halves({ work: [RAIL] }, [seen('y-9', at), seen('x-1', at)])[0]).toMatch(/^before x-1\.jpg/);
    expect(halves({ work: [RAIL] }, [seen('x-1', at), seen('y-9', at)])[0]).toMatch(/^before x-1\.jpg/);
  });

  test('that a fact rests on is still free for one, unless it is of what was left as found', () => {
    const spec = (when: 'before' | 'as-found'): PartialSpec => ({
      work: [RAIL],
      conditions: [{ what: 'the stair is worn', photos: ['x'] }],
      photos: { x: { shows: 'stair', when } },
    });
    const photos = [seen('x', '2026-05-01T08:00:00', 'x')];
    expect(halves(spec('before'), photos)[0]).toMatch(/^before x\.jpg/);
    expect(halves(spec('as-found'), photos)).toEqual([]);
  });
});

describe('photos taken in one go', () => {
  const bursts = (...names: readonly string[]) =>
    proposed(
      {},
      names.map((name, at) => seen(name, `2026-05-01T08:00:0${at}`)),
    ).bursts.map(({ photos }) => photos.map(({ name }) => name));

  it.each<readonly [string, readonly [string, string], boolean]>([
    ['count on', ['IMG_1', 'IMG_2'], true],
    ['count on past a power of ten', ['IMG_9', 'IMG_10'], true],
    ['skip one', ['IMG_1', 'IMG_3'], false],
    ['are of two cameras', ['IMG_1', 'DSC_2'], false],
    ['differ behind the number', ['IMG_1a', 'IMG_2b'], false],
    ['differ behind the number in capitals alone', ['IMG_1A', 'IMG_2a'], true],
    ['have no number', ['one', 'two'], false],
    ['have a number longer than a camera counts', ['20260501080000001', '20260501080000002'], true],
  ])('whose names %s', (_, names, together) => {
    expect(bursts(...names)).toEqual(together ? [names.map((name) => `${name}.jpg`)] : []);
  });
});

describe('the sentence that is proposed for a photo', () => {
  const house = houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [
      {
        id: 'den',
        level: 'main',
        use: 'office',
        finishes: [
          { on: 'other', what: 'built-in shelf', kept: true },
          { on: 'floor', what: 'oak', colour: 'honey', kept: true },
        ],
      },
    ],
    work: [{ id: 'rail', what: 'rail', did: 'new' }],
  });
  const [rail] = house.work;

  it.each([
    [
      'a room of which all was kept',
      { shows: 'den', where: 'den' },
      undefined,
      'Den: built-in shelf; floor oak, honey.',
    ],
    ['work of which nobody said how', { shows: 'rail', where: 'den' }, rail, 'Rail, den.'],
    ['a place that is not known', { shows: 'rail' }, undefined, 'Rail.'],
  ])('%s', (_, photo, item, words) => {
    expect(proposeAlt(house, { when: undefined, where: undefined, ...photo }, item)).toBe(words);
  });
});

describe('a photo on the wrong side of the day of its work', () => {
  const told = (photos: { before?: string; after?: string }, days: Readonly<Record<string, string>>) => {
    const cameras: Cameras = new Map(
      Object.entries(days).map(([id, day]) => [id, { takenAt: `${day}T10:00:00`, spot: undefined }]),
    );
    const entry = { shows: 'stair', alt: 'A stair.' };
    return checkPhotoDates(
      houseFrom({ work: [{ ...RAIL, photos }], photos: { B: entry, A: entry } }),
      cameras,
    ).map(({ message, hints }) => [message.slice(0, 1), hints[0]]);
  };

  test('is offered the other side only where that is free', () => {
    expect(told({ before: 'B' }, { B: '2026-05-20' })).toEqual([
      ['B', 'if it shows the place after the work:  after: B'],
    ]);
    expect(told({ before: 'B', after: 'A' }, { B: '2026-05-20' })).toEqual([
      ['B', 'if  done: 2026-05-12  is wrong, correct it, for example  done: 2026-05-20'],
    ]);
    expect(told({ after: 'A' }, { A: '2026-05-01' })[0]?.[0]).toBe('A');
  });
});

test('most photos are in one place; one from another town does not move it', () => {
  const spots = new Map([
    ['town', { north: 41, east: -81 }],
    ['a', { north: 40, east: -81 }],
    ['b', { north: 40.0001, east: -81 }],
    ['c', { north: 40.0002, east: -81 }],
  ]);
  const far = farFrom(spots, 1000);
  expect([...far.keys()]).toEqual(['town']);
  // A degree of latitude at 40° is 111.04 km on the WGS 84 ellipsoid; less the 11 m to the middle spot.
  expect(Math.round(((far.get('town') ?? 0) * 0.3048) / 100) / 10).toBeCloseTo(111.0, 0);
});
