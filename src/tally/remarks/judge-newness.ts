/** "New", "newer", "updated", "refinished", "original": words about age and deeds, held against dates and deeds. */
import { type Answer, answerOf } from './answer-of.js';
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import type { Judgement, Known } from './known.js';
import { truth } from './true-words.js';

const RANK: Readonly<Record<string, number>> = {
  system: 0,
  finish: 1,
  work: 2,
  alarm: 0,
  structure: 3,
  identity: 4,
};

export interface NewnessClaim {
  readonly word: string;
  /** The draft says it of every one. */
  readonly all: boolean;
  /** The draft speaks of several: "windows", "appliances", "plumbing". */
  readonly many: boolean;
  /** A room or the whole house: one thing that was left makes the word too wide, not wrong. */
  readonly whole: boolean;
  /** Id of the thing. */
  readonly thing?: string;
}

/** Holds a word about newness against the facts of its thing. */
export function judgeNewness(known: Known, items: readonly Item[], claim: NewnessClaim): Judgement {
  const rule = `newness.${claim.word}`;
  const told = items
    .filter((item) => item.kind !== 'structure' && item.kind !== 'identity')
    .sort((a, b) => (RANK[a.kind] ?? 9) - (RANK[b.kind] ?? 9));
  const answers = told.map((item) => ({ item, answer: answerOf(known, item, claim.word) }));
  const of = (wanted: Answer): Item[] =>
    answers.filter(({ answer }) => answer === wanted).map(({ item }) => item);
  const [all, no, stretched] = [of('yes'), of('no'), of('stretched')];
  // New fronts make no new cabinets, a new kitchen has new cabinets, and nothing else makes up for them.
  const yes = coreSays(claim, no) ? [] : all;
  if (yes.length + no.length + stretched.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because: `the folder does not say when or whether that was done`,
      facts: factsOf(told, 2),
    };
  if (no.length === 0 && stretched.length === 0)
    return { verdict: 'backed', rule, because: backing(claim.word), facts: factsOf(yes) };
  if (yes.length > 0) {
    // "A new toilet" is true where one of two is new; "all new appliances" is not.
    const real = no.filter((item) => !isCoveredBy(item, yes));
    if (claim.whole && claim.word === 'original' && real.length >= yes.length)
      return {
        verdict: 'contradicted',
        rule,
        because: against('original'),
        facts: factsOf(real),
        instead: truth([], real),
      };
    if (real.length === 0 || !asksAll(claim))
      return { verdict: 'backed', rule, because: backing(claim.word), facts: factsOf(yes) };
    return {
      verdict: 'wider',
      rule,
      because: `so of ${yes.length === 1 ? 'one' : 'some'}, but not of all`,
      facts: [...factsOf(real, 3), ...factsOf(yes, 2)],
      instead: truth(yes, no),
    };
  }
  if (stretched.length > 0 && (no.length === 0 || claim.word === 'updated' || claim.whole))
    return {
      verdict: 'wider',
      rule,
      because: 'the facts stretch that word',
      facts: factsOf([...stretched, ...no]),
      instead: no.length === 0 ? truth([], stretched) : truth(stretched, no),
    };
  return {
    verdict: 'contradicted',
    rule,
    because: against(claim.word),
    facts: factsOf(no),
    instead: truth([], no),
  };
}

/** Whether one that is not so makes the word too wide: of a list, of several, of a whole room called new. */
const asksAll = ({ word, all, many, whole }: NewnessClaim): boolean =>
  all || (many && /^(new|newer|original|replaced)$/.test(word)) || (whole && word === 'new');

const CORES: Readonly<Record<string, readonly string[]>> = {
  kitchen: ['cabinet', 'counter'],
  cabinet: ['cabinet'],
};

/** Whether the things that make it what it is are not so: a "new kitchen" whose cabinets and counters were left. */
function coreSays({ thing: id, word }: NewnessClaim, no: readonly Item[]): boolean {
  if (word !== 'new' && word !== 'replaced') return false;
  const core = id === undefined ? undefined : CORES[id];
  return (
    core?.every((part) => no.some(({ kind, things }) => kind === 'finish' && things.includes(part))) === true
  );
}

/** A part told by the work that made it, or the same surface told twice. */
function isCoveredBy(item: Item, yes: readonly Item[]): boolean {
  if (item.kind === 'work' && item.deed === 'removed') return true;
  return (
    !item.kept &&
    yes.some((one) => one.kind === item.kind && one.label === item.label && one.what === item.what)
  );
}

const backing = (word: string): string =>
  ({
    new: 'it was put in new',
    newer: 'its date is within five years',
    replaced: 'it was put in',
    updated: 'work was done on it',
    refinished: 'it was refinished',
    painted: 'it was painted',
    repaired: 'it was repaired',
    serviced: 'it was serviced',
    original: 'it was left as found',
  })[word] ?? 'so says the folder';

const against = (word: string): string =>
  ({
    new: 'the folder says that it is not new',
    newer: 'the folder gives an older date',
    replaced: 'the folder tells of no replacement',
    updated: 'the folder tells of no work on it',
    refinished: 'the folder tells another deed',
    painted: 'the folder tells of no paint',
    repaired: 'the folder tells of no repair',
    original: 'the folder says that it was changed',
  })[word] ?? 'the folder says otherwise';
