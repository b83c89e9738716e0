/**
 * A packet that is given to somebody is frozen below the house's `deliveries/`: its record, its data, its PDF and all
 * its pages, with a digest of each.
 *
 * Takes paths and where their bytes are. A delivery is made under a name that begins with a dot, brought to the disk and
 * named in one step, so that no half of one ever bears a delivery's name; what a killed run left is cleared by the next.
 * Nothing that lies there is written to, renamed or removed.
 */
import { createHash } from 'node:crypto';
import {
  type FileHandle,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  realpath,
  rename,
  rm,
} from 'node:fs/promises';
import path from 'node:path';
import { DELIVERIES, MANIFEST } from '../diagnostics/delivery-names.js';
import { parseManifest, printManifest } from './bag-manifest.js';
import { ChangedWhileRead, digestFile, inLanes, type Lane, writeAll } from './file-digest.js';
import { alone } from './folder-lock.js';
import { recover } from './replace-folder.js';
import { settleFolder } from './settle-folder.js';
import { lookAtDelivery } from './verify-delivery.js';
import type { FileToWrite } from './write-tree.js';

/** In names of locks and of what is being made. */
const WORK = 'delivery';

export interface DeliveryOrder {
  /** The house folder. */
  readonly folder: string;
  /** Names of the deliveries that the packet was made in sight of: what it says of them would be false with others. */
  readonly seen: readonly string[];
  /** `2026-06-12-buyer-7f3a91c2`; a number is added where there is one already. */
  readonly name: string;
  /** What the record's file, `delivery.yaml`, says, of a packet that lies whole in an earlier delivery or doesn't. */
  readonly record: (sameAs: { readonly name: string; readonly manifest: string } | undefined) => string;
  /** Written at the top of the folder, whatever else is. */
  readonly facts: FileToWrite;
  /** The rest of what is frozen. Where a whole earlier delivery holds the same, it is named instead. */
  readonly rest: readonly FileToWrite[];
  /** Earlier deliveries that may hold the same, by their names. */
  readonly maybeSame: readonly string[];
  /** Asked when all is written and nothing has its name yet: throws if the house is no longer what was read. */
  readonly mayStill?: () => Promise<void>;
}

/** Names of all that lies there, whatever it is; what programs are at work on begins with a dot. */
export async function deliveryNames(folder: string): Promise<string[]> {
  try {
    return (await readdir(path.join(folder, DELIVERIES))).filter((name) => !name.startsWith('.'));
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return [];
    throw thrown;
  }
}

export type DeliveryWritten =
  /** `sameAs` is the delivery that holds PDF and pages. */
  | {
      readonly kind: 'written';
      readonly name: string;
      readonly files: number;
      readonly sameAs: string | undefined;
    }
  /** Another delivery was written meanwhile: the packet must be made again in sight of it. */
  | { readonly kind: 'another-came' };

/** `deliveries` is a link that leads out of the house folder. */
export class DeliveriesElsewhere extends Error {}

/** Throws what the disk refuses; in any case nothing half-made is left, or it is cleared by the next run. */
export async function writeDelivery(order: DeliveryOrder): Promise<DeliveryWritten> {
  const home = path.join(order.folder, DELIVERIES);
  await makeHome(home);
  if ((await realpath(home)) !== path.join(await realpath(order.folder), DELIVERIES))
    throw new DeliveriesElsewhere('deliveries leads elsewhere');
  await recover(home, WORK);
  return alone(home, WORK, async () => {
    const there = await readdir(home);
    const seen = new Set(order.seen);
    if (there.some((name) => !name.startsWith('.') && !seen.has(name))) return { kind: 'another-came' };
    return put(order, home, new Set(there));
  });
}

/** Not `recursive`: of a disk that can only be read that says ENOENT, which tells nobody anything. */
async function makeHome(home: string): Promise<void> {
  await mkdir(home).catch(async (thrown: NodeJS.ErrnoException) => {
    const isThere = await lstat(home).then(
      (found) => found.isDirectory() || found.isSymbolicLink(),
      () => false,
    );
    if (!isThere) throw thrown;
  });
}

