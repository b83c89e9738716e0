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
  /** The first of those that have most in common with it, if that is enough. */
  const alike = (fact: SaidFact, others: Iterable<SaidFact>): SaidFact | undefined => {
    let best: { readonly other: SaidFact; readonly score: number } | undefined;
    for (const other of others) {
      const score = likeness(words(fact), words(other), best?.score ?? 0);
      if (score >= ALIKE && score > (best?.score ?? 0)) best = { other, score };
    }
    return best?.other;
  };
  const unpictured = (): SaidFact[] => open().filter(({ picture }) => picture === undefined);
  const firstById = new Map([...before].reverse().map((other) => [other.id, other]));
  for (const one of unpictured()) {
    const same = firstById.get(one.id);
    if (same !== undefined && before.has(same) && alike(one, [same]) !== undefined) pair(one, same);
  }
  const families = new Map<string, Set<SaidFact>>();
  for (const other of before)
    if (isNumbered(other)) {
      const family = families.get(familyOf(other));
      if (family === undefined) families.set(familyOf(other), new Set([other]));
      else family.add(other);
    }
  for (const one of unpictured().filter(isNumbered)) {
    const family = families.get(familyOf(one));
    const other = family === undefined ? undefined : alike(one, family);
    if (other === undefined) continue;
    pair(one, other);
    family?.delete(other);
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

/** Words in common among all of both; 0 where it can be no more than `beaten`, or too little. */
function likeness(one: ReadonlySet<string>, other: ReadonlySet<string>, beaten: number): number {
  const [small, large] = one.size < other.size ? [one, other] : [other, one];
  const most = small.size / Math.max(1, large.size);
  if (most < ALIKE || most <= beaten) return 0;
  let common = 0;
  for (const word of small) if (large.has(word)) common += 1;
  return common / Math.max(1, one.size + other.size - common);
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
