/** The rows of a sheet one by one, with what is wrong with their cells. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { asItWas } from '../facts/inert-text.js';
import type { Read } from '../facts/read.js';
import { readSheetDate, type SheetDay } from '../facts/sheet-date.js';
import { taxpayerNumberIn, taxpayerNumberWords } from '../facts/taxpayer-number.js';
import { withoutTurning } from '../facts/turning-signs.js';
import { groupThousands } from '../facts/written-number.js';
import { judgeDays, type RowDay } from './day-or-month.js';
import type { Headings } from './sheet-headings.js';
import type { List, SheetRows } from './sheet-rows.js';

/** An answer that can have several ways out. */
export type CellRead<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string; readonly hints: readonly string[] };

type CellReader<T> = (cell: string) => Read<T> | CellRead<T>;

/** One row, while it is read. */
export interface SheetRow<Column extends string> {
  readonly row: number;
  /** The cell without blanks around it; empty where there is none. */
  cell(column: Column): string;
  /** The cell by a reader; undefined, with a diagnostic, if it can't be read. */
  read<T>(column: Column, reader: CellReader<T>): T | undefined;
  /** As `read`, but an empty cell is no mistake. */
  maybe<T>(column: Column, reader: CellReader<T>): T | undefined;
  /** Words of at most so many characters; an empty cell is a mistake if `asked` says what to write. */
  words(column: Column, longest: number, asked?: readonly string[]): string | undefined;
  /** The day of the row. */
  day(): string | undefined;
  refuse(column: Column, problem: string, hints: readonly string[]): void;
}

/** Longest texts of a sheet in characters: those of the same words in house.yaml. */
export const LONGEST_NAME = 200;
export const LONGEST_SENTENCE = 400;
export const LONGEST_NOTE = 20_000;

/**
 * Reads every row that is not blank. A row of which anything could not be read is left out of the answer: half a
 * payment is none.
 */
export function readRows<Column extends string, Row extends { readonly row: number }>(
  list: List,
  sheet: SheetRows,
  headings: Headings<Column>,
  read: (row: SheetRow<Column>) => Row | undefined,
): { readonly rows: readonly Row[]; readonly diagnostics: readonly Diagnostic[] } {
  const reader = new RowReader(list, headings.at);
  const { diagnostics, days } = reader;
  const rows: Row[] = [];
  let anything = false;
  for (let row = headings.row + 1; row <= sheet.rows.length; row += 1) {
    const cells = sheet.rows[row - 1] ?? [];
    if (isBlank(cells)) continue;
    anything = true;
    if (isSums(cells, headings.at.get('date' as Column))) {
      reader.refuseRow(row, 'this is a row of sums, not of one thing', ['take it out; the program adds up']);
      continue;
    }
    const before = diagnostics.length;
    const one = read(reader.open(row, cells));
    if (
      cells.length > headings.width &&
      (diagnostics.length > before || !isBlank(cells.slice(headings.width)))
    ) {
      // A comma too many pushes every cell behind it to the right: one mistake, not one for each.
      diagnostics.length = before;
      diagnostics.push(tooLong(list, sheet, row, headings.width));
    } else if (one !== undefined && diagnostics.length === before) rows.push(one);
  }
  if (!anything)
    diagnostics.push({
      code: 'intake.sheet',
      severity: 'note',
      // With its path: where the rows were lost to an error of the sheet, this is not said as well.
      path: [list],
      file: sheet.file,
      message: `${sheet.name} has headings for ${list} and no rows`,
      hints: ['write one row for each'],
    });
  const judged = judgeDays(list, days);
  return {
    rows: judged.refused.size === 0 ? rows : rows.filter(({ row }) => !judged.refused.has(row)),
    diagnostics: [...diagnostics, ...judged.diagnostics],
  };
}

const isBlank = (cells: readonly string[]): boolean => {
  for (const cell of cells) if (cell !== '' && cell.trim() !== '') return false;
  return true;
};

/** Which cell is the one too many can't be told from a line of text, so the whole row is shown; a workbook knows. */
function tooLong(list: List, sheet: SheetRows, row: number, width: number): Diagnostic {
  const isWorkbook = /\.xlsx$/i.test(sheet.name);
  const place = sheet.placeOf(row, isWorkbook ? width : undefined);
  return {
    code: 'intake.sheet',
    severity: 'error',
    path: [list, row],
    ...(place === undefined ? { file: sheet.file } : { place }),
    message: `this row has more cells than the ${width} headings`,
    hints: isWorkbook
      ? ['take out what stands behind the last heading, or give it a heading']
      : ['put a cell that has a comma of its own into quotes: "paint, white"', 'take out a comma too many'],
  };
}

