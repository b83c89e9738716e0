import type { FactsFile, SaidFact } from './facts-file.js';

/** A fact that two packets of one house tell differently. */
export interface FactChange {
  readonly id: string;
  readonly section: string;
  readonly about: string | undefined;
  /** In words, with how it was known; undefined where it was not said. */
  readonly was: string | undefined;
  readonly is: string | undefined;
}

/** What of two packets differs, in the order of the later one; what it no longer says comes last. */
export function compareFacts(was: FactsFile, is: FactsFile): FactChange[] {
  const earlier = byId(was.facts);
  const changes = changesOfHead(was, is);
  for (const fact of is.facts) {
    const said = earlier.get(fact.id) ?? [];
    earlier.delete(fact.id);
    const before = said.find((one) => JSON.stringify(one) === JSON.stringify(fact)) ?? said[0];
    if (before === undefined) changes.push({ ...headOf(fact), was: undefined, is: wordsOf(fact) });
    else if (JSON.stringify(before) !== JSON.stringify(fact))
      changes.push({ ...headOf(fact), ...bothOf(before, fact) });
    // One id said twice: no packet does so.
    for (const more of said)
      if (more !== before) changes.push({ ...headOf(more), was: wordsOf(more), is: undefined });
  }
  for (const fact of [...earlier.values()].flat())
    changes.push({ ...headOf(fact), was: wordsOf(fact), is: undefined });
  // What else would change it is said by now: a picture that is covered otherwise, or a false digest.
  if (changes.length === 0) changes.push(...differing(is, 'digest', 'Digest', was.digest, is.digest));
  return changes;
}

function byId(facts: readonly SaidFact[]): Map<string, SaidFact[]> {
  const found = new Map<string, SaidFact[]>();
  for (const fact of facts) found.set(fact.id, [...(found.get(fact.id) ?? []), fact]);
  return found;
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
