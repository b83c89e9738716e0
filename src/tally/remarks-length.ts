/**
 * How long a listing text is, as listing services count, and where it could stop. Common practice, no source: blanks
 * around the text don't count, a line break counts as one character, and an accented letter or an emoji as one each
 * for every code point.
 */

export interface RemarksLength {
  /** Code points, after trimming; a line break is one. */
  readonly characters: number;
  readonly words: number;
}

export function remarksLength(text: string): RemarksLength {
  const shown = text.replaceAll(/\r\n?/gu, '\n').trim();
  return {
    characters: [...shown].length,
    words: shown.split(/\s+/u).filter((word) => word !== '').length,
  };
}

export interface RemarksStop {
  /** UTF-16 offset in the text, behind the last sentence that fits. */
  readonly to: number;
  /** Characters up to there, counted as above. */
  readonly characters: number;
}

/** A full stop behind one of these ends no sentence. */
const SHORTENED =
  /(?:^|[^\p{L}])(?:sq|ft|in|st|ave|rd|dr|mr|mrs|ms|no|approx|incl|bldg|apt|hwy|e\.g|i\.e|u\.s)\.$/iu;

/** Where to stop so that the text fits: behind its last whole sentence within `limit`. Undefined: not even one fits. */
export function stopWithin(text: string, limit: number): RemarksStop | undefined {
  const start = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  let best: RemarksStop | undefined;
  let characters = 0;
  for (let at = start; at < end; ) {
    const [character = ''] = text.slice(at, at + 2);
    const next = at + character.length;
    // The line feed of a pair was counted with its carriage return.
    if (!(character === '\n' && text[at - 1] === '\r')) characters += 1;
    if (characters > limit) break;
    if (next === end || endsSentence(text, next)) best = { to: next, characters };
    at = next;
  }
  return best;
}

/** A blank follows, and before it a mark that ends a sentence, perhaps within quotes. */
function endsSentence(text: string, at: number): boolean {
  if (!/\s/u.test(text.charAt(at))) return false;
  const before = text.slice(Math.max(0, at - 12), at);
  return /[.!?…]["”’)]?$/u.test(before) && !SHORTENED.test(before);
}
