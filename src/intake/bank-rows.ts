/**
 * The rows of a bank's list: day, amount, the bank's own text.
 *
 * A row that can't be read is an error, and none is taken then: half a list would be worse than none, and the same file
 * can be imported again once it is mended. Rows that are no payments are passed over, each with its reason.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { PaymentWay } from '../facts/ledger.js';
import { readSheetAmount } from '../facts/sheet-number.js';
import { type BankColumns, type FoundHeadings, positionsOf, readMark, sideColumns } from './bank-columns.js';
import { type DayOrder, readBankDay } from './bank-day.js';
import { bankText } from './bank-text.js';
import type { SheetRows } from './sheet-rows.js';

export interface BankRow {
  /** As a spreadsheet counts the rows of the bank's file. */
  readonly row: number;
  /** YYYY-MM-DD. */
  readonly date: string;
  /** Paid; below zero for money that came in. Never zero. */
  readonly cents: number;
  /** The bank's words, cleaned, long numbers shortened. */
  readonly text: string;
  readonly memo: string;
  /** Check number, reference and the like, long numbers shortened. */
  readonly reference: string;
  /** The row itself tells that it was a check. */
  readonly paid: PaymentWay | undefined;
}

export interface BankRows {
  readonly rows: readonly BankRow[];
  readonly passedOver: readonly { readonly row: number; readonly why: string }[];
  /** How dates with strokes were read; undefined where there were none. */
  readonly days: DayOrder | undefined;
  /** No date of the file told which comes first. */
  readonly daysAreAssumed: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

type Refuse = (row: number, column: number | undefined, message: string, ...hints: string[]) => void;

export function readBankRows(sheet: SheetRows, head: FoundHeadings, columns: BankColumns): BankRows {
  const diagnostics: Diagnostic[] = [];
  const refuse: Refuse = (row, column, message, ...hints) => {
    const place = sheet.placeOf(row, column);
    diagnostics.push({
      code: 'cli.import',
      severity: 'error',
      ...(place === undefined ? { file: sheet.file } : { place }),
      message: named(head, column, message),
      hints,
    });
  };
  const side = sideColumns(head.headings, columns);
  const order = orderOfDays(sheet, head, columns, refuse);
  const rows: BankRow[] = [];
  const passedOver: { row: number; why: string }[] = [];
  for (let row = head.from; row <= sheet.rows.length; row += 1) {
    const cells = sheet.rows[row - 1] ?? [];
    const cell = (at: number | undefined): string => (at === undefined ? '' : (cells[at] ?? '').trim());
    if (cells.every((one) => one.trim() === '')) continue;
    const why = noPayment(cells, cell, columns, side.status);
    if (why !== undefined) {
      passedOver.push({ row, why });
      continue;
    }
    const beyond = cells.slice(head.width).findIndex((one) => one.trim() !== '');
    if (beyond >= 0) {
      refuse(
        row,
        head.width + beyond,
        `this row has more cells than the ${head.width} columns`,
        'a text with the delimiter in it belongs into quotes: "paint, white"',
        'download the file again, as Excel if the bank offers it',
      );
      continue;
    }
    const needed = Math.max(...positionsOf({ ...columns, memo: undefined }));
    // Programs leave empty cells at the end of a row away; a missing amount is told as such below.
    if (cells.length <= Math.min(needed, columns.date) || cells.length < 2) {
      refuse(
        row,
        undefined,
        `this row has ${cells.length} of ${head.width} cells`,
        'write the missing cells, or take the row out',
      );
      continue;
    }
    const day = readDay(cell(columns.date), order.days, (message, ...hints) =>
      refuse(row, columns.date, message, ...hints),
    );
    const cents = readCents(cell, columns, (column, message, ...hints) =>
      refuse(row, column, message, ...hints),
    );
    if (day === undefined || cents === undefined) continue;
    if (cents === 0) {
      passedOver.push({ row, why: 'its amount is 0' });
      continue;
    }
    const memo = bankText(cell(columns.memo));
    const text = bankText(cell(columns.payee)) || memo;
    const check = bankText(cell(side.check));
    const references = side.references.map((at) => bankText(cell(at))).filter((one) => one !== '');
    const isCheck = (check !== '' && /\d/.test(check)) || /^(?:check|cheque|chk)\b/i.test(text);
    rows.push({
      row,
      date: day,
      cents,
      text: text === '' ? (check === '' ? 'no text' : `check ${check}`) : text,
      memo: memo === text ? '' : memo,
      reference: references.join(' '),
      paid: isCheck && cents > 0 ? 'check' : undefined,
    });
  }
  if (rows.length === 0 && diagnostics.length === 0)
    diagnostics.push({
      code: 'cli.import',
      severity: 'error',
      file: sheet.file,
      message: `${sheet.name} holds no rows with a date and an amount`,
      hints: ['at the bank, choose the days again and download the file once more'],
    });
  return { rows, passedOver, days: order.days, daysAreAssumed: order.isAssumed, diagnostics };
}

/** A message names the column as the bank heads it. */
function named({ headings }: FoundHeadings, column: number | undefined, message: string): string {
  if (column === undefined) return message;
  const heading = headings?.[column] ?? '';
  return `${heading === '' ? `column ${column + 1}` : heading}: ${message}`;
}

const SUM =
  /^(?:(?:grand|sub)[ -]?)?totals?\b|^(?:beginning|opening|starting|ending|closing|current|available) balance\b|^balance (?:forward|as of)\b|^end of (?:report|file|list)/i;

function noPayment(
  cells: readonly string[],
  cell: (at: number | undefined) => string,
  columns: BankColumns,
  status: number | undefined,
): string | undefined {
  const { amount } = columns;
  const amounts = amount.kind === 'two' ? [amount.paid, amount.received] : [amount.at];
  const isEmpty = amounts.every((at) => cell(at) === '');
  if (cells.some((one) => SUM.test(one.trim())) && (isEmpty || !readBankDay(cell(columns.date)).ok))
    return 'it is a balance or a sum';
  if (/^pending\b/i.test(cell(status))) return 'the bank has not booked it yet; it will come again';
  // A line of words below the list.
  if (isEmpty && cells.filter((one) => one.trim() !== '').length === 1 && !readBankDay(cell(columns.date)).ok)
    return 'it is a line of words';
  return undefined;
}

interface DaysOrder {
  readonly days: DayOrder | undefined;
  readonly isAssumed: boolean;
}

/** Whether 3/4/2026 is March or April: as it was said before, else as the file as a whole tells, else the US way. */
function orderOfDays(sheet: SheetRows, head: FoundHeadings, columns: BankColumns, refuse: Refuse): DaysOrder {
  let monthFirst: number | undefined;
  let dayFirst: number | undefined;
  let either = false;
  for (let row = head.from; row <= sheet.rows.length; row += 1) {
    const read = readBankDay(sheet.rows[row - 1]?.[columns.date] ?? '');
    if (!read.ok) continue;
    if (read.value.order === 'month-first') monthFirst ??= row;
    else if (read.value.order === 'day-first') dayFirst ??= row;
    else if (read.value.order === 'either') either = true;
  }
  const written = (row: number | undefined): string =>
    bankText(sheet.rows[(row ?? 0) - 1]?.[columns.date] ?? '');
  if (columns.days !== undefined) {
    const contrary = columns.days === 'month-first' ? dayFirst : monthFirst;
    if (contrary !== undefined)
      refuse(
        contrary,
        columns.date,
        `${written(contrary)} can’t be read ${columns.days === 'month-first' ? 'month' : 'day'} first, as the dates of this bank’s files were until now`,
        `if the bank has changed it, correct  days:  in imports/columns.yaml`,
        'else look at that row: it may be mistyped',
      );
    return { days: columns.days, isAssumed: false };
  }
  if (monthFirst !== undefined && dayFirst !== undefined) {
    refuse(
      dayFirst,
      columns.date,
      `${written(dayFirst)} begins with the day, and ${written(monthFirst)} in row ${monthFirst} with the month`,
      'download the file again with dates as year-month-day, or correct the dates that were changed by hand',
    );
    return { days: undefined, isAssumed: false };
  }
  if (dayFirst !== undefined) return { days: 'day-first', isAssumed: false };
  if (monthFirst !== undefined) return { days: 'month-first', isAssumed: false };
  return { days: either ? 'month-first' : undefined, isAssumed: either };
}

function readDay(
  text: string,
  days: DayOrder | undefined,
  refuse: (message: string, ...hints: string[]) => void,
): string | undefined {
  const read = readBankDay(text);
  if (!read.ok) {
    refuse(
      bankText(read.problem),
      read.hint,
      'if another column holds the date, name it:  --columns "date=…,payee=…,amount=…"',
    );
    return undefined;
  }
  const { day, order, other } = read.value;
  return order === 'either' && days === 'day-first' ? other : day;
}

function readCents(
  cell: (at: number | undefined) => string,
  { amount, paidIs }: BankColumns,
  refuse: (column: number, message: string, ...hints: string[]) => void,
): number | undefined {
  const read = (at: number): number | undefined => {
    const text = cell(at).replace(/^\+\s*(?=[\d$.])/, '');
    const money = readSheetAmount(text);
    if (money.ok) return money.value;
    refuse(at, bankText(money.problem), money.hint);
    return undefined;
  };
  if (amount.kind === 'one') {
    const cents = read(amount.at);
    return cents === undefined ? undefined : orient(cents, paidIs);
  }
  if (amount.kind === 'marked') {
    const mark = readMark(cell(amount.mark));
    if (mark === undefined) {
      refuse(
        amount.mark,
        `“${cell(amount.mark).slice(0, 40)}” is neither debit nor credit`,
        'write debit for what you paid, credit for what came in',
      );
      return undefined;
    }
    const cents = read(amount.at);
    if (cents === undefined) return undefined;
    if (cents < 0 && mark === 'received') {
      refuse(
        amount.at,
        'a minus and “credit” contradict each other',
        'write the amount without the minus, or debit beside it',
      );
      return undefined;
    }
    return mark === 'paid' ? Math.abs(cents) : zero(-cents);
  }
  const isFilled = (at: number): boolean => cell(at) !== '' && !/^[$\s]*[-−]?0*(?:\.0*)?$/.test(cell(at));
  const [paid, received] = [isFilled(amount.paid), isFilled(amount.received)];
  if (paid && received) {
    refuse(
      amount.received,
      'both what was paid and what came in are filled in',
      'keep one of the two amounts, or write two rows',
    );
    return undefined;
  }
  if (!paid && !received) {
    if (cell(amount.paid) !== '' || cell(amount.received) !== '') return 0;
    refuse(
      amount.paid,
      'neither what was paid nor what came in is filled in',
      'write the amount into one of the two, or take the row out',
    );
    return undefined;
  }
  const cents = read(paid ? amount.paid : amount.received);
  if (cents === undefined) return undefined;
  if (paid) return orient(cents, paidIs);
  // A list that writes payments with a minus writes deposits without one.
  return zero(-cents);
}

const orient = (cents: number, paidIs: BankColumns['paidIs']): number =>
  paidIs === 'negative' ? zero(-cents) : cents;
/** No minus zero. */
const zero = (cents: number): number => (cents === 0 ? 0 : cents);
