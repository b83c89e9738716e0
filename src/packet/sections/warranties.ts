import { printDate } from '../../facts/date.js';
import type { WarrantyEnd } from '../../tally/warranties.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import { markOf, promisedBy } from '../marks.js';
import type { Block } from '../packet.js';
import { rich, upperFirst } from '../rich.js';

/** As written where it was written: "about 2030" is no last day. */
function lastWords(end: WarrantyEnd): string {
  const over = end.running === false ? ' (over)' : '';
  if (end.stated !== undefined) return `${printDate(end.stated)}${over}`;
  return end.lastDay === undefined
    ? 'not known'
    : `${isoDate(end.lastDay)}, counted from installation${over}`;
}

export function warrantyTable(context: Context): Block[] {
  const list = context.tally.warranties;
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'warranties',
      caption: 'Warranties',
      columns: columns(['On', 28], ['Last day', 24], ['Moves to the next owner', 18], ['Terms', 30]),
      rows: list.map((end, index) => {
        const name = end.on.kind === 'system' ? (end.on.item.name ?? end.on.item.is) : end.on.item.what;
        return {
          id: `warranty-${index + 1}`,
          cells: [
            rich(upperFirst(name), end.warranty.of === undefined ? undefined : `, ${end.warranty.of}`),
            rich(lastWords(end)),
            rich(end.warranty['moves-to-buyer']),
            rich(end.warranty.terms ?? ''),
          ],
          mark: markOf(
            context,
            promisedBy(context, end.on.item),
            end.stated !== undefined || end.lastDay !== undefined,
          ),
        };
      }),
      note: rich('A warranty is the maker’s or installer’s promise, on its own terms. The owner adds none.'),
    },
  ];
}
