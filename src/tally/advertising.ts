/**
 * The words of an advertisement held against fair-housing rules and guidance.
 *
 * Takes a text. Gives each phrase that a rule forbids or warns of, with its exact place, why, what to say instead and
 * the rule in its own words. Never says that a text is lawful: states and towns have rules of their own, and the
 * guidance is none. Phrases, their groups and their sources are data: `tables/advertising.yaml`.
 */
import {
  findPhrases,
  type Hit,
  isIn,
  type PhraseTree,
  plantPhrases,
  symbolsOf,
  wordSetOf,
} from './advertising-patterns.js';
import { type AdvertisingWord, holdsUnseen, wordsInAdvertisement } from './advertising-words.js';
import { entryOf } from './read-table.js';
import { type AdvertisingPhrase, type AdvertisingRuleId, advertisingTable } from './tables/advertising.js';

export interface AdvertisingRule {
  /** `F01` to `F10`. */
  readonly id: AdvertisingRuleId;
  /** The rule in our own words. */
  readonly says: string;
  /** The rule's words, short, as the copy that was read has them. */
  readonly quoted: string;
  readonly title: string;
  readonly section: string;
  readonly publisher: string;
  /** `read in …`, `from memory …` or `house rule`. */
  readonly status: string;
}

export interface AdvertisingFinding {
  /** UTF-16 offsets in the text. */
  readonly from: number;
  readonly to: number;
  /** block: a rule or its guidance names it as a violation. warn: doubtful. */
  readonly level: 'block' | 'warn';
  /** As they stand in the text. */
  readonly words: string;
  /** Why, in our own words. */
  readonly because: string;
  /** What to say: the property, not the people. */
  readonly instead?: string | undefined;
  readonly rule: AdvertisingRule;
}

/** What is to be said of a text's words, in the order of the text; no two overlap. */
export function checkAdvertising(text: string): readonly AdvertisingFinding[] {
  const found = readOnce(text, wordsInAdvertisement(text));
  const again = holdsUnseen(text) ? readOnce(text, wordsInAdvertisement(text, 'gap')) : [];
  return apart([...found, ...again]);
}

/** Where the guidance stands, for the head or foot of a report. */
export const advertisingStanding = (): AdvertisingRule => advertisingRule('F07');

/** How long after the day it was put in something may be called new, on the day of the listing. */
export const newWordRule = (): { readonly months: number } => ({ months: advertisingTable().new.months });

/** A rule as it is quoted; `status` is a phrase's own, where it was read otherwise than the rule. */
export function advertisingRule(id: AdvertisingRuleId, status?: string): AdvertisingRule {
  const { rule, quoted, source, read, how } = advertisingTable().rules[id];
  return {
    id,
    says: rule,
    quoted,
    title: source.title,
    section: source.section,
    publisher: source.publisher,
    status:
      status ?? (read === 'from memory' ? 'from memory' : how.replace(/^Read/u, 'read').replace(/\.$/u, '')),
  };
}

/** Words around a catchword that are looked at, on each side. */
const AHEAD = 4;
const BEHIND = 4;

interface Row {
  readonly phrase: AdvertisingPhrase;
  readonly before: WordSet;
  readonly after: WordSet;
  readonly people: WordSet;
  readonly property: WordSet;
}
type WordSet = ReturnType<typeof wordSetOf>;

let planted: PhraseTree<Row> | undefined;

/** Planted once: the table never changes while the program runs. */
function tree(): PhraseTree<Row> {
  if (planted !== undefined) return planted;
  const { groups, phrases } = advertisingTable();
  const setOf = (words: AdvertisingPhrase['unless-before']): WordSet =>
    wordSetOf(
      words
        .flatMap((one) => (typeof one === 'string' ? [one] : entryOf(groups, one.group, 'advertising')))
        .map(symbolsOf),
    );
  planted = plantPhrases(
    groups,
    phrases.map((phrase) => ({
      row: {
        phrase,
        before: setOf(phrase['unless-before']),
        after: setOf(phrase['unless-after']),
        people: setOf(phrase['decided-by']?.people ?? []),
        property: setOf(phrase['decided-by']?.property ?? []),
      },
      patterns: phrase.say,
    })),
  );
  return planted;
}

