/**
 * The money of a house as one workbook, for those who work in spreadsheets.
 *
 * Rows keep their numbers in the sheet they were read from, so that every figure of a worksheet leads back to them.
 */
import { BUCKETS, ROLE_WORDS } from '../facts/bucket.js';
import type { House } from '../facts/house.js';
import { runsOf } from '../facts/row-runs.js';
import type { MoneyTally, Worksheet } from '../tally/money/money-tally.js';
import { placeWords } from './money-words.js';
import type { ColumnHolds, Workbook, WorkbookCell, WorkbookColumn, WorkbookSheet } from './workbook.js';

/** Sheets in the order in which a preparer asks for them; a list without rows is a sheet of headings. */
export function ledgerWorkbook(house: House, money: MoneyTally): Workbook {
  return {
    sheets: [
      costsSheet(house, money),
      milesSheet(money),
      milesByRateSheet(money),
      hoursSheet(house, money),
      bucketsSheet(money),
      worksheetSheet(money),
      payeesSheet(money),
      keepUntilSheet(money),
      rulesSheet(money),
    ],
  };
}

function costsSheet(house: House, { ledger }: MoneyTally): WorkbookSheet {
  return sheet(
    'Costs',
    [
      ROW,
      day('Date'),
      text('Payee', 28),
      text('What', 40),
      dollars('Amount'),
      text('Bucket', 28),
      text('Place', 24),
      text('Paid', 10),
      text('Receipt', 22),
      whole('Tax year'),
      dollars('Sales tax'),
      text('Note', 40),
    ],
    ledger.costs.map((row) => [
      row.row,
      row.date,
      row.payee,
      row.what,
      row.cents,
      BUCKETS[row.bucket].title,
      placeWords(house, row.place),
      row.paid,
      row.receipt,
      row.taxYear,
      row.salesTax,
      row.note,
    ]),
  );
}

function milesSheet({ ledger, miles }: MoneyTally): WorkbookSheet {
  const rates = new Map(miles.flatMap(({ rate, rows }) => rows.map((row) => [row, rate] as const)));
  return sheet(
    'Miles',
    [
      ROW,
      day('Date'),
      text('From', 22),
      text('To', 28),
      text('Purpose', 40),
      exact('Miles'),
      exact('Dollars a mile', 14),
      dollars('Tolls and parking', 17),
      text('Vehicle', 14),
      text('Note', 30),
    ],
    ledger.trips.map((trip) => [
      trip.row,
      trip.date,
      trip.from,
      trip.to,
      trip.purpose,
      trip.thousandths,
      // A rate is in tenths of a cent, which are thousandths of a dollar.
      rates.get(trip.row),
      trip.tolls,
      trip.vehicle,
      trip.note,
    ]),
  );
}

/** By rate, since a year's miles are rounded once and not trip by trip. */
function milesByRateSheet({ miles }: MoneyTally): WorkbookSheet {
  return sheet(
    'Miles by rate',
    [
      day('From'),
      day('To'),
      exact('Miles'),
      exact('Dollars a mile', 14),
      dollars('At that rate'),
      dollars('Tolls and parking', 17),
      text('Rows of the miles', 24),
      text('Rule', 28),
    ],
    miles.map((span) => [
      span.from,
      span.to,
      span.thousandths,
      span.rate,
      span.cents,
      span.tolls,
      rowsText(span.rows),
      span.rule,
    ]),
  );
}

function hoursSheet(house: House, { ledger }: MoneyTally): WorkbookSheet {
  return sheet(
    'Hours',
    [
      ROW,
      day('Date'),
      text('Who', 16),
      text('What', 40),
      text('Place', 24),
      { title: 'Hours', width: 10, holds: 'hundredths' },
      text('Note', 30),
    ],
    ledger.hours.map((row) => [
      row.row,
      row.date,
      row.who,
      row.what,
      placeWords(house, row.place),
      row.hundredths,
      row.note,
    ]),
  );
}

function bucketsSheet({ totals, allPaid }: MoneyTally): WorkbookSheet {
  const lines = totals.map((total): WorkbookCell[] => [
    BUCKETS[total.bucket].title,
    total.bucket,
    total.cents,
    total.refunds,
    total.salesTax,
    rowsText(total.rows),
  ]);
  return sheet(
    'Buckets',
    [
      text('Bucket', 32),
      text('Word in the sheet', 28),
      dollars('Total'),
      dollars('Of which refunds', 17),
      dollars('Of which sales tax', 18),
      ROWS,
    ],
    totals.length === 0
      ? []
      : [...lines, ['Everything paid', undefined, allPaid, undefined, undefined, undefined]],
  );
}

