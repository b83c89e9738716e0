/** The plans of a house's levels for paper and for a narrow screen: all to one scale, with the same numbers in both. */
import { dimensionedWalls } from './draw-dimensions.js';
import { drawPlan, frameOf, groundSize, type PlanLevel, roomsTooSmall } from './draw-plan.js';
import { anyScale, largestScale, scaleWords } from './draw-scale.js';
import type { Drawing } from './packet.js';

/** Widest a plan may be on the smaller of the two papers, and on a small phone, in points. */
const WIDE = 452;
const NARROW = { width: 250, height: 340 };

export interface LevelPlan {
  readonly drawing: Drawing;
  readonly narrow: Drawing;
  /** "Printed on letter paper: 1/8 inch to the foot". */
  readonly scale: string;
  /** Positions of rooms that have a number, 1 and on, since what they say fits in one of the two forms alone, or in none. */
  readonly numbered: readonly number[];
  /** On a jagged outline some walls find no room for their dimension. */
  readonly lacksDimensions: boolean;
}

/**
 * `highest` is that of one plan on paper, in points; `atMost` a scale in points a foot that is large enough. None where
 * a level is too large to be seen at the smallest scale.
 */
export function drawLevels(
  levels: readonly PlanLevel[],
  { highest, atMost }: { readonly highest: number; readonly atMost?: number },
): LevelPlan[] {
  const fits = (width: number, height: number) => (perFoot: number) =>
    levels.every((level) => {
      // Most scales are too large for the bare ground, which is known before any dimension finds its row.
      const ground = groundSize(level.outline, perFoot);
      if (ground.width > width || ground.height > height) return false;
      const frame = frameOf(level, perFoot);
      return frame.width <= width && frame.height <= height;
    });
  const scale = largestScale(fits(WIDE, highest), atMost);
  const narrow = scale && anyScale(fits(NARROW.width, NARROW.height), scale.perFoot);
  if (scale === undefined || narrow === undefined) return [];
  return levels.map((level) => {
    const small = [...roomsTooSmall(level, scale.perFoot), ...roomsTooSmall(level, narrow)];
    const numbered = [...new Set(small)].sort((one, other) => one - other);
    const numbers = new Map(numbered.map((position, index) => [position, index + 1]));
    return {
      drawing: drawPlan(level, scale.perFoot, numbers),
      narrow: drawPlan(level, narrow, numbers),
      scale: scaleWords(scale),
      numbered,
      lacksDimensions: [scale.perFoot, narrow].some((each) => lacksDimensions(level, each)),
    };
  });
}

const lacksDimensions = (level: PlanLevel, perFoot: number): boolean =>
  level.dimensions && frameOf(level, perFoot).dimensions.length < dimensionedWalls(level.outline);
