/** A checked draft of listing remarks in the terminal: the text with marks below it, then what each mark means. */
import {
  type CheckedClaim,
  type CheckedDraft,
  type CheckedFact,
  type CheckedWord,
  countOf,
  needsMending,
  TO_MEND,
} from './check-draft.js';
import { visible } from './diagnostics/report.js';
import { type MarkedLine, markedText, type Sign, type Stretch } from './marked-text.js';
import { isoDate } from './packet/date-words.js';
import { hiddenLines, lengthLines, summary } from './remarks-head.js';
import { type AdvertisingRule, advertisingRule, advertisingStanding } from './tally/advertising.js';
import type { Verdict } from './tally/remarks/items/known.js';
import { sentenceOfRule } from './tally/remarks/rules.js';
import { commandLines, lineWidth, wrapped } from './wrapped-lines.js';

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
  /** Columns of the terminal; undefined where none is known. */
  readonly columns?: number | undefined;
}

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
  const width = lineWidth(report.columns);
  const entries = entriesOf(report);
  const where = checked.draft.file === undefined ? '' : `, ${checked.draft.file}`;
  return [
    ...wrapped(`${house}${where}, as of ${isoDate(asOf)}`, '', width),
    ...wrapped(`${summary(checked)}.`, '', width),
    ...lengthLines(checked, width),
    ...hiddenLines(checked, width),
    '',
    ...markedText(
      checked.draft.text,
      entries.map(({ stretch }) => stretch),
      width - INDENT.length,
    ).map((line) => painted(line, report.colour)),
    '',
    ...listLines(entries, report),
    ...closing(report, entries),
    ...wrapped(`Held against the facts in ${shown} and nothing else. Not legal advice.`, '', width),
  ]
    .map((line) => `${line.trimEnd()}\n`)
    .join('');
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

/** Cautions of our own are quoted with another rule than those that the rule itself has. */
const quotedAs = ({ id, status }: AdvertisingRule): string => (status === OWN_CAUTION ? OWN_CAUTION : id);

/** What earlier entries have told, so that it is not told again. */
interface Told {
  /** Rules that were quoted already, with the number of the entry. */
  readonly quoted: Map<string, number>;
  /** Rules by which a claim was judged. */
  readonly rules: Set<string>;
}

function listLines(entries: readonly Entry[], report: RemarksReport): string[] {
  // Kept along the list: a draft may have thousands of entries.
  const told: Told = { quoted: new Map(), rules: new Set() };
  const menders = entries.filter(({ about }) => isMender(about));
  return entries.flatMap((entry) => {
    const lines = entryLines(entry, report, told, menders);
    const { about, stretch } = entry;
    if (!isWord(about)) told.rules.add(about.rule);
    else if (!told.quoted.has(quotedAs(about.rule))) told.quoted.set(quotedAs(about.rule), stretch.number);
    return [...lines, ''];
  });
}

function entryLines(
  { stretch: { number }, about }: Entry,
  report: RemarksReport,
  { quoted, rules }: Told,
  menders: readonly Entry[],
): string[] {
  const indent = ' '.repeat(4);
  const width = lineWidth(report.columns);
  const name = isWord(about) ? WORD_NAMES[about.level] : NAMES[about.verdict];
  const bold = (text: string): string => (report.colour ? `\u001b[1m${text}\u001b[0m` : text);
  const [first = '', ...more] = wrapped(`${name}: “${about.says}”`, indent, width);
  return [
    `${bold(String(number).padStart(2))}  ${first.trimStart()}`,
    ...more,
    ...labelled(mendedWith(about, menders) ?? wayOut(about), indent, width),
    ...labelled({ label: 'why', words: about.because }, indent, width),
    ...(isWord(about)
      ? labelled(
          { label: 'rule', words: ruleWords(about.rule, quoted.get(quotedAs(about.rule))) },
          indent,
          width,
        )
      : [...factLines(about, report, indent), ...labelled(ruleOf(about, report, rules), indent, width)]),
  ];
}

/** It says what to write in place of what is wrong. */
const isMender = (about: CheckedClaim | CheckedWord): boolean =>
  !isWord(about) && TO_MEND.includes(about.verdict) && about.instead !== undefined;

