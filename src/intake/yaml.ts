/**
 * One YAML file: its value, and where each part of it stands.
 *
 * Reads YAML 1.2 core: dates stay text, `no` is a word, `02139` is a number (and is asked about later). The
 * only file that imports the YAML parser for house folders.
 */
import {
  CORE_SCHEMA,
  constructFromEvents,
  EVENT_ID,
  getScalarValue,
  parseEvents,
  YAMLException,
} from 'js-yaml';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Place } from '../diagnostics/place.js';
import { groupThousands } from '../facts/written-number.js';
import { explainYamlError } from './explain-yaml-error.js';
import { lineIndex, type Span } from './line-index.js';
import { notWords, walkParts, writtenTwice, type YamlPart } from './yaml-parts.js';

export interface YamlFile {
  readonly data: Readonly<Record<string, unknown>>;
  /** Top-level words whose text could not be read. */
  readonly broken: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
  /** Place of a value (or, with `key`, of its word) that stands in this file. */
  readonly placeOf: (path: FactPath, key?: boolean) => Place | undefined;
  /** The characters typed for a value; the opening bracket only, of a list or group in brackets. */
  readonly written: (path: FactPath) => string | undefined;
}

/** Deeper than any fact stands. */
const MAX_DEPTH = 40;
/** Words and values of one file: a house with a thousand rooms has fewer. */
const MOST_PARTS = 100_000;
/** More top-level words than any house has; such a file is not read word by word. */
const MOST_WORDS = 200;

export function readYaml(source: string, file: string): YamlFile {
  const text = source.startsWith('\uFEFF') ? source.slice(1) : source;
  const place = lineIndex(text, file);
  const whole = readBlock({ text, start: 0 }, place);
  if (whole.error === undefined) return finish(text, [whole], [], place);
  // A mistake ends YAML's reading. Read the top-level words one by one, so that the others can still be checked.
  if (whole.error.code === 'intake.too-big') return finish(text, [whole], ['*'], place);
  const blocks = topLevelBlocks(text);
  if (blocks.length < 2 || blocks.length > MOST_WORDS) {
    const words = blocks.map((block) => block.word);
    return finish(text, [whole], words.length === 1 ? words : ['*'], place);
  }
  const read = blocks.map((block) => ({
    word: block.word,
    part: ofWord(readBlock(block, place), block.word),
  }));
  const broken = read.filter(({ part }) => part.error !== undefined).map(({ word }) => word);
  const more = [...twice(blocks, place), ...(broken.length > 0 ? [] : [whole.error])];
  return finish(
    text,
    read.map(({ part }) => part),
    broken,
    place,
    more,
  );
}

/** The parts of a text in reading order, for writing into it. Undefined where it is not YAML. */
export function yamlParts(text: string): readonly YamlPart[] | undefined {
  try {
    return parseEvents(text, { maxDepth: MAX_DEPTH }).map((event) => partOf(event, text));
  } catch (thrown) {
    if (!(thrown instanceof YAMLException)) throw thrown;
    return undefined;
  }
}

/** An error that ends the reading of a word is about that word. */
const ofWord = (part: Part, word: string): Part => ({
  ...part,
  error: part.error && { ...part.error, path: [word] },
});

interface Part {
  readonly data: Record<string, unknown>;
  readonly values: ReadonlyMap<string, Span>;
  readonly keys: ReadonlyMap<string, Span>;
  readonly diagnostics: readonly Diagnostic[];
  readonly error: Diagnostic | undefined;
}

/** A part of a file and where it begins. */
interface Block {
  readonly text: string;
  readonly start: number;
}

function readBlock({ text, start }: Block, placeInFile: (span: Span) => Place): Part {
  const place = (span: Span): Place => placeInFile(shifted(span, start));
  const nothing = { data: {}, values: new Map(), keys: new Map(), diagnostics: [] };
  try {
    const events = parseEvents(text, { maxDepth: MAX_DEPTH });
    const over = events[MOST_PARTS];
    if (over !== undefined) return { ...nothing, error: tooMany(place(spanOf(over, text) ?? nowhere(text))) };
    const walked = walkParts(
      events.map((event) => partOf(event, text)),
      text,
      place,
    );
    // The parser would throw on an alias or a group as a word; the walk has said both with their places.
    if (walked.fatal !== undefined) return { ...nothing, error: walked.fatal };
    const documents = constructFromEvents(events, {
      source: text,
      schema: CORE_SCHEMA,
      json: true,
      maxAliases: 0,
    });
    const data = documents[0] ?? {};
    if (typeof data !== 'object' || Array.isArray(data))
      return { ...nothing, error: notWords(place({ start: text.search(/\S/), end: text.search(/\S/) + 1 })) };
    const move = (spans: ReadonlyMap<string, Span>) =>
      start === 0 ? spans : new Map([...spans].map(([key, span]) => [key, shifted(span, start)]));
    return {
      data: data as Record<string, unknown>,
      values: move(walked.values),
      keys: move(walked.keys),
      diagnostics: walked.diagnostics,
      error: undefined,
    };
  } catch (thrown) {
    if (!(thrown instanceof YAMLException)) throw thrown;
    const at = Math.min(thrown.mark?.position ?? 0, Math.max(0, text.length - 1));
    return { ...nothing, error: explainYamlError(thrown.reason, at, text, place) };
  }
}

