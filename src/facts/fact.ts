import { z } from 'zod';
import type { HouseDate } from './date.js';
import { date, id, text } from './field-kinds.js';

/** One value with how it is known. `value` undefined means: said to be not known. */
export interface Fact<T> {
  readonly value: T | undefined;
  /** Who or what says so: "county record", "seller's word". */
  readonly from: string | undefined;
  /** Ids of documents, photos or permits behind it. */
  readonly evidence: readonly string[];
  readonly note: string | undefined;
  /** What was written before a correction, as it was written. */
  readonly was: string | undefined;
  readonly corrected: HouseDate | undefined;
}

const NOT_KNOWN = 'not known';

/** How a thing is known, beside its own words: shared by finishes, systems, work and all else that is stated. */
export const knownBy = {
  from: text('Who or what says so.', 'seller').optional(),
  evidence: z
    .array(id('A document, photo or permit behind it.', 'county-card'))
    .default([])
    .describe('Ids of the papers and photos behind it.'),
  note: text('A remark that is printed with it.', 'asked twice').optional(),
};

/** A fact written short (`built: 1948`) or long (`built: { is: 1948, from: county record }`), or `not known`. */
export function fact<T extends z.ZodType>(inner: T, about: string, example?: string) {
  const value = z.union([z.literal(NOT_KNOWN), inner]);
  const long = z.strictObject({
    is: value.describe('The value, or: not known.'),
    ...knownBy,
    was: z
      .union([text('What stood there.'), z.number()])
      .optional()
      .describe('The value before it was corrected; kept and shown.'),
    corrected: date('When it was corrected.', '2026-05-02').optional(),
  });
  return z
    .union([value, long])
    .transform((written): Fact<z.output<T>> => {
      const body = isLong(written) ? (written as unknown as LongForm) : undefined;
      const is = body === undefined ? written : body.is;
      return {
        value: is === NOT_KNOWN ? undefined : (is as z.output<T>),
        from: body?.from,
        evidence: body?.evidence ?? [],
        note: body?.note,
        was: body?.was === undefined ? undefined : String(body.was),
        corrected: body?.corrected,
      };
    })
    .describe(about)
    .meta({ ...inner.meta(), description: about, fact: true, ...(example === undefined ? {} : { example }) });
}

/** What the long form gives; spelt out, since the schema's own type can't be named inside a generic. */
interface LongForm {
  readonly is: unknown;
  readonly from?: string;
  readonly evidence: readonly string[];
  readonly note?: string;
  readonly was?: string | number;
  readonly corrected?: HouseDate;
}

function isLong(written: unknown): boolean {
  return typeof written === 'object' && written !== null && 'is' in written;
}
