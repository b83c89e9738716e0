/** Finds the words of the tables in a text: the longest entry at each place, forgiving one slip in a long word. */
import { remarkClasses, remarkThings, remarkWords } from '../tables/remarks.js';
import { type Token, tokenize } from './token.js';

/** What a word or a run of words may mean. */
export interface Sense {
  readonly tag:
    | 'thing'
    | 'class'
    | 'newness'
    | 'all'
    | 'both'
    | 'some'
    | 'negation'
    | 'hedge'
    | 'maybe-ahead'
    | 'maybe-behind'
    | 'unlike'
    | 'elsewhere'
    | 'elsewhere-noun'
    | 'opinion'
    | 'who'
    | 'trade'
    | 'permit'
    | 'unpermitted'
    | 'inspected'
    | 'convey'
    | 'condition'
    | 'place'
    | 'unit'
    | 'storeys'
    | 'preposition'
    | 'determiner'
    | 'copula'
    | 'verb';
  readonly id: string;
  /** Of a class: its group. */
  readonly group?: string;
  /** Of a class: the thing that is meant where it stands alone. */
  readonly head?: string;
}

export interface Hit {
  /** How many tokens it takes. */
  readonly length: number;
  readonly senses: readonly Sense[];
}

interface Entry {
  readonly norms: readonly string[];
  readonly senses: Sense[];
}

export class Lexicon {
  readonly #byFirst = new Map<string, Entry[]>();
  readonly #byWords = new Map<string, Entry>();
  /** A long word with one letter left out → the words it may be. */
  readonly #slips = new Map<string, string>();

  add(words: string, sense: Sense): void {
    const norms = tokenize(words)
      .map((token) => token.norm)
      .filter((norm) => norm !== '-');
    const first = norms[0];
    if (first === undefined) throw new Error(`an empty entry in the tables of remarks: “${words}”`);
    const key = norms.join(' ');
    const same = this.#byWords.get(key);
    if (same === undefined) {
      const entry = { norms, senses: [sense] };
      this.#byWords.set(key, entry);
      const list = this.#byFirst.get(first);
      if (list === undefined) this.#byFirst.set(first, [entry]);
      else list.push(entry);
    } else if (
      !same.senses.some((one) => one.tag === sense.tag && one.id === sense.id && one.group === sense.group)
    )
      same.senses.push(sense);
  }

  /** Longest entries first; words that can be misspelt by one letter and still be known. */
  close(): this {
    for (const [first, list] of this.#byFirst) {
      list.sort((a, b) => b.norms.length - a.norms.length);
      if (first.length < 7) continue;
      for (const key of slipsOf(first)) if (!this.#byFirst.has(key)) this.#slips.set(key, first);
    }
    return this;
  }

  /** The longest entry that begins at `index`; hyphens between words count for nothing. */
  at(tokens: readonly Token[], index: number, end: number): Hit | undefined {
    const token = tokens[index];
    if (token === undefined) return undefined;
    const list = this.#byFirst.get(token.norm) ?? this.#slipped(token);
    if (list === undefined) return undefined;
    for (const { norms, senses } of list) {
      const length = runOf(tokens, index, end, norms);
      if (length !== undefined) return { length, senses };
    }
    return undefined;
  }

  #slipped(token: Token): Entry[] | undefined {
    if (token.kind !== 'word' || token.norm.length < 7) return undefined;
    const word =
      this.#slips.get(token.norm) ??
      slipsOf(token.norm)
        .map((key) => (this.#byFirst.has(key) && key.length >= 7 ? key : this.#slips.get(key)))
        .find((found) => found !== undefined);
    return word === undefined ? undefined : this.#byFirst.get(word);
  }
}

function runOf(
  tokens: readonly Token[],
  index: number,
  end: number,
  norms: readonly string[],
): number | undefined {
  let at = index + 1;
  for (const norm of norms.slice(1)) {
    if (tokens[at]?.norm === '-' && norm !== '-') at++;
    if (at >= end || tokens[at]?.norm !== norm) return undefined;
    at++;
  }
  return at - index;
}

/** The word with each of its letters left out in turn. */
const slipsOf = (word: string): string[] =>
  [...word].map((_, index) => word.slice(0, index) + word.slice(index + 1));

let read: Lexicon | undefined;

/** All words of the tables; read once. */
export function lexicon(): Lexicon {
  read ??= fill(new Lexicon()).close();
  return read;
}

function fill(found: Lexicon): Lexicon {
  const each = (words: readonly string[], sense: Sense): void => {
    for (const word of words) found.add(word, sense);
  };
  for (const { id, words } of remarkThings()) each(words, { tag: 'thing', id });
  const things = new Set(remarkThings().flatMap(({ words }) => words));
  for (const [group, { members }] of Object.entries(remarkClasses().groups))
    for (const [id, { words, head }] of Object.entries(members)) {
      // "tile roof" is read as "tile" of a "roof"; as one entry it would hide the roof.
      const apart = words.filter(
        (word) =>
          things.has(word) ||
          !words.some((other) => word.startsWith(`${other} `) && things.has(word.slice(other.length + 1))),
      );
      each(apart, { tag: 'class', id, group, ...(head === undefined ? {} : { head }) });
    }
  const said = remarkWords();
  const grouped = (tag: Sense['tag'], table: Readonly<Record<string, readonly string[]>>): void => {
    for (const [id, words] of Object.entries(table)) each(words, { tag, id });
  };
  const plain = (tag: Sense['tag'], words: readonly string[]): void => each(words, { tag, id: tag });
  grouped('newness', said.newness);
  plain('all', said.all);
  plain('both', said.both);
  plain('some', said.some);
  plain('negation', said.negation);
  grouped('hedge', said.hedge);
  plain('maybe-ahead', said.maybe.ahead);
  plain('maybe-behind', said.maybe.behind);
  plain('unlike', said.maybe.unlike);
  plain('elsewhere', said.elsewhere.ahead);
  plain('elsewhere-noun', said.elsewhere.nouns);
  plain('opinion', said.opinion);
  grouped('who', said.who);
  grouped('trade', said.trades);
  plain('permit', said.permit);
  plain('unpermitted', said.unpermitted);
  plain('inspected', said.inspected);
  grouped('convey', said.convey);
  for (const { id, words } of said.conditions) each(words, { tag: 'condition', id });
  grouped('place', said.places);
  grouped('unit', said.units);
  grouped('storeys', said.storeys);
  plain('preposition', said.prepositions);
  plain('determiner', said.determiners);
  plain('copula', said.copulas);
  plain('verb', said.verbs);
  return found;
}
