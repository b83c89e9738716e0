/**
 * A workbook before anything is packed: sheets of typed columns and plain cells.
 *
 * `packet/ledger-workbook.ts` fills it, `archive/write-workbook.ts` makes an XLSX file of it. What a cell means is said
 * once, by its column, so that money stays whole cents until the last step.
 */

/**
 * `text`: as it stands, never run as a formula. `day`: YYYY-MM-DD. `whole`: a count or a year. `cents`, `hundredths`:
 * whole numbers shown with two decimals, as dollars or hours. `thousandths`: shown with three, as miles or dollars a mile.
 */
export type ColumnHolds = 'text' | 'day' | 'whole' | 'cents' | 'hundredths' | 'thousandths';

export interface WorkbookColumn {
  readonly title: string;
  /** In characters of the sheet's own typeface. */
  readonly width: number;
  readonly holds: ColumnHolds;
}

/** Text and days are strings, all else whole numbers; undefined leaves the cell empty. */
export type WorkbookCell = string | number | undefined;

export interface WorkbookSheet {
  /** At most 31 characters, without any of `[]/\:*?`. */
  readonly name: string;
  readonly columns: readonly WorkbookColumn[];
  /** As many cells a row as there are columns. The titles are no row of these. */
  readonly rows: readonly (readonly WorkbookCell[])[];
}

export interface Workbook {
  readonly sheets: readonly WorkbookSheet[];
}
