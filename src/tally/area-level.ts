/**
 * The sum of one level: its outline or size and its parts, less openings and what its rooms take out.
 *
 * All lines add up to what is left in the level's own class. What is taken off says where it goes, so that the
 * classes and the parts that belong to none add up to the gross area again.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Level } from '../facts/house.js';
import {
  AREA_CLASSES,
  type AreaClass,
  type AreaLine,
  type LevelArea,
  type OpenReading,
} from './area-answer.js';
import { type Base, baseOf } from './area-base.js';
import { NO_STAIRS, openingLine, partLines, underStairs } from './area-parts.js';
import { checkPlaces } from './area-places.js';
import { finishedClass, placedRoom, type RoomFloor } from './area-rooms.js';
import { shellLine } from './area-shell.js';
import { areaWords, commonReading, listWords, type Reading } from './area-words.js';
import { isUnder } from './ceiling.js';
import { shapeOf, shapeTaped } from './level-outline.js';

export interface LevelAnswer {
  readonly level: LevelArea;
  /** Sentences for the declaration: what was estimated or assumed on this level. */
  readonly remarks: readonly string[];
  readonly readings: readonly OpenReading[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Adds up one level. `above` is the next level up, whose stairs come down to this one; `path` is the level's.
 */
export function sumLevel(
  level: Level,
  above: Level | undefined,
  rooms: readonly RoomFloor[],
  path: FactPath,
): LevelAnswer {
  const { shape, diagnostics: shapeProblems } = shapeOf(level, [0, 0], level.name, path);
  const base = baseOf(level, shape, rooms, path);
  const placed = rooms.flatMap((room) => placedRoom(room) ?? []);
  const sum = base.area === undefined ? undefined : takeOff(level, above, rooms, base, base.area, path);
  const places = checkPlaces(level, shape?.corners, rooms);
  const known = sum?.own === undefined ? undefined : sum;
  return {
    level: {
      id: level.id,
      name: level.name,
      grade: level.grade,
      basis: known === undefined ? 'none' : base.basis,
      estimate: known !== undefined && (base.estimate || known.estimate),
      corners: base.corners,
      reading: shape?.reading ?? readingOf(rooms),
      rooms: placed,
      gross: known?.gross,
      lines: known?.lines ?? [],
      ownClass: ownClassOf(level),
      byClass: known?.byClass ?? noArea(),
    },
    remarks: known === undefined ? base.remarks : [...base.remarks, ...known.remarks],
    readings: known === undefined ? [] : [...known.readings, ...rooms.flatMap((room) => room.readings)],
    diagnostics: [...shapeProblems, ...base.diagnostics, ...(sum?.diagnostics ?? []), ...places],
  };
}

/** The one unit of all rooms that have a shape; feet and inches where there is none, or several. */
function readingOf(rooms: readonly RoomFloor[]): Reading {
  const taped = rooms.flatMap(({ room }) => shapeTaped(room));
  return taped.length === 0 ? 'inches' : (commonReading(taped) ?? 'inches');
}

/** Every class at nothing. */
export const noArea = (): Record<AreaClass, bigint> =>
  Object.fromEntries(AREA_CLASSES.map((name) => [name, 0n])) as Record<AreaClass, bigint>;

/** What of the level no room, part or opening takes elsewhere. */
function ownClassOf(level: Level): AreaClass {
  if (level.finish === 'unfinished') return 'unfinished';
  if (level.ceiling !== undefined && isUnder(level.ceiling, 'full')) return 'non-standard';
  return finishedClass(level);
}

interface Sum {
  readonly gross: bigint;
  readonly lines: readonly AreaLine[];
  readonly byClass: Readonly<Record<AreaClass, bigint>>;
  /** What is left in the level's own class; undefined if more was taken off than there was. */
  readonly own: bigint | undefined;
  readonly estimate: boolean;
  readonly remarks: readonly string[];
  readonly readings: readonly OpenReading[];
  readonly diagnostics: readonly Diagnostic[];
}

function takeOff(
  level: Level,
  above: Level | undefined,
  rooms: readonly RoomFloor[],
  base: Base,
  baseArea: bigint,
  path: FactPath,
): Sum {
  const own = ownClassOf(level);
  const roomsOnly = base.corners === undefined;
  const parts = (level.parts ?? []).map((part) => partLines(level, part, own, roomsOnly));
  const gross = baseArea + parts.reduce((sum, part) => sum + part.added, 0n);
  const counted = roomsOnly ? rooms.filter((room) => room.floor !== undefined) : rooms;
  const taken = counted.map((room) => roomLines(level, room, own));
  const stairs = own === 'non-standard' ? underStairs(level, above) : NO_STAIRS;
  const inside = [
    ...base.lines,
    ...parts.flatMap((part) => part.lines),
    ...level.openings.map((opening) => openingLine(opening, roomsOnly)),
    ...stairs.lines,
    ...taken.flatMap((room) => room.lines),
  ];
  const shell = shellLine(level, base.corners, rooms, own, sumOf(inside), gross);
  const lines = shell === undefined ? inside : [...inside, shell];
  const byClass = noArea();
  for (const line of lines) if (line.into !== undefined) byClass[line.into] -= line.area;
  const left = sumOf(lines);
  byClass[own] += left;
  return {
    gross,
    lines,
    byClass,
    own: left < 0n ? undefined : left,
    estimate: taken.some((room) => room.estimate),
    remarks: [
      ...taken.flatMap((room) => room.remarks),
      ...(shell === undefined ? lowWallRemark(level, counted, roomsOnly) : []),
      ...heightRemark(level, rooms),
    ],
    readings: stairs.readings,
    diagnostics: [...taken.flatMap((room) => room.diagnostics), ...tooMuch(level, rooms, gross, left, path)],
  };
}

const sumOf = (lines: readonly AreaLine[]): bigint => lines.reduce((sum, line) => sum + line.area, 0n);

interface Taken {
  readonly lines: readonly AreaLine[];
  readonly estimate: boolean;
  readonly remarks: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

function roomLines(level: Level, room: RoomFloor, own: AreaClass): Taken {
  const moved = room.moves.reduce((sum, move) => sum + move.area, 0n);
  const lines: AreaLine[] = room.moves
    .filter((move) => move.into !== own && move.area > 0n)
    .map((move) => ({ ...move, area: -move.area }));
  if (room.rest === own) return { lines, estimate: false, remarks: [], diagnostics: [] };
  if (room.floor === undefined)
    return { lines, estimate: false, remarks: [], diagnostics: noSize(level, room) };
  const rest = room.floor - moved;
  if (rest > 0n) {
    const size = room.shape === undefined || moved > 0n ? '' : `, ${room.shape.sizeWords}`;
    lines.push({ what: `${room.name}${size}`, area: -rest, into: room.rest, rule: room.rule });
  }
  // A finished room in an unfinished level would be counted to the far side of its partitions; nobody taped those.
  const bare = own === 'unfinished' && room.rest !== 'garage-and-open' && room.rest !== undefined;
  const remarks = bare
    ? [`${room.name}: inside size only, its walls are not included; an estimate, and low.`]
    : [];
  return { lines, estimate: bare, remarks, diagnostics: [] };
}

function noSize(level: Level, room: RoomFloor): Diagnostic[] {
  // A shape that is broken has been reported already.
  if (room.diagnostics.some((d) => d.severity === 'error')) return [];
  return [
    {
      code: 'tally.gap',
      severity: 'error',
      path: [...room.path, 'size'],
      message: `${room.name} can’t be taken off ${level.name}, since it has no size`,
      hints: [`add its inside size, for example  size: 11'6" x 12'`],
    },
  ];
}

/** The outline may hold walls that stand beyond the 5 ft line; where those are isn't written down. */
function lowWallRemark(level: Level, rooms: readonly RoomFloor[], roomsOnly: boolean): string[] {
  if (roomsOnly || !rooms.some((room) => room.moves.some((move) => move.into === undefined))) return [];
  return [
    `${level.name}: where a slope comes down to a wall, that wall is counted only as far as the level’s own sizes reach past it; sizes that stop at the inside of low walls leave it out.`,
  ];
}

function heightRemark(level: Level, rooms: readonly RoomFloor[]): string[] {
  if (level.finish === 'unfinished' || level.ceiling !== undefined) return [];
  const unsaid = rooms.filter((room) => room.heightUnknown).map((room) => room.name);
  if (rooms.length > 0 && unsaid.length === 0) return [];
  const where = rooms.length === 0 || unsaid.length > 3 ? level.name : `${level.name} (${listWords(unsaid)})`;
  return [`${where}: the ceiling height is not stated; 7 ft or more is assumed.`];
}

/** More floor in the rooms than in the level: an error where the sum falls below nothing, else worth a look. */
function tooMuch(
  level: Level,
  rooms: readonly RoomFloor[],
  gross: bigint,
  left: bigint,
  path: FactPath,
): Diagnostic[] {
  const inside = rooms.reduce((sum, room) => sum + (room.floor ?? 0n), 0n);
  if (left >= 0n && inside <= gross) return [];
  const message =
    left < 0n
      ? `more is taken off ${level.name} than its ${areaWords(gross)}`
      : `the rooms of ${level.name} add up to ${areaWords(inside)}, more than its ${areaWords(gross)}`;
  return [
    {
      code: 'tally.outside-level',
      severity: left < 0n ? 'error' : 'warning',
      path,
      message,
      hints: [
        'check the sizes of its rooms against its outline or size',
        'check which level each room is on',
      ],
    },
  ];
}
