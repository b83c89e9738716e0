import { printDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import { printMoney } from '../../facts/money.js';
import { isThere } from '../../tally/still-there.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { type Known, markOf, promisedBy } from '../marks.js';
import type { Block } from '../packet.js';
import { rich, upperFirst } from '../rich.js';

const STAYS = { yes: 'stays', no: 'goes', 'not known': 'not settled' } as const;

export interface ConveyedThing {
  readonly id: string;
  readonly what: string;
  readonly stays: keyof typeof STAYS;
  readonly note: string | undefined;
  readonly known: Known;
}

/** What was said of systems and of other things, in one list. */
export function conveyedThings(context: Context): ConveyedThing[] {
  const systems = context.house.systems.flatMap((system): ConveyedThing[] =>
    system.conveys === undefined || !isThere(system)
      ? []
      : [
          {
            id: `conveys-${system.id}`,
            what: system.name ?? system.is,
            stays: system.conveys,
            note: undefined,
            known: promisedBy(context, system),
          },
        ],
  );
  return [
    ...systems,
    ...context.house.conveys.map(
      (item, index): ConveyedThing => ({
        id: `conveys-${index + 1}`,
        what: item.what,
        stays: item.stays,
        note: item.note,
        known: { evidence: [] },
      }),
    ),
  ];
}

export function conveys(context: Context): Block[] {
  const all = conveyedThings(context);
  if (all.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'conveys',
      caption: 'What stays and what goes',
      columns: columns(['What', 50], ['Stays or goes', 20], ['Remark', 30]),
      rows: all.map((item) => ({
        id: item.id,
        cells: [rich(upperFirst(item.what)), rich(STAYS[item.stays]), rich(item.note ?? '')],
        mark: markOf(context, item.known, item.stays !== 'not known'),
      })),
      note: rich('The contract decides what is sold; this is the owner’s list.'),
    },
  ];
}

/** "145.00 a month", "300.00 a half year", "500.00 once". */
export const dueWords = ({ amount, per }: Pick<House['dues'][number], 'amount' | 'per'>): string =>
  `${printMoney(amount)} ${per === 'once' ? 'once' : `a ${per.replace('-', ' ')}`}`;

export function dues(context: Context): Block[] {
  const list = context.house.dues;
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'dues',
      caption: 'Dues',
      columns: columns(['To', 40], ['Amount', 20, 'right'], ['For', 40]),
      rows: list.map((due, index) => ({
        id: `dues-${index + 1}`,
        cells: [
          rich(due.to),
          rich(dueWords(due)),
          rich(
            upperFirst(due.covers ?? 'not said'),
            due.since === undefined ? undefined : `; since ${printDate(due.since)}`,
          ),
        ],
        mark: markOf(context, due),
      })),
    },
  ];
}
