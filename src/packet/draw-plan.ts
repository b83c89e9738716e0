/**
 * A level drawn to scale from its outline and rooms: walls solid, dimensions outside, north up.
 *
 * Takes lengths in 0.1 µm with north as +y; gives points with y growing downwards.
 */
import { FOOT, printFeetInches } from '../facts/length.js';
import type { Point } from '../tally/corners.js';
import { labelSpot } from '../tally/label-spot.js';
import { boundsOf } from '../tally/measuring.js';
import type { Drawing, Shape, XY } from './packet.js';

export interface PlanRoom {
  readonly name: string;
  readonly size: string;
  readonly corners: readonly Point[];
  /** Unfinished or not counted: drawn with a wash. */
  readonly apart: boolean;
}

export interface Plan {
  readonly drawing: Drawing;
  /** "1/8 inch to the foot", for the caption; undefined where it fits no usual scale. */
  readonly scale: string | undefined;
  /** Rooms too small for their name: number and name, for the caption. */
  readonly key: readonly string[];
}

/** Points a foot, and the scale's name on paper. */
const SCALES: readonly (readonly [pointsPerFoot: number, name: string])[] = [
  [18, '1/4 inch to the foot'],
  [13.5, '3/16 inch to the foot'],
  [9, '1/8 inch to the foot'],
  [6.75, '3/32 inch to the foot'],
  [4.5, '1/16 inch to the foot'],
];

/** Room for dimension lines on each side. */
const BORDER = 34;
const FOOTER = 30;

export function drawPlan(
  outline: readonly Point[],
  rooms: readonly PlanRoom[],
  widest: number,
  highest: number,
): Plan {
  const bounds = boundsOf(outline);
  const feetWide = (bounds.east - bounds.west) / FOOT;
  const feetDeep = (bounds.north - bounds.south) / FOOT;
  const fits = SCALES.find(
    ([points]) =>
      feetWide * points + 2 * BORDER <= widest && feetDeep * points + 2 * BORDER + FOOTER <= highest,
  );
  const perFoot =
    fits?.[0] ?? Math.min((widest - 2 * BORDER) / feetWide, (highest - 2 * BORDER - FOOTER) / feetDeep);
  const width = feetWide * perFoot + 2 * BORDER;
  const height = feetDeep * perFoot + 2 * BORDER + FOOTER;
  const place = ([east, north]: Point): XY => [
    tidy(BORDER + ((east - bounds.west) / FOOT) * perFoot),
    tidy(BORDER + ((bounds.north - north) / FOOT) * perFoot),
  ];
  const key: string[] = [];
  const shapes: Shape[] = [
    {
      kind: 'path',
      points: outline.map(place),
      closed: true,
      fill: rooms.length > 0 ? 'ink' : 'paper',
      pen: 'wall',
      ink: 'ink',
    },
    ...rooms.flatMap((room) => roomShapes(room, place, key)),
    ...dimensions(outline, place),
    ...northAndScale(width, height, perFoot),
  ];
  return { drawing: { width: tidy(width), height: tidy(height), shapes }, scale: fits?.[1], key };
}

const tidy = (points: number): number => Math.round(points * 100) / 100;

/** Average advance of the label type, as a share of its size; enough to tell whether a name fits. */
const ADVANCE = 0.5;
const NAME_SIZE = 7.5;
const SIZE_SIZE = 7;

function roomShapes(room: PlanRoom, place: (point: Point) => XY, key: string[]): Shape[] {
  const corners = room.corners.map(place);
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const wide = Math.max(...xs) - Math.min(...xs);
  const high = Math.max(...ys) - Math.min(...ys);
  const [x, y] = place(labelSpot(room.corners));
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
  // labelSpot can lie off the middle in an L-shaped room, so a name is only trusted with the room's lesser width there.
  const nameFits = fits(room.name, NAME_SIZE, wide);
  if (nameFits && high >= 22 && fits(room.size, SIZE_SIZE, wide))
    shapes.push(label(room.name, -1, 'small'), label(room.size, 8.5, 'tick'));
  else if (nameFits && high >= 11) shapes.push(label(room.name, 2.5, 'small'));
  else if (fits(room.name, NAME_SIZE, high) && wide >= 11) shapes.push(label(room.name, 2.5, 'small', -90));
  else {
    key.push(`${key.length + 1} ${room.name}`);
    if (wide >= 6 && high >= 8) shapes.push(label(String(key.length), 2.5, 'small'));
  }
  return shapes;
}

const DIMENSION_OFFSET = 14;

/** One line beside each wall, with its length; outside the house, whichever way the outline was walked. */
function dimensions(outline: readonly Point[], place: (point: Point) => XY): Shape[] {
  const clockwise = signedTwice(outline) < 0;
  return outline.flatMap((from, index): Shape[] => {
    const to = outline[(index + 1) % outline.length] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    if (length < 2 * FOOT) return [];
    // Outward normal: to the left of a clockwise walk with north up.
    const side = clockwise ? 1 : -1;
    const nx = (-dy / length) * side;
    const ny = (dx / length) * side;
    const [ax, ay] = place(from);
    const [bx, by] = place(to);
    const shift = (x: number, y: number): XY => [
      tidy(x + nx * DIMENSION_OFFSET),
      tidy(y - ny * DIMENSION_OFFSET),
    ];
    const [a, b] = [shift(ax, ay), shift(bx, by)];
    const tick = (at: XY): Shape => ({ kind: 'circle', at, radius: 1.3, fill: 'ink' });
    const upright = Math.abs(dx) < Math.abs(dy);
    const middle: XY = [tidy((a[0] + b[0]) / 2 + nx * 4), tidy((a[1] + b[1]) / 2 - ny * 4)];
    const drop = upright ? 0 : ny < 0 ? 5 : 0;
    return [
      { kind: 'line', from: a, to: b, pen: 'hair', ink: 'soft' },
      tick(a),
      tick(b),
      {
        kind: 'text',
        at: upright ? [tidy(middle[0] + (nx > 0 ? 5 : 0)), middle[1]] : [middle[0], tidy(middle[1] + drop)],
        text: printFeetInches(Math.round(length)),
        style: 'tick',
        ink: 'soft',
        anchor: 'middle',
        ...(upright ? { turn: -90 as const } : {}),
      },
    ];
  });
}

function signedTwice(outline: readonly Point[]): number {
  return outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length] as Point;
    return sum + (x / FOOT) * (nextY / FOOT) - (nextX / FOOT) * (y / FOOT);
  }, 0);
}

function northAndScale(width: number, height: number, perFoot: number): Shape[] {
  const feet = perFoot * 10 > 120 ? 5 : 10;
  const y = height - 14;
  const x = BORDER;
  const end = tidy(x + feet * perFoot);
  const n = width - BORDER;
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
    text([end, y + 11], `${feet} ft`, 'middle'),
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
