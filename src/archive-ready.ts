/**
 * What is made before a house goes into a bag: its house file as of the day, all other packets where there is none yet,
 * and the exports and the guide that lie beside them.
 */
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { ChangedWhileRead } from './archive/file-digest.js';
import { alone } from './archive/folder-lock.js';
import { howToRead } from './archive/how-to-read.js';
import { buildHouse, EDITION_NAMES } from './build.js';
import type { MakeReady, ReadyHouse } from './command-archive.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { houseJsonSchema } from './facts/json-schema.js';
import { isFolder, shownPath } from './find-houses.js';
import { readFacts } from './intake/read-facts.js';
import { EDITIONS } from './packet/edition-house.js';
import { FACTS_NAME, readFactsFile } from './packet/facts-file.js';
import type { EditionName } from './packet/packet.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

export interface ReadyOptions {
  readonly out: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  readonly paper: 'letter' | 'a4';
}

/** A packet that was made on an earlier day stays as it was handed out; the house file is made anew. */
export const archiveReady =
  ({ out, asOf, paper }: ReadyOptions, terminal: Terminal): MakeReady =>
  async ({ folder, shown, name }) => {
    const made = path.join(path.resolve(out), name);
    const lacking: EditionName[] = [];
    for (const edition of EDITION_NAMES)
      if (edition === 'file' || !(await isFolder(path.join(made, edition)))) lacking.push(edition);
    const progress = terminal.progress(`sillplate: ${name}`);
    const { located } = await buildHouse({
      folder,
      shown,
      asOf,
      editions: lacking,
      out: path.resolve(out),
      outShown: shownPath(out),
      paper,
      onStep: progress.step,
      onPhoto: (photo, done, all) => progress.photo(name, photo, done, all),
    }).finally(progress.stop);
    const errors = located.filter(({ diagnostic }) => diagnostic.severity === 'error');
    const exports =
      errors.length > 0 ? [] : await alone(path.resolve(out), name, () => exportsOf(made, folder, shown));
    const editions = [];
    const notes: Diagnostic[] = [];
    for (const edition of EDITION_NAMES) {
      if (!(await isFolder(path.join(made, edition)))) continue;
      const state = await stateOf(path.join(made, edition));
      const is = isFor(EDITIONS[edition].title, EDITIONS[edition].reader);
      editions.push({ name: edition, is, ...state });
      if (state?.asOf !== asOf)
        notes.push(ofAnotherDay(edition, state?.asOf, name, path.posix.join(shownPath(out), name, edition)));
    }
    return {
      located: errors,
      description: `The record of the house ${name}, as of ${asOf}: facts, papers, packets and costs`,
      exports,
      notes,
      guide: howToRead({
        house: name,
        asOf,
        editions,
        exports: exports.map(({ path: file }) => ({ file, is: WHAT_IS[kindOf(file)] ?? 'data' })),
        program: `sillplate ${version()}`,
      }),
    } satisfies ReadyHouse;
  };

/** Day and digest of a packet, as the file of its facts says; undefined where it has none that can be read. */
async function stateOf(
  folder: string,
): Promise<{ readonly asOf: string; readonly digest: string } | undefined> {
  const text = await readFile(path.join(folder, FACTS_NAME), 'utf8').catch(() => undefined);
  const facts = text === undefined ? undefined : readFactsFile(text);
  return facts === undefined ? undefined : { asOf: facts.asOf, digest: facts.digest };
}

const ofAnotherDay = (
  edition: EditionName,
  day: string | undefined,
  house: string,
  file: string,
): Diagnostic => ({
  code: 'archive.bag',
  severity: 'note',
  file,
  message:
    day === undefined
      ? `no day can be read of the ${edition} packet in it; the facts may have changed since`
      : `the ${edition} packet in it is of ${day}; the facts may have changed since`,
  hints: [
    `what was made stays as it was handed out; to make all packets anew, type  sillplate build ${house}`,
  ],
});

const isFor = (title: string, reader: string): string =>
  `${title.toLowerCase()}: ${reader.charAt(0).toLowerCase()}${reader.slice(1)}`;

const kindOf = (file: string): string => (file.endsWith('.journal') ? 'journal' : file);

const WHAT_IS: Readonly<Record<string, string>> = {
  'facts.json': 'what the house file says, fact by fact',
  'house.json': 'the facts of the folder’s YAML files, as one',
  'house.schema.json': 'what each word of house.json means',
  'ledger.csv': 'payments, one a row',
  'miles.csv': 'trips, one a row',
  'hours.csv': 'unpaid work, one a row',
  'ledger.xlsx': 'payments, trips, hours and sums for a spreadsheet',
  'ledger.json': 'payments with all sums and worksheets; money in whole cents',
  'ledger.schema.json': 'what each word of ledger.json means',
  journal: 'payments as double-entry bookkeeping',
};

/** The house file's exports, and the facts themselves as JSON with their schema. */
async function exportsOf(made: string, folder: string, shown: string): Promise<ReadyHouse['exports']> {
  const home = path.join(made, 'file');
  const names = (await readdir(home, { withFileTypes: true }))
    .filter((one) => one.isFile() && !/\.(html|pdf)$/u.test(one.name))
    .map(({ name }) => name);
  const files = await Promise.all(
    names.map(async (name) => ({ path: name, bytes: await readFile(path.join(home, name)) })),
  );
  const facts = await readFacts(folder, shown);
  // The house was built from it a moment ago; what was changed since is told by who archives it.
  if (!('spec' in facts)) throw new ChangedWhileRead(path.join(folder, 'house.yaml'));
  const text = (value: unknown): Uint8Array => Buffer.from(`${JSON.stringify(value, null, 1)}\n`);
  return [
    ...files,
    { path: 'house.json', bytes: text(facts.spec) },
    { path: 'house.schema.json', bytes: text(houseJsonSchema()) },
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
}
