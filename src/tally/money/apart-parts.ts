/** What stays out of a holder's basis, by tax year; a rental's also by the day it was ready to be let. */
import { BUCKETS, type Bucket, HOLDING, type Role } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { type Books, rowsIn, taxYearOf } from './books.js';
import { groupBy } from './group-by.js';
import { LET_PHASES, letPhase, PHASE_WORDS } from './let-phase.js';
import type { RuleId } from './money-rules.js';
import type { SheetLine, WorksheetPart } from './money-tally.js';
import type { RepairSplit } from './repairs-in-basis.js';
import { rowsLine } from './sheet-line.js';

/** Repairs are among them only as far as they don't count. */
const ORDER: readonly Bucket[] = ['purchase-closing-out', 'repair', ...HOLDING, 'selling', 'tool'];

export function apartParts(books: Books, role: Role, repairs: RepairSplit): WorksheetPart[] {
  const rows = [
    ...rowsIn(books, 'purchase-closing-out', ...HOLDING, 'tool'),
    // Once it is sold they stand with the sale.
    ...(books.sale === undefined ? rowsIn(books, 'selling') : []),
    ...repairs.out,
  ];
  const phaseOf = (row: CostRow) => (role === 'rental' ? letPhase(books, row) : undefined);
  return [...groupBy(rows, taxYearOf)]
    .sort(([a], [b]) => a - b)
    .flatMap(([year, own]) => {
      const phases = groupBy(own, phaseOf);
      return [undefined, ...LET_PHASES].flatMap((phase) => {
        const these = phases.get(phase);
        if (these === undefined) return [];
        const id = phase === undefined ? `${year}` : `${year}-${phase}`;
        const when = phase === undefined ? '' : `, ${PHASE_WORDS[phase]}`;
        return [
          {
            id: `apart-${id}`,
            title: `Tax year ${year}: not in the basis${when}`,
            year,
            lines: apartLines(`y${id}`, these, repairs),
          },
        ];
      });
    });
}

function apartLines(prefix: string, rows: readonly CostRow[], repairs: RepairSplit): SheetLine[] {
  const groups = groupBy(rows, ({ bucket }) => bucket);
  return ORDER.flatMap((bucket) => {
    const own = groups.get(bucket);
    if (own === undefined) return [];
    const inOrder = own.toSorted((a, b) => a.row - b.row);
    const title = bucket === 'repair' ? 'Repairs that don’t count' : BUCKETS[bucket].title;
    return [rowsLine(`${prefix}-${bucket}`, title, inOrder, wordsOf(bucket, repairs))];
  });
}

function wordsOf(
  bucket: Bucket,
  repairs: RepairSplit,
): { readonly rules: readonly RuleId[]; readonly note?: string } {
  if (bucket === 'repair') return { rules: repairs.rules, note: repairs.why };
  if (bucket === 'purchase-closing-out') return { rules: ['closing-outside-basis'] };
  if (bucket === 'selling') return { rules: ['gain-on-sale'] };
  if (bucket === 'tool')
    return { rules: ['de-minimis'], note: `${BUCKETS.tool.about}; no part of the house` };
  return { rules: ['holding-apart'], note: 'open: the preparer places it' };
}
