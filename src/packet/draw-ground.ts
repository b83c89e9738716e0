/** The ground of a room on a plan: plain, washed or hatched, so that two of them differ by more than a colour. */
import { edgesOf } from '../tally/corners.js';
import type { LegendEntry } from './draw-footer.js';
import { tidy } from './draw-tidy.js';
import type { Shape, XY } from './packet.js';

export interface Ground {
  readonly fill: 'paper' | 'wash';
  /** Which way its hatching runs, seen from the left. */
  readonly hatch?: 'rising' | 'falling' | 'crossed' | 'level';
}

/** Points between two lines of hatching, along the horizontal. */
const BETWEEN = 9;

export function drawGround(corners: readonly XY[], { fill, hatch }: Ground): Shape[] {
  const ground: Shape = { kind: 'path', points: corners, closed: true, fill };
  if (hatch === undefined) return [ground];
  return [ground, ...SLOPES[hatch].flatMap((slope) => hatching(corners, slope))];
}

/** Along a line of hatching x·a + y·b stays the same. */
type Slope = readonly [a: number, b: number];
const SLOPES: Record<NonNullable<Ground['hatch']>, readonly Slope[]> = {
  rising: [[1, 1]],
  falling: [[1, -1]],
  crossed: [
    [1, 1],
    [1, -1],
  ],
  level: [[0, 1.5]],
};

/** Parallel lines, each cut where it enters and leaves the outline. */
function hatching(corners: readonly XY[], [a, b]: Slope): Shape[] {
  const level = ([x, y]: XY): number => a * x + b * y;
  const levels = corners.map(level);
  const shapes: Shape[] = [];
  const first = Math.floor(Math.min(...levels) / BETWEEN) + 0.5;
  for (let step = first; step * BETWEEN < Math.max(...levels); step++) {
    const at = step * BETWEEN;
    const crossings = edgesOf(corners)
      .flatMap(([from, to]): XY[] => {
        if (level(from) > at === level(to) > at) return [];
        const share = (at - level(from)) / (level(to) - level(from));
        return [[from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]];
      })
      .sort((one, other) => one[0] - other[0]);
    for (let index = 0; index + 1 < crossings.length; index += 2) {
      const [from, to] = [crossings[index] as XY, crossings[index + 1] as XY];
      shapes.push({
        kind: 'line',
        from: [tidy(from[0]), tidy(from[1])],
        to: [tidy(to[0]), tidy(to[1])],
        pen: 'hair',
        ink: 'line',
      });
    }
  }
  return shapes;
}

const SWATCH: XY = [18, 9];

/** A sample of a ground, for the legend. */
export function swatch(ground: Ground, words: string): LegendEntry {
  const [width, height] = SWATCH;
  return {
    words,
    width,
    draw: (left, middle) => {
      const [top, bottom] = [tidy(middle - height / 2), tidy(middle + height / 2)];
      const corners: XY[] = [
        [tidy(left), top],
        [tidy(left + width), top],
        [tidy(left + width), bottom],
        [tidy(left), bottom],
      ];
      return [
        ...drawGround(corners, ground),
        { kind: 'path', points: corners, closed: true, fill: 'none', pen: 'thin', ink: 'ink' },
      ];
    },
  };
}
