/**
 * `sillplate ask`: a question in somebody's own words, answered from what an edition of the packet says; or the questions
 * that the record can't answer yet.
 *
 * It searches what the box on the pages searches, with the same words and in the same order. Exit status 0 where something
 * fits, also where the answer is that it is not known; 1 where nothing does or the record has errors; 2 where it is not
 * clear which house is meant.
 */
import path from 'node:path';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import { nearestWord } from './facts/nearest-word.js';
import {
  FOLDER_NAME,
  findHouses,
  type HouseFolder,
  housePath,
  isFolder,
  quoted,
  typedHouse,
} from './find-houses.js';
import { type Find, openSearch, type SearchEntry } from './packet/answers/find-entries.js';
import { searchDataOf } from './packet/answers/search-entries.js';
import { questionCount, type Unanswered, unansweredOf } from './packet/answers/unanswered.js';
import { type ComposeOrder, composePacket, contextOf } from './packet/compose.js';
import type { Packet } from './packet/packet.js';
import { readWithoutErrors } from './read-without-errors.js';
import { stemOf } from './tally/stem.js';
import { askedQuestions } from './tally/tables/questions.js';
import type { Terminal } from './terminal.js';
import { linkBookOf } from './web/links.js';

export interface AskOptions {
  readonly content: string;
  /** YYYY-MM-DD that ages are counted to. */
  readonly asOf: string;
  /** Whose packet answers. */
  readonly edition: 'buyer' | 'file';
  readonly format: 'text' | 'json';
  /** List what has no answer, whatever was asked. */
  readonly unanswered?: true;
}

/** More are for another question. */
const MOST = 3;
/** A second answer that fits half as well as the first is told, too. */
const FITS_AS_WELL = 0.5;

export async function askCommand(
  words: readonly string[],
  options: AskOptions,
  terminal: Terminal,
): Promise<number> {
  const meant = await whatIsMeant(words, options);
  if ('trouble' in meant) {
    terminal.error(printReport(locate(meant.trouble, NOWHERE), 'text', terminal.colour));
    return meant.status;
  }
  const { house, asked } = meant;
  const { edition, asOf } = options;
  const read = await readWithoutErrors(house, asOf, { ledger: edition === 'file' });
  if ('errors' in read) {
    terminal.error(printReport(read.errors, 'text', terminal.colour));
    return 1;
  }
  const order: ComposeOrder = { ...read.order, edition };
  if (asked === '') {
    terminal.out(listed(order, options));
    return 0;
  }
  const answers = answered(order, asked);
  terminal.out(options.format === 'json' ? asJson(answers, order, asked) : asText(answers, house));
  return answers.found.length === 0 ? 1 : 0;
}

// ------------------------------------------------------------------ what was typed

interface Meant {
  readonly house: HouseFolder;
  /** Empty: what has no answer is listed. */
  readonly asked: string;
}

interface NotMeant {
  readonly trouble: readonly Diagnostic[];
  readonly status: 1 | 2;
}

