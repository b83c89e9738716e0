/** The size of a rectangle in plan: `11'6" x 12'`. */
import { type Length, printInches, printLength, readLength } from './length.js';
import { bad, good, type Read } from './read.js';
import { LONGEST_TEXT } from './written-number.js';

/** Two lengths at right angles. */
export interface Size {
  /** East to west: the first one written. */
  readonly width: Length;
  /** North to south: the second one written. */
  readonly depth: Length;
  /** The text as its author wrote it, without blanks around it. */
  readonly written: string;
}

const EXAMPLE = `write width (east to west) x depth (north to south), for example 11'6" x 12'`;

/**
 * Reads a size: two lengths with `x`, `×` or `by` between them, width (east–west) first.
 *
 * Refuses one length or three, and whatever {@link readLength} refuses; the problem names the side.
 */
export function readSize(text: string): Read<Size> {
  const written = text.trim();
  if (written === '') return bad('there is no size', EXAMPLE);
  if (written.length > LONGEST_TEXT) return bad('this is too long for a size', EXAMPLE);
  const sides = written.split(/\s*(?:[x×*]|\bby\b)\s*/i);
  const [first = '', second] = sides;
  if (second === undefined) return bad('a size has two lengths, and here is one', EXAMPLE);
  if (sides.length > 2) return bad(`a size has two lengths, and here are ${sides.length}`, EXAMPLE);
  const width = readLength(first);
  if (!width.ok) return bad(`the width: ${width.problem}`, width.hint);
  const depth = readLength(second);
  if (!depth.ok) return bad(`the depth: ${depth.problem}`, depth.hint);
  return good({ width: width.value, depth: depth.value, written });
}

/** Prints a size, each side in the unit it was read in: `11′ 6″ × 12′ 0″`. */
export function printSize(size: Size): string {
  return `${printLength(size.width)} × ${printLength(size.depth)}`;
}

/** The size of a product: planks and tiles are sold in inches, however long (`7″ × 48″`); metric stays metric. */
export function printProductSize(size: Size): string {
  const print = (length: Length): string =>
    length.reading === 'metric' ? printLength(length) : printInches(length.units);
  return `${print(size.width)} × ${print(size.depth)}`;
}
