/** What each room takes out of its level's figure, and why. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { wholeSquareFeet } from '../facts/floor-area.js';
import type { Level, Room } from '../facts/house.js';
import type { Length } from '../facts/length.js';
import { printLength } from '../facts/length.js';
import { nameOf } from '../facts/place-name.js';
import { printSize } from '../facts/size.js';
import type { AreaClass, OpenReading, PlacedRoom } from './area-answer.js';
import { areaWords } from './area-words.js';
import { isSloped, isUnder, readSlope, type SlopedFloor } from './ceiling.js';
import type { Point } from './corners.js';
import { labelSpot } from './label-spot.js';
import { type Shape, shapeOf, sizeArea } from './level-outline.js';

/** A room as the area rules see it. */
export interface RoomFloor {
  readonly room: Room;
  readonly path: FactPath;
  readonly name: string;
  /** Its shape as given, if it could be read. */
  readonly shape: Shape | undefined;
  /** Its whole inside floor, from its shape or from the section of its ceiling. */
  readonly floor: bigint | undefined;
  /** Parts of it that go elsewhere than the rest of it. */
  readonly moves: readonly RoomMove[];
  /** Where the rest of it belongs; undefined: to no class. */
  readonly rest: AreaClass | undefined;
  /** Why the rest belongs there. */
  readonly rule: string;
  /** A structure line that it is listed on beside its level. */
  readonly alsoOn: 'garage' | 'not-all-year' | undefined;
  /** It is finished, and nobody said how high it is. */
  readonly heightUnknown: boolean;
  readonly readings: readonly OpenReading[];
  readonly diagnostics: readonly Diagnostic[];
}

interface RoomMove {
  readonly what: string;
  readonly area: bigint;
  readonly into: AreaClass | undefined;
  readonly rule: string;
}

/** What the rules make of a room, before its shape is added. */
type Verdict = Pick<RoomFloor, 'moves' | 'rest' | 'rule' | 'alsoOn' | 'heightUnknown' | 'readings'> & {
  readonly diagnostics: readonly Diagnostic[];
  readonly slope?: SlopedFloor | undefined;
};

/** Where finished floor of a level belongs when no rule moves it. */
export function finishedClass(level: Level): AreaClass {
  if (!level.connected) return 'disconnected';
  return level.grade === 'above' ? 'above-finished' : 'below-finished';
}

/** Applies the rules to one room; `path` is the room's. `level` is undefined for a room of a structure. */
export function assessRoom(room: Room, level: Level | undefined, path: FactPath): RoomFloor {
  const name = nameOf(room);
  const { shape, diagnostics } = shapeOf(room, startOf(room), name, path);
  const verdict = level === undefined ? ELSEWHERE : judge(room, level, name, shape?.area, path);
  return {
    room,
    path,
    name,
    shape,
    floor: shape?.area ?? verdict.slope?.floor,
    moves: verdict.moves,
    rest: verdict.rest,
    rule: verdict.rule,
    alsoOn: verdict.alsoOn,
    heightUnknown: verdict.heightUnknown,
    readings: verdict.readings,
    diagnostics: [...diagnostics, ...verdict.diagnostics],
  };
}

/** The room for the plan, if its place and shape are known. */
export function placedRoom({ room, name, shape, rest, moves }: RoomFloor): PlacedRoom | undefined {
  if (room.at === undefined || shape === undefined) return undefined;
  const { corners, sizeWords, reading } = shape;
  const spot = labelSpot(corners);
  const split = moves.some((move) => move.area > 0n && move.into !== rest);
  return { id: room.id, name, corners, sizeWords, reading, spot, areaClass: rest, split };
}

function startOf(room: Room): Point {
  const steps = room.at ?? [];
  return [steps.reduce((sum, step) => sum + step.east, 0), steps.reduce((sum, step) => sum + step.north, 0)];
}

const PLAIN: Omit<Verdict, 'rest' | 'rule'> = {
  moves: [],
  alsoOn: undefined,
  heightUnknown: false,
  readings: [],
  diagnostics: [],
};

const ELSEWHERE: Verdict = { ...PLAIN, rest: undefined, rule: 'It is on no level of the house.' };

function judge(room: Room, level: Level, name: string, floor: bigint | undefined, path: FactPath): Verdict {
  if (room.use === 'garage') {
    return {
      ...PLAIN,
      rest: 'garage-and-open',
      rule: 'A garage is never finished area, however it is finished. Taken off at its inside faces.',
      alsoOn: 'garage',
    };
  }
  if ((room.finish ?? level.finish) === 'unfinished') {
    return {
      ...PLAIN,
      rest: 'unfinished',
      rule: 'Unfinished, so on its own line. Taken off at its inside faces, since a partition between finished and unfinished space belongs to the finished side.',
    };
  }
  if (room.use === 'sunroom' && room.heated !== 'yes') return sunroom(room, name, path);
  return byCeiling(room, level, name, floor, path);
}

/** Finished area must be usable all year; without heat a sunroom isn't, and not known is no yes. */
function sunroom(room: Room, name: string, path: FactPath): Verdict {
  const unsaid: Diagnostic = {
    code: 'tally.gap',
    severity: 'warning',
    path: [...path, 'heated'],
    message: `whether ${name} has permanent heat is not known, so it isn’t counted as usable all year`,
    hints: ['add  heated: yes  or  heated: no'],
  };
  return {
    ...PLAIN,
    rest: undefined,
    rule:
      room.heated === 'no'
        ? 'Not usable all year without permanent heat, so not finished area. It has a line of its own.'
        : 'Whether it is usable all year is not known, so it isn’t counted as finished area. It has a line of its own.',
    alsoOn: 'not-all-year',
    diagnostics: room.heated === 'no' ? [] : [unsaid],
  };
}

