/** "New", "newer", "updated", "refinished", "original": words about age and deeds, held against dates and deeds. */
import { type Answer, answerOf } from '../items/answer-of.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import { monthsBefore } from '../items/months.js';

const RANK: Readonly<Record<Item['kind'], number>> = {
  system: 0,
  finish: 1,
  work: 2,
  alarm: 0,
  structure: 3,
  identity: 4,
};

/** Its date is older than the word has it, and not by much. */
export const STRETCHED = 'the facts stretch that word';

export interface NewnessClaim {
  readonly word: string;
  /** The draft says it of every one. */
  readonly all: boolean;
  /** The draft speaks of several: "windows", "appliances", "plumbing". */
  readonly many: boolean;
  /** A room or the whole house: one thing that was left makes the word too wide, not wrong. */
  readonly whole: boolean;
  /** The draft gives no year for it. */
  readonly undated?: boolean;
  /** Id of the thing. */
  readonly thing?: string;
}

/** Holds a word about newness against the facts of its thing. */
export function judgeNewness(known: Known, items: readonly Item[], claim: NewnessClaim): Judgement {
  const rule = `newness.${claim.word}`;
  const told = items
    .filter((item) => item.kind !== 'structure' && item.kind !== 'identity')
    .sort((a, b) => RANK[a.kind] - RANK[b.kind]);
  const answers = told.map((item) => ({
    item,
    answer: isLongAgo(known, item, claim) ? ('no' as const) : answerOf(known, item, claim.word),
  }));
  const of = (wanted: Answer): Item[] =>
    answers.filter(({ answer }) => answer === wanted).map(({ item }) => item);
  const [all, stretched] = [of('yes'), of('stretched')];
  // Beside what is new, what was left is not, though nobody knows since when it is there.
  const left = claim.word === 'new' && all.length > 0 ? of('unknown').filter(({ kept }) => kept) : [];
  const no = [...of('no'), ...left];
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
  if (yes.length > 0 && no.length === 0 && claim.word === 'untouched')
    return {
      verdict: 'wider',
      rule,
      because: 'the folder tells of work on it',
      facts: factsOf(stretched),
    };
  if (yes.length > 0) {
    // "A new toilet" is true where one of two is new; "all new appliances" is not.
    const real = no.filter((item) => !isCoveredBy(item, yes));
    if (claim.whole && claim.word === 'original' && real.length >= yes.length)
      return {
        verdict: 'contradicted',
        rule,
        because: against('original'),
        facts: factsOf(real),
      };
    if (real.length === 0 || !asksAll(claim))
      return { verdict: 'backed', rule, because: backing(claim.word), facts: factsOf(yes) };
    return {
      verdict: 'wider',
      rule,
      because: `so of ${yes.length === 1 ? 'one' : 'some'}, but not of all`,
      facts: [...factsOf(real, 3), ...factsOf(yes, 2)],
    };
  }
  if (stretched.length > 0 && (no.length === 0 || claim.word === 'updated' || claim.whole))
    return {
      verdict: 'wider',
      rule,
      because: STRETCHED,
      facts: factsOf([...stretched, ...no]),
    };
  return {
    verdict: 'contradicted',
    rule,
    because: against(claim.word),
    facts: factsOf(no),
  };
}

/** "HVAC replaced", with no year, of what an earlier owner put in more than ten years ago. */
function isLongAgo(known: Known, { kind, kept, done, made }: Item, { word, undated }: NewnessClaim): boolean {
  const day = (done ?? made)?.latest;
  return (
    word === 'replaced' &&
    undated === true &&
    kept &&
    kind === 'system' &&
    day !== undefined &&
    monthsBefore(known.asOf, day) > LONG_AGO_MONTHS
  );
}

const LONG_AGO_MONTHS = 120;

/** Whether one that is not so makes the word too wide: of a list, of several, of a whole room called new. */
const asksAll = ({ word, all, many, whole }: NewnessClaim): boolean =>
  all ||
  word === 'remade' ||
  (many && /^(new|newer|original|replaced)$/.test(word)) ||
  (whole && (word === 'new' || word === 'untouched'));

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
    young: 'its date is within five years',
    replaced: 'it was put in',
    updated: 'work was done on it',
    remade: 'it was built anew',
    refinished: 'it was refinished',
    painted: 'it was painted',
    repaired: 'it was repaired',
    serviced: 'it was serviced',
    original: 'it was left as found',
    untouched: 'it was left as found',
    discarded: 'what was there is gone',
  })[word] ?? 'so says the folder';

const against = (word: string): string =>
  ({
    new: 'the folder says that it is not new',
    newer: 'the folder gives an older date',
    young: 'the folder gives an older date',
    replaced: 'the folder tells of no replacement',
    updated: 'the folder tells of no work on it',
    remade: 'what the folder tells of was left, mended or only coated',
    refinished: 'the folder tells another deed',
    painted: 'the folder tells of no paint',
    repaired: 'the folder tells of no repair',
    original: 'the folder says that it was changed',
    untouched: 'the folder tells of work on it',
    discarded: 'the folder says that it was kept',
  })[word] ?? 'the folder says otherwise';
