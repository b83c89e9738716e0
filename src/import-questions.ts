/** The questions of an import, one line each; whatever comes from a file is printed so that it can't act on a terminal. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { visible } from './diagnostics/report.js';
import { BUCKET_NAMES, BUCKETS, type Bucket } from './facts/bucket.js';
import { BANK_WAYS, type PaymentWay } from './facts/ledger.js';
import { printMoney } from './facts/money.js';
import { taxpayerNumberIn } from './facts/taxpayer-number.js';
import { type Decision, newCost, type Open, usualWhat } from './import-decision.js';
import type { PayeeMemory } from './import-memory.js';
import {
  type BankColumns,
  type ColumnWord,
  columnNamed,
  columnsFrom,
  type FoundHeadings,
  type NamedColumns,
  namesOf,
} from './intake/bank-columns.js';
import type { DayOrder } from './intake/bank-day.js';
import type { BankRow } from './intake/bank-rows.js';
import { bankText, alike as isLike } from './intake/bank-text.js';
import { bucketReader, paidReader, type placeReader } from './intake/cell-words.js';
import type { SheetRows } from './intake/sheet-rows.js';

/** Whoever answers. */
export interface Asker {
  readonly say: (text: string) => void;
  /** Whether any answer comes at all; waits for the first where no terminal is there. */
  readonly isThere: () => Promise<boolean>;
  /** The answer without blanks around it, what is usual for an empty one; undefined when no more answers come. */
  readonly question: (words: string, usual: string) => Promise<string | undefined>;
}

/** Said before anything is written. */
export const NOBODY_ANSWERS: Diagnostic = {
  code: 'cli.usage',
  severity: 'error',
  message: 'there are questions, and no answers came on standard input, so nothing is written',
  hints: [
    'to be asked nothing, add  --yes',
    'to see what would be added, add  --dry-run',
    'to be asked, type the same command in a terminal',
  ],
};

type Check<T> = (
  answer: string,
) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly say: string };

/** Asks until an answer can be used. */
async function ask<T>(asker: Asker, words: string, usual: string, check: Check<T>): Promise<T | undefined> {
  for (;;) {
    const answer = await asker.question(words, usual);
    if (answer === undefined) return undefined;
    const read = check(answer);
    if (read.ok) return read.value;
    asker.say(read.say.replace(/^(?=.)/gm, '    ').concat('\n'));
  }
}

const fine = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
const again = (...lines: readonly string[]): { readonly ok: false; readonly say: string } => ({
  ok: false,
  say: lines.map(visible).join('\n'),
});

const yesOrNo: Check<boolean> = (answer) => {
  if (/^y(es)?$/i.test(answer)) return fine(true);
  return /^n(o)?$/i.test(answer) ? fine(false) : again('Type y or n');
};

// ------------------------------------------------------------------ columns

/** "2026-04-03  Tollgate Building Supply  $472.14 paid" */
const sampleLine = ({ date, text, cents }: BankRow): string =>
  `${date}  ${visible(text)}  ${printMoney(Math.abs(cents))} ${cents < 0 ? 'came in' : 'paid'}`;

/** Three rows, both directions of money among them if there are both: they show a sign that is the wrong way round. */
function samples(rows: readonly BankRow[]): readonly BankRow[] {
  const first = rows.slice(0, 3);
  const isPaid = ({ cents }: BankRow): boolean => cents > 0;
  const other = first.every(isPaid)
    ? rows.find((row) => !isPaid(row))
    : first.some(isPaid)
      ? undefined
      : rows.find(isPaid);
  return other === undefined ? first : [...first.slice(0, 2), other];
}

/** How a mapping reads: three rows, and which column is which. */
export function mappingWords(columns: BankColumns, head: FoundHeadings, rows: readonly BankRow[]): string {
  const names = Object.entries(namesOf(columns, head.headings)).map(
    ([word, name]) => `${word}: ${visible(name)}`,
  );
  const signs =
    columns.amount.kind === 'marked'
      ? []
      : [columns.paidIs === 'negative' ? 'what you paid has a minus' : 'what you paid has no minus'];
  return [
    ...samples(rows).map((row) => `  ${sampleLine(row)}`),
    `  (${[...names, ...signs].join(' · ')})`,
    '',
  ].join('\n');
}

