/** Which photos may be the ones before and after a piece of work. */
import { describe, expect, test } from 'vitest';
import type { Spot } from '../../src/facts/camera.js';
import { proposePhotos } from '../../src/tally/photo-proposals.js';
import type { SeenPhoto } from '../../src/tally/photo-seen.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const AS_OF = '2026-11-20';

const photo = (name: string, takenAt?: string, more: Partial<SeenPhoto> = {}): SeenPhoto => ({
  name: `${name}.jpg`,
  id: undefined,
  width: 4000,
  height: 3000,
  takenAt,
  spot: undefined,
  ...more,
});
const RAIL = { id: 'rail', what: 'handrail', did: 'new', done: '2026-05-12' } as const;

const pairsOf = (spec: PartialSpec, photos: readonly SeenPhoto[]) =>
  proposePhotos(houseFrom(spec), photos, AS_OF).pairs.map(({ item, before, after }) => ({
    work: item.id,
    before: before?.photo.name,
    after: after?.photo.name,
  }));
const reasonOf = (spec: PartialSpec, photos: readonly SeenPhoto[], slot: 'before' | 'after') =>
  proposePhotos(houseFrom(spec), photos, AS_OF).pairs[0]?.[slot]?.reason;

describe('a pair for a piece of work', () => {
  const seen = [
    photo('early', '2026-05-01T10:00:00'),
    photo('late', '2026-05-08T10:00:00'),
    photo('done', '2026-05-12T18:00:00'),
    photo('later', '2026-05-20T10:00:00'),
  ];

  test('is the nearest before it began and the nearest after it was done', () => {
    expect(pairsOf({ work: [{ ...RAIL, started: '2026-05-10' }] }, seen)).toEqual([
      { work: 'rail', before: 'late.jpg', after: 'done.jpg' },
    ]);
    expect(pairsOf({ work: [RAIL] }, seen)).toEqual([
      { work: 'rail', before: 'late.jpg', after: 'done.jpg' },
    ]);
    expect(pairsOf({ work: [{ ...RAIL, done: undefined }] }, seen)).toEqual([]);
    expect(pairsOf({ work: [{ ...RAIL, done: '2026-05/..' }] }, seen)).toEqual([]);
  });

  test('says why in plain words', () => {
    const begun = { work: [{ ...RAIL, started: '2026-05-12', done: '2026-05-13' }] };
    const [early, late, done, later] = seen;
    if (!early || !late || !done || !later) throw new Error('photos are missing');
    expect(reasonOf(begun, [late], 'before')).toBe('taken 4 days before the work began; nothing else fits');
    expect(reasonOf(begun, [late, early], 'before')).toBe(
      'taken 4 days before the work began; only its time speaks for it; early.jpg would fit, too',
    );
    expect(reasonOf({ work: [RAIL] }, [done], 'after')).toBe(
      'taken on the day it was done; nothing else fits',
    );
    expect(reasonOf({ work: [RAIL] }, [later], 'after')).toBe(
      'taken 8 days after it was done; nothing else fits',
    );
    expect(reasonOf({ work: [{ ...RAIL, done: '2026-05-07' }] }, [late], 'after')).toBe(
      'taken 1 day after it was done; nothing else fits',
    );
  });

  test('of a month, a photo within it is neither before nor after, unless its entry says so', () => {
    const within = [photo('x', '2026-05-20T10:00:00', { id: 'x' })];
    const month = { work: [{ ...RAIL, done: '2026-05' }] };
    expect(pairsOf({ ...month, photos: { x: { shows: 'x' } } }, within)).toEqual([]);
    expect(pairsOf({ ...month, photos: { x: { shows: 'x', when: 'after' } } }, within)).toEqual([
      { work: 'rail', before: undefined, after: 'x.jpg' },
    ]);
    expect(reasonOf({ ...month, photos: { x: { shows: 'x', when: 'before' } } }, within, 'before')).toBe(
      'taken about when it was done; its entry says “before”; nothing else fits',
    );
  });

  test('only what it lacks; what is in a pair already goes into no other', () => {
    const spec: PartialSpec = {
      photos: { a: { shows: 'a' }, b: { shows: 'b' } },
      work: [
        { ...RAIL, photos: { before: 'a' } },
        { ...RAIL, id: 'step' },
      ],
    };
    const named = [
      photo('a', '2026-05-08T10:00:00', { id: 'a' }),
      photo('b', '2026-05-13T10:00:00', { id: 'b' }),
    ];
    expect(pairsOf(spec, named)).toEqual([{ work: 'rail', before: undefined, after: 'b.jpg' }]);
    const both = { ...spec, work: [{ ...RAIL, photos: { before: 'a', after: 'b' } }] };
    expect(pairsOf(both, named)).toEqual([]);
  });

  test('one photo for one piece of work: the nearest in time, the others are named', () => {
    const spec: PartialSpec = {
      work: [
        { ...RAIL, id: 'far', done: '2026-05-20' },
        { ...RAIL, id: 'near' },
      ],
    };
    const [pair, ...more] = proposePhotos(houseFrom(spec), [photo('x', '2026-05-10T10:00:00')], AS_OF).pairs;
    expect(more).toEqual([]);
    expect([pair?.item.id, pair?.before?.otherWork]).toEqual(['near', ['far']]);
    expect(pair?.before?.reason).toBe(
      'taken 2 days before it was done; only its time speaks for it; also possible for far',
    );
  });

  test('the place that the facts name goes before the time, and another place out', () => {
    const spec: PartialSpec = {
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [
        { id: 'bath', level: 'main', use: 'bath' },
        { id: 'hall', level: 'main', use: 'hall' },
      ],
      work: [{ ...RAIL, where: ['bath'] }],
      photos: { p: { shows: 'p', where: 'bath' }, q: { shows: 'q', where: 'hall' } },
    };
    const seenThere = [
      photo('p', '2026-04-01T10:00:00', { id: 'p' }),
      photo('q', '2026-05-11T10:00:00', { id: 'q' }),
      photo('x', '2026-05-10T10:00:00'),
    ];
    const [pair] = proposePhotos(houseFrom(spec), seenThere, AS_OF).pairs;
    expect(pair?.before?.photo.name).toBe('p.jpg');
    expect(pair?.before?.reason).toBe(
      'taken 41 days before it was done; its entry names the same place; x.jpg would fit, too',
    );
  });

  test('not half a year away; without a word of the facts, not two months', () => {
    const old = (id?: string) => [photo('x', '2026-03-12T10:00:00', { id })];
    expect(pairsOf({ work: [RAIL] }, old())).toEqual([]);
    expect(pairsOf({ work: [RAIL], photos: { x: { shows: 'x', when: 'before' } } }, old('x'))).toHaveLength(
      1,
    );
    expect(
      pairsOf(
        { work: [{ ...RAIL, done: '2026-10-12' }], photos: { x: { shows: 'x', when: 'before' } } },
        old('x'),
      ),
    ).toEqual([]);
  });

  test('what the facts say of a photo goes before its time', () => {
    for (const when of ['after', 'during', 'label'] as const)
      expect(
        pairsOf({ work: [RAIL], photos: { x: { shows: 'x', when } } }, [
          photo('x', '2026-05-08T10:00:00', { id: 'x' }),
        ]),
        when,
      ).toEqual([]);
    // The writer's day goes before the camera's.
    expect(
      pairsOf({ work: [RAIL], photos: { x: { shows: 'x', taken: '2026-05-20' } } }, [
        photo('x', '2026-05-08T10:00:00', { id: 'x' }),
      ]),
    ).toEqual([{ work: 'rail', before: undefined, after: 'x.jpg' }]);
    expect(
      pairsOf({ work: [RAIL], photos: { x: { shows: 'x', taken: '2026-04' } } }, [
        photo('x', '2026-05-08T10:00:00', { id: 'x' }),
      ]),
    ).toEqual([]);
  });

  test('a photo as found may be the one before, unless it shows a condition', () => {
    const spec: PartialSpec = { work: [RAIL], photos: { x: { shows: 'x', when: 'as-found' } } };
    const found = [photo('x', '2026-05-08T10:00:00', { id: 'x' })];
    expect(pairsOf(spec, found)).toHaveLength(1);
    expect(pairsOf({ ...spec, conditions: [{ what: 'cracked', photos: ['x'] }] }, found)).toEqual([]);
  });

  test('a private photo may be proposed, and is marked', () => {
    const held = (extra: object) =>
      proposePhotos(
        houseFrom({ work: [RAIL], photos: { x: { shows: 'x', ...extra } } }),
        [photo('x', '2026-05-08T10:00:00', { id: 'x' })],
        AS_OF,
      ).pairs[0]?.before?.held;
    expect(held({ private: true })).toBe('private');
    expect(held({ 'not-before': '2026-11-21' })).toBe('not before 2026-11-21');
    expect(held({ 'not-before': '2026-11-20' })).toBeUndefined();
    expect(held({ 'not-before': '2026' })).toBe('not before 2026');
    expect(held({})).toBeUndefined();
  });

  test('one from another house is proposed for nothing', () => {
    const home: Spot = { north: 39.1, east: -84.5 };
    const away: Spot = { north: 39.2, east: -84.5 };
    const others = ['a', 'b', 'c'].map((name) => photo(name, '2026-01-01T10:00:00', { spot: home }));
    const proposals = proposePhotos(
      houseFrom({ work: [RAIL] }),
      [...others, photo('x', '2026-05-10T10:00:00', { spot: away })],
      AS_OF,
    );
    expect(proposals.pairs).toEqual([]);
    expect([...proposals.far]).toEqual([['x.jpg', 'about 7 miles']]);
  });
});

