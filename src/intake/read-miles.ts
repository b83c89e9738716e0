/** The rows of a mileage log: one trip each. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Trip } from '../facts/ledger.js';
import { bad, type Read } from '../facts/read.js';
import { readMiles, readSheetAmount } from '../facts/sheet-number.js';
import type { ColumnWords, Headings } from './sheet-headings.js';
import { LONGEST_NAME, LONGEST_NOTE, LONGEST_SENTENCE, readRows } from './sheet-row.js';
import type { SheetRows } from './sheet-rows.js';

export const MILE_COLUMNS = {
  date: { also: ['day', 'trip date'], needed: true },
  from: { also: ['start', 'origin', 'start from'], needed: false },
  to: { also: ['destination', 'where to', 'where'], needed: true },
  purpose: { also: ['why', 'what for', 'business purpose', 'what', 'reason'], needed: true },
  miles: { also: ['distance', 'mi', 'miles driven'], needed: true },
  tolls: { also: ['tolls and parking', 'parking', 'parking and tolls', 'tolls & parking'], needed: false },
  vehicle: { also: ['car', 'truck', 'van'], needed: false },
  note: { also: ['notes', 'remark', 'remarks', 'comment', 'comments'], needed: false },
} as const satisfies Record<string, ColumnWords>;

type MileColumn = keyof typeof MILE_COLUMNS;

export function readTrips(
  sheet: SheetRows,
  headings: Headings<MileColumn>,
): { readonly rows: readonly Trip[]; readonly diagnostics: readonly Diagnostic[] } {
  return readRows('miles', sheet, headings, (row): Trip | undefined => {
    const date = row.day();
    const from = row.words('from', LONGEST_NAME);
    const to = row.words('to', LONGEST_NAME, ['write where the trip went']);
    const purpose = row.words('purpose', LONGEST_SENTENCE, ['write what the trip was for']);
    const thousandths = row.read('miles', readMiles);
    const tolls = row.maybe('tolls', readTolls);
    const vehicle = row.words('vehicle', LONGEST_NAME);
    const note = row.words('note', LONGEST_NOTE);
    if (date === undefined || to === undefined || purpose === undefined || thousandths === undefined)
      return undefined;
    return {
      row: row.row,
      date,
      from,
      to,
      purpose,
      thousandths,
      tolls: tolls ?? 0,
      vehicle,
      ...(note === undefined ? {} : { note }),
    };
  });
}

function readTolls(cell: string): Read<number> {
  const cents = readSheetAmount(cell);
  return cents.ok && cents.value < 0
    ? bad('tolls and parking are never below zero', 'write what was paid, for example 4.50')
    : cents;
}
