/**
 * One state of a house becomes a bag (BagIt 1.0, RFC 8493), beside the bags that lie there and never over them.
 *
 * Takes paths and where their bytes are; gives a folder, a ZIP, a tar or a sealed tar. What is hashed is what is
 * written. A bag is made under a name that begins with a dot and gets its own in one step; what a killed run left is
 * cleared by the next. The same files give the same bytes, but for what is sealed.
 */
import { type FileHandle, mkdir, open, readFile, rename, rm, utimes } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Seal } from './age-file.js';
import { bagDiskTrouble } from './bag-disk-trouble.js';
import { BAGIT_TXT, printBagInfo } from './bag-info.js';
import { makeFolders } from './bag-make-folders.js';
import { inByteOrder, printManifest } from './bag-manifest.js';
import { noonOf, type PackedFile, packTar, packZip } from './bag-pack.js';
import { readTrouble } from './bag-source.js';
import {
  type BagForm,
  type EarlierBag,
  ENDINGS,
  earlierBags,
  manifestOf,
  nextName,
  reportOn,
} from './earlier-bags.js';
import {
  ChangedWhileRead,
  digestBytes,
  digestFile,
  type FileSeen,
  inLanes,
  type Lane,
  writeAll,
} from './file-digest.js';
import { alone } from './folder-lock.js';
import { recover } from './replace-folder.js';
import { seenOf } from './survey-folder.js';

export interface PayloadFile {
  /** Below `data/`, with forward slashes. */
  readonly path: string;
  readonly source:
    | { readonly bytes: Uint8Array }
    | {
        readonly file: string /** As it was when it was looked at; else as it is found. */;
        readonly seen?: FileSeen;
      };
}

export interface BagOrder {
  /** Name of the house's folder, with which the bag's name begins. */
  readonly house: string;
  /** YYYY-MM-DD of the state; there is no clock here. */
  readonly asOf: string;
  /** The folder of this house's bags. */
  readonly to: string;
  /** The same as the writer would type it. */
  readonly shown: string;
  readonly form: 'folder' | 'zip' | 'tar';
  /** Makes it a sealed tar, whatever the form. */
  readonly seal?: Seal;
  /** One sentence on what the bag holds. */
  readonly description: string;
  /** `sillplate 1.2.3`. */
  readonly program: string;
  readonly payload: readonly PayloadFile[];
  /** Called as bytes are read and written; for a progress line. Each file may pass twice. */
  readonly onBytes?: (done: number, all: number) => void;
}

export type BagResult =
  | {
      readonly kind: 'written';
      /** Of the file or folder, as the writer would type it. */
      readonly shown: string;
      readonly name: string;
      readonly files: number;
      readonly bytes: number;
      /** Name of the bag before it. */
      readonly earlier: string | undefined;
      /** Warnings: an earlier bag that would have made this one needless is no longer whole. */
      readonly diagnostics: readonly Diagnostic[];
    }
  /** The newest bag holds this payload, byte for byte, and was found whole. */
  | { readonly kind: 'same'; readonly shown: string; readonly name: string }
  | {
      readonly kind: 'failed';
      readonly diagnostics: readonly Diagnostic[];
      /** A file was changed or taken away meanwhile: it may go well the next time. */
      readonly again?: true;
    };

/** Writes a bag. Returns what went wrong with the disk or a file; throws for a payload that no bag can hold. */
export async function bagHouse(order: BagOrder): Promise<BagResult> {
  checkPaths(order.payload);
  const warnings: Diagnostic[] = [];
  try {
    await makeFolders(order.to);
    await recover(order.to, order.house);
    return await alone(order.to, order.house, () => new Writing(order, warnings).run());
  } catch (thrown) {
    const diagnostics = [...warnings, trouble(thrown, order)];
    return { kind: 'failed', diagnostics, ...(isOfSource(thrown, order) ? { again: true } : {}) };
  }
}

function checkPaths(payload: readonly PayloadFile[]): void {
  const paths = new Set(payload.map((one) => one.path));
  if (paths.size !== payload.length) throw new Error('two files of a bag have one path');
}

