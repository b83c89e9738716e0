#!/usr/bin/env node
/**
 * The front door: what someone typed becomes one of the commands.
 *
 * Exit status: 0 fine · 1 the house's record is at fault · 2 the command line is · 3 a bug of ours. The only
 * place that asks for today's date, and only where no `--as-of` is given. Commands with libraries of their own are loaded
 * when they are typed.
 */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { EDITION_NAMES, PUBLISHED } from './build.js';
import { buildCommand, checkCommand } from './command-build.js';
import { newCommand } from './command-new.js';
import { photosCommand } from './command-photos.js';
import { serveCommand } from './command-serve.js';
import { visible } from './diagnostics/report.js';
import { readDate } from './facts/date.js';
import { BANK_WAYS } from './facts/ledger.js';
import { shownPath, typedWord } from './find-houses.js';
import type { EditionName } from './packet/packet.js';
import { type Called, retypedTerminal } from './retyped-commands.js';
import { inertTerminal, realTerminal, type Terminal } from './terminal.js';
import { version } from './version.js';

/** Where house folders lie if nothing else is said. */
const CONTENT = 'content';

export const EXIT = { fine: 0, record: 1, commandLine: 2, bug: 3 } as const;

/** Runs one command line (without `node` and the program's name) and answers with the exit status. */
export async function run(words: readonly string[], shown: Terminal): Promise<number> {
  const npx = shown.npx === true;
  let called: Called | undefined = { npx, content: undefined };
  const terminal = retypedTerminal(inertTerminal(shown), () => called);
  let status: number = EXIT.fine;
  const program = describe(terminal, (result) => {
    status = result;
  });
  program.hook('preAction', (_program, command) => {
    const { content, format } = command.opts<{ content?: string; format?: string }>();
    const elsewhere = content !== undefined && shownPath(content) !== CONTENT;
    called =
      format === undefined || format === 'text'
        ? { npx, content: elsewhere ? typedWord(shownPath(content)) : undefined }
        : undefined;
  });
  try {
    await program.parseAsync([...words], { from: 'user' });
    return status;
  } catch (thrown) {
    if (thrown instanceof CommanderError) return thrown.exitCode === 0 ? EXIT.fine : EXIT.commandLine;
    const error = thrown as Error;
    terminal.error(
      `error bug.internal  this is a mistake of sillplate, not of your house: ${visible(error.message)}\n${(error.stack ?? '').split('\n').map(visible).join('\n')}\n  do: please report it with the text above; your files and earlier packets are as they were\n`,
    );
    return EXIT.bug;
  }
}

