/**
 * Several levels on one sheet, each with its name above, signs for alarms in its rooms, and below it the places that
 * no room stands for. All lengths are points.
 */
import type { Reading } from '../tally/area-words.js';
import type { Point } from '../tally/corners.js';
import { type AlarmSign, signEntry, signRow } from './draw-alarm-sign.js';
import { drawFooter, footerHeight, type LegendEntry, leastFooterWidth } from './draw-footer.js';
import { drawShell, groundSize, type PlanLevel, type PlanRoom, placer, roomsTooSmall } from './draw-plan.js';
import { setLines, tidy, words } from './draw-stack.js';
import { breakAnyhow, letteringHeight } from './letter-widths.js';
import type { Drawing, Shape, XY } from './packet.js';
import { lowerFirst } from './rich.js';

export interface AlarmNote {
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

interface Cell {
  readonly width: number;
  readonly height: number;
  readonly draw: (at: XY) => Shape[];
}

/** A sheet of a width at most, at a scale in points a foot. */
export function drawAlarmSheet(
  levels: readonly AlarmLevel[],
  legend: readonly LegendEntry[],
  perFoot: number,
  widest: number,
): Drawing {
  const rows = rowsOf(
    levels.map((level) => cellOf(level, perFoot)),
    widest,
  );
  const rowWidth = (row: readonly Cell[]): number =>
    row.reduce((sum, cell) => sum + cell.width, BETWEEN * (row.length - 1));
  const width = Math.max(leastFooterWidth(legend), ...rows.map(rowWidth));
  const shapes: Shape[] = [];
  let y = 0;
  for (const row of rows) {
    let x = 0;
    for (const cell of row) {
      shapes.push(...cell.draw([x, y]));
      x += cell.width + BETWEEN;
    }
    y += Math.max(...row.map((cell) => cell.height)) + BETWEEN;
  }
  const reading = levels[0]?.reading ?? 'inches';
  shapes.push(...drawFooter({ left: 0, top: y, width }, perFoot, reading, legend));
  return { width: tidy(width), height: tidy(y + footerHeight(width, legend)), shapes };
}

function rowsOf(cells: readonly Cell[], widest: number): Cell[][] {
  const rows: Cell[][] = [];
  let left = 0;
  for (const cell of cells) {
    if (rows.length > 0 && left + BETWEEN + cell.width <= widest) {
      rows.at(-1)?.push(cell);
      left += BETWEEN + cell.width;
    } else {
      rows.push([cell]);
      left = cell.width;
    }
  }
  return rows;
}

function cellOf(level: AlarmLevel, perFoot: number): Cell {
  const ground = groundSize(level.outline, perFoot);
  const width = Math.max(ground.width + 2 * WALL, LEAST_CELL);
  const plan: Pick<PlanLevel, 'outline' | 'rooms' | 'ground'> = {
    outline: level.outline,
    rooms: level.rooms.map(planRoom),
    ground: { fill: 'paper' },
  };
  const tooSmall = roomsTooSmall(plan, perFoot).flatMap((position) => level.rooms[position] ?? []);
  const notes = bySign([
    ...tooSmall.flatMap(({ name, signs }) => signs.map((sign) => ({ words: name, sign }))),
    ...level.notes,
  ]).map((note) => ({ sign: note.sign, lines: breakAnyhow(noteWords(note), 'tick', width - SIGN_COLUMN) }));
  const title = breakAnyhow(level.name, TITLE.style, width);
  const planTop = letteringHeight(TITLE.style) * title.length + TITLE.air;
  const notesTop = planTop + ground.height + 2 * WALL + NOTE_AIR;
  return {
    width,
    height: notes.reduce((sum, { lines }) => sum + noteHeight(lines), notesTop),
    draw: ([x, y]) => {
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
    },
  };
}

function planRoom({ name, corners, spot, signs }: AlarmLevel['rooms'][number]): PlanRoom {
  const label = words(name, 'tick', 'soft', 2);
  return {
    corners,
    spot,
    ground: { fill: 'paper' },
    says: () =>
      signs.length === 0
        ? [
            { pieces: [label], turns: true },
            { pieces: [], turns: false },
          ]
        : [
            { pieces: [label, signRow(signs)], turns: false },
            { pieces: [signRow(signs)], turns: false, beside: 1 },
          ],
  };
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
