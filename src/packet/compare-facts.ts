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
  const earlier = new Map(was.facts.map((fact) => [fact.id, fact]));
  const changes = changesOfHead(was, is);
  for (const fact of is.facts) {
    const before = earlier.get(fact.id);
    earlier.delete(fact.id);
    if (before === undefined) changes.push({ ...headOf(fact), was: undefined, is: wordsOf(fact) });
    else if (JSON.stringify(before) !== JSON.stringify(fact))
      changes.push({ ...headOf(fact), ...bothOf(before, fact) });
  }
  for (const fact of earlier.values()) changes.push({ ...headOf(fact), was: wordsOf(fact), is: undefined });
  return changes;
}

function changesOfHead(was: FactsFile, is: FactsFile): FactChange[] {
  const head = (id: string, about: string, before: string, after: string): FactChange[] =>
    before === after ? [] : [{ id, section: is.title, about, was: before, is: after }];
  return [
    ...head('house-name', 'Name of the house', was.house.name, is.house.name),
    ...head('house-place', 'Where it stands', was.house.place, is.house.place),
    ...head('edition-title', 'Title', was.title, is.title),
    ...head('as-of', 'As of', was.asOf, is.asOf),
  ];
}

const headOf = ({ id, section, about }: SaidFact): Pick<FactChange, 'id' | 'section' | 'about'> => ({
  id,
  section,
  about,
});

/** The words of both; where only the picture, the heading or the section differs, words alone would not show it. */
function bothOf(before: SaidFact, after: SaidFact): { was: string; is: string } {
  const [was, is] = [wordsOf(before), wordsOf(after)];
  if (was !== is) return { was, is };
  if (before.picture !== after.picture)
    return {
      was: `${was} (picture ${before.picture ?? 'none'})`,
      is: `${is} (picture ${after.picture ?? 'none'})`,
    };
  const placed = ({ section, about }: SaidFact): string =>
    about === undefined ? section : `${section}, ${about}`;
  return { was: `${was} (under: ${placed(before)})`, is: `${is} (under: ${placed(after)})` };
}

function wordsOf({ says, known, by }: SaidFact): string {
  const said =
    typeof says === 'string'
      ? says
      : Object.entries(says)
          .map(([column, cell]) => `${column}: ${cell}`)
          .join('; ');
  const how = [known, by].filter((word) => word !== undefined).join(', ');
  return how === '' ? said : `${said} [${how}]`;
}
