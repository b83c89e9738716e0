/**
 * A text for the terminal with stretches of it marked below: signs under the exact characters, and a number where each
 * stretch begins. Nothing in the text acts on the terminal, and marks stay below their characters whatever it holds:
 * letters of two columns, accents that stand apart, emoji, tabs, words longer than a line.
 */
import { columnsOf } from './diagnostics/columns.js';
import { visible } from './diagnostics/report.js';
import { graphemesOf } from './packet/graphemes.js';

/** `^` is to be mended, `~` has nothing behind it or needs a look, `.` is fine. Where stretches overlap the first wins. */
export type Sign = '^' | '~' | '.';

export interface Stretch {
  /** UTF-16 offsets in the text. */
  readonly from: number;
  readonly to: number;
  readonly sign: Sign;
  /** Its number in the list below. */
  readonly number: number;
}

/** A line of the text, or of what stands below it: pieces to be painted each in its own way. */
export interface MarkedLine {
  readonly kind: 'text' | 'signs' | 'numbers';
  readonly text: string;
}

interface Cell {
  readonly from: number;
  readonly to: number;
  readonly shown: string;
  readonly columns: number;
  readonly blank: boolean;
}

const LINE_BREAK = /^(?:\r\n|[\n\r\u2028\u2029])$/u;

/** `width`: columns of a line. Stretches may overlap and may stand in any order. */
export function markedText(text: string, stretches: readonly Stretch[], width: number): MarkedLine[] {
  const sorted = [...stretches].sort((a, b) => a.from - b.from || a.to - b.to || a.number - b.number);
  const lines = linesOf(text, width);
  const ends = endsOf(lines, text.length + 1);
  const marked: MarkedLine[] = [];
  // Stretches that begin behind a line are not looked at for it, and those that ended before it are let go.
  let next = 0;
  let open: Stretch[] = [];
  for (const [index, line] of lines.entries()) {
    const from = line.at(0)?.from ?? 0;
    const to = ends[index] ?? text.length + 1;
    for (let one = sorted[next]; one !== undefined && one.from < to; one = sorted[next]) {
      open.push(one);
      next += 1;
    }
    open = open.filter((one) => one.to > from || one.from >= from);
    marked.push({ kind: 'text', text: line.map(({ shown }) => shown).join('') });
    if (line.length > 0 && open.length > 0) marked.push(...below(line, open));
  }
  return marked;
}

/** For each line, where the next one begins that has anything on it. */
function endsOf(lines: readonly (readonly Cell[])[], last: number): number[] {
  const ends: number[] = [];
  let end = last;
  for (let at = lines.length - 1; at >= 0; at--) {
    ends[at] = end;
    end = lines[at]?.[0]?.from ?? end;
  }
  return ends;
}

// ------------------------------------------------------------------ lines

function linesOf(text: string, width: number): Cell[][] {
  const lines: Cell[][] = [];
  let paragraph: Cell[] = [];
  let at = 0;
  for (const sign of graphemesOf(text)) {
    const from = at;
    at += sign.length;
    if (LINE_BREAK.test(sign)) {
      lines.push(...wrapped(paragraph, width));
      paragraph = [];
    } else {
      const shown = visible(sign);
      const blank = /^[ \t]$/.test(sign);
      paragraph.push({ from, to: at, shown, columns: columnsOf(shown), blank });
    }
  }
  lines.push(...wrapped(paragraph, width));
  while (lines.length > 1 && lines.at(-1)?.length === 0) lines.pop();
  return lines;
}

/** Broken at blanks; a word that no line holds is cut. The blanks at a break are not shown. */
function wrapped(cells: readonly Cell[], width: number): Cell[][] {
  const lines: Cell[][] = [];
  let line: Cell[] = [];
  let used = 0;
  const close = (): void => {
    while (line.at(-1)?.blank === true) line.pop();
    lines.push(line);
    line = [];
    used = 0;
  };
  for (const word of wordsOf(cells)) {
    const long = word.reduce((sum, { columns }) => sum + columns, 0);
    if (word[0]?.blank === true) {
      if (used > 0 && used + long < width) {
        line.push(...word);
        used += long;
      } else if (used > 0) close();
      continue;
    }
    if (used > 0 && used + long > width) close();
    for (const cell of word) {
      if (used + cell.columns > width) close();
      line.push(cell);
      used += cell.columns;
    }
  }
  if (line.length > 0 || lines.length === 0) close();
  return lines;
}

/** Runs of blanks and runs of other signs, in turn. */
function wordsOf(cells: readonly Cell[]): Cell[][] {
  const words: Cell[][] = [];
  for (const cell of cells) {
    const last = words.at(-1);
    if (last !== undefined && last[0]?.blank === cell.blank) last.push(cell);
    else words.push([cell]);
  }
  return words;
}

// ------------------------------------------------------------------ what stands below a line

const WEIGHT: readonly Sign[] = ['^', '~', '.'];

function below(line: readonly Cell[], open: readonly Stretch[]): MarkedLine[] {
  const signs: string[] = [];
  const numbers: string[][] = [];
  const starts: number[] = [];
  let column = 0;
  for (const cell of line) {
    starts.push(column);
    column += cell.columns;
  }
  for (const stretch of open) {
    const first = line.findIndex(({ to, blank }) => to > stretch.from && !blank);
    const cell = line[first];
    // It begins behind this line's last sign, or ended before its first.
    if (cell === undefined || cell.from >= Math.max(stretch.to, stretch.from + 1)) continue;
    const start = Math.max(0, starts[first] ?? 0);
    let end = start;
    for (let at = first; at < line.length && (line[at]?.from ?? stretch.to) < stretch.to; at++)
      end = Math.max(end, (starts[at] ?? 0) + (line[at]?.columns ?? 0));
    // An accent that stands apart takes no column: the one before it is marked.
    const begin = end > start ? start : Math.max(0, start - 1);
    for (let at = begin; at < Math.max(end, begin + 1); at++) {
      const had = signs[at];
      if (had === undefined || WEIGHT.indexOf(stretch.sign) < WEIGHT.indexOf(had as Sign))
        signs[at] = stretch.sign;
    }
    place(numbers, begin, String(stretch.number));
  }
  if (signs.length === 0) return [];
  return [
    { kind: 'signs', text: filled(signs) },
    ...numbers.map((row): MarkedLine => ({ kind: 'numbers', text: filled(row) })),
  ];
}

/** In the first row where it does not touch another number. */
function place(rows: string[][], column: number, number: string): void {
  const free = (row: readonly string[]): boolean => {
    for (let at = Math.max(0, column - 1); at <= column + number.length; at++)
      if (row[at] !== undefined) return false;
    return true;
  };
  let row = rows.find(free);
  if (row === undefined) {
    row = [];
    rows.push(row);
  }
  for (const [at, digit] of [...number].entries()) row[column + at] = digit;
}

const filled = (row: readonly (string | undefined)[]): string =>
  Array.from(row, (sign) => sign ?? ' ').join('');
