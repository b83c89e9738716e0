/**
 * What each edition of a house was made from, kept beside the editions, so that a later run can tell which houses need
 * making again.
 *
 * The record goes into place in the same step as the editions: whatever is killed when, it never speaks of pages that
 * are not there. It holds digests and what was typed, no word of the house, and is the same on every machine.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { digestOfFolder, type FolderSeen, isSameFolder } from './archive/folder-digest.js';
import type { FileToWrite } from './archive/write-tree.js';
import { lookAtFacts } from './as-it-was-read.js';
import type { HouseOrder } from './house-order.js';
import type { EditionName } from './packet/packet.js';
import { version } from './version.js';

/** Its name in the folder of a house's packets. */
export const MADE_FROM = '.sillplate-made.json';

interface MadeFrom {
  /** Digest of what packets are made of in the house folder. */
  readonly facts: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  readonly paper: string;
  /** Version of the program. */
  readonly program: string;
}

type Record_ = Partial<Record<EditionName, MadeFrom>>;

/** Why a house has to be made again. */
export type Stale = 'never made' | 'facts changed' | 'another day' | 'another paper' | 'another version';

/** The record as it stands in `out/<house>/`; empty where there is none or it is no record of ours. */
async function readRecord(out: string, house: string): Promise<Record_> {
  try {
    const read: unknown = JSON.parse(await readFile(path.join(out, house, MADE_FROM), 'utf8'));
    return typeof read === 'object' && read !== null ? (read as Record_) : {};
  } catch {
    return {};
  }
}

/** Undefined: every wanted edition is as a build would make it now. Reads the whole folder. */
export async function whyStale(order: HouseOrder): Promise<Stale | undefined> {
  const house = path.basename(path.resolve(order.folder));
  const record = await readRecord(order.out, house);
  const made = order.editions.map((edition) => record[edition]);
  const isThere = order.editions.every((edition) => existsSync(path.join(order.out, house, edition)));
  if (!isThere || made.some((one) => one === undefined)) return 'never made';
  const program = version();
  if (made.some((one) => one?.program !== program)) return 'another version';
  if (made.some((one) => one?.asOf !== order.asOf)) return 'another day';
  if (made.some((one) => one?.paper !== order.paper)) return 'another paper';
  // What can't be read is told when the house is made.
  const facts = (await factsBefore(order.folder))?.digest;
  return made.some((one) => one?.facts !== facts) ? 'facts changed' : undefined;
}

/** The folder before its facts are read, and its digest. */
export interface FactsBefore {
  readonly seen: FolderSeen;
  readonly digest: string | undefined;
}

export async function factsBefore(folder: string): Promise<FactsBefore | undefined> {
  // What can't be looked into is told by those who read it; here it only means that nothing is known.
  const seen = await lookAtFacts(folder);
  return seen && { seen, digest: await digestOfFolder(seen).catch(() => undefined) };
}

/**
 * The record that goes into place with the editions of an order; those of other editions go over. Where the folder
 * changed while it was read, nobody can say what the editions were made from, and the next run makes them again.
 */
export async function madeFromFile(
  order: HouseOrder,
  house: string,
  before: FactsBefore | undefined,
): Promise<FileToWrite> {
  const record = { ...(await readRecord(order.out, house)) };
  const after = await lookAtFacts(order.folder);
  const facts =
    before !== undefined && after !== undefined && isSameFolder(before.seen, after)
      ? before.digest
      : undefined;
  for (const edition of order.editions)
    if (facts === undefined) delete record[edition];
    else record[edition] = { facts, asOf: order.asOf, paper: order.paper, program: version() };
  const sorted = Object.fromEntries(Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1)));
  return { path: MADE_FROM, text: `${JSON.stringify(sorted, undefined, 1)}\n` };
}
