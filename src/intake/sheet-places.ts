/** Where the rows of the sheets stand: `['costs', 14, 'amount']` becomes a file, a line and a column. */
import type { PlaceBook } from '../diagnostics/place.js';
import { type Headings, plainWord } from './sheet-headings.js';
import { LISTS, type List, type SheetRows } from './sheet-rows.js';

/** `fileOf`: the file a list belongs into that is not there. */
export function sheetPlaces(
  sheets: ReadonlyMap<List, SheetRows>,
  headed: ReadonlyMap<List, Headings<string>>,
  fileOf: (list: List) => string,
): PlaceBook {
  return {
    find: ([word, row, column], onWord) => {
      const list = LISTS.find((one) => one === word);
      if (list === undefined) return undefined;
      const sheet = sheets.get(list);
      if (sheet === undefined) return { file: fileOf(list) };
      const headings = headed.get(list);
      const heading = headings?.row ?? 1;
      const at = typeof column === 'string' ? columnOf(headings, column) : undefined;
      const isRow = typeof row === 'number' && !onWord;
      const place = sheet.placeOf(isRow ? row : heading, at);
      // A column that the sheet lacks, or a row behind its end: the nearest there is.
      const near = (column !== undefined && at === undefined) || place === undefined;
      const shown = place ?? sheet.placeOf(heading);
      return shown === undefined ? { file: sheet.file } : { place: shown, near };
    },
  };
}

/** `salesTax`, `sales-tax` and `sales tax` are one column. */
function columnOf(headings: Headings<string> | undefined, column: string): number | undefined {
  const plain = plainWord(column);
  for (const [word, at] of headings?.at ?? []) if (plainWord(word) === plain) return at;
  return undefined;
}
