/** Photos of work whose days can't be right, said only where they are wrong whatever the dates leave open. */
import { describe, expect, test } from 'vitest';
import type { Cameras } from '../../src/facts/camera.js';
import { checkPhotoDates } from '../../src/tally/photo-dates.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom } from './house-from.js';

const ENTRY = { shows: 'stair', alt: 'A stair.' };

interface Written {
  readonly done?: string;
  readonly photos?: { readonly before?: string; readonly after?: string };
  readonly takenBefore?: string;
  readonly takenAfter?: string;
}

const houseWith = ({ done, photos = { before: 'B', after: 'A' }, takenBefore, takenAfter }: Written) =>
  houseFrom({
    work: [{ id: 'rail', what: 'handrail', did: 'new', done, photos }],
    photos: { B: { ...ENTRY, taken: takenBefore }, A: { ...ENTRY, taken: takenAfter } },
  });

const cameras = (days: Readonly<Record<string, string>>): Cameras =>
  new Map(Object.entries(days).map(([id, takenAt]) => [id, { takenAt, spot: undefined }]));

const found = (written: Written, days: Readonly<Record<string, string>> = {}) =>
  checkPhotoDates(houseWith(written), cameras(days));

describe('a photo after the work that is older than the one before it', () => {
  const older = { B: '2026-05-12T09:00:00', A: '2026-05-03T16:10:00' };

  test('names both photos and both days, and what to type', () => {
    const [one, ...more] = found({}, older);
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      code: 'tally.photo-date',
      severity: 'warning',
      path: ['work', 0, 'photos', 'after'],
      message: 'the photo after the work, A (3 May 2026), is older than the one before it, B (12 May 2026)',
    });
    expect(one?.hints[0]).toBe('if they stand the wrong way round:  before: A  and  after: B');
    expect(one?.hints.join('\n')).toContain('add  taken:  with the right day to A');
  });

  test('is one mistake, also where the day of the work contradicts both', () => {
    expect(found({ done: '2026-05-07' }, older)).toHaveLength(1);
  });

  test('of one day is told by the time', () => {
    const sameDay = { B: '2026-05-12T16:00:00', A: '2026-05-12T09:00:00' };
    expect(found({}, sameDay)[0]?.message).toContain('A (12 May 2026, 09:00)');
    expect(found({}, { B: sameDay.A, A: sameDay.B })).toEqual([]);
    expect(found({}, { B: sameDay.A, A: sameDay.A })).toEqual([]);
  });

  test('the writer’s day goes before the camera’s', () => {
    expect(found({ takenAfter: '2026-05-14' }, older)).toEqual([]);
    expect(found({ takenBefore: '2026-05' }, older)).toEqual([]);
    const [one] = found({ takenAfter: '2026-04', takenBefore: '2026-05' });
    expect(one?.message).toContain('A (April 2026), is older than the one before it, B (May 2026)');
    expect(one?.hints.join('\n')).not.toContain('clock');
  });

  test('one work telling it for two pieces of work is one cause', () => {
    const house = houseFrom({
      work: ['one', 'two'].map((id) => ({
        id,
        what: id,
        did: 'new' as const,
        photos: { before: 'B', after: 'A' },
      })),
      photos: { B: ENTRY, A: ENTRY },
    });
    const messages = checkPhotoDates(house, cameras(older)).map(({ message }) => message);
    expect(messages).toHaveLength(2);
    expect(new Set(messages).size).toBe(1);
  });
});

describe('a photo on the wrong side of the day its work was done', () => {
  test.each([
    // after, done: by the camera
    ['the day before', '2026-05-12', '2026-05-11T23:59:59', true],
    ['the day itself', '2026-05-12', '2026-05-12T00:00:00', false],
    ['a month allows its first day', '2026-05', '2026-05-01T06:00:00', false],
    ['the last day of the month before', '2026-05', '2026-04-30T06:00:00', true],
    ['about May allows April', '2026-05~', '2026-04-01T06:00:00', false],
    ['a span allows its first day', '2026-03/2026-05', '2026-03-01T06:00:00', false],
    ['open towards the past', '../2026-05', '2020-01-01T06:00:00', false],
    ['a year', '2026', '2025-12-31T06:00:00', true],
    ['not certain widens nothing', '2026-05-12?', '2026-05-11T06:00:00', true],
  ])('after, %s', (_name, done, taken, wrong) => {
    const list = found({ done, photos: { after: 'A' } }, { A: taken });
    expect(list).toHaveLength(wrong ? 1 : 0);
    if (wrong) {
      expect(list[0]?.path).toEqual(['work', 0, 'photos', 'after']);
      expect(list[0]?.hints[0]).toContain(`done: ${taken.slice(0, 10)}`);
    }
  });

  test.each([
    ['the day after', '2026-05-12', '2026-05-13T00:00:00', true],
    ['the day itself', '2026-05-12', '2026-05-12T23:00:00', false],
    ['a month allows its last day', '2026-05', '2026-05-31T23:00:00', false],
    ['the first day of the next month', '2026-05', '2026-06-01T06:00:00', true],
    ['open towards the future', '2026-05/..', '2030-06-01T06:00:00', false],
  ])('before, %s', (_name, done, taken, wrong) => {
    const list = found({ done, photos: { before: 'B' } }, { B: taken });
    expect(list).toHaveLength(wrong ? 1 : 0);
    if (wrong) expect(list[0]?.hints[0]).toBe('if it shows the place after the work:  after: B');
  });

  test('the words', () => {
    expect(found({ done: '2026-05', photos: { after: 'A' } }, { A: '2026-04-30T06:00:00' })[0]?.message).toBe(
      'A is to show “handrail” after the work, but was taken (30 April 2026) before it was done (May 2026)',
    );
  });

  test('nothing is said without a day, and all of it reaches the tally', () => {
    expect(found({ done: '2026-05-12' })).toEqual([]);
    expect(found({}, { A: '2026-05-12T10:00:00' })).toEqual([]);
    const codes = (days?: Cameras) =>
      deriveTally(houseWith({ done: '2026-05-12' }), '2026-11-20', days).diagnostics.map(({ code }) => code);
    expect(codes(cameras({ A: '2026-05-01T10:00:00' }))).toContain('tally.photo-date');
    expect(codes()).not.toContain('tally.photo-date');
  });
});
