/** The parts of a YAML text as a tree, with where each value begins and ends: what is needed to write between them. */
import type { FactPath } from '../diagnostics/fact-path.js';
import { yamlParts } from './yaml.js';
import type { YamlPart } from './yaml-parts.js';

export interface YamlNode {
  readonly kind: 'value' | 'list' | 'group';
  /** In brackets, or nothing but a value. */
  readonly inBrackets: boolean;
  /** Nothing was typed behind the word. */
  readonly empty: boolean;
  readonly start: number;
  /** The character behind it, without blanks or comments. */
  readonly end: number;
  readonly words: readonly YamlWord[];
  readonly items: readonly YamlNode[];
}

/** A word of a group, and its value. */
export interface YamlWord {
  readonly word: string;
  readonly start: number;
  /** Behind its colon. */
  readonly colonEnd: number;
  readonly value: YamlNode;
}

/** Undefined where the text is not YAML, or holds what this can't place. */
export function yamlTree(text: string): YamlNode | undefined {
  const parts = yamlParts(text);
  if (parts?.[0]?.kind !== 'document') return undefined;
  let at = 1;

  /** `fallback`: where an empty value would begin. */
  const node = (fallback: number): YamlNode | undefined => {
    const part = parts[at++];
    if (part === undefined || part.kind === 'alias') return undefined;
    const { span } = part;
    const base = { inBrackets: false, empty: span === undefined, words: [], items: [] };
    if (part.kind === 'scalar') {
      const start = span?.start ?? fallback;
      // A block text ends with its last line, not with the blank ones behind it.
      const end = span === undefined ? fallback : Math.max(start, trimmedEnd(text, span.end));
      return { ...base, kind: 'value', start, end };
    }
    const start = span?.start ?? fallback;
    const inBrackets = text[start] === '{' || text[start] === '[';
    if (part.kind === 'list') {
      const items = itemsOf(start + 1);
      if (items === undefined) return undefined;
      const end = inBrackets ? closing(text, items.at(-1)?.end ?? start + 1, ']') : items.at(-1)?.end;
      return end === undefined ? undefined : { ...base, kind: 'list', inBrackets, start, end, items };
    }
    const words = wordsOf();
    if (words === undefined) return undefined;
    const end = inBrackets
      ? closing(text, words.at(-1)?.value.end ?? start + 1, '}')
      : words.at(-1)?.value.end;
    return end === undefined ? undefined : { ...base, kind: 'group', inBrackets, start, end, words };
  };

  const itemsOf = (fallback: number): YamlNode[] | undefined => {
    const items: YamlNode[] = [];
    while (at < parts.length && parts[at]?.kind !== 'end') {
      const item = node(items.at(-1)?.end ?? fallback);
      if (item === undefined) return undefined;
      items.push(item);
    }
    at++;
    return items;
  };

  const wordsOf = (): YamlWord[] | undefined => {
    const words: YamlWord[] = [];
    while (at < parts.length && parts[at]?.kind !== 'end') {
      const key: YamlPart | undefined = parts[at++];
      if (key?.kind !== 'scalar' || key.span === undefined) return undefined;
      const colon = /^\s*:/.exec(text.slice(key.span.end));
      const colonEnd = key.span.end + (colon?.[0].length ?? 0);
      const value = colon === null ? undefined : node(colonEnd);
      if (value === undefined) return undefined;
      words.push({ word: key.text, start: key.span.start, colonEnd, value });
    }
    at++;
    return words;
  };

  return parts[1]?.kind === 'group' ? node(0) : undefined;
}

export function nodeAt(root: YamlNode, path: FactPath): YamlNode | undefined {
  let node: YamlNode | undefined = root;
  for (const part of path) {
    node =
      typeof part === 'number' ? node?.items[part] : node?.words.find(({ word }) => word === part)?.value;
  }
  return node;
}

const trimmedEnd = (text: string, end: number): number => text.slice(0, end).trimEnd().length;

/** Behind the bracket that closes what ended at `from`; undefined where something else stands there. */
function closing(text: string, from: number, bracket: ']' | '}'): number | undefined {
  const between = /^(?:\s|,|(?<=\s)#[^\n]*)*/.exec(text.slice(from))?.[0].length ?? 0;
  return text[from + between] === bracket ? from + between + 1 : undefined;
}
