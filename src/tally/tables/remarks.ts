/** The words by which listing text is read: things, kinds of things, and what is said of them. Data, no code. */
import { z } from 'zod';
import { readTable } from '../read-table.js';

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/);
const words = z.array(z.string().min(1));
const wordsBy = z.record(id, words);

const things = z.strictObject({
  things: z.array(
    z.strictObject({
      id,
      /** As the report names it. */
      label: z.string(),
      words,
      /** Wider things that it belongs to. */
      is: z.array(id).default([]),
      /** The use of the rooms that it is. */
      room: id.optional(),
      /** The grade of the levels that it is. */
      level: z.enum(['below', 'above']).optional(),
      /** The kind of structure that it is. */
      structure: id.optional(),
      /** Worth a claim by its bare mention. */
      feature: z.boolean().default(false),
    }),
  ),
});

const classes = z.strictObject({
  groups: z.record(
    id,
    z.strictObject({
      /** What it can be said of. */
      of: z.array(id),
      members: z.record(
        id,
        z.strictObject({
          words,
          /** What it is a kind of. */
          is: z.array(id).default([]),
          /** Leaps to the eye: a folder that describes the thing at all would say so. */
          marked: z.boolean().default(false),
          /** The thing that is meant where the word stands alone. */
          head: id.optional(),
        }),
      ),
    }),
  ),
  /** Members that are never held against each other. */
  mixes: z.array(z.tuple([id, id])),
});

const said = z.strictObject({
  newness: wordsBy,
  all: words,
  both: words,
  some: words,
  negation: words,
  hedge: z.strictObject({ about: words, over: words, under: words, nearly: words }),
  maybe: z.strictObject({ ahead: words, behind: words, unlike: words }),
  elsewhere: z.strictObject({ ahead: words, nouns: words }),
  opinion: words,
  who: wordsBy,
  trades: wordsBy,
  permit: words,
  unpermitted: words,
  inspected: words,
  convey: wordsBy,
  conditions: z.array(z.strictObject({ id, words, topic: id })),
  topics: z.record(id, z.string()),
  denials: z.string(),
  places: wordsBy,
  units: wordsBy,
  storeys: wordsBy,
  prepositions: words,
  determiners: words,
  copulas: words,
  verbs: words,
  /** By the word that is meant. */
  abbreviations: z.record(z.string().regex(/^[a-z]+$/), words),
});

export type RemarkThing = z.infer<typeof things>['things'][number];
export type RemarkClasses = z.infer<typeof classes>;
export type RemarkWords = z.infer<typeof said>;

/** The three tables of words, each read once; throws on a broken one, which is our own mistake. */
export const remarkThings = (): readonly RemarkThing[] => readTable('remarks-things', things).things;
export const remarkClasses = (): RemarkClasses => readTable('remarks-classes', classes);
export const remarkWords = (): RemarkWords => readTable('remarks-words', said);
