/**
 * Which statement of one packet is which of another.
 *
 * Most ids say what they are about and last. Some only count (`condition-3`): where something is put in before them they
 * are given to another thing. So what says the same is paired first, whatever its number, then what is about the same,
 * and only then what bears the same number.
 */
import type { SaidFact } from './facts-file.js';

interface FactPair {
  readonly was: SaidFact;
  readonly is: SaidFact;
}

interface Paired {
  readonly pairs: readonly FactPair[];
  readonly added: readonly SaidFact[];
  readonly gone: readonly SaidFact[];
}

/** Pairs and what is new in the order of the later packet, what is gone in that of the earlier one. */
export function pairFacts(was: readonly SaidFact[], is: readonly SaidFact[]): Paired {
  const before = new Set(was);
  const found = new Map<SaidFact, SaidFact>();
  const pair = (is_: SaidFact, was_: SaidFact): void => {
    found.set(is_, was_);
    before.delete(was_);
  };
  const open = (): SaidFact[] => is.filter((one) => !found.has(one));
  /** Pairs by a key, where both have it once or in the same order. */
  const byKey = (key: (fact: SaidFact) => string | undefined): void => {
    const waiting = new Map<string, SaidFact[]>();
    for (const one of before) {
      const its = key(one);
      if (its === undefined) continue;
      const those = waiting.get(its);
      if (those === undefined) waiting.set(its, [one]);
      else those.push(one);
    }
    for (const one of open()) {
      const its = key(one);
      const other = its === undefined ? undefined : waiting.get(its)?.shift();
      if (other !== undefined) pair(one, other);
    }
  };
  byKey((fact) => `${fact.id} ${sayings(fact)}`);
  // A photo's number counts all photos before it and how often it is shown: the picture itself is what it is known by.
  byKey((fact) => (fact.picture === undefined ? undefined : `${fact.section} ${sayings(fact)}`));
  byKey((fact) => (fact.picture === undefined ? undefined : `${fact.section} ${fact.picture}`));
  byKey((fact) =>
    fact.picture === undefined ? undefined : `${fact.section} ${plainWords(String(fact.says))}`,
  );
  byKey((fact) => (isNumbered(fact) ? `${familyOf(fact)} ${sayings(fact)}` : undefined));
  byKey((fact) => (isNumbered(fact) || fact.picture !== undefined ? undefined : fact.id));
  byKey((fact) =>
    isNumbered(fact) && fact.picture === undefined && fact.about !== undefined
      ? `${familyOf(fact)} ${plainWords(fact.about)}`
      : undefined,
  );
  const wordsBy = new Map<SaidFact, ReadonlySet<string>>();
  const words = (fact: SaidFact): ReadonlySet<string> => {
    const made = wordsBy.get(fact) ?? wordSet(fact);
    wordsBy.set(fact, made);
    return made;
  };
  const unpictured = (): SaidFact[] => open().filter(({ picture }) => picture === undefined);
  const firstById = new Map([...before].reverse().map((other) => [other.id, other]));
  for (const one of unpictured()) {
    const same = firstById.get(one.id);
    if (same !== undefined && before.has(same) && likeness(words(one), words(same)) >= ALIKE) pair(one, same);
  }
  const families = new Map<string, Family>();
  for (const other of before)
    if (isNumbered(other)) {
      const family = families.get(familyOf(other)) ?? new Family();
      families.set(familyOf(other), family);
      family.add(other, words(other));
    }
  for (const one of unpictured().filter(isNumbered)) {
    const other = families.get(familyOf(one))?.takeAlike(words(one));
    if (other !== undefined) pair(one, other);
  }
  return {
    pairs: is.flatMap((one) => {
      const other = found.get(one);
      return other === undefined ? [] : [{ was: other, is: one }];
    }),
    added: open(),
    gone: was.filter((one) => before.has(one)),
  };
}

/** Its id ends with a number. */
export const isNumbered = ({ id }: Pick<SaidFact, 'id'>): boolean => /-\d+$/u.test(id);
const familyOf = ({ id, section }: SaidFact): string => `${section} ${id.replace(/-\d+$/u, '')}`;

/** What it says and how that is known; where it stands is not among it. */
const sayings = ({ about, says, known, by, picture }: SaidFact): string =>
  plainWords(JSON.stringify([about, says, known, by, picture]));

/** The share of words that two have in common, from which on one is taken for the other, changed. */
const ALIKE = 0.4;

/** Words in common among all of both. */
function likeness(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  let common = 0;
  for (const word of one) if (other.has(word)) common += 1;
  return shareOf(common, one.size, other.size);
}

const shareOf = (common: number, one: number, other: number): number =>
  common / Math.max(1, one + other - common);

interface Relative {
  readonly fact: SaidFact;
  /** How many words it has. */
  readonly size: number;
  taken: boolean;
}

/** Statements whose ids differ in their number alone. A packet may have many thousands: each word knows who has it. */
class Family {
  readonly #facts: Relative[] = [];
  readonly #byWord = new Map<string, number[]>();

  add(fact: SaidFact, words: ReadonlySet<string>): void {
    for (const word of words) {
      const those = this.#byWord.get(word);
      if (those === undefined) this.#byWord.set(word, [this.#facts.length]);
      else those.push(this.#facts.length);
    }
    this.#facts.push({ fact, size: words.size, taken: false });
  }

  /** The first of those that have most in common with the words, if that is enough; it is given once. */
  takeAlike(words: ReadonlySet<string>): SaidFact | undefined {
    const common = new Uint32Array(this.#facts.length);
    for (const word of words)
      for (const at of this.#byWord.get(word) ?? []) common[at] = (common[at] ?? 0) + 1;
    let best: Relative | undefined;
    let most = 0;
    for (const [at, both] of common.entries()) {
      const one = both === 0 ? undefined : this.#facts[at];
      if (one === undefined || one.taken) continue;
      const share = shareOf(both, words.size, one.size);
      if (share >= ALIKE && share > most) [best, most] = [one, share];
    }
    if (best !== undefined) best.taken = true;
    return best?.fact;
  }
}

const wordSet = ({ about, says }: SaidFact): Set<string> =>
  new Set(
    plainWords(JSON.stringify([about, says]))
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? [],
  );

/** The words of a text in small letters; a figure with its decimals is one. */
export const wordsIn = (text: string): readonly string[] =>
  plainWords(text)
    .toLowerCase()
    .match(/\p{N}+(?:[.,:/]\p{N}+)*|[\p{L}\p{M}]+/gu) ?? [];

/** A text without what only setting it changes: kinds of blanks, quotation marks and dashes. */
export const plainWords = (text: string): string =>
  text
    .replace(/[‘’ʼ′]/gu, "'")
    .replace(/[“”„″]/gu, '"')
    .replace(/[‐‑–—−]/gu, '-')
    .replace(/…/gu, '...')
    .replace(/[\s\u200b\u2060]+/gu, ' ')
    .trim();
