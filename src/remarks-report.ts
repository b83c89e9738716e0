/** A checked draft of listing remarks in the terminal: the text with marks below it, then what each mark means. */
import {
  type CheckedClaim,
  type CheckedDraft,
  type CheckedFact,
  type CheckedWord,
  countOf,
  isTooLong,
  needsMending,
} from './check-draft.js';
import { columnsOf } from './diagnostics/columns.js';
import { visible } from './diagnostics/report.js';
import { groupThousands } from './facts/written-number.js';
import { type MarkedLine, markedText, type Sign, type Stretch } from './marked-text.js';
import { isoDate } from './packet/date-words.js';
import { type AdvertisingRule, advertisingStanding } from './tally/advertising.js';
import type { Verdict } from './tally/remarks/known.js';

export interface RemarksReport {
  readonly checked: CheckedDraft;
  /** Name of the house folder. */
  readonly house: string;
  /** The house folder as its writer would type it. */
  readonly shown: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  /** Show the claims that the facts back, too, and every fact. */
  readonly all: boolean;
  readonly colour: boolean;
}

/** Columns of a line. */
const WIDTH = 96;
const INDENT = '  ';

/** Verdicts as the list names them. */
const NAMES: Record<Verdict, string> = {
  backed: 'backed',
  contradicted: 'contradicted',
  wider: 'wider than the facts',
  'no-fact': 'no fact',
  opinion: 'opinion',
};
const WORD_NAMES: Record<CheckedWord['level'], string> = {
  block: 'words to leave out',
  warn: 'words to mind',
  date: 'new, but when',
};

export function printRemarks(report: RemarksReport): string {
  const { checked, house, asOf, shown } = report;
  const entries = entriesOf(report);
  const where = checked.draft.file === undefined ? '' : `, ${checked.draft.file}`;
  return [
    `${visible(house)}${visible(where)}, as of ${isoDate(asOf)}`,
    ...wrapped(`${summary(checked)}.`, '', WIDTH),
    ...lengthLines(checked),
    '',
    ...markedText(
      checked.draft.text,
      entries.map(({ stretch }) => stretch),
      WIDTH - INDENT.length,
    ).map((line) => painted(line, report.colour)),
    '',
    ...entries.flatMap((entry, index) => [
      ...entryLines(entry, report, quotedBefore(entries.slice(0, index))),
      '',
    ]),
    ...closing(report, entries),
    ...wrapped(`Held against the facts in ${shown} and nothing else. Not legal advice.`, '', WIDTH),
  ]
    .map((line) => `${line.trimEnd()}\n`)
    .join('');
}

// ------------------------------------------------------------------ head

/** "17 claims: 6 backed, 5 contradicted, …; 2 words to mind; 1,012 of 1,000 characters". */
export function summary(checked: CheckedDraft): string {
  const { claims, words } = checked;
  const part = (n: number, many: string, one = many): string[] =>
    n === 0 ? [] : [`${n} ${n === 1 ? one : many}`];
  const verdicts = [
    ...part(countOf(checked, 'backed'), 'backed'),
    ...part(countOf(checked, 'contradicted'), 'contradicted'),
    ...part(countOf(checked, 'wider'), 'wider than the facts'),
    ...part(countOf(checked, 'no-fact'), 'without a fact'),
    ...part(countOf(checked, 'opinion'), 'opinions', 'opinion'),
  ];
  const count =
    claims.length === 0
      ? 'no claim was found'
      : `${claims.length} ${claims.length === 1 ? 'claim' : 'claims'}: ${verdicts.join(', ')}`;
  return [count, ...part(words.length, 'words to mind', 'word to mind'), lengthOf(checked)].join('; ');
}

function lengthOf({ length, limit }: CheckedDraft): string {
  const has = groupThousands(length.characters);
  return limit === undefined ? `${has} characters` : `${has} of ${groupThousands(limit)} characters`;
}

function lengthLines(checked: CheckedDraft): string[] {
  if (!isTooLong(checked)) return [];
  return wrapped(`Too long: ${tooLongWords(checked)}.`, '', WIDTH);
}