describe('photos taken in one go', () => {
  const burst = (names: readonly string[], gap = 1, more: Partial<SeenPhoto> = {}) =>
    proposePhotos(
      houseFrom({ work: [RAIL] }),
      names.map((name, n) => photo(name, `2026-05-08T10:00:${String(n * gap).padStart(2, '0')}`, more)),
      AS_OF,
    );

  test('are one row, of which the middle one is proposed', () => {
    const { bursts, pairs } = burst(['IMG_0009', 'IMG_0010', 'IMG_0011']);
    expect(bursts.map(({ photos, best }) => [photos.length, best.name])).toEqual([[3, 'IMG_0010.jpg']]);
    expect(pairs[0]?.before?.photo.name).toBe('IMG_0010.jpg');
    expect(pairs[0]?.before?.others).toEqual([]);
  });

  test('unless three seconds, a name or the size part them', () => {
    expect(burst(['IMG_1', 'IMG_2'], 3).bursts).toEqual([]);
    expect(burst(['IMG_1', 'IMG_3']).bursts).toEqual([]);
    expect(burst(['IMG_1', 'DSC_2']).bursts).toEqual([]);
    expect(burst(['a', 'b']).bursts).toEqual([]);
    const two = [photo('IMG_1', '2026-05-08T10:00:00'), photo('IMG_2', '2026-05-08T10:00:01', { width: 1 })];
    expect(proposePhotos(houseFrom({}), two, AS_OF).bursts).toEqual([]);
  });

  test('of which the facts name one: that one', () => {
    const seen = ['IMG_1', 'IMG_2', 'IMG_3'].map((name, n) =>
      photo(name, `2026-05-08T10:00:0${n}`, name === 'IMG_3' ? { id: 'IMG_3' } : {}),
    );
    const { bursts, pairs } = proposePhotos(
      houseFrom({ work: [RAIL], photos: { IMG_3: { shows: 'x' } } }),
      seen,
      AS_OF,
    );
    expect(bursts[0]?.best.name).toBe('IMG_3.jpg');
    expect(pairs[0]?.before?.photo.name).toBe('IMG_3.jpg');
  });
});

