/** Days that a form asks for, in words: when a house was acquired, ready to be let and sold, and how long it was held. */
import type { Role } from '../../facts/bucket.js';
import { printDate } from '../../facts/date.js';
import { dayWords } from '../../facts/date-moment.js';
import { daysBetween } from '../../facts/day-number.js';
import { groupThousands } from '../../facts/written-number.js';
import type { Books } from './books.js';
import type { Worksheet } from './money-tally.js';

type SheetDate = NonNullable<Worksheet['dates']>[number];

export function sheetDates(books: Books, role: Role): SheetDate[] {
  const { house, money, sale, asOf } = books;
  const bought = house.house.bought;
  const service = money.rental?.['in-service'];
  const date = (id: string, label: string, says: string): SheetDate => ({ id, label, says });
  return [
    date(
      'acquired',
      'Acquired',
      bought === undefined ? 'not written under house: bought:' : printDate(bought),
    ),
    ...(role === 'rental'
      ? [
          date(
            'in-service',
            'Ready to be let',
            service === undefined ? 'not written under money: rental: in-service:' : printDate(service),
          ),
        ]
      : []),
    date('sold', 'Sold', sale === undefined ? `not sold on ${dayWords(asOf)}` : sale.words),
    date('held', 'Held', heldWords(books)),
  ];
}

/** Counted from the day after the purchase, the day of the sale included. From memory. */
function heldWords({ bought, sale, asOf }: Books): string {
  if (bought === undefined) return 'not known to the day';
  if (sale?.sure === false) return 'not known to the day';
  const end = sale?.day ?? asOf;
  if (end < bought) return 'not known: the days stand the wrong way round';
  const days = daysBetween(bought, end);
  const words = `${groupThousands(days)} ${days === 1 ? 'day' : 'days'}`;
  return sale === undefined ? `${words} so far` : words;
}
