import type { FactPath } from './fact-path.js';

/** A spot in a file the writer can open. Lines and columns count from 1. */
export interface Place {
  /** As the writer would type it, relative to where they stand. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** How many characters the value takes on that line; at least 1. */
  readonly length: number;
  /** The line as its author typed it. */
  readonly source: string;
}

/**
 * Answers where a fact stands; for an absent fact the nearest line that exists, marked `near`, or, if nothing
 * near it exists, only the file it belongs into. With `word` the place of its word rather than of its value.
 */
export interface PlaceBook {
  find(
    path: FactPath,
    word: boolean,
  ): { readonly place: Place; readonly near: boolean } | { readonly file: string } | undefined;
}

/** Of messages that stand in no file. */
export const NOWHERE: PlaceBook = { find: () => undefined };

/** Asks one book, then the other. */
export const eitherBook = (first: PlaceBook, second: PlaceBook): PlaceBook => ({
  find: (path, word) => first.find(path, word) ?? second.find(path, word),
});

/** The same places, their lines changed before anybody sees them. */
export const withLines = (book: PlaceBook, change: (line: string) => string): PlaceBook => {
  // A long line may hold thousands of spots that are asked for one after the other.
  let last = { line: '', changed: change('') };
  const changed = (line: string): string => {
    if (last.line !== line) last = { line, changed: change(line) };
    return last.changed;
  };
  return {
    find: (path, word) => {
      const found = book.find(path, word);
      return found !== undefined && 'place' in found
        ? { ...found, place: { ...found.place, source: changed(found.place.source) } }
        : found;
    },
  };
};
