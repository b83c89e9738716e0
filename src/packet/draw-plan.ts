/**
 * A level drawn to scale from its outline and rooms: walls solid, dimensions outside, north up.
 *
 * Takes lengths in 0.1 µm with north as +y; gives points with y growing downwards.
 */
import { FOOT, METRE } from '../facts/length.js';
import { lengthWords, type Reading } from '../tally/area-words.js';
import type { Point } from '../tally/corners.js';
import { type Bounds, boundsOf } from '../tally/measuring.js';
import type { Drawing, Shape, XY } from './packet.js';

export interface PlanRoom {
  readonly name: string;
  readonly size: string;
  readonly corners: readonly Point[];
  /** Where its name goes. */
  readonly spot: Point;
  /** Unfinished or not counted: drawn with a wash. */
  readonly apart: boolean;
}

export interface Plan {
  readonly drawing: Drawing;
  /** "1/8 inch to the foot", for the caption; undefined where it fits no usual scale. */
  readonly scale: string | undefined;
  /** Points a foot. */
  readonly perFoot: number;
  /** Positions of rooms whose name did not fit. */
  readonly unnamed: readonly number[];
}

/** Points a foot, and the scale's name on paper. */
const SCALES: readonly (readonly [pointsPerFoot: number, name: string])[] = [
  [18, '1/4 inch to the foot'],
  [13.5, '3/16 inch to the foot'],
  [9, '1/8 inch to the foot'],
  [6.75, '3/32 inch to the foot'],
  [4.5, '1/16 inch to the foot'],
];

/** Room beside the outermost dimension line, and between two rows of them. */
const BESIDE = 20;
const ROW = 14;
const FOOTER = 30;

export interface PlanOrder {
  /** The tape that dimensions are printed by. Left out: feet and inches. */
  readonly reading?: Reading;
  /**
   * Rooms (by position) that have a number in the caption. A room without one whose name does not fit comes back
   * in `unnamed`, so that several drawings of one level can share their numbers.
   */
  readonly numbers?: ReadonlyMap<number, number> | undefined;
  /** A scale in points a foot that another level of the house needs: all levels are drawn alike. */
  readonly atMost?: number;
}

interface Fit {
  readonly perFoot: number;
  /** The usual scale's name; undefined where none fits. */
  readonly scale: string | undefined;
  /** Room for the dimension rows on each side, in points. */
  readonly border: number;
}

/** The largest usual scale at which an outline with its dimensions fits, else the one that just does. In points. */
export function fitPlan(
  outline: readonly Point[],
  widest: number,
  highest: number,
  atMost = Number.POSITIVE_INFINITY,
): Fit {
  const { east, west, north, south } = boundsOf(outline);
  const [feetWide, feetDeep] = [(east - west) / FOOT, (north - south) / FOOT];
  const border = BESIDE + ROW * Math.max(1, ...dimensionRows(outline).map((row) => row.row));
  const usual = SCALES.find(
    ([points]) =>
      points <= atMost &&
      feetWide * points + 2 * border <= widest &&
      feetDeep * points + 2 * border + FOOTER <= highest,
  );
  const perFoot =
    usual?.[0] ??
    Math.min(atMost, (widest - 2 * border) / feetWide, (highest - 2 * border - FOOTER) / feetDeep);
  return { perFoot, scale: usual?.[1], border };
}

/** `widest` and `highest` in points. */
export function drawPlan(
  outline: readonly Point[],
  rooms: readonly PlanRoom[],
  widest: number,
  highest: number,
  { reading = 'inches', numbers = new Map(), atMost = Number.POSITIVE_INFINITY }: PlanOrder = {},
): Plan {
  const { perFoot, scale, border } = fitPlan(outline, widest, highest, atMost);
  const bounds = boundsOf(outline);
  const feetWide = (bounds.east - bounds.west) / FOOT;
  const feetDeep = (bounds.north - bounds.south) / FOOT;
  const width = feetWide * perFoot + 2 * border;
  const height = feetDeep * perFoot + 2 * border + FOOTER;
  const place = ([east, north]: Point): XY => [
    tidy(border + ((east - bounds.west) / FOOT) * perFoot),
    tidy(border + ((bounds.north - north) / FOOT) * perFoot),
  ];
  const unnamed: number[] = [];
  const shapes: Shape[] = [
    {
      kind: 'path',
      points: outline.map(place),
      closed: true,
      fill: rooms.length > 0 ? 'ink' : 'paper',
      pen: 'wall',
      ink: 'ink',
    },
    ...rooms.flatMap((room, index) => roomShapes(room, place, numbers.get(index), () => unnamed.push(index))),
    ...dimensionRows(outline).flatMap((row) => dimension(row, place, bounds, reading)),
    ...northAndScale(border, width, height, perFoot, reading),
  ];
  return {
    drawing: { width: tidy(width), height: tidy(height), shapes },
    scale,
    perFoot,
    unnamed,
  };
}

