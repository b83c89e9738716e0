/**
 * Patterns of phrases, made into one tree of words, and the places where they stand in a text.
 *
 * The tree is walked from each word of the text and is only as deep as the longest pattern, so a text takes time in
 * proportion to its length, whatever it says. How a pattern is written stands in `tables/advertising.yaml`.
 */
import { type AdvertisingWord, wordsInAdvertisement } from './advertising-words.js';
import { entryOf } from './read-table.js';
import { stemOf } from './stem.js';

export interface PhraseTree<Row> {
  readonly root: Node<Row>;
  readonly groups: ReadonlyMap<string, WordSet>;
}

/** Words of a group: in an exact form, or by their stem. Those of several words are patterns of their own. */
interface WordSet {
  readonly exact: ReadonlySet<string>;
  readonly stems: ReadonlySet<string>;
}

interface Node<Row> {
  readonly next: Map<string, Node<Row>>;
  readonly rows: Row[];
}

export interface Hit<Row> {
  readonly row: Row;
  /** Positions among the words, the last one included. */
  readonly first: number;
  readonly last: number;
}

/** Symbols on the way from node to node: `=exact`, `~stem`, `{group}`, `*` any word, `,` a comma. */
type Symbols = readonly string[];

const node = <Row>(): Node<Row> => ({ next: new Map(), rows: [] });

/** Throws where a pattern can't be read or names no group: the table is ours. */
export function plantPhrases<Row>(
  groups: Readonly<Record<string, readonly string[]>>,
  rows: readonly { readonly row: Row; readonly patterns: readonly string[] }[],
): PhraseTree<Row> {
  const entries = Object.fromEntries(
    Object.entries(groups).map(([name, list]) => [name, list.map((entry) => symbolsOf(entry))]),
  );
  const sets = new Map(Object.entries(entries).map(([name, list]) => [name, wordSetOf(list)]));
  const root = node<Row>();
  for (const { row, patterns } of rows) {
    for (const pattern of patterns) {
      for (const symbols of sequencesOf(pattern, entries)) {
        let here = root;
        for (const symbol of symbols) {
          const there = here.next.get(symbol) ?? node<Row>();
          here.next.set(symbol, there);
          here = there;
        }
        if (!here.rows.includes(row)) here.rows.push(row);
      }
    }
  }
  return { root, groups: sets };
}

export const wordSetOf = (entries: readonly Symbols[]): WordSet => {
  const single = entries.filter((symbols) => symbols.length === 1).map(([symbol = '']) => symbol);
  const starting = (sign: string): Set<string> =>
    new Set(single.filter((symbol) => symbol.startsWith(sign)).map((symbol) => symbol.slice(1)));
  return { exact: starting('='), stems: starting('~') };
};

export const isIn = ({ exact, stems }: WordSet, { word, stem }: AdvertisingWord): boolean =>
  exact.has(word) || stems.has(stem);

/** "=jews" stays in that form; any other word is known by its stem. */
export const symbolsOf = (words: string): Symbols =>
  words
    .trim()
    .split(/[\s_]+/u)
    .flatMap((written) => {
      if (written.startsWith('=')) return [`=${written.slice(1)}`];
      const plain = wordsInAdvertisement(written).map(({ word }) => `~${stemOf(word)}`);
      if (plain.length === 0) throw new Error(`“${words}” in the table of advertising words has no word`);
      return plain;
    });

const ELEMENT = /\[([^\]]*)\](\?)?|\{([^}]*)\}(\?)?|,\??|\*|[^\s[\]{},*]+/gu;

/** Every way in which a pattern can be read, as a row of symbols. */
function sequencesOf(pattern: string, entries: Readonly<Record<string, readonly Symbols[]>>): Symbols[] {
  const inGroup = (name: string): Symbols[] => {
    const several = entryOf(entries, name, 'advertising').filter((symbols) => symbols.length > 1);
    return [[`{${name}}`], ...several];
  };
  let all: Symbols[] = [[]];
  for (const [whole, choices, choiceLeft, group, groupLeft] of pattern.matchAll(ELEMENT)) {
    const ways: Symbols[] =
      choices !== undefined
        ? choices.split('|').map(symbolsOf)
        : group !== undefined
          ? inGroup(group)
          : whole === '*'
            ? [['*']]
            : whole.startsWith(',')
              ? [[',']]
              : [symbolsOf(whole)];
    const optional = choiceLeft === '?' || groupLeft === '?' || whole === ',?';
    all = all.flatMap((before) => [...(optional ? [before] : []), ...ways.map((way) => [...before, ...way])]);
  }
  return all;
}

/** Every place where a phrase of the tree stands. */
export function findPhrases<Row>(
  tree: PhraseTree<Row>,
  words: readonly AdvertisingWord[],
): readonly Hit<Row>[] {
  const memberOf = groupsByWord(tree.groups);
  const symbols = words.map((word) => symbolsFor(word, memberOf));
  const hits: Hit<Row>[] = [];
  for (const first of symbols.keys()) {
    let here: readonly Node<Row>[] = [tree.root];
    for (let at = first; here.length > 0; at++) {
      const own = symbols[at];
      if (own === undefined) break;
      const there: Node<Row>[] = [];
      for (const one of here)
        for (const symbol of own) {
          const next = one.next.get(symbol);
          if (next !== undefined) there.push(next);
        }
      for (const one of there) for (const row of one.rows) hits.push({ row, first, last: at });
      here = there;
    }
  }
  return hits;
}

type Members = ReadonlyMap<string, readonly string[]>;
const known = new WeakMap<ReadonlyMap<string, WordSet>, Members>();

/** Word → the groups it is in, told once for a tree. */
function groupsByWord(groups: ReadonlyMap<string, WordSet>): Members {
  const earlier = known.get(groups);
  if (earlier !== undefined) return earlier;
  const members = new Map<string, string[]>();
  for (const [name, { exact, stems }] of groups) {
    const keys = [...[...exact].map((word) => `=${word}`), ...[...stems].map((stem) => `~${stem}`)];
    for (const key of keys) members.set(key, [...(members.get(key) ?? []), `{${name}}`]);
  }
  known.set(groups, members);
  return members;
}

function symbolsFor({ word, stem }: AdvertisingWord, members: Members): string[] {
  if (word === ',' || word === '.') return [word];
  const [exact, byStem] = [`=${word}`, `~${stem}`];
  return [exact, byStem, '*', ...new Set([...(members.get(exact) ?? []), ...(members.get(byStem) ?? [])])];
}
