/** How long which papers are kept, and by which rule. The house file's alone. */
import type { MoneyTally, Retention } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import { isoDate } from '../date-words.js';
import { rulesRuns } from '../money-words.js';
import type { Section } from '../packet.js';
import { counted, rich, upperFirst } from '../rich.js';

export function keepUntil({ retention, rules }: MoneyTally): Section {
  return {
    id: 'keep-until',
    title: 'How long to keep papers',
    blocks: [
      {
        kind: 'table',
        id: 'retention',
        caption: 'The shortest times that a rule names',
        columns: columns(
          ['What', 34],
          ['Kept for', 14],
          ['Counted from', 26],
          ['Keep through', 18],
          ['Rules', 8],
        ),
        rows: retention.map((one) => ({
          id: `retention-${one.id}`,
          cells: [
            rich(upperFirst(one.what)),
            rich(one.years === undefined ? 'no end' : counted(one.years, 'year')),
            rich(upperFirst(one.from)),
            rich(throughWords(one)),
            rulesRuns(one.rules, rules),
          ],
        })),
        note: rich(
          'A state, a lender or an insurer may ask for longer. What proves the price and the work is worth keeping as long as anyone may ask.',
        ),
      },
    ],
  };
}

function throughWords({ kept, through }: Retention): string {
  if (kept === 'for good') return 'for good';
  return through === undefined ? 'not counted yet' : isoDate(through);
}
