/** What a level measures before anything is taken off, and how that was measured. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Level } from '../facts/house.js';
import type { AreaLine, LevelArea } from './area-answer.js';
import { rectanglesOf } from './area-rectangles.js';
import type { RoomFloor } from './area-rooms.js';
import { growByWalls } from './area-walls.js';
import { lengthWords, listWords, type Reading } from './area-words.js';
import type { Point } from './corners.js';
import type { Shape } from './level-outline.js';
import { areaOf, sidesOf } from './measuring.js';

/** What is counted before anything is taken off. */
export interface Base {
  readonly basis: LevelArea['basis'];
  readonly estimate: boolean;
  readonly corners: readonly Point[] | undefined;
  readonly lines: readonly AreaLine[];
  /** Undefined: not known. */
  readonly area: bigint | undefined;
  readonly remarks: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** The base of a level: by its shape if it has one, by its rooms if it has none, unknown if the shape is broken. */
export function baseOf(
  level: Level,
  shape: Shape | undefined,
  rooms: readonly RoomFloor[],
  path: FactPath,
): Base {
  if (shape !== undefined) return fromShape(level, shape, path);
  const broken = level.outline !== undefined || level.size !== undefined;
  return broken ? UNKNOWN : fromRooms(level, rooms, path);
}

const UNKNOWN: Base = {
  basis: 'none',
  estimate: false,
  corners: undefined,
  lines: [],
  area: undefined,
  remarks: [],
  diagnostics: [],
};

function fromShape(level: Level, shape: Shape, path: FactPath): Base {
  if (level.measured === 'outside') {
    return {
      basis: 'outside',
      estimate: false,
      corners: shape.corners,
      lines: baseLines(
        `${level.name}, outside faces`,
        shape,
        shape.corners,
        'Measured at floor height to the finished outside faces of its outer walls.',
      ),
      area: shape.area,
      remarks: [],
      diagnostics: level.walls === undefined ? [] : [idleWalls(level, path)],
    };
  }
  const grown = growByWalls(level, shape.corners, path);
  if (grown.broken) return { ...UNKNOWN, diagnostics: grown.diagnostics };
  const party = grown.party ? ', half of it where the wall is shared with the next house' : '';
  const lacking = grown.lacking.length > 0 || (!grown.grown && sidesOf(shape.corners).includes('slanted'));
  const remark = !grown.grown
    ? `${level.name}: inside sizes only, walls not included; an estimate, and low.`
    : `${level.name}: the thickness of the ${listWords(grown.lacking)} wall is not known and not included; an estimate, and low.`;
  return {
    basis: grown.grown ? 'grown-from-inside' : 'rooms-only',
    estimate: lacking,
    corners: grown.corners,
    lines: baseLines(
      `${level.name}, ${grown.grown ? 'inside faces with the walls added' : 'inside faces'}`,
      shape,
      grown.corners,
      grown.grown
        ? `Measured inside, and the thickness of each known wall added${party}.`
        : 'Measured inside; the walls are not known and not included.',
    ),
    area: areaOf(grown.corners),
    remarks: lacking ? [remark] : [],
    diagnostics: grown.diagnostics,
  };
}

/** The outline as rectangles whose products anyone can check; a slanted outline as one line with its walls. */
function baseLines(what: string, shape: Shape, corners: readonly Point[], rule: string): AreaLine[] {
  const rectangles = rectanglesOf(corners);
  if (rectangles === undefined) {
    return [
      {
        what: `${what}, within its walls: ${shape.walls.join(', ')}`,
        area: areaOf(corners),
        into: undefined,
        rule,
      },
    ];
  }
  return rectangles.map(({ west, south, east, north }) => ({
    what: `${what}, ${dimensions(east - west, north - south, shape.reading)}`,
    area: BigInt(east - west) * BigInt(north - south),
    into: undefined,
    rule,
  }));
}

const dimensions = (width: number, depth: number, reading: Reading): string =>
  `${lengthWords(width, reading)} × ${lengthWords(depth, reading)}`;

function fromRooms(level: Level, rooms: readonly RoomFloor[], path: FactPath): Base {
  const sized = rooms.flatMap(({ name, shape, floor }) =>
    floor === undefined ? [] : [{ name, shape, floor }],
  );
  if (sized.length === 0) {
    const unknown: Diagnostic = {
      code: 'tally.level-size',
      severity: 'note',
      path,
      message: `${level.name} has neither an outline nor a size, and none of its rooms has one, so its area is not known`,
      hints: [`add its outside size, for example  size: 40' x 26'`, 'give its outline, wall by wall'],
    };
    return { ...UNKNOWN, diagnostics: [unknown] };
  }
  const without = rooms.filter((room) => room.floor === undefined).map((room) => room.name);
  const left = without.length === 0 ? '' : ` ${listWords(without)}: not measured and not included.`;
  const estimated: Diagnostic = {
    code: 'tally.level-size',
    severity: 'warning',
    path,
    message: `${level.name} has neither an outline nor a size, so its area is only the sum of its rooms inside`,
    hints: [`add its outside size, for example  size: 40' x 26'`, 'give its outline, wall by wall'],
  };
  return {
    basis: 'rooms-only',
    estimate: true,
    corners: undefined,
    lines: sized.map((room) => ({
      what: `${room.name}, inside faces${room.shape ? `, ${room.shape.sizeWords}` : ''}`,
      area: room.floor,
      into: undefined,
      rule: 'Inside size of a room; walls are not included.',
    })),
    area: sized.reduce((sum, room) => sum + room.floor, 0n),
    remarks: [`${level.name}: inside sizes only, walls not included; an estimate, and low.${left}`],
    diagnostics: [estimated],
  };
}

function idleWalls(level: Level, path: FactPath): Diagnostic {
  return {
    code: 'tally.level-size',
    severity: 'warning',
    path: [...path, 'walls'],
    message: `${level.name} is measured at its outside faces, so its walls add nothing`,
    hints: ['take out  walls: , or write  measured: inside  if the sizes were taken inside'],
  };
}
