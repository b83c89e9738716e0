/**
 * What was put into a rental, gathered by work item or place with the days it was paid: a preparer sorts the groups
 * into classes of property. The program names no class and works out no depreciation.
 */
import { dayWords } from '../../facts/date-moment.js';
import type { CostRow } from '../../facts/ledger.js';
import { type Books, rowsIn } from './books.js';
import { groupBy } from './group-by.js';
import { LET_PHASES, letPhase, PHASE_WORDS } from './let-phase.js';
import type { SheetLine, WorksheetPart } from './money-tally.js';
import type { RepairSplit } from './repairs-in-basis.js';
import { inServiceFacts } from './sheet-facts.js';
import { rowsLine, sumLines, totalLine } from './sheet-line.js';
import { thingName } from './thing-name.js';

const RULES = ['separate-accounts', 'improvement-test'] as const;

/** None where nothing was put in. Rebates and insurance payments stand with the place they name. */
export function improvementGroups(books: Books, repairs: RepairSplit): WorksheetPart[] {
  const rows = [
    ...rowsIn(books, 'improvement', 'restoration', 'rebate', 'insurance-payment'),
    ...repairs.counted,
  ].toSorted((a, b) => a.row - b.row);
  if (rows.length === 0) return [];
  const byPhase = groupBy(rows, (row) => letPhase(books, row));
  const lines = [undefined, ...LET_PHASES].flatMap((phase) => {
    const own = byPhase.get(phase) ?? [];
    return [...groupBy(own, keyOf)].map(([key, these]) =>
      groupLine(books, `improved-${phase ?? 'any'}-${key}`, these, phase === 'before' ? undefined : phase),
    );
  });
  const open = repairs.open.length === 0 ? '' : '; repairs that are open are not in it';
  const home =
    books.money.rental?.['from-home'] === 'yes'
      ? '; what was paid while it was a home is part of the building’s basis on the day of the change'
      : '';
  return [
    {
      id: 'improvement-groups',
      title: 'Improvements for depreciation',
      lines: [
        ...lines,
        totalLine(
          'improvement-groups-sum',
          'Improvements, restoration and repairs that count',
          sumLines(lines),
          {
            rules: RULES,
            facts: inServiceFacts(books),
            note: `in the basis above, here by work item or place, less rebates and insurance payments; local assessments stand apart${open}${home}. The preparer groups them into classes of property`,
          },
        ),
      ],
    },
  ];
}

/** Mending after damage, and what an insurer paid for it, is told apart from work at the same place. */
const keyOf = ({ bucket, place }: CostRow): string => {
  const kind = bucket === 'restoration' || bucket === 'insurance-payment' ? 'restoration' : 'work';
  return place === undefined ? kind : `${kind}-${place}`;
};

function groupLine(
  { house }: Books,
  id: string,
  rows: readonly CostRow[],
  phase: keyof typeof PHASE_WORDS | undefined,
): SheetLine {
  const [first] = rows;
  const kind =
    first?.bucket === 'restoration' || first?.bucket === 'insurance-payment'
      ? ', restoration after damage'
      : '';
  return rowsLine(id, `${thingName(house, first?.place)}${kind}`, rows, {
    rules: RULES,
    note: `paid ${paidWords(rows)}${phase === undefined ? '' : `, ${PHASE_WORDS[phase]}`}`,
  });
}

/** "3 March 2025", or "24 February 2025 to 18 March 2025". */
function paidWords(rows: readonly CostRow[]): string {
  const days = rows.map(({ date }) => date).toSorted();
  const [first = '', last = ''] = [days[0], days.at(-1)];
  return first === last ? dayWords(first) : `${dayWords(first)} to ${dayWords(last)}`;
}
