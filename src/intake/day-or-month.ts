/**
 * Dates with slashes, over a whole sheet. 3/4/2026 is read month first, as in the United States, and said so; a date
 * of the same sheet that can only be meant day first makes all of them doubtful.
 */
import type { Diagnostic, Severity } from '../diagnostics/diagnostic.js';
import { dayWords } from '../facts/date-moment.js';
import type { SheetDay } from '../facts/sheet-date.js';
import type { List } from './sheet-rows.js';

/** The day of one row that was written with slashes. */
export interface RowDay extends SheetDay {
  readonly row: number;
  readonly written: string;
}

export interface JudgedDays {
  readonly diagnostics: readonly Diagnostic[];
  /** Rows whose day is not known. */
  readonly refused: ReadonlySet<number>;
}

export function judgeDays(list: List, days: readonly RowDay[]): JudgedDays {
  const first = days[0];
  if (first === undefined) return { diagnostics: [], refused: new Set() };
  const say = (severity: Severity, row: number, message: string, ...hints: string[]): Diagnostic => ({
    code: 'intake.day-or-month',
    severity,
    path: [list, row, 'date'],
    message,
    hints,
  });
  const dayFirst = days.find(({ order }) => order === 'day-first');
  const either = days.filter(({ order }) => order === 'either');
  if (dayFirst !== undefined) {
    const doubtful = days.filter(({ order }) => order === 'day-first' || order === 'either');
    return {
      refused: new Set(doubtful.map(({ row }) => row)),
      diagnostics: doubtful.map(({ row, written, day, other }) =>
        other === undefined
          ? say(
              'error',
              row,
              `${written} begins with the day, and dates with slashes are read month first`,
              `write ${day}`,
            )
          : say(
              'error',
              row,
              `${written} may be ${dayWords(day)} or ${dayWords(other)}: row ${dayFirst.row}, ${dayFirst.written}, begins with the day`,
              `write ${day} or ${other}`,
            ),
      ),
    };
  }
  const proof = days.find(({ order }) => order === 'month-first');
  if (proof === undefined && either.length > 0)
    return {
      refused: new Set(),
      diagnostics: either.map(({ row, day, other }) =>
        say(
          'warning',
          row,
          'this date fits month first and day first, and no date of the sheet tells which; it is read month first',
          `to leave no doubt, write year-month-day: here ${day}, or ${other} if the day comes first`,
        ),
      ),
    };
  const shown = proof ?? first;
  return {
    refused: new Set(),
    diagnostics: [
      say(
        'note',
        shown.row,
        `dates with slashes are read month first: ${shown.written} is ${dayWords(shown.day)}`,
        `to leave no doubt, write year-month-day: ${shown.day}`,
      ),
    ],
  };
}