function describe(terminal: Terminal, finish: (status: number) => void): Command {
  const program = new Command('sillplate')
    .description('One folder of facts about a renovated house becomes a web packet and a printed packet.')
    .version(version())
    .exitOverride()
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.error,
    })
    .showSuggestionAfterError();
  program.addHelpText('after', examples(EXAMPLES));

  const content = new Option('--content <dir>', 'where the house folders lie').default(CONTENT);
  const format = new Option('--format <form>', 'how messages are printed')
    .choices(['text', 'json', 'github'])
    .default('text');
  const asOf = new Option(
    '--as-of <date>',
    'the day ages are counted to (year-month-day; left out: today)',
  ).argParser(day);
  const out = new Option('--out <dir>', 'where packets are written').default('out');
  const paper = new Option('--paper <size>', 'paper of the PDF').choices(['letter', 'a4']).default('letter');

  program
    .command('new')
    .argument('<folder>', 'the folder to make, for example content/my-house')
    .description('begin a house: asks a few questions and writes a commented house.yaml')
    .option('--yes', 'ask nothing; fill in examples to be changed')
    .addHelpText('after', examples(NEW_EXAMPLES))
    .action(async (folder: string, options: { yes?: true }) =>
      finish(await newCommand(folder, options.yes === true, terminal)),
    );

  program
    .command('check')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('read the facts and say what is wrong, thin or missing; writes no packet')
    .addHelpText('after', examples(CHECK_EXAMPLES))
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(format)
    .action(async (houses: string[], options) =>
      finish(await checkCommand(houses, { ...options, ...days(options.asOf) }, terminal)),
    );

  program
    .command('photos')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('list the photos by time, and propose pairs from before and after the work')
    .addHelpText('after', examples(PHOTOS_EXAMPLES))
    .addOption(
      new Option(
        '--accept <work>',
        'write the proposed pair of this work into the facts; several ids with commas between, or all',
      ).argParser(workIds),
    )
    .addOption(content)
    .addOption(asOf)
    .addOption(
      new Option('--format <form>', 'how the list is printed').choices(['text', 'json']).default('text'),
    )
    .action(async (houses: string[], options) =>
      finish(await photosCommand(houses, { ...options, asOf: options.asOf ?? today() }, terminal)),
    );

  program
    .command('build')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('make the packets: web pages, PDF and exports')
    .addHelpText('after', examples(BUILD_EXAMPLES))
    .addOption(
      new Option(
        '--edition <names>',
        `which editions, with commas between: ${EDITION_NAMES.join(', ')} (left out: ${PUBLISHED.join(',')})`,
      ).argParser(editions),
    )
    .addOption(asOf)
    .addOption(out)
    .addOption(content)
    .addOption(paper)
    .addOption(format)
    .option('--stale', 'make only the houses whose facts, day, paper or program changed since they were made')
    .option(
      '--list',
      'make nothing: say which houses there are, or with --stale which would be made, and why',
    )
    .addOption(
      new Option('--jobs <n>', 'houses made at once, each in a process of its own (left out: 1)').argParser(
        jobs,
      ),
    )
    .action(async (houses: string[], options) =>
      finish(await buildCommand(houses, { ...options, ...days(options.asOf) }, terminal)),
    );

  program
    .command('serve')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('show the pages in a browser on this machine and follow every edit')
    .addHelpText('after', examples(SERVE_EXAMPLES))
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(new Option('--port <n>', 'port on 127.0.0.1').default(4173).argParser(port))
    .action(async (houses: string[], options) =>
      finish(await serveCommand(houses, { ...options, asOf: options.asOf ?? today() }, terminal)),
    );

  program
    .command('ask')
    .argument('[words...]', 'a question in your own words, and a house; only a house: what has no answer yet')
    .description('answer a buyer’s question from the record, or list those that it can’t answer yet')
    .addHelpText('after', examples(ASK_EXAMPLES) + ASK_STATUS)
    .option('--unanswered', 'list the questions without an answer, most asked first')
    .addOption(
      new Option('--edition <name>', 'as the buyer reads it, or as you alone do')
        .choices(['buyer', 'file'])
        .default('buyer'),
    )
    .addOption(content)
    .addOption(asOf)
    .addOption(
      new Option('--format <form>', 'how the answer is printed').choices(['text', 'json']).default('text'),
    )
    .action(async (words: string[], options) => {
      const { askCommand } = await import('./command-ask.js');
      finish(await askCommand(words, { ...options, asOf: options.asOf ?? today() }, terminal));
    });

  program
    .command('remarks')
    .argument(
      '[words...]',
      'houses, each with its own draft; or one file with a draft (- for what is typed or piped) and its house; left out: all',
    )
    .description('hold the draft of a listing text against the facts, or write one from them')
    .addHelpText('after', examples(REMARKS_EXAMPLES) + REMARKS_STATUS)
    .option('--all', 'mark what the facts back, too, and name every fact')
    .option('--draft', 'write a text from the documented facts: the text alone to standard output')
    .addOption(
      new Option(
        '--length <n>',
        'with --draft: the most characters (left out: the limit of listing:, or 1000)',
      ).argParser(characters),
    )
    .option('--also-owner', 'with --draft: tell what the owner alone states, too')
    .addOption(content)
    .addOption(asOf)
    .addOption(format)
    .action(async (words: string[], options) => {
      const { remarksCommand } = await import('./command-remarks.js');
      const { readInput } = await import('./read-input.js');
      finish(await remarksCommand(words, { ...options, asOf: options.asOf ?? today() }, terminal, readInput));
    });

  const costs = program
    .command('costs')
    .description('what was paid for a house: rows from a bank’s or card’s file into its costs.csv')
    .addHelpText('after', examples(COSTS_EXAMPLES));
  costs
    .command('import')
    .argument('<bank-file>', 'the bank’s or card’s list, as CSV or XLSX')
    .argument('[house]', 'a name under the content folder, or a path; left out: the only one')
    .description('take rows over, ask about each new one, and never take one twice')
    .addHelpText('after', examples(COSTS_EXAMPLES))
    .option(
      '--yes',
      'ask nothing: who was always paid for one thing gets its bucket, all else is added without one',
    )
    .option('--dry-run', 'show what would be done, and write nothing')
    .option('--columns <names>', 'which column is which: "date=Posting Date,payee=Description,amount=Amount"')
    .addOption(
      new Option('--paid-is <sign>', 'whether what you paid has a minus in the file').choices([
        'negative',
        'positive',
      ]),
    )
    .addOption(new Option('--paid <way>', 'how it is paid from this account').choices(BANK_WAYS))
    .addOption(
      new Option('--days <order>', 'how 3/4/2026 is read where the file does not tell').choices([
        'month-first',
        'day-first',
      ]),
    )
    .addOption(content)
    .action(async (file: string, house: string | undefined, options) => {
      const { costsImportCommand } = await import('./command-costs.js');
      finish(await costsImportCommand(file, house, options, terminal));
    });

  program
    .command('compare')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('put what several houses cost and took side by side, on one page for you alone')
    .addHelpText('after', examples(COMPARE_EXAMPLES))
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(paper)
    .action(async (houses: string[], options) => {
      const { compareCommand } = await import('./command-compare.js');
      finish(await compareCommand(houses, { ...options, asOf: options.asOf ?? today() }, terminal));
    });

  program
    .command('deliver')
    .argument('[house]', 'a name under the content folder, or a path; left out: the only one')
    .description('freeze a packet as it is handed over: who got it, when, and all its files, never rewritten')
    .addHelpText('after', examples(DELIVER_EXAMPLES))
    .addOption(new Option('--edition <name>', 'which packet').choices([...EDITION_NAMES]))
    .addOption(
      new Option('--to <name>', 'who gets it; may be given again').argParser(
        (one: string, all: string[] = []) => [...all, one],
      ),
    )
    .option('--note <text>', 'a remark for yourself, kept with it')
    .addOption(
      new Option('--on <date>', 'the day it is handed over (year-month-day; left out: today)').argParser(day),
    )
    .option('--dry-run', 'show what changed since their last one, and write nothing')
    .option('--private', 'deliver the house file, for example to a tax preparer')
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(paper)
    .action(async (house: string | undefined, options) => {
      const { deliverCommand } = await import('./command-deliver.js');
      finish(await deliverCommand(house, { ...options, ...days(options.asOf) }, terminal));
    });

  program
    .command('deliveries')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('list who was given which packet, whether it is whole, and what is told otherwise now')
    .addHelpText('after', examples(DELIVERIES_EXAMPLES))
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(
      new Option('--format <form>', 'how the list is printed').choices(['text', 'json']).default('text'),
    )
    .action(async (houses: string[], options) => {
      const { deliveriesCommand } = await import('./command-deliver.js');
      finish(await deliveriesCommand(houses, { ...options, asOf: options.asOf ?? today() }, terminal));
    });

  program
    .command('archive')
    .argument('[house...]', 'names under the content folder, or paths; left out: all')
    .description('keep the state of a house as a bag: its folder, packets and exports, with digests; private')
    .addHelpText('after', examples(ARCHIVE_EXAMPLES))
    .addOption(new Option('--to <dir>', 'where bags are written, a folder for each house').default('archive'))
    .addOption(
      new Option('--form <form>', 'how the bag is packed')
        .choices(['folder', 'zip', 'tar'])
        .default('folder'),
    )
    .addOption(
      new Option('--seal-for <recipient>', 'seal it (age) for this public key; may be given again').argParser(
        (one: string, all: string[] = []) => [...all, one],
      ),
    )
    .option('--seal-with-passphrase', 'seal it (age) with a passphrase, which is asked for')
    .addOption(content)
    .addOption(asOf)
    .addOption(out)
    .addOption(paper)
    .addOption(
      new Option('--format <form>', 'how the answer is printed').choices(['text', 'json']).default('text'),
    )
    .action(async (houses: string[], options) => {
      const dated = { ...options, asOf: options.asOf ?? today() };
      const { archiveCommand } = await import('./command-archive.js');
      const { archiveReady } = await import('./archive-ready.js');
      finish(await archiveCommand(houses, dated, terminal, archiveReady(dated, terminal)));
    });

  program
    .command('verify')
    .argument(
      '<file>',
      'a packet’s PDF, for example one that came back; or a bag: its folder, .zip, .tar or .age',
    )
    .argument(
      '[house]',
      'its house, as a name under the content folder or a path; left out: the one it names',
    )
    .description(
      'say whether a PDF is what its house folder makes, and which facts differ; or whether a bag is whole',
    )
    .addHelpText('after', examples(VERIFY_EXAMPLES) + VERIFY_STATUS)
    .addOption(content)
    .addOption(out)
    .addOption(
      new Option('--format <form>', 'how the answer is printed').choices(['text', 'json']).default('text'),
    )
    .option('--private', 'of the house file, too, tell the facts that differ')
    .option('--identity <file>', 'the file with the secret key (age) that opens a sealed bag')
    .action(async (file: string, house: string | undefined, options) => {
      const { verifyCommand } = await import('./command-verify.js');
      finish(await verifyCommand(file, house, options, terminal));
    });

  usageErrorsOf(program, 'sillplate');
  return program;
}

