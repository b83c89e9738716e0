/**
 * The date of manufacture in a serial number, read by the pattern that the writer gives.
 *
 * There is no table of makers' codes here: a maker's code can change and be wrong. The writer reads the
 * maker's own leaflet and says where the digits stand: `YYWW at 2`, `YYYY at 1, MM at 5`.
 */
import { Temporal } from 'temporal-polyfill';
import { type HouseDate, readDate } from '../facts/date.js';
import { bad, good, type Read } from '../facts/read.js';

const EXAMPLE = 'write letters and where they begin, for example  YYWW at 3  or  YYYY at 1, MM at 5';

/** Two digits that would be one of so many years to come are more likely misread, or ahead of their time. */
const YEARS_TO_COME = 20;

/**
 * `serial` has its characters counted from 1. Two-digit years are the latest such year not after `asOf`; those of the
 * next twenty years are refused, since nobody can tell them from the same ones a hundred years before.
 */
export function readLabel(serial: string, pattern: string, asOf: string): Read<HouseDate> {
  const digits: { year?: string; week?: string; month?: string } = {};
  for (const piece of pattern.split(',')) {
    const match = /^\s*((?:YYYY|YY|WW|MM)+)\s+at\s+(\d{1,2})\s*$/.exec(piece);
    if (match === null) return bad(`“${pattern}” does not say how to read the label`, EXAMPLE);
    let at = Number(match[2]) - 1;
    for (const [letters] of piece.matchAll(/YYYY|YY|WW|MM/g)) {
      const read = serial.slice(at, at + letters.length);
      if (!/^\d+$/.test(read) || read.length < letters.length) {
        return bad(
          `${letters} at ${at + 1} of “${serial}” is “${read}”, and that is no number`,
          'count the characters from 1, letters included, and check the serial number',
        );
      }
      if (letters.startsWith('Y')) digits.year = read;
      else if (letters === 'WW') digits.week = read;
      else digits.month = read;
      at += letters.length;
    }
  }
  if (digits.year === undefined) return bad(`“${pattern}” has no year in it`, EXAMPLE);
  const latest = Number(asOf.slice(0, 4));
  const year = fullYear(digits.year, latest);
  const toCome = year + 100;
  if (digits.year.length === 2 && toCome - latest <= YEARS_TO_COME) {
    return bad(
      `“${digits.year}” in “${serial}” could be ${year}, or ${toCome}, which lies after the day of the packet`,
      `check where the year stands, and write YYYY if the label has all four digits; if it was made in ${year}, write  made: ${year}  and take out  reads:`,
    );
  }
  if (digits.month !== undefined) return readDate(`${year}-${digits.month}`);
  if (digits.week !== undefined) return weekOf(year, Number(digits.week));
  return readDate(String(year));
}

function fullYear(digits: string, latest: number): number {
  if (digits.length === 4) return Number(digits);
  const century = Math.floor(latest / 100) * 100;
  const year = century + Number(digits);
  return year <= latest ? year : year - 100;
}

/** ISO 8601: week 1 is the one with 4 January; it runs from Monday to Sunday. */
function weekOf(year: number, week: number): Read<HouseDate> {
  const fourth = Temporal.PlainDate.from({ year, month: 1, day: 4 });
  const monday = fourth.subtract({ days: fourth.dayOfWeek - 1 }).add({ weeks: week - 1 });
  if (week < 1 || monday.yearOfWeek !== year)
    return bad(`${year} has no week ${week}`, 'check where the week stands in the serial number');
  const sunday = monday.add({ days: 6 });
  const span = readDate(`${monday.toString()}/${sunday.toString()}`);
  return span.ok ? good({ ...span.value, written: `week ${week} of ${year}` }) : span;
}
