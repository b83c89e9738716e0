/**
 * The search: the same for `sillplate ask` and for the box on the pages, which is why it knows no disk and no page.
 *
 * Takes entries and the table of words, gives those that fit a question in a reader's words, best first. It forgives
 * a slip of the keys and the beginning of a word, and knows that a cellar is a basement. Compiled by itself into the
 * pages' search-engine.js, so it imports little but MiniSearch. Start reading at `openSearch`.
 */

import MiniSearch, { type Query, type SearchResult } from 'minisearch';
import { literally } from '../../facts/literally.js';
import { stemOf as stem } from '../../tally/stem.js';
import type { SearchWords } from '../../tally/tables/search-words.js';

/** Something that can be found: an answered question, one without an answer, or any other statement. */
export interface SearchEntry {
  /** Anchor in the packet. */
  readonly id: string;
  readonly kind: 'question' | 'open' | 'fact';
  /** The question, or what the statement is about. */
  readonly title: string;
  readonly text: string;
  /** How it is known: "Documented · permit, 14 June 2019". Empty where nothing is said of that. */
  readonly known: string;
  /** Title of its section. */
  readonly section: string;
  /** Other words that find it; shown nowhere. */
  readonly words: string;
  /** Ids of the table's questions that it answers. */
  readonly asks?: readonly string[];
}

interface Found<Entry extends SearchEntry> {
  readonly entry: Entry;
  readonly score: number;
}

/** What fits, best first; nothing for an empty question. */
export type Find<Entry extends SearchEntry> = (asked: string) => readonly Found<Entry>[];

/** Answers are what people look for. */
const KIND_WEIGHT = { question: 3, open: 2, fact: 1 } as const;
const FIELD_WEIGHT = { title: 3, words: 1.5, text: 1 } as const;
/** A word that is begun is likelier meant than one that is misspelt. */
const LIKENESS_WEIGHT = { prefix: 0.6, fuzzy: 0.3 } as const;
/** What the form of a question means comes before what merely has its words. */
const MEANT_WEIGHT = 12;
/** Of a word that only stands for the asked one. */
const STAND_IN_WEIGHT = 0.8;
/** In letters: shorter words are too easily another. */
const SHORTEST_FUZZY = 5;
const SHORTEST_PREFIX = 4;
/** A slip in every fifth letter. */
const SLIPS = 0.2;
/** In letters: a shorter word is forgiven one letter left out. */
const SHORTEST_GAPPED = 3;
/** Less than this part of the best is no answer to the same question. */
const WORTH_SHOWING = 0.25;

export function openSearch<Entry extends SearchEntry>(
  entries: readonly Entry[],
  words: SearchWords,
): Find<Entry> {
  const seen = new Set<string>();
  const lexicon = lexiconOf(words, seen);
  const index = new MiniSearch<{ id: number } & Pick<SearchEntry, 'title' | 'text' | 'words'>>({
    fields: ['title', 'words', 'text'],
    // As it is written, too, so that a slip of the keys finds it; a question is looked up in the one form.
    tokenize: (text) => {
      const all = lexicon.spellingsOf(text);
      for (const one of all) seen.add(one);
      return all;
    },
    processTerm: (term) => term,
  });
  index.addAll(entries.map(({ title, text, words: other }, id) => ({ id, title, text, words: other })));
  const turnOf = turnsOf(words);
  return (asked) => {
    const { means, drops } = turnOf(asked);
    const own = [...new Set(lexicon.wordsOf(asked, drops))];
    // “What is original?” names no thing.
    const terms = own.length > 0 ? own : [...new Set(lexicon.wordsOf(asked))];
    if (terms.length === 0) return [];
    const isMeant = (entry: Entry | undefined): boolean =>
      means !== undefined && entry?.asks?.includes(means) === true;
    const found = index.search(queryOf(terms, lexicon), {
      boost: FIELD_WEIGHT,
      weights: LIKENESS_WEIGHT,
      boostDocument: (id) => {
        const entry = entries[id as number];
        return KIND_WEIGHT[entry?.kind ?? 'fact'] * (isMeant(entry) ? MEANT_WEIGHT : 1);
      },
    });
    return ranked(found, terms, lexicon).flatMap(({ id, score }) => {
      const entry = entries[id];
      return entry === undefined ? [] : [{ entry: partOf(entry, terms, lexicon), score }];
    });
  };
}

