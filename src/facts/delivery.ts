/**
 * What is written of a delivery: to whom which packet was given, and when. The words of `delivery.yaml`, which the
 * program writes once and never again.
 */
import { z } from 'zod';
import { readDate } from './date.js';

/** Characters of a recipient and of a note, and recipients of one delivery. */
const LONGEST = { name: 200, note: 2000, names: 50 } as const;

/** No control characters: it is printed in terminals and in the house file. */
const words = (longest: number, shape = /^(?=.*\S)[^\p{Cc}]+$/u) =>
  z.string().min(1).max(longest).regex(shape);
const day = z.string().refine((text) => {
  const read = readDate(text);
  return read.ok && read.value.precision === 'day' && read.value.written === text;
});
/** Name of a delivery's folder: day, edition, the beginning of the digest, and a number where there is one already. */
export const DELIVERY_NAME = /^\d{4}-\d{2}-\d{2}-[a-z]{2,20}-[0-9a-f]{8}(?:-[1-9]\d{0,4})?$/u;

const schema = z.strictObject({
  /** Running number within the house: of two on one day it tells which came later. */
  number: z.int().min(1).max(99_999),
  to: z.array(words(LONGEST.name)).min(1).max(LONGEST.names),
  house: z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/u),
  edition: z.string().regex(/^[a-z]{2,20}$/u),
  title: words(LONGEST.name),
  /** Day that ages were counted to. */
  'as-of': day,
  /** Day it was handed over. */
  given: day,
  /** At the foot of its sheets. */
  digest: z.string().regex(/^[0-9a-f]{4}(?: [0-9a-f]{4}){2}$/u),
  program: z.string().regex(/^sillplate [\w.+-]{1,40}$/u),
  /** File name of the PDF. */
  pdf: z.string().regex(/^[a-z0-9][a-z0-9-]{0,200}\.pdf$/u),
  /** Folder of an earlier delivery that holds the PDF and the pages, byte for byte the same. */
  'same-as': z.string().regex(DELIVERY_NAME).optional(),
  /** SHA-256 of that folder's manifest. */
  'same-manifest': z
    .string()
    .regex(/^[0-9a-f]{64}$/u)
    .optional(),
  note: words(LONGEST.note, /^[^\p{Cc}\n]*(?:\n[^\p{Cc}]*)*$/u).optional(),
});

export type DeliveryRecord = z.infer<typeof schema>;

/** The record of a delivery, or the word that keeps it from being one. */
export function readDeliveryRecord(
  data: unknown,
): { readonly record: DeliveryRecord } | { readonly word: string } {
  const read = schema.safeParse(data);
  if (read.success) {
    const { data: record } = read;
    return (record['same-as'] === undefined) === (record['same-manifest'] === undefined)
      ? { record }
      : { word: 'same-manifest' };
  }
  const [issue] = read.error.issues;
  const word = issue?.code === 'unrecognized_keys' ? issue.keys[0] : issue?.path[0];
  return { word: String(word ?? 'number') };
}

/** Whether one recipient or note can be written down; of what is typed. */
export const isDeliveryName = (text: string): boolean => words(LONGEST.name).safeParse(text).success;
export const isDeliveryNote = (text: string): boolean => schema.shape.note.safeParse(text).success;
export const MOST_RECIPIENTS = LONGEST.names;

const HEAD = `# Written when this packet was given, and never changed since: it tells what was so on that day.
# To see what has changed in the facts, type  sillplate deliveries
`;

/** The record as text, in one order. Texts are quoted as JSON does it, which is YAML as well. */
export function printDeliveryRecord(record: DeliveryRecord): string {
  const line = (word: keyof DeliveryRecord): string[] => {
    const value = record[word];
    if (value === undefined) return [];
    if (Array.isArray(value)) return [`${word}:`, ...value.map((one) => `  - ${JSON.stringify(one)}`)];
    return [`${word}: ${PLAIN.includes(word) ? String(value) : JSON.stringify(value)}`];
  };
  return `${HEAD}${ORDER.flatMap(line).join('\n')}\n`;
}

const ORDER: readonly (keyof DeliveryRecord)[] = [
  'number',
  'to',
  'given',
  'house',
  'edition',
  'title',
  'as-of',
  'digest',
  'pdf',
  'program',
  'same-as',
  'same-manifest',
  'note',
];

/** Nothing in them can be read in another way. */
const PLAIN: readonly string[] = ['number', 'given', 'house', 'edition', 'as-of', 'pdf', 'same-as'];

/** Whether two recipients are one: capitals, the form of an apostrophe and the number of blanks make no difference. */
export const recipientKey = (name: string): string =>
  name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[’‘ʼ`]/gu, "'")
    .replace(/\s+/gu, ' ')
    .trim();
