/**
 * The money of a house as data: `ledger.json`, and `ledger.schema.json`, which says what every word in it means.
 *
 * The schema is JSON Schema 2020-12 and made from the same description that types the file. Money is whole cents.
 */
import { z } from 'zod';
import { BUCKET_NAMES, BUCKETS, ROLES } from '../facts/bucket.js';
import type { House } from '../facts/house.js';
import { PAYMENT_WAYS } from '../facts/ledger.js';
import type { Lessons, MileSpan, MoneyTally, PayeeYear, Worksheet } from '../tally/money/money-tally.js';

/** Changes when a word changes its meaning or goes; words may be added under the same name. */
const FORM = 'sillplate-ledger-1';
export const SCHEMA_NAME = 'ledger.schema.json';

const whole = z.number().int();
const cents = (about: string) => whole.describe(`${about} Whole cents, United States dollars.`);
const words = (about: string) => z.string().describe(about);
const day = (about: string) => z.iso.date().describe(`${about} YYYY-MM-DD.`);
const rowNumbers = (list: string) =>
  z.array(whole).describe(`Numbers of the rows of \`${list}\` behind it, ascending.`);
const ruleIds = z.array(z.string()).describe('Ids of the rules behind it; see `rules`.');
const rowNumber = whole.min(2).describe('Number of the row in its sheet; the headings are row 1.');
const place = words(
  'Id of the room, level, structure, system or work item it was for. Left out: the whole house.',
).optional();
const bucket = z
  .enum(BUCKET_NAMES as [string, ...string[]])
  .describe('What the payment was for, in the word of the cost sheet; `buckets` has its title.');
const role = z.enum(ROLES);

const costRow = z.strictObject({
  row: rowNumber,
  date: day('When it was paid.'),
  payee: words('Who was paid.'),
  what: words('What it was for.'),
  cents: cents('Paid, sales tax included; below zero for money back.'),
  salesTaxCents: cents('Of which sales tax. Left out: the sheet does not tell.').optional(),
  bucket,
  place,
  paid: z.enum(PAYMENT_WAYS).describe('How it was paid. Left out: the sheet does not tell.').optional(),
  receipt: words('Id of the paper that proves it; see `papers`. Left out: there is none.').optional(),
  taxYear: whole.describe('Tax year it counts in, where that is not the year of the date.').optional(),
  note: words('A remark of the owner.').optional(),
});

const trip = z.strictObject({
  row: rowNumber,
  date: day('When it was driven.'),
  from: words('Where it began. Left out: the log does not tell.').optional(),
  to: words('Where it led.'),
  purpose: words('What for.'),
  thousandths: whole.describe('Length in thousandths of a mile.'),
  tollsCents: cents('Tolls and parking.'),
  vehicle: words('Which vehicle.').optional(),
  note: words('A remark of the owner.').optional(),
});

const hoursRow = z.strictObject({
  row: rowNumber,
  date: day('When it was worked.'),
  who: words('`owner`, `family` or a name. Unpaid; whoever was paid stands in `costs`.'),
  what: words('What was done.'),
  place,
  hundredths: whole.describe('Time in hundredths of an hour.'),
  note: words('A remark of the owner.').optional(),
});