/** The last word may be a house, or else the first; the rest is the question, in quotes or not. */
async function whatIsMeant(words: readonly string[], options: AskOptions): Promise<Meant | NotMeant> {
  const { houses: all, diagnostics } = await findHouses(options.content, []);
  const [first] = words;
  const last = words.at(-1);
  const isNamed = async (word: string | undefined): Promise<boolean> =>
    word !== undefined && isHouse(word, options.content);
  const [named, before] = (await isNamed(last))
    ? [last, words.slice(0, -1)]
    : (await isNamed(first))
      ? [first, words.slice(1)]
      : [undefined, words];
  const asked = before.join(' ').trim();
  if (options.unanswered === true && asked !== '')
    return { trouble: [notBoth(asked, named ?? '')], status: 2 };
  const another = before.at(-1);
  if (named !== undefined && another !== undefined && (await isHouse(another, options.content)))
    return { trouble: [oneAtATime([another, named], before.slice(0, -1).join(' ').trim())], status: 2 };
  if (named !== undefined) {
    const found = await findHouses(options.content, [named]);
    const [house] = found.houses;
    return house === undefined ? { trouble: found.diagnostics, status: 1 } : { house, asked };
  }
  // "how old is the roof" quary-road: behind a question in quotes stands what can only be a house. "Roof nohouse": so
  // does, of two single words, one that is no word of any question, where there are several houses.
  if (
    words.length === 2 &&
    words[0] !== undefined &&
    last !== undefined &&
    (words[0].includes(' ') || (!isWordOfAQuestion(last) && (all.length > 1 || last.includes('-'))))
  )
    return { trouble: [noSuchHouse(last, all, words[0])], status: 2 };
  const [only, second] = all;
  if (only === undefined) return { trouble: diagnostics, status: 1 };
  if (second !== undefined) return { trouble: [whichHouse(all, asked)], status: 2 };
  return { house: only, asked };
}

/** A name of the content folder, or a path. No question is a folder. */
const isHouse = (word: string, content: string): Promise<boolean> => isFolder(housePath(content, word));

/** As a word of the table's questions, in singular or plural. */
function isWordOfAQuestion(word: string): boolean {
  const wanted = stemOf(word.toLowerCase());
  return askedQuestions().some(({ ask, words }) =>
    (`${ask} ${words}`.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).some((one) => stemOf(one) === wanted),
  );
}

const nameOfHouse = ({ folder }: HouseFolder): string => path.basename(path.resolve(folder));

const typed = (asked: string, { shown }: HouseFolder): string =>
  `sillplate ask ${asked === '' ? '' : `${quoted(asked)} `}${typedHouse(shown)}`;

const whichHouse = (houses: readonly HouseFolder[], asked: string): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message: `there are ${houses.length} houses here, and one is meant: ${houses.map(nameOfHouse).join(', ')}`,
  hints: houses.slice(0, 3).map((house) => `type  ${typed(asked, house)}`),
});

/** A name stays the name that was typed. */
const asTyped = (house: string): string => (FOLDER_NAME.test(house) ? house : typedHouse(house));

const notBoth = (asked: string, house: string): Diagnostic => {
  const of = house === '' ? '' : ` ${asTyped(house)}`;
  return {
    code: 'cli.usage',
    severity: 'error',
    message:
      'a question and --unanswered don’t go together: one is answered, the other lists what has no answer',
    hints: [
      `to ask, type  sillplate ask ${quoted(asked)}${of}`,
      `for the list, type  sillplate ask --unanswered${of}`,
    ],
  };
};

const oneAtATime = (houses: readonly string[], asked: string): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message: `${houses.length} houses are named, and one is meant: ${houses.join(', ')}`,
  hints: houses.map(
    (house) => `type  sillplate ask ${asked === '' ? '' : `${quoted(asked)} `}${asTyped(house)}`,
  ),
});

function noSuchHouse(word: string, houses: readonly HouseFolder[], asked: string): Diagnostic {
  const names = houses.map(nameOfHouse);
  const near = houses[Math.max(0, names.indexOf(nearestWord(word, names) ?? ''))];
  return {
    code: 'cli.usage',
    severity: 'error',
    message: `there is no house “${word}”${names.length === 0 ? '' : `; there is ${names.join(', ')}`}`,
    hints: [
      ...(near === undefined ? [] : [`type  ${typed(asked, near)}`]),
      'put a question of several words into one pair of quotes',
    ],
  };
}

// ------------------------------------------------------------------ answering

interface Told {
  readonly entry: SearchEntry;
  /** File and anchor in the packet's pages. */
  readonly page: string;
}

interface Answers {
  readonly packet: Packet;
  readonly found: readonly Told[];
  /** Questions of the packet that share a word, where nothing fits. */
  readonly nearest: readonly string[];
}

