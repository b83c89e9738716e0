/** Worksheets for whoever fills in the forms: by role, each line with its rows and rules. The house file's alone. */
import { ROLE_WORDS, ROLES } from '../../facts/bucket.js';
import type {
  MoneyRule,
  MoneyTally,
  SheetLine,
  Worksheet,
  WorksheetPart,
} from '../../tally/money/money-tally.js';
import { columns } from '../columns.js';
import { moneyWords, rowsRuns, rulesRuns, withRules } from '../money-words.js';
import type { Block, Rich, Section } from '../packet.js';
import { rich, say, soft, upperFirst } from '../rich.js';

export function taxSheets(money: MoneyTally): Section {
  return {
    id: 'tax-sheets',
    title: 'For the tax preparer',
    blocks: [
      standing(),
      roleStatement(money),
      contrasts(money),
      ...money.worksheets.flatMap((sheet) => worksheet(sheet, money)),
    ],
  };
}

const standing = (): Block => ({
  kind: 'notice',
  id: 'tax-standing',
  title: 'What these sheets are',
  paragraphs: [
    rich(
      'Sums of what the owner wrote down, put in the order in which forms ask for them, with the rule behind each line. They are no tax advice and decide nothing: not what the house was held as, not what is a repair, not what is owed. Where rules leave two readings, both figures are told.',
    ),
  ],
});

function roleStatement({ role }: MoneyTally): Block {
  return role === undefined
    ? {
        kind: 'statement',
        id: 'tax-role',
        size: 'body',
        text: rich(
          'The owner has not said what the house is held as, so the sheets of all four roles follow. To say it, write  role:  under  money:  in the facts.',
        ),
        mark: { standing: 'not-known', word: 'Not known', detail: [] },
      }
    : {
        kind: 'statement',
        id: 'tax-role',
        size: 'body',
        text: rich(
          `The owner holds the house as ${role === 'investor' ? 'an' : 'a'} ${ROLE_WORDS[role]}. The sheet of that role comes first; the others follow, since what a house is held as is for the preparer to confirm.`,
        ),
        mark: { standing: 'owner', word: 'Owner’s statement', detail: [] },
      };
}

function contrasts({ contrasts: list, rules }: MoneyTally): Block {
  return {
    kind: 'table',
    id: 'tax-contrasts',
    caption: 'What changes with the role',
    columns: columns(['', 16], ...ROLES.map((role) => [upperFirst(ROLE_WORDS[role]), 21] as const)),
    rows: list.map((one) => ({
      id: `tax-contrast-${one.id}`,
      cells: [rich(one.label, ...behind(one.rules, rules)), ...ROLES.map((role) => rich(one.by[role]))],
    })),
  };
}

function behind(ids: readonly string[], rules: readonly MoneyRule[]): Rich {
  const runs = rulesRuns(ids, rules);
  return runs.length === 0 ? [] : [soft(runs.length === 1 ? ', rule ' : ', rules '), ...runs];
}

function worksheet(sheet: Worksheet, { rules, role }: MoneyTally): Block[] {
  const id = `tax-${sheet.role}`;
  return [
    {
      kind: 'heading',
      id,
      level: 3,
      text: sheet.role === role ? `${sheet.title} (the stated role)` : sheet.title,
    },
    { kind: 'paragraph', id: `${id}-form`, size: 'body', text: rich(sheet.form) },
    ...(sheet.dates === undefined || sheet.dates.length === 0
      ? []
      : [
          {
            kind: 'record',
            id: `${id}-dates`,
            title: rich('Dates'),
            entries: sheet.dates.map((one) => ({
              id: `${id}-date-${one.id}`,
              label: one.label,
              value: rich(one.says),
            })),
          } satisfies Block,
        ]),
    ...sheet.parts.map((part) => partTable(id, part, rules)),
    ...(sheet.notes.length === 0
      ? []
      : [
          {
            kind: 'list',
            id: `${id}-notes`,
            items: sheet.notes.map((note) => ({
              id: `${id}-note-${note.id}`,
              text: withRules(note.text, note.rules, rules),
            })),
          } satisfies Block,
        ]),
  ];
}

function partTable(sheet: string, part: WorksheetPart, rules: readonly MoneyRule[]): Block {
  const id = `${sheet}-${part.id}`;
  const numbered = part.lines.some(({ formLine }) => formLine !== undefined);
  return {
    kind: 'table',
    id,
    caption: part.title,
    together: true,
    columns: columns(
      ...(numbered ? [['Line', 7] as const] : []),
      ['What', 40],
      ['From', 22],
      ['Rules', 9],
      ['Amount', 22, 'right'],
    ),
    rows: part.lines.map((line) => ({
      id: `${id}-${line.id}`,
      cells: [
        ...(numbered ? [rich(line.formLine ?? '')] : []),
        labelOf(line),
        fromOf(line),
        rulesRuns(line.rules, rules),
        rich(moneyWords(line.cents)),
      ],
      weight: line.weight,
    })),
  };
}

const labelOf = ({ label, note }: SheetLine): Rich =>
  rich(label, note !== undefined && soft(`. ${upperFirst(note)}`));

function fromOf({ rows, facts }: SheetLine): Rich {
  const words = facts.map(({ says }) => say(says));
  if (rows.length === 0) return words.flatMap((one, index) => (index === 0 ? [one] : rich('; ', one)));
  return [
    say(rows.length === 1 ? 'row ' : 'rows '),
    ...rowsRuns(rows),
    ...words.flatMap((one) => rich('; ', one)),
  ];
}
