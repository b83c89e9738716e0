/** Words in an advertisement for a house, and the rules behind them. A phrase's pattern is explained in the table. */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { sourced, whole } from './sourced.js';

const text = z.string().min(1);
const RULES = ['F01', 'F02', 'F03', 'F04', 'F05', 'F06', 'F07', 'F08', 'F09', 'F10'] as const;

/** Words, or a group of them. */
const words = z.array(z.union([z.string(), z.number().transform(String), z.strictObject({ group: text })]));

const rule = sourced.extend({
  /** The rule's own words, as the copy that was read has them; short. */ quoted: text,
});

const phrase = z.strictObject({
  level: z.enum(['fine', 'warn', 'block']),
  rule: z.enum(RULES),
  reason: text,
  /** `read in …`, `from memory …` or `house rule`. */
  status: z.string().regex(/^(read in |from memory|house rule)/),
  /** Not when one of these follows. */
  'unless-before': words.default([]),
  /** Not when one of these stands before. */
  'unless-after': words.default([]),
  /** Not when the word before is tied to it by a hyphen: sand-colored. */
  'unless-joined': z.boolean().default(false),
  /** A catchword stands unless the nearest telling word around it names a part of the property. */
  'decided-by': z.strictObject({ people: words, property: words }).optional(),
  say: z.array(text).min(1),
});

const expected = z.enum(['ok', 'warn', 'block']);

const table = z.strictObject({
  rules: z.record(z.enum(RULES), rule),
  new: z.strictObject({
    months: whole,
    'no-date': expected,
    'older-than-limit': expected,
    'repaired-or-refinished': expected,
    status: text,
    example: z.array(
      z.strictObject({
        phrase: text,
        installed: z.string().optional(),
        listed: z.string().optional(),
        work: z.string().optional(),
        expected,
      }),
    ),
  }),
  groups: z.record(z.string(), z.array(text).min(1)),
  reasons: z.record(z.string(), z.strictObject({ because: text, instead: text.optional() })),
  phrases: z.array(phrase),
});

export type AdvertisingTable = z.infer<typeof table>;
export type AdvertisingPhrase = AdvertisingTable['phrases'][number];
export type AdvertisingRuleId = (typeof RULES)[number];

/** Reads `advertising.yaml`; throws on a broken table, which is our own mistake. */
export function advertisingTable(): AdvertisingTable {
  return readTable('advertising', table);
}
