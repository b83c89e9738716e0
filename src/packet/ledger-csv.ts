/**
 * The rows of a house as CSV after RFC 4180: with headings, commas and CRLF, in UTF-8 without a mark in front.
 *
 * The headings are those that the program's own reader takes, so a sheet can be carried into another folder. Rows keep
 * the order of the sheet they were read from. No amount is rounded or grouped.
 */
import { stringify } from 'csv-stringify/sync';
import { asInert } from '../facts/inert-text.js';
import { COST_COLUMNS, type CostRow, type HoursRow, type Trip } from '../facts/ledger.js';
import { plainDollars, plainHours, plainMiles } from './ledger-amounts.js';

const MILE_HEADINGS = ['date', 'from', 'to', 'purpose', 'miles', 'tolls', 'vehicle', 'note'];
const HOUR_HEADINGS = ['date', 'who', 'what', 'place', 'hours', 'note'];

/** Amounts in dollars (`-59.02`), days as YYYY-MM-DD; what the sheet does not tell is an empty cell. */
export function costsCsv(costs: readonly CostRow[]): string {
  return csv(COST_COLUMNS, costs, (row) => [
    row.date,
    inertText(row.payee),
    inertText(row.what),
    plainDollars(row.cents),
    row.bucket,
    inertText(row.place),
    row.paid ?? '',
    inertText(row.receipt),
    row.taxYear === undefined ? '' : String(row.taxYear),
    row.salesTax === undefined ? '' : plainDollars(row.salesTax),
    inertText(row.note),
  ]);
}

/** Miles as decimals (`18.4`), tolls and parking in dollars. */
export function milesCsv(trips: readonly Trip[]): string {
  return csv(MILE_HEADINGS, trips, (trip) => [
    trip.date,
    inertText(trip.from),
    inertText(trip.to),
    inertText(trip.purpose),
    plainMiles(trip.thousandths),
    trip.tolls === 0 ? '' : plainDollars(trip.tolls),
    inertText(trip.vehicle),
    inertText(trip.note),
  ]);
}

/** Hours as decimals (`9.5`). */
export function hoursCsv(hours: readonly HoursRow[]): string {
  return csv(HOUR_HEADINGS, hours, (row) => [
    row.date,
    inertText(row.who),
    inertText(row.what),
    inertText(row.place),
    plainHours(row.hundredths),
    inertText(row.note),
  ]);
}

const inertText = (text: string | undefined): string => asInert(text ?? '');

/** Rows that are written in one go: all at once would hold several times what they come to. */
const AT_ONCE = 1000;

function csv<Row>(
  headings: readonly string[],
  rows: readonly Row[],
  cellsOf: (row: Row) => readonly string[],
): string {
  const written = (lines: readonly (readonly string[])[]): string =>
    // Once the end of a record is chosen, a lone CR or LF in a cell is quoted only when asked for.
    stringify(lines as unknown[], { record_delimiter: '\r\n', quote_record_delimiter: true });
  const parts = [written([headings])];
  for (let at = 0; at < rows.length; at += AT_ONCE)
    parts.push(written(rows.slice(at, at + AT_ONCE).map(cellsOf)));
  return parts.join('');
}
