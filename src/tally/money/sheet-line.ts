/** Lines of worksheets, written short. */
import { BUCKETS, type Bucket } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { type Books, rowsIn, sumRows } from './books.js';
import type { RuleId } from './money-rules.js';
import type { SheetFact, SheetLine } from './money-tally.js';

interface LineWords {
  readonly rules: readonly RuleId[];
  readonly facts?: readonly SheetFact[];
  readonly formLine?: string;
  readonly note?: string | undefined;
}

export const rowsLine = (
  id: string,
  label: string,
  rows: readonly CostRow[],
  words: LineWords,
): SheetLine => {
  const { cents, rows: numbers } = sumRows(rows);
  return { ...figureLine(id, label, cents, words), rows: numbers };
};

/** A line that rests on facts or on lines above it, not on rows. */
export const figureLine = (
  id: string,
  label: string,
  cents: number | undefined,
  { rules, facts = [], formLine, note }: LineWords,
): SheetLine => ({
  id,
  label,
  ...(formLine === undefined ? {} : { formLine }),
  cents,
  rows: [],
  facts,
  rules,
  weight: 'normal',
  ...(note === undefined ? {} : { note }),
});

export const totalLine = (
  id: string,
  label: string,
  cents: number | undefined,
  words: LineWords,
): SheetLine => ({ ...figureLine(id, label, cents, words), weight: 'total' });

/** A bucket's line; none where the bucket has no rows. */
export function bucketLine(books: Books, bucket: Bucket, words: LineWords): SheetLine[] {
  const rows = rowsIn(books, bucket);
  return rows.length === 0 ? [] : [rowsLine(bucket, BUCKETS[bucket].title, rows, words)];
}

/** Adds lines up; a line that can't be told counts as nothing, and its note says so. */
export const sumLines = (lines: readonly SheetLine[]): number =>
  lines.reduce((sum, line) => sum + (line.cents ?? 0), 0);
