/**
 * Several levels on one sheet, each with its name above, signs for alarms in its rooms, and below it the places that
 * no room stands for. All lengths are points.
 */
import type { Reading } from '../tally/area-words.js';
import type { Point } from '../tally/corners.js';
import { type AlarmSign, signEntry, signRow } from './draw-alarm-sign.js';
import { drawFooter, footerHeight, type LegendEntry, leastFooterWidth } from './draw-footer.js';
import { setLines } from './draw-lettering.js';
import { drawShell, groundSize, type PlanLevel, type PlanRoom, placer, roomsTooSmall } from './draw-plan.js';
import { inRows } from './draw-rows.js';
import { type RoomWords, words } from './draw-stack.js';
import { tidy } from './draw-tidy.js';
import { breakAnyhow, letteringHeight } from './letter-widths.js';
import type { Drawing, Shape, XY } from './packet.js';
import { lowerFirst } from './rich.js';

interface AlarmNote {
  readonly words: string;
  readonly sign: AlarmSign;
}

export interface AlarmLevel {
  readonly name: string;
  readonly outline: readonly Point[];
  readonly reading: Reading;
  readonly rooms: readonly {
    readonly name: string;
    readonly corners: readonly Point[];
    readonly spot: Point;
    readonly signs: readonly AlarmSign[];
  }[];
  /** What belongs to the level and to no room on its plan. */
  readonly notes: readonly AlarmNote[];
}

/** Between the plans of a sheet, and around a plan's walls. */
const BETWEEN = 11;
const WALL = 2;

/** A level's name, and the air below it. */
const TITLE = { style: 'body', air: 4 } as const;

/** Notes are not set narrower than this, however small their plan. */
const LEAST_CELL = 112;
const SIGN_COLUMN = 16;
const NOTE_AIR = 3;
const LEAST_NOTE = 14;

/** One sheet at any scale, in points a foot, and of any width at most. */
export interface AlarmSheet {
  /** Whether it is as narrow and as low as that. Its height is worked out only where there is a limit to it. */
  readonly fits: (perFoot: number, widest: number, highest: number) => boolean;
  readonly draw: (perFoot: number, widest: number) => Drawing;
}

/** What is the same at every scale is made once: many are tried. */
export function alarmSheet(levels: readonly AlarmLevel[], legend: readonly LegendEntry[]): AlarmSheet {
  const planned = levels.map((level) => ({ level, plan: planOf(level) }));
  return {
    fits: (perFoot, widest, highest) => {
      const rows = rowsOf(planned, perFoot, widest);
      const width = widthOf(rows, legend);
      if (tidy(width) > widest) return false;
      if (highest === Number.POSITIVE_INFINITY) return true;
      const heights = rows.map((row) => heightOf(row.map((one) => cellOf(one, perFoot))));
      return tidy(heights.reduce((sum, one) => sum + one, 0) + footerHeight(width, legend)) <= highest;
    },
    draw: (perFoot, widest) => {
      const rows = rowsOf(planned, perFoot, widest);
      const width = widthOf(rows, legend);
      const shapes: Shape[] = [];
      let y = 0;
      for (const row of rows) {
        const cells = row.map((one) => cellOf(one, perFoot));
        let x = 0;
        for (const cell of cells) {
          shapes.push(...drawCell(cell, perFoot, [x, y]));
          x += cell.width + BETWEEN;
        }
        y += heightOf(cells);
      }
      const reading = levels[0]?.reading ?? 'inches';
      shapes.push(...drawFooter({ left: 0, top: y, width }, perFoot, reading, legend));
      return { width: tidy(width), height: tidy(y + footerHeight(width, legend)), shapes };
    },
  };
}

interface Planned {
  readonly level: AlarmLevel;
  readonly plan: Pick<PlanLevel, 'outline' | 'rooms' | 'ground'>;
}

const planOf = ({ outline, rooms }: AlarmLevel): Planned['plan'] => ({
  outline,
  rooms: rooms.map(planRoom),
  ground: { fill: 'paper' },
});

/** Levels side by side, by their widths alone. */
type Row = readonly (Planned & { readonly width: number })[];

const rowsOf = (levels: readonly Planned[], perFoot: number, widest: number): Row[] =>
  inRows(
    levels.map((one) => ({ ...one, width: cellWidth(one.level, perFoot) })),
    widest,
    BETWEEN,
    ({ width }) => width,
  );

