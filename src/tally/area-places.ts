/** Whether the rooms whose place is known lie within their level and beside each other. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Level } from '../facts/house.js';
import type { RoomFloor } from './area-rooms.js';
import { areaWords, lengthWords, stepsToType } from './area-words.js';
import { overlapOf, partOutside, type Region } from './clipping.js';
import type { Point } from './corners.js';
import { type Shape, sizeArea } from './level-outline.js';
import { type Bounds, boundsOf } from './measuring.js';

interface Laid {
  readonly room: RoomFloor;
  readonly shape: Shape;
  readonly bounds: Bounds;
}

/**
 * Errors for rooms that lie over each other or leave their level by more than a square inch. `corners` are the
 * level's as written; undefined if they aren't known. What sticks out but fits into the level's bays is let be:
 * a bay's place isn't written down.
 */
export function checkPlaces(
  level: Level,
  corners: readonly Point[] | undefined,
  rooms: readonly RoomFloor[],
): Diagnostic[] {
  const laid = rooms.flatMap((room): Laid[] =>
    room.room.at !== undefined && room.shape !== undefined
      ? [{ room, shape: room.shape, bounds: boundsOf(room.shape.corners) }]
      : [],
  );
  const bays = (level.parts ?? []).reduce((sum, part) => sum + (part.floor ? sizeArea(part.size) : 0n), 0n);
  let left = MOST_CUT;
  const mayCut: MayCut = (one, other) => {
    left -= one.length * other.length;
    return left >= 0;
  };
  return [
    ...rooms.flatMap(placeWithoutSize),
    ...overlaps(laid, mayCut),
    ...(corners === undefined
      ? []
      : laid.flatMap((one) =>
          mayCut(one.shape.corners, corners) ? leaving(level, corners, one, bays) : [],
        )),
    ...(left < 0 ? [notAllCut(level)] : []),
  ];
}

function placeWithoutSize({ room, name, path, shape }: RoomFloor): Diagnostic[] {
  if (room.at === undefined || shape !== undefined) return [];
  if (room.size !== undefined || room.outline !== undefined) return [];
  return [
    {
      code: 'tally.gap',
      severity: 'warning',
      path: [...path, 'at'],
      message: `${name} has a place but no size, so it can’t be drawn`,
      hints: [`add its inside size, for example  size: 11'6" x 12'`],
    },
  ];
}

/** Of one level. Where more lie over each other the cause is another. */
const MOST_OVERLAPS = 100;
/** Corners of one shape times those of another, of all that are cut on one level: it takes about three seconds. */
const MOST_CUT = 200_000;

type MayCut = (one: readonly Point[], other: readonly Point[]) => boolean;

function overlaps(laid: readonly Laid[], mayCut: MayCut): Diagnostic[] {
  const found: Diagnostic[] = [];
  for (const [index, one] of laid.entries())
    for (const other of laid.slice(index + 1)) {
      if (!meet(one.bounds, other.bounds) || !mayCut(one.shape.corners, other.shape.corners)) continue;
      found.push(...overlap(one, other));
      if (found.length >= MOST_OVERLAPS) return found;
    }
  return found;
}

const meet = (a: Bounds, b: Bounds): boolean =>
  a.east > b.west && b.east > a.west && a.north > b.south && b.north > a.south;

const notAllCut = ({ name }: Level): Diagnostic => ({
  code: 'tally.overlap',
  severity: 'warning',
  path: ['rooms'],
  message: `the rooms of ${name} have so many corners that not all of them were held against each other`,
  hints: ['draw them with fewer walls, as a tape measures them'],
});

function overlap(one: Laid, other: Laid): Diagnostic[] {
  const region = overlapOf(one.shape.corners, other.shape.corners);
  if (region.area === 0n) return [];
  const way = wayOut(region, other.bounds, one.bounds);
  const { reading } = other.shape;
  return [
    {
      code: 'tally.overlap',
      severity: 'error',
      path: [...other.room.path, 'at'],
      message: `${other.room.name} lies over ${one.room.name} by ${areaWords(region.area)} (${acrossWords(region, reading)})`,
      hints: [
        `move it ${wayWords(way, reading)}:  ${placeToType(other, way)}`,
        `check the sizes of both, and the place of ${one.room.name}`,
      ],
    },
  ];
}

