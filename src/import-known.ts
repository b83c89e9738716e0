/** What an import knows before it decides: the costs, the rows that were seen, payees of this house and those beside it. */
import path from 'node:path';
import { leftOver } from './archive/append-rows.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { HouseFolder } from './find-houses.js';
import { OpenCosts } from './import-matching.js';
import { PayeeMemory } from './import-memory.js';
import { isSeenRow, targetOf } from './import-writing.js';
import { type CostSheet, readCostSheet, siblingHouses } from './intake/bank-costs.js';
import { numberedKey, readSeen, type SeenRow } from './intake/seen-rows.js';

export interface Known {
  readonly costs: CostSheet;
  /** File that rows go into, below the house folder. */
  readonly target: string;
  readonly seen: readonly SeenRow[];
  readonly memory: PayeeMemory;
  /** Rows of the costs that no imported row stands for. */
  readonly open: OpenCosts;
  readonly diagnostics: readonly Diagnostic[];
}

export async function readKnown({ folder, shown }: HouseFolder): Promise<Known> {
  const costs = await readCostSheet(folder, shown);
  const seenFile = await readSeen(folder, shown);
  const seen = mergeSeen(seenFile.rows, (await leftOver<SeenRow>(folder)) ?? []);
  const memory = new PayeeMemory();
  const open = new OpenCosts(costs.rows);
  for (const row of seen) memory.addSeen(row, true);
  // A payee that was named by hand in the costs since is known for that text from now on.
  for (const { row, payee } of open.claimSeen(seen)) memory.addSeen({ ...row, payee }, true);
  for (const cost of costs.rows) memory.addCost(cost);
  for (const sibling of await siblingHouses(folder)) {
    for (const cost of (await readCostSheet(sibling, sibling)).rows)
      memory.addCost(cost, path.basename(sibling));
    for (const row of (await readSeen(sibling, sibling)).rows) memory.addSeen(row, false);
  }
  return {
    costs,
    target: targetOf(costs),
    seen,
    memory,
    open,
    diagnostics: [...costs.diagnostics, ...seenFile.diagnostics],
  };
}

function mergeSeen(rows: readonly SeenRow[], more: readonly SeenRow[]): readonly SeenRow[] {
  const known = new Set(rows.map(numberedKey));
  return [...rows, ...more.filter((row) => isSeenRow(row) && !known.has(numberedKey(row)))];
}
