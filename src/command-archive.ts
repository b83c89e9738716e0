/** `sillplate archive`: the state of a house as a bag, beside the bags of earlier states. */
import path from 'node:path';
import { type Seal, unknownRecipients } from './archive/age-file.js';
import { readTrouble } from './archive/bag-source.js';
import { ChangedWhileRead } from './archive/file-digest.js';
import { lookAtFacts } from './as-it-was-read.js';
import { type AskPassphrase, askPassphrase } from './ask-passphrase.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport, visible } from './diagnostics/report.js';
import { findHouses, type HouseFolder, shownPath, typedWord } from './find-houses.js';
import { type ArchiveResult, archiveHouse } from './house-archive.js';
import type { Terminal } from './terminal.js';

export interface ArchiveOptions {
  readonly content: string;
  /** Where packets lie. */
  readonly out: string;
  /** Where bags lie: `<to>/<house>/`. */
  readonly to: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  readonly form: 'folder' | 'zip' | 'tar';
  /** age recipients, for each of whom the bag is sealed. */
  readonly sealFor?: readonly string[];
  readonly sealWithPassphrase?: true;
  readonly format: 'text' | 'json';
}

/** What the walk makes ready for a house before it is archived: its packets in `out`, and what goes in beside them. */
export interface ReadyHouse {
  /** An error among them: no bag is made. */
  readonly located: readonly Located[];
  readonly description: string;
  readonly exports: readonly { readonly path: string; readonly bytes: Uint8Array }[];
  readonly guide: string;
  /** On the packets, told with the bag they lie in. */
  readonly notes: readonly Diagnostic[];
}

export type MakeReady = (house: HouseFolder & { readonly name: string }) => Promise<ReadyHouse>;

type Done =
  | {
      readonly house: string;
      readonly result: ArchiveResult;
      readonly notes: readonly Diagnostic[];
    }
  /** Its facts or sheets stood in the way; `check` is its name for that command. */
  | { readonly house: string; readonly result: undefined; readonly check: string };

/** Exit status 0: every house is archived · 1: one could not be · 2: the command line. */
export async function archiveCommand(
  wanted: readonly string[],
  options: ArchiveOptions,
  terminal: Terminal,
  makeReady: MakeReady,
  ask: AskPassphrase = askPassphrase,
): Promise<number> {
  const seal = await sealFrom(options, ask);
  if (seal !== undefined && 'code' in seal) {
    terminal.error(printReport(locate([seal], NOWHERE), 'text', terminal.colour));
    return 2;
  }
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  const located: Located[] = locate(diagnostics, NOWHERE);
  const done: Done[] = [];
  const progress = terminal.progress('sillplate');
  try {
    for (const house of houses) {
      const name = path.basename(path.resolve(house.folder));
      progress.step(name);
      const onBytes = (bytes: number, all: number): void =>
        progress.step(`${name}, ${size(bytes)} of ${size(all)} archived`);
      const attempt = () => archiveOne({ ...house, name }, options, seal, makeReady, onBytes);
      let { ready, result } = await attempt();
      for (let tries = 1; result?.again === true && tries < TRIES; tries++)
        ({ ready, result } = await attempt());
      located.push(...ready.located, ...locate(result?.diagnostics ?? [], NOWHERE));
      if (result === undefined)
        done.push({ house: name, result, check: asTyped({ ...house, name }, options.content) });
      else
        done.push({
          house: name,
          result,
          notes: result.bag === undefined ? [] : [...ready.notes, ...result.notes],
        });
    }
  } finally {
    progress.stop();
  }
  if (options.format === 'json') terminal.out(asJson(located, done));
  else {
    if (located.length > 0) terminal.error(`${printReport(located, 'text', terminal.colour)}\n`);
    for (const one of done)
      if (one.result === undefined) terminal.error(notReady(one.house, one.check));
      else terminal.out(asText(one, options));
  }
  const failed = located.some(({ diagnostic }) => diagnostic.severity === 'error');
  return failed || done.some(({ result }) => result?.bag === undefined) ? 1 : 0;
}

/** The house, or its packets, may be changed by another program while the bag is made: it begins again. */
const TRIES = 3;

async function archiveOne(
  house: HouseFolder & { readonly name: string },
  options: ArchiveOptions,
  seal: Seal | undefined,
  makeReady: MakeReady,
  onBytes: (done: number, all: number) => void,
): Promise<{ ready: ReadyHouse; result: ArchiveResult | undefined }> {
  const before = await lookAtFacts(house.folder);
  const ready = await readyOrAgain(house, makeReady);
  if ('changed' in ready) return { ready: NOT_READY, result: ready.changed };
  if (ready.located.some(({ diagnostic }) => diagnostic.severity === 'error'))
    return { ready, result: undefined };
  const result = await archiveHouse({
    ...house,
    ...ready,
    house: house.name,
    asOf: options.asOf,
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
    to: path.resolve(options.to),
    toShown: shownPath(options.to),
    form: options.form,
    ...(before === undefined ? {} : { before }),
    ...(seal === undefined ? {} : { seal }),
    onBytes,
  });
  return { ready, result };
}

const NOT_READY: ReadyHouse = { located: [], description: '', exports: [], guide: '', notes: [] };

