/**
 * One YAML file: its value, and where each part of it stands.
 *
 * Reads YAML 1.2 core: dates stay text, `no` is a word, `02139` is a number (and is asked about later). The
 * only file that imports the YAML parser for house folders.
 */
import {
  CORE_SCHEMA,
  constructFromEvents,
  EVENT_ID as E,
  getScalarValue,
  parseEvents,
  YAMLException,
} from 'js-yaml';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Place } from '../diagnostics/place.js';
import { explainYamlError } from './explain-yaml-error.js';

export interface YamlFile {
  readonly data: Readonly<Record<string, unknown>>;
  /** Top-level words whose text could not be read. */
  readonly broken: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
  /** Place of a value (or, with `key`, of its word) that stands in this file. */
  readonly placeOf: (path: FactPath, key?: boolean) => Place | undefined;
  /** The characters typed for a value. */
  readonly written: (path: FactPath) => string | undefined;
}

interface Span {
  readonly start: number;
  readonly end: number;
}

/** Deeper than any fact stands. */
const MAX_DEPTH = 40;

export function readYaml(source: string, file: string): YamlFile {
  const text = source.startsWith('\uFEFF') ? source.slice(1) : source;
  const lines = lineIndex(text);
  const place = (span: Span): Place => lines.place(file, span);
  const whole = readBlock(text, file, place);
  if (whole.error === undefined) return finish(text, [whole], [], place);
  // A mistake ends YAML's reading. Read the top-level words one by one, so that the others can still be checked.
  const blocks = topLevelBlocks(text);
  if (blocks.length < 2)
    return finish(
      text,
      [whole],
      blocks.map((block) => block.word),
      place,
    );
  const read = blocks.map((block) => ({ word: block.word, part: readBlock(block.padded, file, place) }));
  return finish(
    text,
    read.map(({ part }) => part),
    read.filter(({ part }) => part.error !== undefined).map(({ word }) => word),
    place,
    read.some(({ part }) => part.error !== undefined) ? undefined : whole.error,
  );
}

interface Part {
  readonly data: Record<string, unknown>;
  readonly values: Map<string, Span>;
  readonly keys: Map<string, Span>;
  readonly diagnostics: readonly Diagnostic[];
  readonly error: Diagnostic | undefined;
}

function readBlock(text: string, file: string, place: (span: Span) => Place): Part {
  const values = new Map<string, Span>();
  const keys = new Map<string, Span>();
  try {
    const events = parseEvents(text, { filename: file, maxDepth: MAX_DEPTH });
    const diagnostics = index(events, text, values, keys, place);
    // Twice-written words and aliases are reported by `index` with both places; the parser must not stop at them.
    const fatal = diagnostics.find((d) => d.code === 'intake.alias' || d.code === 'intake.yaml');
    if (fatal !== undefined) return { data: {}, values, keys, diagnostics: [], error: fatal };
    const documents = constructFromEvents(events, {
      source: text,
      filename: file,
      schema: CORE_SCHEMA,
      json: true,
      maxAliases: 0,
    });
    const data = documents[0];
    if (data === undefined || data === null) return { data: {}, values, keys, diagnostics, error: undefined };
    if (typeof data !== 'object' || Array.isArray(data)) {
      return { data: {}, values, keys, diagnostics, error: notWords(place({ start: 0, end: 1 })) };
    }
    return { data: data as Record<string, unknown>, values, keys, diagnostics, error: undefined };
  } catch (thrown) {
    if (!(thrown instanceof YAMLException)) throw thrown;
    const at = Math.min(thrown.mark?.position ?? 0, Math.max(0, text.length - 1));
    const error = explainYamlError(thrown.reason, place({ start: at, end: at + 1 }));
    return { data: {}, values: new Map(), keys: new Map(), diagnostics: [], error };
  }
}

function notWords(place: Place): Diagnostic {
  return {
    code: 'intake.yaml',
    severity: 'error',
    place,
    message: 'this file does not begin with a word and a colon',
    hints: ['begin with  house:  and put the facts below it, two spaces further in'],
  };
}

function finish(
  text: string,
  parts: readonly Part[],
  broken: readonly string[],
  place: (span: Span) => Place,
  leftover?: Diagnostic,
): YamlFile {
  const values = new Map(parts.flatMap((part) => [...part.values]));
  const keys = new Map(parts.flatMap((part) => [...part.keys]));
  const data: Record<string, unknown> = {};
  for (const part of parts) for (const [word, value] of Object.entries(part.data)) data[word] = value;
  return {
    data,
    broken,
    diagnostics: [
      ...parts.flatMap((part) => [...part.diagnostics, ...(part.error === undefined ? [] : [part.error])]),
      ...(leftover === undefined ? [] : [leftover]),
    ],
    placeOf: (path, key = false) => {
      const span = (key ? keys : values).get(JSON.stringify(path));
      return span === undefined ? undefined : place(span);
    },
    written: (path) => {
      const span = values.get(JSON.stringify(path));
      return span === undefined ? undefined : text.slice(span.start, span.end).trim();
    },
  };
}

