import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';

/** The lists that a house folder keeps in sheets. */
export const LISTS = ['costs', 'miles', 'hours'] as const;
export type List = (typeof LISTS)[number];

/** A sheet as texts, whatever file it came from. */
export interface SheetRows {
  /** Name of its file in the house folder. */
  readonly name: string;
  /** The file as the writer would type it. */
  readonly file: string;
  /** Every row, blank ones too, as a spreadsheet counts them: the first is row 1. */
  readonly rows: readonly (readonly string[])[];
  /** Where a cell stands; `column` counts from 0, without it the whole row is meant. */
  readonly placeOf: (row: number, column?: number) => Place | undefined;
}

/** No house has as many rows; a sheet with more is another thing. */
export const MOST_ROWS = 200_000;
export const MOST_COLUMNS = 200;
export const MOST_BYTES = 64_000_000;
/** Of a whole sheet. As many rows and columns as there may be would take gigabytes together. */
export const MOST_CELLS = 4_000_000;

/** The path of a message about a list, or a row of it; none of a file that is no list of the house. */
export const aboutList = (list: List | undefined, row?: number): Pick<Diagnostic, 'path'> =>
  list === undefined ? {} : { path: row === undefined ? [list] : [list, row] };

/** A sheet that can't be read at all: whatever rests on its list rests on nothing. */
export const unreadable = (
  list: List | undefined,
  file: string,
  message: string,
  hints: readonly string[],
  code: Diagnostic['code'] = 'intake.sheet',
): Diagnostic => ({
  code,
  severity: 'error',
  ...aboutList(list),
  file,
  message,
  hints,
});
