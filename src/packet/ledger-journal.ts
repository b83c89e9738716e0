/**
 * The cost rows as a plain-text double-entry journal, which `hledger` and `ledger` both read.
 *
 * A row is one transaction of two postings: what it was for, and how it was paid. The sale, once there is one, is a
 * transaction of its own. Amounts are exact; texts are made harmless, and stand whole in `ledger.csv`.
 */
import type { House } from '../facts/house.js';
import type { CostRow } from '../facts/ledger.js';
import type { Sale } from '../tally/money/money-tally.js';
import { plainDollars } from './ledger-amounts.js';

/** `folder` names the house in the head. Dates ascending, rows of a day in the order of the sheet. */
export function journalText(
  folder: string,
  house: House,
  costs: readonly CostRow[],
  sale: Sale | undefined,
): string {
  const rows = costs.toSorted((a, b) => (a.date === b.date ? a.row - b.row : a.date < b.date ? -1 : 1));
  const lines = headOf(folder, house);
  // Behind the rows of its day.
  const sold = sale === undefined ? rows.length : countUpTo(rows, sale.day);
  const parts: string[] = [];
  rows.forEach((row, index) => {
    if (sale !== undefined && index === sold) addSale(lines, sale);
    addRow(lines, row);
    // Lines of a large sheet are joined as they come: all of them at once would hold several times what they come to.
    if (lines.length >= LINES_AT_ONCE) parts.push(lines.splice(0).join('\n'));
  });
  if (sale !== undefined && sold === rows.length) addSale(lines, sale);
  return [...parts, ...lines, ''].join('\n');
}

const LINES_AT_ONCE = 5000;

function countUpTo(rows: readonly CostRow[], day: string): number {
  const later = rows.findIndex(({ date }) => date > day);
  return later === -1 ? rows.length : later;
}

function headOf(folder: string, house: House): string[] {
  return [
    `; What was paid for ${harmless(house.house.name)} (${folder}), one transaction a row of the cost sheet.`,
    "; (row-2) is the row's number there; the headings are row 1. Then: payee | what it was for.",
    '; house:... is what the money was for, paid:... is how it was paid; the two cancel out. Dollars, to the cent.',
    '; Below a heading stand the receipt, the place it was for, sales tax within the amount, and another tax year.',
    `; Totals by bucket:  hledger -f ${folder}.journal balance house   or   ledger -f ${folder}.journal balance house`,
    '; No tax advice. Signs that mean something in this format were replaced; ledger.csv has the texts as written.',
  ];
}

function addRow(lines: string[], row: CostRow): void {
  lines.push('', `${row.date} (row-${row.row}) ${said(row.payee)} | ${said(row.what)}`);
  if (row.receipt !== undefined) lines.push(tag('receipt', row.receipt));
  if (row.place !== undefined) lines.push(tag('for', row.place));
  if (row.salesTax !== undefined) lines.push(tag('sales-tax', `${plainDollars(row.salesTax)} USD`));
  if (row.taxYear !== undefined) lines.push(tag('tax-year', String(row.taxYear)));
  lines.push(
    posting(`house:${row.bucket}`, row.cents),
    posting(`paid:${row.paid ?? 'not-told'}`, 0 - row.cents),
  );
}

/** A sale of which the owner named no day stands on the last one it can be, and says what was written. */
function addSale(lines: string[], { day, price, written }: Sale): void {
  lines.push('', `${day} (sale) Sale of the house | contract price`);
  if (written !== day) lines.push(tag('closed', written));
  lines.push(posting('sale:price', 0 - price), posting('received', price));
}

function posting(account: string, cents: number): string {
  const amount = plainDollars(cents);
  // Amounts end below each other; two blanks at least part them from the account.
  return `    ${account}${BLANKS.slice(0, Math.max(2, WIDTH - account.length - amount.length))}${amount} USD`;
}

/** Of an account and its amount: the longest bucket beside nine digits of dollars. */
const WIDTH = 48;
const BLANKS = ' '.repeat(WIDTH);

const tag = (name: string, value: string): string => `    ; ${name}: ${harmless(value)}`;

/**
 * One line without a sign that either program reads: `;` begins a remark, `|` parts payee from purpose, `*` and `!` in
 * front are a state and `(` a number, two blanks or a tab end a text, signs of direction would turn the line about.
 */
function harmless(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .replace(/\p{Cs}/gu, '\uFFFD')
    .replace(/[\u200E\u200F\u202A-\u202E\u2066-\u2069]/g, '')
    .replace(/[\s\p{Cc}\p{Z}]+/gu, ' ')
    .replaceAll(';', ',')
    .replaceAll('|', '/')
    .replace(/^[\s*!(=~%#@"'&+-]+/, '')
    .trim();
}

/** Most texts are such, and are looked at once only. */
const PLAIN = /^[A-Za-z0-9][\w.,:'&()/#+-]*(?: [\w.,:'&()/#+-]+)*$/;

const said = (text: string): string => {
  const words = harmless(text);
  return words === '' ? 'not told' : words;
};
