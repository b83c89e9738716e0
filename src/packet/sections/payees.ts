/** Who was paid how much in each calendar year, and which returns that may call for. The house file's alone. */
import { printMoney } from '../../facts/money.js';
import type { MoneyTally, PayeeYear } from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import { isoDate } from '../date-words.js';
import { moneyWords, rowsRuns, ruledBy } from '../money-words.js';
import type { Block, Rich, Run, Section } from '../packet.js';
import { rich, soft, strong } from '../rich.js';

const TAXPAYER_FORM = {
  'on-file': 'on file',
  asked: 'asked for, not here',
  none: 'none',
  'not-known': 'not known',
} as const;

export function payees({ payees: list, rules }: MoneyTally): Section {
  const years = [...new Set(list.map(({ year }) => year))].sort((a, b) => a - b);
  const blocks: Block[] = [
    {
      kind: 'paragraph',
      id: 'payees-intro',
      size: 'body',
      text: rich(
        'Sums of one calendar year, from this house alone. The threshold counts what one payer paid to one payee for all houses and jobs, so the preparer adds the others. Taxpayer numbers are kept nowhere in the folder; the forms stay with the owner.',
      ),
    },
    ...years.flatMap((year) =>
      yearOf(
        year,
        list.filter((one) => one.year === year),
        rules,
      ),
    ),
  ];
  return { id: 'payees', title: 'Payees', blocks };
}

function yearOf(year: number, list: readonly PayeeYear[], rules: MoneyTally['rules']): Block[] {
  const told = list.filter(({ verdict }) => verdict !== 'not-reported');
  const others = list.filter(({ verdict }) => verdict === 'not-reported');
  return [
    { kind: 'heading', id: `payees-${year}`, level: 3, text: String(year) },
    ...(told.length === 0
      ? [
          {
            kind: 'paragraph',
            id: `payees-${year}-none`,
            size: 'body',
            text: rich('Nobody was paid for services in a way that counts.'),
          } satisfies Block,
        ]
      : [
          {
            kind: 'table',
            id: `payees-${year}-counted`,
            caption: thresholdWords(told),
            columns: columns(
              ['Payee', 22],
              ['Counted', 13, 'right'],
              ['What that means', 43],
              ['Taxpayer form', 12],
              ['Rows', 10],
            ),
            rows: told.map((one, index) => ({
              id: `payee-${year}-${index + 1}`,
              cells: [
                rich(one.payee),
                rich(printMoney(one.counted)),
                verdictOf(one, rules),
                rich(TAXPAYER_FORM[one.taxpayerForm]),
                rowsRuns(one.rows),
              ],
            })),
          } satisfies Block,
        ]),
    ...(others.length === 0
      ? []
      : [
          {
            kind: 'table',
            id: `payees-${year}-others`,
            caption: 'Left out, and why',
            columns: columns(['Payee', 28], ['Paid', 15, 'right'], ['Why', 41], ['Rows', 16]),
            rows: others.map((one, index) => ({
              id: `payee-${year}-left-out-${index + 1}`,
              cells: [rich(one.payee), rich(printMoney(one.paid)), rich(one.why), rowsRuns(one.rows)],
            })),
          } satisfies Block,
        ]),
  ];
}

function thresholdWords(list: readonly PayeeYear[]): string {
  const threshold = list[0]?.threshold;
  return threshold === undefined
    ? 'No threshold is known for this year'
    : `Threshold ${printMoney(threshold)} a payee`;
}

function verdictOf(
  { verdict, why, due, form, leftOut, rules: ids }: PayeeYear,
  rules: MoneyTally['rules'],
): Rich {
  const out = leftOut.map(({ cents, why: reason }) => `${moneyWords(cents)} ${reason}`);
  return rich(
    ...headOf(verdict, form, due),
    why,
    out.length > 0 && soft(` Left out: ${out.join('; ')}.`),
    ...ruledBy(ids, rules),
  );
}

/** What stands out of the column; where nothing has to be done, the reason alone is enough. */
function headOf(
  verdict: PayeeYear['verdict'],
  form: PayeeYear['form'],
  due: PayeeYear['due'],
): readonly (Run | string)[] {
  if (verdict === 'undecided') return [strong('Undecided'), '. '];
  if (verdict !== 'report') return [];
  return [
    strong('A return is due'),
    form === undefined ? '. ' : ` on Form ${form}${due === undefined ? '' : ` by ${isoDate(due)}`}. `,
  ];
}
