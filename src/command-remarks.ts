/**
 * `sillplate remarks`: a draft of listing remarks held against the facts of its house, or one written from them.
 *
 * Exit status 0 where nothing in the draft has to be mended; 1 where a claim is contradicted or wider than the facts, a
 * word is to be left out, or the draft is too long, and where the house has errors; 2 where the command line can't be
 * followed or the draft can't be read.
 */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { checkDraft, needsMending } from './check-draft.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport, type ReportFormat, visible } from './diagnostics/report.js';
import { nearestWord } from './facts/nearest-word.js';
import { groupThousands } from './facts/written-number.js';
import { findHouses, type HouseFolder, housePath, isFolder, shownPath } from './find-houses.js';
import {
  MOST_REMARKS,
  type ReadRemarks,
  readRemarksFile,
  readRemarksOf,
  textOf,
} from './intake/read-remarks.js';
import { draftRemarks, type RemarksDraft } from './packet/remarks-draft/draft-remarks.js';
import { numberedDraft } from './packet/remarks-draft/numbered-draft.js';
import { draftData, remarksData, remarksNotes } from './remarks-as-data.js';
import { type RemarksHouse, remarksHouse } from './remarks-house.js';
import { printRemarks } from './remarks-report.js';
import { remarksLength } from './tally/remarks-length.js';
import type { Terminal } from './terminal.js';
import { lineWidth } from './wrapped-lines.js';

export interface RemarksOptions {
  readonly content: string;
  /** YYYY-MM-DD that ages are counted to. */
  readonly asOf: string;
  readonly format: ReportFormat;
  /** Mark what the facts back, too. */
  readonly all?: true;
  /** Write a draft instead of checking one. */
  readonly draft?: true;
  /** Its length; left out: what the listing service takes, or 1,000. */
  readonly length?: number;
  /** Tell what the owner alone states, too. */
  readonly alsoOwner?: true;
}

/** What is piped in or typed: everything up to its end, or one byte more than a draft may have. */
export type ReadInput = (most: number) => Promise<Uint8Array>;

/** Where no listing service's limit is written down. */
const USUAL_LENGTH = 1000;

export async function remarksCommand(
  words: readonly string[],
  options: RemarksOptions,
  terminal: Terminal,
  readInput: ReadInput,
): Promise<number> {
  const misused = optionsTrouble(options);
  if (misused !== undefined) return refuse([misused], options, terminal);
  const meant = await whatIsMeant(words, options);
  if ('trouble' in meant) return refuse(meant.trouble, options, terminal);
  if (options.draft === true) return writeDraft(meant, options, terminal);
  return checkDrafts(meant, words.length !== 1, options, terminal, readInput);
}

function refuse(
  trouble: readonly Diagnostic[],
  { format }: RemarksOptions,
  { out, error, colour }: Terminal,
): number {
  const located = locate(trouble, NOWHERE);
  if (format === 'github') out(printReport(located, format, false));
  else error(printReport(located, 'text', colour));
  return 2;
}

const usage = (message: string, ...hints: readonly string[]): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message,
  hints,
});

/** An option that would have no effect. */
function optionsTrouble(options: RemarksOptions): Diagnostic | undefined {
  const { draft, length, alsoOwner, all, format } = options;
  if (draft !== true && (length !== undefined || alsoOwner === true))
    return usage(
      `${length === undefined ? '--also-owner' : '--length'} goes with --draft, which writes a text from the facts`,
      'add  --draft , or leave it out to check a draft',
    );
  if (draft === true && all === true)
    return usage('--all is for checking a draft, and --draft writes one', 'leave one of them out');
  if (draft === true && format === 'github')
    return usage('a draft has no messages for GitHub', 'leave out  --format github');
  if (all === true && format !== 'text')
    return usage(`--format ${format} tells all claims in any case`, 'leave out  --all');
  return undefined;
}

// ------------------------------------------------------------------ what was typed

interface Meant {
  readonly houses: readonly HouseFolder[];
  /** A file outside a house's own naming, or `-`. Undefined: each house's own. */
  readonly draft: string | undefined;
}

type NotMeant = { readonly trouble: readonly Diagnostic[] };

