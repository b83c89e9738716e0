/** `sillplate verify` of a bag: whether an archive is whole, and which files are changed, missing or too many. */
import { type Keys, readIdentities, sealOf } from './archive/age-file.js';
import { BagUnreadable, readTrouble } from './archive/bag-source.js';
import { isPackedBag, isSealedBag, openBag } from './archive/open-bag.js';
import { type BagReport, unreadable, verifyBag } from './archive/verify-bag.js';
import { type AskPassphrase, askPassphrase } from './ask-passphrase.js';
import { size } from './command-archive.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import { isFolder, shownPath } from './find-houses.js';
import { readGivenFile } from './intake/read-plain-file.js';
import type { Terminal } from './terminal.js';

export interface VerifyBagOptions {
  readonly format: 'text' | 'json';
  /** File with age keys. */
  readonly identity?: string;
}

/** Whether what is to be verified is a bag, packed or not, rather than a packet's PDF. */
export const isBag = async (file: string): Promise<boolean> => isPackedBag(file) || (await isFolder(file));

/** Exit status 0: whole · 1: anything differs · 2: it can't be read as a bag. */
export async function verifyBagCommand(
  file: string,
  options: VerifyBagOptions,
  terminal: Terminal,
  ask: AskPassphrase = askPassphrase,
): Promise<number> {
  const shown = shownPath(file);
  const progress = terminal.progress('sillplate');
  let done = 0;
  const report = await look(file, shown, options, ask, (n) => {
    done += n;
    progress.step(`${shown}, ${size(done)} read`);
  }).finally(progress.stop);
  if (options.format === 'json') terminal.out(asJson(shown, report));
  else say(shown, report, terminal);
  return { whole: 0, differs: 1, 'no-bag': 2 }[report.verdict];
}

async function look(
  file: string,
  shown: string,
  options: VerifyBagOptions,
  ask: AskPassphrase,
  onBytes: (n: number) => void,
): Promise<BagReport> {
  try {
    const keys = isSealedBag(file) && !(await isFolder(file)) ? await keysFor(file, options, ask) : {};
    return await verifyBag(await openBag(file, keys), shown, onBytes);
  } catch (thrown) {
    if (thrown instanceof BagUnreadable) return unreadable(shown, thrown);
    const trouble = readTrouble(thrown);
    if (trouble === undefined) throw thrown;
    return unreadable(shown, new BagUnreadable(trouble, 'type its name as it lies there'));
  }
}

/** Bytes of a file with keys that are read; one key takes about two hundred, the largest kind two thousand. */
const MOST_KEYS = 1_000_000;

async function keysFor(file: string, { identity }: VerifyBagOptions, ask: AskPassphrase): Promise<Keys> {
  const sealed = await sealOf(file);
  if (sealed === 'passphrase') {
    const passphrase = await ask('Passphrase: ');
    if (passphrase === undefined)
      throw new BagUnreadable(
        'is sealed with a passphrase, and none was typed',
        'type the command in a terminal, where it is asked for',
      );
    return { passphrase };
  }
  if (identity === undefined)
    throw new BagUnreadable('is sealed for a key', 'name the file that holds it:  --identity FILE');
  const text = await readGivenFile(identity, MOST_KEYS).catch((thrown: NodeJS.ErrnoException) => {
    const trouble = thrown.code === 'ENOTFILE' ? 'is no plain file' : readTrouble(thrown);
    throw trouble === undefined
      ? thrown
      : new BagUnreadable(
          `can’t be opened: the identity file ${shownPath(identity)} ${trouble}`,
          'type its name as it lies there',
        );
  });
  return { identities: readIdentities(text.subarray(0, MOST_KEYS).toString('utf8')) };
}

/** More problems than these are no longer read one by one. */
const MOST_TOLD = 100;

function say(shown: string, report: BagReport, terminal: Terminal): void {
  const located = locate(report.diagnostics, NOWHERE);
  const errors = located.filter(({ diagnostic }) => diagnostic.severity === 'error');
  const told = [...errors, ...located.filter((one) => !errors.includes(one))].slice(0, MOST_TOLD);
  const more = located.length - told.length;
  const text = told.length === 0 ? '' : `${printReport(told, 'text', terminal.colour)}\n`;
  const rest = more > 0 ? `… and ${more} more; all of them with  --format json\n\n` : '';
  if (report.verdict === 'no-bag') terminal.error(text);
  else terminal.out(`${text}${rest}${closing(shown, report, errors.length)}`);
}

function closing(shown: string, report: BagReport, errors: number): string {
  const what = [
    visible(shown),
    ...(report.date === undefined ? [] : [`, a bag of ${visible(report.date)}`]),
    `: ${report.files} files, ${size(report.bytes)}, checked by ${report.algorithms.join(' and ')}`,
  ].join('');
  if (report.verdict === 'whole' && report.files === 0)
    return `${what}\n  It holds nothing, and nothing in it differs from that.\n`;
  if (report.verdict === 'whole')
    return `${what}\n  It is whole: every file is what its manifests say, none is missing, and none was added.\n`;
  return `${what}\n  It is not whole: ${errors === 1 ? 'one thing differs' : `${errors} things differ`}.\n`;
}

function asJson(shown: string, report: BagReport): string {
  const problems: unknown = JSON.parse(printReport(locate(report.diagnostics, NOWHERE), 'json', false));
  const record = {
    bag: shown,
    verdict: report.verdict,
    identifier: report.identifier ?? null,
    date: report.date ?? null,
    files: report.files,
    bytes: report.bytes,
    algorithms: report.algorithms,
    problems,
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}
