/**
 * What a bank's list looks like: where its headings stand, and which column is the date, the payee and the amount.
 *
 * Takes rows of texts. Proposes; the writer says whether it is right. The headings are those that banks and cards in the
 * United States commonly write (common practice, no source).
 */
import { readSheetAmount } from '../facts/sheet-number.js';
import { type DayOrder, readBankDay } from './bank-day.js';
import { bankText } from './bank-text.js';
import { plainWord } from './sheet-headings.js';

type Rows = readonly (readonly string[])[];

export interface FoundHeadings {
  /** Number of the heading row; 0 if there is none and `from` begins the rows. */
  readonly row: number;
  /** Number of the first row of data. */
  readonly from: number;
  /** The headings as they are shown and kept; undefined where there are none. */
  readonly headings: readonly string[] | undefined;
  /** How many columns there are. */
  readonly width: number;
  /** Headings in a bank's words were found. */
  readonly isSure: boolean;
  /** Higher is more likely. 0: no row looks like one of a bank. */
  readonly score: number;
}

export type AmountColumns =
  | { readonly kind: 'one'; readonly at: number }
  /** `paid` may be called debit or withdrawals, `received` credit or deposits. */
  | { readonly kind: 'two'; readonly paid: number; readonly received: number }
  /** The sign stands in a column of its own, as debit or credit. */
  | { readonly kind: 'marked'; readonly at: number; readonly mark: number };

/** Positions count from 0. */
export interface BankColumns {
  readonly date: number;
  readonly payee: number;
  readonly memo: number | undefined;
  readonly amount: AmountColumns;
  readonly paidIs: 'negative' | 'positive';
  /** How dates with strokes are read; undefined: as the file as a whole tells. */
  readonly days: DayOrder | undefined;
}

/** Words by which columns are named in `--columns` and in columns.yaml. */
export const COLUMN_WORDS = ['date', 'payee', 'memo', 'amount', 'debit', 'credit', 'sign'] as const;
export type ColumnWord = (typeof COLUMN_WORDS)[number];

/** In the order of preference: the day of the payment before the day of its booking. */
const HEADINGS = {
  date: 'transactiondate transdate dateoftransaction purchasedate date postingdate posteddate postdate dateposted posted bookingdate effectivedate processdate processeddate valuedate',
  payee:
    'merchant merchantname payee paidto name description transactiondescription originaldescription narrative details transactiondetails transaction particulars text memo',
  memo: 'memo note notes extendeddetails additionalinformation additionalinfo originaldescription details',
  amount: 'amount transactionamount amountusd usdamount amt billingamount value',
  debit:
    'debit debits debitamount amountdebit debitusd withdrawal withdrawals withdrawalamount withdrawalsdebits paidout moneyout outflow charge charges',
  credit:
    'credit credits creditamount amountcredit creditusd deposit deposits depositamount depositscredits paidin moneyin inflow',
  sign: 'debitcredit creditdebit drcr crdr debitorcredit creditdebitindicator indicator type transactiontype details',
  reference:
    'reference referencenumber referenceno refno ref checknumber checkno check checkorslip checkorslipno chequenumber transactionid transactionnumber id fitid confirmation confirmationnumber account accountnumber accountname card cardno cardnumber cardlast4 last4',
  check: 'checknumber checkno check checkorslip checkorslipno chequenumber',
  status: 'status state',
} as const;
const words = (role: keyof typeof HEADINGS): string[] => HEADINGS[role].split(' ');

/** Columns of a role, the preferred one first. */
function columnsFor(role: keyof typeof HEADINGS, headings: readonly string[]): number[] {
  const plain = headings.map(plainWord);
  return words(role).flatMap((word) => plain.flatMap((heading, at) => (heading === word ? [at] : [])));
}

