/** The parts of a YAML text in reading order, walked beside a path: where each value and word stands. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Place } from '../diagnostics/place.js';
import type { Span } from './line-index.js';

/** One part of a YAML text, as the parser meets it; `end` closes what was opened last. */
export interface YamlPart {
  readonly kind: 'document' | 'list' | 'group' | 'scalar' | 'alias' | 'end';
  /** Undefined where nothing was typed: the value of a word that has none. */
  readonly span: Span | undefined;
  /** The name behind &, without the sign. */
  readonly anchor: Span | undefined;
  /** Of a scalar: its text as YAML reads it. */
  readonly text: string;
}

export interface Walked {
  /** By path as JSON. */
  readonly values: ReadonlyMap<string, Span>;
  /** Places of the words before the colons, by path as JSON. */
  readonly keys: ReadonlyMap<string, Span>;
  readonly diagnostics: readonly Diagnostic[];
  /** Something that no value can be made of. */
  readonly fatal: Diagnostic | undefined;
}

const AT_START: Span = { start: 0, end: 1 };

export function walkParts(parts: readonly YamlPart[], text: string, place: (span: Span) => Place): Walked {
  const values = new Map<string, Span>();
  const keys = new Map<string, Span>();
  const diagnostics: Diagnostic[] = [];
  let fatal: Diagnostic | undefined;
  let at = 0;

  const node = (path: FactPath, fallback: Span): void => {
    const part = parts[at++];
    if (part === undefined) return;
    const span = part.span ?? fallback;
    const key = JSON.stringify(path);
    values.set(key, span);
    if (part.kind === 'alias') fatal ??= alias(place(span));
    else if (part.anchor !== undefined)
      diagnostics.push(anchor(path, place({ start: part.anchor.start - 1, end: part.anchor.end })));
    if (part.kind === 'list') {
      for (let n = 0; parts[at]?.kind !== 'end' && at < parts.length; n++) node([...path, n], span);
      at++;
    } else if (part.kind === 'group') {
      const inBlock = text[span.start] !== '{';
      const first = mapping(path);
      // A group without brackets begins with its first word, and that line is what names it.
      if (inBlock && first !== undefined) values.set(key, first);
      at++;
    }
  };

  /** Answers with the span of its first line: word and value. */
  const mapping = (path: FactPath): Span | undefined => {
    const seen = new Map<string, Span>();
    let first: Span | undefined;
    while (at < parts.length && parts[at]?.kind !== 'end') {
      const part = parts[at++];
      if (part === undefined) return first;
      const span = part.span ?? AT_START;
      if (part.kind !== 'scalar') {
        fatal ??= { ...notWords(place(span)), message: 'a word before a colon must be plain text' };
        skip(part);
        node([...path, '?'], span);
        continue;
      }
      const word = part.text;
      const earlier = seen.get(word);
      const inner = [...path, word];
      if (earlier !== undefined) diagnostics.push(writtenTwice(inner, place(span), place(earlier)));
      seen.set(word, span);
      keys.set(JSON.stringify(inner), span);
      node(inner, span);
      first ??= { start: span.start, end: values.get(JSON.stringify(inner))?.end ?? span.end };
    }
    return first;
  };

  /** Leaves out a list or group that stands where a word should. */
  const skip = (part: YamlPart): void => {
    if (part.kind !== 'list' && part.kind !== 'group') return;
    for (let depth = 1; depth > 0 && at < parts.length; at++) {
      const kind = parts[at]?.kind;
      if (kind === 'list' || kind === 'group') depth++;
      else if (kind === 'end') depth--;
    }
  };

  if (parts[0]?.kind === 'document') {
    at = 1;
    if (parts[1] !== undefined && parts[1].kind !== 'end') node([], AT_START);
    const second = parts.findIndex(({ kind }, position) => position > 0 && kind === 'document');
    if (second > 0) diagnostics.push(secondDocument(parts[second + 1], text, place));
  }
  return { values, keys, diagnostics, fatal };
}

export function writtenTwice(path: FactPath, here: Place, earlier: Place): Diagnostic {
  return {
    code: 'intake.duplicate-word',
    severity: 'error',
    path,
    place: here,
    message: `“${path.at(-1)}” is written twice; it already stands on line ${earlier.line}`,
    hints: ['keep one of the two and take the other out'],
  };
}

export function notWords(place: Place): Diagnostic {
  return {
    code: 'intake.yaml',
    severity: 'error',
    place,
    message: 'this file does not begin with a word and a colon',
    hints: ['begin with  house:  and put the facts below it, two spaces further in'],
  };
}

function alias(place: Place): Diagnostic {
  return {
    code: 'intake.alias',
    severity: 'error',
    place,
    message: 'a value that begins with * repeats another one in YAML, and a house folder does not use that',
    hints: ['write the value out, or put the text in quotes if it is meant to begin with *'],
  };
}

function anchor(path: FactPath, place: Place): Diagnostic {
  const rest = place.source.slice(place.column - 1).trim();
  return {
    code: 'intake.alias',
    severity: 'error',
    path,
    place,
    message: 'YAML takes a first word that begins with & for a name of its own and drops it',
    hints: [
      /[,{}[\]]/.test(rest)
        ? 'put the text in quotes if it is meant to begin with &'
        : `put the text in quotes:  ${JSON.stringify(rest)}`,
      'take the word out',
    ],
  };
}

function secondDocument(next: YamlPart | undefined, text: string, place: (span: Span) => Place): Diagnostic {
  const content = next?.span?.start ?? text.length;
  const marks = [...text.matchAll(/^---(?=\s|$)/gm)].map((match) => match.index);
  const start = marks.findLast((mark) => mark > 0 && mark <= content) ?? marks.at(-1) ?? 0;
  return {
    code: 'intake.yaml',
    severity: 'error',
    place: place({ start, end: start + 3 }),
    message: 'a line of three hyphens begins a second document, and only the first would be read',
    hints: ['take the line  ---  out'],
  };
}
