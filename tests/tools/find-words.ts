/** Looks for a packet's words in the text that a reader of a file gives back. */
import { normaliseText } from '../../src/print/letters.js';

/** Marks that change how letters join or run, and are no letters: readers drop or keep them as they like. */
const MARKS = /[\p{Cf}\p{Variation_Selector}]/gu;

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** Right-to-left letters stand on paper in the order they were written; readers turn them round as they think best. */
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}]+/gu;
const HAS_RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/** A text as it is compared: one form of each letter, no invisible marks, right-to-left letters in no order. */
export const comparable = (text: string): string =>
  normaliseText(text)
    .normalize('NFKC')
    .replace(MARKS, '')
    .replace(/\u2011/gu, '-')
    .replace(RIGHT_TO_LEFT, (letters) => [...letters].sort().join(''));

/**
 * A pattern for a string as a reader gives it back: any white space for a blank, and a line end where a line may
 * end inside a word (after a hyphen, dash or slash, anywhere in a word too long for a line).
 */
function patternOf(text: string): RegExp {
  const words = comparable(text)
    .split(/[\s\u00A0]+/u)
    .filter((word) => word !== '')
    .map((word) => {
      const parts = [...word].length > 24 ? [...word] : word.split(/(?<=[-–—/])/u);
      return parts.map(escaped).join('\\s*');
    });
  return new RegExp(words.join('\\s+'), 'u');
}

/** Answers whether a text is in the pages that were read, whole or interrupted where a page or a margin cuts in. */
export function finderIn(pages: readonly string[]): (text: string) => boolean {
  const all = comparable(pages.join('\n'));
  const flat = all.replace(/\s+/gu, ' ');
  const dense = withoutBlanks(all);
  return (text) => {
    const wanted = comparable(text).replace(/\s+/gu, ' ').trim();
    if (wanted === '' || flat.includes(wanted)) return true;
    if (patternOf(text).test(all) || isInterruptedIn(dense, withoutBlanks(wanted))) return true;
    return HAS_RIGHT_TO_LEFT.test(text) && isTurnedIn(flat, wanted);
  };
}

/** True where a line with right-to-left words comes back with its words in another order, all of them and close together. */
function isTurnedIn(flat: string, wanted: string): boolean {
  const [first, ...others] = wanted.split(/[\s,:;.]+/u).filter((word) => word !== '');
  if (first === undefined) return false;
  for (let at = flat.indexOf(first); at >= 0; at = flat.indexOf(first, at + 1)) {
    const near = flat.slice(Math.max(0, at - wanted.length), at + wanted.length + first.length);
    if (others.every((word) => near.includes(word))) return true;
  }
  return false;
}

const withoutBlanks = (text: string): string => text.replace(/\s+/gu, '');

/** No text goes on after more foreign signs than a page's foot and head with a mark between them have. */
const LONGEST_INTERRUPTION = 500;
const MOST_INTERRUPTIONS = 6;
/** What stands before and after an interruption can't be there by chance. */
const SURE = 14;

/**
 * True where a text is read in several pieces, none of them lost: the mark in the margin is read after the lines
 * that fitted on the page or beside it, then the rest. Compared without blanks.
 */
function isInterruptedIn(all: string, text: string): boolean {
  if (text.length < 2 * SURE) return false;
  const start = text.slice(0, SURE);
  for (let at = all.indexOf(start); at >= 0; at = all.indexOf(start, at + 1))
    if (goesOn(all, at, text, MOST_INTERRUPTIONS)) return true;
  return false;
}

function goesOn(all: string, at: number, text: string, left: number): boolean {
  let same = 0;
  while (same < text.length && all[at + same] === text[same]) same += 1;
  if (same === text.length) return true;
  if (left === 0) return false;
  // The interruption may begin with the very signs the text goes on with.
  for (let back = 0; back < 4 && same - back >= SURE; back++) {
    const rest = text.slice(same - back);
    const from = at + same - back;
    const window = all.slice(from, from + LONGEST_INTERRUPTION + SURE);
    const next = window.indexOf(rest.slice(0, SURE));
    if (next > 0 && goesOn(all, from + next, rest, left - 1)) return true;
  }
  return false;
}