function byCeiling(
  room: Room,
  level: Level,
  name: string,
  floor: bigint | undefined,
  path: FactPath,
): Verdict {
  const home = finishedClass(level);
  const ceiling = room.ceiling ?? level.ceiling;
  const counted = { ...PLAIN, rest: home, rule: 'Finished, and high enough.' };
  if (isSloped(ceiling)) {
    const { slope, diagnostics } = readSlope(ceiling, floor, name, [...path, 'ceiling']);
    if (slope === undefined) return { ...counted, diagnostics };
    return belowSlope(room, slope, home, name, diagnostics, path);
  }
  if (ceiling !== undefined && isUnder(ceiling, 'full'))
    return { ...PLAIN, rest: 'non-standard', rule: lowCeilingRule(ceiling) };
  return { ...counted, ...lowParts(room, name, floor), heightUnknown: ceiling === undefined };
}

/** The rule's text for a flat ceiling that is too low. */
export const lowCeilingRule = (ceiling: Length): string =>
  `Its ceiling is ${printLength(ceiling)} high; a flat ceiling counts from 7 ft (2.13 m). Stated apart.`;

const UNDER_5: string =
  'Lower than 5 ft (1.52 m), which never counts; it belongs to no class. Walls are added only where they are full height: the standard is silent on those at the 5 ft line.';

function belowSlope(
  room: Room,
  slope: SlopedFloor,
  home: AreaClass,
  name: string,
  diagnostics: readonly Diagnostic[],
  path: FactPath,
): Verdict {
  const under5 = slope.floor - slope.counted;
  const shares = shareWords(slope);
  const moves: RoomMove[] =
    under5 === 0n
      ? []
      : [{ what: `${name}, floor under 5 ft`, area: under5, into: undefined, rule: UNDER_5 }];
  if (slope.halfOfCounted && slope.halfOfFloor) {
    const low = lowParts(room, name, slope.counted);
    return {
      ...PLAIN,
      ...low,
      moves: [...moves, ...low.moves],
      rest: home,
      rule: `${shares} At least half of it is high enough, so what is 5 ft high or more counts.`,
      diagnostics,
      slope,
    };
  }
  const open = slope.halfOfCounted !== slope.halfOfFloor;
  const counts = wholeSquareFeet(slope.counted);
  const reading: OpenReading = {
    room: name,
    words: `${shares} The rule asks for half of the room’s finished area and doesn’t say of which: by the first base ${counts} sq ft count, by the second none. The figures here use none.`,
    countedIfPass: counts,
    countedIfFail: 0,
    used: 'fail',
  };
  return {
    ...PLAIN,
    moves,
    rest: 'non-standard',
    rule: open
      ? `${reading.words} Its part at 5 ft or higher is stated apart.`
      : `${shares} Less than half of it is high enough, so none of it counts. Its part at 5 ft or higher, ${areaWords(
          slope.counted,
        )}, is stated apart; another reading states the whole floor, ${areaWords(slope.floor)}.`,
    readings: open ? [reading] : [],
    diagnostics: open ? [...diagnostics, halfRule(name, slope, path)] : diagnostics,
    slope,
  };
}

function shareWords({ full, counted, floor }: SlopedFloor): string {
  const percent = (base: bigint) => (base === 0n ? 0n : (200n * full + base) / (2n * base));
  return `7 ft high or more: ${areaWords(full)}, which is ${percent(counted)} % of its part at 5 ft or higher (${areaWords(
    counted,
  )}) and ${percent(floor)} % of its whole floor (${areaWords(floor)}).`;
}

function halfRule(name: string, slope: SlopedFloor, path: FactPath): Diagnostic {
  return {
    code: 'tally.half-rule',
    severity: 'warning',
    path: [...path, 'ceiling'],
    message: `${name} counts ${areaWords(slope.counted)} if half of its part at 5 ft or higher must be 7 ft high, and nothing if half of its whole floor must be; it is left out, and both are printed`,
    hints: [
      'check the taped heights; a few inches may settle it',
      'ask whoever will rely on the figure which reading they use',
    ],
  };
}

/** Strips below beams, ducts and soffits that hang too low; what hangs at 6 ft 4 in or higher takes nothing. */
function lowParts(
  room: Room,
  name: string,
  available: bigint | undefined,
): Pick<Verdict, 'moves' | 'readings'> {
  const moves: RoomMove[] = [];
  const readings: OpenReading[] = [];
  let left = available;
  for (const low of room.low) {
    if (!isUnder(low.clear, 'beam')) continue;
    const whole = sizeArea(low.size);
    const area = left !== undefined && whole > left ? left : whole;
    if (left !== undefined) left -= area;
    moves.push({
      what: `${name}, below the ${low.what}, ${printSize(low.size)}`,
      area,
      into: 'non-standard',
      rule: `The ${low.what} hangs at ${printLength(low.clear)}; it may hang to 6 ft 4 in (1.93 m). The strip below it is stated apart; another reading loses the whole room.`,
    });
  }
  if (moves.length > 0 && left !== undefined) {
    const counts = wholeSquareFeet(left);
    readings.push({
      room: name,
      words: `Something hangs lower than 6 ft 4 in. If only the floor below it is lost, ${counts} sq ft count; if the whole room is, none. The figures here use ${counts}.`,
      countedIfPass: counts,
      countedIfFail: 0,
      used: 'pass',
    });
  }
  return { moves, readings };
}
