/**
 * Floors so near in height that they may count as one level.
 *
 * ANSI Z765-2021, 2.5, as quoted in public: floors within 2 ft of one plane are one level. The standard leaves
 * open what holds at exactly 2 ft, for chains of floors, and where one of them is below grade; those are flagged.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { wholeSquareFeet } from '../facts/floor-area.js';
import type { Level } from '../facts/house.js';
import { FOOT } from '../facts/length.js';
import type { LevelArea, OpenReading } from './area-answer.js';
import { lengthWords, listWords } from './area-words.js';

const NEAR = 2 * FOOT;

/** A floor and its height over the main floor, in 0.1 µm. */
export interface FloorHeight<T> {
  readonly floor: T;
  readonly height: number;
}

export interface NearFloors<T> {
  /** From the lowest up. */
  readonly floors: readonly FloorHeight<T>[];
  /** From the lowest to the highest, 0.1 µm. */
  readonly span: number;
  /** within: one level by the rule · exactly: 2 ft apart · chain: neighbours are near, the ends aren't. */
  readonly kind: 'within' | 'exactly' | 'chain';
}

/** Groups floors whose neighbours are at most 2 ft apart, from the lowest up; a floor alone is a group too. */
export function groupFloors<T>(heights: readonly FloorHeight<T>[]): NearFloors<T>[] {
  const groups: { readonly floors: FloorHeight<T>[]; readonly lowest: number; highest: number }[] = [];
  for (const floor of [...heights].sort((a, b) => a.height - b.height)) {
    const group = groups.at(-1);
    if (group !== undefined && floor.height - group.highest <= NEAR) {
      group.floors.push(floor);
      group.highest = floor.height;
    } else groups.push({ floors: [floor], lowest: floor.height, highest: floor.height });
  }
  return groups.map(({ floors, lowest, highest }) => {
    const span = highest - lowest;
    return { floors, span, kind: span < NEAR ? 'within' : span === NEAR ? 'exactly' : 'chain' };
  });
}

/** A level and its position in the folder's list. */
export interface PlacedLevel {
  readonly level: Level;
  readonly index: number;
}

/** Flags near floors. `areas` are the levels' sums. */
export function checkSplitFloors(
  levels: readonly Level[],
  areas: readonly LevelArea[],
): { readings: readonly OpenReading[]; diagnostics: readonly Diagnostic[] } {
  const near = groupFloors(heightsOf(levels)).filter((group) => group.floors.length > 1);
  return {
    readings: near.flatMap((group) => gradeReadings(group, areas)),
    diagnostics: near.map(splitDiagnostic),
  };
}

/** Stated heights, and the main floor at 0: the lowest level above grade that states none. */
export function heightsOf(levels: readonly Level[]): FloorHeight<PlacedLevel>[] {
  const main = levels.findIndex((level) => level.grade === 'above' && level.floor === undefined);
  return levels.flatMap((level, index) => {
    if (level.floor !== undefined) return [{ floor: { level, index }, height: level.floor.units }];
    return index === main ? [{ floor: { level, index }, height: 0 }] : [];
  });
}

const mixesGrades = (group: NearFloors<PlacedLevel>): boolean =>
  new Set(group.floors.map(({ floor }) => floor.level.grade)).size > 1;

function splitDiagnostic(group: NearFloors<PlacedLevel>): Diagnostic {
  const names = listWords(group.floors.map(({ floor }) => floor.level.name));
  const span = lengthWords(group.span);
  const mixed = mixesGrades(group);
  const what = {
    within: `the floors of ${names} lie within ${span} of each other, so by the 2 ft rule they are one level`,
    exactly: `the floors of ${names} are exactly 2 ft apart, and the standard doesn’t say whether they are one level`,
    chain: `the floors of ${names} each lie within 2 ft of the next but span ${span}, and the standard doesn’t say which are one level`,
  }[group.kind];
  const stated = group.floors.filter(({ floor }) => floor.level.floor !== undefined);
  const index = Math.max(...stated.map(({ floor }) => floor.index));
  return {
    code: 'tally.level-split',
    severity: group.kind === 'within' && !mixed ? 'note' : 'warning',
    path: ['levels', index, 'floor'],
    message: mixed ? `${what}; one of them is below grade, which may make all of them so` : what,
    hints: mixed
      ? ['check grade: and floor: of each', 'write them as one level, below grade, if any part of it is']
      : ['the totals are the same either way; write them as one level if you want one sum'],
  };
}

/** Word for word, a level near one that is below grade would be below grade with it. */
function gradeReadings(group: NearFloors<PlacedLevel>, areas: readonly LevelArea[]): OpenReading[] {
  const below = group.floors.filter(({ floor }) => floor.level.grade === 'below');
  // In a chain of floors only some are near one that is below grade.
  const near = group.floors.filter(({ height }) =>
    below.some((other) => Math.abs(other.height - height) <= NEAR),
  );
  const sums = near.flatMap(({ floor }) => areas.filter(({ id }) => id === floor.level.id));
  return sums.flatMap(({ name, byClass }): OpenReading[] => {
    const finished = byClass['above-finished'];
    if (finished === 0n) return [];
    const counts = wholeSquareFeet(finished);
    return [
      {
        room: name,
        words: `Its floor is within 2 ft of a level below grade. Taken word for word the two are one level, and all of it is below grade: then none of its ${counts} sq ft count above grade. The figures here keep the two apart, as written.`,
        countedIfPass: counts,
        countedIfFail: 0,
        used: 'pass',
      },
    ];
  });
}
