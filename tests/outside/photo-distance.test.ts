/**
 * Independent check: how far two photos are apart, against published geodesics on WGS 84 and against the haversine
 * formula on a sphere.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feetBetween } from '../../src/tally/photo-distance.js';

const metres = (north: number, east: number, north2: number, east2: number): number =>
  feetBetween({ north, east }, { north: north2, east: east2 }) * 0.3048;

describe('published geodesics', () => {
  test.each([
    // C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), doi:10.1007/s00190-012-0578-z: tables 2 and 3,
    // and the nearly antipodal example with them (read in other libraries' tests that cite the tables).
    ['table 2, ten thousand kilometres', 40, 0, 41.79331020506, 137.84490004377, 10_000_000, 1e-5],
    ['table 3, five metres', -30.12345, 0, -30.12344, 0.00005, 4.944208, 1e-6],
    ['nearly the other side of the globe', -30, 0, 29.9, 179.8, 19_989_832.82761, 1e-5],
    // Rows of Karney's GeodTest set (doi:10.5281/zenodo.32156), which was worked out in high precision (from memory);
    // the figures were read in the tests of geographiclib-geodesic, rounded here to a micrometre.
    ['GeodTest, 1', 35.60777, -139.44815, -11.17491, -69.95921, 8_935_244.560482, 2e-6],
    ['GeodTest, 2', 55.52454, 106.05087, 77.03196, -162.81766, 4_105_086.171392, 2e-6],
    ['GeodTest, 3', -21.97856, 142.59065, 41.84138, 98.56635, 8_394_328.894658, 2e-6],
    ['GeodTest, 4', -19.79938, -174.47484, -11.99349, -154.35109, 2_319_004.860117, 2e-6],
  ])('%s', (_name, north, east, north2, east2, length, within) => {
    expect(Math.abs(metres(north, east, north2, east2) - length)).toBeLessThan(within);
  });
});

/** R. W. Sinnott's haversine (Sky and Telescope 68, 1984; from memory), on a sphere of 6,371,008.8 m. */
function haversine(north: number, east: number, north2: number, east2: number): number {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  const half = (degrees: number): number => Math.sin(radians(degrees) / 2) ** 2;
  const a = half(north2 - north) + Math.cos(radians(north)) * Math.cos(radians(north2)) * half(east2 - east);
  return 2 * 6_371_008.8 * Math.asin(Math.min(1, Math.sqrt(a)));
}

const within = (most: number) => fc.double({ min: -most, max: most, noNaN: true });

test('a sphere is never more than 0.6 % off', () => {
  fc.assert(
    fc.property(within(90), within(180), within(90), within(180), (north, east, north2, east2) => {
      const exact = metres(north, east, north2, east2);
      const round = haversine(north, east, north2, east2);
      expect(Math.abs(exact - round)).toBeLessThanOrEqual(0.006 * exact + 1e-3);
    }),
    { numRuns: 3000, seed: 3 },
  );
});

test('there and back is the same way, and a place is nowhere but where it is', () => {
  fc.assert(
    fc.property(within(90), within(180), within(90), within(180), (north, east, north2, east2) => {
      const there = metres(north, east, north2, east2);
      expect(Math.abs(there - metres(north2, east2, north, east))).toBeLessThan(1e-6);
      expect(metres(north, east, north, east)).toBe(0);
    }),
    { numRuns: 500, seed: 3 },
  );
});
