/** The seller's property tax in the cost of a purchase: rows of the sheet, or the bill under `money: property-tax:`. */
import { dayWords } from '../../facts/date-moment.js';
import { printMoney } from '../../facts/money.js';
import { type Books, rowsIn, sumRows } from './books.js';
import type { SheetLine } from './money-tally.js';
import { basisChange, splitPropertyTax, unpaidBack } from './property-tax-split.js';
import { boughtFacts, propertyTaxFact } from './sheet-facts.js';
import { figureLine, rowsLine, sumLines } from './sheet-line.js';

const RULES = ['property-tax-by-days'] as const;
const LABEL = 'Seller’s property tax taken over, or buyer’s paid by the seller';

/**
 * Where rows and a bill are both there only the rows count, and the note tells what the bill comes to. A bill of
 * which nobody wrote whether it was paid back moves nothing; the note tells both figures.
 */
export function sellerTaxLines(books: Books): SheetLine[] {
  const rows = rowsIn(books, 'property-tax-taken-over');
  const bills = billLines(books);
  if (rows.length === 0) return bills;
  const told = sumRows(rows).cents;
  const worked = sumLines(bills);
  const unsure = bills.find(({ cents }) => cents === undefined);
  const note =
    bills.length === 0
      ? undefined
      : unsure !== undefined
        ? `only the rows count; the bill under money: property-tax: can’t be worked out (${unsure.note})`
        : worked === told
          ? 'the bill under money: property-tax: comes to the same by days'
          : `only the rows count; by days the bill under money: property-tax: comes to ${printMoney(worked)}, which differs by ${printMoney(worked - told)}`;
  return [
    rowsLine('property-tax-taken-over', LABEL, rows, {
      rules: RULES,
      facts: bills.flatMap(({ facts }) => facts),
      note,
    }),
  ];
}

function billLines(books: Books): SheetLine[] {
  const { money, bought, house } = books;
  return money['property-tax'].map((bill, at) => {
    const id = `property-tax-bill-${at + 1}`;
    const from = bill.from.earliest;
    const split =
      bought === undefined || from === undefined ? undefined : splitPropertyTax(bill.amount, from, bought);
    const facts = [
      propertyTaxFact(bill, at, split && { days: split.days, sellerDays: split.days - split.buyerDays }),
      ...boughtFacts(books),
    ];
    const line = (cents: number | undefined, note: string): SheetLine =>
      figureLine(id, LABEL, cents, { rules: RULES, facts, note });
    if (split === undefined || from === undefined)
      return line(
        undefined,
        house.house.bought === undefined
          ? 'not worked out, and not added: the day of the purchase is not written under house: bought:'
          : 'not worked out, and not added: it takes the very day of the purchase',
      );
    const words = `${printMoney(bill.amount)} for the ${split.days} days from ${dayWords(from)}, paid by the ${bill['paid-by']}: ${split.buyerDays} days and ${printMoney(split.buyerCents)} are the buyer’s, ${printMoney(split.sellerCents)} the seller’s`;
    const change = basisChange(split, bill);
    if (change === undefined)
      return line(
        undefined,
        `${words}; open: not added, since it isn’t written whether it was paid back at closing. If it was, nothing moves; if not, ${printMoney(unpaidBack(split, bill))}`,
      );
    return line(change, bill.reimbursed === 'yes' ? `${words}; settled at closing, so nothing moves` : words);
  });
}
