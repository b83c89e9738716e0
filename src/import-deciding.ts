/** The new rows of a bank's file one by one: with the writer, or by history alone. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { PaymentWay } from './facts/ledger.js';
import { type Decision, decideAlone, type NewRow, type Open } from './import-decision.js';
import type { Known } from './import-known.js';
import { type LookAlike, SeenTwins } from './import-matching.js';
import type { PayeeMemory } from './import-memory.js';
import { type Asker, askRow, NOBODY_ANSWERS, ROW_OPENING } from './import-questions.js';
import type { BankRows } from './intake/bank-rows.js';
import type { placeReader } from './intake/cell-words.js';
import { numberedKey, numberRows } from './intake/seen-rows.js';

interface Decided {
  readonly decisions: readonly Decision[];
  readonly seenBefore: number;
  readonly notAsked: number;
  /** Why it ended early. */
  readonly trouble: Diagnostic | undefined;
}

/** An answer is kept as soon as it is given, so that a window that is closed costs one row; what nobody is asked about is kept in one go. */
export async function decideRows(
  { rows }: BankRows,
  { seen, memory, open, costs }: Known,
  paid: PaymentWay | undefined,
  placeOf: ReturnType<typeof placeReader> | undefined,
  asker: Asker | undefined,
  keep: (decisions: readonly Decision[]) => Promise<Diagnostic | undefined>,
): Promise<Decided> {
  const known = new Set(seen.map(numberedKey));
  // The oldest first, whatever the bank's order: the same rows give the same sheet.
  const sorted = [...rows].sort(
    (a, b) =>
      compare(a.date, b.date) ||
      compare(a.text, b.text) ||
      a.cents - b.cents ||
      compare(a.reference, b.reference) ||
      compare(a.memo, b.memo),
  );
  const numbered = numberRows(sorted);
  const fresh = numbered.filter((row) => !known.has(numberedKey(row)));
  const inFile = new Set(numbered.map(numberedKey));
  const twins = new SeenTwins(seen, open.claimed, (key) => inFile.has(key));
  const seenBefore = rows.length - fresh.length;
  const propose = (row: NewRow): Open => {
    const proposal = memory.propose(row);
    const found = open.find(row, proposal.payee);
    const twin = found?.how === 'sure' ? undefined : twins.find(row);
    const other: LookAlike | undefined = twin?.cost && { cost: twin.cost, how: 'other-text' };
    return { row, proposal, alike: found ?? other, twin, paid };
  };
  const take = (decision: Decision): Decision => {
    if (decision.became === 'in-costs' && decision.alike !== undefined) open.take(decision.alike.cost);
    if (decision.twin !== undefined) twins.take(decision.twin);
    return decision;
  };
  const decisions: Decision[] = [];
  if (asker === undefined) {
    for (const row of fresh) decisions.push(take(decideAlone(propose(row))));
    const trouble = await keep(decisions);
    return trouble === undefined
      ? { decisions, seenBefore, notAsked: 0, trouble }
      : { decisions: [], seenBefore, notAsked: fresh.length, trouble };
  }
  const ended = (trouble?: Diagnostic): Decided => ({
    decisions,
    seenBefore,
    notAsked: fresh.length - decisions.length,
    trouble,
  });
  if (fresh.length > 0 && !(await asker.isThere())) return ended(NOBODY_ANSWERS);
  // The columns that were settled, before the first question about a row.
  const unkept = await keep([]);
  if (unkept !== undefined) return ended(unkept);
  if (fresh.length > 0)
    asker.say(`\n${fresh.length} new ${fresh.length === 1 ? 'row' : 'rows'}. ${ROW_OPENING}`);
  for (const [index, row] of fresh.entries()) {
    const about = { number: index + 1, of: fresh.length, memory, placeOf, sheetName: costs.name };
    const decision = await askRow(asker, propose(row), about);
    const trouble = decision && (await keep([decision]));
    if (decision === undefined || trouble !== undefined) return ended(trouble);
    decisions.push(take(decision));
    // What a person has just said holds for the next row; by history alone the order of rows must not matter.
    learn(memory, decision);
  }
  return ended();
}

function learn(memory: PayeeMemory, { row, payee, became, cost }: Decision): void {
  memory.addSeen({ text: row.text, date: row.date, payee, became }, true);
  if (cost !== undefined) memory.addCost({ ...cost, payee: cost.payee });
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