/** Each command's mistakes send to its own help. `typed` is the command as it is typed. */
function usageErrorsOf(command: Command, typed: string): void {
  command.configureOutput({ outputError: (text, write) => write(usageError(text, typed)) });
  for (const below of command.commands) usageErrorsOf(below, `${typed} ${below.name()}`);
}

/** Commander's sentences in the form of every other message: what is so, then what to type. */
function usageError(text: string, typed: string): string {
  const [said = '', ...more] = text
    .trim()
    .replace(/^error: /, '')
    .split('\n');
  // "… is invalid. There is no edition X. Write one of …": the last sentence is the way out.
  const sentences = said
    .split(/\.(?: |$)/)
    .filter((sentence) => sentence !== '')
    .map(lowerFirst);
  const advice = sentences.length > 1 ? sentences.pop() : undefined;
  const problem = sentences.join(': ');
  const near = more.flatMap((line) => /^\(Did you mean (?:one of )?(.*)\?\)$/.exec(line)?.[1] ?? []);
  const ways = [
    ...(advice === undefined ? [] : [advice]),
    ...near.map((word) => `perhaps  ${word}`),
    `type  ${typed} --help  to see what can be typed`,
  ];
  const lines = ways.map((way, index) => `  ${index === 0 ? 'do' : 'or'}: ${visible(way)}\n`);
  return `error cli.usage  ${visible(problem)}\n${lines.join('')}`;
}

