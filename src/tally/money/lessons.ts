/** What the next house can be priced with. Nothing of it goes on a return. */

import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { HOLDING } from '../../facts/bucket.js';
import { daysBetween } from '../../facts/day-number.js';
import type { Areas } from '../area.js';
import { AREA_CLASS_NAMES } from '../area-answer.js';
import type { Improvement } from '../improvements.js';
import { type Books, rowsIn, sumRows, sureDay } from './books.js';
import { compareBudget } from './budget.js';
import { divideRounded } from './divide.js';
import { heldUp } from './held-up.js';
import type { Lessons } from './money-tally.js';
import { roomFinder, SPENT, shareOut, tradeFinder } from './spending-shares.js';

export function drawLessons(
  books: Books,
  areas: Areas,
  improvements: readonly Improvement[],
): { lessons: Lessons; diagnostics: readonly Diagnostic[] } {
  const { house, ledger, money, sale, bought } = books;
  const rows = rowsIn(books, ...SPENT);
  const spent = sumRows(rows).cents;
  const tradeOfRow = tradeFinder(house, books.findPayee, improvements);
  const roomOfRow = roomFinder(house);
  const budget = compareBudget(books, { spent: rows, tradeOfRow, roomOfRow });
  const area = areaOf(areas);
  const holdingRows = rowsIn(books, ...HOLDING);
  const holding = sumRows(holdingRows).cents;
  const end = holdingEnd(books);
  const holdingDays = daysFrom(bought, end.day);
  const holdingWithin =
    end.what === 'ready to be let'
      ? sumRows(holdingRows.filter(({ date }) => date < end.day)).cents
      : holding;
  const profitNote = whyNoProfit(books);
  const profit =
    sale === undefined || profitNote !== undefined ? undefined : sale.price - sumRows(books.costs).cents;
  const hours = {
    owner: ledger.hours.reduce((sum, one) => sum + (isOwner(one.who) ? one.hundredths : 0), 0),
    others: ledger.hours.reduce((sum, one) => sum + (isOwner(one.who) ? 0 : one.hundredths), 0),
  };
  const hourRate = money['hour-rate'];
  const hoursOrder = ledger.hours.toSorted((a, b) => a.row - b.row);
  return {
    lessons: {
      spent,
      area,
      perSquareFoot: area && divideRounded(BigInt(spent), BigInt(area.squareFeet)),
      byTrade: shareOut(rows, hoursOrder, tradeOfRow, area?.squareFeet),
      byRoom: shareOut(rows, hoursOrder, roomOfRow, area?.squareFeet),
      budget: budget.lines,
      days: daysOf(books),
      heldUp: heldUp(books),
      holding,
      holdingDays,
      holdingEnd: end.what,
      holdingWithin,
      holdingPerDay:
        holdingDays === undefined || holdingDays === 0
          ? undefined
          : divideRounded(BigInt(holdingWithin), BigInt(holdingDays)),
      profit,
      profitNote,
      hours,
      hourRate,
      profitAfterHours:
        profit === undefined || hourRate === undefined
          ? undefined
          : profit - divideRounded(BigInt(hours.owner) * BigInt(hourRate), 100n),
    },
    diagnostics: budget.diagnostics,
  };
}

type HoldingEnd =
  | { readonly what: 'ready to be let'; readonly day: string }
  | { readonly what: Exclude<Lessons['holdingEnd'], 'ready to be let'>; readonly day: string | undefined };

function holdingEnd({ money, sale, asOf }: Books): HoldingEnd {
  const service = sureDay(money.rental?.['in-service']);
  if (service !== undefined && service <= asOf && (sale === undefined || service < sale.day))
    return { what: 'ready to be let', day: service };
  if (sale === undefined) return { what: 'as-of day', day: asOf };
  return { what: 'sold', day: sale.sure ? sale.day : undefined };
}

const isOwner = (who: string): boolean => who.trim().toLowerCase() === 'owner';

/** Finished floor above the ground, the figure that houses are compared by; already rounded once, half up. */
function areaOf({ byClass, estimate }: Areas): Lessons['area'] {
  const { squareFeet } = byClass['above-finished'];
  if (squareFeet <= 0) return undefined;
  return {
    squareFeet,
    words: `${AREA_CLASS_NAMES['above-finished'].toLowerCase()}${estimate ? ', in part an estimate' : ''}`,
  };
}

function daysOf({ house, sale, bought, asOf }: Books): Lessons['days'] {
  const listed = sureDay(house.house.listed);
  const sold = sale?.sure === true ? sale.day : undefined;
  return {
    bought,
    listed,
    sold,
    // When it is to be listed is a plan until that day.
    toListing: listed !== undefined && listed > asOf ? undefined : daysFrom(bought, listed),
    toSale: daysFrom(bought, sold),
  };
}

/** Undefined where a day is missing or they stand the wrong way round. */
function daysFrom(from: string | undefined, to: string | undefined): number | undefined {
  return from === undefined || to === undefined || to < from ? undefined : daysBetween(from, to);
}

function whyNoProfit(books: Books): string | undefined {
  if (books.sale === undefined) return 'not sold yet';
  return rowsIn(books, 'purchase').length === 0
    ? 'not known: the cost sheet has no row of the purchase'
    : undefined;
}