/** "12 characters more than the listing service takes; end it behind “on the porch.” (985 characters)". */
export function tooLongWords({ draft, length, limit = 0, stop }: CheckedDraft): string {
  const more = length.characters - limit;
  const many = `${groupThousands(more)} ${more === 1 ? 'character' : 'characters'} more than the listing service takes`;
  if (stop === undefined) return `${many}; not even its first sentence fits`;
  return `${many}; to fit, end it behind “${lastWords(draft.text.slice(0, stop.to))}” (${groupThousands(stop.characters)} characters)`;
}

/** Enough of the end to find it. */
function lastWords(text: string): string {
  const words = text.slice(-200).trim().split(/\s+/u).slice(-5).join(' ');
  return [...words].length > 60 ? `…${[...words].slice(-59).join('')}` : words;
}

// ------------------------------------------------------------------ what is marked

interface Entry {
  readonly stretch: Stretch;
  readonly about: CheckedClaim | CheckedWord;
}

const isWord = (about: CheckedClaim | CheckedWord): about is CheckedWord => 'level' in about;

/** What gets a mark and a number, in the order of the text. Opinions are left alone. */
function entriesOf({ checked: { claims, words }, all }: RemarksReport): Entry[] {
  return [...claims.filter(({ verdict }) => verdict !== 'opinion' && (all || verdict !== 'backed')), ...words]
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map((about, index) => ({
      about,
      stretch: { from: about.from, to: about.to, sign: signOf(about), number: index + 1 },
    }));
}

function signOf(about: CheckedClaim | CheckedWord): Sign {
  if (isWord(about)) return about.level === 'block' ? '^' : '~';
  if (about.verdict === 'backed') return '.';
  return about.verdict === 'no-fact' ? '~' : '^';
}

const PAINT: Record<Sign, string> = { '^': '31;1', '~': '33;1', '.': '2' };