/** Which column is which, and whether payments have a minus; undefined if the answers end. */
export async function askColumns(
  asker: Asker,
  sheet: SheetRows,
  head: FoundHeadings,
  proposed: BankColumns | undefined,
): Promise<BankColumns | undefined> {
  const first = sheet.rows[head.from - 1] ?? [];
  for (let at = 0; at < head.width; at += 1)
    asker.say(
      `  ${String(at + 1).padStart(2)}  ${visible(head.headings?.[at] ?? '')}  ${visible(bankText(first[at] ?? ''))}\n`,
    );
  const column =
    (word: ColumnWord): Check<string> =>
    (answer) => {
      const found = columnNamed(word, answer, head);
      return found.ok ? fine(answer) : again(found.problem, ...found.hints);
    };
  const amountColumn = column('amount');
  const usual = (at: number | undefined): string => (at === undefined ? '' : String(at + 1));
  for (;;) {
    const amount = proposed?.amount;
    const date = await ask(asker, '  Which column is the date', usual(proposed?.date), column('date'));
    const payee =
      date &&
      (await ask(asker, '  Which column names who was paid', usual(proposed?.payee), column('payee')));
    const amounts =
      payee &&
      (await ask(
        asker,
        '  Which column is the amount (if two, paid and came in: 4,5)',
        amount === undefined
          ? ''
          : amount.kind === 'two'
            ? `${amount.paid + 1},${amount.received + 1}`
            : usual(amount.at),
        (answer) => {
          // A heading may have a comma in it.
          const parts = amountColumn(answer).ok ? [answer] : answer.split(',');
          const wrong = parts.map(amountColumn).find((one) => !one.ok);
          return parts.length > 2
            ? again('One column, or two with a comma between')
            : (wrong ?? fine(parts.map((one) => one.trim())));
        },
      ));
    if (!date || !payee || !amounts) return undefined;
    const named: NamedColumns = {
      date,
      payee,
      ...(amounts[1] === undefined ? { amount: amounts[0] } : { debit: amounts[0], credit: amounts[1] }),
    };
    const read = columnsFrom(named, head);
    if (!read.ok) {
      asker.say(`    ${visible(read.problem)}\n`);
      continue;
    }
    const isMarked =
      amount?.kind === 'marked' && read.columns.amount.kind === 'one' && read.columns.amount.at === amount.at;
    const isTwo = read.columns.amount.kind === 'two';
    if (isMarked || isTwo)
      return {
        ...read.columns,
        amount: isMarked ? amount : read.columns.amount,
        memo: undefined,
        paidIs: isTwo ? (proposed?.paidIs ?? 'positive') : 'positive',
        days: undefined,
      };
    const minus = await ask(
      asker,
      '  Has what you paid a minus',
      proposed?.paidIs === 'positive' ? 'n' : 'y',
      yesOrNo,
    );
    if (minus === undefined) return undefined;
    return { ...read.columns, paidIs: minus ? 'negative' : 'positive', days: undefined };
  }
}

/** Whether the columns are understood. */
export const askRight = (asker: Asker): Promise<boolean | undefined> =>
  ask(asker, 'Is that right (n: say which column is which)', 'y', yesOrNo);

/** Which of two days a date is. */
export const askDays = (
  asker: Asker,
  written: string,
  monthFirst: string,
  dayFirst: string,
): Promise<DayOrder | undefined> =>
  ask<DayOrder>(asker, `${visible(written)}: is that 1 ${monthFirst} or 2 ${dayFirst}`, '1', (answer) =>
    /^[12]$/.test(answer) ? fine(answer === '1' ? 'month-first' : 'day-first') : again('Type 1 or 2'),
  );

/** How payments of this account are made. */
export function askPaid(asker: Asker): Promise<PaymentWay | undefined> {
  const read = paidReader(BANK_WAYS);
  return ask(asker, `How is it paid from this account (${BANK_WAYS.join(', ')})`, 'card', (answer) => {
    const found = read(answer);
    return found.ok ? fine(found.value) : again(found.problem, ...found.hints);
  });
}

