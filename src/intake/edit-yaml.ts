/**
 * Writes words into a YAML text without touching anything else of it.
 *
 * Takes a text and what to add. Gives the text with it, in which every character of the old one still stands in its
 * order: comments, blank lines, indentation, line ends. Only the two braces of an empty `{}` are taken away, where
 * lines are to stand below its word. What was made is read again and must hold the old facts and the added ones, and
 * nothing else; otherwise it is refused. Start reading at `editYaml`.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { typedInYaml } from '../facts/typed-in-yaml.js';
import { readYaml } from './yaml.js';
import { nodeAt, type YamlNode, type YamlWord, yamlTree } from './yaml-tree.js';

/** A text, a group of texts, or nothing: a word that is to hold a group later. */
type AddedValue = string | Readonly<Record<string, string>> | null;

/** One word to add. */
export interface Addition {
  /** The group it goes into, as written in this text; empty for the top. */
  readonly into: FactPath;
  readonly word: string;
  readonly value: AddedValue;
  /** Words it is to stand behind, if they are there; else it goes to the end. */
  readonly behind?: readonly string[];
  /** It goes to the beginning; behind the first word where a comment stands above that one. */
  readonly first?: true;
  /** Where its own group has a word a line or nothing yet: its words stand on lines. Left out: in brackets. */
  readonly form?: 'lines';
  /** A line of comment at the end of a group in lines, without its sign. */
  readonly remark?: string;
}

/** How an addition stands in the text. */
export interface Put {
  /** Its lines, with the blanks by which the later ones stand in farther than the first; or its part of the brackets. */
  readonly lines: readonly string[];
  /** Its remark is among them; brackets hold none. */
  readonly remarked: boolean;
}

export type Edited =
  /** `put` is in the order of the additions. */
  | { readonly ok: true; readonly text: string; readonly put: readonly Put[] }
  /** `why` as the end of a sentence that begins with the file's name. */
  | { readonly ok: false; readonly why: string };

export function editYaml(text: string, additions: readonly Addition[]): Edited {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  let now = text.slice(mark.length);
  const old = readYaml(now, '');
  if (old.diagnostics.length > 0)
    return { ok: false, why: 'has a mistake in it, which must be mended first' };
  const wanted = structuredClone(old.data) as Record<string, unknown>;
  for (const addition of additions)
    if (!enter(wanted, addition))
      return { ok: false, why: `has “${addition.word}” in that place already, and nothing is written over` };
  const made = addAll(now, additions);
  if (made !== undefined && reads(made.text, wanted))
    return { ok: true, text: mark + made.text, put: additions.flatMap((one) => made.put.get(one) ?? []) };
  // One by one, so that each addition may try its other places.
  let data: Readonly<Record<string, unknown>> = old.data;
  const put: Put[] = [];
  for (const addition of additions) {
    const next = addOne(now, data, addition);
    if (next === undefined) return { ok: false, why: 'is written in a way that this can’t write into' };
    now = next.text;
    data = next.data;
    put.push(next.put);
  }
  return { ok: true, text: mark + now, put };
}

/** An addition as one line, to be typed by hand below the words that `into` names. */
export const lineToType = ({ word, value }: Addition): string => wordAndValue(word, value, false);

/** Text to be put in at a spot. */
interface Splice {
  readonly at: number;
  readonly text: string;
  /** A brace stands there, and goes. */
  readonly takesBrace?: true;
}

/** One place for an addition. */
interface Way extends Put {
  readonly splices: readonly Splice[];
}

const putOf = ({ lines, remarked }: Way): Put => ({ lines, remarked });

/**
 * All of them, each in its best place, with one look at the text for many. What an earlier one must be there for waits
 * for the next look. Undefined where one of them has no place.
 */
function addAll(
  text: string,
  additions: readonly Addition[],
): { readonly text: string; readonly put: ReadonlyMap<Addition, Put> } | undefined {
  const put = new Map<Addition, Put>();
  let now = text;
  let rest = additions;
  while (rest.length > 0) {
    const tree = yamlTree(now);
    if (tree === undefined) return undefined;
    const round = firstRound(now, tree, rest);
    if (round.splices.length === 0) return undefined;
    for (const [addition, way] of round.put) put.set(addition, way);
    now = applySplices(now, round.splices);
    rest = round.rest;
  }
  return { text: now, put };
}

