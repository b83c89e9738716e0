import { printDate } from '../../facts/date.js';
import type { CollectedFact } from '../collect-facts.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { markOf } from '../marks.js';
import type { TableBlock } from '../packet.js';
import { rich, upperFirst } from '../rich.js';

/** A corrected fact with the words that it had. */
export type Corrected = Pick<CollectedFact, 'words' | 'fact' | 'before' | 'printed'>;

/** Facts with what they were said to be before; rows are numbered behind `row`. */
export function correctedTable(
  context: Context,
  facts: readonly Corrected[],
  order: {
    readonly id: string;
    readonly row: string;
    readonly caption: string;
    /** Headings over the earlier and the present words. */
    readonly titles: readonly [before: string, now: string];
  },
): TableBlock {
  const [before, now] = order.titles;
  return {
    kind: 'table',
    id: order.id,
    caption: order.caption,
    columns: columns(['Fact', 34], [before, 20], [now, 24], ['Corrected', 22]),
    rows: facts.map((one, index) => ({
      id: `${order.row}-${index + 1}`,
      cells: [
        rich(upperFirst(one.words)),
        rich(one.before),
        rich(one.printed),
        rich(one.fact.corrected === undefined ? 'date not given' : printDate(one.fact.corrected)),
      ],
      mark: markOf(context, one.fact, one.fact.value !== undefined),
    })),
  };
}