/** A file that goes into the bag is not what it was, or not there. */
function isOfSource(thrown: unknown, { payload }: BagOrder): boolean {
  if (thrown instanceof ChangedWhileRead) return true;
  const { code, path: at } = thrown as NodeJS.ErrnoException;
  return code === 'ENOENT' && payload.some((one) => 'file' in one.source && one.source.file === at);
}

function trouble(thrown: unknown, order: BagOrder): Diagnostic {
  if (thrown instanceof ChangedWhileRead)
    return {
      code: 'archive.bag',
      severity: 'error',
      file: thrown.file,
      message: `${path.basename(thrown.file)} was changed while it was being read, so no bag was made`,
      hints: ['wait until no other program works on the house, and type the same command again'],
    };
  const { code, path: at } = thrown as NodeJS.ErrnoException;
  const source = order.payload.find((one) => 'file' in one.source && one.source.file === at);
  const refusal = readTrouble(thrown);
  if (source !== undefined && refusal !== undefined)
    return {
      code: 'archive.bag',
      severity: 'error',
      file: source.path,
      message: `${source.path} ${refusal}, so no bag was made`,
      hints: ['check that it is there and who may read it, and type the same command again'],
    };
  if (code === 'ETIMEDOUT')
    return {
      code: 'archive.disk',
      severity: 'error',
      file: order.shown,
      message: `${order.shown} is being written by another program that does not end`,
      hints: ['wait for it to end; if none runs, delete the file .sillplate-lock-… in that folder'],
    };
  return bagDiskTrouble(thrown, order.shown);
}

/**
 * Bytes of a file that is brought to the disk while others are being read. Smaller ones are brought there together at
 * the end, since each takes the disk about as long as all of them.
 */
const SYNCED_AT_ONCE = 8 * 2 ** 20;

/** A file of the bag with what is known of it. */
interface Known {
  readonly path: string;
  readonly source: PackedFile['source'];
  readonly size: number;
}

class Writing {
  readonly #order: BagOrder;
  readonly #form: BagForm;
  readonly #warnings: Diagnostic[];
  readonly #digests = new Map<string, string>();
  #known: readonly Known[] = [];
  #allBytes = 0;
  #passes = 1;
  /** Files that were written and may still be in the system's memory only. */
  readonly #unsynced: string[] = [];
  #done = 0;

  constructor(order: BagOrder, warnings: Diagnostic[]) {
    this.#order = order;
    this.#warnings = warnings;
    this.#form = order.seal === undefined ? order.form : 'sealed';
  }

