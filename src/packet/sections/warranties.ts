import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { markOf } from '../marks.js';
import type { Block } from '../packet.js';
import { rich, upperFirst } from '../rich.js';
import { isoDate } from './safety.js';

export function warrantyTable(context: Context): Block[] {
  const list = context.tally.warranties;
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'warranties',
      caption: 'Warranties',
      columns: columns(['On', 30], ['Last day', 26], ['Moves to the next owner', 20], ['Terms', 24]),
      rows: list.map((end, index) => {
        const item = end.on.kind === 'system' ? end.on.item : end.on.item;
        const name = end.on.kind === 'system' ? (end.on.item.name ?? end.on.item.is) : end.on.item.what;
        const last =
          end.lastDay === undefined
            ? 'not known'
            : `${isoDate(end.lastDay)}${end.basis === 'counted from installation' ? ', counted from installation' : ''}${end.running === false ? ' (over)' : ''}`;
        return {
          id: `warranty-${index + 1}`,
          cells: [
            rich(upperFirst(name), end.warranty.of === undefined ? undefined : `, ${end.warranty.of}`),
            rich(last),
            rich(end.warranty['moves-to-buyer']),
            rich(end.warranty.terms ?? ''),
          ],
          mark: markOf(context, item, end.lastDay !== undefined),
        };
      }),
      note: rich('A warranty is the maker’s or installer’s promise, on its own terms. The owner adds none.'),
    },
  ];
}
