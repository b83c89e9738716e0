/**
 * Several houses side by side: what each cost a square foot and a day, and where the money went. For the owner alone.
 *
 * Takes what was learnt of each house (`tally/money/lessons.ts`). Gives one packet of one page, rendered like every
 * other. Start reading at `composeComparison`.
 */
import { printMoney } from '../facts/money.js';
import type { Lessons, PayeeYear } from '../tally/money/money-tally.js';
import { columns } from './columns.js';
import { isoDate } from './date-words.js';
import { digestOf } from './digest.js';
import { type AmountBar, drawBars } from './draw-bars.js';
import { factsExport } from './facts-file.js';
import { hoursWords } from './money-words.js';
import type { Block, Packet, Rich, Section } from './packet.js';
import { sectionsWithProperSigns } from './proper-signs.js';
import { counted, rich, soft, strong, upperFirst } from './rich.js';
import { STANDING } from './sections/notices.js';

export interface ComparedHouse {
  /** Name of the house folder. */
  readonly folder: string;
  readonly name: string;
  readonly lessons: Lessons;
  readonly sold: boolean;
}

/** Begins the name of the comparison's PDF. */
export const COMPARISON = 'houses-compared';

export interface ComparisonOrder {
  readonly houses: readonly ComparedHouse[];
  /** Sums by payee and year over all houses of the list. */
  readonly payees: readonly PayeeYear[];
  readonly asOf: string;
  readonly program: string;
}

export function composeComparison({ houses, payees, asOf, program }: ComparisonOrder): Packet {
  const sections = sectionsWithProperSigns([
    figures(houses, asOf),
    ...drawings(houses),
    trades(houses),
    ...acrossHouses(payees),
  ]);
  const draft: Omit<Packet, 'digest'> = {
    house: {
      folder: COMPARISON,
      name: 'Houses compared',
      place: upperFirst(counted(houses.length, 'house')),
    },
    edition: { name: 'file', title: 'Comparison', reader: 'For the owner only; never published' },
    asOf,
    asOfText: isoDate(asOf),
    arrangement: 'one-page',
    keyFacts: [],
    sections,
    photos: [],
    originals: [],
    exports: [],
    standing: STANDING,
  };
  const packet: Packet = { ...draft, digest: digestOf(draft) };
  return { ...packet, exports: [factsExport(packet, program)] };
}

/** One figure of a house: how it is asked for, and what is said where it isn't known. */
interface Figure {
  readonly id: string;
  readonly label: string;
  readonly of: (lessons: Lessons) => number | undefined;
  readonly words: (value: number) => string;
  /** Can be told of a house that is sold alone. */
  readonly afterSale?: true;
}

const days = (value: number): string => counted(value, 'day');

const FIGURES: readonly Figure[] = [
  { id: 'spent', label: 'Spent on the work', of: (one) => one.spent, words: printMoney },
  { id: 'square-foot', label: 'A square foot', of: (one) => one.perSquareFoot, words: printMoney },
  { id: 'to-listing', label: 'Purchase to listing', of: (one) => one.days.toListing, words: days },
  { id: 'to-sale', label: 'Purchase to sale', of: (one) => one.days.toSale, words: days, afterSale: true },
  { id: 'holding', label: 'Holding a day', of: (one) => one.holdingPerDay, words: printMoney },
  { id: 'hours', label: 'Unpaid hours', of: ({ hours }) => hours.owner + hours.others, words: hoursWords },
  { id: 'left', label: 'Left after the sale', of: (one) => one.profit, words: printMoney, afterSale: true },
  {
    id: 'after-hours',
    label: 'Left if own hours had cost money',
    of: (one) => one.profitAfterHours,
    words: printMoney,
    afterSale: true,
  },
];

function figures(houses: readonly ComparedHouse[], asOf: string): Section {
  const cell = (figure: Figure, house: ComparedHouse): Rich => {
    const value = figure.of(house.lessons);
    if (value !== undefined) return rich(figure.words(value));
    return rich(soft(figure.afterSale === true && !house.sold ? 'not sold yet' : 'not known'));
  };
  return {
    id: 'figures',
    title: 'The houses in figures',
    blocks: [
      {
        kind: 'table',
        id: 'figures-table',
        caption: '',
        columns: columns(['House', 20], ...FIGURES.map(({ label }) => [label, 10, 'right'] as const)),
        rows: houses.map((house, index) => ({
          id: `house-${index + 1}`,
          cells: [rich(house.name), ...FIGURES.map((figure) => cell(figure, house))],
        })),
        note: rich(
          `Counted to ${isoDate(asOf)}. The work is improvements, restorations and repairs, refunds and rebates taken off; a square foot is one of finished area above grade. What is left after a sale is before tax. Hours are no cost; the last column is for comparison only. Days are told where both ends are known to the day.`,
        ),
      },
    ],
  };
}