const lowerFirst = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);

type Example = readonly [typed: string, does: string];

const EXAMPLES: readonly Example[] = [
  ['sillplate new content/my-house', 'begin a house'],
  ['sillplate check my-house', 'what is wrong, thin or missing'],
  ['sillplate photos my-house', 'its photos, and pairs from before and after'],
  ['sillplate build my-house', 'make its packets in out/my-house/'],
  ['sillplate build --edition agent', 'only the agent’s sheet, for every house'],
  ['sillplate build --as-of 2026-06-30', 'ages counted to that day'],
  ['sillplate ask "how old is the roof" my-house', 'what a buyer is told'],
  ['sillplate serve my-house', 'look at it while you write'],
  ['sillplate remarks my-house', 'its listing text against the facts'],
  ['sillplate costs import bank.csv my-house', 'rows of a bank’s file into its costs.csv'],
  ['sillplate compare', 'what your houses cost and took, side by side'],
  ['sillplate deliver my-house --edition buyer --to "J. Cole"', 'freeze a packet as it is handed over'],
  ['sillplate deliveries my-house', 'who was given what, and what changed since'],
  ['sillplate archive my-house', 'keep its state as a bag, with digests'],
  ['sillplate verify packet.pdf', 'whether a PDF is what its folder makes'],
];
const NEW_EXAMPLES: readonly Example[] = [
  ['sillplate new content/my-house', 'asks five questions first'],
  ['sillplate new content/my-house --yes', 'asks nothing'],
];
const CHECK_EXAMPLES: readonly Example[] = [
  ['sillplate check', 'every house of content/'],
  ['sillplate check my-house', 'one of them'],
  ['sillplate check .', 'the house you are in'],
  ['sillplate check --format github', 'as notes beside the lines of a pull request'],
];
const PHOTOS_EXAMPLES: readonly Example[] = [
  ['sillplate photos my-house', 'its photos by time, and the pairs that are proposed'],
  ['sillplate photos my-house --accept cellar-rail', 'write one pair into the facts'],
  ['sillplate photos my-house --accept all', 'write all that are proposed'],
  ['sillplate photos --format json', 'the same lists for a program'],
];
const BUILD_EXAMPLES: readonly Example[] = [
  ['sillplate build my-house', 'its packets in out/my-house/, all but the house file'],
  ['sillplate build --edition file my-house', 'the house file, which is for you alone'],
  ['sillplate build --edition agent,buyer', 'two editions, for every house'],
  ['sillplate build --as-of 2026-06-30', 'ages counted to that day'],
];
const SERVE_EXAMPLES: readonly Example[] = [
  ['sillplate serve', 'every house of content/'],
  ['sillplate serve my-house --port 8080', 'one of them, at http://127.0.0.1:8080/'],
];

