/**
 * Writes words into a YAML text without touching anything else of it.
 *
 * Takes a text and what to add. Gives the text with it, in which every character of the old one still stands in its
 * order: comments, blank lines, indentation, line ends. What was made is read again and must hold the old facts and
 * the added ones, and nothing else; otherwise it is refused. Start reading at `editYaml`.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { typedInYaml } from '../facts/typed-in-yaml.js';
import { readYaml } from './yaml.js';
import { nodeAt, type YamlNode, type YamlWord, yamlTree } from './yaml-tree.js';

/** A text, a group of texts, or nothing: a word that is to hold a group later. */
export type AddedValue = string | Readonly<Record<string, string>> | null;

/** One word to add. */
export interface Addition {
  /** The group it goes into, as written in this text; empty for the top. */
  readonly into: FactPath;
  readonly word: string;
  readonly value: AddedValue;
  /** Words it is to stand behind, if they are there; else it goes to the end. */
  readonly behind?: readonly string[];
  /** It goes to the beginning. */
  readonly first?: true;
  /** How a group is written where its own group has a word a line. Left out: in brackets. */
  readonly form?: 'lines';
  /** A line of comment at the end of a group in lines, without its sign. */
  readonly remark?: string;
}

export type Edited =
  | { readonly ok: true; readonly text: string }
  /** `why` as the end of a sentence that begins with the file's name. */
  | { readonly ok: false; readonly why: string };

export function editYaml(text: string, additions: readonly Addition[]): Edited {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  let now = text.slice(mark.length);
  for (const addition of additions) {
    const next = addOne(now, addition);
    if (typeof next !== 'string') return { ok: false, why: next.why };
    now = next;
  }
  return { ok: true, text: mark + now };
}

/** An addition as one line, to be typed by hand below the words that `into` names. */
export const lineToType = ({ word, value }: Addition): string => wordAndValue(word, value, false);

/** Text to be put in at a spot. */
interface Splice {
  readonly at: number;
  readonly text: string;
}

function addOne(text: string, addition: Addition): string | { readonly why: string } {
  const old = readYaml(text, '');
  if (old.diagnostics.length > 0) return { why: 'has a mistake in it, which must be mended first' };
  const tree = yamlTree(text);
  if (tree === undefined) return { why: 'is written in a way that this can’t write into' };
  const wanted = withAddition(old.data, addition);
  if (wanted === undefined)
    return { why: `has “${addition.word}” in that place already, and nothing is written over` };
  for (const splices of ways(text, tree, addition)) {
    const made = applySplices(text, splices);
    const read = readYaml(made, '');
    if (read.diagnostics.length === 0 && same(read.data, wanted)) return made;
  }
  return { why: 'is written in a way that this can’t write into' };
}

/** The data with the addition in it; undefined if the word is there already, or has no place to go. */
function withAddition(
  data: Readonly<Record<string, unknown>>,
  { into, word, value }: Addition,
): unknown | undefined {
  const root = structuredClone(data) as Record<string, unknown>;
  let holder: unknown = root;
  for (const [depth, part] of into.entries()) {
    const inner: unknown = Object.hasOwn(holder as object, part)
      ? (holder as Record<string | number, unknown>)[part]
      : undefined;
    // A word without a value becomes the group.
    if (inner === null && depth === into.length - 1) (holder as Record<string | number, unknown>)[part] = {};
    else if (typeof inner !== 'object' || inner === null) return undefined;
    holder = (holder as Record<string | number, unknown>)[part];
  }
  if (Array.isArray(holder) || Object.hasOwn(holder as object, word)) return undefined;
  Object.defineProperty(holder as object, word, {
    value: typeof value === 'object' && value !== null ? { ...value } : value,
    enumerable: true,
    configurable: true,
    writable: true,
  });
  return root;
}

/** Places to put it, the best first; the first one that reads back right is taken. */
function ways(text: string, root: YamlNode, addition: Addition): Splice[][] {
  const { into, behind = [], first } = addition;
  const group = nodeAt(root, into);
  if (group === undefined) return [];
  if (group.empty) return intoEmpty(text, root, addition);
  if (group.kind !== 'group') return [];
  if (group.inBrackets) return [intoBrackets(text, group, addition)];
  const [head] = group.words;
  if (head === undefined) return [];
  const indent = indentOf(text, head.start);
  if (indent === undefined) return [];
  const lines = written(addition, indent, stepOf(text, group));
  if (first === true)
    return [
      [
        {
          at: head.start,
          text: lines.map((line) => `${line.trimStart()}${newLine(text)}${indent}`).join(''),
        },
      ],
    ];
  if (into.length === 0) return [atTheEnd(text, lines)];
  const preferred = group.words.filter(({ word }) => behind.includes(word)).at(-1);
  return [...(preferred === undefined ? [] : [preferred]), ...[...group.words].reverse()].flatMap((word) => {
    const at = lineBehind(text, word, indent.length);
    return at === undefined ? [] : [[{ at, text: lines.map((line) => newLine(text) + line).join('') }]];
  });
}

/** Behind a word that has no value yet. */
function intoEmpty(text: string, root: YamlNode, addition: Addition): Splice[][] {
  const { into } = addition;
  const holder = nodeAt(root, into.slice(0, -1));
  const word = holder?.words.find((one) => one.word === into.at(-1));
  if (holder === undefined || word === undefined) return [];
  const brackets = [{ at: word.colonEnd, text: ` { ${wordAndValue(addition.word, addition.value, true)} }` }];
  const indent = indentOf(text, word.start);
  const at = lineBehind(text, word, indent?.length ?? 0);
  if (holder.inBrackets || indent === undefined || at === undefined || addition.form !== 'lines')
    return [brackets];
  const step = '  ';
  const lines = written(addition, indent + step, step);
  return [[{ at, text: lines.map((line) => newLine(text) + line).join('') }], brackets];
}

