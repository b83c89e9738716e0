/**
 * What a holder's house cost, what raised and lowered that, and the sum. Repairs that the facts leave open are not in
 * it; `other` tells the sum with them.
 */
import type { Role } from '../../facts/bucket.js';
import type { Money } from '../../facts/house.js';
import { printMoney } from '../../facts/money.js';
import { afterSaleNote, joinNotes } from './after-sale.js';
import { type Books, rowsIn, sumRows } from './books.js';
import { type LandSplit, splitLand } from './land-split.js';
import type { RuleId } from './money-rules.js';
import type { SheetLine } from './money-tally.js';
import { type RepairSplit, splitRepairs } from './repairs-in-basis.js';
import type { OpenFigure } from './role-figures.js';
import { sellerTaxLines } from './seller-tax.js';
import { bucketLine, figureLine, rowsLine, sumLines } from './sheet-line.js';

export type Holder = Exclude<Role, 'dealer'>;
export type Reduction = Money['reductions'][number];

const REDUCTIONS: Record<Reduction['what'], string> = {
  depreciation: 'Depreciation',
  'casualty-loss': 'Casualty loss that was deducted',
  'section-179': 'Section 179',
  'energy-credit': 'Energy credit',
  'energy-subsidy': 'Energy subsidy',
  easement: 'Easement',
  'cancelled-debt': 'Cancelled debt left out of income',
  'postponed-gain': 'Postponed gain',
  other: 'Other reduction',
};

export interface HeldBasis {
  readonly first: readonly SheetLine[];
  readonly firstCost: number;
  readonly raised: readonly SheetLine[];
  readonly lowered: readonly SheetLine[];
  readonly adjusted: OpenFigure;
  readonly repairs: RepairSplit;
  readonly land: LandSplit | undefined;
}

export function addBasis(books: Books, role: Holder): HeldBasis {
  const loans = rowsIn(books, 'purchase').some(({ paid }) => paid === 'loan');
  const first = [
    ...bucketLine(books, 'purchase', {
      rules: loans ? ['cost-when-bought', 'debt-taken-over'] : ['cost-when-bought'],
      note: loans ? 'what a lender paid, and debt that was taken over, is in it' : undefined,
    }),
    ...bucketLine(books, 'purchase-closing-in-basis', { rules: ['closing-in-basis'] }),
    ...sellerTaxLines(books),
  ];
  const repairs = splitRepairs(books, role);
  const raised = [
    ...bucketLine(books, 'assessment', { rules: ['local-assessments'] }),
    ...bucketLine(books, 'improvement', {
      rules: [...improvementRules(role), 'paid-building-costs', 'own-labour'],
      note: afterSaleNote(books, rowsIn(books, 'improvement')),
    }),
    ...bucketLine(books, 'restoration', {
      rules: ['what-moves-basis'],
      note: afterSaleNote(books, rowsIn(books, 'restoration')),
    }),
    ...(repairs.counted.length === 0
      ? []
      : [
          rowsLine('repair', 'Repairs that count', repairs.counted, {
            rules: repairs.rules,
            note: joinNotes(repairs.why, afterSaleNote(books, repairs.counted)),
          }),
        ]),
  ];
  const lowered = [
    ...bucketLine(books, 'rebate', { rules: ['what-moves-basis'] }),
    ...bucketLine(books, 'insurance-payment', { rules: ['what-moves-basis'] }),
    ...books.money.reductions.map(reductionLine),
  ];
  const firstCost = sumLines(first);
  const cents = firstCost + sumLines(raised) + sumLines(lowered);
  const open = sumRows(repairs.open).cents;
  return {
    first,
    firstCost,
    raised,
    lowered,
    repairs,
    adjusted: { cents, other: open === 0 ? undefined : cents + open },
    land: splitLand(firstCost, sumRows(rowsIn(books, 'purchase')).cents, books.money.land),
  };
}

const improvementRules = (role: Holder): readonly RuleId[] =>
  role === 'rental' ? ['improvement-test', 'separate-accounts'] : ['improvement-meaning'];

function reductionLine({ what, amount, year, note }: Reduction, at: number): SheetLine {
  const label = REDUCTIONS[what];
  return figureLine(`reduction-${at + 1}`, year === undefined ? label : `${label}, ${year}`, 0 - amount, {
    rules: ['what-moves-basis'],
    facts: [
      {
        path: `money.reductions[${at}]`,
        says: `${label.toLowerCase()}${year === undefined ? '' : ` of ${year}`}: ${printMoney(amount)}`,
      },
    ],
    note,
  });
}
