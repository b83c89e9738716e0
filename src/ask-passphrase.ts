/** A passphrase is typed where nobody sees it: never a word of the command line, never shown, never kept. */

/** Asks on the terminal. Undefined where nobody sits at one, or the question was broken off with Ctrl+C or Ctrl+D. */
export type AskPassphrase = (question: string) => Promise<string | undefined>;

const KEYS = { enter: ['\r', '\n'], end: ['\u0003', '\u0004'], back: ['\u007f', '\b'], clear: '\u0015' };
const ESCAPE = '\u001b';
/**
 * What a terminal sends for a key that is no letter: arrows, F1, Alt and a letter (ECMA-48, section 5.4, and common
 * practice). One that is cut off in its middle goes on in the next chunk; an escape at the end of a chunk is the key of
 * that name.
 */
const KEY_SEQUENCE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: terminals send them.
  /^\u001b+(?:\[\[?[\x30-\x3f]*[\x20-\x2f]*[\x40-\x5a\x5c-\x7e]|(?<open>\[\[?[\x30-\x3f]*[\x20-\x2f]*$)|O[\x20-\x7e]|[\x20-\x7e])?/u;

/** What was typed, chunk by chunk. */
export class TypedLine {
  private letters: string[] = [];
  /** A sequence of which the end has not come. */
  private open = '';
  /** Behind the key that ended the line: typed ahead, or pasted, for the next question. */
  rest = '';
  /** A key was pressed that no passphrase holds. */
  refused = false;

  /** Whether the line is at its end by `text`; `undefined` says that it goes on. */
  take(text: string): { readonly answer: string | undefined } | undefined {
    this.refused = false;
    let left = this.open + text;
    this.open = '';
    while (left !== '') {
      const sequence = left.startsWith(ESCAPE) ? KEY_SEQUENCE.exec(left) : null;
      if (sequence?.groups?.open !== undefined) {
        this.open = left;
        return undefined;
      }
      const key = sequence?.[0] ?? String.fromCodePoint(left.codePointAt(0) ?? 0);
      left = left.slice(key.length);
      if (KEYS.end.includes(key)) return { answer: undefined };
      if (KEYS.enter.includes(key)) {
        // A pasted line may end with both signs.
        this.rest = key === '\r' && left.startsWith('\n') ? left.slice(1) : left;
        return { answer: this.letters.join('') };
      }
      if (KEYS.back.includes(key)) this.letters.pop();
      else if (key === KEYS.clear) this.letters = [];
      else if (sequence === null && !/\p{Cc}/u.test(key)) this.letters.push(key);
      else this.refused = true;
    }
    return undefined;
  }
}

/** What came behind the Enter of the last question. */
let ahead = '';

export const askPassphrase: AskPassphrase = (question) => {
  const { stdin, stderr } = process;
  if (!stdin.isTTY) return Promise.resolve(undefined);
  return new Promise((resolve) => {
    const line = new TypedLine();
    const take = (text: string): void => {
      const ended = line.take(text);
      // The bell: nothing else may be shown, and a key that does nothing must not be taken for a letter.
      if (line.refused) stderr.write('\u0007');
      if (ended === undefined) return;
      ahead = line.rest;
      stdin.off('data', take);
      stdin.setRawMode(false);
      stdin.pause();
      stderr.write('\n');
      resolve(ended.answer);
    };
    // First the terminal is told to show nothing: whoever types fast must not be seen either.
    stdin.setRawMode(true);
    stderr.write(question);
    stdin.setEncoding('utf8');
    stdin.on('data', take);
    stdin.resume();
    const typed = ahead;
    ahead = '';
    if (typed !== '') take(typed);
  });
};
