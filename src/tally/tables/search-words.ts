/** How one thing is called by different people: for the search box of the pages and `sillplate ask`. */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { readings } from './sourced.js';

const word = z.string().regex(/^\p{L}+$/u);

const table = z.strictObject({
  read: z.enum(readings),
  /** Several words → the one that they become before a text is cut into words. */
  phrases: z.record(z.string().min(1), word),
  /** Words that count as the first of their row. */
  same: z.array(z.array(word).min(2)),
  /** A word → others that a question with it finds as well. */
  also: z.record(word, z.array(word).min(1)),
  /** Words that say nothing of what is asked. */
  ignored: z.array(word),
  /** Words that count, but by themselves find nothing where others were asked for. */
  weak: z.array(word),
  /** What a question is after, where its words alone don't say so. The first that fits counts. */
  turns: z.array(
    z.strictObject({
      /** A pattern of the question as it was typed, in small letters. */
      asks: z.string().min(1),
      /** Its words that say no more than the pattern does. */
      drops: z.array(word),
      /** The table's question that is meant: its id. Left out: the thing's own facts. */
      means: z.string().min(1).optional(),
    }),
  ),
});

/** The words of `search-words.yaml`. */
export type SearchWords = Omit<z.infer<typeof table>, 'read'>;

/** Reads `search-words.yaml`; throws on a broken table, which is our own mistake. */
export function searchWords(): SearchWords {
  const { read: _read, ...words } = readTable('search-words', table);
  return words;
}
