/**
 * How large the house is, by class, with the sum behind each figure.
 *
 * Takes a checked house. Gives areas by level and class, structures on lines of their own, the sentences that have
 * to stand beside the figures, open readings with both results, and the comparison with the public record. Never
 * rounds before the end, never picks between readings in silence, never averages. The rules are those of ANSI
 * Z765-2021 as quoted in public; where it is silent, the rule's text says what was chosen.
 * Start reading at `deriveAreas`, then `sumLevel` in area-level.ts.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { SQUARE_METRE, wholeSquareFeet } from '../facts/floor-area.js';
import type { House } from '../facts/house.js';
import {
  AREA_CLASSES,
  type AreaClass,
  type Areas,
  type ClassArea,
  type LevelArea,
  type StructureArea,
} from './area-answer.js';
import { noArea, sumLevel } from './area-level.js';
import { assessRoom, type RoomFloor } from './area-rooms.js';
import { checkSplitFloors } from './area-split.js';
import { type StructuresAnswer, sumStructures } from './area-structures.js';
import { wallReadings } from './area-walls.js';
import type { Taped } from './area-words.js';
import { isSloped, slopeTaped } from './ceiling.js';
import { declare } from './declaration.js';
import { levelsAbove } from './level-order.js';
import { shapeTaped, sizeTaped } from './level-outline.js';
import { compareRecord } from './record-compare.js';

export type {
  AreaClass,
  Areas,
  ClassArea,
  LevelArea,
  PlacedRoom,
} from './area-answer.js';
export { AREA_CLASS_NAMES, AREA_CLASSES } from './area-answer.js';

/** Measures the house. Diagnostics carry the path of the fact in the checked house. */
export function deriveAreas(house: House): {
  readonly areas: Areas;
  readonly diagnostics: readonly Diagnostic[];
} {
  const rooms = house.rooms.map((room, index) =>
    assessRoom(
      room,
      house.levels.find((level) => level.id === room.level),
      ['rooms', index],
    ),
  );
  const above = levelsAbove(house.levels);
  const sums = house.levels.map((level, index) =>
    sumLevel(
      level,
      above.get(level),
      rooms.filter((room) => room.room.level === level.id),
      ['levels', index],
    ),
  );
  const levels = sums.map((sum) => sum.level);
  const structures = sumStructures(house, rooms);
  const split = checkSplitFloors(house.levels, levels);
  const readings = [...sums.flatMap((sum) => sum.readings), ...structures.readings, ...split.readings];
  const declaration = declare({
    house,
    levels,
    rooms,
    remarks: sums.flatMap((sum) => sum.remarks),
    readings,
  });
  const figures = {
    levels,
    byClass: totals(levels, structures, isMetric(house)),
    structures: structures.lines,
    estimate: levels.some((level) => level.estimate),
    readings,
  };
  const record = compareRecord(house, { ...figures, insideFinished: insideFinished(rooms) });
  return {
    areas: {
      ...figures,
      toStandard: declaration.toStandard,
      declaration: declaration.sentences,
      record: record.comparison,
      roomFloors: roomFloors(rooms),
      roomWalls: roomWalls(house, rooms),
    },
    diagnostics: [
      ...rooms.flatMap((room) => room.diagnostics),
      ...sums.flatMap((sum) => sum.diagnostics),
      ...structures.diagnostics,
      ...split.diagnostics,
      ...declaration.diagnostics,
      ...record.diagnostics,
    ],
  };
}

function totals(
  levels: readonly LevelArea[],
  structures: StructuresAnswer,
  metric: boolean,
): Record<AreaClass, ClassArea> {
  const sums = noArea();
  for (const level of levels) for (const name of AREA_CLASSES) sums[name] += level.byClass[name];
  sums.disconnected += sumOf(structures.disconnected);
  // Garages inside a level stand on the garage line as well, so the lines are the whole of it.
  sums['garage-and-open'] = sumOf(structures.lines.garage) + sumOf(structures.lines.open);
  return Object.fromEntries(AREA_CLASSES.map((name) => [name, classArea(sums[name], metric)])) as Record<
    AreaClass,
    ClassArea
  >;
}

const sumOf = (list: readonly StructureArea[]): bigint =>
  list.reduce((sum, one) => sum + (one.area ?? 0n), 0n);

function classArea(area: bigint, metric: boolean): ClassArea {
  const tenths = (20n * area + SQUARE_METRE) / (2n * SQUARE_METRE);
  return { area, squareFeet: wholeSquareFeet(area), squareMetres: metric ? Number(tenths) / 10 : undefined };
}

/** Whether every length that an area rests on was read in metric units. */
function isMetric({ levels, rooms, structures }: House): boolean {
  const openings = levels.flatMap((level) => level.openings);
  const sizes = [
    ...levels.flatMap((level) => (level.parts ?? []).map((part) => part.size)),
    ...openings.map((opening) => opening.size),
    ...openings.flatMap((opening) => opening.treads ?? []),
    ...rooms.flatMap((room) => room.low.map((low) => low.size)),
  ];
  const taped: Taped[] = [
    ...[...levels, ...rooms, ...structures].flatMap(shapeTaped),
    ...sizes.flatMap(sizeTaped),
    ...rooms.flatMap(({ ceiling }) => (isSloped(ceiling) ? slopeTaped(ceiling) : [])),
  ];
  const readings = [...taped.map((one) => one.reading), ...levels.flatMap(wallReadings)];
  return readings.length > 0 && readings.every((reading) => reading === 'metric');
}

/** Finished floor above grade between the walls of its rooms, for the comparison with a record. */
function insideFinished(rooms: readonly RoomFloor[]): bigint {
  return rooms
    .filter((room) => room.rest === 'above-finished')
    .reduce((sum, room) => {
      const moved = room.moves.reduce((lost, move) => lost + move.area, 0n);
      return room.floor === undefined ? sum : sum + room.floor - moved;
    }, 0n);
}

const roomFloors = (rooms: readonly RoomFloor[]): ReadonlyMap<string, bigint> =>
  new Map(rooms.flatMap(({ room, shape }) => (shape === undefined ? [] : [[room.id, shape.area] as const])));

function roomWalls(house: House, rooms: readonly RoomFloor[]): Areas['roomWalls'] {
  return new Map(
    rooms.flatMap(({ room, shape }) => {
      if (shape === undefined) return [];
      const level = house.levels.find((one) => one.id === room.level);
      const ceiling = room.ceiling ?? level?.ceiling;
      const height = ceiling === undefined || isSloped(ceiling) ? undefined : ceiling.units;
      return [[room.id, { perimeter: shape.perimeter, height }] as const];
    }),
  );
}
