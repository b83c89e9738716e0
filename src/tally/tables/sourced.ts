/** The shape that every rule of the tables beside this file has: a rule in our own words, and where it is from. */
import { z } from 'zod';

const text = z.string().min(1);

/**
 * How closely a rule was read: in its publisher's own text, quoted at length by someone else (a copy that is not the
 * publisher's is such a quotation), paraphrased by someone else, or not at all. A rule or figure from memory says so wherever it is printed.
 */
export const readings = ['publisher', 'quoted', 'paraphrased', 'from memory'] as const;

/** A row's source and reading, without its figures. */
export const sourced = z.strictObject({
  /** The rule in our own words. */
  rule: text,
  source: z.strictObject({
    title: text,
    section: text,
    /** The edition, year or date the section number belongs to. */
    edition: text,
    publisher: text,
    /** Where the publisher's text, or an official copy, can be read. */
    address: z.url().optional(),
  }),
  read: z.enum(readings),
  /** Where and how it was read, in a sentence. */
  how: text,
  /** Names of the figures that were not read, although the rest was. */
  remembered: z.array(text).default([]),
});

/** A row with figures of its own, each named with its unit, and the sentence to print beside whatever it says. */
export const rule = <Figures extends z.ZodRawShape>(figures: Figures) =>
  sourced.extend({ figures: z.strictObject(figures), caution: text });

/** A whole number above zero, in the unit its name ends with. */
export const whole = z.int().positive();