const tidy = (points: number): number => Math.round(points * 100) / 100;

/** Average advance of the label type, as a share of its size; enough to tell whether a name fits. */
const ADVANCE = 0.5;
const NAME_SIZE = 7.5;
const SIZE_SIZE = 7;

function roomShapes(
  room: PlanRoom,
  place: (point: Point) => XY,
  number: number | undefined,
  unnamed: () => void,
): Shape[] {
  const corners = room.corners.map(place);
  const [x, y] = place(room.spot);
  // An L-shaped room is only as wide at its label as its walls there.
  const wide = reach(corners, x, y, 0);
  const high = reach(corners, x, y, 1);
  const shapes: Shape[] = [
    { kind: 'path', points: corners, closed: true, fill: room.apart ? 'wash' : 'paper' },
  ];
  const label = (text: string, dy: number, style: 'small' | 'tick', turn: 0 | -90 = 0): Shape => ({
    kind: 'text',
    at: turn === 0 ? [x, tidy(y + dy)] : [tidy(x + dy), y],
    text,
    style,
    ink: style === 'small' ? 'ink' : 'soft',
    anchor: 'middle',
    ...(turn === 0 ? {} : { turn }),
  });
  const fits = (text: string, size: number, along: number): boolean =>
    text.length * size * ADVANCE + 4 <= along;
  // A room that the caption numbers for the other form bears its number here as well.
  const name = number === undefined ? room.name : `${number} ${room.name}`;
  if (fits(name, NAME_SIZE, wide) && high >= 22 && fits(room.size, SIZE_SIZE, wide)) {
    shapes.push(label(name, -1, 'small'), label(room.size, 8.5, 'tick'));
  } else if (fits(name, NAME_SIZE, wide) && high >= 11) shapes.push(label(name, 2.5, 'small'));
  else if (fits(name, NAME_SIZE, high) && wide >= 11) shapes.push(label(name, 2.5, 'small', -90));
  else {
    unnamed();
    if (number !== undefined && wide >= 6 && high >= 8) shapes.push(label(String(number), 2.5, 'small'));
  }
  return shapes;
}

/** How far the outline reaches through a point inside it, along x (axis 0) or y (axis 1). */
function reach(corners: readonly XY[], x: number, y: number, axis: 0 | 1): number {
  const across = axis === 0 ? 1 : 0;
  const at = axis === 0 ? y : x;
  const spot = axis === 0 ? x : y;
  let before = Number.NEGATIVE_INFINITY;
  let after = Number.POSITIVE_INFINITY;
  for (const [index, a] of corners.entries()) {
    const b = corners[(index + 1) % corners.length] as XY;
    if (a[across] > at === b[across] > at) continue;
    const crossing = a[axis] + ((at - a[across]) / (b[across] - a[across])) * (b[axis] - a[axis]);
    if (crossing <= spot) before = Math.max(before, crossing);
    else after = Math.min(after, crossing);
  }
  return after - before;
}

interface DimensionRow {
  readonly side: 'north' | 'south' | 'east' | 'west' | 'slanted';
  readonly from: Point;
  readonly to: Point;
  /** 1 is next to the house. */
  readonly row: number;
}

const SHORTEST_SHOWN = 2 * FOOT;

/**
 * Walls are dimensioned outside the whole house, in rows beside its four sides, as draughtsmen do: lines that
 * would lie over each other go into the next row.
 */
function dimensionRows(outline: readonly Point[]): DimensionRow[] {
  const clockwise = signedTwice(outline) < 0;
  const taken = new Map<string, [number, number][]>();
  return outline.flatMap((from, index): DimensionRow[] => {
    const to = outline[(index + 1) % outline.length] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    if (Math.hypot(dx, dy) < SHORTEST_SHOWN) return [];
    const side = sideOf(dx, dy, clockwise);
    if (side === 'slanted') return [{ side, from, to, row: 1 }];
    const along = side === 'north' || side === 'south' ? 0 : 1;
    const span: [number, number] = [Math.min(from[along], to[along]), Math.max(from[along], to[along])];
    for (let row = 1; ; row++) {
      const key = `${side}${row}`;
      const spans = taken.get(key) ?? [];
      if (spans.some(([low, high]) => span[0] < high && low < span[1])) continue;
      taken.set(key, [...spans, span]);
      return [{ side, from, to, row }];
    }
  });
}

