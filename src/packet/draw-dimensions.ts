/**
 * Dimensions outside a plan's walls, in rows beside its four sides, as draughtsmen do: lines or words that would lie
 * over each other go into the next row.
 */
import { FOOT, METRE } from '../facts/length.js';
import { lengthWords, type Reading } from '../tally/area-words.js';
import { edgesOf, type Point } from '../tally/corners.js';
import { boundsOf, twiceArea } from '../tally/measuring.js';
import { lettering } from './draw-lettering.js';
import { letteringWidth } from './letter-widths.js';
import type { Shape, XY } from './packet.js';

const SHORTEST_SHOWN = 2 * FOOT;

/** How many walls are long enough to be dimensioned. */
export const dimensionedWalls = (outline: readonly Point[]): number =>
  edgesOf(outline).filter(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]) >= SHORTEST_SHOWN).length;

export interface Dimension {
  readonly side: 'north' | 'south' | 'east' | 'west' | 'slanted';
  readonly from: Point;
  readonly to: Point;
  readonly words: string;
  /** 1 is next to the house. */
  readonly row: number;
}

/** Room beside the outermost line, and between two rows of them, in points. */
const BESIDE = 20;
const ROW = 14;

/** More rows would push the house off the sheet; walls that find no place in them are left without a dimension. */
const MOST_ROWS = 4;

/** Between the words of two neighbours in a row, in points. */
const APART = 4;

/** The walls that are dimensioned when drawn at a scale, in points a foot. */
export function dimensionsOf(outline: readonly Point[], perFoot: number, reading: Reading): Dimension[] {
  const clockwise = twiceArea(outline) < 0n;
  const taken = new Map<string, [number, number][]>();
  return edgesOf(outline).flatMap(([from, to]): Dimension[] => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    if (Math.hypot(dx, dy) < SHORTEST_SHOWN) return [];
    const side = sideOf(dx, dy, clockwise);
    const words = dimensionWords(Math.hypot(dx, dy), reading);
    if (side === 'slanted') return [{ side, from, to, words, row: 1 }];
    const along = side === 'north' || side === 'south' ? 0 : 1;
    // A short wall's words are longer than the wall.
    const half = Math.max(
      Math.abs(to[along] - from[along]) / 2,
      (((letteringWidth(words, 'tick') + APART) / perFoot) * FOOT) / 2,
    );
    const middle = (from[along] + to[along]) / 2;
    for (let row = 1; row <= MOST_ROWS; row++) {
      const key = `${side}${row}`;
      const spans = taken.get(key) ?? [];
      if (spans.some(([low, high]) => middle - half < high && low < middle + half)) continue;
      taken.set(key, [...spans, [middle - half, middle + half]]);
      return [{ side, from, to, words, row }];
    }
    return [];
  });
}

/** Room for the rows on each side of the house, in points. */
export const borderFor = (dimensions: readonly Dimension[]): number =>
  BESIDE + ROW * Math.max(1, ...dimensions.map(({ row }) => row));

/** The side a wall faces; outside is to the left of a clockwise walk with north up. */
function sideOf(dx: number, dy: number, clockwise: boolean): Dimension['side'] {
  if (dx !== 0 && dy !== 0) return 'slanted';
  if (dy === 0) return dx > 0 === clockwise ? 'north' : 'south';
  return dy > 0 === clockwise ? 'west' : 'east';
}

/** As a tape shows it: a slanted or computed metric wall to the centimetre, one in decimal feet to the tenth. */
function dimensionWords(units: number, reading: Reading): string {
  const finest = { inches: 1, tenths: FOOT / 10, metric: METRE / 100 }[reading];
  return lengthWords(Math.round(units / finest) * finest, reading);
}

/** Lines with their words; `place` takes a corner to its point on the sheet. */
export function drawDimensions(
  outline: readonly Point[],
  dimensions: readonly Dimension[],
  place: (point: Point) => XY,
): Shape[] {
  const bounds = boundsOf(outline);
  const [left, top] = place([bounds.west, bounds.north]);
  const [right, bottom] = place([bounds.east, bounds.south]);
  const clockwise = twiceArea(outline) < 0n;
  return dimensions.flatMap((dimension): Shape[] => {
    const { side, row } = dimension;
    const [ax, ay] = place(dimension.from);
    const [bx, by] = place(dimension.to);
    const middle: XY = [(ax + bx) / 2, (ay + by) / 2];
    const off = ROW * row;
    if (side === 'slanted') return [besideSlant(dimension.words, [ax, ay], [bx, by], clockwise)];
    if (side === 'north' || side === 'south') {
      const y = side === 'north' ? top - off : bottom + off;
      const words = lettering(dimension.words, [middle[0], side === 'north' ? y - 3 : y + 8]);
      return measured([ax, y], [bx, y], words);
    }
    const x = side === 'west' ? left - off : right + off;
    const words = lettering(dimension.words, [side === 'west' ? x - 3 : x + 8, middle[1]], { turn: -90 });
    return measured([x, ay], [x, by], words);
  });
}

const measured = (a: XY, b: XY, words: Shape): Shape[] => [
  { kind: 'line', from: a, to: b, pen: 'hair', ink: 'soft' },
  { kind: 'circle', at: a, radius: 1.3, fill: 'ink' },
  { kind: 'circle', at: b, radius: 1.3, fill: 'ink' },
  words,
];

/** Points from a slanted wall to the near end of its words. */
const OFF_SLANT = 6;

/** A slanted wall has no row: its words stand outside its middle. */
function besideSlant(text: string, [ax, ay]: XY, [bx, by]: XY, clockwise: boolean): Shape {
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  const turn = clockwise ? 1 : -1;
  // Outside is to the left of a clockwise walk; on a sheet, with y growing downwards.
  const out: XY = [(turn * dy) / length, (-turn * dx) / length];
  const at: XY = [(ax + bx) / 2 + out[0] * OFF_SLANT, (ay + by) / 2 + out[1] * OFF_SLANT];
  return lettering(text, [at[0], at[1] + 2.5 + 2.5 * out[1]], {
    anchor: out[0] > 0 ? 'start' : 'end',
  });
}