function answered(order: ComposeOrder, asked: string): Answers {
  const packet = composePacket(order);
  const { entries, words } = searchDataOf(packet);
  const find = openSearch(entries, words);
  const links = linkBookOf(packet);
  const all = find(asked);
  const best = all[0]?.score ?? 0;
  const found = all
    .filter(({ score }) => score >= best * FITS_AS_WELL)
    .slice(0, MOST)
    .map(({ entry }) => ({ entry, page: links.hrefOf(entry.id) }));
  return { packet, found, nearest: found.length > 0 ? [] : nearestTo(asked, find, entries) };
}

/** By single words; where not one is shared, what is asked most. */
function nearestTo(asked: string, find: Find<SearchEntry>, entries: readonly SearchEntry[]): string[] {
  const sharing = asked.split(/\s+/).flatMap((word) => find(word).map(({ entry }) => entry));
  const questions = [...sharing, ...entries].filter(({ kind }) => kind !== 'fact').map(({ title }) => title);
  return [...new Set(questions)].slice(0, MOST);
}

// ------------------------------------------------------------------ telling

function asText({ packet, found, nearest }: Answers, house: HouseFolder): string {
  const foot = `As of ${packet.asOfText}, from ${visible(house.shown)}.\n`;
  if (found.length === 0)
    return [
      'Nothing in this house’s record fits that. That is no answer, and never the same as no.\n',
      `Nearest questions:\n${nearest.map((ask) => `  ${visible(ask)}\n`).join('')}`,
      `To see what has no answer yet:  ${typed('', house)}\n`,
      foot,
    ].join('\n');
  return [...found.map((told) => answerText(told, packet)), foot].join('\n');
}

function answerText({ entry, page }: Told, packet: Packet): string {
  const lines = [
    ...wrapped(entry.text === entry.title ? '' : entry.text, '  ', ''),
    ...wrapped(entry.known, '  ', 'known   '),
    ...wrapped(`${packet.edition.title}, ${entry.section} (${page})`, '  ', 'stands  '),
  ];
  return `${visible(entry.title)}\n${lines.map((line) => `${line}\n`).join('')}`;
}

const LINE = 96;

/** Lines of at most so many signs; those after the first stand below its words. */
function wrapped(text: string, indent: string, head: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of visible(text)
    .split(' ')
    .filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && longer.length > LINE - indent.length - head.length) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines.map((one, index) => `${indent}${index === 0 ? head : ' '.repeat(head.length)}${one}`);
}

function asJson({ packet, found, nearest }: Answers, order: ComposeOrder, asked: string): string {
  return json({
    house: order.folder,
    edition: order.edition,
    asOf: packet.asOf,
    asked,
    answers: found.map(({ entry, page }) => ({
      question: entry.title,
      answer: entry.text,
      known: entry.known === '' ? null : entry.known,
      isQuestion: entry.kind !== 'fact',
      section: entry.section,
      page,
    })),
    nearest,
  });
}

const json = (data: unknown): string => `${JSON.stringify(data, null, 2)}\n`;

function listed(order: ComposeOrder, { format, asOf }: AskOptions): string {
  const context = contextOf(order);
  const open = unansweredOf(context);
  const all = questionCount(context);
  const { folder, edition } = order;
  if (format === 'json')
    return json({
      house: folder,
      edition,
      asOf,
      questions: all,
      unanswered: open.map(({ id: _id, ...one }) => one),
    });
  if (open.length === 0) return `${visible(folder)}: all ${all} questions that buyers ask have an answer.\n`;
  const head = `${visible(folder)}: ${open.length} of ${all} questions that buyers ask have no answer yet, most asked first.\n`;
  const foot = 'An answer may also be: not known, with a note of why. Packets then say whom to ask.\n';
  return [head, ...open.map(openText), foot].join('\n');
}

const openText = ({ ask, type, whom }: Unanswered): string =>
  `${visible(ask)}\n  do: ${visible(type)}\n  or: ${visible(whom)}\n`;
