import { graphemesOf } from './graphemes.js';

/** Characters, as a reader counts them, that a drawing gives to one thing; the text has all of them. */
const LONGEST = 70;

/**
 * A name or a subject short enough for a drawing: 70 characters at most and a sign that more follows. Cut at the last
 * blank in its second half; where there is none, after 70.
 */
export function shortly(words: string): string {
  // No character is shorter than one unit.
  if (words.length <= LONGEST) return words;
  const characters = graphemesOf(words);
  if (characters.length <= LONGEST) return words;
  const kept = characters.slice(0, LONGEST);
  const blank = kept.lastIndexOf(' ');
  const cut = blank < LONGEST / 2 ? kept : kept.slice(0, blank);
  return `${cut.join('').replace(/[\s,;:]+$/, '')} …`;
}
