/** The heading row of a sheet: which column holds what, in plain words and in any order. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { nearestWord } from '../facts/nearest-word.js';
import { taxpayerNumberIn, taxpayerNumberWords } from '../facts/taxpayer-number.js';
import { type List, MOST_COLUMNS, type SheetRows, unreadable } from './sheet-rows.js';

/** One column a list may have. */
export interface ColumnWords {
  /** Other headings that mean the same. */
  readonly also: readonly string[];
  readonly needed: boolean;
}

export interface Headings<Column extends string> {
  /** Number of the heading row. */
  readonly row: number;
  /** Position of each column that the sheet has, from 0. */
  readonly at: ReadonlyMap<Column, number>;
  /** How many columns the heading row has. */
  readonly width: number;
}

/** Headings and columns are compared without case, blanks and hyphens. */
export const plainWord = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/**
 * `headings` is undefined where the rows below can't be read: no heading row, a needed column missing, a heading
 * twice. `columns`: in the order in which the list writes them.
 */
export function readHeadings<Column extends string>(
  list: List,
  sheet: SheetRows,
  columns: Readonly<Record<Column, ColumnWords>>,
): { readonly headings: Headings<Column> | undefined; readonly diagnostics: readonly Diagnostic[] } {
  const row = sheet.rows.findIndex((cells) => cells.some((cell) => cell.trim() !== '')) + 1;
  if (row === 0) return { headings: undefined, diagnostics: [nothing(list, sheet, columns)] };
  const about: About = { list, sheet, row };
  const cells = sheet.rows[row - 1] ?? [];
  if (cells.length > MOST_COLUMNS)
    return {
      headings: undefined,
      diagnostics: [
        unreadable(
          list,
          sheet.file,
          `${sheet.name} has ${cells.length} columns; a sheet of ${list} has ${Object.keys(columns).length} at most`,
          ['check that it is the right file'],
        ),
      ],
    };
  const known = spellings(columns);
  const at = new Map<Column, number>();
  const diagnostics: Diagnostic[] = [];
  const strangers: number[] = [];
  for (const [index, cell] of cells.entries()) {
    const column = known.get(plainWord(cell));
    const ending = column === undefined ? taxpayerNumberIn(cell) : undefined;
    if (ending !== undefined)
      diagnostics.push({ ...taxpayerNumberWords(ending), ...placed(about, index), path: [list, row] });
    else if (column === undefined) {
      if (cell.trim() !== '' || hasCells(sheet, row, index)) strangers.push(index);
    } else if (at.has(column))
      diagnostics.push(twice(about, index, column, cells[at.get(column) ?? 0] ?? ''));
    else at.set(column, index);
  }
  if (at.size === 0) {
    const lower = sheet.rows
      .slice(row, row + FEW_ROWS)
      .findIndex((below) => below.filter((cell) => known.has(plainWord(cell))).length > 1);
    return {
      headings: undefined,
      diagnostics: [noHeadings(about, columns, lower < 0 ? undefined : row + lower + 1)],
    };
  }
  const missing = names(columns).filter((column) => columns[column].needed && !at.has(column));
  const free = names(columns).filter((column) => !at.has(column));
  // One that was only misspelt is told at its heading, and not as missing as well.
  const meant = new Set<string | undefined>();
  for (const index of strangers) {
    const near = nearestTo(cells[index] ?? '', missing) ?? nearestTo(cells[index] ?? '', free);
    meant.add(near);
    diagnostics.push(notRead(about, index, near, free));
  }
  diagnostics.push(...missing.filter((column) => !meant.has(column)).map((column) => lacks(about, column)));
  const stop = diagnostics.some(({ severity }) => severity === 'error');
  return { headings: stop ? undefined : { row, at, width: cells.length }, diagnostics };
}

/** A title, an address and a blank row or two: what people write above a table. */
const FEW_ROWS = 20;

const names = <Column extends string>(columns: Readonly<Record<Column, ColumnWords>>): Column[] =>
  Object.keys(columns) as Column[];

function spellings<Column extends string>(
  columns: Readonly<Record<Column, ColumnWords>>,
): Map<string, Column> {
  return new Map(
    names(columns).flatMap((column) =>
      [column, ...columns[column].also].map((word): [string, Column] => [plainWord(word), column]),
    ),
  );
}

/** A column without a heading matters only if something stands in it. */
const hasCells = (sheet: SheetRows, row: number, column: number): boolean =>
  sheet.rows.slice(row).some((cells) => (cells[column] ?? '').trim() !== '');

