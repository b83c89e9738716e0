import { pairFacts } from './changes-pairs.js';
import { CHANGES_PREFIX } from './changes-since.js';
import type { FactsFile, SaidFact } from './facts-file.js';
import { counted } from './rich.js';

/** A fact that two packets of one house tell differently. */
export interface FactChange {
  readonly id: string;
  readonly section: string;
  readonly about: string | undefined;
  /** In words, with how it was known; undefined where it was not said. */
  readonly was: string | undefined;
  readonly is: string | undefined;
}

/**
 * What of two packets differs, in the order of the later one; what it no longer says comes last. Statements are paired by
 * what they say before their numbers, so that one row more is one change. What a packet tells of earlier deliveries is
 * left out: it follows from the rest, and would tell all of it once more.
 */
export function compareFacts(was: FactsFile, is: FactsFile): FactChange[] {
  const changes = changesOfHead(was, is);
  const [before, after] = [was.facts.filter(isTold), is.facts.filter(isTold)];
  const { pairs, gone } = pairFacts(before, after);
  const earlier = new Map(pairs.map((pair) => [pair.is, pair.was]));
  for (const fact of after) {
    const said = earlier.get(fact);
    if (said === undefined) changes.push({ ...headOf(fact), was: undefined, is: wordsOf(fact) });
    else if (withoutId(said) !== withoutId(fact)) changes.push({ ...headOf(fact), ...bothOf(said, fact) });
  }
  // One id said twice is among them: no packet does so.
  for (const fact of gone) changes.push({ ...headOf(fact), was: wordsOf(fact), is: undefined });
  if (changes.length === 0) changes.push(...inOtherOrder(before, after, is.title), ...ofDeliveries(was, is));
  // What else would change it is said by now: a picture that is covered otherwise, or a false digest.
  if (changes.length === 0) changes.push(...differing(is, 'digest', 'Digest', was.digest, is.digest));
  return changes;
}

const isOfDeliveries = ({ id }: SaidFact): boolean => id.startsWith(CHANGES_PREFIX);
const isTold = (fact: SaidFact): boolean => !isOfDeliveries(fact);

/** Of a pair only the number in its id can differ: it tells how many stand before it, and nothing of the thing. */
const withoutId = (fact: SaidFact): string => JSON.stringify({ ...fact, id: '' });

/** The same statements one by one, and another of them first, or under another id. */
function inOtherOrder(
  before: readonly SaidFact[],
  after: readonly SaidFact[],
  section: string,
): FactChange[] {
  const n = after.findIndex((fact, i) => JSON.stringify(fact) !== JSON.stringify(before[i]));
  const [was, is] = [before[n], after[n]];
  if (was === undefined || is === undefined) return [];
  const words = (fact: SaidFact): string =>
    fact.about === undefined ? wordsOf(fact) : `${fact.about}: ${wordsOf(fact)}`;
  const both =
    withoutId(was) === withoutId(is)
      ? { was: `${words(was)} (as ${was.id})`, is: `${words(is)} (as ${is.id})` }
      : { was: words(was), is: words(is) };
  return [{ id: 'order', section, about: 'Order in which it is told', ...both }];
}

/** Only what it tells of earlier deliveries is another: how much that is, so that no difference goes untold. */
function ofDeliveries(was: FactsFile, is: FactsFile): FactChange[] {
  const [before, after] = [was.facts.filter(isOfDeliveries), is.facts.filter(isOfDeliveries)];
  const [first] = [...after, ...before];
  if (first === undefined || JSON.stringify(before) === JSON.stringify(after)) return [];
  const many = (facts: readonly SaidFact[], other: string): string | undefined =>
    facts.length === 0 ? undefined : counted(facts.length, `${other}statement`);
  return [
    {
      id: 'changes',
      section: first.section,
      about: undefined,
      was: many(before, ''),
      is: many(after, before.length === 0 ? '' : 'other '),
    },
  ];
}

const changesOfHead = (was: FactsFile, is: FactsFile): FactChange[] => [
  ...differing(is, 'house-name', 'Name of the house', was.house.name, is.house.name),
  ...differing(is, 'house-place', 'Where it stands', was.house.place, is.house.place),
  ...differing(is, 'edition-title', 'Title', was.title, is.title),
  ...differing(is, 'as-of', 'As of', was.asOf, is.asOf),
];

function differing(of: FactsFile, id: string, about: string, was: string, is: string): FactChange[] {
  return was === is ? [] : [{ id, section: of.title, about, was, is }];
}

const headOf = ({ id, section, under, about }: SaidFact): Pick<FactChange, 'id' | 'section' | 'about'> => ({
  id,
  section: [section, ...(under ?? [])].join(', '),
  about,
});

/** The words of both; where only the picture or the place differs, words alone would not show it. */
function bothOf(before: SaidFact, after: SaidFact): { was: string; is: string } {
  const [was, is] = [wordsOf(before), wordsOf(after)];
  if (was !== is) return { was, is };
  if (before.picture !== after.picture) return { was: `${was} (a picture)`, is: `${is} (another picture)` };
  const placed = (fact: SaidFact): string => {
    const { section, about } = headOf(fact);
    return about === undefined ? section : `${section}: ${about}`;
  };
  return { was: `${was} (under ${placed(before)})`, is: `${is} (under ${placed(after)})` };
}

function wordsOf({ says, known, by }: SaidFact): string {
  const said =
    typeof says === 'string' ? says : says.map(({ column, cell }) => `${column}: ${cell}`).join('; ');
  const how = [known, by].filter((word) => word !== undefined).join(', ');
  return how === '' ? said : `${said} [${how}]`;
}