// ------------------------------------------------------------------ rows

const bucketHelp = (): string =>
  `${BUCKET_NAMES.map((bucket) => `    ${bucket.padEnd(26)} ${BUCKETS[bucket].about}`).join('\n')}
    -                          not of this house: left out, and remembered
    p                          another payee
    q                          stop here; what was answered so far is written
`;

export const ROW_OPENING =
  'For each: Enter takes what stands in brackets.  - not of this house   ? the buckets   p another payee   q stop\n';

/** Answers that mean something at every question of a row. */
type Word = 'stop' | 'not-this-house' | 'payee';
type Answer<T> = { readonly word: Word } | { readonly value: T };

interface RowAsked {
  readonly number: number;
  readonly of: number;
  readonly memory: PayeeMemory;
  readonly placeOf: ReturnType<typeof placeReader> | undefined;
  /** As the sheet is called in a question. */
  readonly sheetName: string;
}

/** What becomes of a row by the writer's word; undefined: stop here. */
export async function askRow(asker: Asker, open: Open, about: RowAsked): Promise<Decision | undefined> {
  const { row, alike, twin } = open;
  asker.say(
    `\n${about.number} of ${about.of}   ${row.date}   ${printMoney(Math.abs(row.cents))} ${row.cents < 0 ? 'came in' : 'paid'}\n`,
  );
  asker.say(`  ${visible(bankWords(row))}\n`);
  if (alike !== undefined) {
    const { cost, how } = alike;
    const place = `row ${cost.row} of ${about.sheetName}`;
    const same = await ask<boolean | 'stop'>(
      asker,
      `  ${how === 'other-text' ? `perhaps the same as ${place}` : `${place} looks like this one`}: ${cost.date}, ${visible(cost.payee)}, ${visible(cost.what)}. The same`,
      how === 'other-text' && !isLike(row.text, twin?.seen.text ?? '') ? 'n' : 'y',
      (answer) => (answer.toLowerCase() === 'q' ? fine('stop') : yesOrNo(answer)),
    );
    if (same === undefined || same === 'stop') return undefined;
    if (same)
      return { row, became: 'in-costs', payee: cost.payee, cost: undefined, alike, twin, history: undefined };
  } else if (twin !== undefined)
    asker.say(
      `  perhaps the same as a row of ${twin.seen.date} that was ${['added', 'in-costs'].includes(twin.seen.became) ? 'imported' : 'left out'} before: ${visible(twin.seen.text)}\n`,
    );
  return askNew(asker, { ...open, alike: undefined }, about);
}

/** What the bank says of a row, nothing twice. */
const bankWords = ({ text, memo, reference }: BankRow): string =>
  [text, ...[memo, reference].filter((one) => one !== '' && !text.includes(one))].join(' · ');

