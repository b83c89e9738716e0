/** What the house teaches for the next one: what it cost a square foot, where money and days went. The house file's alone. */
import { printMoney } from '../../facts/money.js';
import { groupThousands } from '../../facts/written-number.js';
import type { Lessons, MoneyTally, Share } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import { isoDate } from '../date-words.js';
import { drawBars } from '../draw-bars.js';
import { hoursWords, moneyWords, rowsRuns } from '../money-words.js';
import type { Block, Section } from '../packet.js';
import { counted, rich, soft, upperFirst } from '../rich.js';

export function lessons({ lessons: learnt, sale }: MoneyTally): Section {
  return {
    id: 'lessons',
    title: 'For the next house',
    blocks: [
      figures(learnt, sale !== undefined),
      ...shares('by-trade', 'What each trade cost', learnt.byTrade),
      ...shares('by-room', 'What each room cost', learnt.byRoom),
      ...budget(learnt),
      ...heldUp(learnt),
    ],
  };
}

function figures(learnt: Lessons, sold: boolean): Block {
  const notSold = sold ? undefined : 'not sold yet';
  const { days, area } = learnt;
  const entry = (id: string, label: string, value: string | undefined) =>
    value === undefined ? [] : [{ id: `lesson-${id}`, label, value: rich(value) }];
  return {
    kind: 'record',
    id: 'lesson-figures',
    title: rich('The house in figures'),
    entries: [
      ...entry('spent', 'Spent on the work', printMoney(learnt.spent)),
      ...entry(
        'per-square-foot',
        'A square foot',
        learnt.perSquareFoot === undefined || area === undefined
          ? 'not known, since no size is'
          : `${printMoney(learnt.perSquareFoot)}, over ${groupThousands(area.squareFeet)} sq ft ${area.words}`,
      ),
      ...entry(
        'to-listing',
        'To listing',
        daysWords(days.toListing, days.bought, days.listed) ?? 'not known to the day',
      ),
      ...entry(
        'to-sale',
        'To sale',
        daysWords(days.toSale, days.bought, days.sold) ?? notSold ?? 'not known to the day',
      ),
      ...entry(
        'holding',
        'Holding',
        learnt.holdingPerDay === undefined || learnt.holdingDays === undefined
          ? printMoney(learnt.holding)
          : holdingWords(learnt, learnt.holdingPerDay, learnt.holdingDays),
      ),
      ...entry(
        'profit',
        'Left after the sale',
        learnt.profit === undefined
          ? (notSold ?? learnt.profitNote ?? 'not known')
          : `${printMoney(learnt.profit)}, before tax`,
      ),
      ...entry(
        'hours',
        'Unpaid hours',
        `${hoursWords(learnt.hours.owner)} of the owner, ${hoursWords(learnt.hours.others)} of others`,
      ),
      ...(learnt.hourRate === undefined
        ? []
        : entry(
            'after-hours',
            'With own hours paid',
            learnt.profitAfterHours === undefined
              ? (notSold ?? 'not known')
              : `${printMoney(learnt.profitAfterHours)} would be left, had each of the owner’s hours cost ${printMoney(learnt.hourRate)}; for comparison only, hours are no cost`,
          )),
    ],
  };
}

/** A house that is let is held for its tenants from then on: the day's cost is that of the time before. */
function holdingWords({ holding, holdingWithin, holdingEnd }: Lessons, perDay: number, days: number): string {
  const aDay = `${printMoney(perDay)} a day over ${counted(days, 'day')}`;
  if (holdingEnd !== 'ready to be let') return `${printMoney(holding)}, which is ${aDay}`;
  return `${printMoney(holding)}; of it ${printMoney(holdingWithin)} until it was ready to be let, which is ${aDay}`;
}

const daysWords = (
  days: number | undefined,
  from: string | undefined,
  to: string | undefined,
): string | undefined =>
  days === undefined || from === undefined || to === undefined
    ? undefined
    : `${counted(days, 'day')}, ${isoDate(from)} to ${isoDate(to)}`;

/** More bars than these are hard to compare. */
const MOST_BARS = 14;

function shares(id: string, caption: string, list: readonly Share[]): Block[] {
  const paid = list.filter(({ cents }) => cents !== 0);
  if (list.length === 0) return [];
  const bars = paid
    .slice(0, MOST_BARS)
    .map(({ label, cents }) => ({ label, amount: cents, words: printMoney(cents) }));
  return [
    { kind: 'heading', id: `lesson-${id}`, level: 3, text: caption },
    ...(bars.length < 2
      ? []
      : [
          {
            kind: 'drawing',
            id: `lesson-${id}-bars`,
            drawing: drawBars(bars, 'wide'),
            narrow: drawBars(bars, 'narrow'),
            alt: `Bars: ${bars.map(({ label, words }) => `${label} ${words}`).join(', ')}.`,
            caption: rich(
              paid.length > MOST_BARS
                ? `The ${MOST_BARS} largest of ${paid.length}.`
                : 'Refunds and rebates are taken off.',
            ),
          } satisfies Block,
        ]),
    {
      kind: 'table',
      id: `lesson-${id}-table`,
      caption: '',
      columns: columns(['', 34], ['Rows', 30], ['Unpaid hours', 14, 'right'], ['Paid', 22, 'right']),
      rows: list.map((share) => ({
        id: `lesson-${id}-${share.id}`,
        cells: [
          rich(share.label),
          rowsRuns(share.rows),
          rich(share.hundredths === 0 ? '' : hoursWords(share.hundredths)),
          rich(printMoney(share.cents)),
        ],
      })),
    },
  ];
}

function budget({ budget: list }: Lessons): Block[] {
  if (list.length === 0) return [];
  const bars = list.map(({ label, planned, actual }) => ({
    label: upperFirst(label),
    amount: actual,
    planned,
    words: printMoney(actual),
  }));
  return [
    { kind: 'heading', id: 'lesson-budget', level: 3, text: 'Planned and paid' },
    {
      kind: 'drawing',
      id: 'lesson-budget-bars',
      drawing: drawBars(bars, 'wide'),
      narrow: drawBars(bars, 'narrow'),
      alt: `Bars: ${list.map(({ label, planned, actual }) => `${label} planned ${printMoney(planned)}, paid ${printMoney(actual)}`).join('; ')}.`,
      caption: rich('The bar is what was paid; the post stands where the plan ended.'),
    },
    {
      kind: 'table',
      id: 'lesson-budget-table',
      caption: '',
      columns: columns(
        ['', 30],
        ['Rows', 22],
        ['Planned', 16, 'right'],
        ['Paid', 16, 'right'],
        ['Over the plan', 16, 'right'],
      ),
      rows: list.map(({ label, planned, actual, rows }, index) => ({
        id: `lesson-budget-${index + 1}`,
        cells: [
          rich(upperFirst(label)),
          rowsRuns(rows),
          rich(printMoney(planned)),
          rich(printMoney(actual)),
          rich(moneyWords(actual - planned)),
        ],
      })),
    },
  ];
}

function heldUp({ heldUp: list }: Lessons): Block[] {
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'lesson-held-up',
      caption: 'What held the work up',
      columns: columns(['Days', 10, 'right'], ['From', 20], ['To', 20], ['By', 50]),
      rows: list.map((one, index) => ({
        id: `lesson-held-up-${index + 1}`,
        cells: [rich(String(one.days)), rich(isoDate(one.from)), rich(isoDate(one.to)), rich(one.by)],
      })),
      note: rich(soft('Stretches may overlap.')),
    },
  ];
}