const firstLine = (columns: Readonly<Record<string, ColumnWords>>): string =>
  `the first line is, for example:  ${names(columns).slice(0, 8).join(',')}`;

const nothing = (
  list: List,
  sheet: SheetRows,
  columns: Readonly<Record<string, ColumnWords>>,
): Diagnostic => ({
  code: 'intake.sheet',
  severity: 'note',
  file: sheet.file,
  message: `${sheet.name} holds no ${list}: it is empty`,
  hints: [firstLine(columns)],
});

/** Which heading a message is about, and where it stands. */
interface About {
  readonly list: List;
  readonly sheet: SheetRows;
  /** The heading row. */
  readonly row: number;
}

function placed({ list, sheet, row }: About, column?: number): Pick<Diagnostic, 'path' | 'place' | 'file'> {
  const place = sheet.placeOf(row, column);
  const path = [list, row, ...(column === undefined ? [] : [(sheet.rows[row - 1]?.[column] ?? '').trim()])];
  return { path, ...(place === undefined ? { file: sheet.file } : { place }) };
}

/** `lower`: a row further down that holds the headings. */
const noHeadings = (
  about: About,
  columns: Readonly<Record<string, ColumnWords>>,
  lower: number | undefined,
): Diagnostic => ({
  code: 'intake.sheet',
  severity: 'error',
  ...placed(about),
  message: `this should be the headings of the ${about.list}, and none of its words is one`,
  hints: [
    lower === undefined
      ? firstLine(columns)
      : `the headings are in row ${lower}: take out what stands above it`,
  ],
});

const twice = (about: About, index: number, column: string, first: string): Diagnostic => ({
  code: 'intake.sheet',
  severity: 'error',
  ...placed(about, index),
  message: twiceWords(about, index, column, first.trim()),
  hints: ['keep one of them; take the other one out, or give it another heading'],
});

function twiceWords({ sheet, row }: About, index: number, column: string, first: string): string {
  const written = (sheet.rows[row - 1]?.[index] ?? '').trim();
  return plainWord(written) === plainWord(first)
    ? `two columns are headed ${first}`
    : `“${written}” means the ${column}, and the column “${first}” is that already`;
}

const nearestTo = (heading: string, columns: readonly string[]): string | undefined =>
  nearestWord(heading.trim().slice(0, 60), columns);

/**
 * What a column could be meant as is asked among those that are not there yet. A slip of the hand stops the sheet: what
 * it holds would be missing from every row.
 */
function notRead(about: About, index: number, near: string | undefined, free: readonly string[]): Diagnostic {
  const written = (about.sheet.rows[about.row - 1]?.[index] ?? '').trim();
  const cut = written.length > 60 ? `${written.slice(0, 59)}…` : written;
  const { path, ...spot } = placed(about, index);
  const others = `the columns that are not there yet: ${free.join(', ')}`;
  if (written === '')
    return {
      code: 'intake.sheet',
      severity: 'warning',
      path: [about.list, about.row],
      ...spot,
      message: `column ${columnLetters(index)} has no heading, so what stands in it (first in row ${firstRow(about, index)}) is not read`,
      hints: [`give it one, or take out what stands in it${free.length === 0 ? '' : `; ${others}`}`],
    };
  return {
    code: 'intake.sheet',
    severity: near === undefined ? 'warning' : 'error',
    ...(path === undefined ? {} : { path }),
    ...spot,
    message: `no column is called “${cut}”, so what stands in it is not read`,
    hints:
      near === undefined
        ? [
            free.length === 0
              ? 'all columns that are read are there: take this one out, or leave it for yourself'
              : `if it is one of the columns that are not there yet, call it so: ${free.join(', ')}`,
          ]
        : [
            `write  ${near}  as its heading`,
            'if it is something else, give it a heading less like one of ours',
          ],
  };
}

/** As a spreadsheet calls it: A, B, … Z, AA. `index` counts from 0. */
function columnLetters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : columnLetters(Math.floor(index / 26) - 1) + last;
}

const firstRow = ({ sheet, row }: About, column: number): number =>
  sheet.rows.findIndex((cells, at) => at >= row && (cells[column] ?? '').trim() !== '') + 1;

const lacks = (about: About, column: string): Diagnostic => ({
  code: 'intake.sheet',
  severity: 'error',
  ...placed(about),
  message: `the ${about.list} have no column headed ${column}`,
  hints: [`head the column that holds it  ${column}`, `add a column with the heading  ${column}`],
});