const isDay = (cell: string): boolean => /\d/.test(cell) && readBankDay(cell).ok;
const isAmount = (cell: string): boolean => /\d/.test(cell) && readSheetAmount(cell).ok;
/** A day or an amount in the manner of another country: it can’t be read, and tells where the list stands all the same. */
const FOREIGN_DAY = /^\d{1,2}\. ?\d{1,2}\. ?(?:\d{4}|\d{2})$/;
const FOREIGN_AMOUNT =
  /^[-+−(]?\s*[$€£]?\s*(?:\d{1,3}(?:[.\s'’]\d{3})+|\d+),\d{1,2}\)?\s*(?:[-−]|[€£]|EUR|GBP)?$/;
const looksLikeDay = (cell: string): boolean => isDay(cell) || FOREIGN_DAY.test(cell.trim());
const looksLikeAmount = (cell: string): boolean => isAmount(cell) || FOREIGN_AMOUNT.test(cell.trim());
const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/** More lines than any bank writes above its headings. */
const MOST_CHATTER = 60;

export function findHeadings(rows: Rows): FoundHeadings {
  for (const [index, cells] of rows.slice(0, MOST_CHATTER).entries()) {
    const score = headingScore(cells);
    if (score > 0)
      return { row: index + 1, from: index + 2, ...shape(cells), isSure: true, score: 100 + score };
  }
  const first = rows.findIndex(
    (cells) => cells.some(looksLikeDay) && cells.some(looksLikeAmount) && cells.length > 1,
  );
  if (first < 0 || first > MOST_CHATTER)
    return { row: 0, from: rows.length + 1, headings: undefined, width: 0, isSure: false, score: 0 };
  const above = rows[first - 1];
  const data = rows[first] ?? [];
  const isHead =
    above !== undefined &&
    above.length === data.length &&
    above.filter((cell) => cell.trim() !== '').length > 1 &&
    !above.some((cell) => looksLikeDay(cell) || looksLikeAmount(cell));
  if (isHead) return { row: first, from: first + 1, ...shape(above), isSure: false, score: data.length };
  return {
    row: 0,
    from: first + 1,
    headings: undefined,
    width: data.length,
    isSure: false,
    score: data.length,
  };
}

/** Empty cells behind the last heading are no columns. */
function shape(cells: readonly string[]): { headings: string[]; width: number } {
  const headings = cells.map(bankText);
  while (headings.length > 1 && headings.at(-1) === '') headings.pop();
  return { headings, width: headings.length };
}

/** 0 unless there is a date and an amount in a bank's words. */
function headingScore(cells: readonly string[]): number {
  if (cells.some((cell) => looksLikeDay(cell) || looksLikeAmount(cell))) return 0;
  const has = (role: keyof typeof HEADINGS): boolean => columnsFor(role, cells).length > 0;
  if (!has('date') || !(has('amount') || (has('debit') && has('credit')))) return 0;
  return cells.filter((cell) => plainWord(cell) !== '').length + (has('payee') ? 1 : 0);
}

/** Columns that only help to recognise a row. */
export interface SideColumns {
  readonly references: readonly number[];
  readonly check: number | undefined;
  readonly status: number | undefined;
}

export function sideColumns(headings: readonly string[] | undefined, used: BankColumns): SideColumns {
  if (headings === undefined) return { references: [], check: undefined, status: undefined };
  const taken = new Set(positionsOf(used));
  const free = (role: keyof typeof HEADINGS): number[] =>
    columnsFor(role, headings).filter((at) => !taken.has(at));
  return {
    references: free('reference').sort((a, b) => a - b),
    check: free('check')[0],
    status: free('status')[0],
  };
}

export const positionsOf = ({ date, payee, memo, amount }: BankColumns): number[] => [
  date,
  payee,
  ...(memo === undefined ? [] : [memo]),
  ...(amount.kind === 'two'
    ? [amount.paid, amount.received]
    : amount.kind === 'one'
      ? [amount.at]
      : [amount.at, amount.mark]),
];

/** What a mark says of the amount beside it; undefined for any other word. */
export function readMark(cell: string): 'paid' | 'received' | undefined {
  const word = plainWord(cell);
  if (['debit', 'dr', 'd', 'db', 'withdrawal', 'check', 'dslip'].includes(word)) return 'paid';
  return ['credit', 'cr', 'c', 'deposit'].includes(word) ? 'received' : undefined;
}

/** How many rows are looked at for a proposal. */
const LOOKED_AT = 2_000;

/** What the columns most likely are; undefined where that can't be told. */
export function proposeColumns(rows: Rows, head: FoundHeadings): BankColumns | undefined {
  const cellsOf = cellsIn(rows, head);
  const columns =
    head.headings === undefined || !head.isSure
      ? byLooks(head.width, cellsOf)
      : byWords(head.headings, cellsOf);
  return columns && { ...columns, paidIs: signIn(columns.amount, cellsOf), days: undefined };
}

/** Whether payments have a minus in the amounts of a list. */
export const likelySign = (rows: Rows, head: FoundHeadings, amount: AmountColumns): BankColumns['paidIs'] =>
  signIn(amount, cellsIn(rows, head));

/** The cells of a column that are filled, as far as a proposal looks. */
function cellsIn(rows: Rows, head: FoundHeadings): (at: number) => string[] {
  const data = rows.slice(head.from - 1, head.from - 1 + LOOKED_AT).filter((cells) => !isBlank(cells));
  return (at) => data.flatMap((cells) => ((cells[at] ?? '').trim() === '' ? [] : [(cells[at] ?? '').trim()]));
}

type Unsigned = Pick<BankColumns, 'date' | 'payee' | 'memo' | 'amount'>;

function byWords(headings: readonly string[], cellsOf: (at: number) => string[]): Unsigned | undefined {
  const pick = (role: keyof typeof HEADINGS, ...not: (number | undefined)[]): number | undefined =>
    columnsFor(role, headings).find((at) => !not.includes(at));
  // A day that is not booked yet leaves the preferred column empty in some rows.
  const dates = columnsFor('date', headings);
  const date = dates.find((at) => cellsOf(at).length > 0) ?? dates[0];
  const [one, paid, received] = [pick('amount'), pick('debit'), pick('credit')];
  const sign = columnsFor('sign', headings).find((at) => {
    const cells = cellsOf(at);
    return cells.length > 0 && cells.every((cell) => readMark(cell) !== undefined);
  });
  const hasMinus = one !== undefined && cellsOf(one).some((cell) => /^\(|^\$?\s*[-−]/.test(cell));
  let amount: AmountColumns | undefined;
  if (paid !== undefined && received !== undefined) amount = { kind: 'two', paid, received };
  else if (one !== undefined && sign !== undefined && !hasMinus)
    amount = { kind: 'marked', at: one, mark: sign };
  else if (one !== undefined) amount = { kind: 'one', at: one };
  const payee = pick('payee', sign);
  if (date === undefined || amount === undefined || payee === undefined) return undefined;
  return { date, payee, memo: pick('memo', payee, sign), amount };
}

function byLooks(width: number, cellsOf: (at: number) => string[]): Unsigned | undefined {
  const all = Array.from({ length: width }, (_, at) => ({ at, cells: cellsOf(at) }));
  const mostly = (cells: readonly string[], is: (cell: string) => boolean): boolean =>
    cells.length > 0 && cells.filter(is).length * 10 >= cells.length * 9;
  const dates = all.filter(({ cells }) => mostly(cells, looksLikeDay));
  const rest = all.filter((one) => !dates.includes(one));
  const amounts = rest.filter(({ cells }) => mostly(cells, looksLikeAmount));
  const length = (cells: readonly string[]): number => cells.reduce((sum, cell) => sum + cell.length, 0);
  const texts = rest
    .filter((one) => !amounts.includes(one))
    .sort((a, b) => length(b.cells) - length(a.cells) || a.at - b.at);
  const amount = amounts.find(({ cells }) => cells.some((cell) => /[.,]\d{1,2}\b/.test(cell))) ?? amounts[0];
  const [date, payee] = [dates[0], texts[0]];
  if (date === undefined || payee === undefined || amount === undefined) return undefined;
  return { date: date.at, payee: payee.at, memo: undefined, amount: { kind: 'one', at: amount.at } };
}

/** Of one column the sign that most rows have, since there are more payments than deposits; a draw is a bank’s. */
function signIn(amount: AmountColumns, cellsOf: (at: number) => string[]): 'negative' | 'positive' {
  if (amount.kind === 'marked') return 'positive';
  const cents = cellsOf(amount.kind === 'one' ? amount.at : amount.paid).flatMap((cell) => {
    const read = readSheetAmount(cell);
    if (!read.ok && FOREIGN_AMOUNT.test(cell)) return [/^[-−(]|[-−]$/.test(cell) ? -1 : 1];
    return read.ok && read.value !== 0 ? [read.value] : [];
  });
  const below = cents.filter((one) => one < 0).length;
  if (amount.kind === 'two') return cents.length > 0 && below === cents.length ? 'negative' : 'positive';
  return below * 2 >= cents.length ? 'negative' : 'positive';
}

export type NamedColumns = Partial<Record<ColumnWord, string>>;

export type ColumnsRead =
  | { readonly ok: true; readonly columns: Unsigned }
  | { readonly ok: false; readonly problem: string; readonly hints: readonly string[] };

/** Columns named by their heading or by their number from 1 become positions. */
export function columnsFrom(
  named: NamedColumns,
  head: Pick<FoundHeadings, 'headings' | 'width'>,
): ColumnsRead {
  const at: Partial<Record<ColumnWord, number>> = {};
  for (const word of COLUMN_WORDS) {
    const name = named[word];
    if (name === undefined) continue;
    const found = columnNamed(word, name, head);
    if (!found.ok) return found;
    at[word] = found.at;
  }
  const { date, payee, memo, amount, debit, credit, sign } = at;
  const lacks = (problem: string): ColumnsRead => ({
    ok: false,
    problem,
    hints: [
      'name them all, for example  date=Posting Date,payee=Description,amount=Amount',
      'with two columns for the amount:  date=Date,payee=Payee,debit=Withdrawals,credit=Deposits',
    ],
  });
  if (date === undefined || payee === undefined)
    return lacks(`no column is named for the ${date === undefined ? 'date' : 'payee'}`);
  if (amount === undefined && (debit === undefined || credit === undefined))
    return lacks('no column is named for the amount');
  if (amount !== undefined && (debit !== undefined || credit !== undefined))
    return lacks('the amount is one column, or debit and credit, not all three');
  if (amount === undefined && sign !== undefined)
    return lacks('a column for the sign stands beside one amount, not beside debit and credit');
  const used = Object.values(at);
  if (new Set(used).size < used.length) return lacks('one column is named for two things');
  const found: AmountColumns =
    amount === undefined
      ? { kind: 'two', paid: debit ?? 0, received: credit ?? 0 }
      : sign === undefined
        ? { kind: 'one', at: amount }
        : { kind: 'marked', at: amount, mark: sign };
  return { ok: true, columns: { date, payee, memo, amount: found } };
}

/** The column that is named for one thing, by its heading or its number from 1. */
export function columnNamed(
  word: ColumnWord,
  name: string,
  head: Pick<FoundHeadings, 'headings' | 'width'>,
): { readonly ok: true; readonly at: number } | Extract<ColumnsRead, { readonly ok: false }> {
  const at = positionOf(name, head);
  if (at !== undefined) return { ok: true, at };
  return {
    ok: false,
    problem: `there is no column “${bankText(name)}” for ${word}`,
    hints: [
      head.headings === undefined
        ? `the file has no headings; name columns by number, from 1 to ${head.width}`
        : `the columns are: ${head.headings.map((heading, n) => (heading === '' ? `${n + 1}` : heading)).join(', ')}`,
    ],
  };
}

function positionOf(
  name: string,
  { headings, width }: Pick<FoundHeadings, 'headings' | 'width'>,
): number | undefined {
  const exact = headings?.indexOf(bankText(name)) ?? -1;
  if (exact >= 0) return exact;
  const plain =
    headings?.findIndex((heading) => plainWord(heading) === plainWord(name) && plainWord(name) !== '') ?? -1;
  if (plain >= 0) return plain;
  const number = /^(?:column )?(\d{1,3})$/i.exec(name.trim())?.[1];
  const at = Number(number ?? 0) - 1;
  return at >= 0 && at < width ? at : undefined;
}

/** Positions as they are named: by heading where it stands once, else by number. */
export function namesOf(columns: BankColumns, headings: readonly string[] | undefined): NamedColumns {
  const name = (at: number): string => {
    const heading = headings?.[at] ?? '';
    const isOne = heading !== '' && headings?.filter((one) => one === heading).length === 1;
    return isOne && !/^(?:column )?\d{1,3}$/i.test(heading) ? heading : `column ${at + 1}`;
  };
  const { amount } = columns;
  return {
    date: name(columns.date),
    payee: name(columns.payee),
    ...(columns.memo === undefined ? {} : { memo: name(columns.memo) }),
    ...(amount.kind === 'two'
      ? { debit: name(amount.paid), credit: name(amount.received) }
      : { amount: name(amount.at), ...(amount.kind === 'marked' ? { sign: name(amount.mark) } : {}) }),
  };
}

/** `date=Posting Date,payee=Description,amount=Amount`; a comma in a heading is written as it is if no word= follows. */
export function readColumnsOption(text: string): NamedColumns | { readonly problem: string } {
  const named: NamedColumns = {};
  for (const part of text.split(/,(?=\s*[A-Za-z-]+\s*=)/)) {
    const [, word = '', name = ''] = /^\s*([A-Za-z-]+)\s*=\s*(.*?)\s*$/s.exec(part) ?? [];
    const known = COLUMN_WORDS.find((one) => one === word.toLowerCase());
    if (known === undefined || name === '') return { problem: `“${bankText(part)}” names no column` };
    named[known] = name;
  }
  return named;
}

/** What stands above the headings and is passed over, as it may be printed. */
export const chatterAbove = (rows: Rows, head: FoundHeadings): string[] =>
  rows
    .slice(0, (head.row === 0 ? head.from : head.row) - 1)
    .filter((cells) => !isBlank(cells))
    .map((cells) => bankText(cells.filter((cell) => cell.trim() !== '').join(' ')));
