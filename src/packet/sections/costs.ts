/** What was paid: the sums, and every row of the cost sheet under its bucket. The house file's alone. */
import { BUCKETS, HOLDING } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import type { BucketTotal, MoneyTally } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import { costAnchor, placeWords } from '../money-words.js';
import type { Block, Rich, Section } from '../packet.js';
import { plateAnchor } from '../plate-anchor.js';
import { link, rich, say, soft } from '../rich.js';

/** More rows than these no reader turns the pages of: the sums are printed, and the rows stand in the files beside them. */
export const MOST_ROWS = 1500;

export function costs(context: Context, money: MoneyTally): Section {
  return { id: 'costs', title: 'Costs', blocks: [...intro(money), sums(money), ...rows(context, money)] };
}

function intro({ ledger, allPaid }: MoneyTally): Block[] {
  const days = ledger.costs.map(({ date }) => date).sort();
  const [first, last] = [days[0], days.at(-1)];
  const sheet = ledger.sheets.costs ?? 'the cost sheet';
  return [
    {
      kind: 'statement',
      id: 'costs-total',
      size: 'lead',
      text: rich(
        first === undefined || last === undefined
          ? 'No payment is recorded.'
          : `${printMoney(allPaid)} was paid for this house between ${isoDate(first)} and ${isoDate(last)}, refunds and rebates taken off.`,
      ),
      mark: {
        standing: 'owner',
        word: 'Owner’s statement',
        detail: [soft(`${ledger.costs.length} rows of ${sheet}`)],
      },
    },
    {
      kind: 'paragraph',
      id: 'costs-standing',
      size: 'small',
      text: rich(
        'These pages add up what the owner wrote down. They are for the owner and a tax preparer, decide nothing, and are no tax advice. Row numbers are those of the sheet as a spreadsheet shows them; the headings are row 1.',
      ),
    },
  ];
}

function sums({ totals, allPaid }: MoneyTally): Block {
  const holding = totals.filter(({ bucket }) => HOLDING.includes(bucket));
  return {
    kind: 'table',
    id: 'cost-buckets',
    caption: 'By bucket',
    columns: columns(
      ['Bucket', 40],
      ['Rows', 12, 'right'],
      ['Refunds in it', 20, 'right'],
      ['Paid', 28, 'right'],
    ),
    rows: [
      ...totals.map((total) => ({
        id: `cost-sum-${total.bucket}`,
        cells: [
          rich(link(BUCKETS[total.bucket].title, bucketAnchor(total.bucket))),
          rich(String(total.rows.length)),
          rich(total.refunds === 0 ? '' : printMoney(total.refunds)),
          rich(printMoney(total.cents)),
        ],
      })),
      {
        id: 'cost-sum-all',
        cells: [
          rich('All'),
          rich(String(totals.reduce((sum, one) => sum + one.rows.length, 0))),
          rich(moneyOrBlank(totals.reduce((sum, one) => sum + one.refunds, 0))),
          rich(printMoney(allPaid)),
        ],
        weight: 'total',
      },
    ],
    ...(holding.length > 1
      ? {
          note: rich(
            `Holding the house cost ${printMoney(holding.reduce((sum, one) => sum + one.cents, 0))} in all.`,
          ),
        }
      : {}),
  };
}

const moneyOrBlank = (cents: number): string => (cents === 0 ? '' : printMoney(cents));

const bucketAnchor = (bucket: BucketTotal['bucket']): string => `costs-${bucket}`;

function rows(context: Context, { totals, ledger }: MoneyTally): Block[] {
  const many = ledger.costs.length > MOST_ROWS;
  const byRow = new Map(ledger.costs.map((row) => [row.row, row]));
  return totals.flatMap((total): Block[] => {
    const list = total.rows.flatMap((row) => byRow.get(row) ?? []);
    const { title } = BUCKETS[total.bucket];
    if (many)
      return [
        {
          kind: 'paragraph',
          id: bucketAnchor(total.bucket),
          size: 'body',
          text: rich(
            `${title}: ${list.length} rows, too many to print here. They stand in ledger.csv and ledger.xlsx beside these pages.`,
          ),
        },
      ];
    return [rowsTable(context, bucketAnchor(total.bucket), title, list, total.cents)];
  });
}

/** Rows of the sheet as they are told wherever they are listed. */
function rowsTable(
  context: Context,
  id: string,
  caption: string,
  list: readonly CostRow[],
  total: number,
): Block {
  const placed = list.some(({ place }) => place !== undefined);
  const forWhich = (words: string): Rich[] => (placed ? [rich(words)] : []);
  return {
    kind: 'table',
    id,
    caption,
    columns: columns(
      ['Row', 6, 'right'],
      ['Date', 13],
      ['Paid to, for what', placed ? 36 : 54],
      ...(placed ? [['For', 18] as const] : []),
      ['Receipt', 13],
      ['Amount', 14, 'right'],
    ),
    rows: [
      ...list.map((row) => ({
        id: costAnchor(row.row),
        cells: [
          rich(String(row.row)),
          rich(isoDate(row.date)),
          whatWords(row),
          ...forWhich(row.place === undefined ? '' : placeWords(context.house, row.place)),
          receiptCell(context, row),
          rich(printMoney(row.cents)),
        ],
      })),
      {
        id: `${id}-sum`,
        cells: [rich('Sum'), rich(''), rich(''), ...forWhich(''), rich(''), rich(printMoney(total))],
        weight: 'total' as const,
      },
    ],
  };
}

export function whatWords({ payee, what, paid, salesTax, taxYear, note }: CostRow): Rich {
  const remarks = [
    paid === undefined ? undefined : PAID[paid],
    salesTax === undefined || salesTax === 0 ? undefined : `sales tax ${printMoney(salesTax)} in it`,
    taxYear === undefined ? undefined : `counts in ${taxYear}`,
    note,
  ].filter((one) => one !== undefined);
  return rich(say(`${payee}: ${what}`), remarks.length > 0 && soft(` (${remarks.join('; ')})`));
}

const PAID = {
  cash: 'cash',
  check: 'check',
  transfer: 'bank transfer',
  card: 'card',
  network: 'payment network',
  loan: 'by the lender',
} as const;

const receiptCell = (context: Context, { receipt }: CostRow): Rich =>
  receipt === undefined ? rich(soft('none')) : rich(link(receipt, plateAnchor(context, receipt)));
