/** When a photo was taken, the order that follows from it, and whether it may be shown. */
import { describe, expect, test } from 'vitest';
import { heldBack } from '../../src/tally/photo-consent.js';
import { inTimeOrder, whenTaken } from '../../src/tally/photo-days.js';
import { proposePhotos } from '../../src/tally/photo-proposals.js';
import { houseFrom } from './house-from.js';

const taken = (written: string | undefined) =>
  houseFrom({ photos: { A: { shows: 'x', taken: written } } }).photos.A?.taken;

describe('when a photo was taken', () => {
  test.each([
    ['neither says', undefined, undefined, undefined],
    ['the camera', undefined, '2026-02-21T09:14:02', ['2026-02-21', '2026-02-21T09:14:02', 'camera']],
    ['the entry', '2019', undefined, ['2019', undefined, 'entry']],
    ['both on one day', '2026-02-21', '2026-02-21T09:14:02', ['2026-02-21', '2026-02-21T09:14:02', 'entry']],
    [
      'the entry corrects the camera',
      '2026-02-21',
      '2019-01-01T00:00:00',
      ['2026-02-21', undefined, 'entry'],
    ],
    ['open to the past', '../2010', '2026-02-21T11:26:00', ['../2010', undefined, 'entry']],
    ['open to the future', '2025/..', '2026-02-21T11:26:00', ['2025/..', undefined, 'entry']],
    ['a month that holds the day', '2026-02', '2026-02-21T11:26:00', ['2026-02', undefined, 'entry']],
    ['a month that begins with it', '2026-02', '2026-02-01T11:26:00', ['2026-02', undefined, 'entry']],
    ['not certain of the day', '2026-02-21?', '2026-02-21T11:26:00', ['2026-02-21?', undefined, 'entry']],
  ])('%s', (_name, written, takenAt, expected) => {
    const day = whenTaken({ taken: taken(written), takenAt });
    expect(day && [day.date.written, day.takenAt, day.by]).toEqual(expected);
  });
});

describe('the order of photos', () => {
  const dated = (name: string, written: string | undefined, takenAt?: string) => ({
    name,
    taken: taken(written),
    takenAt,
  });
  const order = (list: readonly ReturnType<typeof dated>[]) => inTimeOrder(list).map(({ name }) => name);

  test('an open date by its last day, a wide one by its first, none last', () => {
    expect(
      order([
        dated('none', undefined),
        dated('feb', undefined, '2026-02-21T09:00:00'),
        dated('scan', '../2010', '2026-02-21T11:26:00'),
        dated('nineties', '199X', '2026-02-21T11:27:00'),
        dated('2010', undefined, '2010-12-30T09:00:00'),
        dated('2011', '2011', '2026-02-21T11:28:00'),
        dated('since', '2025/..', '2026-02-21T11:28:00'),
      ]),
    ).toEqual(['nineties', '2010', 'scan', '2011', 'since', 'feb', 'none']);
  });

  test('of one second by name, of one day or none as they stood', () => {
    const second = ['C', 'A', 'B'].map((name) => dated(name, undefined, '2026-02-21T09:14:02'));
    expect(order(second)).toEqual(['A', 'B', 'C']);
    expect(order(['C', 'A', 'B'].map((name) => dated(name, '2026-02-21')))).toEqual(['C', 'A', 'B']);
    expect(order(['C', 'A', 'B'].map((name) => dated(name, undefined)))).toEqual(['C', 'A', 'B']);
  });

  test('is the same whether a sheet or the command asks', () => {
    const house = houseFrom({
      photos: {
        Z: { shows: 'z' },
        scan: { shows: 'scan', taken: '../2010' },
        year: { shows: 'year', taken: '2026' },
        day: { shows: 'day', taken: '2026-02-21' },
        A: { shows: 'a' },
      },
    });
    const at: Record<string, string> = { day: '2026-02-21T09:00:00', scan: '2026-03-01T10:00:00' };
    const named = Object.entries(house.photos).map(([id, entry]) => ({
      id,
      name: `${id}.jpg`,
      taken: entry.taken,
      takenAt: at[id],
    }));
    const unnamed = [
      { id: undefined, name: 'm.jpg', taken: undefined, takenAt: undefined },
      { id: undefined, name: 'n.jpg', taken: undefined, takenAt: '2026-02-21T08:00:00' },
    ];
    const sheet = inTimeOrder([...named, ...unnamed]).map(({ name }) => name);
    const seen = [...unnamed, ...named].map((one) => ({ ...one, width: 4, height: 3, spot: undefined }));
    const list = proposePhotos(house, seen, '2026-11-20');
    expect(list.inOrder.map(({ name }) => name)).toEqual(sheet);
    expect(sheet).toEqual(['scan.jpg', 'year.jpg', 'n.jpg', 'day.jpg', 'Z.jpg', 'A.jpg', 'm.jpg']);
    expect(list.withoutTime.map(({ name }) => name)).toEqual(['Z.jpg', 'A.jpg', 'm.jpg']);
  });
});

describe('a photo is held back', () => {
  const held = (more: object) => {
    const entry = houseFrom({ photos: { A: { shows: 'x', ...more } } }).photos.A;
    if (entry === undefined) throw new Error('no such photo');
    return heldBack(entry, '2026-11-20')?.why;
  };

  test.each([
    ['by nothing', {}, undefined],
    ['private', { private: true, 'not-before': '2020' }, 'private'],
    ['on the day before', { 'not-before': '2026-11-21' }, 'not-before'],
    ['not on the day', { 'not-before': '2026-11-20' }, undefined],
    ['until the end of a month', { 'not-before': '2026-11' }, 'not-before'],
    ['without an end', { 'not-before': '2020/..' }, 'not-before'],
    ['not where the last day has gone', { 'not-before': '../2020' }, undefined],
  ])('%s', (_name, more, why) => {
    expect(held(more)).toBe(why);
  });
});
