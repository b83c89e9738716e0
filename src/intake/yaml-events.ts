/** The parser's events, walked beside a path: where each value and word of a YAML text stands. */
import { EVENT_ID as E, getScalarValue, type parseEvents } from 'js-yaml';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Place } from '../diagnostics/place.js';
import type { Span } from './line-index.js';

type Event = ReturnType<typeof parseEvents>[number];

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

export function walkEvents(events: readonly Event[], text: string, place: (span: Span) => Place): Walked {
  const values = new Map<string, Span>();
  const keys = new Map<string, Span>();
  const diagnostics: Diagnostic[] = [];
  let fatal: Diagnostic | undefined;
  let at = 0;

  const node = (path: FactPath, fallback: Span): void => {
    const event = events[at++];
    if (event === undefined) return;
    const span = spanOf(event, text, fallback);
    const key = JSON.stringify(path);
    values.set(key, span);
    if (event.type === E.ALIAS) fatal ??= alias(place(span));
    else if ('anchorStart' in event && event.anchorStart >= 0)
      diagnostics.push(anchor(path, place({ start: event.anchorStart - 1, end: event.anchorEnd })));
    if (event.type === E.SEQUENCE) {
      for (let n = 0; events[at]?.type !== E.POP && at < events.length; n++) node([...path, n], span);
      at++;
    } else if (event.type === E.MAPPING) {
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
    while (at < events.length && events[at]?.type !== E.POP) {
      const event = events[at++];
      if (event === undefined) return first;
      const span = spanOf(event, text, AT_START);
      if (event.type !== E.SCALAR) {
        fatal ??= { ...notWords(place(span)), message: 'a word before a colon must be plain text' };
        skip(event);
        node([...path, '?'], span);
        continue;
      }
      const word = getScalarValue(text, event);
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
  const skip = (event: Event): void => {
    if (event.type !== E.SEQUENCE && event.type !== E.MAPPING) return;
    for (let depth = 1; depth > 0 && at < events.length; at++) {
      const type = events[at]?.type;
      if (type === E.SEQUENCE || type === E.MAPPING) depth++;
      else if (type === E.POP) depth--;
    }
  };

  if (events[0]?.type === E.DOCUMENT) {
    at = 1;
    if (events[1] !== undefined && events[1].type !== E.POP) node([], AT_START);
    const second = events.findIndex((event, position) => position > 0 && event.type === E.DOCUMENT);
    if (second > 0) diagnostics.push(secondDocument(events[second + 1], text, place));
  }
  return { values, keys, diagnostics, fatal };
}

function spanOf(event: Event, text: string, fallback: Span): Span {
  if (event.type === E.SCALAR)
    return event.valueStart < 0 ? fallback : withQuotes(text, event.valueStart, event.valueEnd);
  if (event.type === E.ALIAS) return { start: event.anchorStart - 1, end: event.anchorEnd };
  if (event.type === E.SEQUENCE || event.type === E.MAPPING)
    return event.start < 0 ? fallback : { start: event.start, end: event.start + 1 };
  return fallback;
}

/** Takes the quotes of a quoted value into its span, so that what is shown is what was typed. */
function withQuotes(text: string, start: number, end: number): Span {
  const before = text[start - 1];
  return (before === '"' || before === "'") && text[end] === before
    ? { start: start - 1, end: end + 1 }
    : { start, end };
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
  return {
    code: 'intake.alias',
    severity: 'error',
    path,
    place,
    message: 'YAML takes a first word that begins with & for a name of its own and drops it',
    hints: ['put the text in quotes if it is meant to begin with &, or take the word out'],
  };
}

function secondDocument(next: Event | undefined, text: string, place: (span: Span) => Place): Diagnostic {
  const content =
    next === undefined ? text.length : spanOf(next, text, { start: text.length, end: text.length }).start;
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
