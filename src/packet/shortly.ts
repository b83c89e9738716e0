/** Letters that a drawing gives to one thing; the text has all of them. */
const LONGEST = 70;

/** A name or a subject short enough for a drawing, cut at a blank where there is one. */
export function shortly(words: string): string {
  if (words.length <= LONGEST) return words;
  const cut = words.slice(0, LONGEST);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), LONGEST / 2)).replace(/[\s,;:]+$/, '')} …`;
}