function painted({ kind, text }: MarkedLine, colour: boolean): string {
  if (!colour || kind === 'text') return `${INDENT}${text}`;
  if (kind === 'numbers') return `${INDENT}\u001b[1m${text}\u001b[0m`;
  return `${INDENT}${text.replace(/\^+|~+|\.+/g, (run) => `\u001b[${PAINT[run.charAt(0) as Sign]}m${run}\u001b[0m`)}`;
}

// ------------------------------------------------------------------ the list

/** Rules that were quoted already, with the number of the entry. */
const quotedBefore = (entries: readonly Entry[]): ReadonlyMap<string, number> =>
  new Map(
    [...entries]
      .reverse()
      .flatMap(({ about, stretch }) => (isWord(about) ? [[about.rule.id, stretch.number] as const] : [])),
  );

function entryLines(
  { stretch: { number }, about }: Entry,
  report: RemarksReport,
  quoted: ReadonlyMap<string, number>,
): string[] {
  const indent = ' '.repeat(4);
  const name = isWord(about) ? WORD_NAMES[about.level] : NAMES[about.verdict];
  const bold = (text: string): string => (report.colour ? `\u001b[1m${text}\u001b[0m` : text);
  const [first = '', ...more] = wrapped(`${name}: “${about.says}”`, indent, WIDTH);
  return [
    `${bold(String(number).padStart(2))}  ${first.trimStart()}`,
    ...more,
    ...labelled(wayOut(about), indent),
    ...labelled({ label: 'why', words: about.because }, indent),
    ...(isWord(about)
      ? labelled({ label: 'rule', words: ruleWords(about.rule, quoted.get(about.rule.id)) }, indent)
      : factLines(about, report, indent)),
  ];
}

interface Labelled {
  readonly label: string;
  readonly words: string;
}

const labelled = (one: Labelled | undefined, indent: string): string[] =>
  one === undefined ? [] : wrapped(`${one.label.padEnd(HANG)}${one.words}`, indent, WIDTH, ' '.repeat(HANG));

/** Columns that a label takes. */
const HANG = 7;

function factLines(claim: CheckedClaim, { shown, all }: RemarksReport, indent: string): string[] {
  const { facts, verdict } = claim;
  // What is too wide is seen by two facts: one that fits and one that doesn't.
  const told = all ? facts : facts.slice(0, verdict === 'wider' ? 2 : 1);
  const more = facts.length - told.length;
  return [
    ...told.flatMap((fact) => labelled({ label: 'fact', words: factWords(fact, shown) }, indent)),
    ...(more === 0 ? [] : [`${indent}${' '.repeat(HANG)}and ${more} more`]),
  ];
}

/** "Water heater: put in 9 April 2026. Documented: permit PL-26-0182. systems.yaml:12". */
function factWords({ words, known, place }: CheckedFact, shown: string): string {
  const at = place === undefined ? '' : ` ${inFolder(place.file, shown)}:${place.line}`;
  return `${words.replace(/\.$/, '')}. ${known}.${at}`;
}

/** The head names the folder; here its file is enough. */
const inFolder = (file: string, shown: string): string =>
  file.startsWith(`${shown}/`) ? file.slice(shown.length + 1) : file;

/** The rule in its own words; a second time only its name. */
const ruleWords = (
  { id, quoted, title, section, publisher, status }: AdvertisingRule,
  before: number | undefined,
): string =>
  before === undefined
    ? `${id} “${quoted}” ${title}, ${section}, ${publisher} (${status})`
    : `${id}, as quoted for ${before} (${status})`;

/** What to write or do. Undefined: it may stay. */
export function wayOut(about: CheckedClaim | CheckedWord): Labelled | undefined {
  const write = (words: string): Labelled => ({ label: 'write', words });
  const does = (words: string): Labelled => ({ label: 'do', words });
  if (isWord(about)) return about.instead === undefined ? does('leave it out') : does(about.instead);
  if (about.verdict === 'backed' || about.verdict === 'opinion') return undefined;
  if (about.instead !== undefined) return write(about.instead);
  return about.verdict === 'no-fact'
    ? does('leave it out, or write into the folder how it is known')
    : does('leave it out, or say what the facts say');
}

// ------------------------------------------------------------------ foot

function closing({ checked, house, all }: RemarksReport, entries: readonly Entry[]): string[] {
  const about = checked.words.some(({ level }) => level !== 'date');
  const standing = advertisingStanding();
  const backed = countOf(checked, 'backed');
  return [
    ...(needsMending(checked)
      ? [...wrapped(KEY, '', WIDTH)]
      : ['Nothing in it has to be mended.', ...(entries.length === 0 ? [] : [KEY_MIND])]),
    ...(about
      ? wrapped(`${standing.id}: ${standing.says} “${standing.quoted}” ${standing.title}.`, '', WIDTH)
      : []),
    ...(all || backed === 0
      ? []
      : [
          `What the facts back is not marked; to see it too:  sillplate remarks ${visible(checked.draft.file === undefined ? `- ${house}` : house)} --all`,
        ]),
  ];
}

const KEY =
  'Marked ^: to be mended before it is sent. Marked ~: nothing in the folder is behind it, or a word to think over.';
const KEY_MIND = 'Marked ~: nothing in the folder is behind it, or a word to think over.';

// ------------------------------------------------------------------ lines

/** Lines of at most so many columns; `hang` goes before those after the first, behind the indent. */
function wrapped(text: string, indent: string, width: number, hang = ''): string[] {
  const lines: string[] = [];
  let line = '';
  const room = (): number => width - indent.length - (lines.length === 0 ? 0 : hang.length);
  const [head = '', rest] = hang === '' ? ['', text] : [text.slice(0, hang.length), text.slice(hang.length)];
  for (const word of visible(rest).split(' ')) {
    if (word === '') continue;
    const longer = line === '' ? word : `${line} ${word}`;
    const used = columnsOf(longer) + (lines.length === 0 ? head.length : 0);
    if (line !== '' && used > room()) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines.map((one, index) => `${indent}${index === 0 ? head : hang}${one}`);
}
