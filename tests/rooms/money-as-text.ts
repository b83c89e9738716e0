/** What was worked out about a house's money, as lines of text: whatever changes in it shows as a changed line. */
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import type { MoneyTally, SheetLine } from '../../src/tally/money/money-tally.js';

export function moneyAsText(money: MoneyTally, diagnostics: readonly Diagnostic[]): string {
  const { worksheets, contrasts, payees, miles, retention, lessons, totals, rules } = money;
  const blocks = [
    ['totals', ...totals.map((one) => JSON.stringify(one)), `all ${money.allPaid}`],
    ...worksheets.map(({ role, title, form, dates = [], parts, notes }) => [
      `sheet ${role}: ${title}; ${form}`,
      ...dates.map(({ id, label, says }) => `  ${id}: ${label}: ${says}`),
      ...parts.flatMap(({ id, title: of, year, lines }) => [
        `  part ${id}${year === undefined ? '' : ` (${year})`}: ${of}`,
        ...lines.flatMap(sheetLine),
      ]),
      ...notes.map(({ id, text, rules: by }) => `  note ${id}: ${text} [${by.join(' ')}]`),
    ]),
    ['contrasts', ...contrasts.map((one) => JSON.stringify(one))],
    ['payees', ...payees.map((one) => JSON.stringify(one))],
    ['miles', ...miles.map((one) => JSON.stringify(one))],
    ['retention', ...retention.map((one) => JSON.stringify(one))],
    ['lessons', ...Object.entries(lessons).map(([name, value]) => `${name}: ${JSON.stringify(value)}`)],
    ['rules', ...rules.map(({ id }) => id)],
    [
      'told',
      ...diagnostics.map(({ code, severity, path = [], message, hints = [] }) =>
        [severity, code, path.join('.'), message, ...hints].join(' | '),
      ),
    ],
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function sheetLine({ id, label, formLine, cents, rows, facts, rules, weight, note }: SheetLine): string[] {
  const head = `    ${id}${formLine === undefined ? '' : ` (${formLine})`} ${label}: ${cents}${weight === 'total' ? ' total' : ''}`;
  return [
    head,
    `      rules ${rules.join(' ')}; rows ${rows.join(' ')}`,
    ...facts.map(({ path, says }) => `      fact ${path}: ${says}`),
    ...(note === undefined ? [] : [`      note ${note}`]),
  ];
}
