/**
 * Lines of lettering and rows of signs, one above the other: what stands in a room of a plan.
 *
 * A piece is asked for its look at a width, and a stack is put where it fits inside an outline, upright or, where
 * the room is narrow, turned like the name of a hall. All lengths are points.
 */

import { setLines } from './draw-lettering.js';
import { findBox, reach } from './draw-room-space.js';
import { tidy } from './draw-tidy.js';
import { letteringHeight, lineBreaker } from './letter-widths.js';
import type { Ink, LetterStyle, Shape, XY } from './packet.js';

export interface Laid {
  readonly width: number;
  readonly height: number;
  /** Its shapes, with the middle of its top edge at a point. */
  readonly draw: (centre: number, top: number) => readonly Shape[];
}

/** One part of a stack; undefined where it can't be made so narrow. */
export type Piece = (widest: number) => Laid | undefined;

/** Lettering about a middle, broken into `most` lines at most. */
export function words(text: string, style: LetterStyle, ink: Ink, most = Number.POSITIVE_INFINITY): Piece {
  const breakAt = lineBreaker(text, style);
  return (widest) => {
    const broken = breakAt(widest);
    if (broken === undefined || broken.lines.length > most) return undefined;
    const { lines, width } = broken;
    return {
      width,
      height: letteringHeight(style) * lines.length,
      draw: (centre, top) => setLines(lines, [centre, top], { style, ink, anchor: 'middle' }),
    };
  };
}

/** Pieces one above the other. */
function stackOf(pieces: readonly Piece[], widest: number): Laid | undefined {
  const laid = pieces.map((piece) => piece(widest));
  if (!laid.every((one) => one !== undefined)) return undefined;
  return {
    width: Math.max(0, ...laid.map((one) => one.width)),
    height: laid.reduce((sum, one) => sum + one.height, 0),
    draw: (centre, top) => {
      let y = top;
      return laid.flatMap((one) => {
        const shapes = one.draw(centre, y);
        y += one.height;
        return shapes;
      });
    },
  };
}

export interface RoomWords {
  readonly pieces: readonly Piece[];
  /** Whether they may be read from the side; signs may not. */
  readonly turns: boolean;
  /** Points to the walls at both sides. Left out: as far as letters stand off them. */
  readonly beside?: number;
}

/** Shapes of what was put into a room, and the ground it covers. */
export interface Put {
  readonly shapes: readonly Shape[];
  readonly ground: readonly XY[];
}

/** Between the words and the walls. */
const PAD = 2.5;

/** Three lines, in points: nobody turns a sheet to read more. */
const HIGHEST_TURNED = 28;

/** Shares of the widest line to try: a narrower stack is taller, and may fit a bend. */
const NARROWER = [1, 0.8, 0.6, 0.45];

/** The words in a room, as near to its spot as they fit; undefined where they don't. */
export function putInRoom(
  corners: readonly XY[],
  spot: XY,
  { pieces, turns, beside = PAD }: RoomWords,
): Put | undefined {
  if (pieces.length === 0) return { shapes: [], ground: [] };
  const upright = place(corners, spot, pieces, beside);
  if (upright !== undefined) {
    const { laid, at } = upright;
    return { shapes: laid.draw(at[0], at[1] - laid.height / 2), ground: groundOf(laid, at) };
  }
  if (!turns) return undefined;
  // Turned a quarter: what goes to the right in the text goes up on the sheet.
  const turned = place(corners.map(aside), aside(spot), pieces, beside, HIGHEST_TURNED);
  if (turned === undefined) return undefined;
  const { laid, at } = turned;
  return {
    shapes: laid.draw(at[0], at[1] - laid.height / 2).map(turn),
    ground: groundOf(laid, at).map(back),
  };
}

const QUARTER = -90 as const;
const aside = ([x, y]: XY): XY => [-y, x];
const back = ([x, y]: XY): XY => [tidy(y), tidy(-x)];
const turn = (shape: Shape): Shape =>
  shape.kind === 'text' ? { ...shape, at: back(shape.at), turn: QUARTER } : shape;

function groundOf({ width, height }: Laid, [x, y]: XY): XY[] {
  const [left, right] = [tidy(x - width / 2 - 1), tidy(x + width / 2 + 1)];
  const [top, bottom] = [tidy(y - height / 2), tidy(y + height / 2)];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

function place(
  corners: readonly XY[],
  spot: XY,
  pieces: readonly Piece[],
  pad: number,
  highest = Number.POSITIVE_INFINITY,
): { laid: Laid; at: XY } | undefined {
  const xs = corners.map(([x]) => x);
  const whole = Math.max(...xs) - Math.min(...xs);
  const tried = new Set<string>();
  for (const widest of [reach(corners, spot), whole]) {
    for (const share of NARROWER) {
      const laid = stackOf(pieces, widest * share - 2 * pad);
      const look = `${laid?.width} ${laid?.height}`;
      if (laid === undefined || laid.height > highest || tried.has(look)) continue;
      tried.add(look);
      const at = findBox(corners, spot, laid.width + 2 * pad, laid.height + pad);
      if (at !== undefined) return { laid, at };
    }
  }
  return undefined;
}
