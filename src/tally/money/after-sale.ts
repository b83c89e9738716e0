/** Work on a house that is dated after its sale: as a rule a slip in the date, or another house's row. */
import type { Bucket } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { rowsInWords } from '../../facts/row-runs.js';
import { type Books, sumRows } from './books.js';

const WORK: readonly Bucket[] = ['improvement', 'restoration', 'repair'];

/** Of `rows`, those of work after the day of the sale. */
export const afterSale = ({ sale }: Books, rows: readonly CostRow[]): readonly CostRow[] =>
  sale === undefined ? [] : rows.filter(({ bucket, date }) => WORK.includes(bucket) && date > sale.day);

/** What a line says of them; undefined where there are none. */
export function afterSaleNote(books: Books, rows: readonly CostRow[]): string | undefined {
  const late = sumRows(afterSale(books, rows)).rows;
  if (late.length === 0) return undefined;
  return `${rowsInWords(late)} ${late.length === 1 ? 'is' : 'are'} dated after the sale and counted all the same`;
}

/** Remarks in one, undefined where there is none. */
export function joinNotes(...notes: readonly (string | undefined)[]): string | undefined {
  const said = notes.filter((note) => note !== undefined);
  return said.length === 0 ? undefined : said.join('; ');
}
