/** What a draft is told about a small house, one line a finding, and tables of drafts with such lines. */
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { deriveTally } from '../../src/tally/tally.js';
import { LABELLED_AS_OF } from '../remarks/corpus.js';
import { houseFrom, type PartialSpec } from './house-from.js';

/** What the house is about, its words, and a table of drafts. */
export type House = readonly [about: string, spec: PartialSpec, drafts: string];

/** Each finding as `verdict | says | rule | because | instead ← facts`. */
export function findingsOf(spec: PartialSpec, draft: string): string[] {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, LABELLED_AS_OF);
  return checkRemarks(draft, house, tally).map(({ verdict, says, rule, because, instead, facts }) => {
    const line = [verdict, says, rule, because, instead].filter((part) => part !== undefined).join(' | ');
    return facts.length === 0 ? line : `${line} ← ${facts.map(({ words }) => words).join('; ')}`;
  });
}

/** A draft stands at the margin; indented below it, every finding it is told, in order. None: it is told nothing. */
export function rowsOf(table: string): (readonly [draft: string, told: readonly string[]])[] {
  const rows: [string, string[]][] = [];
  for (const line of table.split('\n').filter((one) => one.trim() !== ''))
    if (line.startsWith(' ')) rows.at(-1)?.[1].push(line.trim());
    else rows.push([line, []]);
  return rows;
}