/** Two claims on the same words: what is written for the one mends the other. */
function mendedWith(about: CheckedClaim | CheckedWord, menders: readonly Entry[]): Labelled | undefined {
  if (isWord(about) || about.instead !== undefined || !TO_MEND.includes(about.verdict)) return undefined;
  const other = menders.find((one) => one.about.from < about.to && about.from < one.about.to);
  return other === undefined
    ? undefined
    : { label: 'do', words: `nothing more: what ${other.stretch.number} writes mends it` };
}

/** With --all, by which rule it was judged; a second time nothing. */
function ruleOf(
  { rule }: CheckedClaim,
  { all }: RemarksReport,
  told: ReadonlySet<string>,
): Labelled | undefined {
  const words = sentenceOfRule(rule);
  return !all || words === undefined || told.has(rule) ? undefined : { label: 'rule', words };
}

interface Labelled {
  readonly label: string;
  readonly words: string;
}

const labelled = (one: Labelled | undefined, indent: string, width: number): string[] =>
  one === undefined ? [] : wrapped(`${one.label.padEnd(HANG)}${one.words}`, indent, width, ' '.repeat(HANG));

/** Columns that a label takes. */
const HANG = 7;

function factLines(claim: CheckedClaim, { shown, all, columns }: RemarksReport, indent: string): string[] {
  const { facts, verdict } = claim;
  // What is too wide is seen by two facts: one that fits and one that doesn't.
  const told = all ? facts : facts.slice(0, verdict === 'wider' ? 2 : 1);
  const more = facts.length - told.length;
  return [
    ...told.flatMap((fact) =>
      labelled({ label: 'fact', words: factWords(fact, shown) }, indent, lineWidth(columns)),
    ),
    ...(more === 0 ? [] : [`${indent}${' '.repeat(HANG)}and ${more} more ${more === 1 ? 'fact' : 'facts'}`]),
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

/** Phrases that no rule names; the rule that they are filed under holds others. */
export const OWN_CAUTION = 'house rule';

/** The rule in its own words; a second time only its name. */
const ruleWords = (
  { id, quoted, title, section, publisher, status }: AdvertisingRule,
  before: number | undefined,
): string => {
  if (status === OWN_CAUTION) {
    const { id: kin, quoted: words, title: law } = advertisingRule('F01');
    return before === undefined
      ? `this program’s own caution, for the sake of ${kin} “${words}” ${law}`
      : `this program’s own caution, as for ${before}`;
  }
  return before === undefined
    ? `${id} “${quoted}” ${title}, ${section}, ${publisher} (${status})`
    : `${id}, as quoted for ${before} (${status})`;
};

/** What to write or do. Undefined: it may stay. */
export function wayOut(about: CheckedClaim | CheckedWord): Labelled | undefined {
  const write = (words: string): Labelled => ({ label: 'write', words });
  const does = (words: string): Labelled => ({ label: 'do', words });
  if (isWord(about)) return about.instead === undefined ? does('leave it out') : does(about.instead);
  if (about.verdict === 'backed' || about.verdict === 'opinion') return undefined;
  if (about.instead !== undefined) return write(about.instead);
  return about.verdict === 'no-fact'
    ? does('leave it out, or write into the folder how it is known')
    : does('leave it out');
}

// ------------------------------------------------------------------ foot

function closing({ checked, house, all, columns }: RemarksReport, entries: readonly Entry[]): string[] {
  const width = lineWidth(columns);
  const about = checked.words.some(({ level }) => level !== 'date');
  const standing = advertisingStanding();
  const backed = countOf(checked, 'backed');
  return [
    ...(needsMending(checked)
      ? [...wrapped(KEY, '', width)]
      : ['Nothing in it has to be mended.', ...(entries.length === 0 ? [] : wrapped(KEY_MIND, '', width))]),
    ...(about
      ? wrapped(`${standing.id}: ${standing.says} “${standing.quoted}” ${standing.title}.`, '', width)
      : []),
    ...(all || backed === 0
      ? []
      : [
          ...commandLines(
            'What the facts back is not marked; to see it too:',
            `sillplate remarks ${visible(checked.draft.file === undefined ? `- ${house}` : house)} --all`,
            width,
          ),
        ]),
  ];
}

const KEY =
  'Marked ^: to be mended before it is sent. Marked ~: nothing in the folder is behind it, or a word to think over.';
const KEY_MIND = 'Marked ~: nothing in the folder is behind it, or a word to think over.';
