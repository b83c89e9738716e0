/** Signs of a text that nobody sees: of no width, or that only turn the direction of what follows. */

// Soft hyphens, joiners, marks of direction and byte-order marks; those that make one picture of several are meant.
const HIDDEN =
  /[\u00ad\u200b\u200c\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]|(?<!\p{Extended_Pictographic}[\ufe0e\ufe0f\u{1f3fb}-\u{1f3ff}]?)\u200d/gu;
const TURNS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** "3 hidden characters, the first in line 2 behind “new roof”: take them out". Undefined where there is none. */
export function hiddenWords(text: string): string | undefined {
  const found = [...text.matchAll(HIDDEN)];
  const [first] = found;
  if (first === undefined) return undefined;
  const before = text.slice(0, first.index);
  const line = before.split(/\r\n|[\n\r]/).length;
  const near =
    before
      .split(/\r\n|[\n\r]/)
      .at(-1)
      ?.replace(HIDDEN, '')
      .trim()
      .split(/\s+/u)
      .slice(-3)
      .join(' ') ?? '';
  const turns = found.some(([sign]) => TURNS.test(sign)) ? ' (some turn the direction of the words)' : '';
  const where = `in line ${line}${near === '' ? '' : ` behind “${near}”`}`;
  return found.length === 1
    ? `1 hidden character${turns} ${where}: take it out`
    : `${found.length} hidden characters${turns}, the first ${where}: take them out`;
}

/** Where the first of them stands. */
export const firstHidden = (text: string): number | undefined => [...text.matchAll(HIDDEN)][0]?.index;