function readOnce(text: string, words: readonly AdvertisingWord[]): AdvertisingFinding[] {
  const hits = findPhrases(tree(), words);
  const fine = fineAt(hits, words.length);
  return hits
    .filter((hit) => hit.row.phrase.level !== 'fine' && stands(hit, words) && !isFine(hit, fine))
    .map((hit) => findingOf(text, words, hit));
}

/** For each word, the fine phrase that it is part of. */
function fineAt(hits: readonly Hit<Row>[], length: number): readonly (Hit<Row> | undefined)[] {
  const at = new Array<Hit<Row> | undefined>(length).fill(undefined);
  for (const hit of hits)
    if (hit.row.phrase.level === 'fine') for (let i = hit.first; i <= hit.last; i++) at[i] = hit;
  return at;
}

/** A phrase that shares a word with a fine one falls, unless it holds the whole of it and more. */
function isFine({ first, last }: Hit<Row>, fine: readonly (Hit<Row> | undefined)[]): boolean {
  for (let i = first; i <= last; i++) {
    const other = fine[i];
    if (other === undefined) continue;
    const holds = first <= other.first && other.last <= last && last - first > other.last - other.first;
    if (!holds) return true;
  }
  return false;
}

function stands({ row, first, last }: Hit<Row>, words: readonly AdvertisingWord[]): boolean {
  const [previous, next] = [words[first - 1], words[last + 1]];
  if (next !== undefined && isIn(row.before, next)) return false;
  if (previous !== undefined && isIn(row.after, previous)) return false;
  if (row.phrase['unless-joined'] && words[first]?.joined) return false;
  return row.phrase['decided-by'] === undefined || !describesProperty(row, first, last, words);
}

/** The nearest telling word after it decides, else the nearest before it, within the sentence. */
function describesProperty(
  { people, property }: Row,
  first: number,
  last: number,
  words: readonly AdvertisingWord[],
): boolean {
  for (const way of [1, -1] as const) {
    const start = way === 1 ? last + 1 : first - 1;
    for (let i = start; Math.abs(i - start) < (way === 1 ? AHEAD : BEHIND); i += way) {
      const word = words[i];
      if (word === undefined || word.word === '.') break;
      if (isIn(people, word)) return false;
      if (isIn(property, word)) return true;
    }
  }
  return false;
}

function findingOf(
  text: string,
  words: readonly AdvertisingWord[],
  { row: { phrase }, first, last }: Hit<Row>,
): AdvertisingFinding {
  const within = words.slice(first, last + 1);
  const from = Math.min(...within.map((word) => word.from));
  const to = Math.max(...within.map((word) => word.to));
  return {
    from,
    to,
    level: phrase.level === 'block' ? 'block' : 'warn',
    words: text.slice(from, to),
    ...entryOf(advertisingTable().reasons, phrase.reason, 'advertising'),
    rule: advertisingRule(phrase.rule, phrase.status),
  };
}

/** Of findings that overlap the graver stays, then the longer, then the one that the rule's own text has. */
function apart(found: readonly AdvertisingFinding[]): AdvertisingFinding[] {
  const weight = ({ level, rule }: AdvertisingFinding): number =>
    (level === 'block' ? 2 : 0) + (rule.status === 'house rule' ? 0 : 1);
  const grave = ({ level }: AdvertisingFinding): number => (level === 'block' ? 1 : 0);
  const order = [...found].sort(
    (a, b) =>
      grave(b) - grave(a) || b.to - b.from - (a.to - a.from) || weight(b) - weight(a) || a.from - b.from,
  );
  const taken = new Uint8Array(order.reduce((most, { to }) => Math.max(most, to), 0));
  return order
    .filter(({ from, to }) => {
      if (taken.subarray(from, to).some((one) => one === 1)) return false;
      taken.fill(1, from, to);
      return true;
    })
    .sort((a, b) => a.from - b.from);
}
