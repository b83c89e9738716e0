/**
 * A level drawn to scale from its outline and rooms: walls solid, north up, dimensions outside where they are asked
 * for, and in each room what the plan is about.
 *
 * Takes lengths in 0.1 µm with north as +y; gives points with y growing downwards. Start reading at `drawPlan`.
 */
import { FOOT } from '../facts/length.js';
import type { Reading } from '../tally/area-words.js';
import { edgesOf, type Point } from '../tally/corners.js';
import { areaOf, boundsOf } from '../tally/measuring.js';
import { borderFor, type Dimension, dimensionsOf, drawDimensions } from './draw-dimensions.js';
import { drawFooter, footerHeight, type LegendEntry, leastFooterWidth } from './draw-footer.js';
import { drawGround, type Ground } from './draw-ground.js';
import { type Put, putInRoom, type RoomWords, words } from './draw-stack.js';
import { tidy } from './draw-tidy.js';
import type { Drawing, Shape, XY } from './packet.js';

export interface PlanRoom {
  readonly corners: readonly Point[];
  /** About where its words go. */
  readonly spot: Point;
  readonly ground: Ground;
  /** What it may say, the fullest first; the first that fits is drawn. `number` is its number in the caption. */
  readonly says: (number: number | undefined) => readonly RoomWords[];
}

export interface PlanLevel {
  readonly outline: readonly Point[];
  /** The tape that its lengths are printed by. */
  readonly reading: Reading;
  readonly rooms: readonly PlanRoom[];
  /** Its own ground, where no room covers it. */
  readonly ground: Ground;
  readonly legend: readonly LegendEntry[];
  readonly dimensions: boolean;
}

/** Half a wall's pen, and a hair of air. */
const WALL = 2;

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly border: number;
  /** Width of what stands below the plan. */
  readonly footer: number;
  readonly dimensions: readonly Dimension[];
}

/** The sheet that a level needs at a scale of so many points a foot. */
export function frameOf(level: PlanLevel, perFoot: number): Frame {
  const dimensions = level.dimensions ? dimensionsOf(level.outline, perFoot, level.reading) : [];
  const border = level.dimensions ? borderFor(dimensions) : WALL;
  const { width, height } = groundSize(level.outline, perFoot);
  const footer = Math.max(width, leastFooterWidth(level.legend));
  return {
    width: tidy(Math.max(width + 2 * border, footer)),
    height: tidy(height + 2 * border + footerHeight(footer, level.legend)),
    border,
    footer,
    dimensions,
  };
}

/** Width and depth of an outline in points. */
export function groundSize(outline: readonly Point[], perFoot: number): { width: number; height: number } {
  const { east, west, north, south } = boundsOf(outline);
  return { width: ((east - west) / FOOT) * perFoot, height: ((north - south) / FOOT) * perFoot };
}

/** Takes a corner of an outline to the sheet; the outline's north-west corner comes to `at`. */
export function placer(outline: readonly Point[], perFoot: number, at: XY): (point: Point) => XY {
  const { west, north } = boundsOf(outline);
  return ([x, y]) => [
    tidy(at[0] + ((x - west) / FOOT) * perFoot),
    tidy(at[1] + ((north - y) / FOOT) * perFoot),
  ];
}

/** Rooms have their number by position. */
export function drawPlan(level: PlanLevel, perFoot: number, numbers: ReadonlyMap<number, number>): Drawing {
  const frame = frameOf(level, perFoot);
  const { border, width, height } = frame;
  const place = placer(level.outline, perFoot, [border, border]);
  const footer = {
    left: (width - frame.footer) / 2,
    top: border * 2 + groundSize(level.outline, perFoot).height - (level.dimensions ? 4 : 0),
    width: frame.footer,
  };
  return {
    width,
    height,
    shapes: [
      ...drawShell(level, place, numbers),
      ...drawDimensions(level.outline, frame.dimensions, place),
      ...drawFooter(footer, perFoot, level.reading, level.legend),
    ],
  };
}

/** As much of the walls around a room as is put down to it. */
const WALL_OF_ROOM = FOOT / 2;

/** Whether what the rooms leave of a level can be its walls. Else it is floor that no room was written for, and no wall. */
function isWalls(outline: readonly Point[], rooms: readonly PlanRoom[]): boolean {
  const left = rooms.reduce((sum, room) => sum - Number(areaOf(room.corners)), Number(areaOf(outline)));
  const around = rooms
    .flatMap(({ corners }) => edgesOf(corners))
    .map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]));
  return left <= WALL_OF_ROOM * around.reduce((sum, side) => sum + side, 0);
}

/** The walls, and each room with what it says. */
export function drawShell(
  { outline, rooms, ground }: Pick<PlanLevel, 'outline' | 'rooms' | 'ground'>,
  place: (point: Point) => XY,
  numbers: ReadonlyMap<number, number>,
): Shape[] {
  const corners = outline.map(place);
  const solid = isWalls(outline, rooms);
  return [
    ...(solid ? [] : drawGround(corners, rooms.length > 0 ? { fill: 'paper' } : ground)),
    { kind: 'path', points: corners, closed: true, fill: solid ? 'ink' : 'none', pen: 'wall', ink: 'ink' },
    ...rooms.flatMap((room, index) => drawRoom(room, place, numbers.get(index), solid)),
  ];
}

function drawRoom(
  room: PlanRoom,
  place: (point: Point) => XY,
  number: number | undefined,
  solid: boolean,
): Shape[] {
  const corners = room.corners.map(place);
  const put = putFirst(room, place, number);
  return [
    ...drawGround(corners, room.ground),
    ...(solid
      ? []
      : [{ kind: 'path', points: corners, closed: true, fill: 'none', pen: 'medium', ink: 'ink' } as const]),
    // Words are not read through hatching.
    ...(put === undefined || put.shapes.length === 0 || room.ground.hatch === undefined
      ? []
      : [{ kind: 'path', points: put.ground, closed: true, fill: room.ground.fill } as const]),
    ...(put?.shapes ?? []),
  ];
}

function putFirst(room: PlanRoom, place: (point: Point) => XY, number: number | undefined): Put | undefined {
  const corners = room.corners.map(place);
  const spot = place(room.spot);
  const alone =
    number === undefined
      ? []
      : [{ pieces: [words(String(number), 'tick', 'ink')], turns: false, beside: 0.5 }];
  for (const choice of [...room.says(number), ...alone]) {
    const put = putInRoom(corners, spot, choice);
    if (put !== undefined) return put;
  }
  return undefined;
}

/** Positions of the rooms in which nothing that they may say fits at a scale: the caption has to number them. */
export function roomsTooSmall(level: Pick<PlanLevel, 'outline' | 'rooms'>, perFoot: number): number[] {
  const place = placer(level.outline, perFoot, [0, 0]);
  return level.rooms.flatMap((room, index) =>
    putFirst(room, place, undefined) === undefined ? [index] : [],
  );
}