type Event = ReturnType<typeof parseEvents>[number];

/** Walks the events beside a path, noting where each value and word stands. */
function index(
  events: readonly Event[],
  text: string,
  values: Map<string, Span>,
  keys: Map<string, Span>,
  place: (span: Span) => Place,
): Diagnostic[] {
  const diagnostics: Diagnostic[] = [];
  let at = 0;

  const spanOf = (event: Event, fallback: Span): Span => {
    if (event.type === E.SCALAR)
      return event.valueStart < 0 ? fallback : quoted(text, event.valueStart, event.valueEnd);
    if (event.type === E.ALIAS) return { start: event.anchorStart - 1, end: event.anchorEnd };
    if (event.type === E.SEQUENCE || event.type === E.MAPPING)
      return event.start < 0 ? fallback : { start: event.start, end: event.start + 1 };
    return fallback;
  };

  const node = (path: FactPath, fallback: Span): void => {
    const event = events[at++];
    if (event === undefined) return;
    const span = spanOf(event, fallback);
    values.set(JSON.stringify(path), span);
    if (event.type === E.ALIAS) {
      diagnostics.push({
        code: 'intake.alias',
        severity: 'error',
        place: place(span),
        message: 'a house folder does not use YAML aliases (*name)',
        hints: ['write the value out, or put the text in quotes if it is meant to begin with *'],
      });
    } else if (event.type === E.SEQUENCE) {
      for (let n = 0; events[at]?.type !== E.POP && at < events.length; n++) node([...path, n], span);
      at++;
    } else if (event.type === E.MAPPING) {
      mapping(path);
      at++;
    }
  };

  const mapping = (path: FactPath): void => {
    const seen = new Map<string, Span>();
    while (at < events.length && events[at]?.type !== E.POP) {
      const event = events[at++];
      if (event === undefined) return;
      if (event.type !== E.SCALAR) {
        diagnostics.push({
          ...notWords(place(spanOf(event, { start: 0, end: 1 }))),
          message: 'a word before a colon must be plain text',
        });
        return;
      }
      const word = getScalarValue(text, event);
      const span = spanOf(event, { start: 0, end: 1 });
      const inner = [...path, word];
      const earlier = seen.get(word);
      if (earlier !== undefined) {
        diagnostics.push({
          code: 'intake.duplicate-word',
          severity: 'error',
          place: place(span),
          message: `“${word}” is written twice; it already stands on line ${place(earlier).line}`,
          hints: ['keep one of the two and take the other out'],
        });
      }
      seen.set(word, span);
      keys.set(JSON.stringify(inner), span);
      node(inner, span);
    }
  };

  if (events[0]?.type === E.DOCUMENT) {
    at = 1;
    if (events[1] !== undefined && events[1].type !== E.POP) node([], { start: 0, end: 1 });
    const second = events.findIndex((event, position) => position > 0 && event.type === E.DOCUMENT);
    if (second > 0) {
      const start = Math.max(0, text.search(/^---\s*$/m));
      diagnostics.push({
        code: 'intake.yaml',
        severity: 'error',
        place: place({ start, end: start + 3 }),
        message: 'a line of three hyphens begins a second document, and only the first would be read',
        hints: ['take the line  ---  out'],
      });
    }
  }
  return diagnostics;
}

/** Takes the quotes of a quoted value into its span, so that what is shown is what was typed. */
function quoted(text: string, start: number, end: number): Span {
  const before = text[start - 1];
  return (before === '"' || before === "'") && text[end] === before
    ? { start: start - 1, end: end + 1 }
    : { start, end };
}

function lineIndex(text: string): { place: (file: string, span: Span) => Place } {
  const starts = [0];
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  return {
    place: (file, span) => {
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((starts[middle] ?? 0) <= span.start) low = middle;
        else high = middle - 1;
      }
      const begin = starts[low] ?? 0;
      const next = starts[low + 1] ?? text.length + 1;
      const source = text.slice(begin, next - 1).replace(/\r$/, '');
      const column = span.start - begin + 1;
      return {
        file,
        line: low + 1,
        column,
        length: Math.max(1, Math.min(span.end - span.start, source.length - column + 1)),
        source,
      };
    },
  };
}

/** The file cut at its top-level words; each block is padded with blank lines, so that places stay right. */
function topLevelBlocks(text: string): { word: string; padded: string }[] {
  const lines = text.split('\n');
  const starts: { word: string; line: number }[] = [];
  lines.forEach((line, number) => {
    const word = /^([A-Za-z][\w-]*):(\s|$)/.exec(line)?.[1];
    if (word !== undefined) starts.push({ word, line: number });
  });
  return starts.map((start, n) => {
    const end = starts[n + 1]?.line ?? lines.length;
    const own = lines.map((line, number) =>
      number >= start.line && number < end ? line : ' '.repeat(line.length),
    );
    return { word: start.word, padded: own.join('\n') };
  });
}