describe('a photo whose entry corrects the clock', () => {
  const corrected: PartialSpec = { work: [RAIL], photos: { IMG_0001: { shows: 'x', taken: '2026-05-11' } } };
  const named = photo('IMG_0001', '2031-03-01T10:00:00', { id: 'IMG_0001' });
  const names = (list: readonly SeenPhoto[]) => list.map(({ name }) => name);

  test('is in no burst, and hides no other', () => {
    const seen = [named, photo('IMG_0002', '2026-05-11T09:00:00')];
    const { bursts, pairs } = proposePhotos(houseFrom(corrected), seen, AS_OF);
    expect(bursts).toEqual([]);
    const [half] = pairs.map(({ before }) => before);
    expect([half?.photo.name, names(half?.others ?? [])]).toEqual(['IMG_0002.jpg', ['IMG_0001.jpg']]);
    // Nor if the corrected clock is seconds away, or behind.
    for (const at of ['2026-05-10T08:59:59', '2026-05-10T09:00:01'])
      expect(
        proposePhotos(
          houseFrom(corrected),
          [{ ...named, takenAt: at }, photo('IMG_0002', '2026-05-10T09:00:00')],
          AS_OF,
        ).bursts,
      ).toEqual([]);
  });

  test('keeps the camera’s time where it agrees on the day', () => {
    const seen = [photo('IMG_0000', '2026-05-11T09:00:00'), { ...named, takenAt: '2026-05-11T09:00:01' }];
    const { bursts, inOrder } = proposePhotos(houseFrom(corrected), [...seen].reverse(), AS_OF);
    expect(names(inOrder)).toEqual(['IMG_0000.jpg', 'IMG_0001.jpg']);
    expect(bursts.map(({ best }) => best.name)).toEqual(['IMG_0001.jpg']);
  });
});

