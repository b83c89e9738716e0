/**
 * The shape of a level, room or structure, from the walls or the size that were written down.
 *
 * An outline must come back to its first corner exactly, in the unit it was read in; one that doesn't, or that
 * crosses itself, has no area from there on.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { FOOT, type Length } from '../facts/length.js';
import { printSize, type Size } from '../facts/size.js';
import type { Step } from '../facts/step.js';
import {
  commonReading,
  lengthToType,
  lengthWords,
  type Reading,
  stepsToType,
  type Taped,
  tapedLength,
} from './area-words.js';
import type { Point } from './corners.js';
import { firstCrossing } from './crossing.js';
import { areaOf, boundsOf, printGap, rectangle, walk } from './measuring.js';

export interface Shape {
  readonly corners: readonly Point[];
  /** (0.1 µm)². */
  readonly area: bigint;
  /** Sum of its sides in 0.1 µm; to the nearest whole one where a side is slanted. */
  readonly perimeter: number;
  /** The unit to print its lengths in. */
  readonly reading: Reading;
  /** "11′ 6″ × 12′ 0″"; of an outline the greatest width and depth. */
  readonly sizeWords: string;
  /** The walls of an outline as written; a size has none. */
  readonly walls: readonly string[];
}

/** What may have a shape. */
export interface Shaped {
  readonly outline?: readonly Step[] | undefined;
  readonly size?: Size | undefined;
}

