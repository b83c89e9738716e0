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

/** Steps down from the largest scale, and halvings of the one in which a plan begins to fit: to a thousandth or so. */
const STEPS = 64;
const HALVINGS = 6;

/**
 * The largest usual scale that fits, else as `anyScale`; undefined where nothing does. `atMost` is a scale in points a
 * foot that no plan of this kind needs to exceed.
 */
export function largestScale(
  fits: (perFoot: number) => boolean,
  atMost = Number.POSITIVE_INFINITY,
): Scale | undefined {
  const usual = USUAL.find(({ perFoot }) => perFoot <= atMost && fits(perFoot));
  if (usual !== undefined) return usual;
  const perFoot = anyScale(fits, Math.min(4.5, atMost));
  return perFoot === undefined ? undefined : { perFoot, name: undefined };
}

/**
 * A scale that fits, usual or not (for a screen, where nobody lays a rule on it): the largest of 64 steps down from
 * `atMost`, and as much larger as halving the step above it finds. It is walked from above, since what fits at one
 * scale may not at a smaller one: names that no longer find room in theirs go below the plan, and dimensions into
 * another row. Undefined where no step fits.
 */
export function anyScale(fits: (perFoot: number) => boolean, atMost: number): number | undefined {
  const step = (atMost - SMALLEST) / STEPS;
  for (let steps = STEPS; steps >= 0; steps--) {
    const perFoot = steps === STEPS ? atMost : SMALLEST + step * steps;
    if (fits(perFoot)) return steps === STEPS ? perFoot : enlarged(fits, perFoot, perFoot + step);
  }
  return undefined;
}

/** Between a scale that fits and one that doesn't. */
function enlarged(fits: (perFoot: number) => boolean, fitting: number, tooLarge: number): number {
  let [low, high] = [fitting, tooLarge];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** For a caption. A screen or a copy has its own size, and there the bar counts. */
export const scaleWords = ({ name }: Scale): string =>
  name === undefined ? 'To scale by its scale bar' : `Printed on letter paper: ${name}`;