async function put(order: DeliveryOrder, home: string, taken: ReadonlySet<string>): Promise<DeliveryWritten> {
  const all = [order.facts, ...order.rest];
  const digests = await digestAll(all);
  const same = await sameAs(order, home, digests);
  const record: FileToWrite = { path: 'delivery.yaml', text: order.record(same) };
  const files = same === undefined ? [record, ...all] : [record, order.facts];
  const listed = new Map(
    files.map((file) => [file.path, digests.get(file.path) ?? sha256(bytesIn(file) ?? new Uint8Array())]),
  );
  const manifest: FileToWrite = { path: MANIFEST, text: printManifest(listed) };
  const name = freeName(order.name, taken);
  const staging = path.join(home, `.sillplate-making-${WORK}-${process.pid}`);
  try {
    await rm(staging, { recursive: true, force: true });
    await writeAllFiles(path.join(staging, name), [...files, manifest], listed);
    await order.mayStill?.();
    await rename(path.join(staging, name), path.join(home, name));
    await settleFolder(home);
  } finally {
    await rm(staging, { recursive: true, force: true }).catch(() => undefined);
  }
  return { kind: 'written', name, files: files.length + 1, sameAs: same?.name };
}

/** The first that is free, also of names that differ in nothing but capitals. */
function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let count = 1; ; count++) {
    const wanted = count === 1 ? name : `${name}-${count}`;
    if (!taken.has(wanted)) return wanted;
  }
}

async function digestAll(files: readonly FileToWrite[]): Promise<ReadonlyMap<string, string>> {
  const digests = new Map<string, string>();
  await inLanes(files, async (file, lane) => {
    const bytes = bytesIn(file);
    digests.set(
      file.path,
      bytes !== undefined || !('copyOf' in file)
        ? sha256(bytes ?? new Uint8Array())
        : ((await digestFile(file.copyOf, ['sha256'], lane)).digests.get('sha256') ?? ''),
    );
  });
  return digests;
}

/** An earlier delivery that holds all of it, byte for byte, and is whole: looked at file by file before it is relied on. */
async function sameAs({ maybeSame }: DeliveryOrder, home: string, digests: ReadonlyMap<string, string>) {
  const wanted = printManifest(digests);
  for (const name of maybeSame) {
    const text = await readFile(path.join(home, name, MANIFEST), 'utf8').catch(() => undefined);
    if (text === undefined) continue;
    const held = parseManifest(text, 'sha256', true).entries.filter((one) => one.path !== 'delivery.yaml');
    if (printManifest(new Map(held.map((one) => [one.path, one.digest]))) !== wanted) continue;
    const { differs } = await lookAtDelivery(path.join(home, name));
    if (differs.length === 0) return { name, manifest: sha256(Buffer.from(text)) };
  }
  return undefined;
}

async function writeAllFiles(
  root: string,
  files: readonly FileToWrite[],
  digests: ReadonlyMap<string, string>,
): Promise<void> {
  const folders = new Set<string>();
  for (const { path: inner } of files) {
    if (!path.join(root, inner).startsWith(root + path.sep))
      throw new Error(`path leaves its folder: ${inner}`);
    for (let at = path.dirname(path.join(root, inner)); at.length >= root.length; at = path.dirname(at))
      folders.add(at);
  }
  const inOrder = [...folders].sort((a, b) => a.length - b.length);
  await mkdir(path.dirname(root));
  for (const folder of inOrder) await mkdir(folder);
  await inLanes(files, async (file, lane) => {
    const handle = await open(path.join(root, file.path), 'wx');
    try {
      const written = await fill(handle, file, lane);
      const before = digests.get(file.path);
      if (before !== undefined && written !== before && 'copyOf' in file)
        throw new ChangedWhileRead(file.copyOf);
      await handle.sync();
    } finally {
      await handle.close();
    }
  });
  for (const folder of inOrder.reverse()) await settleFolder(folder);
}

async function fill(handle: FileHandle, file: FileToWrite, lane: Lane): Promise<string> {
  if ('copyOf' in file)
    return (await digestFile(file.copyOf, ['sha256'], lane, { to: handle })).digests.get('sha256') ?? '';
  const bytes = bytesIn(file) ?? new Uint8Array();
  await writeAll(handle, bytes, 0);
  return sha256(bytes);
}

const bytesIn = (file: FileToWrite): Uint8Array | undefined =>
  'text' in file ? Buffer.from(file.text) : 'bytes' in file ? file.bytes : undefined;

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