async function whatIsMeant(words: readonly string[], options: RemarksOptions): Promise<Meant | NotMeant> {
  const { content } = options;
  const houses: string[] = [];
  const drafts: string[] = [];
  for (const word of words) {
    if (word === '-') drafts.push(word);
    else if (await isFolder(housePath(content, word))) houses.push(word);
    else if (/\.ya?ml$/i.test(word)) return { trouble: [factsFile(word)] };
    else if (await isFile(word)) drafts.push(word);
    else return { trouble: [neither(word, await namesIn(content))] };
  }
  const [draft, second] = drafts;
  if (second !== undefined)
    return { trouble: [usage(`two drafts were named: ${draft} and ${second}`, 'check one, then the other')] };
  if (draft !== undefined && options.draft === true)
    return {
      trouble: [
        usage(
          `--draft writes a text, and ${draft} is one`,
          'leave out  --draft  to check it',
          `to write a new one into it, type  sillplate remarks --draft my-house > ${draft === '-' ? 'remarks.txt' : draft}`,
        ),
      ],
    };
  const wanted = houses.length > 0 || draft === undefined ? houses : await homeOf(draft);
  const found = await findHouses(content, wanted);
  if (found.diagnostics.length > 0) return { trouble: found.diagnostics };
  const names = found.houses.map(({ folder }) => path.basename(path.resolve(folder)));
  if (found.houses.length > 1 && (draft !== undefined || options.draft === true))
    return { trouble: [whichHouse(names, draft)] };
  return { houses: found.houses, draft };
}

const isFile = (file: string): Promise<boolean> =>
  stat(file).then(
    (found) => !found.isDirectory(),
    () => false,
  );

async function namesIn(content: string): Promise<string[]> {
  const { houses } = await findHouses(content, []);
  return houses.map(({ folder }) => path.basename(path.resolve(folder)));
}

/** A draft that lies in a house folder is that house's. */
async function homeOf(draft: string): Promise<string[]> {
  if (draft === '-') return [];
  const folder = path.dirname(draft);
  return (await isFile(path.join(folder, 'house.yaml')))
    ? [folder === '.' ? '.' : `${folder}${path.sep}`]
    : [];
}

const factsFile = (word: string): Diagnostic =>
  usage(
    `${word} is a file of facts, and a draft is plain text`,
    'name a house, or a file with a draft and its house, for example  sillplate remarks draft.txt my-house',
  );

function neither(word: string, names: readonly string[]): Diagnostic {
  const near = nearestWord(word, names);
  const there = names.length === 0 ? '' : `; there is ${names.join(', ')}`;
  return usage(
    `there is no house and no file “${word}”${there}`,
    ...(near === undefined ? [] : [`perhaps  sillplate remarks ${near}`]),
    'name a house, or a file with a draft and its house, for example  sillplate remarks draft.txt my-house',
  );
}

const whichHouse = (names: readonly string[], draft: string | undefined): Diagnostic =>
  usage(
    `there are ${names.length} houses here, and one is meant: ${names.join(', ')}`,
    ...names.slice(0, 3).map((name) => `type  sillplate remarks ${draft ?? '--draft'} ${name}`),
  );

// ------------------------------------------------------------------ checking

async function checkDrafts(
  { houses, draft }: Meant,
  isList: boolean,
  options: RemarksOptions,
  terminal: Terminal,
  readInput: ReadInput,
): Promise<number> {
  const { format, asOf } = options;
  const data: object[] = [];
  let status = 0;
  let checked = 0;
  const worse = (one: number): void => {
    status = Math.max(status, one);
  };
  // On standard output JSON stands alone.
  const say = (located: readonly Located[]): void => {
    if (format === 'github') terminal.out(printReport(located, format, false));
    else terminal.error(printReport(located, 'text', terminal.colour));
  };
  for (const folder of houses) {
    const known = await remarksHouse(folder, asOf);
    if ('errors' in known) {
      say(known.errors);
      worse(1);
      continue;
    }
    const text = await draftOf(known, draft, readInput);
    if ('trouble' in text) {
      // Of all houses those without a draft are passed over.
      const absent = text.trouble.code === 'intake.no-file' && houses.length > 1;
      if (!absent) {
        say(locate([text.trouble], NOWHERE));
        worse(2);
      } else if (format === 'text')
        terminal.error(`${visible(known.name)}: no ${visible(known.shown)}/${visible(fileOf(known))}\n`);
      continue;
    }
    const answer = checkDraft({ draft: text, ...known, context: known.contextFor('file') });
    if (needsMending(answer)) worse(1);
    if (format === 'json') data.push(remarksData(answer, known.name, asOf));
    else if (format === 'github')
      terminal.out(printReport(locate(remarksNotes(answer), NOWHERE), 'github', false));
    else {
      if (checked > 0) terminal.out('\n');
      terminal.out(
        printRemarks({
          checked: answer,
          house: known.name,
          shown: known.shown,
          asOf,
          all: options.all === true,
          colour: terminal.colour,
          columns: terminal.columns,
        }),
      );
    }
    checked += 1;
  }
  if (checked === 0 && status === 0) return refuse([noDrafts(houses)], options, terminal);
  if (format === 'json' && checked > 0) terminal.out(json(isList && draft === undefined ? data : data[0]));
  return status;
}