  async run(): Promise<BagResult> {
    const { house, asOf, to } = this.#order;
    const known: Known[] = [];
    for (const { path: inner, source } of this.#order.payload) {
      const at = `data/${inner}`;
      if ('bytes' in source) known.push({ path: at, source, size: source.bytes.length });
      else {
        const seen = source.seen ?? (await seenOf(source.file));
        known.push({ path: at, source: { file: source.file, seen }, size: seen.size });
      }
    }
    this.#known = known.sort((a, b) => inByteOrder(a.path, b.path));
    this.#allBytes = known.reduce((sum, one) => sum + one.size, 0);
    const bags = await earlierBags(to, house);
    const packs = this.#form !== 'folder';
    const earlier = bags.at(-1);
    const maybeSame = await this.#maybeSame(bags);
    this.#passes = packs || maybeSame ? 2 : 1;
    if (packs || maybeSame) {
      await this.#digestAll();
      const same = await this.#sameBag(bags);
      if (same !== undefined)
        return { kind: 'same', shown: path.posix.join(this.#order.shown, same.entry), name: same.name };
    }
    const name = nextName(house, asOf, bags);
    const entry = `${name}${ENDINGS[this.#form]}`;
    await this.#put(name, entry, earlier);
    return {
      kind: 'written',
      shown: path.posix.join(this.#order.shown, entry),
      name,
      files: known.length,
      bytes: this.#allBytes,
      earlier: earlier?.name,
      diagnostics: this.#warnings,
    };
  }

  #onBytes = (n: number): void => {
    this.#done += n;
    this.#order.onBytes?.(this.#done, this.#allBytes * this.#passes);
  };

  /** Made aside, brought to the disk, and named in one step. */
  async #put(name: string, entry: string, earlier: EarlierBag | undefined): Promise<void> {
    const { house, to } = this.#order;
    // The name that `recover` looks for.
    const staging = path.join(to, `.sillplate-making-${house}-${process.pid}`);
    try {
      await rm(staging, { recursive: true, force: true });
      await mkdir(staging);
      const made = path.join(staging, entry);
      if (this.#form === 'folder') await this.#writeFolder(made, name, earlier);
      else await this.#pack(made, name, earlier);
      await rename(made, path.join(to, entry));
      await settle(to);
    } finally {
      await rm(staging, { recursive: true, force: true }).catch(() => undefined);
    }
  }

  /** Whether it is worth hashing before anything is written: a bag with as many files and bytes lies there. */
  async #maybeSame(bags: readonly EarlierBag[]): Promise<boolean> {
    const last = bags.at(-1);
    if (last === undefined) return false;
    if (last.form !== 'folder') return true;
    const info = await readFile(path.join(this.#order.to, last.entry, 'bag-info.txt'), 'utf8').catch(
      () => undefined,
    );
    // Its list of digests may still be there, and tell that it held the same.
    if (info === undefined) return true;
    return info.includes(`Payload-Oxum: ${this.#allBytes}.${this.#known.length}\n`);
  }

  /**
   * The newest bag, or one before it that holds the same; in the form that was asked for, and never sealed. Its list
   * tells what it held when it was made, so it is read as a whole before it is relied on.
   */
  async #sameBag(bags: readonly EarlierBag[]): Promise<EarlierBag | undefined> {
    const manifest = printManifest(this.#digests);
    for (const bag of [...bags].reverse()) {
      const listed = await manifestOf(this.#order.to, bag);
      if (listed === undefined && bag.form !== 'sealed' && bag === bags.at(-1))
        this.#warn(bag, 'can’t be read as a bag, so nobody knows whether it holds this state');
      if (listed !== manifest) return undefined;
      if (bag.form !== this.#form) continue;
      this.#passes += 1;
      const report = await reportOn(this.#order.to, bag, this.#onBytes);
      if (report !== 'unreadable' && report?.verdict === 'whole') return bag;
      const why =
        report === 'unreadable' || report === undefined
          ? 'it can’t be read as a bag any more'
          : differs(report.diagnostics.filter(({ severity }) => severity === 'error').length);
      this.#warn(bag, `was made of this state, but is no longer whole (${why})`);
      return undefined;
    }
    return undefined;
  }

  #warn({ entry }: EarlierBag, what: string): void {
    const shown = path.posix.join(this.#order.shown, entry);
    this.#warnings.push({
      code: 'archive.bag',
      severity: 'warning',
      file: shown,
      message: `${shown} ${what}; the state is archived anew`,
      hints: [`to see what is wrong with it, type  sillplate verify ${shown}`],
    });
  }

  async #digestAll(): Promise<void> {
    await inLanes(this.#known, async ({ path: at, source }, lane) => {
      if ('bytes' in source) this.#digests.set(at, sha256(source.bytes));
      else {
        const { digests } = await digestFile(source.file, ['sha256'], lane, {
          seen: source.seen,
          onBytes: this.#onBytes,
        });
        this.#digests.set(at, digests.get('sha256') ?? '');
      }
    });
  }

  async #writeFolder(folder: string, name: string, earlier: EarlierBag | undefined): Promise<void> {
    const folders = foldersOf(this.#known.map((one) => one.path));
    for (const inner of ['', ...folders]) {
      const made = path.join(folder, inner);
      await mkdir(made, { mode: 0o755 });
    }
    const hashed = new Map(this.#digests);
    await inLanes(this.#known, async (one, lane) => {
      const digest = await this.#writeFile(path.join(folder, one.path), one, lane);
      const before = hashed.get(one.path);
      if (before !== undefined && before !== digest && 'file' in one.source)
        throw new ChangedWhileRead(one.source.file);
      this.#digests.set(one.path, digest);
    });
    await inLanes(this.#tagFiles(name, earlier), async (tag, lane) => {
      await this.#writeFile(path.join(folder, tag.path), tag, lane);
    });
    await inLanes(this.#unsynced, bringToDisk);
    for (const inner of [...folders.reverse(), '']) {
      const made = path.join(folder, inner);
      await settle(made, 0o755);
      await utimes(made, this.#time, this.#time);
    }
  }

  get #time(): Date {
    return noonOf(this.#order.asOf);
  }

  /** Its digest in SHA-256. */
  async #writeFile(to: string, { source, size }: Known, lane: Lane): Promise<string> {
    const handle = await open(to, 'wx', 0o644);
    try {
      const digest = await this.#fill(handle, source, lane);
      if (size >= SYNCED_AT_ONCE) await handle.datasync();
      else this.#unsynced.push(to);
      // The mask of the process may have taken rights away.
      await handle.chmod(0o644);
      await handle.utimes(this.#time, this.#time);
      return digest;
    } finally {
      await handle.close();
    }
  }

  async #fill(handle: FileHandle, source: Known['source'], lane: Lane): Promise<string> {
    if ('bytes' in source) {
      await writeAll(handle, source.bytes, 0);
      return sha256(source.bytes);
    }
    const { digests } = await digestFile(source.file, ['sha256'], lane, {
      seen: source.seen,
      to: handle,
      onBytes: this.#onBytes,
    });
    return digests.get('sha256') ?? '';
  }

  /** Tag files first: whoever reads a tar knows what to look for before the rest comes by. */
  async #pack(to: string, name: string, earlier: EarlierBag | undefined): Promise<void> {
    const files = [...this.#tagFiles(name, earlier), ...this.#known].map(
      (one): PackedFile => ({
        path: `${name}/${one.path}`,
        size: one.size,
        sha256:
          this.#digests.get(one.path) ?? sha256('bytes' in one.source ? one.source.bytes : new Uint8Array()),
        source: one.source,
      }),
    );
    const pack = { to, files, day: this.#order.asOf, onBytes: this.#onBytes };
    if (this.#form === 'zip') await packZip(pack);
    else await packTar(pack, this.#order.seal);
  }

  #tagFiles(name: string, earlier: EarlierBag | undefined): Known[] {
    const { house, asOf, description, program } = this.#order;
    const tags = new Map<string, string>([
      ['bagit.txt', BAGIT_TXT],
      [
        'bag-info.txt',
        printBagInfo([
          ['Bagging-Date', asOf],
          ['External-Identifier', name],
          ['External-Description', description],
          ['Bag-Group-Identifier', house],
          ['Payload-Oxum', `${this.#allBytes}.${this.#known.length}`],
          ...(earlier === undefined
            ? []
            : [
                [
                  'Internal-Sender-Description',
                  `The bag of this house before this one: ${earlier.name}`,
                ] as const,
              ]),
          ['Bag-Software-Agent', program],
        ]),
      ],
      ['manifest-sha256.txt', printManifest(this.#digests)],
    ]);
    const digests = new Map([...tags].map(([file, text]) => [file, sha256(Buffer.from(text))]));
    tags.set('tagmanifest-sha256.txt', printManifest(digests));
    return [...tags].map(([file, text]) => {
      const bytes = Buffer.from(text);
      return { path: file, source: { bytes }, size: bytes.length };
    });
  }
}

const differs = (things: number): string =>
  things === 1 ? 'one thing in it differs' : `${things} things in it differ`;

const sha256 = (bytes: Uint8Array): string => digestBytes(bytes, ['sha256']).get('sha256') ?? '';

/** Every folder that the paths lie in, outer ones first; `data` also where nothing lies in it. */
function foldersOf(paths: readonly string[]): string[] {
  const folders = new Set(['data']);
  for (const one of paths) {
    const parts = one.split('/').slice(0, -1);
    for (let n = 1; n <= parts.length; n++) folders.add(parts.slice(0, n).join('/'));
  }
  return [...folders].sort((a, b) => a.length - b.length || inByteOrder(a, b));
}

async function bringToDisk(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.datasync();
  } finally {
    await handle.close();
  }
}

/** The names in a folder reach the disk. Some systems can't do that for a folder, and need not. */
async function settle(folder: string, mode?: number): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    try {
      if (mode !== undefined) await handle.chmod(mode);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch {
    // What is in it is written all the same.
  }
}
