/**
 * One line a system: its age as a solid span on an axis of years, published lives as thin brackets by source.
 * The dark end of the bar is the part that the dates leave open.
 */
import { lettering } from './draw-lettering.js';
import { tidy } from './draw-tidy.js';
import { breakAnyhow } from './letter-widths.js';
import type { Drawing, Shape, XY } from './packet.js';

export interface AgeRow {
  readonly name: string;
  /** "made January 2026". */
  readonly when: string;
  /** In years, with a fraction; undefined: that end is not known. */
  readonly youngest: number | undefined;
  readonly oldest: number | undefined;
  readonly lives: readonly {
    readonly letter: string;
    readonly low: number | undefined;
    readonly high: number | undefined;
    readonly open: boolean;
  }[];
}

interface Frame {
  readonly width: number;
  /** Where the axis begins and ends. */
  readonly left: number;
  readonly right: number;
  readonly labels: 'beside' | 'above';
}

const WIDE: Frame = { width: 495, left: 160, right: 475, labels: 'beside' };
const NARROW: Frame = { width: 250, left: 4, right: 238, labels: 'above' };

const TOP = 22;
const LIFE_PITCH = 7.5;

export function drawAges(rows: readonly AgeRow[], shape: 'wide' | 'narrow', lastYear: number): Drawing {
  const frame = shape === 'wide' ? WIDE : NARROW;
  const x = (years: number): number =>
    tidy(frame.left + ((frame.right - frame.left) * Math.min(years, lastYear)) / lastYear);
  const shapes: Shape[] = [];
  let y = TOP;
  const bands: Shape[] = [];
  for (const row of rows) {
    const top = y;
    y = drawRow(row, top, frame, x, lastYear, bands);
    bands.push({ kind: 'line', from: [0, y], to: [frame.width, y], pen: 'hair', ink: 'line' });
  }
  const step = frame.labels === 'above' ? stepOf(lastYear, 5) : stepOf(lastYear, 9);
  for (let year = 0; year <= lastYear; year += step) {
    shapes.push({ kind: 'line', from: [x(year), TOP - 4], to: [x(year), y], pen: 'hair', ink: 'line' });
    shapes.push(
      lettering(year === 0 ? '0 years' : String(year), [x(year), TOP - 9], {
        anchor: year === 0 ? 'start' : 'middle',
      }),
    );
  }
  shapes.push({ kind: 'line', from: [0, TOP], to: [frame.width, TOP], pen: 'hair', ink: 'line' }, ...bands);
  return { width: frame.width, height: tidy(y + 2), shapes };
}

function stepOf(lastYear: number, most: number): number {
  return [5, 10, 20, 25, 50].find((step) => lastYear / step <= most) ?? 100;
}

/** The axis ends at the next ten years after everything that has an end, so that all of one packet's drawings share it. */
export function lastYearOf(rows: readonly AgeRow[]): number {
  const ends = rows.flatMap((row) => [
    row.youngest ?? 0,
    row.oldest ?? 0,
    ...row.lives.flatMap((life) => [life.low ?? 0, life.high ?? 0]),
  ]);
  return Math.min(120, Math.max(20, Math.ceil((Math.max(0, ...ends) + 1) / 10) * 10));
}

function drawRow(
  row: AgeRow,
  top: number,
  frame: Frame,
  x: (years: number) => number,
  lastYear: number,
  shapes: Shape[],
): number {
  const beside = frame.labels === 'beside';
  const lines = breakAnyhow(row.name, 'body', (beside ? frame.left : frame.width) - 8);
  const first = top + (beside ? 14 : 11);
  const text = (y: number, words: string, style: 'body' | 'tick', ink: 'ink' | 'soft'): void => {
    shapes.push(lettering(words, [0, y], { style, ink, anchor: 'start' }));
  };
  for (const [index, line] of lines.entries()) text(first + 10 * index, line, 'body', 'ink');
  const when = first + 10 * lines.length;
  text(when, row.when, 'tick', 'soft');
  const barTop = beside ? top + 8 : when + 6;
  drawBar(row, barTop, x, lastYear, shapes);
  let y = barTop + 12;
  for (const life of row.lives) {
    drawLife(life, y, x, lastYear, shapes);
    y += LIFE_PITCH;
  }
  return tidy(Math.max(y + 2, beside ? when + 8 : barTop + 14));
}

const BAR = 6;

function drawBar(
  row: AgeRow,
  top: number,
  x: (years: number) => number,
  lastYear: number,
  shapes: Shape[],
): void {
  const { youngest, oldest } = row;
  const bar = (from: number, to: number, fill: 'accent' | 'accent-soft'): void => {
    const points: XY[] = [
      [x(from), top],
      [x(to), top],
      [x(to), top + BAR],
      [x(from), top + BAR],
    ];
    shapes.push({ kind: 'path', points, closed: true, fill });
  };
  if (youngest === undefined && oldest === undefined) {
    shapes.push(lettering('age not known', [x(0) + 2, top + BAR], { style: 'unknown', anchor: 'start' }));
    return;
  }
  // A bar shorter than this could not be seen.
  const seen = lastYear / 200;
  if (youngest !== undefined && youngest > 0) bar(0, youngest, 'accent-soft');
  if (oldest !== undefined) bar(Math.min(youngest ?? 0, oldest - seen), Math.max(oldest, seen), 'accent');
  else if (youngest !== undefined) {
    shapes.push({
      kind: 'line',
      from: [x(youngest), top + BAR / 2],
      to: [x(lastYear), top + BAR / 2],
      pen: 'dashed',
      ink: 'accent',
    });
  }
}

function drawLife(
  life: AgeRow['lives'][number],
  y: number,
  x: (years: number) => number,
  lastYear: number,
  shapes: Shape[],
): void {
  const { low, high, open, letter } = life;
  const line = (from: XY, to: XY): void => {
    shapes.push({ kind: 'line', from, to, pen: 'thin', ink: 'soft' });
  };
  const post = (years: number): void => line([x(years), tidy(y - 2.2)], [x(years), tidy(y + 2.2)]);
  const letterAt = (at: number): void => {
    shapes.push(lettering(letter, [at, y + 2.4], { anchor: 'start' }));
  };
  if (open) {
    const from = low ?? 0;
    const end = x(lastYear);
    line([x(from), y], [end, y]);
    if (low !== undefined) post(low);
    line([end - 3, tidy(y - 2.2)], [end, y]);
    line([end - 3, tidy(y + 2.2)], [end, y]);
    letterAt(end + 3);
    return;
  }
  if (low !== undefined && high !== undefined && low === high) {
    const at = x(low);
    line([at - 2.2, tidy(y - 2.2)], [at + 2.2, tidy(y + 2.2)]);
    line([at - 2.2, tidy(y + 2.2)], [at + 2.2, tidy(y - 2.2)]);
    letterAt(at + 5);
    return;
  }
  const [from, to] = [low ?? 0, high ?? 0];
  line([x(from), y], [x(to), y]);
  if (low !== undefined) post(low);
  post(to);
  letterAt(x(to) + 4);
}
