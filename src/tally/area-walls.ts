/** Growing a level that was measured inside out to the faces it is counted to. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Level } from '../facts/house.js';
import { readLength } from '../facts/length.js';
import { bad, good, type Read } from '../facts/read.js';
import type { Reading } from './area-words.js';
import type { Point } from './corners.js';
import { firstCrossing } from './crossing.js';
import { type Compass, growOutward, sidesOf } from './measuring.js';

export interface Grown {
  /** Outside faces, or as they came if nothing could be added. */
  readonly corners: readonly Point[];
  /** Sides whose walls aren't known and so aren't included, in the order north, east, south, west. */
  readonly lacking: readonly Compass[];
  /** Something was added, or is known to be nothing. */
  readonly grown: boolean;
  /** Half of a shared wall was added somewhere. */
  readonly party: boolean;
  /** Growing made the outline cross itself, so that it has no area. */
  readonly broken: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

interface Wall {
  /** What to add, 0.1 µm. */
  readonly thickness: number;
  readonly party: boolean;
  /** How its thickness was read; undefined where it is none. */
  readonly reading: Reading | undefined;
}

type WallWord = 'all' | Compass;
const COMPASS: readonly Compass[] = ['north', 'east', 'south', 'west'];

const WALL_EXAMPLE = 'write a thickness, for example 6", or "party 8 in" for a shared wall, or none';

/**
 * Reads what a wall adds: `6"` all of it, `party 8 in` half of it (a shared wall is counted to its middle), `none`
 * nothing. Half of an odd number of 0.1 µm is rounded down.
 */
export function readWall(text: string): Read<Wall> {
  const written = text.trim();
  if (/^none$/i.test(written)) return good({ thickness: 0, party: false, reading: undefined });
  const party = /^party(?:\s+wall)?\s+(.+)$/i.exec(written);
  const length = readLength(party?.[1] ?? written);
  if (!length.ok) return bad(length.problem, WALL_EXAMPLE);
  const { units, reading } = length.value;
  return good({ thickness: party ? Math.floor(units / 2) : units, party: party !== null, reading });
}

/** How the thickness of each wall was read that is added to the inside sizes of `level`. */
export const wallReadings = (level: Level): Reading[] =>
  level.measured === 'outside'
    ? []
    : Object.values(level.walls ?? {}).flatMap((text) => {
        const wall = readWall(text);
        return (wall.ok ? wall.value.reading : undefined) ?? [];
      });

/** Adds the walls of `level`, whose path is `path`, to corners taken at inside faces. */
export function growByWalls(level: Level, written: readonly Point[], path: FactPath): Grown {
  const corners = withoutStops(written);
  const { walls, diagnostics } = readWalls(level, path);
  const sides = sidesOf(corners);
  const wallOn = (side: Compass): Wall | undefined => walls.get(side) ?? walls.get('all');
  const used = COMPASS.filter((side) => sides.includes(side));
  const lacking = used.filter((side) => wallOn(side) === undefined);
  const known = used.flatMap((side) => wallOn(side) ?? []);
  const none = { corners, lacking, party: false, broken: false, diagnostics };
  if (known.length === 0) return { ...none, grown: false };
  // Whether a slanted wall adds nothing is said only of all walls.
  const unsaid = sides.includes('slanted') && !walls.has('all');
  if (!unsaid && known.every((wall) => wall.thickness === 0)) return { ...none, grown: true };

  const grown = growOutward(corners, ({ side }) => wallOn(side)?.thickness ?? 0);
  if (!Array.isArray(grown)) {
    return { ...none, lacking: used, grown: false, diagnostics: [...diagnostics, slantedWall(level, path)] };
  }
  const broken = firstCrossing(grown) !== undefined;
  return {
    corners: grown,
    lacking,
    grown: true,
    party: known.some((wall) => wall.party),
    broken,
    diagnostics: broken ? [...diagnostics, closedUp(level, path)] : diagnostics,
  };
}

/**
 * Leaves out corners at which a wall goes straight on. Beside a recess, a corner that moves back by the wall's
 * thickness could pass such a stop, and the outline would seem to cross itself.
 */
function withoutStops(corners: readonly Point[]): readonly Point[] {
  return corners.filter(([x, y], i) => {
    const [fromX, fromY] = corners[(i + corners.length - 1) % corners.length] as Point;
    const [toX, toY] = corners[(i + 1) % corners.length] as Point;
    return !((fromX === x && x === toX) || (fromY === y && y === toY));
  });
}

function readWalls(level: Level, path: FactPath) {
  const walls = new Map<WallWord, Wall>();
  const diagnostics: Diagnostic[] = [];
  for (const word of ['all', ...COMPASS] as const) {
    const text = level.walls?.[word];
    if (text === undefined) continue;
    const wall = readWall(text);
    if (wall.ok) walls.set(word, wall.value);
    else {
      diagnostics.push({
        code: 'facts.length',
        severity: 'error',
        path: [...path, 'walls', word],
        message: `“${text}” is no wall: ${wall.problem}`,
        hints: [wall.hint],
      });
    }
  }
  return { walls, diagnostics };
}

function slantedWall(level: Level, path: FactPath): Diagnostic {
  return {
    code: 'tally.outline',
    severity: 'warning',
    path: [...path, 'outline'],
    message: `${level.name} has a slanted wall, so the thickness of its walls can’t be added; its inside sizes are used`,
    hints: [
      'give the outline at the outside faces and write  measured: outside',
      'write the outline to the faces to count to, with  walls: { all: none }',
    ],
  };
}

function closedUp(level: Level, path: FactPath): Diagnostic {
  return {
    code: 'tally.outline',
    severity: 'error',
    path: [...path, 'walls'],
    message: `with its walls added, the outline of ${level.name} crosses itself: a recess is narrower than its walls`,
    hints: ['give the outline at the outside faces and write  measured: outside'],
  };
}