const widthOf = (rows: readonly Row[], legend: readonly LegendEntry[]): number =>
  Math.max(
    leastFooterWidth(legend),
    ...rows.map((row) => row.reduce((sum, { width }) => sum + width, BETWEEN * (row.length - 1))),
  );

/** Of a row, with the air below it. */
const heightOf = (cells: readonly Cell[]): number => Math.max(...cells.map(({ height }) => height)) + BETWEEN;

const cellWidth = ({ outline }: AlarmLevel, perFoot: number): number =>
  Math.max(groundSize(outline, perFoot).width + 2 * WALL, LEAST_CELL);

/** A level's part of the sheet: its name, its plan, and below it what finds no room there. */
interface Cell extends Planned {
  readonly title: readonly string[];
  readonly notes: readonly { readonly sign: AlarmSign; readonly lines: readonly string[] }[];
  readonly planTop: number;
  readonly notesTop: number;
  readonly width: number;
  readonly height: number;
}

function cellOf({ level, plan }: Planned, perFoot: number): Cell {
  const width = cellWidth(level, perFoot);
  const tooSmall = roomsTooSmall(plan, perFoot).flatMap((position) => level.rooms[position] ?? []);
  const notes = bySign([
    ...tooSmall.flatMap(({ name, signs }) => signs.map((sign) => ({ words: name, sign }))),
    ...level.notes,
  ]).map((note) => ({ sign: note.sign, lines: breakAnyhow(noteWords(note), 'tick', width - SIGN_COLUMN) }));
  const title = breakAnyhow(level.name, TITLE.style, width);
  const planTop = letteringHeight(TITLE.style) * title.length + TITLE.air;
  const notesTop = planTop + groundSize(level.outline, perFoot).height + 2 * WALL + NOTE_AIR;
  const height = notes.reduce((sum, { lines }) => sum + noteHeight(lines), notesTop);
  return { level, plan, title, notes, planTop, notesTop, width, height };
}

function drawCell(cell: Cell, perFoot: number, [x, y]: XY): Shape[] {
  const { level, plan, title, notes, planTop, notesTop } = cell;
  let top = y + notesTop;
  return [
    ...setLines(title, [x, y], { style: TITLE.style, ink: 'ink', anchor: 'start' }),
    ...drawShell(plan, placer(level.outline, perFoot, [x + WALL, y + planTop + WALL]), new Map()),
    ...notes.flatMap(({ sign, lines }) => {
      const shapes = drawNote(sign, lines, [x, top]);
      top += noteHeight(lines);
      return shapes;
    }),
  ];
}

function planRoom({ name, corners, spot, signs }: AlarmLevel['rooms'][number]): PlanRoom {
  const label = words(name, 'tick', 'soft', 2);
  const row = signRow(signs);
  const says: RoomWords[] =
    signs.length === 0
      ? [
          { pieces: [label], turns: true },
          { pieces: [], turns: false },
        ]
      : [
          { pieces: [label, row], turns: false },
          { pieces: [row], turns: false, beside: 1 },
        ];
  return { corners, spot, ground: { fill: 'paper' }, says: () => says };
}

/** One line for all that have the same sign. */
function bySign(notes: readonly AlarmNote[]): AlarmNote[] {
  const lines = new Map<string, AlarmNote>();
  for (const { words: place, sign } of notes) {
    const key = `${sign.warns} ${sign.recorded} ${sign.past}`;
    const before = lines.get(key);
    lines.set(key, { sign, words: before === undefined ? place : `${before.words}; ${lowerFirst(place)}` });
  }
  return [...lines.values()];
}

const noteWords = ({ words: place, sign }: AlarmNote): string =>
  sign.recorded ? `${place}${sign.past ? ': past date' : ''}` : `${place}: none`;

const noteHeight = (lines: readonly string[]): number =>
  Math.max(LEAST_NOTE, letteringHeight('tick') * lines.length + NOTE_AIR);

function drawNote(sign: AlarmSign, lines: readonly string[], [x, top]: XY): Shape[] {
  const middle = top + noteHeight(lines) / 2;
  const first = middle - (letteringHeight('tick') * lines.length) / 2;
  return [
    ...signEntry(sign, '').draw(x, middle),
    ...setLines(lines, [x + SIGN_COLUMN, first], { style: 'tick', ink: 'ink', anchor: 'start' }),
  ];
}
