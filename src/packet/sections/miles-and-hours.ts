/** Trips at the rate of their date, and hours that are never money. The house file's alone. */

import { printDate } from '../../facts/date.js';
import type { HoursRow, Trip } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { groupThousands } from '../../facts/written-number.js';
import type { MoneyTally } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import {
  hoursWords,
  inColumn,
  milesWords,
  moneyWords,
  placeWords,
  rowsRuns,
  withRules,
} from '../money-words.js';
import type { Block, Section } from '../packet.js';
import { rich, soft, upperFirst } from '../rich.js';
import { MOST_ROWS } from './costs.js';

export function milesAndHours(context: Context, money: MoneyTally): Section {
  return {
    id: 'miles-and-hours',
    title: 'Miles and hours',
    blocks: [...miles(context, money), ...hours(context, money)],
  };
}

const tripAnchor = (row: number): string => `trip-${row}`;

function miles(context: Context, { miles: spans, ledger, rules }: MoneyTally): Block[] {
  if (ledger.trips.length === 0)
    return [{ kind: 'paragraph', id: 'miles-none', size: 'body', text: rich('No trip is recorded.') }];
  const sum = spans.reduce((all, one) => all + one.thousandths, 0);
  const tolls = spans.reduce((all, one) => all + one.tolls, 0);
  const known = spans.every(({ cents }) => cents !== undefined);
  const readings = context.whole.money?.odometer ?? [];
  return [
    {
      kind: 'table',
      id: 'mile-spans',
      caption: 'Miles at the rate in force on the day of each trip',
      columns: columns(
        ['Days', 30],
        ['Trips', 14],
        ['Miles', 12, 'right'],
        ['Cents a mile', 14, 'right'],
        ['Tolls, parking', 14, 'right'],
        ['At that rate', 16, 'right'],
      ),
      rows: [
        ...spans.map((span, index) => ({
          id: `mile-span-${index + 1}`,
          cells: [
            rich(`${isoDate(span.from)} to ${isoDate(span.to)}`),
            rowsRuns(span.rows, tripAnchor),
            rich(milesWords(span.thousandths)),
            rich(span.rate === undefined ? 'no rate' : centsAMile(span.rate)),
            rich(span.tolls === 0 ? '' : printMoney(span.tolls)),
            rich(moneyWords(span.cents)),
          ],
        })),
        {
          id: 'mile-spans-sum',
          cells: [
            rich('All'),
            rich(''),
            rich(milesWords(sum)),
            rich(''),
            rich(tolls === 0 ? '' : printMoney(tolls)),
            rich(known ? printMoney(spans.reduce((all, one) => all + (one.cents ?? 0), 0)) : 'not known'),
          ],
          weight: 'total',
        },
      ],
      note: withRules(
        'Tolls and parking come on top of the rate. The rate stands in the place of fuel, repairs and insurance; whether it may be used, and which trips count, is for the preparer to say.',
        [...new Set(spans.map(({ rule }) => rule))],
        rules,
      ),
    },
    ...(readings.length === 0
      ? []
      : [
          {
            kind: 'list',
            id: 'odometer',
            items: readings.map(({ year, vehicle, start, end, read }, index) => ({
              id: `odometer-${index + 1}`,
              text: rich(
                `Odometer${vehicle === undefined ? '' : ` of the ${vehicle}`} in ${year}: ${groupThousands(start)} to ${groupThousands(end)} miles${read === undefined ? '' : `, read ${printDate(read)}`}.`,
              ),
            })),
          } satisfies Block,
        ]),
    ...(ledger.trips.length > MOST_ROWS ? [] : [trips(ledger.trips)]),
  ];
}

/** Tenths of a cent: 725 → "72.5". */
const centsAMile = (rate: number): string => `${Math.floor(rate / 10)}.${rate % 10}`;

function trips(list: readonly Trip[]): Block {
  const miles = inColumn(
    list.map(({ thousandths }) => thousandths),
    3,
  );
  return {
    kind: 'table',
    id: 'trips',
    caption: 'Trips',
    columns: columns(
      ['Row', 6, 'right'],
      ['Date', 15],
      ['From', 20],
      ['To', 22],
      ['Purpose', 25],
      ['Miles', 12, 'right'],
    ),
    rows: list.map((trip) => ({
      id: tripAnchor(trip.row),
      cells: [
        rich(String(trip.row)),
        rich(isoDate(trip.date)),
        rich(trip.from ?? ''),
        rich(trip.to),
        rich(
          trip.purpose,
          trip.tolls !== 0 && soft(` (tolls ${printMoney(trip.tolls)})`),
          trip.vehicle !== undefined && soft(` (${trip.vehicle})`),
          trip.note !== undefined && soft(` (${trip.note})`),
        ),
        rich(miles(trip.thousandths)),
      ],
    })),
  };
}

function hours(context: Context, { ledger, lessons }: MoneyTally): Block[] {
  if (ledger.hours.length === 0)
    return [{ kind: 'paragraph', id: 'hours-none', size: 'body', text: rich('No hours are recorded.') }];
  const all = lessons.hours.owner + lessons.hours.others;
  return [
    {
      kind: 'statement',
      id: 'hours-total',
      size: 'body',
      text: rich(
        `${hoursWords(all)} hours of unpaid work are recorded: ${hoursWords(lessons.hours.owner)} of the owner, ${hoursWords(lessons.hours.others)} of others. They are no cost and stand in no sum of these pages.`,
      ),
      mark: {
        standing: 'owner',
        word: 'Owner’s statement',
        detail: [soft(ledger.sheets.hours ?? 'the sheet of hours')],
      },
    },
    ...(ledger.hours.length > MOST_ROWS ? [] : [hoursTable(context, ledger.hours)]),
  ];
}

function hoursTable(context: Context, list: readonly HoursRow[]): Block {
  const inHours = inColumn(
    list.map(({ hundredths }) => hundredths),
    2,
  );
  return {
    kind: 'table',
    id: 'hours',
    caption: 'Hours',
    columns: columns(
      ['Row', 6, 'right'],
      ['Date', 16],
      ['Who', 14],
      ['What', 32],
      ['For', 22],
      ['Hours', 10, 'right'],
    ),
    rows: list.map((row) => ({
      id: `hours-${row.row}`,
      cells: [
        rich(String(row.row)),
        rich(isoDate(row.date)),
        rich(upperFirst(row.who)),
        rich(row.what, row.note !== undefined && soft(` (${row.note})`)),
        rich(row.place === undefined ? '' : placeWords(context.house, row.place)),
        rich(inHours(row.hundredths)),
      ],
    })),
  };
}