/** The side a wall faces; outside is to the left of a clockwise walk with north up. */
function sideOf(dx: number, dy: number, clockwise: boolean): DimensionRow['side'] {
  if (dx !== 0 && dy !== 0) return 'slanted';
  if (dy === 0) return dx > 0 === clockwise ? 'north' : 'south';
  return dy > 0 === clockwise ? 'west' : 'east';
}

function dimension(
  { side, from, to, row }: DimensionRow,
  place: (point: Point) => XY,
  bounds: Bounds,
  reading: Reading,
): Shape[] {
  const words = dimensionWords(Math.hypot(to[0] - from[0], to[1] - from[1]), reading);
  const [ax, ay] = place(from);
  const [bx, by] = place(to);
  const [left, top] = place([bounds.west, bounds.north]);
  const [right, bottom] = place([bounds.east, bounds.south]);
  const off = ROW * row;
  const text = (at: XY, turn?: -90): Shape => ({
    kind: 'text',
    at,
    text: words,
    style: 'tick',
    ink: 'soft',
    anchor: 'middle',
    ...(turn === undefined ? {} : { turn }),
  });
  const measured = (a: XY, b: XY, label: Shape): Shape[] => [
    { kind: 'line', from: a, to: b, pen: 'hair', ink: 'soft' },
    { kind: 'circle', at: a, radius: 1.3, fill: 'ink' },
    { kind: 'circle', at: b, radius: 1.3, fill: 'ink' },
    label,
  ];
  if (side === 'slanted') return [text([tidy((ax + bx) / 2), tidy((ay + by) / 2)])];
  if (side === 'north' || side === 'south') {
    const y = side === 'north' ? top - off : bottom + off;
    return measured([ax, y], [bx, y], text([tidy((ax + bx) / 2), tidy(side === 'north' ? y - 3 : y + 8)]));
  }
  const x = side === 'west' ? left - off : right + off;
  return measured([x, ay], [x, by], text([tidy(side === 'west' ? x - 3 : x + 8), tidy((ay + by) / 2)], -90));
}

/** As a tape shows it: a slanted or computed metric wall to the centimetre, one in decimal feet to the tenth. */
function dimensionWords(units: number, reading: Reading): string {
  const finest = { inches: 1, tenths: FOOT / 10, metric: METRE / 100 }[reading];
  return lengthWords(Math.round(units / finest) * finest, reading);
}

function signedTwice(outline: readonly Point[]): number {
  return outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length] as Point;
    return sum + (x / FOOT) * (nextY / FOOT) - (nextX / FOOT) * (y / FOOT);
  }, 0);
}

/** Points of the longest bar that stays under these. */
const LONGEST_BAR = 120;

function scaleBar(perFoot: number, reading: Reading): { readonly points: number; readonly words: string } {
  const [per, long, short, unit] =
    reading === 'metric' ? [(perFoot * METRE) / FOOT, 5, 2, 'm'] : [perFoot, 10, 5, 'ft'];
  const length = per * long > LONGEST_BAR ? short : long;
  return { points: length * per, words: `${length} ${unit}` };
}

function northAndScale(
  border: number,
  width: number,
  height: number,
  perFoot: number,
  reading: Reading,
): Shape[] {
  const bar = scaleBar(perFoot, reading);
  const y = height - 14;
  const x = border;
  const end = tidy(x + bar.points);
  const n = width - border;
  const text = (at: XY, words: string, anchor: 'start' | 'middle'): Shape => ({
    kind: 'text',
    at,
    text: words,
    style: 'tick',
    ink: 'soft',
    anchor,
  });
  return [
    { kind: 'line', from: [x, y], to: [end, y], pen: 'thin', ink: 'soft' },
    { kind: 'line', from: [x, y - 3], to: [x, y + 3], pen: 'thin', ink: 'soft' },
    { kind: 'line', from: [end, y - 3], to: [end, y + 3], pen: 'thin', ink: 'soft' },
    text([x, y + 11], '0', 'middle'),
    text([end, y + 11], bar.words, 'middle'),
    { kind: 'line', from: [n, y], to: [n, y - 18], pen: 'thin', ink: 'soft' },
    {
      kind: 'path',
      points: [
        [n - 3, y - 12],
        [n, y - 18],
        [n + 3, y - 12],
      ],
      closed: false,
      pen: 'thin',
      ink: 'soft',
      fill: 'none',
    },
    text([n, y + 10], 'N', 'middle'),
  ];
}