/** What a question of a certain form means, and which of its words say no more than that. */
function turnsOf({ turns }: SearchWords): (asked: string) => {
  readonly means?: string;
  readonly drops: readonly string[];
} {
  const forms = turns.map(({ asks, ...turn }) => ({ ...turn, form: new RegExp(asks, 'u') }));
  return (asked) => forms.find(({ form }) => form.test(asked.trim().toLowerCase())) ?? { drops: [] };
}

/**
 * Of an answer that lists things one by one, those that were asked for: who did the electrical work is not told with all
 * other trades. The whole answer, where none or nearly all of it fits.
 */
function partOf<Entry extends SearchEntry>(entry: Entry, terms: readonly string[], lexicon: Lexicon): Entry {
  if (!(entry.asks ?? []).some((one) => LISTS.has(one))) return entry;
  const parts = entry.text.split(/(?<=[.;]) (?=[\p{Lu}\p{N}“])/u);
  const told = lexicon.wordsOf(entry.title);
  const wanted = terms.filter((term) => !lexicon.isWeak(term) && !told.includes(term));
  const fitOf = (words: string): number => {
    const said = lexicon.wordsOf(words);
    return wanted.filter((term) => said.includes(term)).length;
  };
  const best = Math.max(...parts.map(fitOf));
  const own = parts.filter((part) => fitOf(part) === best);
  if (best === 0 || own.length * 2 > parts.length) return entry;
  const known = entry.known === '' ? '' : `${entry.known}, of the whole answer`;
  return { ...entry, text: own.map((part) => membersOf(part, fitOf)).join(' '), known };
}

/** "Stays: range; clothes washer; clothes dryer." is "Stays: clothes washer; clothes dryer.", asked for those. */
function membersOf(part: string, fitOf: (words: string) => number): string {
  const [, head = '', list] = /^([^:;]+: )(.+;.+)\.$/u.exec(part) ?? [];
  const members = list?.split('; ').filter((one) => fitOf(one) > 0) ?? [];
  return members.length === 0 ? part : `${head}${members.join('; ')}.`;
}

/** Questions whose answers name one thing after another, each in a sentence. */
const LISTS: ReadonlySet<string> = new Set([
  'known-defects',
  'why-redone',
  'who-by-trade',
  'left-as-found',
  'conveys',
]);

interface Lexicon {
  /** A text's words but those dropped, each in the one form that stands for all its spellings. */
  readonly wordsOf: (text: string, drops?: readonly string[]) => string[];
  /** The same, and each word's own spelling where it is another. */
  readonly spellingsOf: (text: string) => string[];
  readonly alsoOf: (term: string) => readonly string[];
  /** What a short word was meant to be, where it is none by itself: "roof" for "rof". */
  readonly slipsOf: (term: string) => readonly string[];
  /** A train is no drain: what can be found as it is typed is no slip. */
  readonly isMisspelt: (term: string) => boolean;
  readonly isWeak: (term: string) => boolean;
}

/** `seen`: every word of what can be found, filled while it is read. */
function lexiconOf({ phrases, same, also, ignored, weak }: SearchWords, seen: ReadonlySet<string>): Lexicon {
  const first = new Map(
    same.flatMap(([head = '', ...others]) => others.map((one) => [stem(one), stem(head)] as const)),
  );
  const formOf = (word: string): string => first.get(stem(word)) ?? stem(word);
  const unasked = new Set(ignored);
  const feeble = new Set(weak.map(formOf));
  const others = new Map(Object.entries(also).map(([word, list]) => [formOf(word), list.map(formOf)]));
  // The longest first, so that "hot water heater" is not cut behind "hot water".
  const long = Object.entries(phrases).sort(([a], [b]) => b.length - a.length || (a < b ? -1 : 1));
  const rules = long.map(
    ([phrase, word]) =>
      [new RegExp(`(?<![\\p{L}\\p{N}])${literally(phrase)}s?(?![\\p{L}\\p{N}])`, 'gu'), word] as const,
  );
  const cut = (text: string): string[] => {
    const plain = rules.reduce((so, [phrase, word]) => so.replace(phrase, word), text.toLowerCase());
    return (plain.match(/[\p{L}\p{N}]+/gu) ?? []).filter((word) => !unasked.has(word));
  };
  return {
    wordsOf: (text, drops = []) =>
      cut(text)
        .filter((word) => !drops.includes(word))
        // "Teh" and "hwo" say as little as "the" and "how".
        .filter((word) => seen.has(formOf(word)) || !swapsOf(word).some((one) => unasked.has(one)))
        .map(formOf),
    spellingsOf: (text) => cut(text).flatMap((word) => [...new Set([formOf(word), stem(word)])]),
    alsoOf: (term) => others.get(term) ?? [],
    slipsOf: (term) => slipsOf(term, seen),
    isMisspelt: (term) => term.length >= SHORTEST_FUZZY && !seen.has(term),
    isWeak: (term) => feeble.has(term),
  };
}