function leaving(level: Level, corners: readonly Point[], one: Laid, bays: bigint): Diagnostic[] {
  const region = partOutside(one.shape.corners, corners);
  if (region.area === 0n || region.area <= bays) return [];
  if (region.area === one.shape.area) return [whollyOutside(level, one)];
  const around = boundsOf(corners);
  const inward = wayInto(one.bounds, around);
  // Within the level's bounds, the way back is the way out of what lies outside, towards the room's own middle.
  const corner = inward.east === 0 && inward.north === 0;
  const way = corner ? wayOut(region, one.bounds, largestBounds(region)) : inward;
  const { reading } = one.shape;
  const out = wayWords({ east: -way.east, north: -way.north }, reading);
  return [
    {
      code: 'tally.outside-level',
      severity: 'error',
      path: [...one.room.path, 'at'],
      message: `${one.room.name} leaves ${level.name} by ${out} (${areaWords(region.area)})`,
      hints: [
        ...(fits(one.bounds, around) ? [`move it ${wayWords(way, reading)}:  ${placeToType(one, way)}`] : []),
        `check its size, and the outline of ${level.name}`,
      ],
    },
  ];
}

function whollyOutside(level: Level, { room }: Laid): Diagnostic {
  return {
    code: 'tally.outside-level',
    severity: 'error',
    path: [...room.path, 'at'],
    message: `${room.name} lies wholly outside ${level.name}`,
    hints: [
      'check its place: the way from the first corner of the level’s outline to its south-west corner',
      'check which level it is on',
    ],
  };
}

interface Way {
  readonly east: number;
  readonly north: number;
}

/** The shorter way out of the largest piece, to that side of `fixed` where the middle of `moving` is. */
function wayOut(region: Region, moving: Bounds, fixed: Bounds): Way {
  const piece = largestBounds(region);
  const east = wayAlong(piece, moving, fixed, 'west', 'east');
  const north = wayAlong(piece, moving, fixed, 'south', 'north');
  return Math.abs(east) <= Math.abs(north) ? { east, north: 0 } : { east: 0, north };
}

/** As long as the piece; where one of the two lies within the other, on past its far side. */
function wayAlong(
  piece: Bounds,
  moving: Bounds,
  fixed: Bounds,
  low: 'west' | 'south',
  high: 'east' | 'north',
): number {
  const onward = moving[low] + moving[high] >= fixed[low] + fixed[high];
  const allOfIt = piece[low] === moving[low] && piece[high] === moving[high];
  const withinIt = piece[low] > moving[low] && piece[high] < moving[high];
  if (allOfIt || withinIt) return onward ? fixed[high] - moving[low] : fixed[low] - moving[high];
  const extent = piece[high] - piece[low];
  return onward ? extent : -extent;
}

/** How far a room would have to move to lie within the level's bounds; nothing if it does. */
function wayInto(room: Bounds, level: Bounds): Way {
  const back = (low: 'west' | 'south', high: 'east' | 'north'): number =>
    room[high] > level[high] ? level[high] - room[high] : Math.max(level[low] - room[low], 0);
  return { east: back('west', 'east'), north: back('south', 'north') };
}

const fits = (room: Bounds, level: Bounds): boolean =>
  room.east - room.west <= level.east - level.west && room.north - room.south <= level.north - level.south;

function largestBounds(region: Region): Bounds {
  const all = region.polygons.map((piece) => boundsOf(piece.outer));
  const extent = (b: Bounds) => (b.east - b.west) * (b.north - b.south);
  return all.reduce((best, b) => (extent(b) > extent(best) ? b : best));
}

function acrossWords(region: Region, reading: Shape['reading']): string {
  const { west, east, south, north } = largestBounds(region);
  return `${lengthWords(east - west, reading)} × ${lengthWords(north - south, reading)}`;
}

/** "1′ 0″ to the west", "1′ 0″ to the west and 2′ 0″ to the south". */
function wayWords({ east, north }: Way, reading: Shape['reading']): string {
  const words = (units: number, side: string) => `${lengthWords(Math.abs(units), reading)} to the ${side}`;
  return [
    ...(east === 0 ? [] : [words(east, east > 0 ? 'east' : 'west')]),
    ...(north === 0 ? [] : [words(north, north > 0 ? 'north' : 'south')]),
  ].join(' and ');
}

/** The room's `at:` after the move, ready to type. */
function placeToType({ shape }: Laid, way: Way): string {
  const [x, y] = shape.corners[0] as Point;
  return `at: [${stepsToType(x + way.east, y + way.north, shape.reading)}]`;
}
