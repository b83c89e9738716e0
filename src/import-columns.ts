/** Which column is which in a bank's file: as the command line says, as it was kept, or as the writer answers. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { visible } from './diagnostics/report.js';
import { dayWords } from './facts/date-moment.js';
import type { PaymentWay } from './facts/ledger.js';
import {
  type Asker,
  askColumns,
  askDays,
  askPaid,
  askRight,
  mappingWords,
  NOBODY_ANSWERS,
} from './import-questions.js';
import {
  type BankColumns,
  chatterAbove,
  columnsFrom,
  type FoundHeadings,
  likelySign,
  type NamedColumns,
  namesOf,
  proposeColumns,
} from './intake/bank-columns.js';
import { type DayOrder, readBankDay } from './intake/bank-day.js';
import type { Mapping, MappingsFile } from './intake/bank-mappings.js';
import { type BankRows, readBankRows } from './intake/bank-rows.js';
import type { SheetRows } from './intake/sheet-rows.js';

export interface ImportOptions {
  readonly dryRun: boolean;
  /** From the command line; over what was kept. */
  readonly columns: NamedColumns | undefined;
  readonly paidIs: 'negative' | 'positive' | undefined;
  readonly paid: PaymentWay | undefined;
  readonly days: DayOrder | undefined;
}

export function tellHead(
  sheet: SheetRows,
  head: FoundHeadings,
  shown: string,
  say: (text: string) => void,
): void {
  const chatter = chatterAbove(sheet.rows, head);
  if (chatter.length === 0 || head.score === 0) return;
  const some = chatter
    .slice(0, 4)
    .map((line) => `“${visible(line.length > 60 ? `${line.slice(0, 59)}…` : line)}”`);
  say(
    `${visible(shown)}: the list begins in row ${head.row === 0 ? head.from : head.row}; passed over above it: ${some.join(', ')}${chatter.length > 4 ? `, and ${chatter.length - 4} more` : ''}\n`,
  );
}

export interface Settled {
  readonly mapping: Mapping;
  readonly rows: BankRows;
}

export async function settleColumns(
  sheet: SheetRows,
  head: FoundHeadings,
  shown: string,
  stored: MappingsFile,
  options: ImportOptions,
  asker: Asker | undefined,
  say: (text: string) => void,
): Promise<Settled | { readonly diagnostics: readonly Diagnostic[] }> {
  const refuse = (message: string, ...hints: string[]) => ({
    diagnostics: [{ code: 'cli.import' as const, severity: 'error' as const, file: shown, message, hints }],
  });
  if (head.score === 0)
    return sheet.rows.some((cells) => cells.some((cell) => cell.trim() !== ''))
      ? refuse(
          `${shown} has no row with a date and an amount`,
          'check that it is the bank’s list of payments',
          'at the bank, choose the days again and download it as CSV',
        )
      : refuse(
          `${shown} holds no rows`,
          'at the bank, choose the days again and download the file once more',
        );
  const proposed = proposeColumns(sheet.rows, head);
  const kept = stored.mapping;
  let columns: BankColumns | undefined;
  if (options.columns !== undefined) {
    const read = columnsFrom(options.columns, head);
    if (!read.ok) return refuse(read.problem, ...read.hints);
    columns = {
      ...read.columns,
      paidIs: kept?.columns.paidIs ?? likelySign(sheet.rows, head, read.columns.amount),
      days: kept?.columns.days,
    };
  } else columns = kept?.columns ?? proposed;
  const set = (one: BankColumns): BankColumns => ({
    ...one,
    paidIs: options.paidIs ?? one.paidIs,
    days: options.days ?? one.days,
  });
  const isSettled = kept !== undefined || options.columns !== undefined;
  const paid = options.paid ?? kept?.paid;

  if (asker === undefined || isSettled) {
    const rows = columns && readBankRows(sheet, head, set(columns));
    // Where no row can be read, what its cells should say helps more than to name the columns.
    if (rows !== undefined && rows.rows.length === 0) return { diagnostics: rows.diagnostics };
    if (columns === undefined || rows === undefined || (!isSettled && !head.isSure))
      return refuse(...notTold(head, columns));
    if (rows.diagnostics.length > 0) return { diagnostics: rows.diagnostics };
    if (kept === undefined)
      say(`${visible(shown)} is read like this:\n${mappingWords(set(columns), head, rows.rows)}`);
    if (rows.daysAreAssumed)
      say('Dates with strokes are read month first; to read them day first:  --days day-first\n');
    return { mapping: { columns: set(columns), paid }, rows };
  }

  // Enter where all is well; else which column is which, until the answer is yes.
  for (let first = true; ; first = false) {
    const rows = columns && readBankRows(sheet, head, set(columns));
    if (columns !== undefined && rows !== undefined && head.isSure && rows.rows.length === 0)
      return { diagnostics: rows.diagnostics };
    if (first && !(await asker.isThere())) return { diagnostics: [NOBODY_ANSWERS] };
    if (columns !== undefined && rows !== undefined && (head.isSure || !first)) {
      asker.say(`${visible(shown)} is read like this:\n${mappingWords(set(columns), head, rows.rows)}`);
      const right = await askRight(asker);
      if (right === undefined) return refuse(...NOT_ANSWERED);
      if (right) {
        if (rows.diagnostics.length > 0) return { diagnostics: rows.diagnostics };
        return settleRest(sheet, head, set(columns), rows, paid, asker, () => refuse(...NOT_ANSWERED));
      }
    }
    const asked = await askColumns(asker, sheet, head, columns ?? proposed);
    if (asked === undefined) return refuse(...NOT_ANSWERED);
    columns = asked;
  }
}

