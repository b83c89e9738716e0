/** The scales that plans are drawn to. */

export interface Scale {
  /** Points a foot. */
  readonly perFoot: number;
  /** "1/8 inch to the foot", for the caption; undefined where it is no usual scale. */
  readonly name: string | undefined;
}

const USUAL: readonly Scale[] = [
  { perFoot: 18, name: '1/4 inch to the foot' },
  { perFoot: 13.5, name: '3/16 inch to the foot' },
  { perFoot: 9, name: '1/8 inch to the foot' },
  { perFoot: 6.75, name: '3/32 inch to the foot' },
  { perFoot: 4.5, name: '1/16 inch to the foot' },
];

/** Points a foot below which nothing could be seen. */
const SMALLEST = 0.05;

/** So many halvings find a scale to a thousandth. */
const HALVINGS = 12;

/**
 * The largest usual scale that fits, else the one that just does. `atMost` is a scale in points a foot that no plan
 * of this kind needs to exceed. What fits at one scale has to fit at every smaller one.
 */
export function largestScale(fits: (perFoot: number) => boolean, atMost = Number.POSITIVE_INFINITY): Scale {
  const usual = USUAL.find(({ perFoot }) => perFoot <= atMost && fits(perFoot));
  return usual ?? { perFoot: anyScale(fits, Math.min(4.5, atMost)), name: undefined };
}

/** The largest scale that fits, usual or not: for a screen, where nobody lays a rule on it. */
export function anyScale(fits: (perFoot: number) => boolean, atMost: number): number {
  if (fits(atMost)) return atMost;
  let [low, high] = [SMALLEST, atMost];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** For a caption. A screen or a copy has its own size, and there the bar counts. */
export const scaleWords = ({ name }: Scale): string =>
  name === undefined ? 'To scale by its scale bar' : `Printed on letter paper: ${name}`;