/** What was made ready; or that a file was changed or taken away while it was read. */
async function readyOrAgain(
  house: HouseFolder & { readonly name: string },
  makeReady: MakeReady,
): Promise<ReadyHouse | { readonly changed: ArchiveResult }> {
  try {
    return await makeReady(house);
  } catch (thrown) {
    const trouble = readTrouble(thrown);
    if (trouble === undefined) throw thrown;
    const at = thrown instanceof ChangedWhileRead ? thrown.file : (thrown as NodeJS.ErrnoException).path;
    const file = at === undefined ? house.shown : shownPath(path.relative(process.cwd(), at));
    const diagnostic: Diagnostic = {
      code: 'archive.bag',
      severity: 'error',
      file,
      message: `${file} ${trouble}, so no bag was made`,
      hints: ['wait until no other program works on the house, and type the same command again'],
    };
    return { changed: { bag: undefined, diagnostics: [diagnostic], again: true, notes: [] } };
  }
}

async function sealFrom(
  { sealFor, sealWithPassphrase, form }: ArchiveOptions,
  ask: AskPassphrase,
): Promise<Seal | Diagnostic | undefined> {
  const recipients = sealFor ?? [];
  const usage = (message: string, ...hints: readonly string[]): Diagnostic => ({
    code: 'cli.usage',
    severity: 'error',
    message,
    hints,
  });
  if (recipients.length === 0 && sealWithPassphrase !== true) return undefined;
  if (form === 'zip')
    return usage(
      'a sealed bag is a tar, and --form zip asks for a ZIP',
      'leave --form out, or write  --form tar',
    );
  if (recipients.length > 0 && sealWithPassphrase === true)
    return usage(
      'a bag is sealed for keys or with a passphrase, and not both',
      'leave one of the two out, and make two bags if you want both',
    );
  if (recipients.length > 0) {
    const unknown = await unknownRecipients(recipients);
    const [first] = unknown;
    if (first === undefined) return { recipients };
    return usage(
      /^AGE-SECRET-KEY/iu.test(first)
        ? 'what --seal-for was given is a secret key, which opens bags and seals none'
        : `${first} is no age recipient`,
      'write the public key that age-keygen showed:  --seal-for age1…',
    );
  }
  const passphrase = await ask('Passphrase: ');
  if (passphrase === undefined)
    return usage(
      'no passphrase was typed, so nothing is written',
      'type the command in a terminal; for a script, seal for a key:  --seal-for age1…',
    );
  if (passphrase === '')
    return usage(
      'an empty passphrase seals nothing',
      'type one of four or five words that nobody would guess',
    );
  if ((await ask('The same again: ')) !== passphrase)
    return usage('the two passphrases are not the same, so nothing is written', 'type the command again');
  return { passphrase };
}

/** A house as `sillplate check` finds it. */
function asTyped({ folder, shown, name }: HouseFolder & { readonly name: string }, content: string): string {
  if (path.dirname(path.resolve(folder)) !== path.resolve(content)) return shown;
  return shownPath(content) === 'content' ? name : `${name} --content ${typedWord(shownPath(content))}`;
}

const notReady = (house: string, check: string): string =>
  `\n${visible(house)}: nothing was archived, since its house file would be false or can’t be made; earlier bags are as they were\n  for all there is to mend, type  sillplate check ${visible(check)}  and then archive again\n`;

function asText(
  { house, result: { bag }, notes }: Extract<Done, { result: ArchiveResult }>,
  options: ArchiveOptions,
): string {
  if (bag === undefined) return `${house}: no bag was made\n`;
  const shown = visible(bag.shown);
  if (bag.kind === 'same')
    return `${house}: nothing has changed since ${shown}, which holds this state byte for byte and was found whole; no bag was made\n${told(notes)}`;
  const sealed = /\.age$/u.test(bag.shown);
  const key = options.sealWithPassphrase === true ? 'the passphrase' : 'the secret key';
  return [
    `${house}: ${shown}\n`,
    `  ${bag.files} files, ${size(bag.bytes)}${bag.earlier === undefined ? '' : `; the bag before it is ${bag.earlier}`}\n`,
    sealed ? `  Without ${key} nobody opens it, you neither: keep ${key} in a place apart.\n` : '',
    told(notes),
    '  It is private: it holds what was paid, to whom, and the receipts. Keep a second copy in another place.\n',
  ].join('');
}

/** One line each, and below them what to type, once. */
function told(notes: readonly Diagnostic[]): string {
  const toType = new Set(notes.flatMap(({ hints }) => hints.filter((hint) => hint.includes('sillplate '))));
  return [...notes.map(({ message }) => message), ...toType].map((line) => `  ${visible(line)}\n`).join('');
}

function asJson(located: readonly Located[], done: readonly Done[]): string {
  const bags = done.map(({ house, result }) => {
    const bag = result?.bag;
    if (bag === undefined) return { house, bag: null, written: false };
    return {
      house,
      bag: bag.shown,
      written: bag.kind === 'written',
      ...(bag.kind === 'written' ? { files: bag.files, bytes: bag.bytes, earlier: bag.earlier ?? null } : {}),
    };
  });
  const notes = done.flatMap((one) => (one.result === undefined ? [] : locate(one.notes, NOWHERE)));
  const problems: unknown = JSON.parse(printReport([...located, ...notes], 'json', false));
  return `${JSON.stringify({ bags, problems }, null, 2)}\n`;
}

/** `1.2 GB`: thousands, as disks are sold. */
export function size(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < 1e6) return `${(bytes / 1e3).toFixed(0)} kB`;
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(2)} GB`;
}
