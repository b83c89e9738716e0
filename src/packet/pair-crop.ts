/** The one shape that both photos of a pair are cut to. */

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Narrower or wider than this, a pair side by side is hard to compare on paper and on a phone. */
const NARROWEST = 10 / 13;
const WIDEST = 1.6;

/** Width over height, halfway between the two and never far from a photo's own shapes. Rounded to a thousandth. */
export function pairAspect(before: Size, after: Size): number {
  // The mean of the tallnesses, so that neither an upright nor a level photo loses more than the other.
  const tallness = (before.height / before.width + after.height / after.width) / 2;
  return Math.round(Math.min(WIDEST, Math.max(NARROWEST, 1 / tallness)) * 1000) / 1000;
}