async function draftOf(
  known: RemarksHouse,
  draft: string | undefined,
  readInput: ReadInput,
): Promise<ReadRemarks> {
  if (draft === '-') return textOf(await readInput(MOST_REMARKS + 1), undefined);
  if (draft !== undefined) return readRemarksFile(draft, shownPath(draft));
  const name = fileOf(known);
  const read = await readRemarksOf(known.folder, name, path.posix.join(known.shown, name));
  if (!('trouble' in read) || read.trouble.code !== 'intake.no-file') return read;
  return {
    trouble: {
      ...read.trouble,
      hints: [
        ...read.trouble.hints,
        `to begin with one from the facts, type  sillplate remarks --draft ${known.name} > ${path.posix.join(known.shown, name)}`,
      ],
    },
  };
}

const fileOf = ({ house }: RemarksHouse): string => house.listing?.remarks ?? 'remarks.txt';

const noDrafts = (houses: readonly HouseFolder[]): Diagnostic => ({
  code: 'intake.no-file',
  severity: 'error',
  message: `none of ${houses.length} houses has a draft of its listing text`,
  hints: [
    `write it into  ${path.posix.join(houses[0]?.shown ?? 'my-house', 'remarks.txt')}`,
    'or type  sillplate remarks --draft my-house  for one from the facts',
  ],
});

const json = (data: unknown): string => `${JSON.stringify(data, null, 2)}\n`;

// ------------------------------------------------------------------ writing

/** The text on standard output, so that it goes into a file as it is; what is behind each phrase beside it. */
async function writeDraft({ houses }: Meant, options: RemarksOptions, terminal: Terminal): Promise<number> {
  const { asOf, format, alsoOwner } = options;
  const [folder] = houses;
  if (folder === undefined) return 2;
  const known = await remarksHouse(folder, asOf);
  if ('errors' in known) {
    terminal.error(printReport(known.errors, 'text', terminal.colour));
    return 1;
  }
  const length = options.length ?? known.house.listing?.['remarks-limit'] ?? USUAL_LENGTH;
  const draft = draftRemarks(known.contextFor('agent'), { length, owner: alsoOwner === true });
  const { characters } = remarksLength(draft.text);
  if (draft.text === '') {
    terminal.error(
      printReport(
        locate([nothingToTell(known, length, alsoOwner === true)], NOWHERE),
        'text',
        terminal.colour,
      ),
    );
    return 1;
  }
  if (format === 'json') {
    terminal.out(json(draftData(draft, known.name, asOf, characters)));
    return 0;
  }
  terminal.out(`${draft.text}\n`);
  terminal.error(behind(draft, characters, length, lineWidth(terminal.columns)));
  return 0;
}

function nothingToTell({ name, shown }: RemarksHouse, length: number, owner: boolean): Diagnostic {
  return {
    code: 'tally.gap',
    severity: 'error',
    file: shown,
    message: `of ${name} nothing can be told in ${groupThousands(length)} characters that ${owner ? 'anybody states' : 'a paper or photo documents'}`,
    hints: [
      owner
        ? 'add facts'
        : 'add papers with  evidence: , or type  --also-owner  to tell what you state as well',
      'ask for more with  --length',
    ],
  };
}

function behind(draft: RemarksDraft, characters: number, length: number, width: number): string {
  const { text, traces } = numberedDraft(draft);
  const left = draft.left.length;
  return [
    '',
    `${groupThousands(characters)} of ${groupThousands(length)} characters. What is behind each phrase:`,
    '',
    ...folded(text, width),
    '',
    ...traces.flatMap((trace) => folded(trace, width)),
    ...(left === 0
      ? []
      : [
          '',
          `${groupThousands(left)} more ${left === 1 ? 'fact' : 'facts'} did not fit; ask for more with  --length`,
        ]),
  ]
    .map((line) => `${line}\n`)
    .join('');
}

function folded(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of visible(text).split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && longer.length > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