async function askNew(asker: Asker, open: Open, about: RowAsked): Promise<Decision | undefined> {
  const { row } = open;
  const { memory } = about;
  let { proposal } = open;
  const left = (became: 'not-this-house' | 'left-out'): Decision => ({
    row,
    became,
    payee: proposal.isKnown ? proposal.payee : '',
    cost: undefined,
    alike: undefined,
    twin: undefined,
    history: undefined,
  });
  if (row.cents < 0) {
    const isRefund = await rowAsk(
      asker,
      `  Money back from ${visible(proposal.payee)} for this house (n: left out)`,
      proposal.bucket === undefined ? 'n' : 'y',
      yesOrNo,
    );
    if (isRefund === undefined || ('word' in isRefund && isRefund.word === 'stop')) return undefined;
    if ('word' in isRefund) return left('not-this-house');
    if (!isRefund.value) return left('left-out');
  }
  const choosePayee = async (): Promise<Word | undefined> => {
    const payee = await rowAsk(asker, '  Payee', proposal.payee, noBucket(someWords(200)));
    if (payee === undefined) return 'stop';
    if ('word' in payee) return payee.word === 'payee' ? undefined : payee.word;
    proposal = { ...proposal, ...memory.about(memory.spelling(payee.value)), isKnown: true };
    return undefined;
  };
  if (!proposal.isKnown && proposal.notThisHouse === undefined) {
    const word = await choosePayee();
    if (word !== undefined) return word === 'stop' ? undefined : left('not-this-house');
  } else asker.say(`  Payee: ${visible(proposal.payee)}\n`);
  const readBucket = bucketReader();
  let bucket: Bucket | undefined;
  while (bucket === undefined) {
    const usual = proposal.notThisHouse === undefined ? (proposal.bucket ?? '') : '-';
    const answer: Answer<Bucket> | undefined = await rowAsk(asker, '  Bucket', usual, (typed) => {
      if (typed === '?') return { ok: false, say: bucketHelp().replace(/^ {4}/gm, '').trimEnd() };
      if (typed === '')
        return again('Type a bucket; ? lists them in plain words', 'To leave the row out, type  -');
      const found = readBucket(typed);
      return found.ok
        ? fine(found.value)
        : again(found.problem, ...found.hints.slice(0, 1), '? lists the buckets in plain words');
    });
    if (answer === undefined) return undefined;
    if ('value' in answer) bucket = answer.value;
    else if (answer.word === 'stop') return undefined;
    else if (answer.word === 'not-this-house') return left('not-this-house');
    else {
      const word = await choosePayee();
      if (word !== undefined) return word === 'stop' ? undefined : left('not-this-house');
    }
  }
  const what = await rowAsk(asker, '  What for', usualWhat(row), someWords(400));
  if (what === undefined || ('word' in what && what.word === 'stop')) return undefined;
  if ('word' in what && what.word === 'not-this-house') return left('not-this-house');
  const place = await askPlace(asker, proposal.place, about);
  if (place === undefined || ('word' in place && place.word === 'stop')) return undefined;
  if ('word' in place && place.word === 'not-this-house') return left('not-this-house');
  const cost = newCost(open, {
    payee: proposal.payee,
    bucket,
    what: 'value' in what ? what.value : usualWhat(row),
    place: 'value' in place ? place.value : undefined,
  });
  return {
    row,
    became: 'added',
    payee: proposal.payee,
    cost,
    alike: undefined,
    twin: undefined,
    history: undefined,
  };
}

const WHOLE = 'whole house';

async function askPlace(
  asker: Asker,
  usual: string | undefined,
  { placeOf }: RowAsked,
): Promise<Answer<string | undefined> | undefined> {
  if (placeOf === undefined) return { value: undefined };
  return rowAsk<string | undefined>(asker, '  Room, system or work', usual ?? WHOLE, (typed) => {
    if (/^(?:the )?(?:whole )?house$|^all$/i.test(typed)) return fine(undefined);
    const found = placeOf(typed === '?' ? '' : typed);
    return found.ok
      ? fine(found.value)
      : again(...(typed === '?' ? [] : [found.problem]), ...found.hints, `or: ${WHOLE}`);
  });
}

/** A question at which the row can also be left, or the import stopped. */
async function rowAsk<T>(
  asker: Asker,
  words: string,
  usual: string,
  check: Check<T>,
): Promise<Answer<T> | undefined> {
  return ask<Answer<T>>(asker, words, usual, (answer) => {
    if (answer.toLowerCase() === 'q') return fine({ word: 'stop' as const });
    if (answer === '-') return fine({ word: 'not-this-house' as const });
    if (answer.toLowerCase() === 'p') return fine({ word: 'payee' as const });
    const read = check(answer);
    return read.ok ? fine({ value: read.value }) : read;
  });
}

/** A bucket typed one question too early is no name. */
const noBucket =
  (check: Check<string>): Check<string> =>
  (typed) =>
    bucketReader()(typed).ok
      ? again(`${typed} is a bucket, and is asked for next; who was paid?`)
      : check(typed);

const someWords =
  (longest: number): Check<string> =>
  (typed) => {
    if (taxpayerNumberIn(typed) !== undefined)
      return again('This looks like a taxpayer number, and a house folder holds none');
    const text = bankText(typed);
    if (text === '' || text === '?')
      return again('Some words are needed here; Enter takes those in brackets');
    return [...typed].length > longest ? again(`At most ${longest} characters`) : fine(text);
  };