/** The worksheet of the stated role; as long as none is stated, all of them. */
function worksheetSheet({ worksheets, role }: MoneyTally): WorkbookSheet {
  const wanted = worksheets.filter((one) => role === undefined || one.role === role);
  return sheet(
    'Worksheet',
    [
      text('Held as', 12),
      text('Form', 30),
      text('Part', 32),
      whole('Tax year'),
      text('Line of the form', 17),
      text('Line', 60),
      dollars('Amount'),
      ROWS,
      text('Facts', 28),
      text('Rules', 34),
      text('Remark', 60),
    ],
    wanted.flatMap(worksheetLines),
  );
}

function worksheetLines({ role, form, parts, notes }: Worksheet): WorkbookCell[][] {
  const lines = parts.flatMap(({ title, year, lines: inPart }) =>
    inPart.map((line): WorkbookCell[] => [
      ROLE_WORDS[role],
      form,
      title,
      year,
      line.formLine,
      line.label,
      line.cents,
      rowsText(line.rows),
      line.facts.map(({ says }) => says).join('; '),
      line.rules.join(', '),
      line.note,
    ]),
  );
  const none = undefined;
  const remarks = notes.map((note): WorkbookCell[] => {
    const rules = note.rules.join(', ');
    return [
      ROLE_WORDS[role],
      form,
      'To be read with it',
      none,
      none,
      note.text,
      none,
      none,
      none,
      rules,
      none,
    ];
  });
  return [...lines, ...remarks];
}

function payeesSheet({ payees }: MoneyTally): WorkbookSheet {
  return sheet(
    'Payees',
    [
      text('Payee', 30),
      whole('Year'),
      dollars('Paid'),
      dollars('Counts towards a return', 24),
      dollars('Left out'),
      text('Why left out', 40),
      dollars('Threshold'),
      text('Verdict', 14),
      text('Why', 50),
      text('Form', 12),
      text('Taxpayer form', 14),
      day('Return due'),
      ROWS,
      text('Rules', 34),
    ],
    payees.map((one) => [
      one.payee,
      one.year,
      one.paid,
      one.counted,
      one.leftOut.reduce((sum, { cents }) => sum + cents, 0),
      one.leftOut
        .map(({ why, rows }) => `${why} (${rows.length === 1 ? 'row' : 'rows'} ${rowsText(rows)})`)
        .join('; '),
      one.threshold,
      one.verdict.replace('-', ' '),
      one.why,
      one.form,
      one.taxpayerForm.replace('-', ' '),
      one.due,
      rowsText(one.rows),
      one.rules.join(', '),
    ]),
  );
}

function keepUntilSheet({ retention }: MoneyTally): WorkbookSheet {
  return sheet(
    'Keep until',
    [
      text('What', 50),
      text('Kept', 12),
      day('Keep through', 13),
      text('Counted from', 50),
      whole('Years'),
      text('Rules', 34),
    ],
    retention.map((one) => [one.what, one.kept, one.through, one.from, one.years, one.rules.join(', ')]),
  );
}

function rulesSheet({ rules }: MoneyTally): WorkbookSheet {
  return sheet(
    'Rules',
    [
      text('Rule', 34),
      text('In our words', 80),
      text('Source', 40),
      text('Section', 24),
      text('Publisher', 30),
      text('How closely read', 16),
      text('Caution', 50),
    ],
    rules.map(({ id, rule, source, read, caution }) => [
      id,
      rule,
      source.title,
      source.section,
      source.publisher,
      read,
      caution,
    ]),
  );
}

function sheet(
  name: string,
  columns: readonly WorkbookColumn[],
  rows: readonly (readonly WorkbookCell[])[],
): WorkbookSheet {
  return { name, columns, rows };
}

const column =
  (holds: ColumnHolds, usual: number) =>
  (title: string, width = usual): WorkbookColumn => ({ title, width, holds });

const text = column('text', 20);
const day = column('day', 11);
const whole = column('whole', 9);
const dollars = column('cents', 14);
const exact = column('thousandths', 10);
const ROW = whole('Row', 6);
const ROWS = text('Rows of the costs', 24);

/** A cell can't hold many thousands of numbers; JSON can. */
const MOST_RUNS = 200;

/** Numbers of rows, ascending, as a person writes them: "4, 7-12". */
function rowsText(rows: readonly number[]): string {
  const runs = runsOf(rows);
  const words = runs
    .slice(0, MOST_RUNS)
    .map(([first, last]) => (first === last ? String(first) : `${first}-${last}`));
  return [...words, ...(runs.length > MOST_RUNS ? [`and more: ${rows.length} rows`] : [])].join(', ');
}
