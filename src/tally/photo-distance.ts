/**
 * How far apart two photos were taken. The only file that measures on the globe; a place goes in, and only a distance
 * comes out.
 */
import geodesic from 'geographiclib-geodesic';
import type { Spot } from '../facts/camera.js';

const FEET_PER_METRE = 1 / 0.3048;

/** Length of the shortest way over the WGS 84 ellipsoid (Karney 2013, doi:10.1007/s00190-012-0578-z), in feet. */
export function feetBetween(a: Spot, b: Spot): number {
  const { s12 = Number.NaN } = geodesic.Geodesic.WGS84.Inverse(a.north, a.east, b.north, b.east);
  return s12 * FEET_PER_METRE;
}

/**
 * Which of the spots lie farther than `withinFeet` from where most were taken, and how many feet.
 *
 * The centre is the spot with the least sum of distances to the others: unlike a mean, a photo from another town does
 * not move it. Nothing is said of fewer than three spots, or where no more than half lie near the centre.
 */
export function farFrom(spots: ReadonlyMap<string, Spot>, withinFeet: number): ReadonlyMap<string, number> {
  if (spots.size < 3) return new Map();
  const centre = middleOf([...spots.values()]);
  const far = [...spots]
    .map(([id, spot]): [string, number] => [id, feetBetween(centre, spot)])
    .filter(([, feet]) => feet > withinFeet);
  return (spots.size - far.length) * 2 > spots.size ? new Map(far) : new Map();
}

/**
 * Straight lines through the globe order spots as the ways over it do, and cost a hundredth: a phone's folder has a
 * million pairs.
 */
function middleOf(spots: readonly Spot[]): Spot {
  const points = spots.map((spot) => {
    const [lat, lon] = [(spot.north * Math.PI) / 180, (spot.east * Math.PI) / 180];
    return {
      spot,
      at: [Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)] as const,
    };
  });
  return points
    .map(({ spot, at: [x, y, z] }) => {
      let sum = 0;
      for (const {
        at: [u, v, w],
      } of points)
        sum += Math.hypot(x - u, y - v, z - w);
      return { spot, sum };
    })
    .reduce((best, one) => (one.sum < best.sum ? one : best)).spot;
}

const FEET_PER_MILE = 5280;

/** Coarse on purpose: "about 3 miles" tells that something is wrong, and not where the house is. */
export function coarseDistance(feet: number): { readonly words: string; readonly feet: number } {
  const miles = feet / FEET_PER_MILE;
  if (miles < 0.75) {
    const step = feet < 1000 ? 100 : 500;
    const rounded = Math.max(step, Math.round(feet / step) * step);
    return { words: `about ${rounded.toLocaleString('en-US')} ft`, feet: rounded };
  }
  const step = miles < 10 ? 1 : miles < 100 ? 10 : 100;
  const rounded = Math.max(1, Math.round(miles / step) * step);
  return {
    words: `about ${rounded === 1 ? 'a mile' : `${rounded.toLocaleString('en-US')} miles`}`,
    feet: rounded * FEET_PER_MILE,
  };
}
