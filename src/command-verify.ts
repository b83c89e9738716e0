/** `sillplate verify`: whether a PDF is what its house folder makes, and what of it is not. */
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import { shownPath } from './find-houses.js';
import type { FactChange } from './packet/compare-facts.js';
import type { Terminal } from './terminal.js';
import { type PacketPdf, readPacketPdf, type Verdict, verifyPdf } from './verify-pdf.js';
import { version } from './version.js';

export interface VerifyOptions {
  readonly content: string;
  readonly out: string;
  readonly format: 'text' | 'json';
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
  const shown = shownPath(file);
  const refuse = (message: string, ...hints: string[]): number => {
    const located = locate([noPacket(shown, message, hints)], NOWHERE);
    if (options.format === 'json') terminal.out(printReport(located, 'json', false));
    else terminal.error(printReport(located, 'text', terminal.colour));
    return 2;
  };
  const bytes = await bytesOf(file);
  if (typeof bytes === 'string')
    return refuse(
      bytes,
      'type the PDF’s name as it lies there, for example  out/my-house/buyer/my-house-buyer.pdf',
    );
  const pdf = await readPacketPdf(bytes);
  if (pdf === undefined)
    return refuse(
      `${shown} carries no packet’s data: it was not made by sillplate, or lost its data when another program saved it`,
      'ask for the file as it was sent, not for a copy printed to PDF',
    );
  const folder = folderOf(house ?? pdf.facts.house.folder, options.content);
  if (!(await isFolder(folder)))
    return refuse(
      `it is a packet of the house ${pdf.facts.house.folder}, and there is no folder ${shownPath(folder)}`,
      `name the house’s folder behind the file:  sillplate verify ${shown} content/my-house`,
      'name the folder of all houses with  --content DIR',
    );
  return verify(pdf, folder, shown, options, terminal);
}

async function verify(
  pdf: PacketPdf,
  folder: string,
  shown: string,
  options: VerifyOptions,
  terminal: Terminal,
): Promise<number> {
  const progress = terminal.progress(`sillplate: ${path.basename(shown)}`);
  const verified = await verifyPdf(pdf, {
    folder,
    shown: shownPath(folder),
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
    onPhoto: (photo, done, all) => progress.photo(pdf.facts.house.folder, photo, done, all),
  }).finally(progress.stop);
  if (verified.verdict === undefined) {
    const errors = verified.composed.locate().filter(({ diagnostic }) => diagnostic.severity === 'error');
    terminal.error(
      `${printReport(errors, 'text', terminal.colour)}\n${visible(shownPath(folder))} has errors and makes no packet now, so ${visible(shown)} can’t be held against it.\n`,
    );
    return 1;
  }
  const { verdict, made } = verified;
  const about: About = { shown, folder: shownPath(folder), pdf, digestNow: made.digest };
  terminal.out(options.format === 'json' ? asJson(about, verdict) : asText(about, verdict));
  return verdict.kind === 'same' ? 0 : 1;
}

interface About {
  readonly shown: string;
  readonly folder: string;
  readonly pdf: PacketPdf;
  readonly digestNow: string;
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
    const found = await stat(file);
    if (!found.isFile()) return `${shown} is no file`;
    if (found.size > LARGEST) return `${shown} is larger than any packet`;
    return await readFile(file);
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === undefined) throw thrown;
    return code === 'ENOENT' || code === 'ENOTDIR'
      ? `there is no file ${shown}`
      : `${shown} can’t be read: the system says ${code}`;
  }
}

const folderOf = (name: string, content: string): string =>
  name.includes('/') || name.includes(path.sep) || name === '.' ? name : path.join(content, name);

const isFolder = (folder: string): Promise<boolean> =>
  stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );

function asText({ shown, folder, pdf, digestNow }: About, verdict: Verdict): string {
  const { facts } = pdf;
  const what = `${facts.title} of ${facts.house.name}, as of ${facts.asOf}, digest ${facts.digest}`;
  const begin = `${visible(shown)}\n  ${visible(what)}\n`;
  const other =
    facts.program === programNow() || verdict.kind === 'same'
      ? ''
      : `  It was made by ${visible(facts.program)}; this is ${programNow()}, and another version may set the same facts in another way.\n`;
  return `${begin}${sentence(verdict, visible(folder), digestNow)}${other}`;
}

const programNow = (): string => `sillplate ${version()}`;

function sentence(verdict: Verdict, folder: string, digestNow: string): string {
  switch (verdict.kind) {
    case 'same':
      return `  This is what ${folder} makes, byte for byte.\n`;
    case 'facts':
      return `  This is not what ${folder} makes now (digest ${digestNow}): ${verdict.changes.length === 1 ? 'one fact differs' : `${verdict.changes.length} facts differ`}.\n${verdict.changes.map(change).join('')}`;
    case 'sheets':
      return `  This is not what ${folder} makes. The facts in its data are the same, but ${sheetWords(verdict.sheets)} something else.\n  do: don’t rely on these sheets; make the packet again and compare them by eye\n`;
    case 'laid-over':
      return `  The facts and the sheets are those that ${folder} makes, but notes or stamps were laid over ${listed(verdict.sheets)}.\n  do: read the sheets without them, in the packet as  sillplate build  makes it\n`;
    case 'around':
      return `  The facts and the sheets are those that ${folder} makes; the file is not: it was saved anew, or its receipt was filled in.\n`;
  }
}

const sheetWords = (sheets: readonly number[]): string =>
  `${listed(sheets)} ${sheets.length === 1 ? 'shows' : 'show'}`;

function listed(sheets: readonly number[]): string {
  if (sheets.length === 1) return `sheet ${sheets[0]}`;
  return sheets.length > 12
    ? `${sheets.length} sheets`
    : `sheets ${sheets.slice(0, -1).join(', ')} and ${sheets.at(-1)}`;
}

function change({ section, about, was, is }: FactChange): string {
  const [before, after] = was === undefined || is === undefined ? [was, is] : whereTheyDiffer(was, is);
  const told = (words: string | undefined): string => (words === undefined ? 'not said' : visible(words));
  return `\n  ${visible(about === undefined ? section : `${section}: ${about}`)}\n    in the PDF     ${told(before)}\n    in the folder  ${told(after)}\n`;
}

/** Words told before and behind what differs, so that it is recognised. */
const AROUND = 6;

/** Of two long texts the words that differ, with a few around them. */
function whereTheyDiffer(one: string, other: string): [string, string] {
  const [a, b] = [one.split(/\s+/u), other.split(/\s+/u)];
  const shorter = Math.min(a.length, b.length);
  let begin = 0;
  while (begin < shorter && a[begin] === b[begin]) begin++;
  let end = 0;
  while (end < shorter - begin && a.at(-1 - end) === b.at(-1 - end)) end++;
  const cut = (words: readonly string[]): string => {
    const [from, to] = [Math.max(0, begin - AROUND), Math.min(words.length, words.length - end + AROUND)];
    return `${from > 0 ? '… ' : ''}${words.slice(from, to).join(' ')}${to < words.length ? ' …' : ''}`;
  };
  return [cut(a), cut(b)];
}

function asJson({ shown, folder, pdf, digestNow }: About, verdict: Verdict): string {
  const { house, edition, asOf, digest, program } = pdf.facts;
  const record = {
    file: shown,
    house: house.folder,
    folder,
    edition,
    asOf,
    paper: pdf.paper,
    program,
    digest,
    digestNow,
    verdict: verdict.kind,
    ...('changes' in verdict ? { changes: verdict.changes } : {}),
    ...('sheets' in verdict ? { sheets: verdict.sheets } : {}),
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}
