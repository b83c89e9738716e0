/** The check of drafts about a house of this project or of a few words, and what it finds as lines. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readHouse } from '../../src/intake/read-house.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import type { Finding } from '../../src/tally/remarks/items/known.js';
import { deriveTally } from '../../src/tally/tally.js';
import { LABELLED_AS_OF } from '../remarks/corpus.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const root = new URL('../../', import.meta.url);
const FOLDERS = ['content/NAME', 'tests/houses/NAME/input', 'tests/remarks/plain/houses/NAME'];

type Check = (draft: string) => Finding[];

/** The check of drafts about a house that is kept in this project. Throws, and so fails the test, where there is none. */
export async function checkOf(name: string): Promise<Check> {
  const folder = [...FOLDERS, 'tests/remarks/seen/houses/NAME', 'tests/remarks/practice/houses/NAME']
    .map((one) => fileURLToPath(new URL(one.replace('NAME', name), root)))
    .find((one) => existsSync(one));
  const { found } = await readHouse(String(folder), name, { everyPhoto: false });
  if (found === undefined) throw new Error(`${name} can’t be read`);
  const { tally } = deriveTally(found.house, LABELLED_AS_OF);
  return (draft) => checkRemarks(draft, found.house, tally);
}

/** The check of drafts about a house of a few words. */
export function checkOfSpec(spec: PartialSpec): Check {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, LABELLED_AS_OF);
  return (draft) => checkRemarks(draft, house, tally);
}

/** Verdict, rule and the characters underlined, a line for each. */
export const linesFound = (findings: readonly Finding[]): string[] =>
  findings.map(({ verdict, says, rule }) => `${verdict} ${rule}: ${says}`);