const NOT_ANSWERED = [
  'the questions were not answered to the end, so nothing is written',
  'to be asked nothing, add  --yes',
] as const;

/** What the columns alone don’t tell: which of 3 and 4 is the month, and how it is paid. */
async function settleRest(
  sheet: SheetRows,
  head: FoundHeadings,
  columns: BankColumns,
  rows: BankRows,
  paid: PaymentWay | undefined,
  asker: Asker,
  unanswered: () => { readonly diagnostics: readonly Diagnostic[] },
): Promise<Settled | { readonly diagnostics: readonly Diagnostic[] }> {
  let settled = columns;
  let read = rows;
  if (rows.daysAreAssumed) {
    const either = sheet.rows.slice(head.from - 1).flatMap((cells) => {
      const written = cells[columns.date] ?? '';
      const day = readBankDay(written);
      return day.ok && day.value.other !== undefined
        ? [{ written, day: day.value.day, other: day.value.other }]
        : [];
    })[0];
    const days =
      either && (await askDays(asker, either.written, dayWords(either.day), dayWords(either.other)));
    if (days === undefined) return unanswered();
    settled = { ...columns, days };
    read = readBankRows(sheet, head, settled);
    if (read.diagnostics.length > 0) return { diagnostics: read.diagnostics };
  }
  const way = paid ?? (await askPaid(asker));
  return way === undefined ? unanswered() : { mapping: { columns: settled, paid: way }, rows: read };
}

/** Without a terminal, columns that no heading tells must be named. */
function notTold(head: FoundHeadings, columns: BankColumns | undefined): [string, ...string[]] {
  const names = columns === undefined ? undefined : namesOf(columns, head.headings);
  const example = Object.entries(names ?? { date: 'Posting Date', payee: 'Description', amount: 'Amount' })
    .map(([word, name]) => `${word}=${visible(name).replace(/^column /, '')}`)
    .join(',');
  return [
    head.headings === undefined
      ? 'the file has no headings, and nobody is there to ask'
      : 'what the columns are can’t be told by their headings, and nobody is there to ask',
    `name the columns, for example  --columns "${example}" --paid-is ${columns?.paidIs ?? 'negative'}`,
    'import it in a terminal, without  --yes',
  ];
}