const ASK_EXAMPLES: readonly Example[] = [
  ['sillplate ask "how old is the roof"', 'of the only house of content/'],
  ['sillplate ask "is there aluminum wiring" my-house', 'of one of several'],
  ['sillplate ask my-house', 'which questions have no answer yet, and what to type'],
  ['sillplate ask --edition file "where is the water bill" my-house', 'from your own house file'],
];
const ASK_STATUS = `
Exit status:
  0  something fits, also where the answer is that it is not known
  1  nothing of the record fits; or the record has errors
  2  it is not clear which house is meant
`;

const REMARKS_EXAMPLES: readonly Example[] = [
  ['sillplate remarks', 'every house of content/ with its remarks.txt'],
  ['sillplate remarks my-house', 'one of them'],
  ['sillplate remarks draft.txt my-house', 'a draft that lies elsewhere'],
  ['sillplate remarks - my-house < draft.txt', 'a draft that is typed or piped'],
  ['sillplate remarks my-house --format json', 'each claim with its characters and facts, for a program'],
  [
    'sillplate remarks --draft my-house > draft.txt',
    'a text from the facts; what is behind it stays on the screen',
  ],
  ['sillplate remarks --draft my-house --length 500', 'a short one'],
];
const REMARKS_STATUS = `
Exit status:
  0  nothing has to be mended: what the folder says nothing of is told, and is no fault
  1  a claim is contradicted or wider than the facts, a word has to go, or the text is too long;
     or the record has errors
  2  the command line can’t be followed, or the draft can’t be read
`;

const COSTS_EXAMPLES: readonly Example[] = [
  [
    'sillplate costs import checking.csv my-house',
    'asks which column is which once, then about each new row',
  ],
  ['sillplate costs import card.xlsx my-house --paid card', 'a card’s list'],
  ['sillplate costs import checking.csv my-house --dry-run', 'shows what would be added, and writes nothing'],
  ['sillplate costs import checking.csv my-house --yes', 'asks nothing; what has no history gets no bucket'],
];
const COMPARE_EXAMPLES: readonly Example[] = [
  ['sillplate compare', 'every house of content/ that has costs'],
  ['sillplate compare oak-lane my-house', 'two of them'],
];

