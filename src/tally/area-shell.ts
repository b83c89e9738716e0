/**
 * The walls of a level that is all slopes.
 *
 * The standard doesn't say whether walls beyond the 5 ft line count. Here they don't: walls are added only where
 * the room behind them counts to its full length (the gables). Where no room of a level counts, its walls don't
 * either. Counting them would state living area that nobody can stand in.
 */
import type { Level } from '../facts/house.js';
import type { Size } from '../facts/size.js';
import type { AreaClass, AreaLine } from './area-answer.js';
import { openingLine } from './area-parts.js';
import { rectanglesOf } from './area-rectangles.js';
import type { RoomFloor } from './area-rooms.js';
import { isSloped, type SlopedCeiling } from './ceiling.js';
import type { Point } from './corners.js';

/** The line that takes such walls off; undefined where nothing is to be taken, or where the facts can't tell. */
export function shellLine(
  level: Level,
  corners: readonly Point[] | undefined,
  rooms: readonly RoomFloor[],
  own: AreaClass,
  left: bigint,
  gross: bigint,
): AreaLine | undefined {
  if (corners === undefined || own === 'unfinished' || own === 'non-standard' || left <= 0n) return undefined;
  // A bay's floor, or a hole in it, can't be told from walls here.
  if ((level.parts ?? []).some((part) => part.floor)) return undefined;
  if (level.openings.some((opening) => openingLine(opening, false).area !== 0n)) return undefined;
  const floors = rooms.flatMap((room) => room.floor ?? []);
  if (rooms.length === 0 || floors.length < rooms.length) return undefined;
  // Less than a fifth of the level can be its walls; more is floor that no room was written for.
  const onlyWalls = 5n * (gross - floors.reduce((sum, floor) => sum + floor, 0n)) < gross;
  if (!onlyWalls) return undefined;
  if (rooms.every((room) => room.rest === 'non-standard')) {
    return {
      what: `${level.name}, walls around rooms with too low a ceiling`,
      area: -left,
      into: undefined,
      rule: 'No room of this level is high enough to count, so its walls don’t count either; they belong to no class.',
    };
  }
  const [only] = rooms;
  return rooms.length === 1 && only !== undefined ? lowWalls(level.name, corners, only, left) : undefined;
}

/** A level that is one counted room with a floor under 5 ft: only the gables behind the counted part stay. */
function lowWalls(
  name: string,
  corners: readonly Point[],
  { room, moves, rest, floor }: RoomFloor,
  left: bigint,
): AreaLine | undefined {
  const rectangles = rectanglesOf(corners) ?? [];
  const [outer] = rectangles;
  if (outer === undefined || rectangles.length > 1 || room.size === undefined) return undefined;
  if (!isSloped(room.ceiling) || floor === undefined || rest === undefined) return undefined;
  if (!moves.some((move) => move.into === undefined)) return undefined;
  const along = ridgeAlong(room.ceiling, room.size);
  if (along === undefined) return undefined;

  const [width, depth] = [outer.east - outer.west, outer.north - outer.south];
  const [insideLong, insideAcross] = [room.size[along].units, room.size[ACROSS[along]].units];
  const [outsideLong, outsideAcross] = along === 'width' ? [width, depth] : [depth, width];
  const counted = moves.reduce((sum, move) => (move.into === undefined ? sum - move.area : sum), floor);
  const kept = moves.reduce((sum, move) => sum - move.area, floor);
  const gables = (counted * BigInt(outsideLong - insideLong)) / BigInt(insideLong);
  // With one slope the far wall is full height; both walls are taken to be alike.
  const farWall = room.ceiling.sides === 1 ? BigInt(Math.floor((outsideAcross - insideAcross) / 2)) : 0n;
  const walls = left - kept - gables - farWall * BigInt(outsideLong);
  if (walls <= 0n) return undefined;
  return {
    what: `${name}, walls beyond the 5 ft line`,
    area: -walls,
    into: undefined,
    rule: 'The standard is silent on walls beyond the 5 ft line. Walls are added only where they are full height, so these belong to no class.',
  };
}

const ACROSS = { width: 'depth', depth: 'width' } as const;

/** Which side of the room runs along the foot of the slope, if its sizes tell. */
function ridgeAlong(ceiling: SlopedCeiling, size: Size): 'width' | 'depth' | undefined {
  const at5 = ceiling['at-5-ft'];
  const fits = (['width', 'depth'] as const).filter((side) =>
    at5 === undefined
      ? ceiling.length?.units === size[side].units
      : at5[side].units === size[side].units && at5[ACROSS[side]].units < size[ACROSS[side]].units,
  );
  return fits.length === 1 ? fits[0] : undefined;
}
