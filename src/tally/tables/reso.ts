/**
 * The listing fields that the program writes, as the RESO Data Dictionary names them: their types, the values that
 * a list may hold, and the words of a house folder that settle one.
 *
 * Field and lookup names follow the RESO Data Dictionary, (c) RESO, used under the RESO End User License Agreement;
 * this project is neither certified nor endorsed by RESO.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { readings, whole } from './sourced.js';

const text = z.string().min(1);

const field = z.union([
  z.strictObject({ type: z.literal('boolean') }),
  z.strictObject({
    type: z.literal('number'),
    /** Most digits behind the point. */
    decimals: z.int().min(0),
    /** Most digits. */
    length: whole,
  }),
  /** Most characters. */
  z.strictObject({ type: z.literal('text'), length: whole }),
  /** One value of a lookup, or several. `length`: most characters, of all of them together. */
  z.strictObject({ type: z.enum(['one', 'several']), length: whole, lookup: text }),
]);

const row = z.strictObject({
  says: z.array(text).min(1),
  values: z.array(text),
  /** Values that words of the same text then only describe the look of. */
  imitates: z.array(text).optional(),
});

const table = z.strictObject({
  standard: z.strictObject({
    name: text,
    publisher: text,
    version: text,
    ratified: text,
    source: text,
    address: z.url(),
    licence: text,
    read: z.enum(readings),
    how: text,
  }),
  fields: z.record(text, field),
  lookups: z.record(text, z.array(text).min(1)),
  /** By field, or for the sources of figures: phrases, and the values they settle. */
  words: z.record(text, z.array(row).min(1)),
  fuels: z.record(text, text),
});

/** The table of `reso.yaml`. */
export type ResoTable = z.infer<typeof table>;
export type ResoField = z.infer<typeof field>;
export type ResoWords = z.infer<typeof row>;

/** Reads `reso.yaml`; throws on a broken table, which is our own mistake. */
export function resoTable(): ResoTable {
  return readTable('reso', table);
}
