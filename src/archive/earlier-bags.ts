/** The bags of a house that lie there already. They are read, and never touched. */
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { BagUnreadable, readTrouble } from './bag-source.js';
import { openBag } from './open-bag.js';
import { type BagReport, verifyBag } from './verify-bag.js';

export type BagForm = 'folder' | 'zip' | 'tar' | 'sealed';

export interface EarlierBag {
  /** Of the bag's folder; a packed bag is a file of this name and its ending. */
  readonly name: string;
  /** As it lies there. */
  readonly entry: string;
  readonly form: BagForm;
  /** YYYY-MM-DD in its name. */
  readonly day: string;
  /** 1 for the first of a day. */
  readonly count: number;
}

export const ENDINGS: Readonly<Record<BagForm, string>> = {
  folder: '',
  zip: '.zip',
  tar: '.tar',
  sealed: '.tar.age',
};

/** By their names, the latest last. Anything of such a name counts, so that it is not written over. */
export async function earlierBags(parent: string, house: string): Promise<EarlierBag[]> {
  const entries = await readdir(parent).catch((): string[] => []);
  const found = entries.flatMap((entry): EarlierBag[] => {
    if (!entry.startsWith(`${house}-`)) return [];
    const parts = /^(\d{4}-\d{2}-\d{2})(?:-([1-9]\d*))?(\.zip|\.tar|\.tar\.age|)$/u.exec(
      entry.slice(house.length + 1),
    );
    if (parts === null) return [];
    const [, day = '', count = '1', ending = ''] = parts;
    const form = (Object.keys(ENDINGS) as BagForm[]).find((one) => ENDINGS[one] === ending) ?? 'folder';
    const name = entry.slice(0, entry.length - ending.length);
    return [{ name, entry, form, day, count: Number(count) }];
  });
  return found.sort((a, b) => (a.day === b.day ? a.count - b.count : a.day < b.day ? -1 : 1));
}

/** The next free name of a day. */
export function nextName(house: string, day: string, earlier: readonly EarlierBag[]): string {
  const last = Math.max(0, ...earlier.filter((bag) => bag.day === day).map((bag) => bag.count));
  return last === 0 ? `${house}-${day}` : `${house}-${day}-${last + 1}`;
}

/** Its payload manifest as it stands; undefined for a sealed bag, and for what can't be read as a bag. */
export async function manifestOf(parent: string, { entry, form }: EarlierBag): Promise<string | undefined> {
  if (form === 'sealed') return undefined;
  try {
    const { tags } = await (await openBag(path.join(parent, entry))).list();
    const bytes = tags.get('manifest-sha256.txt');
    return bytes === undefined ? undefined : Buffer.from(bytes).toString('utf8');
  } catch (thrown) {
    if (isUnreadable(thrown)) return undefined;
    throw thrown;
  }
}

/** What `verify` would say of it; undefined for a sealed bag, which nobody opens here. */
export async function reportOn(
  parent: string,
  { entry, form }: EarlierBag,
  onBytes?: (n: number) => void,
): Promise<BagReport | 'unreadable' | undefined> {
  if (form === 'sealed') return undefined;
  try {
    const report = await verifyBag(await openBag(path.join(parent, entry)), entry, onBytes);
    return report.verdict === 'no-bag' ? 'unreadable' : report;
  } catch (thrown) {
    if (isUnreadable(thrown)) return 'unreadable';
    throw thrown;
  }
}

const isUnreadable = (thrown: unknown): boolean =>
  thrown instanceof BagUnreadable || readTrouble(thrown) !== undefined;
