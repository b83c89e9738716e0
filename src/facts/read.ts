/**
 * How every reader of the facts room answers: with a value, or with what is wrong and what to type instead.
 *
 * Readers never throw for a text that someone wrote, and never repair it in silence.
 */

/** A reader's answer. */
export type Read<T> =
  | {
      readonly ok: true;
      /** What the text means. */
      readonly value: T;
    }
  | {
      readonly ok: false;
      /** What is so, in plain words: "there is no month 13". */
      readonly problem: string;
      /** What to type, with an example: "write year-month-day, for example 2019-03-01". */
      readonly hint: string;
    };

/** The answer for a text that could be read. */
export const good = <T>(value: T): Read<T> => ({ ok: true, value });

/** The answer for a text that could not be read: what is so, and what to type. */
export const bad = (problem: string, hint: string): Read<never> => ({ ok: false, problem, hint });
