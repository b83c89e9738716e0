/** The owner’s own work outside the time in which they could do it: before the purchase, after the offer, after the sale. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import { whoDid } from '../who.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { type DatedDeed, datedDeeds, wasDone } from './dated-deeds.js';

/** Words by which the folder says that it knows: an earlier owner had it done, or it was allowed before closing. */
export const EARLIER_OWNER =
  /\b(seller|earlier|previous|former|before us|before (the )?(closing|purchase))\b/;
const AFTER_SALE = /\bafter (the )?(closing|sale)\b|\bfor the buyer\b/;

/** Tells no buyer anything new. */
const UPKEEP = ['cleaned', 'serviced'];

export function ownerAndDates({ house }: ClashSources): Diagnostic[] {
  const { bought, listed } = house.house;
  const closed = house.money?.sale?.closed;
  return datedDeeds(house).flatMap((deed): Diagnostic[] => {
    const who = whoDid(house, deed.by);
    if (deed.kept || who.kind === 'not-known') return [];
    // Who put a system in long ago may be known although an earlier owner hired them.
    const ours = who.kind !== 'hired' || deed.kind === 'work';
    if (ours && bought !== undefined && surelyBefore(deed.date, bought) && !EARLIER_OWNER.test(deed.said)) {
      const by =
        who.kind === 'hired' ? `by ${who.person.name}` : who.kind === 'owner' ? 'by you' : 'by your family';
      return [beforePurchase(deed, by, bought)];
    }
    if (closed !== undefined && surelyBefore(closed, deed.date))
      return AFTER_SALE.test(deed.said) ? [] : [afterSale(deed, closed)];
    const told = deed.did === undefined || !UPKEEP.includes(deed.did);
    return told && listed !== undefined && surelyBefore(listed, deed.date)
      ? [afterOffer(deed, listed, closed)]
      : [];
  });
}

const at = (deed: DatedDeed): FactPath => [...deed.path, deed.word];

function beforePurchase(deed: DatedDeed, by: string, bought: HouseDate): Diagnostic {
  return clashOf({
    severity: 'warning',
    path: at(deed),
    beside: ['house', 'bought'],
    message: `${deed.name} ${wasDone(deed)} ${by} (${printDate(deed.date)}) before you bought the house (${printDate(bought)})`,
    hints: [
      `correct  ${deed.word}: ${deed.date.written}`,
      'if an earlier owner had it done, write  by: not-known  and  from: seller',
      'if you were let in before closing, say so beside it:  note: done before closing',
      'if the house was bought earlier, correct  bought:  under house:',
    ],
  });
}

function afterOffer(deed: DatedDeed, listed: HouseDate, closed: HouseDate | undefined): Diagnostic {
  return clashOf({
    severity: 'note',
    path: at(deed),
    beside: ['house', 'listed'],
    message: `${deed.name} ${wasDone(deed)} (${printDate(deed.date)}) after the house was offered (${printDate(listed)}), so a sheet that the agent was given then does not have it`,
    hints: [
      closed === undefined ? 'give the agent a new sheet' : 'see that the buyer was told',
      `if that is a slip, correct  ${deed.word}: ${deed.date.written}  or  listed:  under house:`,
    ],
  });
}

function afterSale(deed: DatedDeed, closed: HouseDate): Diagnostic {
  return clashOf({
    severity: 'warning',
    path: at(deed),
    beside: ['money', 'sale', 'closed'],
    message: `${deed.name} ${wasDone(deed)} (${printDate(deed.date)}) after the sale had closed (${printDate(closed)})`,
    hints: [
      `correct  ${deed.word}: ${deed.date.written}`,
      'if it was done for the buyer, say so beside it:  note: done after closing',
      'if the sale closed later, correct  closed:  under money: sale:',
    ],
  });
}
