/**
 * The rows of a house as CSV after RFC 4180: with headings, commas and CRLF, in UTF-8 without a mark in front.
 *
 * The headings are those that the program's own reader takes, so a sheet can be carried into another folder. Rows keep
 * the order of the sheet they were read from. No amount is rounded or grouped.
 */
import { stringify } from 'csv-stringify/sync';
import type { CostRow, HoursRow, Trip } from '../facts/ledger.js';
import { plainDollars, plainHours, plainMiles } from './ledger-amounts.js';

const COST_HEADINGS = [
  'date',
  'payee',
  'what',
  'amount',
  'bucket',
  'place',
  'paid',
  'receipt',
  'tax year',
  'sales tax',
  'note',
];
const MILE_HEADINGS = ['date', 'from', 'to', 'purpose', 'miles', 'tolls', 'vehicle'];
const HOUR_HEADINGS = ['date', 'who', 'what', 'place', 'hours'];

/** Amounts in dollars (`-59.02`), days as YYYY-MM-DD; what the sheet does not tell is an empty cell. */
export function costsCsv(costs: readonly CostRow[]): string {
  return csv(
    COST_HEADINGS,
    costs.map((row) => [
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
    ]),
  );
}

/** Miles as decimals (`18.4`), tolls and parking in dollars. */
export function milesCsv(trips: readonly Trip[]): string {
  return csv(
    MILE_HEADINGS,
    trips.map((trip) => [
      trip.date,
      inertText(trip.from),
      inertText(trip.to),
      inertText(trip.purpose),
      plainMiles(trip.thousandths),
      trip.tolls === 0 ? '' : plainDollars(trip.tolls),
      inertText(trip.vehicle),
    ]),
  );
}

/** Hours as decimals (`9.5`). */
export function hoursCsv(hours: readonly HoursRow[]): string {
  return csv(
    HOUR_HEADINGS,
    hours.map((row) => [
      row.date,
      inertText(row.who),
      inertText(row.what),
      inertText(row.place),
      plainHours(row.hundredths),
    ]),
  );
}

/**
 * A spreadsheet runs a cell that begins so as a formula, also the wide signs; the apostrophe before it makes it text.
 * Amounts begin with a hyphen as well, and stay numbers.
 */
const RUNS = /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;

function inertText(text: string | undefined): string {
  if (text === undefined) return '';
  return RUNS.test(text) ? `'${text}` : text;
}

function csv(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  // Once the end of a record is chosen, a lone CR or LF in a cell is quoted only when asked for.
  return stringify([headings, ...rows] as unknown[], {
    record_delimiter: '\r\n',
    quote_record_delimiter: true,
  });
}