function drawings(houses: readonly ComparedHouse[]): Section[] {
  const drawn = ['square-foot', 'to-listing', 'holding', 'left'].flatMap((id) => {
    const figure = FIGURES.find((one) => one.id === id);
    return figure === undefined ? [] : [figure];
  });
  const blocks = drawn.flatMap((figure): Block[] => {
    const bars = houses.flatMap(({ name, lessons }): AmountBar[] => {
      const value = figure.of(lessons);
      return value === undefined ? [] : [{ label: name, amount: value, words: figure.words(value) }];
    });
    // One bar compares nothing.
    if (bars.length < 2) return [];
    const missing = houses.length - bars.length;
    return [
      {
        kind: 'drawing',
        id: `bars-${figure.id}`,
        drawing: drawBars(bars, 'wide'),
        narrow: drawBars(bars, 'narrow'),
        alt: `Bars, ${figure.label.toLowerCase()}: ${bars.map(({ label, words }) => `${label} ${words}`).join(', ')}.`,
        caption: rich(
          strong(`${figure.label}. `),
          missing > 0 && soft(`Not known of ${counted(missing, 'house')}.`),
        ),
      },
    ];
  });
  return blocks.length === 0 ? [] : [{ id: 'drawings', title: 'Side by side', blocks }];
}

/** Houses that a table of trades has room for. */
const MOST_COLUMNS = 6;

function trades(houses: readonly ComparedHouse[]): Section {
  const labels = [
    ...new Set(houses.flatMap(({ lessons }) => lessons.byTrade.map(({ label }) => label))),
  ].sort();
  const groups: ComparedHouse[][] = [];
  for (let at = 0; at < houses.length; at += MOST_COLUMNS) groups.push(houses.slice(at, at + MOST_COLUMNS));
  return {
    id: 'trades',
    title: 'What each trade cost',
    blocks: groups.map((group, index) => ({
      kind: 'table',
      id: `trades-${index + 1}`,
      caption: '',
      columns: columns(['Trade', 24], ...group.map(({ name }) => [name, 12, 'right'] as const)),
      rows: labels.map((label, row) => ({
        id: `trades-${index + 1}-row-${row + 1}`,
        cells: [rich(label), ...group.map(({ lessons }) => tradeCell(lessons, label))],
      })),
      note: rich('In brackets: the same a square foot.'),
    })),
  };
}

function tradeCell({ byTrade }: Lessons, label: string): Rich {
  const share = byTrade.find((one) => one.label === label);
  if (share === undefined) return rich(soft('none'));
  const { cents, perSquareFoot: per } = share;
  return rich(printMoney(cents), per !== undefined && soft(` (${printMoney(per)})`));
}

/** The threshold counts what one payer paid for all houses: here they are added up. */
function acrossHouses(payees: readonly PayeeYear[]): Section[] {
  const told = payees.filter(({ verdict }) => verdict === 'report' || verdict === 'undecided');
  if (told.length === 0) return [];
  return [
    {
      id: 'payees',
      title: 'Payees over all these houses',
      blocks: [
        {
          kind: 'table',
          id: 'payees-table',
          caption: 'Whom a return may have to name',
          columns: columns(['Payee', 26], ['Year', 8], ['Counted', 16, 'right'], ['What that means', 50]),
          rows: told.map((one, index) => ({
            id: `payee-${index + 1}`,
            cells: [
              rich(one.payee),
              rich(String(one.year)),
              rich(printMoney(one.counted)),
              rich(
                strong(one.verdict === 'report' ? 'A return is due' : 'Undecided'),
                one.verdict === 'report' && one.due !== undefined ? ` by ${isoDate(one.due)}. ` : '. ',
                one.why,
              ),
            ],
          })),
          note: rich('Other jobs of yours count as well. No tax advice: the preparer has the last word.'),
        },
      ],
    },
  ];
}
