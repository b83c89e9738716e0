/**
 * What a ceiling does to the floor below it.
 *
 * ANSI Z765-2021, 3.6, as quoted in public (the standard itself was not at hand): a flat ceiling counts from
 * 7 ft (2.13 m); beams and ducts may hang to 6 ft 4 in (1.93 m); below a slope, half of the area must be 7 ft
 * high, then what is 5 ft (1.52 m) high or more counts, and nothing below that. The metric heights aren't the
 * same heights, so the unit of the reading says which one applies.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Room } from '../facts/house.js';
import { FOOT, INCH, type Length, METRE } from '../facts/length.js';
import { listWords, type Taped, tapedLength } from './area-words.js';
import { sizeArea, sizeTaped } from './level-outline.js';

export type Ceiling = NonNullable<Room['ceiling']>;
export type SlopedCeiling = Exclude<Ceiling, Length>;

type Limit = 'full' | 'beam' | 'least';
const FEET: Readonly<Record<Limit, number>> = { full: 7 * FOOT, beam: 76 * INCH, least: 5 * FOOT };
const METRIC: Readonly<Record<Limit, number>> = {
  full: (213 * METRE) / 100,
  beam: (193 * METRE) / 100,
  least: (152 * METRE) / 100,
};

/** The height a reading is held against, in 0.1 µm. */
const heightLimit = (limit: Limit, reading: Length['reading']): number =>
  (reading === 'metric' ? METRIC : FEET)[limit];

/** Whether a height falls short of a limit of its own unit. Heights are never rounded up. */
export const isUnder = (height: Length, limit: Limit): boolean =>
  height.units < heightLimit(limit, height.reading);

export const isSloped = (ceiling: Ceiling | undefined): ceiling is SlopedCeiling =>
  ceiling !== undefined && !('units' in ceiling);

/** Every tape reading behind the floor below a sloped ceiling. */
export const slopeTaped = (ceiling: SlopedCeiling): Taped[] => [
  ...[ceiling['at-7-ft'], ceiling['at-5-ft']].flatMap((size) => (size === undefined ? [] : sizeTaped(size))),
  ...[ceiling.highest, ceiling.flat, ceiling.lowest, ceiling.length].flatMap((length) =>
    length === undefined ? [] : tapedLength(length),
  ),
];

/** The floor below a sloped ceiling, by height; all in (0.1 µm)², rounded down where a slope leaves a fraction. */
export interface SlopedFloor {
  /** At 7 ft or higher. */
  readonly full: bigint;
  /** At 5 ft or higher, the part at 7 ft included. */
  readonly counted: bigint;
  /** The whole floor. */
  readonly floor: bigint;
  /** At least half of the part at 5 ft or higher is 7 ft high. */
  readonly halfOfCounted: boolean;
  /** At least half of the whole floor is 7 ft high. */
  readonly halfOfFloor: boolean;
}