const paper = z.strictObject({
  id: words('Id that the rows name.'),
  file: words('The file below `documents/` of the house’s folder.'),
  bytes: whole.describe('Length of the file.'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of the file, in hexadecimal.'),
});

const bucketTotal = z.strictObject({
  bucket,
  title: words('The bucket’s name for people.'),
  about: words('What belongs in it.'),
  cents: cents('Sum of its rows.'),
  refundCents: cents('Of which money back; zero or below.'),
  salesTaxCents: cents('Of which sales tax, as far as the sheet tells it.'),
  rows: rowNumbers('costs'),
});

const worksheetLine = z.strictObject({
  id: words('Unique within its worksheet.'),
  label: words('What the line is.'),
  formLine: words('Number of the line on the form, where it has one.').optional(),
  cents: cents(
    'The amount; what is taken away is below zero. Left out: it can’t be told, and `note` says why.',
  ).optional(),
  rows: rowNumbers('costs'),
  facts: z
    .array(
      z.strictObject({
        path: words('Words of the fact: `money.sale.price`.'),
        says: words('The fact in plain words, with its value.'),
      }),
    )
    .describe('Facts of the house that it rests on beside rows.'),
  rules: ruleIds,
  total: z.boolean().describe('Whether the line adds up lines above it.'),
  note: words('A remark for the preparer.').optional(),
});

const worksheet = z.strictObject({
  role: role.describe('The role it is made for.'),
  title: words('What it is.'),
  form: words('Which forms it feeds.'),
  dates: z
    .array(
      z.strictObject({
        id: words('`acquired`, `sold`, `in-service` or `held`.'),
        label: words('Its name for people.'),
        says: words('The day, or that there is none yet.'),
      }),
    )
    .describe('Days that a form asks for.'),
  parts: z
    .array(
      z.strictObject({
        id: words('Unique within its worksheet.'),
        title: words('What the part is.'),
        taxYear: whole.describe('The tax year, where the part is one of a year’s.').optional(),
        lines: z.array(worksheetLine).describe('From top to bottom.'),
      }),
    )
    .describe('Stretches of lines that belong together.'),
  notes: z
    .array(
      z.strictObject({
        id: words('Unique within its worksheet.'),
        text: words('What is to be read with it.'),
        rules: ruleIds,
      }),
    )
    .describe('What applies to the role as a whole.'),
});

const payeeYear = z.strictObject({
  payee: words('Who was paid, as in `costs`.'),
  year: whole.describe('The calendar year.'),
  paidCents: cents('All that was paid in it, money back taken off.'),
  countedCents: cents('What counts towards an information return.'),
  leftOut: z
    .array(
      z.strictObject({
        cents: cents('What does not count.'),
        why: words('Why it does not.'),
        rows: rowNumbers('costs'),
      }),
    )
    .describe('Payments that do not count towards a return.'),
  thresholdCents: cents('From which a return is due. Left out: not known for the year.').optional(),
  verdict: z
    .enum(['report', 'below', 'not-reported', 'undecided'])
    .describe(
      'report: a return is due. below: under the threshold. not-reported: no return for such payments. undecided: the facts do not settle it.',
    ),
  why: words('What the verdict rests on.'),
  form: words('The form it would go on.').optional(),
  taxpayerForm: z
    .enum(['on-file', 'asked', 'none', 'not-known'])
    .describe(
      'Whether the owner has the payee’s signed taxpayer form. The number itself is kept nowhere here.',
    ),
  due: day('When the return is due.').optional(),
  rows: rowNumbers('costs'),
  rules: ruleIds,
});

const mileSpan = z.strictObject({
  from: day('First day of the stretch at that rate.'),
  to: day('Last day of it.'),
  rateTenths: whole.describe('Tenths of a cent a mile. Left out: no rate is known.').optional(),
  thousandths: whole.describe('Miles driven, in thousandths of a mile.'),
  cents: cents('Miles at that rate, rounded once.').optional(),
  tollsCents: cents('Tolls and parking.'),
  rows: rowNumbers('trips'),
  rule: words('Id of the rule that gives the rate.'),
});

const retention = z.strictObject({
  id: words('Unique in this list.'),
  what: words('What is kept.'),
  kept: z
    .enum(['through', 'not begun', 'for good'])
    .describe(
      'through: up to that day. not begun: the day it is counted from is not there yet. for good: there is no end.',
    ),
  through: day('Last day it is kept. Left out: see `kept`.').optional(),
  from: words('What the day is counted from.'),
  years: whole.describe('How many years.').optional(),
  rules: ruleIds,
});

const share = z.strictObject({
  id: words('The trade or place.'),
  label: words('Its name for people.'),
  cents: cents('Spent there.'),
  rows: rowNumbers('costs'),
  hundredths: whole.describe('Unpaid hours there, in hundredths.'),
});

const lessons = z.strictObject({
  spentCents: cents('Improvements, restorations and repairs, refunds and rebates taken off.'),
  area: z
    .strictObject({ squareFeet: z.number().describe('Square feet.'), words: words('What was measured.') })
    .describe('The area that it is spread over.')
    .optional(),
  perSquareFootCents: cents('Spent for each square foot, rounded once.').optional(),
  byTrade: z.array(share).describe('By trade.'),
  byRoom: z.array(share).describe('By room.'),
  budget: z
    .array(
      z.strictObject({
        label: words('What for.'),
        plannedCents: cents('Planned.'),
        actualCents: cents('Paid.'),
        rows: rowNumbers('costs'),
      }),
    )
    .describe('Planned beside paid.'),
  days: z
    .strictObject({
      bought: words('When it was bought.').optional(),
      listed: words('When it was listed.').optional(),
      sold: words('When the sale closed.').optional(),
      toListing: whole.describe('Days from purchase to listing.').optional(),
      toSale: whole.describe('Days from purchase to sale.').optional(),
    })
    .describe('How long it took.'),
  heldUp: z
    .array(
      z.strictObject({
        from: words('First day.'),
        to: words('Last day.'),
        days: whole.describe('How many.'),
        by: words('What was waited for.'),
      }),
    )
    .describe('What held the work up, longest first.'),
  holdingCents: cents('Cost of holding the house.'),
  holdingDays: whole
    .describe('Days from the purchase to the end named by `holdingEnd`. Left out: not known to the day.')
    .optional(),
  holdingEnd: z.enum(['sold', 'ready to be let', 'as-of day']).describe('With what those days end.'),
  holdingWithinCents: cents('Holding paid within those days.'),
  holdingPerDayCents: cents('`holdingWithinCents` for each of those days, rounded once.').optional(),
  profitCents: cents(
    'Sale price less selling costs and all that was paid. Left out: not sold, or no row of the purchase.',
  ).optional(),
  ownerHundredths: whole.describe('The owner’s unpaid hours, in hundredths.'),
  otherHundredths: whole.describe('Unpaid hours of others, in hundredths.'),
  hourRateCents: cents('What the owner calls an hour worth; for comparison only.').optional(),
  profitAfterHoursCents: cents('Profit less the owner’s hours at that rate; for comparison only.').optional(),
});

const rule = z.strictObject({
  id: words('Unique; what `rules` elsewhere names.'),
  rule: words('The rule in the program’s own words.'),
  source: z
    .strictObject({
      title: words('The paper.'),
      section: words('Where in it.'),
      publisher: words('Whose it is.'),
    })
    .describe('Where it is from.'),
  read: z
    .enum(['publisher', 'quoted', 'paraphrased', 'from memory'])
    .describe('How closely it was read: at the publisher’s, as a quotation, retold, or from memory alone.'),
  caution: words('What to mind.').optional(),
});

const ledgerSchema = z
  .strictObject({
    $schema: z.literal(SCHEMA_NAME).describe('The schema beside this file.'),
    form: z.literal(FORM).describe('Name of this form of file; another form has another name.'),
    house: z
      .strictObject({ folder: words('Name of its folder.'), name: words('Its name.') })
      .describe('Which house.'),
    asOf: day('The day up to which everything was worked out.'),
    role: role
      .describe('What the owner holds the house as, by the owner’s own word. Left out: not stated.')
      .optional(),
    sale: z
      .strictObject({
        closed: words('When it closed, as the owner wrote it.'),
        cents: cents('Contract price.'),
      })
      .describe('The sale. Left out: not sold.')
      .optional(),
    allPaidCents: cents('Everything paid, money back taken off.'),
    costs: z.array(costRow).describe('Rows of the cost sheet, in its order.'),
    trips: z.array(trip).describe('Rows of the mileage log, in its order.'),
    hours: z.array(hoursRow).describe('Rows of unpaid hours, in their order.'),
    papers: z.array(paper).describe('Receipts and other papers that lie in the folder, by id.'),
    buckets: z.array(bucketTotal).describe('Totals by bucket.'),
    worksheets: z
      .array(worksheet)
      .describe(
        'What each role would put on its forms. The program does not decide the role and gives no tax advice.',
      ),
    payees: z
      .array(payeeYear)
      .describe('Who was paid how much in which year, against the reporting threshold.'),
    miles: z.array(mileSpan).describe('Trips by the rate in force.'),
    retention: z.array(retention).describe('How long papers are kept.'),
    lessons: lessons.describe('What the owner can learn for the next house. No tax figure rests on it.'),
    rules: z.array(rule).describe('Every rule that is named above, by id.'),
  })
  .describe(
    'What was paid, driven and worked for one house, and what was worked out from it. A word that is not known is left out.',
  );

/** What `ledger.json` holds. */
type LedgerFile = z.infer<typeof ledgerSchema>;

export interface LedgerFileOrder {
  /** Name of the house's folder. */
  readonly folder: string;
  readonly house: House;
  readonly money: MoneyTally;
  /** YYYY-MM-DD. */
  readonly asOf: string;
}

/** The text of `ledger.json`. */
export function ledgerJson(order: LedgerFileOrder): string {
  return `${JSON.stringify(ledgerFile(order), null, 1)}\n`;
}

/** The text of `ledger.schema.json`: the same for every house. */
export function ledgerSchemaJson(): string {
  const schema = z.toJSONSchema(ledgerSchema, { target: 'draft-2020-12' });
  const named = { $id: `urn:${FORM.replaceAll('-', ':')}`, title: 'The money of one house' };
  const { $schema, ...rest } = schema;
  return `${JSON.stringify({ $schema, ...named, ...rest }, null, 1)}\n`;
}

function ledgerFile({ folder, house, money, asOf }: LedgerFileOrder): LedgerFile {
  const { ledger, sale } = money;
  return {
    $schema: SCHEMA_NAME,
    form: FORM,
    house: { folder, name: house.house.name },
    asOf,
    role: money.role,
    sale: sale === undefined ? undefined : { closed: sale.written, cents: sale.price },
    allPaidCents: money.allPaid,
    // Word by word, so that the file keeps its form when a row learns a new one.
    costs: ledger.costs.map((one) => ({
      row: one.row,
      date: one.date,
      payee: one.payee,
      what: one.what,
      cents: one.cents,
      salesTaxCents: one.salesTax,
      bucket: one.bucket,
      place: one.place,
      paid: one.paid,
      receipt: one.receipt,
      taxYear: one.taxYear,
      note: one.note,
    })),
    trips: ledger.trips.map((one) => ({
      row: one.row,
      date: one.date,
      from: one.from,
      to: one.to,
      purpose: one.purpose,
      thousandths: one.thousandths,
      tollsCents: one.tolls,
      vehicle: one.vehicle,
      note: one.note,
    })),
    hours: ledger.hours.map((one) => ({
      row: one.row,
      date: one.date,
      who: one.who,
      what: one.what,
      place: one.place,
      hundredths: one.hundredths,
      note: one.note,
    })),
    papers: [...ledger.papers]
      .map(([id, { file, bytes, sha256 }]) => ({ id, file, bytes, sha256 }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
    buckets: money.totals.map(({ bucket: name, cents: sum, refunds, salesTax, rows }) => ({
      bucket: name,
      title: BUCKETS[name].title,
      about: BUCKETS[name].about,
      cents: sum,
      refundCents: refunds,
      salesTaxCents: salesTax,
      rows: [...rows],
    })),
    worksheets: money.worksheets.map(worksheetOf),
    payees: money.payees.map(payeeOf),
    miles: money.miles.map(spanOf),
    retention: money.retention.map(({ id, what, kept, through, from, years, rules }) => ({
      id,
      what,
      kept,
      through,
      from,
      years,
      rules: [...rules],
    })),
    lessons: lessonsOf(money.lessons),
    rules: money.rules.map(({ id, rule: said, source, read, caution }) => ({
      id,
      rule: said,
      source: { title: source.title, section: source.section, publisher: source.publisher },
      read,
      caution,
    })),
  };
}

function worksheetOf({
  role: held,
  title,
  form,
  dates = [],
  parts,
  notes,
}: Worksheet): LedgerFile['worksheets'][number] {
  return {
    role: held,
    title,
    form,
    dates: dates.map(({ id, label, says }) => ({ id, label, says })),
    parts: parts.map((part) => ({
      id: part.id,
      title: part.title,
      taxYear: part.year,
      lines: part.lines.map((line) => ({
        id: line.id,
        label: line.label,
        formLine: line.formLine,
        cents: line.cents,
        rows: [...line.rows],
        facts: line.facts.map(({ path, says }) => ({ path, says })),
        rules: [...line.rules],
        total: line.weight === 'total',
        note: line.note,
      })),
    })),
    notes: notes.map(({ id, text, rules }) => ({ id, text, rules: [...rules] })),
  };
}

function payeeOf(one: PayeeYear): LedgerFile['payees'][number] {
  return {
    payee: one.payee,
    year: one.year,
    paidCents: one.paid,
    countedCents: one.counted,
    leftOut: one.leftOut.map(({ cents: sum, why, rows }) => ({ cents: sum, why, rows: [...rows] })),
    thresholdCents: one.threshold,
    verdict: one.verdict,
    why: one.why,
    form: one.form,
    taxpayerForm: one.taxpayerForm,
    due: one.due,
    rows: [...one.rows],
    rules: [...one.rules],
  };
}

function spanOf(span: MileSpan): LedgerFile['miles'][number] {
  return {
    from: span.from,
    to: span.to,
    rateTenths: span.rate,
    thousandths: span.thousandths,
    cents: span.cents,
    tollsCents: span.tolls,
    rows: [...span.rows],
    rule: span.rule,
  };
}

function lessonsOf(one: Lessons): LedgerFile['lessons'] {
  const shares = (list: Lessons['byTrade']): LedgerFile['lessons']['byTrade'] =>
    list.map(({ id, label, cents: sum, rows, hundredths }) => ({
      id,
      label,
      cents: sum,
      rows: [...rows],
      hundredths,
    }));
  const { bought, listed, sold, toListing, toSale } = one.days;
  return {
    spentCents: one.spent,
    area: one.area === undefined ? undefined : { squareFeet: one.area.squareFeet, words: one.area.words },
    perSquareFootCents: one.perSquareFoot,
    byTrade: shares(one.byTrade),
    byRoom: shares(one.byRoom),
    budget: one.budget.map(({ label, planned, actual, rows }) => ({
      label,
      plannedCents: planned,
      actualCents: actual,
      rows: [...rows],
    })),
    days: { bought, listed, sold, toListing, toSale },
    heldUp: one.heldUp.map(({ from, to, days, by }) => ({ from, to, days, by })),
    holdingCents: one.holding,
    holdingDays: one.holdingDays,
    holdingEnd: one.holdingEnd,
    holdingWithinCents: one.holdingWithin,
    holdingPerDayCents: one.holdingPerDay,
    profitCents: one.profit,
    ownerHundredths: one.hours.owner,
    otherHundredths: one.hours.others,
    hourRateCents: one.hourRate,
    profitAfterHoursCents: one.profitAfterHours,
  };
}
