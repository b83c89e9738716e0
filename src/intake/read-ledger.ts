/**
 * The sheets of a house folder become its ledger: what was paid, driven and worked, row by row.
 *
 * Takes the folder and the checked house. Gives the rows, where their cells stand, and the documents' files. Never
 * adds up, moves a payment to another bucket, or mends a cell in silence. Start reading at `readLedger`.
 */
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place, PlaceBook } from '../diagnostics/place.js';
import type { House } from '../facts/house.js';
import type { Ledger } from '../facts/ledger.js';
import { findPaperFiles } from './paper-files.js';
import { COST_HEADINGS, readCosts } from './read-costs.js';
import { HOUR_COLUMNS, readHoursRows } from './read-hours.js';
import { MILE_COLUMNS, readTrips } from './read-miles.js';
import { findSheets } from './sheet-file.js';
import { type ColumnWords, type Headings, readHeadings } from './sheet-headings.js';
import { sheetPlaces } from './sheet-places.js';
import type { List, SheetRows } from './sheet-rows.js';

/**
 * `shown` is the folder as the writer would type it, with forward slashes; `written` what the house was checked from:
 * rows may name what was cut away there for an error of its own.
 */
export async function readLedger(
  folder: string,
  shown: string,
  house: House,
  written: unknown = house,
): Promise<{ ledger: Ledger; diagnostics: readonly Diagnostic[]; places: PlaceBook }> {
  const found = await findSheets(folder, shown);
  const papers = await findPaperFiles(folder, house);
  // Never pushed as arguments: a sheet can have a hundred thousand, and a call can’t.
  let diagnostics: readonly Diagnostic[] = found.diagnostics;
  const headed = new Map<List, Headings<string>>();

  const rowsOf = <Column extends string, Row>(
    list: List,
    columns: Readonly<Record<Column, ColumnWords>>,
    read: (
      sheet: SheetRows,
      headings: Headings<Column>,
    ) => { rows: readonly Row[]; diagnostics: readonly Diagnostic[] },
  ): readonly Row[] => {
    const sheet = found.sheets.get(list);
    if (sheet === undefined) return [];
    const { headings, diagnostics: aboutHeadings } = readHeadings(list, sheet, columns);
    diagnostics = [...diagnostics, ...aboutHeadings];
    if (headings === undefined) return [];
    headed.set(list, headings);
    const { rows, diagnostics: aboutRows } = read(sheet, headings);
    diagnostics = [...diagnostics, ...aboutRows];
    return rows;
  };

  const ledger: Ledger = {
    costs: rowsOf('costs', COST_HEADINGS, (sheet, headings) => readCosts(sheet, headings, house, written)),
    trips: rowsOf('miles', MILE_COLUMNS, readTrips),
    hours: rowsOf('hours', HOUR_COLUMNS, (sheet, headings) => readHoursRows(sheet, headings, house, written)),
    sheets: {
      costs: found.sheets.get('costs')?.name,
      miles: found.sheets.get('miles')?.name,
      hours: found.sheets.get('hours')?.name,
    },
    papers: papers.papers,
  };
  const fileOf = (list: List): string => path.posix.join(shown, `${list}.csv`);
  const places = sheetPlaces(found.sheets, headed, fileOf);
  return {
    ledger,
    diagnostics: [...oncePerCell(diagnostics, found.diagnostics, places), ...papers.diagnostics],
    places,
  };
}

/** A cell of which its file already says what is wrong (a failed formula reads as empty) is not called empty as well. */
function oncePerCell(
  all: readonly Diagnostic[],
  ofFiles: readonly Diagnostic[],
  places: PlaceBook,
): readonly Diagnostic[] {
  const spot = ({ file, line, column }: Place): string => `${line}:${column} ${file}`;
  const told = new Set(ofFiles.flatMap(({ place }) => (place === undefined ? [] : [spot(place)])));
  if (told.size === 0) return all;
  return all.filter(({ place, path: of }) => {
    const at = place === undefined && of !== undefined ? places.find(of, false) : undefined;
    return at === undefined || !('place' in at) || at.near || !told.has(spot(at.place));
  });
}
