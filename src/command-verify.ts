/**
 * `sillplate verify`: whether a PDF is what its house folder makes, and which facts differ if it is not. A bag goes to
 * `command-verify-bag.ts`.
 */
import path from 'node:path';
import type { Unreadable } from './data-in-pdf.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport, visible } from './diagnostics/report.js';
import { findHouses, housePath, isFolder, shownPath } from './find-houses.js';
import { type Frozen, frozenAs } from './frozen-as.js';
import { readPlainFile } from './intake/read-plain-file.js';
import type { FactChange } from './packet/compare-facts.js';
import { isoDate } from './packet/date-words.js';
import { whereTheyDiffer } from './packet/where-they-differ.js';
import type { Terminal } from './terminal.js';
import { type PacketPdf, readPacketPdf, type Verdict, verifyPdf } from './verify-pdf.js';
import { version } from './version.js';

export interface VerifyOptions {
  readonly content: string;
  readonly out: string;
  readonly format: 'text' | 'json';
  /** Show what the folder says now, also of the house file. */
  readonly private?: true;
  /** File with the age keys that open a sealed bag. */
  readonly identity?: string;
}

/** Larger than any packet, and small enough to be held in memory. */
const LARGEST = 256 * 1024 * 1024;

/** `house` is a name under the content folder or a path; left out, the house whose name the PDF carries. */
export async function verifyCommand(
  file: string,
  house: string | undefined,
  options: VerifyOptions,
  terminal: Terminal,
): Promise<number> {
  const bags = await import('./command-verify-bag.js');
  if (await bags.isBag(file)) return bags.verifyBagCommand(file, options, terminal);
  const shown = shownPath(file);
  const report = (located: readonly Located[], after = ''): void => {
    if (options.format === 'json') terminal.out(printReport(located, 'json', false));
    else terminal.error(`${printReport(located, 'text', terminal.colour)}${after}`);
  };
  const refuse = ([message, ...hints]: readonly string[]): number => {
    report(locate([noPacket(shown, message ?? '', hints)], NOWHERE));
    return 2;
  };
  const bytes = await bytesOf(file);
  if (typeof bytes === 'string')
    return refuse([
      bytes,
      'type the PDF’s name as it lies there, for example  out/my-house/buyer/my-house-buyer.pdf',
    ]);
  const pdf = readPacketPdf(bytes);
  if (typeof pdf === 'string') return refuse(WHY[pdf](shown));
  const folder = housePath(options.content, house ?? pdf.facts.house.folder);
  if (!(await isFolder(folder))) return refuse(await noFolder(pdf, folder, shown, options.content));
  const progress = terminal.progress(`sillplate: ${path.basename(shown)}`);
  const verified = await verifyPdf(pdf, {
    folder,
    shown: shownPath(folder),
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
    onPhoto: (photo, done, all) => progress.photo(pdf.facts.house.folder, photo, done, all),
  }).finally(progress.stop);
  const given = await frozenAs(pdf.bytes, folder, shownPath(folder));
  if (verified.verdict === undefined) {
    const errors = verified.located.filter(({ diagnostic }) => diagnostic.severity === 'error');
    report(
      errors,
      `\n${visible(shownPath(folder))} has errors and makes no packet now, so ${visible(shown)} can’t be held against it.\n${asGiven(given)}`,
    );
    return 1;
  }
  const { verdict, digest: digestNow } = verified;
  const about: About = {
    shown,
    folder: shownPath(folder),
    pdf,
    digestNow,
    tells: tells(pdf, options),
    given,
  };
  terminal.out(options.format === 'json' ? asJson(about, verdict) : asText(about, verdict));
  return verdict.kind === 'same' ? 0 : 1;
}

/** What is said of a file that can’t be compared, and what to do. */
const WHY: Readonly<Record<Unreadable, (shown: string) => readonly string[]>> = {
  'no-pdf': (shown) => [
    `${shown} is no PDF`,
    'name a packet’s PDF, for example  out/my-house/buyer/my-house-buyer.pdf',
  ],
  locked: (shown) => [
    `${shown} is locked with a password, and what it holds can’t be read`,
    'ask for the file as it was sent, without a password',
  ],
  'no-data': (shown) => [
    `${shown} carries no packet’s data: it is damaged, was not made by sillplate, or lost its data when another program saved it`,
    'ask for the file as it was sent, not for a copy printed to PDF',
  ],
  several: (shown) => [
    `${shown} carries the data of several packets, and no packet does so`,
    'verify the packets one by one, each as it was sent',
  ],
};

/** A file from elsewhere may say that it is the house file: what is private is shown only to who asks for it. */
const tells = ({ edition }: PacketPdf, options: VerifyOptions): boolean =>
  edition !== 'file' || options.private === true;

interface About {
  readonly shown: string;
  readonly folder: string;
  readonly pdf: PacketPdf;
  readonly digestNow: string;
  /** Whether the facts that differ are told, or only how many they are. */
  readonly tells: boolean;
  /** Deliveries that froze these very bytes, or those that these begin with. */
  readonly given: readonly Frozen[];
}

const noPacket = (file: string, message: string, hints: readonly string[]): Diagnostic => ({
  code: 'cli.no-packet',
  severity: 'error',
  file,
  message,
  hints,
});