function intoBrackets(text: string, group: YamlNode, addition: Addition): Splice[] {
  const typed = wordAndValue(addition.word, addition.value, true);
  const [head] = group.words;
  const last = group.words.at(-1);
  if (head === undefined || last === undefined) {
    const blank = /\s/.test(text[group.start + 1] ?? '');
    return [{ at: group.start + 1, text: ` ${typed}${blank ? '' : ' '}` }];
  }
  if (addition.first === true) return [{ at: head.start, text: `${typed}, ` }];
  const { end } = last.value;
  const comma = /^\s*,/.exec(text.slice(end))?.[0].length;
  // Directly behind a colon a comma would be part of the word.
  const sign = last.value.empty ? ' ,' : ',';
  const ownLine = indentOf(text, last.start);
  const lineEnd = endOfLine(text, end);
  const alone = ownLine !== undefined && /^\s*$/.test(text.slice(lineStart(text, last.start), last.start));
  // One word a line, with the bracket on a later line: a line more. A comment behind the last one stays where it is.
  if (alone && lineEnd < group.end - 1)
    return [
      ...(comma === undefined ? [{ at: end, text: sign }] : []),
      { at: lineEnd, text: `${newLine(text)}${ownLine}${typed}${comma === undefined ? '' : ','}` },
    ];
  return [{ at: end + (comma ?? 0), text: comma === undefined ? `${sign} ${typed}` : ` ${typed}` }];
}

/** A top-level word goes to the end of the file, below a blank line; a missing last line end stays missing. */
function atTheEnd(text: string, lines: readonly string[]): Splice[] {
  const nl = newLine(text);
  const block = lines.join(nl);
  const ended = text.endsWith('\n');
  return [{ at: text.length, text: ended ? `${nl}${block}${nl}` : `${nl}${nl}${block}` }];
}

function written({ word, value, form, remark }: Addition, indent: string, step: string): string[] {
  return typeof value === 'string' || value === null || form !== 'lines'
    ? [`${indent}${wordAndValue(word, value, false)}`]
    : inLines(word, value, indent, step, remark);
}

function inLines(
  word: string,
  value: Readonly<Record<string, string>>,
  indent: string,
  step: string,
  remark: string | undefined,
): string[] {
  return [
    `${indent}${typedInYaml(word)}:`,
    ...Object.entries(value).map(
      ([key, text]) => `${indent}${step}${typedInYaml(key)}: ${typedInYaml(text)}`,
    ),
    ...(remark === undefined ? [] : [`${indent}${step}# ${remark}`]),
  ];
}

function wordAndValue(word: string, value: AddedValue, inBrackets: boolean): string {
  const typed = typedInYaml(word, inBrackets);
  if (value === null) return `${typed}:`;
  if (typeof value === 'string') return `${typed}: ${typedInYaml(value, inBrackets)}`;
  return `${typed}: { ${Object.entries(value)
    .map(([key, text]) => wordAndValue(key, text, true))
    .join(', ')} }`;
}

/** How far the entries of a group stand in below their word, as its last entry in lines has it. */
function stepOf(text: string, group: YamlNode): string {
  for (const { start, value } of [...group.words].reverse()) {
    const inner = value.kind === 'group' && !value.inBrackets ? value.words[0] : undefined;
    const [own, below] = [indentOf(text, start), inner && indentOf(text, inner.start)];
    if (own !== undefined && below !== undefined && below.length > own.length)
      return ' '.repeat(below.length - own.length);
  }
  return '  ';
}

/** The blanks that put a line below this spot; undefined with a tab before it, whose width nobody knows. */
function indentOf(text: string, at: number): string | undefined {
  const before = text.slice(lineStart(text, at), at);
  return before.includes('\t') ? undefined : ' '.repeat(before.length);
}

/**
 * The end of the line a word's value ends on, and of the comments that stand below it and farther in than `column`:
 * they belong to it. Undefined if something else follows on the line.
 */
function lineBehind(text: string, { value }: YamlWord, column: number): number | undefined {
  let end = endOfLine(text, value.end);
  if (!/^\s*(?:#.*)?$/.test(text.slice(value.end, end))) return undefined;
  for (;;) {
    const next = /^\r?\n( *)#[^\r\n]*/.exec(text.slice(end));
    if (next === null || (next[1]?.length ?? 0) <= column) return end;
    end = endOfLine(text, end + next[0].length);
  }
}

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** Before the line's end, whichever of the two kinds it is. */
function endOfLine(text: string, at: number): number {
  const next = text.indexOf('\n', at);
  const end = next < 0 ? text.length : next;
  return end > at && text[end - 1] === '\r' ? end - 1 : end;
}

const newLine = (text: string): string => /\r?\n/.exec(text)?.[0] ?? '\n';

/** From the last to the first, so that the spots stay right. */
const applySplices = (text: string, splices: readonly Splice[]): string =>
  splices.reduceRight((now, { at, text: put }) => now.slice(0, at) + put + now.slice(at), text);

/** The same data, whatever the order of words. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b);
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [words, others] = [Object.keys(a), Object.keys(b)];
  return (
    words.length === others.length &&
    words.every(
      (word) =>
        Object.hasOwn(b, word) &&
        same((a as Record<string, unknown>)[word], (b as Record<string, unknown>)[word]),
    )
  );
}