const nowhere = (text: string): Span => ({ start: Math.max(0, text.length - 1), end: text.length });

const tooMany = (place: Place): Diagnostic => ({
  code: 'intake.too-big',
  severity: 'error',
  place,
  message: `up to here this file has ${groupThousands(MOST_PARTS)} words and values, and the facts of a house have fewer`,
  hints: ['check that it is the right file'],
});

type Event = ReturnType<typeof parseEvents>[number];

const KINDS: Readonly<Record<Event['type'], YamlPart['kind']>> = {
  [EVENT_ID.DOCUMENT]: 'document',
  [EVENT_ID.SEQUENCE]: 'list',
  [EVENT_ID.MAPPING]: 'group',
  [EVENT_ID.SCALAR]: 'scalar',
  [EVENT_ID.ALIAS]: 'alias',
  [EVENT_ID.POP]: 'end',
};

function partOf(event: Event, text: string): YamlPart {
  const hasAnchor = 'anchorStart' in event && event.anchorStart >= 0;
  return {
    kind: KINDS[event.type],
    span: spanOf(event, text),
    anchor: hasAnchor ? { start: event.anchorStart, end: event.anchorEnd } : undefined,
    text: event.type === EVENT_ID.SCALAR ? getScalarValue(text, event) : '',
  };
}

function spanOf(event: Event, text: string): Span | undefined {
  if (event.type === EVENT_ID.SCALAR)
    return event.valueStart < 0 ? undefined : withQuotes(text, event.valueStart, event.valueEnd);
  if (event.type === EVENT_ID.ALIAS) return { start: event.anchorStart - 1, end: event.anchorEnd };
  if (event.type === EVENT_ID.SEQUENCE || event.type === EVENT_ID.MAPPING)
    return event.start < 0 ? undefined : { start: event.start, end: event.start + 1 };
  return undefined;
}

/** Takes the quotes of a quoted value into its span, so that what is shown is what was typed. */
function withQuotes(text: string, start: number, end: number): Span {
  const before = text[start - 1];
  return (before === '"' || before === "'") && text[end] === before
    ? { start: start - 1, end: end + 1 }
    : { start, end };
}

const shifted = (span: Span, by: number): Span => ({ start: span.start + by, end: span.end + by });

function finish(
  text: string,
  parts: readonly Part[],
  broken: readonly string[],
  place: (span: Span) => Place,
  more: readonly Diagnostic[] = [],
): YamlFile {
  const values = new Map(parts.flatMap((part) => [...part.values]));
  const keys = new Map(parts.flatMap((part) => [...part.keys]));
  return {
    // From entries, so that a word like __proto__ stays a word.
    data: Object.fromEntries(parts.flatMap((part) => Object.entries(part.data))),
    broken,
    diagnostics: [
      ...parts.flatMap((part) => [...part.diagnostics, ...(part.error === undefined ? [] : [part.error])]),
      ...more,
    ],
    placeOf: (path, key = false) => {
      const span = (key ? keys : values).get(JSON.stringify(path));
      return span === undefined ? undefined : place(span);
    },
    written: (path) => {
      const key = JSON.stringify(path);
      const span = values.get(key);
      if (span === undefined) return undefined;
      const word = keys.get(key);
      // A word without a value stands in for it: what is behind its colon is a note at most.
      return word !== undefined && word.start === span.start
        ? (/^["']?[ \t]*:[ \t]*([^\n]*)/u.exec(text.slice(word.end))?.[1] ?? '').trim()
        : text.slice(span.start, span.end).trim();
    },
  };
}

interface WordBlock extends Block {
  readonly word: string;
}

/** The file cut at its top-level words. */
function topLevelBlocks(text: string): WordBlock[] {
  const starts = [...text.matchAll(/^([A-Za-z_][\w-]*):(?=\s|$)/gm)].map((match) => ({
    word: match[1] ?? '',
    start: match.index,
  }));
  return starts.map(({ word, start }, n) => ({
    word,
    start,
    text: text.slice(start, starts[n + 1]?.start ?? text.length),
  }));
}

/** A whole file says so itself; one that is read word by word is asked here. */
function twice(blocks: readonly WordBlock[], place: (span: Span) => Place): Diagnostic[] {
  const first = new Map<string, Span>();
  return blocks.flatMap(({ word, start }) => {
    const span = { start, end: start + word.length };
    const earlier = first.get(word);
    if (earlier !== undefined) return [writtenTwice([word], place(span), place(earlier))];
    first.set(word, span);
    return [];
  });
}
