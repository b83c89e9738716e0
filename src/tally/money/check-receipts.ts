/** Receipts and invoices against the rows that name them. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { plainDecimal } from '../../facts/print-decimal.js';
import { rowsInWords } from '../../facts/row-runs.js';
import { addUp, type Books } from './books.js';
import { groupBy } from './group-by.js';

export function checkReceipts({ costs, house, ledger }: Books): Diagnostic[] {
  const sheet = ledger.sheets.costs;
  // A sheet that is still empty is told as such.
  if (sheet === undefined || costs.length === 0) return [];
  const named = new Set(house.documents.map(({ id }) => id));
  const onPaper = costs.filter(({ receipt }) => receipt !== undefined && named.has(receipt));
  const byReceipt = groupBy(onPaper, ({ receipt }) => receipt);
  return house.documents.flatMap((paper, at): Diagnostic[] => {
    const rows = byReceipt.get(paper.id);
    if (rows === undefined) return paper.kind === 'receipt' || paper.kind === 'invoice' ? [unused(at)] : [];
    return paper.total === undefined
      ? []
      : againstTotal({ rows, sheet, id: paper.id, total: paper.total, at });
  });
}

/** One text for all of them, so that the report tells them together. */
const unused = (at: number): Diagnostic => ({
  code: 'tally.unused-receipt',
  severity: 'warning',
  path: ['documents', at],
  message: 'no row of the cost sheet names this paper',
  hints: [
    'write its id into the column  receipt  of its row in the cost sheet',
    'if it is no payment for this house, give it  kind: other',
  ],
});

/** A paper with a total, and the rows that name it. */
interface Named {
  readonly rows: readonly CostRow[];
  /** Name of the cost sheet. */
  readonly sheet: string;
  readonly id: string;
  readonly total: number;
  /** Position under documents:. */
  readonly at: number;
}

/**
 * A refund stands on a paper of its own or on the first one, so that what was paid may agree with or without it.
 * Above the paper's total something was written that the paper doesn't show; below it, something is missing.
 */
function againstTotal({ rows, sheet, id, total, at }: Named): Diagnostic[] {
  const paid = addUp(rows.flatMap(({ cents }) => (cents > 0 ? [cents] : [])));
  const net = addUp(rows.map(({ cents }) => cents));
  if (paid === total || net === total || (paid === 0 && net === -total)) return [];
  const which = `${rowsInWords(rows.map(({ row }) => row))} of ${sheet}`;
  const verb = rows.length === 1 ? 's' : '';
  const path = ['documents', at, 'total'];
  // The paper of a refund alone, whose total may be written with or without its sign.
  const isRefund = paid === 0 && net < 0;
  const put = isRefund ? -net : paid;
  const comes = isRefund ? Math.abs(total) : total;
  const told = `${which} ${isRefund ? `take${verb} back` : `put${verb}`} ${printMoney(put)}`;
  const ifSo = `if the paper says so, write  total: ${plainDecimal(isRefund && total < 0 ? net : put, 2)}`;
  if (put > comes)
    return [
      {
        code: 'tally.receipt-total',
        severity: 'error',
        path,
        message: `${told} on ${id}, which only comes to ${printMoney(comes)}`,
        hints: [ifSo, `correct the rows, or write another receipt than ${id} into one of them`],
      },
    ];
  return [
    {
      code: 'tally.receipt-total',
      severity: 'warning',
      path,
      message: `${printMoney(comes - put)} of ${id} has no row: it comes to ${printMoney(comes)}, and ${told} on it`,
      hints: ['write a row for the rest; what was not for this house can stay out', ifSo],
    },
  ];
}
