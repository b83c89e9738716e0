/** Photos taken far from the house's others. Where a photo was taken is never said. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cameras, Spot } from '../../src/facts/camera.js';
import { readLength } from '../../src/facts/length.js';
import { coarseDistance, farFrom, feetBetween } from '../../src/tally/photo-distance.js';
import { checkPhotoPlaces } from '../../src/tally/photo-places.js';
import { houseFrom } from './house-from.js';

const HOME: Spot = { north: 39.123437, east: -84.512406 };
/** About 364,000 ft to a degree of latitude. */
const northOf = (feet: number): Spot => ({ north: HOME.north + feet / 364_200, east: HOME.east });

const camerasOf = (spots: Readonly<Record<string, Spot | undefined>>): Cameras =>
  new Map(Object.entries(spots).map(([id, spot]) => [id, { takenAt: undefined, spot }]));
const houseOf = (ids: readonly string[], within?: string) =>
  houseFrom({
    house: within === undefined ? {} : { 'photos-within': within },
    photos: Object.fromEntries(ids.map((id) => [id, { shows: 'x', alt: 'X.' }])),
  });
const found = (spots: Readonly<Record<string, Spot | undefined>>, within?: string) =>
  checkPhotoPlaces(houseOf(Object.keys(spots), within), camerasOf(spots));
const ids = (list: ReturnType<typeof found>) => list.map(({ path }) => path?.[1]);

describe('a photo far from the others', () => {
  test('is named with a coarse distance, and nothing of where it was', () => {
    const list = found({ a: HOME, b: northOf(40), c: northOf(90), d: northOf(16_000) });
    expect(list).toMatchObject([
      {
        code: 'tally.photo-place',
        severity: 'warning',
        path: ['photos', 'd'],
        message:
          'this photo was taken about 3 miles from the house’s other photos, and is probably not of this house',
      },
    ]);
    expect(list[0]?.hints[1]).toBe(
      "if the house’s photos lie that far apart, write under house:  photos-within: 24000'",
    );
    expect(JSON.stringify(list)).not.toMatch(/39\.|84\.5|north|east/);
  });

  test('1000 ft unless the writer says otherwise', () => {
    const spots = { a: HOME, b: northOf(5), c: northOf(10), d: northOf(980), e: northOf(1030) };
    expect(ids(found(spots))).toEqual(['e']);
    expect(ids(found(spots, "500'"))).toEqual(['d', 'e']);
    expect(ids(found(spots, '2000 ft'))).toEqual([]);
  });

  test('what it proposes to write makes it quiet', () => {
    const spots = { a: HOME, b: northOf(40), c: northOf(90), d: northOf(7300) };
    const within = /photos-within: (\d+')/.exec(found(spots)[0]?.hints.join(' ') ?? '')?.[1];
    expect(found(spots, within)).toEqual([]);
  });

  test('what can’t be written is not proposed: no length is over 100,000 ft', () => {
    const hintAt = (feet: number) => {
      const spots = { a: HOME, b: northOf(40), c: northOf(90), d: northOf(feet) };
      const [one, ...more] = found(spots);
      expect(more).toEqual([]);
      expect(one?.hints.at(0)).toContain('take it out of photos:');
      expect(one?.hints.at(-1)).toContain('leave it so');
      const within = /photos-within: (\d+')/.exec(one?.hints.join(' ') ?? '')?.[1];
      if (within !== undefined) expect([readLength(within).ok, found(spots, within)]).toEqual([true, []]);
      return within;
    };
    expect([45_000, 77_000, 99_000].map(hintAt)).toEqual(["72000'", "80000'", "100000'"]);
    expect([101_000, 475_000, 15_000_000].map(hintAt)).toEqual([undefined, undefined, undefined]);
    expect([readLength("100000'").ok, readLength("100001'").ok]).toEqual([true, false]);
  });

  test('nothing is said of few, of two halves, or of photos without a spot', () => {
    expect(found({ a: HOME, b: northOf(90_000) })).toEqual([]);
    expect(found({ a: HOME, b: HOME, c: northOf(90_000), d: northOf(90_000) })).toEqual([]);
    expect(found({ a: HOME, b: northOf(90_000), c: undefined, d: undefined })).toEqual([]);
    expect(found({ a: HOME, b: HOME, c: HOME, f: undefined })).toEqual([]);
    // Intake lets no such number through; if one came, it would name no photo.
    expect(found({ a: { north: Number.NaN, east: 1 }, b: HOME, c: HOME, d: HOME })).toEqual([]);
  });

  test('across the line where the days change', () => {
    const spots = {
      a: { north: -17, east: 179.9999 },
      b: { north: -17, east: -179.9999 },
      c: { north: -17, east: 180 },
    };
    expect(found(spots)).toEqual([]);
  });

  test('photos that no fact names have no say in it', () => {
    const house = houseOf(['a', 'b', 'c']);
    const cameras = camerasOf({ a: HOME, b: HOME, c: HOME, x: northOf(9000) });
    expect(checkPhotoPlaces(house, cameras)).toEqual([]);
  });

  test('a third from elsewhere never moves the centre', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: -60, max: 60, noNaN: true }),
            fc.double({ min: -60, max: 60, noNaN: true }),
          ),
          {
            minLength: 5,
            maxLength: 9,
          },
        ),
        fc.array(
          fc.tuple(
            fc.double({ min: -80, max: 80, noNaN: true }),
            fc.double({ min: -179, max: 179, noNaN: true }),
          ),
          { maxLength: 2 },
        ),
        (near, away) => {
          const spots = new Map<string, Spot>();
          for (const [n, [x, y]] of near.entries())
            spots.set(`near${n}`, { north: HOME.north + x / 364_200, east: HOME.east + y / 283_000 });
          for (const [n, [north, east]] of away.entries()) {
            const spot = { north, east };
            fc.pre(feetBetween(spot, HOME) > 2000);
            spots.set(`away${n}`, spot);
          }
          expect([...farFrom(spots, 1000).keys()]).toEqual(away.map((_, n) => `away${n}`));
        },
      ),
      { numRuns: 300, seed: 5 },
    );
  });
});

test('distances are said in words that tell no place', () => {
  const words = [40, 149, 700, 1100, 3000, 5000, 16_000, 60_000, 400_000, 3_000_000].map(
    (feet) => coarseDistance(feet).words,
  );
  expect(words).toEqual([
    'about 100 ft',
    'about 100 ft',
    'about 700 ft',
    'about 1,000 ft',
    'about 3,000 ft',
    'about a mile',
    'about 3 miles',
    'about 10 miles',
    'about 80 miles',
    'about 600 miles',
  ]);
});
