/** Finds the words of the tables in a text: the longest entry at each place, forgiving one slip in a long word. */
import { madeTable } from '../../read-table.js';
import { packLexicon } from './pack-lexicon.js';
import type { Token } from './token.js';

/** A kind that something may be of: "slate", "detached". */
export interface ClassSense {
  readonly tag: 'class';
  readonly id: string;
  readonly group: string;
  /** The thing that is meant where it stands alone. */
  readonly head?: string;
}

interface PlainSense {
  readonly tag:
    | 'thing'
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
  readonly group?: undefined;
  readonly head?: undefined;
}

/** What a word or a run of words may mean. */
export type Sense = ClassSense | PlainSense;

export interface Hit {
  /** How many tokens it takes. */
  readonly length: number;
  readonly senses: readonly Sense[];
}

interface Entry {
  /** The words behind its first one. */
  readonly rest: readonly string[];
  readonly senses: readonly Sense[];
}

/** All entries as they are written beside the tables when the program is built, so that no call has to sort them. */
export interface PackedLexicon {
  /** What entries may mean; entries name it by its place here. */
  readonly senses: readonly (readonly Sense[])[];
  /** First words, each with its entries, the longest first: the words behind the first one, and what they mean. */
  readonly firsts: readonly (readonly [string, readonly (readonly [rest: string, senses: number])[]])[];
}

const NO_ENTRIES: readonly Entry[] = [];

/** Words with one letter left out are compared from this length on. */
const LONG = 7;

export class Lexicon {
  readonly #senses: PackedLexicon['senses'];
  readonly #packed: ReadonlyMap<string, PackedLexicon['firsts'][number][1]>;
  /** Of the first words that were asked for. */
  readonly #entries = new Map<string, readonly Entry[]>();
  /** A long word with one letter left out → the words it may be; made when a text has a word that no table knows. */
  #slips: ReadonlyMap<string, string> | undefined;

  constructor({ senses, firsts }: PackedLexicon) {
    this.#senses = senses;
    this.#packed = new Map(firsts);
  }

  /** The longest entry that begins at `index`; hyphens between words count for nothing. */
  at(tokens: readonly Token[], index: number, end: number): Hit | undefined {
    for (const { rest, senses } of this.#beginningWith(tokens[index])) {
      const length = runOf(tokens, index, end, rest);
      if (length !== undefined) return { length, senses };
    }
    return undefined;
  }

  #beginningWith(token: Token | undefined): readonly Entry[] {
    return (token && (this.#of(token.norm) ?? this.#slipped(token))) ?? NO_ENTRIES;
  }

  #of(first: string): readonly Entry[] | undefined {
    const before = this.#entries.get(first);
    if (before !== undefined) return before;
    const entries = this.#packed.get(first)?.map(
      ([rest, place]): Entry => ({
        rest: rest === '' ? [] : rest.split(' '),
        senses: this.#senses.slice(place, place + 1).flat(),
      }),
    );
    if (entries !== undefined) this.#entries.set(first, entries);
    return entries;
  }

  #slipped(token: Token): readonly Entry[] | undefined {
    if (token.kind !== 'word' || token.norm.length < LONG) return undefined;
    this.#slips ??= slipsIn(this.#packed);
    const slips = this.#slips;
    const word =
      slips.get(token.norm) ??
      slipsOf(token.norm)
        .map((key) => (key.length >= LONG && this.#packed.has(key) ? key : slips.get(key)))
        .find((found) => found !== undefined);
    return word === undefined ? undefined : this.#of(word);
  }
}

/** Words that can be misspelt by one letter and still be known. */
function slipsIn(firsts: ReadonlyMap<string, unknown>): ReadonlyMap<string, string> {
  const slips = new Map<string, string>();
  for (const first of firsts.keys())
    if (first.length >= LONG) for (const key of slipsOf(first)) if (!firsts.has(key)) slips.set(key, first);
  return slips;
}

function runOf(
  tokens: readonly Token[],
  index: number,
  end: number,
  rest: readonly string[],
): number | undefined {
  let at = index + 1;
  for (const norm of rest) {
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
  read ??= new Lexicon(madeTable<PackedLexicon>('remarks-lexicon') ?? packLexicon());
  return read;
}
