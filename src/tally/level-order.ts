/** Which level lies over which: as the folder lists them, lowest first, unless grades or stated heights say otherwise. */
import type { Level } from '../facts/house.js';
import { heightsOf } from './area-split.js';

/** The next level up of each but the topmost one. What lies below the ground is under all that doesn't. */
export function levelsAbove(levels: readonly Level[]): ReadonlyMap<Level, Level> {
  const upwards = [...sorted(levels, 'below'), ...sorted(levels, 'above')];
  return new Map(
    upwards.flatMap((level, index): [Level, Level][] => {
      const above = upwards[index + 1];
      return above === undefined ? [] : [[level, above]];
    }),
  );
}

/** Levels of one grade: by their heights where each is known, else in the order that they are written in. */
function sorted(levels: readonly Level[], grade: Level['grade']): Level[] {
  const listed = levels.filter((level) => level.grade === grade);
  const heights = heightsOf(levels).filter(({ floor }) => floor.level.grade === grade);
  if (heights.length < listed.length) return listed;
  return heights.sort((a, b) => a.height - b.height).map(({ floor }) => floor.level);
}