export interface SlopeAnswer {
  /** Undefined if the ceiling isn't given well enough; a diagnostic says so. */
  readonly slope: SlopedFloor | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** An exact fraction of (0.1 µm)². */
interface Ratio {
  readonly top: bigint;
  readonly bottom: bigint;
}

/**
 * Reads a sloped ceiling, as two taped areas or as a section. `floor` is the room's floor where its size is known;
 * a complete section gives it otherwise. `path` is that of the ceiling.
 */
export function readSlope(
  ceiling: SlopedCeiling,
  floor: bigint | undefined,
  name: string,
  path: FactPath,
): SlopeAnswer {
  const taped = ceiling['at-5-ft'] !== undefined || ceiling['at-7-ft'] !== undefined;
  const section = SECTION_WORDS.some((word) => ceiling[word] !== undefined);
  if (taped && section) {
    return refuse(path, `the ceiling of ${name} is given twice, as taped areas and as a section`, [
      `keep  at-7-ft  and  at-5-ft , or keep the section`,
    ]);
  }
  return section ? fromSection(ceiling, floor, name, path) : fromTaped(ceiling, floor, name, path);
}

const SECTION_WORDS = ['highest', 'flat', 'lowest', 'pitch', 'sides', 'length'] as const;

function refuse(path: FactPath, message: string, hints: readonly string[]): SlopeAnswer {
  return {
    slope: undefined,
    diagnostics: [{ code: 'tally.ceiling', severity: 'error', path, message, hints }],
  };
}

function fromTaped(
  ceiling: SlopedCeiling,
  floor: bigint | undefined,
  name: string,
  path: FactPath,
): SlopeAnswer {
  const [at5, at7] = [ceiling['at-5-ft'], ceiling['at-7-ft']];
  if (at5 === undefined) {
    const lacks = at7 === undefined ? 'no heights' : 'the floor at 7 ft but not the floor at 5 ft';
    return refuse(path, `the ceiling of ${name} gives ${lacks}`, [
      `write both, for example  { at-7-ft: 9' x 30', at-5-ft: 13' x 30' }`,
    ]);
  }
  if (floor === undefined) {
    return {
      slope: undefined,
      diagnostics: [
        {
          code: 'tally.gap',
          severity: 'error',
          path: path.slice(0, -1),
          message: `${name} has no size, so the floor below 5 ft can’t be told`,
          hints: [`add the whole floor, wall to wall, for example  size: 17' x 30'`],
        },
      ],
    };
  }
  const [full, counted] = [at7 === undefined ? 0n : sizeArea(at7), sizeArea(at5)];
  if (full > counted) {
    return refuse(path, `${name} has more floor at 7 ft than at 5 ft`, [
      'at-5-ft holds the part at 7 ft as well: check both',
    ]);
  }
  if (counted > floor) {
    return refuse(path, `${name} has more floor at 5 ft or higher than it has floor`, [
      'check at-5-ft against the size of the room',
    ]);
  }
  const exact = (top: bigint): Ratio => ({ top, bottom: 1n });
  const unsaid: Diagnostic = {
    code: 'tally.ceiling',
    severity: 'warning',
    path,
    message: `${name} gives no floor at 7 ft, so none of it counts as that high`,
    hints: [`add  at-7-ft  if some of it is 7 ft high, for example  at-7-ft: 9' x 30'`],
  };
  return {
    slope: judged(exact(full), exact(counted), floor),
    diagnostics: at7 === undefined ? [unsaid] : [],
  };
}

function fromSection(
  ceiling: SlopedCeiling,
  floor: bigint | undefined,
  name: string,
  path: FactPath,
): SlopeAnswer {
  const { highest, pitch, sides, length, lowest } = ceiling;
  // The schema has seen to it that a pitch is two numbers.
  const [rise, run] = (pitch?.match(/\d+/g) ?? []).map(BigInt);
  if (
    highest === undefined ||
    rise === undefined ||
    run === undefined ||
    sides === undefined ||
    length === undefined
  ) {
    const missing = (['highest', 'pitch', 'sides', 'length'] as const).filter(
      (w) => ceiling[w] === undefined,
    );
    return refuse(path, `the section of ${name} lacks ${listWords(missing)}`, [
      `write all of it, for example  { highest: 7', flat: 3', pitch: 12 in 12, sides: 2, length: 30' }`,
      `give the taped areas, for example  { at-7-ft: 9' x 30', at-5-ft: 13' x 30' }`,
    ]);
  }
  if (rise === 0n || run === 0n)
    return refuse([...path, 'pitch'], `a pitch of ${pitch} is no slope`, [
      'write rise in run, for example 12 in 12',
    ]);
  if (sides !== 1 && sides !== 2)
    return refuse([...path, 'sides'], `a ceiling slopes on 1 or 2 sides, not on ${sides}`, ['write 1 or 2']);
  if (lowest !== undefined && lowest.units >= highest.units) {
    return refuse([...path, 'lowest'], `the lowest height of ${name} is not below its highest`, [
      'check both, or write a flat ceiling as one height, for example  ceiling: 7\'6"',
    ]);
  }
  const flat = BigInt(ceiling.flat?.units ?? 0);
  /** Floor below all that is at least `height` high: the flat part, and the run of each slope down to there. */
  const floorAbove = (height: number): Ratio => {
    if (highest.units < height) return { top: 0n, bottom: rise };
    const down = BigInt(highest.units - Math.max(height, lowest?.units ?? 0));
    const width = flat * rise + BigInt(sides) * down * run;
    return { top: width * BigInt(length.units), bottom: rise };
  };
  const full = floorAbove(heightLimit('full', highest.reading));
  const counted = floorAbove(heightLimit('least', highest.reading));
  if (floor === undefined) return { slope: judged(full, counted, wholeOf(floorAbove(0))), diagnostics: [] };

  if (flat * BigInt(length.units) > floor || (lowest !== undefined && wholeOf(counted) > floor)) {
    return refuse(path, `by its section ${name} has more floor than by its size`, [
      'check flat, pitch, length and lowest against the size of the room',
    ]);
  }
  // Without a lowest height the slope may end at a wall: then the wall is where the floor ends.
  const within = (part: Ratio): Ratio => (wholeOf(part) > floor ? { top: floor, bottom: 1n } : part);
  return { slope: judged(within(full), within(counted), floor), diagnostics: [] };
}

const wholeOf = ({ top, bottom }: Ratio): bigint => top / bottom;

function judged(full: Ratio, counted: Ratio, floor: bigint): SlopedFloor {
  return {
    full: wholeOf(full),
    counted: wholeOf(counted),
    floor,
    halfOfCounted: counted.top > 0n && 2n * full.top * counted.bottom >= counted.top * full.bottom,
    halfOfFloor: full.top > 0n && 2n * full.top >= floor * full.bottom,
  };
}
