/**
 * The appraiser's words for how far a kitchen or the bathrooms were updated, and when. The program may sort an
 * owner's list into them as a suggestion with the facts that led to it; the appraiser alone decides, and no
 * condition or quality rating is ever suggested.
 */
import { z } from 'zod';
import { readTable } from '../read-table.js';
import { sourced } from './sourced.js';

const years = z.int().nonnegative();

const table = z.strictObject({
  classes: sourced.extend({
    list: z.tuple([
      z.strictObject({ word: z.literal('not updated'), meaning: z.string().min(1) }),
      z.strictObject({ word: z.literal('updated'), meaning: z.string().min(1) }),
      z.strictObject({ word: z.literal('remodeled'), meaning: z.string().min(1) }),
    ]),
    /** Parts whose replacement counts as a major one. */
    majorParts: z.array(z.string().min(1)),
    /** Changes that count as remodeling whatever was replaced. */
    majorChanges: z.array(z.string().min(1)),
  }),
  timeFrames: sourced.extend({
    /** How many completed years back from the effective date an update is looked for. */
    lookBackYears: years,
    /** The wording for each stretch of completed whole years since the work ended, both ends included. */
    list: z.array(z.strictObject({ words: z.string().min(1), fromYears: years, toYears: years })),
    /** The wording when the date isn't known. */
    unknown: z.string().min(1),
    /** The wording when nothing was done in the years looked back on. */
    nothing: z.string().min(1),
    /** Where the boundaries between the stretches come from. */
    boundaries: z.string().min(1),
  }),
});

/** The words of `updates.yaml`. */
export type UpdateWords = z.infer<typeof table>;

/** Reads `updates.yaml`; throws on a broken table, which is our own mistake. */
export function updateWords(): UpdateWords {
  return readTable('updates', table);
}

/**
 * The wording for work that ended so many completed whole years before the effective date: undefined when that is
 * further back than an appraiser looks, the words for an unknown time when the years aren't known.
 */
export function timeFrameOf(completedYears: number | undefined): string | undefined {
  const { list, unknown } = updateWords().timeFrames;
  if (completedYears === undefined) return unknown;
  return list.find((frame) => frame.fromYears <= completedYears && completedYears <= frame.toYears)?.words;
}