/** The same letters with two neighbours swapped, each way. */
const swapsOf = (word: string): string[] =>
  [...word]
    .slice(1)
    .map((letter, at) => `${word.slice(0, at)}${letter}${word.charAt(at)}${word.slice(at + 2)}`);

/** Too short for a slip in every fifth letter: with a letter more behind the first, or with two swapped. */
function slipsOf(term: string, seen: ReadonlySet<string>): readonly string[] {
  if (term.length < SHORTEST_GAPPED || term.length >= SHORTEST_FUZZY || seen.has(term)) return [];
  const gapped = [...seen].filter(
    (one) =>
      one.length === term.length + 1 &&
      one[0] === term[0] &&
      [...one].some((_, at) => at > 0 && `${one.slice(0, at)}${one.slice(at + 1)}` === term),
  );
  return [...gapped, ...swapsOf(term).filter((one) => seen.has(one))];
}

/** Each asked word or one that stands for it; the words are in their forms already, so they are looked up as they are. */
function queryOf(terms: readonly string[], lexicon: Lexicon): Query {
  const asItIs = { tokenize: (text: string) => [text] };
  return {
    combineWith: 'OR',
    queries: terms.flatMap((term): Query[] => [
      {
        ...asItIs,
        queries: [term],
        prefix: term.length >= SHORTEST_PREFIX,
        fuzzy: lexicon.isMisspelt(term) ? SLIPS : false,
      },
      ...lexicon
        .alsoOf(term)
        .map((other) => ({ ...asItIs, queries: [other], boostTerm: () => STAND_IN_WEIGHT })),
      ...lexicon
        .slipsOf(term)
        .map((other) => ({ ...asItIs, queries: [other], boostTerm: () => LIKENESS_WEIGHT.fuzzy })),
    ]),
  };
}

/** By how much of the question is met, then by weight; the order of the packet decides between equals. */
function ranked(
  found: readonly SearchResult[],
  terms: readonly string[],
  lexicon: Lexicon,
): { id: number; score: number }[] {
  const strong = terms.filter((term) => !lexicon.isWeak(term));
  const metBy = ({ queryTerms }: SearchResult, term: string): boolean =>
    [term, ...lexicon.alsoOf(term), ...lexicon.slipsOf(term)].some((one) => queryTerms.includes(one));
  // A word that the record has nowhere is what the question is about: "is the property haunted" is not about taxes.
  const isStrange = strong.some(
    (term) => term.length >= SHORTEST_GAPPED && !found.some((one) => metBy(one, term)),
  );
  const scored = found.flatMap((one) => {
    const { id, score } = one;
    const met = (term: string): boolean => metBy(one, term);
    // "How old is the dog?" is not answered by the age of anything else.
    const twice = strong.filter(met).length * 2;
    if (twice < strong.length || (isStrange && twice === strong.length)) return [];
    const share = terms.filter(met).length / terms.length;
    return [{ id: id as number, score: score * share * share }];
  });
  const best = Math.max(0, ...scored.map(({ score }) => score));
  return scored
    .filter(({ score }) => score >= best * WORTH_SHOWING)
    .sort((a, b) => b.score - a.score || a.id - b.id);
}