/** As many additions as can be put in without looking at the text in between, and those that can't. */
function firstRound(text: string, tree: YamlNode, additions: readonly Addition[]) {
  const splices: Splice[] = [];
  const rest: Addition[] = [];
  const put = new Map<Addition, Put>();
  /** Groups that are done for this round: a comma or a bracket more changes where the next word goes. */
  const closed = new Set<string>();
  /** The group that a spot is used for. */
  const users = new Map<number, string>();
  for (const addition of additions) {
    const group = JSON.stringify(addition.into);
    const way = closed.has(group) ? undefined : ways(text, tree, addition)[0];
    if (way === undefined || way.splices.some(({ at }) => (users.get(at) ?? group) !== group)) {
      // Those of one group stay in their order.
      closed.add(group);
      rest.push(addition);
      continue;
    }
    splices.push(...way.splices);
    put.set(addition, putOf(way));
    for (const { at } of way.splices) users.set(at, group);
    const node = nodeAt(tree, addition.into);
    if (node === undefined || node.inBrackets || node.empty || addition.first) closed.add(group);
  }
  return { splices: splices.sort((a, b) => a.at - b.at), rest, put };
}

/** Undefined where none of its places reads back right. */
function addOne(
  text: string,
  old: Readonly<Record<string, unknown>>,
  addition: Addition,
):
  | { readonly text: string; readonly data: Readonly<Record<string, unknown>>; readonly put: Put }
  | undefined {
  const tree = yamlTree(text);
  const data = structuredClone(old) as Record<string, unknown>;
  if (tree === undefined || !enter(data, addition)) return undefined;
  const made = ways(text, tree, addition)
    .map((way) => ({ text: applySplices(text, way.splices), data, put: putOf(way) }))
    .find((one) => reads(one.text, data));
  return made;
}

function reads(text: string, wanted: Readonly<Record<string, unknown>>): boolean {
  const { data, diagnostics } = readYaml(text, '');
  return diagnostics.length === 0 && same(data, wanted);
}

/** Puts the addition into the data; false if the word is there already, or has no place to go. */
function enter(root: Record<string, unknown>, { into, word, value }: Addition): boolean {
  let holder: unknown = root;
  for (const [depth, part] of into.entries()) {
    const inner: unknown = Object.hasOwn(holder as object, part)
      ? (holder as Record<string | number, unknown>)[part]
      : undefined;
    // A word without a value becomes the group.
    if (inner === null && depth === into.length - 1) (holder as Record<string | number, unknown>)[part] = {};
    else if (typeof inner !== 'object' || inner === null) return false;
    holder = (holder as Record<string | number, unknown>)[part];
  }
  if (Array.isArray(holder) || Object.hasOwn(holder as object, word)) return false;
  Object.defineProperty(holder as object, word, {
    value: typeof value === 'object' && value !== null ? { ...value } : value,
    enumerable: true,
    configurable: true,
    writable: true,
  });
  return true;
}

/** Places to put it, the best first; the first one that reads back right is taken. */
function ways(text: string, root: YamlNode, addition: Addition): Way[] {
  const { into } = addition;
  const group = nodeAt(root, into);
  if (group === undefined) return [];
  if (group.empty) return intoEmpty(text, root, addition);
  if (group.kind !== 'group') return [];
  if (group.inBrackets)
    return [...insteadOfBraces(text, root, group, addition), intoBrackets(text, group, addition)];
  const [head] = group.words;
  if (head === undefined) return [];
  const indent = indentOf(text, head.start);
  if (indent === undefined) return [];
  const put = written(addition, stepOf(text, group));
  const lines = put.lines.map((line) => indent + line);
  if (goesFirst(text, group, addition)) {
    const above = put.lines.map((line) => `${line}${newLine(text)}${indent}`).join('');
    return [{ ...put, splices: [{ at: head.start, text: above }] }];
  }
  if (into.length === 0) return [{ ...put, splices: atTheEnd(text, lines) }];
  const behind = addition.first === true ? [head.word] : (addition.behind ?? []);
  const preferred = group.words.filter(({ word }) => behind.includes(word)).at(-1);
  return [...(preferred === undefined ? [] : [preferred]), ...[...group.words].reverse()].flatMap((word) => {
    const at = lineBehind(text, word, indent.length);
    return at === undefined ? [] : [{ ...put, splices: [below(text, at, lines)] }];
  });
}