export interface ShapeAnswer {
  /** Undefined if nothing was given, or if what was given is broken (then a diagnostic says so). */
  readonly shape: Shape | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads the shape of the thing at `path`, with its first (for a size: south-west) corner at `start`. */
export function shapeOf(thing: Shaped, start: Point, name: string, path: FactPath): ShapeAnswer {
  if (thing.outline !== undefined && thing.size !== undefined)
    return { shape: undefined, diagnostics: [twoSizes(name, path)] };
  if (thing.size !== undefined) return { shape: fromSize(thing.size, start), diagnostics: [] };
  if (thing.outline === undefined) return { shape: undefined, diagnostics: [] };
  return fromOutline(thing.outline, start, name, [...path, 'outline']);
}

export const sizeTaped = (size: Size): readonly Taped[] => [tapedLength(size.width), tapedLength(size.depth)];

const stepTaped = (step: Step): Taped => ({
  reading: step.reading,
  wholeFeet: step.east % FOOT === 0 && step.north % FOOT === 0,
});

/** Every tape reading behind a shape. */
export const shapeTaped = (thing: Shaped): readonly Taped[] => [
  ...(thing.outline ?? []).map(stepTaped),
  ...(thing.size === undefined ? [] : sizeTaped(thing.size)),
];

/** The exact area of a size, (0.1 µm)². */
export const sizeArea = (size: Size): bigint => BigInt(size.width.units) * BigInt(size.depth.units);

function twoSizes(name: string, path: FactPath): Diagnostic {
  return {
    code: 'tally.level-size',
    severity: 'error',
    path: [...path, 'size'],
    message: `${name} has both an outline and a size, and only one can be its shape`,
    hints: ['take out  size:  and keep  outline:', 'keep  size:  if it is a plain rectangle'],
  };
}

function fromSize(size: Size, start: Point): Shape {
  const [width, depth] = [size.width.units, size.depth.units];
  return {
    corners: rectangle(start, width, depth),
    area: sizeArea(size),
    perimeter: 2 * (width + depth),
    reading: commonReading(sizeTaped(size)) ?? 'inches',
    sizeWords: printSize(size),
    walls: [],
  };
}

function fromOutline(steps: readonly Step[], start: Point, name: string, path: FactPath): ShapeAnswer {
  const { corners, gap } = walk(start, steps);
  const common = commonReading(steps.map(stepTaped));
  const reading = common ?? 'inches';
  const broken =
    gap.east !== 0 || gap.north !== 0
      ? notClosed(steps, gap, name, path, common)
      : crossed(steps, corners, name, path);
  if (broken !== undefined) return { shape: undefined, diagnostics: [broken] };
  const { west, east, south, north } = boundsOf(corners);
  const bounds = `${lengthWords(east - west, reading)} × ${lengthWords(north - south, reading)}`;
  const shape: Shape = {
    corners,
    area: areaOf(corners),
    perimeter: Math.round(steps.reduce((sum, step) => sum + wallLength(step), 0)),
    reading,
    sizeWords: `${bounds} at its widest`,
    walls: steps.map((step) => step.written),
  };
  return { shape, diagnostics: [] };
}

/** Exact along an axis; only a slanted wall needs the root. */
function wallLength({ east, north }: Step): number {
  if (east === 0 || north === 0) return Math.abs(east + north);
  return Math.sqrt(east * east + north * north);
}

interface Gap {
  readonly east: number;
  readonly north: number;
}

function notClosed(
  steps: readonly Step[],
  gap: Gap,
  name: string,
  path: FactPath,
  common: Length['reading'] | undefined,
): Diagnostic {
  const reading = common ?? 'inches';
  const words = printGap(gap, (units) => lengthWords(units, reading));
  return {
    code: 'tally.outline',
    severity: 'error',
    path,
    message: `the walls of ${name} don’t come back to their first corner: they end ${words}`,
    hints: [
      `add  ${stepsToType(gap.east, gap.north, reading, ' ')}  as the last wall, if it was left out`,
      ...suspects(steps, gap, reading),
      ...tapeHints(steps, gap, common),
    ],
  };
}

/** The walls that, changed alone, would close the outline: the last one along the gap, and one walked the wrong way. */
function suspects(steps: readonly Step[], gap: Gap, reading: Reading): string[] {
  if (gap.east !== 0 && gap.north !== 0) return [];
  const axis = gap.east !== 0 ? 'east' : 'north';
  const along = steps
    .map((step, index) => ({ step, index, go: step[axis], aside: step[axis === 'east' ? 'north' : 'east'] }))
    .filter(({ go, aside }) => go !== 0 && aside === 0);
  const which = (index: number) => (index === steps.length - 1 ? 'the last wall' : `wall ${index + 1}`);
  const type = (units: number) =>
    axis === 'east' ? stepsToType(units, 0, reading) : stepsToType(0, units, reading);
  const turned = along
    .filter(({ go }) => -2 * go === gap[axis])
    .map(({ step, index, go }) => `check ${which(index)}: should  ${step.written}  be  ${type(-go)} ?`);
  const last = along.findLast(({ go }) => Math.sign(go + gap[axis]) === Math.sign(go));
  if (last === undefined) return turned;
  const mended = type(last.go + gap[axis]);
  return [...turned, `if ${which(last.index)} is at fault, write  ${mended}  for  ${last.step.written}`];
}

/** Rounding to tenths can leave an outline open that closes in inches; so can two tapes in one outline. */
function tapeHints(steps: readonly Step[], gap: Gap, common: Reading | undefined): string[] {
  if (common === undefined)
    return ['its walls are read in different units: read all of one outline with the same tape'];
  // Each reading is off by a twentieth of a foot at most.
  const most = steps.length * FOOT;
  if (common !== 'tenths' || 20 * Math.max(Math.abs(gap.east), Math.abs(gap.north)) > most) return [];
  return [
    `readings to a tenth of a foot can miss by this much: change the longest wall on the way by ${lengthToType(
      Math.max(Math.abs(gap.east), Math.abs(gap.north)),
      'tenths',
    )}, or write the walls in feet and inches`,
  ];
}

function crossed(
  steps: readonly Step[],
  corners: readonly Point[],
  name: string,
  path: FactPath,
): Diagnostic | undefined {
  // Whatever meets itself nowhere encloses something.
  const crossing = firstCrossing(corners);
  if (crossing === undefined) return undefined;
  const walls = steps.map((step, index) => `wall ${index + 1} (${step.written})`);
  const [first, second] = crossing.edges.map((index) => walls[index]);
  return {
    code: 'tally.outline',
    severity: 'error',
    path: [...path, crossing.edges[1]],
    message: `the outline of ${name} meets itself: ${first} and ${second} cross or touch`,
    hints: [
      `check the compass words and lengths from ${first} to ${second}`,
      'write the walls in order, each once, from a corner back to it',
    ],
  };
}