test('neighbours that a clock set back puts the wrong way round are no burst', () => {
  const seen = [photo('IMG_1', '2026-05-08T10:00:02'), photo('IMG_2', '2026-05-08T10:00:00')];
  expect(proposePhotos(houseFrom({}), seen, AS_OF).bursts).toEqual([]);
});

test('the lists: in order of time, without time, without words', () => {
  const spec: PartialSpec = {
    photos: {
      b: { shows: 'b', taken: '2026-03-01' },
      c: { shows: 'c', alt: 'C.' },
      d: { shows: 'd', private: true },
    },
  };
  const seen = [
    photo('z'),
    photo('b', '2031-01-01T00:00:00', { id: 'b' }),
    photo('d', '2026-02-01T10:00:00', { id: 'd' }),
    photo('c', '2026-04-01T10:00:00', { id: 'c' }),
    photo('a', '2026-04-01T10:00:00'),
  ];
  const { inOrder, withoutTime, withoutWords, held } = proposePhotos(houseFrom(spec), seen, AS_OF);
  expect(inOrder.map(({ name }) => name)).toEqual(['d.jpg', 'b.jpg', 'a.jpg', 'c.jpg', 'z.jpg']);
  expect(withoutTime.map(({ name }) => name)).toEqual(['z.jpg']);
  expect(withoutWords.map(({ name }) => name)).toEqual(['b.jpg']);
  expect([...held]).toEqual([['d.jpg', 'private']]);
});

test('the answer does not depend on the order in which the folder is read', () => {
  const seen = Array.from({ length: 30 }, (_, n) =>
    photo(`IMG_${n * 2}`, `2026-05-${String((n % 28) + 1).padStart(2, '0')}T10:00:00`),
  );
  const spec: PartialSpec = {
    work: ['2026-05-05', '2026-05-12', '2026-05-20'].map((done) => ({ ...RAIL, id: `w${done}`, done })),
  };
  const forwards = proposePhotos(houseFrom(spec), seen, AS_OF);
  const backwards = proposePhotos(houseFrom(spec), [...seen].reverse(), AS_OF);
  expect(backwards).toEqual(forwards);
  expect(forwards.pairs).toHaveLength(3);
});
