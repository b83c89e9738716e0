/** The rows of a log of unpaid work: one person's stretch of a day each. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { House } from '../facts/house.js';
import type { HoursRow } from '../facts/ledger.js';
import { readHours } from '../facts/sheet-number.js';
import { placeReader } from './cell-words.js';
import type { ColumnWords, Headings } from './sheet-headings.js';
import { LONGEST_NAME, LONGEST_NOTE, LONGEST_SENTENCE, readRows } from './sheet-row.js';
import type { SheetRows } from './sheet-rows.js';

export const HOUR_COLUMNS = {
  date: { also: ['day'], needed: true },
  who: { also: ['person', 'name', 'by', 'worker'], needed: true },
  what: { also: ['work done', 'description', 'task', 'doing what'], needed: true },
  place: {
    also: ['room', 'system', 'work item', 'work', 'room or work', 'room or system', 'where'],
    needed: false,
  },
  hours: { also: ['hrs', 'time', 'duration', 'hours worked'], needed: true },
  note: { also: ['notes', 'remark', 'remarks', 'comment', 'comments'], needed: false },
} as const satisfies Record<string, ColumnWords>;

type HourColumn = keyof typeof HOUR_COLUMNS;

export function readHoursRows(
  sheet: SheetRows,
  headings: Headings<HourColumn>,
  house: House,
  written: unknown,
): { readonly rows: readonly HoursRow[]; readonly diagnostics: readonly Diagnostic[] } {
  const placeOf = placeReader(house, written);
  return readRows('hours', sheet, headings, (row): HoursRow | undefined => {
    const date = row.day();
    const who = row.words('who', LONGEST_NAME, ['write owner, family or a name']);
    const what = row.words('what', LONGEST_SENTENCE, ['write in a few words what was done']);
    const place = row.maybe('place', placeOf);
    const hundredths = row.read('hours', readHours);
    const note = row.words('note', LONGEST_NOTE);
    if (date === undefined || who === undefined || what === undefined || hundredths === undefined)
      return undefined;
    return {
      row: row.row,
      date,
      who: /^(?:owner|family)$/i.test(who) ? who.toLowerCase() : who,
      what,
      place,
      hundredths,
      ...(note === undefined ? {} : { note }),
    };
  });
}