/** A row that only adds up has no date of its own. */
function isSums(cells: readonly string[], date: number | undefined): boolean {
  const day = date === undefined ? '' : (cells[date] ?? '').trim();
  return (day === '' || SUM.test(day)) && cells.some((cell) => SUM.test(cell.trim()));
}

const SUM = /^(?:(?:grand|sub)[ -]?)?totals?:?$|^sum:?$/i;

const NOTHING_ODD = /^[\x20-\x7e]*$/;

/** Answers about one row after another: a sheet of thousands needs no more than one of these. */
class RowReader<Column extends string> implements SheetRow<Column> {
  row = 0;
  readonly diagnostics: Diagnostic[] = [];
  /** Days that were written with slashes. */
  readonly days: RowDay[] = [];
  private readonly list: List;
  private readonly at: ReadonlyMap<Column, number>;
  private cells: readonly string[] = [];
  private readonly known = new Map<string, Read<SheetDay>>();

  constructor(list: List, at: ReadonlyMap<Column, number>) {
    this.list = list;
    this.at = at;
  }

  open(row: number, cells: readonly string[]): this {
    this.row = row;
    this.cells = cells;
    return this;
  }

  cell(column: Column): string {
    const index = this.at.get(column);
    return index === undefined ? '' : (this.cells[index] ?? '').trim();
  }

  refuse(column: Column, message: string, hints: readonly string[]): void {
    this.diagnostics.push({
      code: 'intake.cell',
      severity: 'error',
      path: this.pathOf(column),
      message,
      hints,
    });
  }

  refuseRow(row: number, message: string, hints: readonly string[]): void {
    this.diagnostics.push({
      code: 'intake.sheet',
      severity: 'error',
      path: [this.list, row],
      message,
      hints,
    });
  }

  read<T>(column: Column, reader: CellReader<T>): T | undefined {
    const written = this.cell(column);
    const answer = reader(written);
    if (answer.ok) return answer.value;
    // What can't be read is shown in the message, and a number in the wrong column is not to be shown.
    if (!this.refuseNumber(column, written))
      this.refuse(column, answer.problem, 'hints' in answer ? answer.hints : [answer.hint]);
    return undefined;
  }

  /** Whether the cell holds a taxpayer number, and was refused for it. */
  private refuseNumber(column: Column, written: string): boolean {
    const ending = taxpayerNumberIn(written);
    if (ending === undefined) return false;
    this.diagnostics.push({ ...taxpayerNumberWords(ending), path: this.pathOf(column) });
    return true;
  }

  maybe<T>(column: Column, reader: CellReader<T>): T | undefined {
    return this.cell(column) === '' ? undefined : this.read(column, reader);
  }

  words(column: Column, longest: number, asked?: readonly string[]): string | undefined {
    // The apostrophe before what a spreadsheet would run is no part of the words.
    const written = withoutTurning(asItWas(this.cell(column))).trim();
    if (written === '') {
      if (asked !== undefined) this.refuse(column, `the cell “${column}” of this row is empty`, asked);
      return undefined;
    }
    const isPlain = NOTHING_ODD.test(written);
    const length = isPlain ? written.length : [...written].length;
    if (length > longest) {
      this.refuse(
        column,
        `this cell has ${groupThousands(length)} characters, and ${groupThousands(longest)} at most can stand here`,
        ['say it in a few words, and the rest in a note or a paper of its own'],
      );
      return undefined;
    }
    if (this.refuseNumber(column, written)) return undefined;
    return isPlain ? written : odd(written, (problem, hint) => this.refuse(column, problem, [hint]));
  }

  day(): string | undefined {
    const date = 'date' as Column;
    const written = this.cell(date);
    const day = this.read(date, () => this.readDay(written));
    if (day !== undefined && written.includes('/')) this.days.push({ ...day, row: this.row, written });
    return day?.day;
  }

  /** Many rows share a day. */
  private readDay(written: string): Read<SheetDay> {
    let day = this.known.get(written);
    if (day === undefined) {
      day = readSheetDate(written);
      this.known.set(written, day);
    }
    return day;
  }

  private pathOf(column: Column): FactPath {
    return [this.list, this.row, column.replace(' ', '-')];
  }
}

/** Line breaks of a cell become LF; letters with accents one sign, so that a name is the same on every machine. */
function odd(written: string, refuse: (problem: string, hint: string) => void): string | undefined {
  const text = written.replace(/\r\n?/g, '\n').normalize('NFC');
  const control = /[^\P{Cc}\n\t]/u.exec(text)?.[0];
  if (control === undefined) return text;
  const point = (control.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  refuse(`this cell holds a control character (U+${point}), which is no letter`, 'take it out');
  return undefined;
}