/** A comment right above the first word is about that word, so nothing is put between the two. */
function goesFirst(text: string, { words: [head] }: YamlNode, { first }: Addition): boolean {
  if (first !== true || head === undefined) return false;
  const start = lineStart(text, head.start);
  const alone = /^\s*$/.test(text.slice(start, head.start));
  return !(alone && start > 0 && /^\s*#/.test(text.slice(lineStart(text, start - 1), start)));
}

/** Behind a word that has no value yet. */
function intoEmpty(text: string, root: YamlNode, addition: Addition): Way[] {
  const word = wordAt(root, addition.into);
  if (word === undefined) return [];
  const typed = wordAndValue(addition.word, addition.value, true);
  const splices = [{ at: word.colonEnd, text: ` { ${typed} }` }];
  return [...linesBelow(text, root, word, addition), { lines: [typed], remarked: false, splices }];
}

/** `{}` behind a word makes room for lines below it. A comment behind or between the braces stays. */
function insteadOfBraces(text: string, root: YamlNode, group: YamlNode, addition: Addition): Way[] {
  const word = wordAt(root, addition.into);
  if (word === undefined || group.words.length > 0) return [];
  const braces = [group.start, group.end - 1].map((at): Splice => ({ at, text: '', takesBrace: true }));
  return linesBelow(text, root, word, addition).map((way) => ({
    ...way,
    splices: [...braces, ...way.splices],
  }));
}

const wordAt = (root: YamlNode, path: FactPath): YamlWord | undefined =>
  nodeAt(root, path.slice(0, -1))?.words.find(({ word }) => word === path.at(-1));

/** On lines below a word that holds nothing yet; no way where lines are not wanted or can't stand. */
function linesBelow(text: string, root: YamlNode, word: YamlWord, addition: Addition): Way[] {
  const indent = indentOf(text, word.start);
  const at = lineBehind(text, word, indent?.length ?? 0);
  const holder = nodeAt(root, addition.into.slice(0, -1));
  if (holder?.inBrackets !== false || indent === undefined || at === undefined || addition.form !== 'lines')
    return [];
  const step = '  ';
  const put = written(addition, step);
  const lines = put.lines.map((line) => indent + step + line);
  return [{ ...put, splices: [below(text, at, lines)] }];
}

const below = (text: string, at: number, lines: readonly string[]): Splice => ({
  at,
  text: lines.map((line) => newLine(text) + line).join(''),
});

function intoBrackets(text: string, group: YamlNode, addition: Addition): Way {
  const typed = wordAndValue(addition.word, addition.value, true);
  return { lines: [typed], remarked: false, splices: splicesInBrackets(text, group, addition, typed) };
}

function splicesInBrackets(text: string, group: YamlNode, addition: Addition, typed: string): Splice[] {
  const [head] = group.words;
  const last = group.words.at(-1);
  if (head === undefined || last === undefined) {
    const blank = /\s/.test(text[group.start + 1] ?? '');
    return [{ at: group.start + 1, text: ` ${typed}${blank ? '' : ' '}` }];
  }
  if (goesFirst(text, group, addition)) return [{ at: head.start, text: `${typed}, ` }];
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

/** On lines of its own. */
function written({ word, value, form, remark }: Addition, step: string): Put {
  if (typeof value === 'string' || value === null || form !== 'lines')
    return { lines: [wordAndValue(word, value, false)], remarked: false };
  const lines = [
    `${typedInYaml(word)}:`,
    ...Object.entries(value).map(([key, text]) => `${step}${typedInYaml(key)}: ${typedInYaml(text)}`),
    ...(remark === undefined ? [] : [`${step}# ${remark}`]),
  ];
  return { lines, remarked: remark !== undefined };
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
  splices.reduceRight(
    (now, { at, text: put, takesBrace }) =>
      now.slice(0, at) + put + now.slice(takesBrace === true ? at + 1 : at),
    text,
  );

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