/** The file's bytes, or why there are none. */
async function bytesOf(file: string): Promise<Uint8Array | string> {
  const shown = shownPath(file);
  try {
    return await readPlainFile(file, LARGEST);
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === undefined) throw thrown;
    if (code === 'ENOTFILE') return `${shown} is no file`;
    if (code === 'EFBIG') return `${shown} is larger than any packet`;
    return code === 'ENOENT' || code === 'ENOTDIR'
      ? `there is no file ${shown}`
      : `${shown} can’t be read: the system says ${code}`;
  }
}

async function noFolder(
  { facts }: PacketPdf,
  folder: string,
  shown: string,
  content: string,
): Promise<readonly string[]> {
  const { houses } = await findHouses(content, []);
  const named = houses[0]?.shown ?? `${shownPath(content)}/my-house`;
  return [
    `it is a packet of the house ${facts.house.folder}, and there is no folder ${shownPath(folder)}`,
    `name the house’s folder behind the file, for example  sillplate verify ${shown} ${named}`,
    'or name the folder of all houses with  --content DIR',
  ];
}

function asText({ shown, folder, pdf, digestNow, tells: all, given }: About, verdict: Verdict): string {
  const { facts } = pdf;
  const what = `${facts.title} of ${facts.house.name}, as of ${facts.asOf}, digest ${facts.digest}`;
  const other =
    facts.program === programNow() || verdict.kind === 'same'
      ? ''
      : `  It was made by ${visible(facts.program)}; this is ${programNow()}, and another version may set the same facts in another way.\n`;
  return `${visible(shown)}\n  ${visible(what)}\n${asGiven(given)}${sentence(verdict, visible(folder), digestNow, all, pdf)}${other}`;
}

/** What it was when it was given stays true, whatever the folder makes now. */
const asGiven = (given: readonly Frozen[]): string =>
  given
    .map(
      ({ record, shown, added }) =>
        `  It ${added === 0 ? 'is' : 'begins with'} what the folder made, byte for byte, delivered on ${isoDate(record.given)} to ${visible(record.to.join(', '))}:\n  ${visible(shown)}\n${added === 0 ? '' : `  Since then ${bytesWere(added)} added behind it, and what it shows may differ from what was delivered.\n`}`,
    )
    .join('');

const bytesWere = (bytes: number): string => (bytes === 1 ? 'one byte was' : `${bytes} bytes were`);

const programNow = (): string => `sillplate ${version()}`;

function sentence(
  verdict: Verdict,
  folder: string,
  digestNow: string,
  all: boolean,
  { facts }: PacketPdf,
): string {
  const again = `  do: look at the packet itself:  sillplate build ${folder} --edition ${facts.edition} --as-of ${facts.asOf}\n`;
  switch (verdict.kind) {
    case 'same':
      return `  This is what ${folder} makes, byte for byte.\n`;
    case 'added-to':
      return `  This begins with what ${folder} makes, byte for byte, and ${bytesWere(verdict.bytes)} added behind it: a receipt that was\n  filled in, a note, a signature, or anything else. What it shows may differ from the packet.\n${again}`;
    case 'another-file':
      return `  The facts in its data are those that ${folder} makes. The file is another one: saved anew, filled in by a program\n  that writes the whole file, or changed. What its sheets show is not proved.\n${again}`;
    case 'facts':
      return `  This is not what ${folder} makes now (digest ${digestNow}): ${verdict.changes.length === 1 ? 'one fact differs' : `${verdict.changes.length} facts differ`}.\n${all ? told(verdict.changes) : '  do: to see them here, private ones among them, add  --private\n'}`;
  }
}

/** More changes than these are no longer read one by one. */
const MOST_TOLD = 30;

function told(changes: readonly FactChange[]): string {
  const more = changes.length - MOST_TOLD;
  return `${changes.slice(0, MOST_TOLD).map(change).join('')}${more > 0 ? `\n  … and ${more} more; all of them with  --format json\n` : ''}`;
}

function change({ section, about, was, is }: FactChange): string {
  const [before, after] = was === undefined || is === undefined ? [was, is] : whereTheyDiffer(was, is);
  const say = (words: string | undefined): string =>
    words === undefined ? 'not said' : visible(short(words));
  return `\n  ${visible(short(about === undefined ? section : `${section}: ${about}`))}\n    in the PDF     ${say(before)}\n    in the folder  ${say(after)}\n`;
}

/** Characters of one text that a terminal is given. */
const LONGEST_TOLD = 600;

const short = (words: string): string =>
  words.length > LONGEST_TOLD ? `${words.slice(0, LONGEST_TOLD)} …` : words;

function asJson({ shown, folder, pdf, digestNow, tells: all, given }: About, verdict: Verdict): string {
  const { house, edition, asOf, digest, program } = pdf.facts;
  const record = {
    file: shown,
    house: house.folder,
    folder,
    edition,
    asOf,
    program,
    digest,
    digestNow,
    verdict: verdict.kind,
    delivered: given.map(({ record: { given: on, to, number }, shown: at, added }) => ({
      number,
      on,
      to,
      folder: at,
      ...(added > 0 ? { bytesAdded: added } : {}),
    })),
    ...(verdict.kind === 'added-to' ? { bytesAdded: verdict.bytes } : {}),
    ...(verdict.kind === 'facts' ? { differ: verdict.changes.length } : {}),
    ...(verdict.kind === 'facts' && all ? { changes: verdict.changes } : {}),
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}
