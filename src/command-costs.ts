/** `sillplate costs import`: rows of a bank's or card's file go into the costs of one house. */
import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import type { PaymentWay } from './facts/ledger.js';
import { findHouses, shownPath } from './find-houses.js';
import { importBank } from './import-bank.js';
import type { Asker } from './import-questions.js';
import { importTold } from './import-told.js';
import { readColumnsOption } from './intake/bank-columns.js';
import type { DayOrder } from './intake/bank-day.js';
import type { Terminal } from './terminal.js';

export interface CostsImportOptions {
  readonly content: string;
  /** Asks nothing. */
  readonly yes?: boolean;
  readonly dryRun?: boolean;
  /** `date=Posting Date,payee=Description,amount=Amount` */
  readonly columns?: string;
  readonly paidIs?: 'negative' | 'positive';
  readonly paid?: PaymentWay;
  readonly days?: DayOrder;
}

/** Whoever types; a terminal or, in tests, a stream of answers. */
export type Typing = NodeJS.ReadableStream & { readonly isTTY?: boolean };

/**
 * Status 0: done, also where nothing was new; 1: the file, or the house's own files, can't be taken as they are; 2: the
 * command line can't be followed, or questions are open and nothing at all came to answer them. `typing` is a terminal or
 * answers that were piped in; with `yes` or `dryRun` nothing is asked.
 */
export async function costsImportCommand(
  file: string,
  wanted: string | undefined,
  options: CostsImportOptions,
  terminal: Terminal,
  typing: Typing = process.stdin,
): Promise<number> {
  const refuse = (diagnostics: readonly Diagnostic[], status: 1 | 2): number => {
    terminal.error(printReport(locate(diagnostics, NOWHERE), 'text', terminal.colour));
    return status;
  };
  const { houses, diagnostics } = await findHouses(options.content, wanted === undefined ? [] : [wanted]);
  if (diagnostics.length > 0) return refuse(diagnostics, 1);
  const [house] = houses;
  if (house === undefined || houses.length > 1)
    return refuse(
      [
        whichHouse(
          file,
          houses.map(({ shown }) => shown),
        ),
      ],
      2,
    );
  const columns = options.columns === undefined ? undefined : readColumnsOption(options.columns);
  if (columns !== undefined && 'problem' in columns)
    return refuse([badColumns(columns.problem as string)], 2);
  const isAsking = options.yes !== true && options.dryRun !== true;
  const asker = isAsking ? askerOn(typing, terminal) : undefined;
  try {
    const { diagnostics: wrong, result } = await importBank(
      { file, shown: shownPath(file) },
      house,
      {
        dryRun: options.dryRun === true,
        columns,
        paidIs: options.paidIs,
        paid: options.paid,
        days: options.days,
      },
      asker,
      terminal.out,
    );
    if (result !== undefined) terminal.out(`${isAsking ? '\n' : ''}${importTold(result)}`);
    if (wrong.length === 0) return 0;
    return refuse(wrong, wrong.some(({ code }) => code === 'cli.usage') ? 2 : 1);
  } finally {
    asker?.close();
  }
}

/** Lines are read as one stream, so that answers which arrive together are not lost between two questions. */
function askerOn(input: Typing, terminal: Terminal): Asker & { readonly close: () => void } {
  const output = new Writable({
    write: (chunk: Buffer, _encoding, done) => {
      terminal.out(chunk.toString('utf8'));
      done();
    },
  });
  const lines = createInterface({ input, output, terminal: input.isTTY === true });
  // Ctrl+C ends the answers; what was answered so far is written.
  lines.on('SIGINT', () => lines.close());
  // An input that fails has no more answers.
  input.on('error', () => lines.close());
  const typed = lines[Symbol.asyncIterator]();
  let first: Promise<IteratorResult<string>> | undefined;
  let hasBegun = false;
  return {
    say: terminal.out,
    isThere: async () => {
      if (input.isTTY === true || hasBegun) return true;
      first ??= typed.next();
      return (await first).done !== true;
    },
    question: async (words, usual) => {
      lines.setPrompt(usual === '' ? `${words}: ` : `${words} [${visible(usual)}]: `);
      lines.prompt();
      const next = await (first ?? typed.next());
      first = undefined;
      hasBegun = true;
      return next.done === true ? undefined : next.value.trim() || usual;
    },
    close: () => lines.close(),
  };
}

const whichHouse = (file: string, shown: readonly string[]): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message: `rows go into one house, and ${shown.length === 0 ? 'none is' : `${shown.length} are`} meant here`,
  hints: [`name the house:  sillplate costs import ${shownPath(file)} ${shown[0] ?? 'my-house'}`],
});

const badColumns = (problem: string): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message: `--columns can’t be followed: ${problem}`,
  hints: [
    'write a word, = and the bank’s heading, with commas between:  --columns "date=Posting Date,payee=Description,amount=Amount"',
    'the words are date, payee, memo, and amount or debit and credit; sign is the column that says debit or credit',
  ],
});
