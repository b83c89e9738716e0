/** What keeps a sale out of the sheets, or out of what is left after it. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { type Books, rowsIn } from './books.js';

export function saleNotes(books: Books): Diagnostic[] {
  return [...maybeToCome(books), ...withoutPurchase(books)];
}

/** A month or year that has begun: the sale may lie behind or ahead. */
function maybeToCome({ money, sale, asOf }: Books): Diagnostic[] {
  const closed = money.sale?.closed;
  if (closed === undefined || sale !== undefined || (closed.earliest ?? '') > asOf) return [];
  return [
    {
      code: 'tally.future',
      severity: 'note',
      path: ['money', 'sale', 'closed'],
      message: `this may lie after the day the packet is made for (${asOf}), so the sheets take the house as unsold`,
      hints: [`once it has closed, write the very day, for example  closed: ${asOf}`],
    },
  ];
}

function withoutPurchase(books: Books): Diagnostic[] {
  if (books.sale === undefined || books.costs.length === 0 || rowsIn(books, 'purchase').length > 0) return [];
  return [
    {
      code: 'tally.gap',
      severity: 'warning',
      path: ['money', 'sale'],
      message:
        'the house is sold, but no row of the cost sheet has the bucket  purchase: its price is missing from the sheets, and what is left after the sale can’t be told',
      hints: ['write what was paid for the house as a row with the bucket  purchase'],
    },
  ];
}
