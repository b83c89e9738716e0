/** What changes with the role, side by side and already printed. */
import { HOLDING, ROLES, type Role } from '../../facts/bucket.js';
import { printMoney } from '../../facts/money.js';
import { type Books, rowsIn, sumRows } from './books.js';
import type { RuleId } from './money-rules.js';
import type { RoleContrast } from './money-tally.js';
import { splitRepairs } from './repairs-in-basis.js';
import type { OpenFigure, RoleSheet } from './role-figures.js';

export function contrastRoles(books: Books, sheets: Readonly<Record<Role, RoleSheet>>): RoleContrast[] {
  const all = (words: (role: Role) => string): Record<Role, string> => ({
    dealer: words('dealer'),
    investor: words('investor'),
    'main-home': words('main-home'),
    rental: words('rental'),
  });
  const contrast = (
    id: string,
    label: string,
    by: Record<Role, string>,
    rules: readonly RuleId[],
  ): RoleContrast => ({ id, label, by, rules });
  const sum = (...buckets: Parameters<typeof sumOf>[1][]): string => printMoney(sumOf(books, ...buckets));
  const holding = sum(...HOLDING);
  const closing = sum('purchase-closing-out');
  const selling = sum('selling');
  return [
    contrast(
      'form',
      'Form',
      all((role) => sheets[role].form),
      ['forms-by-role'],
    ),
    contrast(
      'recovered',
      'When the cost counts',
      {
        dealer: 'in the year of sale, as cost of goods sold',
        investor: 'when it is sold, against the price',
        'main-home': 'when it is sold, against the price',
        rental: 'the building by depreciation while it is let; the rest when it is sold',
      },
      ['cost-of-goods-sold', 'gain-on-sale', 'home-turned-rental'],
    ),
    contrast(
      'repairs',
      'Repairs',
      all((role) => repairWords(books, role)),
      ['repairs-kept-out', 'work-before-use'],
    ),
    contrast(
      'holding',
      'Holding costs',
      {
        dealer: `${holding}, apart; open whether an expense of the year or cost`,
        investor: `${holding}, apart; some may be added by election`,
        'main-home': `${holding}, apart; not in the basis`,
        rental: `${holding}, apart; open whether an expense of the year or cost`,
      },
      ['holding-apart'],
    ),
    contrast(
      'closing-out',
      'Closing costs outside basis',
      all((role) =>
        role === 'dealer' || role === 'rental'
          ? `${closing}, apart; for the preparer to place`
          : `${closing}, not in the basis`,
      ),
      ['closing-outside-basis'],
    ),
    contrast(
      'selling',
      'Selling costs',
      all((role) =>
        role === 'dealer'
          ? `${selling}, apart; for the preparer to place`
          : `${selling}, taken off the price`,
      ),
      ['gain-on-sale', 'gross-profit-lines'],
    ),
    contrast(
      'basis',
      'Cost or adjusted basis',
      all((role) => openWords(sheets[role].basis, role)),
      ['adjusted-basis', 'cost-of-goods-sold'],
    ),
    contrast(
      'gain',
      'Gross profit or gain',
      all((role) => gainWords(sheets[role].gain, role)),
      ['gain-on-sale', 'gross-profit-lines', 'main-home-exclusion'],
    ),
  ];
}

const sumOf = (books: Books, ...buckets: Parameters<typeof rowsIn>[1][]): number =>
  sumRows(rowsIn(books, ...buckets)).cents;

function openWords(figure: OpenFigure, role: Role): string {
  if (figure.other === undefined) return printMoney(figure.cents);
  const why = role === 'dealer' ? 'insurance payments' : 'repairs';
  return `${printMoney(figure.cents)}, or ${printMoney(figure.other)}: ${why} are open`;
}

function gainWords(figure: OpenFigure | undefined, role: Role): string {
  if (figure === undefined) return 'not sold';
  const before = role === 'dealer' ? 'before costs of selling and holding' : 'after costs of selling';
  return `${openWords(figure, role)}; ${before}`;
}

function repairWords(books: Books, role: Role): string {
  const all = sumRows(rowsIn(books, 'repair')).cents;
  if (all === 0 && !books.byBucket.has('repair')) return 'none';
  if (role === 'dealer') return `${printMoney(all)}, all of it cost of the house`;
  const { counted, out, open } = splitRepairs(books, role);
  return [['count', counted] as const, ['stay out', out] as const, ['are open', open] as const]
    .flatMap(([words, rows]) => (rows.length === 0 ? [] : [`${printMoney(sumRows(rows).cents)} ${words}`]))
    .join('; ');
}

/** The stated role first, the others in their usual order. */
export const rolesFrom = (stated: Role | undefined): readonly Role[] =>
  stated === undefined ? ROLES : [stated, ...ROLES.filter((role) => role !== stated)];
