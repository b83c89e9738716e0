/** Which quote or bracket a reader of YAML still has open at a spot; the parser names only where it gave up. */

interface OpenMark {
  readonly kind: 'quote' | 'bracket';
  /** Where it opens, in characters from the start of the text. */
  readonly start: number;
}

export interface Marks {
  /** The innermost that is open at the spot. */
  readonly open: OpenMark | undefined;
  /** The last quoted value that ended before the spot; `end` is the character behind its closing quote. */
  readonly lastQuoted: { readonly start: number; readonly end: number } | undefined;
}

/** Reads `text` up to `until` the way YAML does, as far as quotes, brackets, comments and block texts go. */
export function marksBefore(text: string, until: number): Marks {
  const brackets: number[] = [];
  let lastQuoted: Marks['lastQuoted'];
  let at = 0;
  while (at < until) {
    const sign = text[at] ?? '';
    if (sign === '#' && /^$|\s/.test(text[at - 1] ?? '')) at = endOfLine(text, at);
    else if ((sign === '"' || sign === "'") && beginsValue(text, at, brackets.length > 0)) {
      const end = endOfQuoted(text, at, until);
      if (end === undefined) return { open: { kind: 'quote', start: at }, lastQuoted };
      lastQuoted = { start: at, end };
      at = end;
    } else if ((sign === '[' || sign === '{') && (brackets.length > 0 || beginsValue(text, at, false))) {
      brackets.push(at++);
    } else if ((sign === ']' || sign === '}') && brackets.length > 0) {
      brackets.pop();
      at++;
    } else if ((sign === '|' || sign === '>') && brackets.length === 0 && beginsValue(text, at, false)) {
      at = endOfBlockText(text, at);
    } else at++;
  }
  const start = brackets.at(-1);
  return { open: start === undefined ? undefined : { kind: 'bracket', start }, lastQuoted };
}

const endOfLine = (text: string, at: number): number => {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
};

/** A mark in the middle of plain text (11'6") is only a character of it. */
function beginsValue(text: string, at: number, inBrackets: boolean): boolean {
  let before = at - 1;
  while (before >= 0 && (text[before] === ' ' || text[before] === '\t')) before--;
  const sign = text[before] ?? '\n';
  if (sign === '\n' || sign === '\r') return true;
  if (inBrackets && /[[{,:]/.test(sign)) return true;
  return /[:\-?]/.test(sign) && before < at - 1 && (sign === ':' || /^$|\s/.test(text[before - 1] ?? ''));
}

function endOfQuoted(text: string, start: number, until: number): number | undefined {
  const quote = text[start];
  for (let at = start + 1; at < until; at++) {
    if (quote === '"' && text[at] === '\\') at++;
    else if (text[at] === quote) {
      if (quote === "'" && text[at + 1] === "'") at++;
      else return at + 1;
    }
  }
  return undefined;
}

/** Behind `|` and `>` everything that is moved in further is text. */
function endOfBlockText(text: string, at: number): number {
  const own = /^ */.exec(text.slice(text.lastIndexOf('\n', at - 1) + 1, at))?.[0].length ?? 0;
  let end = endOfLine(text, at);
  while (end < text.length) {
    const next = endOfLine(text, end + 1);
    const line = text.slice(end + 1, next);
    if (line.trim() !== '' && (/^ */.exec(line)?.[0].length ?? 0) <= own) break;
    end = next;
  }
  return end;
}