const DELIVER_EXAMPLES: readonly Example[] = [
  ['sillplate deliver my-house --edition buyer --to "buyer’s agent"', 'freeze today’s buyer packet as given'],
  [
    'sillplate deliver my-house --edition buyer --to "J. Cole" --dry-run',
    'what changed since their last one',
  ],
  ['sillplate deliver my-house --edition agent --to "agent" --to "appraiser"', 'one packet for two people'],
  ['sillplate deliver my-house --edition file --to "tax preparer" --private', 'the house file'],
];
const DELIVERIES_EXAMPLES: readonly Example[] = [
  ['sillplate deliveries', 'of every house of content/'],
  ['sillplate deliveries my-house', 'of one of them'],
  ['sillplate deliveries my-house --format json', 'with every change, for a program'],
];

const ARCHIVE_EXAMPLES: readonly Example[] = [
  ['sillplate archive my-house', 'a folder archive/my-house/my-house-<date>'],
  ['sillplate archive my-house --form zip', 'one file'],
  ['sillplate archive --to /media/stick/houses', 'every house, to another place'],
  ['sillplate archive my-house --seal-with-passphrase', 'a file that nobody opens without it'],
];

const VERIFY_EXAMPLES: readonly Example[] = [
  ['sillplate verify out/my-house/buyer/my-house-buyer.pdf', 'against content/my-house'],
  ['sillplate verify mail/packet.pdf houses/my-house', 'against that folder'],
  ['sillplate verify packet.pdf --format json', 'the answer for a program'],
  ['sillplate verify archive/my-house/my-house-2026-11-20', 'whether a bag is whole'],
];

const VERIFY_STATUS = `
Exit status:
  0  it is what the folder makes, byte for byte; the bag is whole
  1  anything differs, is missing or was added; or the folder has errors
  2  it can’t be read, carries no packet’s data, or is no bag
`;

function examples(list: readonly Example[]): string {
  const width = Math.max(...list.map(([typed]) => typed.length));
  return `\nExamples:\n${list.map(([typed, does]) => `  ${typed.padEnd(width)}  ${does}`).join('\n')}\n`;
}

function day(text: string): string {
  const read = readDate(text);
  if (!read.ok || read.value.precision !== 'day')
    throw new InvalidArgumentError('Write year-month-day, for example 2026-06-30.');
  return text;
}

/** Commas instead of several words, so that a house named behind it is not taken for an edition. */
function editions(text: string): EditionName[] {
  const names = text.split(',').map((name) => name.trim());
  const wrong = names.find((name) => !EDITION_NAMES.some((known) => known === name));
  if (wrong !== undefined)
    throw new InvalidArgumentError(
      `There is no edition “${wrong}”. Write one or more of ${EDITION_NAMES.join(',')}.`,
    );
  return EDITION_NAMES.filter((known) => names.includes(known));
}

/** Ids of work, with commas between. */
function workIds(text: string): string[] {
  const ids = text
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  if (ids.length === 0) throw new InvalidArgumentError('Write the id of an item under work:, or all.');
  return ids;
}

/** How many characters a draft may have. */
function characters(text: string): number {
  const n = Number(text);
  if (!Number.isInteger(n) || n < 1 || n > 100_000)
    throw new InvalidArgumentError('Write how many characters, for example 1000.');
  return n;
}

function port(text: string): number {
  const n = Number(text);
  if (!Number.isInteger(n) || n < 0 || n > 65_535)
    throw new InvalidArgumentError('Write a number from 0 to 65535.');
  return n;
}

/** As many processes as anybody has cores; each takes a few hundred megabytes. */
const MOST_JOBS = 64;

function jobs(text: string): number {
  const n = Number(text);
  if (!/^\d+$/.test(text) || n < 1 || n > MOST_JOBS)
    throw new InvalidArgumentError(`Write a number from 1 to ${MOST_JOBS}.`);
  return n;
}

/** The day that ages are counted to, and the calendar's. */
const days = (asOf: string | undefined) => ({ asOf: asOf ?? today(), today: today() });

/** The calendar day here and now. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const startedAsProgram =
  process.argv[1] !== undefined && /(^|[\\/])(cli\.js|sillplate)$/.test(process.argv[1]);
if (startedAsProgram) process.exitCode = await run(process.argv.slice(2), realTerminal());
