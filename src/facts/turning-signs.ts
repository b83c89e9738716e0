/**
 * Signs that nobody sees and that change how the words around them look or are read: they turn the direction of what
 * follows, or hide a letter between two. A page is words and figures side by side, and one such sign in an owner's text
 * would turn the figure behind it about. They come with texts that were pasted, so they are left away and not refused.
 */

// Marks, overrides, embeddings and isolates (UAX #9); blanks and joiners of no width; invisible operators; tags, where no
// flag asks for them: a region’s has five and an end. Soft hyphens and the joiners of scripts and emoji belong to the words.
const TURNING =
  /[\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|(?<!\u{1f3f4}[\u{e0020}-\u{e007e}]{0,6})[\u{e0000}-\u{e007f}]/gu;
const SOME = /[\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]/u;

/** The text without them; the two separators of lines and paragraphs are line breaks. */
export const withoutTurning = (text: string): string =>
  SOME.test(text) ? text.replace(/[\u2028\u2029]/gu, '\n').replace(TURNING, '') : text;
